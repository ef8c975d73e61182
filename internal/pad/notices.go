package pad

import (
	"footward.example/footward/internal/basis"
	"footward.example/footward/internal/limit"
)

// The notices, in the order of an answer.
var (
	line = &limit.Notice{Code: "pad_pressure_line", Severity: limit.Assumption,
		Text: "The pressure on the underside is a straight line without tension, and its greatest value is taken over the whole pad. Soft or layered ground can press otherwise."}
	product = &limit.Notice{Code: "pad_pressure_product", Severity: limit.Info,
		Text: "The pad lifts under eccentricity in both directions: the greatest pressure is the product of the two directions, above that of a plane."}
	hangs = &limit.Notice{Code: "pad_hangs", Severity: limit.Caution,
		Text: "Part of the pad hangs by its weight and that of the soil above: its top is held by plain concrete alone. Check it also with the greatest weight."}
	pulled = &limit.Notice{Code: "pad_pulled", Severity: limit.Caution,
		Text: "The column pulls the pad up: how it is anchored in the pad is not part of this check, nor whether the weight holds it down."}
	one = &limit.Notice{Code: "pad_one_combination", Severity: limit.Assumption,
		Text: "Actions and weight are those of one combination: check every one, also those with the least and with the greatest weight."}
	middle = &limit.Notice{Code: "pad_column_stiff", Severity: limit.Assumption,
		Text: "The column stands at the middle of the pad, on an area that is stiff against it. Under a steel base plate that is at most halfway between column and edge of the plate (ACI 318-19 Table 13.2.7.1)."}
	crushing = &limit.Notice{Code: "pad_not_checked", Severity: limit.Caution,
		Text: "Concrete is taken as of normal weight. Bearing under the column, the ground, torsion, starter bars, crack widths, exposure class and seismic detailing are not part of this check."}
	plainUse = &limit.Notice{Code: "pad_plain_use", Severity: limit.Caution,
		Text: "Plain concrete has no strength left once it has cracked: EN 1992-1-1 12.9.3 names axially loaded pads, and ACI 318-19 14.1.3 limits its use. Frost, swelling ground and settlement crack it."}
	recommended = &limit.Notice{Code: "pad_recommended_values", Severity: limit.Assumption,
		Text: "Nationally determined values are the recommended ones, some of them not compared with the printed edition; v_Rd,max at the column takes 0.4 of A1:2014. gamma_C, alpha_cc, gamma_S and alpha_ct,pl may be given in basis.eurocode."}
	waiver = &limit.Notice{Code: "pad_size_effect", Severity: limit.Info,
		Text: "The size effect in shear is neglected as ACI 318-19 13.2.6.2 allows for footings; size_effect counts it."}
	memory = &limit.Notice{Code: "pad_aci_memory", Severity: limit.Info,
		Text: "The coefficients of ACI 318-19 were not compared with the printed edition: compare them with your copy."}
	even = &limit.Notice{Code: "pad_even_bars", Severity: limit.Assumption,
		Text: "Bars are at an even spacing over the whole width and run from edge to edge. Where the pad is much wider than the column and 3 d, common practice puts two thirds of them within 1.5 d of the column."}
	factored = &limit.Notice{Code: "pad_factored_actions", Severity: limit.Assumption,
		Text: "The actions of this part are taken as factored (ACI 318-19 5.3.1), whatever the basis of the other parts: concrete has no allowable stresses there."}
)

// Remarks returns the notices of the part in order.
func Remarks() []*limit.Notice {
	return []*limit.Notice{line, product, hangs, pulled, one, middle, crushing, plainUse, recommended, waiver, memory, even, factored}
}

// Notices appends the notices.
func (r *Result) Notices(l *limit.Notices) {
	in := r.in
	us, bars := in.Design.Basis.US(), in.reinforced()
	l.Add(line)
	if r.OnPad && !r.Kern && r.Ex > 0 && r.Ey > 0 {
		l.Add(product)
	}
	if r.Hang > 0 {
		l.Add(hangs)
	}
	if in.Actions.N > 0 {
		l.Add(pulled)
	}
	l.Add(one)
	l.Add(middle)
	l.Add(crushing)
	if !bars {
		l.Add(plainUse)
	}
	switch {
	case !us:
		l.Add(recommended)
	case bars && !in.SizeEffect:
		l.Add(waiver)
	}
	if us {
		l.Add(memory)
	}
	if bars {
		l.Add(even)
	}
	if in.Design.Basis == basis.USASD && in.Factored {
		l.Add(factored)
	}
}
