package base

import (
	"math"

	"footward.example/footward/internal/bearing"
	"footward.example/footward/internal/contact"
	"footward.example/footward/internal/geom"
	"footward.example/footward/internal/limit"
	"footward.example/footward/internal/plate"
)

// lever returns how far the level at which plate or grout presses lies below the
// plate's upper face, where the actions act [mm].
func (in *ColumnInput) lever() float64 {
	h := in.Base.Plate.Plate.Thickness
	if in.Base.Support.Medium == bearing.Concrete {
		h += in.Base.Support.Block.GroutThick
	}
	return h
}

// lowered returns actions as they are at a depth. Moments of shear add by their
// amounts, so no sign helps; the sense is that of the sum.
//
//	M_x = M_x - V_y h, M_y = M_y + V_x h, by their amounts
//
// Source: statics.
func lowered(a geom.Actions, depth float64) geom.Actions {
	a.Mx, a.My = amounts(a.Mx, -a.Vy*depth), amounts(a.My, a.Vx*depth)
	return a
}

func amounts(m, by float64) float64 {
	sense := m + by
	if sense == 0 {
		sense = m
	}
	return math.Copysign(math.Abs(m)+math.Abs(by), sense)
}

// onPlate returns the actions for the plate's own method, which knows moments about
// one axis only. What the lever of shear adds about the other is put on as much as it
// would add where both meet: on a moment as if it acted about its axis, on compression
// or uplift alone as if all of the footprint, all rods, had the force of the worst.
//
//	M = M_1 + M_2 r, r the greatest ratio of the sizes of plate, footprint, rods
//	N < 0: N (1 + k e_x/b_x + k e_y/b_y) of the footprint, k = 6, of a pipe 8
//	N > 0: N + M_x/y_r + M_y/x_r of the rods
//
// Source: statics; straight line of pressure.
func (in *ColumnInput) onPlate(own, at geom.Actions) geom.Actions {
	a := at
	mx, my := math.Abs(at.Mx), math.Abs(at.My)
	size := &in.Base.Plate.Plate
	if !plate.Acts(own.Mx, own.N, size.SizeY) {
		own.Mx = 0
	}
	if !plate.Acts(own.My, own.N, size.SizeX) {
		own.My = 0
	}
	if own.Mx == 0 && own.My == 0 {
		p, f := &in.Base.Plate, &in.Base.Plate.Footprint
		x, y := in.reach()
		kern := 6.0
		if p.Footprint.Shape == plate.Pipe {
			kern = 8
		}
		switch compression, uplift := kern*(my/f.SizeX+mx/f.SizeY), over(mx, y)+over(my, x); {
		case at.N < 0 && compression <= -at.N:
			a.N, a.Mx, a.My = at.N-compression, 0, 0
			return a
		case at.N > 0 && in.Base.HasRods && uplift <= at.N:
			a.N, a.Mx, a.My = at.N+uplift, 0, 0
			return a
		}
	} else if own.Mx != 0 && own.My != 0 {
		return a
	}
	if mx == 0 || my == 0 {
		return a
	}
	r := in.ratio()
	if own.My != 0 || own.Mx == 0 && my*r >= mx {
		a.My, a.Mx = math.Copysign(my+mx*in.ratioBack(), at.My), 0
	} else {
		a.Mx, a.My = math.Copysign(mx+my*r, at.Mx), 0
	}
	return a
}

// over returns the force of a moment at an arm, which nothing has where no rod does.
func over(m, arm float64) float64 {
	if m == 0 {
		return 0
	}
	return m / arm
}

// reach returns the least distances of rods off the axes [mm]; 0: none stands off.
func (in *ColumnInput) reach() (x, y float64) {
	least := func(v, than float64) float64 {
		if v = math.Abs(v); v > 0 && (than == 0 || v < than) {
			return v
		}
		return than
	}
	for _, at := range in.Base.At {
		x, y = least(at.X, x), least(at.Y, y)
	}
	return x, y
}

// ratio returns the greatest ratio of sizes along y to those along x [-].
func (in *ColumnInput) ratio() float64 {
	p, f := &in.Base.Plate.Plate, &in.Base.Plate.Footprint
	r := max(p.SizeY/p.SizeX, f.SizeY/f.SizeX)
	if x, y := in.furthest(); x > 0 {
		r = max(r, y/x)
	}
	return r
}

// ratioBack returns the greatest ratio of sizes along x to those along y [-].
func (in *ColumnInput) ratioBack() float64 {
	p, f := &in.Base.Plate.Plate, &in.Base.Plate.Footprint
	r := max(p.SizeX/p.SizeY, f.SizeX/f.SizeY)
	if x, y := in.furthest(); y > 0 {
		r = max(r, x/y)
	}
	return r
}

func (in *ColumnInput) furthest() (x, y float64) {
	for _, at := range in.Base.At {
		x, y = max(x, math.Abs(at.X)), max(y, math.Abs(at.Y))
	}
	return x, y
}

// thicknesses are tried one after another: a thicker plate has a longer lever.
const thicknesses = 12

// thickness raises the thickness that a state requires until the state holds with the
// lever of shear that comes with it; or says none.
func (c *column) thickness(s *limit.State, at int) error {
	var unused limit.Notices
	for range thicknesses {
		in := *c.in
		in.Base.Plate.Plate.Thickness = s.Required * (1 + 1e-9)
		in.Weld.Parts[0].Thickness = in.Base.Plate.Plate.Thickness
		thick := &column{in: &in, given: c.given, strength: c.strength, probe: contact.Solver{Limit: probeSteps}, foot: c.foot}
		thick.prepare()
		if _, err := thick.check(&in.Cases[at], &unused, nil); err != nil {
			return err
		}
		for _, now := range thick.list.All() {
			switch {
			case now.Kind != s.Kind:
			case now.Verdict != limit.Fail:
				return nil
			default:
				s.Required = now.Required
			}
		}
		if s.Required == 0 {
			break
		}
	}
	s.Size, s.Required = limit.NoSize, 0
	return nil
}
