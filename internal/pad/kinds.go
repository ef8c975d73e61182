package pad

import (
	"footward.example/footward/internal/basis"
	"footward.example/footward/internal/limit"
)

func clauses(ec, us string) [basis.Count]string {
	return [basis.Count]string{basis.Eurocode: ec, basis.USLRFD: us, basis.USASD: us}
}

// The limit states, in the order of an answer. Those of a basis that has no clause
// for them are left out.
var (
	balance = &limit.Kind{ID: "pad_equilibrium", Title: "Resultant on the underside of the pad", Measure: limit.Ratio,
		Clause: clauses("statics", "statics")}
	plainThickness = &limit.Kind{ID: "pad_plain_thickness", Title: "Thickness of a plain pad", Measure: limit.Length,
		Clause: clauses("EN 1992-1-1:2004+AC 12.9.3(1)", "")}
	plainLeast = &limit.Kind{ID: "pad_plain_least_thickness", Title: "Least thickness of a plain pad", Measure: limit.Length,
		Clause: clauses("", "ACI 318-19 14.3.2.1")}
	plainBending = &limit.Kind{ID: "pad_plain_bending", Title: "Plain pad in bending", Measure: limit.UnitMoment,
		Clause: clauses("", "ACI 318-19 14.5.2.1")}
	plainShearing = &limit.Kind{ID: "pad_plain_shear", Title: "Plain pad in shear along a section", Measure: limit.ForceLength,
		Clause: clauses("EN 1992-1-1:2004 12.6.3", "ACI 318-19 Table 14.5.5.1(a)")}
	plainPunching = &limit.Kind{ID: "pad_plain_punching", Title: "Plain pad in punching", Measure: limit.Stress,
		Clause: clauses("", "ACI 318-19 Table 14.5.5.1(b), (c)")}
	top = &limit.Kind{ID: "pad_top_bending", Title: "Top of the pad in tension where it hangs", Measure: limit.UnitMoment,
		Clause: clauses("EN 1992-1-1:2004 12.3.1, 12.9.3", "ACI 318-19 14.5.2.1")}
	bending = [2]*limit.Kind{
		{ID: "pad_bending_x", Title: "Bars along x in bending", Measure: limit.UnitMoment,
			Clause: clauses("EN 1992-1-1:2004 6.1", "ACI 318-19 13.2.7, 22.2")},
		{ID: "pad_bending_y", Title: "Bars along y in bending", Measure: limit.UnitMoment,
			Clause: clauses("EN 1992-1-1:2004 6.1", "ACI 318-19 13.2.7, 22.2")},
	}
	leastSteel = &limit.Kind{ID: "pad_least_reinforcement", Title: "Least share of reinforcement", Measure: limit.Ratio,
		Clause: clauses("EN 1992-1-1:2004 9.2.1.1(1)", "ACI 318-19 7.6.1.1, 8.6.1.1")}
	barSpacing = &limit.Kind{ID: "pad_bar_spacing", Title: "Greatest spacing of the bars", Measure: limit.Length,
		Clause: clauses("EN 1992-1-1:2004 9.3.1.1(3)", "ACI 318-19 8.7.2.2")}
	barDiameter = &limit.Kind{ID: "pad_bar_diameter", Title: "Least diameter of the bars", Measure: limit.Length,
		Clause: clauses("EN 1992-1-1:2004 9.8.2.1(1)", "")}
	anchorage = &limit.Kind{ID: "pad_bar_anchorage", Title: "Anchorage of the bars", Measure: limit.Length,
		Clause: clauses("EN 1992-1-1:2004 9.8.2.2", "ACI 318-19 13.2.8, 25.4.2")}
	cover = &limit.Kind{ID: "pad_cover", Title: "Least cover towards the ground", Measure: limit.Length,
		Clause: clauses("EN 1992-1-1:2004 4.4.1.3(4)", "ACI 318-19 Table 20.5.1.3.1")}
	effective = &limit.Kind{ID: "pad_effective_depth", Title: "Least effective depth", Measure: limit.Length,
		Clause: clauses("", "ACI 318-19 13.3.1.2")}
	shearing = &limit.Kind{ID: "pad_shear", Title: "Shear along a section", Measure: limit.ForceLength,
		Clause: clauses("EN 1992-1-1:2004 6.2.2(1)", "ACI 318-19 22.5.5.1, 13.2.6.2")}
	strut = &limit.Kind{ID: "pad_shear_strut", Title: "Concrete at the face under shear along a section", Measure: limit.ForceLength,
		Clause: clauses("EN 1992-1-1:2004 6.2.1(8), 6.2.2(6)", "")}
	punching = &limit.Kind{ID: "pad_punching", Title: "Punching of the column", Measure: limit.Stress,
		Clause: clauses("EN 1992-1-1:2004 6.4.4(2)", "ACI 318-19 22.6.5.2, 13.2.6.2")}
	perimeter = &limit.Kind{ID: "pad_column_perimeter", Title: "Concrete along the perimeter of the column", Measure: limit.Stress,
		Clause: clauses("EN 1992-1-1:2004 6.4.5(3)", "")}
)

// Kinds returns the limit states of the part in order.
func Kinds() []*limit.Kind {
	return []*limit.Kind{
		balance, plainThickness, plainLeast, plainBending, plainShearing, plainPunching, top, bending[0], bending[1],
		leastSteel, barSpacing, barDiameter, anchorage, cover, effective, shearing, strut, punching, perimeter,
	}
}

// plainKinds is how many kinds stand before those of any pad; one is the balance.
const plainKinds = 6

// Detailing reports whether a limit state is a rule of sizes, which a pad keeps or
// not: how nearly says nothing of its strength.
func Detailing(k *limit.Kind) bool {
	switch k {
	case plainLeast, leastSteel, barSpacing, barDiameter, cover, effective:
		return true
	}
	return false
}
