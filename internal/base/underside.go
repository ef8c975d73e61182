package base

import (
	"math"
	"slices"

	"footward.example/footward/internal/basis"
	"footward.example/footward/internal/bed"
	"footward.example/footward/internal/geom"
	"footward.example/footward/internal/limit"
	"footward.example/footward/internal/tie"
)

var underside = &limit.Kind{
	ID: "bottom_plate_on_ground", Title: "Bottom plate in bending on the ground", Measure: limit.UnitMoment, Model: true,
	Clause: [basis.Count]string{
		basis.Eurocode: "EN 1993-1-1:2005 6.2.5, elastic; thin plate on a bed without tension",
		basis.USLRFD:   "AISC 360-22 F11; thin plate on a bed without tension",
		basis.USASD:    "AISC 360-22 F11; thin plate on a bed without tension",
	},
}

// bottomPlate holds a bottom plate that reaches past the fill against its bending
// on the ground, as a thin plate on a bed without tension, pressed by a square of the
// area of the fill's circle, under every combination, its weight as much as it presses
// and as much as surely does: compression bends the plate, and holds it down where a
// moment would lift it.
//
// Where rods stand outside the fill, what they bend the plate at most comes on top.
//
// Source: Kirchhoff's plate theory.
func (c *column) bottomPlate(r *ColumnResult) error {
	if !c.held() {
		return nil
	}
	p := &c.foot.plan
	b := &c.in.Anchorage.Through.Plate
	if p.side == 0 {
		why := "no part of it reaches past the fill"
		if min(b.SizeX, b.SizeY) > p.stack {
			why = "what reaches past the fill does not count: the stiffness of the ground is not known"
		}
		r.take(limit.Skip(underside, why), -1)
		return nil
	}
	side := p.stack * math.Sqrt(math.Pi) / 2
	bent, by := 0.0, ""
	var solver bed.Solver
	for _, acts := range c.presses() {
		if err := c.in.stopped(); err != nil {
			return err
		}
		solved, err := solver.Solve(&bed.Input{
			Plate: *thin(b, c.in.Base.Plate.Design.Basis), Modulus: c.in.Below.Subgrade,
			Patches: []bed.Patch{{SizeX: side, SizeY: side, N: acts.N, Mx: acts.Mx, My: acts.My}},
		})
		if err != nil {
			s := limit.Beyond(underside, "the plate cannot be computed as a thin plate on the ground: "+err.Error())
			s.Combination = acts.name
			r.take(s, -1)
			return nil
		}
		m := 0.0
		for _, v := range [...]*bed.Bending{&solved.X, &solved.Y} {
			m = max(m, math.Abs(v.Sag.Unit), math.Abs(v.Hog.Unit), v.Most)
		}
		if m > bent {
			bent, by = m, acts.name
		}
	}
	s := limit.Evaluate(underside, bent+c.foot.outer, tie.MomentResistance(b, &c.in.Base.Plate.Design))
	s.Combination = by
	r.take(s, -1)
	return nil
}

// press is what presses on the ground under a combination.
type press struct {
	geom.Actions
	name string
}

// outdoes reports whether what presses bends a plate on a bed without tension at least
// as much as another does: with the forces grow all moments of the plate alike, and of
// the same compression the one further out bends it more.
func (p *press) outdoes(other *press) bool {
	return p.N <= other.N && p.Mx*other.N <= other.Mx*p.N && p.My*other.N <= other.My*p.N
}

// turns reports whether the moments of what presses are at least those of another.
func (p *press) turns(other *press) bool { return p.Mx >= other.Mx && p.My >= other.My }

// presses returns what presses at the underside of the footing under all combinations,
// with the most and with the least of its weight, but for what others outdo: one, or two
// of at least its moments, one of less and one of more compression. What lifts is for the
// ground to fail.
func (c *column) presses() []press {
	p, safety := &c.foot.plan, &c.foot.stack.Safety
	var all []press
	for i := range c.in.Cases {
		at := p.move(c.in.Cases[i].Actions)
		for _, factor := range [...]float64{safety.Unfavourable, min(1, safety.Favourable)} {
			a := press{name: c.in.Cases[i].Name, Actions: geom.Actions{
				N:  at.N - factor*p.weight,
				Mx: math.Abs(at.Mx) + math.Abs(at.Vy)*p.height, My: math.Abs(at.My) + math.Abs(at.Vx)*p.height,
			}}
			if a.N < 0 && !slices.ContainsFunc(all, func(o press) bool { return o.outdoes(&a) }) {
				all = append(slices.DeleteFunc(all, func(o press) bool { return a.outdoes(&o) }), a)
			}
		}
	}
	return slices.DeleteFunc(slices.Clone(all), func(a press) bool {
		return slices.ContainsFunc(all, func(o press) bool { return o.N < a.N && o.turns(&a) }) &&
			slices.ContainsFunc(all, func(o press) bool { return o.N > a.N && o.turns(&a) })
	})
}
