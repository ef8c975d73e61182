package size

import (
	"fmt"
	"slices"

	"footward.example/footward/internal/base"
	"footward.example/footward/internal/basis"
	"footward.example/footward/internal/geom"
	"footward.example/footward/internal/ground"
	"footward.example/footward/internal/limit"
	"footward.example/footward/internal/pad"
)

// Partial factors of set A1, which is that of strength; national annexes may change
// them. Source: EN 1997-1:2004 Table A.3; EN 1990:2002 Table A1.2(B), 6.10.
const (
	gammaG = 1.35
	gammaQ = 1.5
)

// cases returns what the concrete must hold.
func (in *PadInput) cases() []PadCase {
	if len(in.Cases) > 0 {
		return in.Cases
	}
	g, q := in.Ground.Permanent, in.Ground.Variable
	if in.Ground.Design.Basis != basis.Eurocode {
		return []PadCase{{Name: "as for the ground", Actions: sum(g, 1, q, 1), Weight: in.WeightFactor}}
	}
	var out []PadCase
	add := func(name string, factor float64, q geom.Actions) {
		out = append(out, PadCase{Name: fmt.Sprintf("%g G%s", factor, name), Actions: sum(g, factor, q, gammaQ), Weight: factor})
	}
	for _, factor := range [...]float64{gammaG, 1} {
		if q == (geom.Actions{}) {
			add("", factor, q)
			continue
		}
		add(" + 1.5 Q", factor, q)
		add("", factor, geom.Actions{})
		if !in.Ground.Linked && q.N != 0 {
			pushes := q
			pushes.N = 0
			add(" + 1.5 Q without its force on the pad", factor, pushes)
		}
	}
	return out
}

// wet returns the same where water stays below the base, and each with and without its
// lift where it may stand higher.
func (in *PadInput) wet() []PadCase {
	all := in.cases()
	if g := &in.Ground; g.Soil.Dry || g.Soil.Water >= g.Depth {
		return all
	}
	out := slices.Clone(all)
	for _, k := range all {
		k.Afloat = true
		out = append(out, k)
	}
	return out
}

// pairs returns what the ground must hold.
func (in *PadInput) pairs() []base.Pair {
	if len(in.Pairs) > 0 {
		return in.Pairs
	}
	k := base.Pair{Permanent: in.Ground.Permanent, Variable: in.Ground.Variable, Weight: 1}
	if in.Ground.Design.Basis == basis.USLRFD {
		k.Weight = in.WeightFactor
	}
	return []base.Pair{k}
}

func sum(a geom.Actions, f float64, b geom.Actions, g float64) geom.Actions {
	return geom.Actions{
		N: f*a.N + g*b.N, Vx: f*a.Vx + g*b.Vx, Vy: f*a.Vy + g*b.Vy, Mx: f*a.Mx + g*b.Mx, My: f*a.My + g*b.My, T: f*a.T + g*b.T,
	}
}

func within(v, low, high float64) bool { return v >= low && v <= high }

// ValidatePad adds to faults everything that does not fit, of ground and pad that of
// the largest choice: what only a smaller one lacks the room for is passed over.
func ValidatePad(in *PadInput, faults *limit.Faults) {
	before := len(*faults)
	validateOffer(in, faults)
	if len(*faults) > before {
		return
	}
	s := newPads(in)
	x := in.Plan.at(in.Plan.count() - 1)
	s.build(&PadChoice{SizeX: x, SizeY: in.across(x), Thickness: in.Thickness.at(in.Thickness.count() - 1), Bars: s.bars[0]})
	ground.Validate(&s.ground, faults)
	for _, c := range s.cases {
		var own limit.Faults
		s.pad.Actions = c.Actions
		pad.Validate(&s.pad, &own)
		for _, f := range own {
			if !slices.ContainsFunc(*faults, func(g limit.Invalid) bool { return g.Field == f.Field }) {
				*faults = append(*faults, f)
			}
		}
	}
}

func validateOffer(in *PadInput, faults *limit.Faults) {
	steps := func(field string, s Steps, least, most float64) (n int) {
		if !within(s.Least, least, most) || !within(s.Most, s.Least, most) {
			faults.Add(limit.OutOfRange, field, fmt.Sprintf("must go from at least %g to at most %g mm", least, most))
			return 0
		}
		if !within(s.Step, 1, most) {
			faults.Add(limit.OutOfRange, field+".step_mm", "must be at least 1 mm")
			return 0
		}
		return s.count()
	}
	plans, depths := steps("plan", in.Plan, 100, 1e5), steps("thickness", in.Thickness, 50, 1e4)
	if n := float64(plans) * float64(depths) * float64(max(1, len(in.Bars))); n > MostChoices {
		faults.Add(limit.Number, "plan", fmt.Sprintf("makes with thicknesses and bars more than %d choices", MostChoices))
	}
	for _, f := range [...]struct {
		field          string
		v, least, most float64
	}{
		{"above_mm", in.Above, 0, 1e5}, {"above_mm", in.Foot, 0, 1e5}, {"plinth_x_mm", in.Plinth.SizeX, 0, 1e5}, {"plinth_y_mm", in.Plinth.SizeY, 0, 1e5}, {"above_mm", in.Plinth.Plate, 0, 1e4}, {"concrete_unit_weight_kn_m3", in.Concrete, 0, 1e-4}, {"soil_unit_weight_kn_m3", in.Soil, 0, 4e-5},
		{"max_utilization", in.Most, 1e-3, 1},
	} {
		if !within(f.v, f.least, f.most) {
			faults.Add(limit.OutOfRange, f.field, fmt.Sprintf("must be a number from %g to %g in N and mm", f.least, f.most))
		}
	}
	if in.Aspect != 0 && !within(in.Aspect, 0.1, 10) {
		faults.Add(limit.OutOfRange, "aspect", "must be from 0.1 to 10")
	}
	if in.Soil == 0 && in.Ground.Depth > in.Thickness.Least {
		faults.Add(limit.Missing, "soil_unit_weight_kn_m3", "is needed: soil lies on a pad whose base is deeper than it is thick")
	}
	for i, b := range in.Bars {
		if !within(b.Diameter, 1, 100) || !within(b.Spacing, pad.LeastSpacing(b.Diameter), 5000) {
			faults.Add(limit.OutOfRange, fmt.Sprintf("bars[%d]", i), fmt.Sprintf("needs a diameter and a spacing of at least %.0f mm", pad.LeastSpacing(b.Diameter)))
		}
	}
	for i := range in.Pairs {
		if !within(in.Pairs[i].Weight, 0, 3) {
			faults.Add(limit.OutOfRange, fmt.Sprintf("pairs[%d].weight_factor", i), "must be from 0 to 3")
		}
	}
	for i, c := range in.Cases {
		if !within(c.Weight, 0, 3) {
			faults.Add(limit.OutOfRange, fmt.Sprintf("cases[%d].weight_factor", i), "must be from 0 to 3")
		}
	}
	switch b := in.Ground.Design.Basis; {
	case b == basis.USASD && len(in.Cases) == 0:
		faults.Add(limit.Missing, "cases", "of factored actions are needed: concrete has no allowable stresses in ACI 318-19")
	case b == basis.USLRFD && len(in.Pairs) == 0 && !within(in.WeightFactor, 0.1, 3):
		faults.Add(limit.OutOfRange, "weight_factor", "is needed from 0.1 to 3: the combination's own on the weight")
	}
}
