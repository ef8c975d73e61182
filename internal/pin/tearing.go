package pin

import (
	"math"

	"footward.example/footward/internal/basis"
	"footward.example/footward/internal/limit"
)

const (
	clauseTearingEC = "EN 1993-1-8:2005 3.10.2"
	clauseTearingUS = "AISC 360-22 J4.3"
)

const (
	eccentric = 0.5 // of the tension; EN 1993-1-8:2005 (3.10), U_bs of AISC 360-22 J4.3
	ofShear   = 0.6 // AISC 360-22 (J4-5)
)

// Tearing is the block of all plates that tears out towards a free edge, where it
// is worst in one direction; areas and forces of all plates together.
type Tearing struct {
	Lines  int     // of pins, side by side, that come out together; 0: none
	Planes int     // of shear: 2, or 1 where it tears through the edge beside it
	Force  float64 // [N]
	Net    float64 // net area in shear A_nv [mm2]
	Gross  float64 // gross area in shear A_gv [mm2]
	Across float64 // net area in tension A_nt [mm2]
	Holds  float64 // resistance [N]
}

// lines are lines of pins that run towards a free edge of the plates.
type lines struct {
	count, pins  int
	force        float64 // along them, of all pins [N]
	apart, pitch float64 // of the lines, and of the pins in them [mm]
	end, beside  float64 // to the free edge, and to the edge beside the lines [mm]
}

// carries returns what a pin of a line carries along it, the lines counted from the
// one that carries most [N].
//
// Source: elastic method of bolt groups.
func (r *Result) carries(v *lines, line int) float64 {
	f := v.force / float64(r.Pins)
	if r.Polar > 0 {
		f += math.Abs(r.in.Actions.M) * v.apart * (float64(v.count-1)/2 - float64(line)) / r.Polar
	}
	return f
}

// together returns what the k lines that carry most carry along them [N].
//
//	F = k n (N/(m n) + |M| a (m - k)/(2 J))
//
// Source: elastic method of bolt groups.
func (r *Result) together(v *lines, k int) float64 {
	f := v.force / float64(r.Pins)
	if r.Polar > 0 {
		f += math.Abs(r.in.Actions.M) * v.apart * float64(v.count-k) / (2 * r.Polar)
	}
	return float64(k*v.pins) * f
}

// rows returns the rows of pins, which run along the column to the end of plates
// and timber.
func (r *Result) rows() lines {
	l := &r.in.Layout
	edge, _, _ := r.in.around()
	return lines{count: l.Rows, pins: l.InRow, force: r.Nj, apart: l.SpacingAcross, pitch: l.SpacingAlong,
		end: r.in.Plates.EndDistance, beside: edge}
}

// levels returns the levels of pins, which run across the column to the edges of
// the plates. The highest counts as the one that carries most, whichever way
// force and moment act; above it the plates end, below they go on to their foot.
func (r *Result) levels() lines {
	l := &r.in.Layout
	edge, _, _ := r.in.around()
	return lines{count: l.InRow, pins: l.Rows, force: math.Abs(r.in.Actions.V), apart: l.SpacingAlong, pitch: l.SpacingAcross,
		end: edge, beside: r.in.Plates.EndDistance}
}

// torn returns the block that tears out in one direction where it is worst, for
// plates of given strengths: between two planes of shear, or through the edge
// beside it with one. A single hole is held by its bearing and tear-out.
//
//	EN: V_eff,1,Rd = f_u A_nt/gamma_M2 + f_y A_nv/(sqrt(3) gamma_M0)
//	    V_eff,2,Rd with half of the tension, where a moment acts
//	US: 0.60 F_u A_nv + U_bs F_u A_nt <= 0.60 F_y A_gv + U_bs F_u A_nt, U_bs 1, or 0.5 with a moment
//
// Source: EN 1993-1-8:2005 3.10.2; AISC 360-22 (J4-5).
func (r *Result) torn(v *lines, fy, fu float64) (worst Tearing) {
	in, s, even, most := r.in, &r.Steel, 1.0, -1.0
	if in.Actions.M != 0 {
		even = eccentric
	}
	hole := in.Plates.Hole
	if !r.ec {
		hole += wider
	}
	thick := s.Count * s.T
	net := thick * (float64(v.pins-1)*max(0, v.pitch-hole) + max(0, v.end-hole/2))
	gross := thick * (float64(v.pins-1)*v.pitch + v.end)
	for k := 1; k <= v.count && r.carries(v, k-1) > 0; k++ {
		if k*v.pins == 1 {
			continue
		}
		t := Tearing{Lines: k, Force: r.Uneven * r.together(v, k), Across: thick * float64(k-1) * max(0, v.apart-hole)}
		for t.Planes = 2; t.Planes > 0; t.Planes-- {
			t.Net, t.Gross = float64(t.Planes)*net, float64(t.Planes)*gross
			if r.ec {
				g := &in.Design.EC
				t.Holds = even*fu*t.Across/g.GammaM2 + fy*t.Net/(math.Sqrt(3)*g.GammaM0)
			} else {
				t.Holds = basis.Rupture.Factor(in.Design.Basis) * (ofShear*min(fu*t.Net, fy*t.Gross) + even*fu*t.Across)
			}
			if u := use(t.Force, t.Holds); u > most {
				most, worst = u, t
			}
			t.Across += thick * max(0, v.beside-hole/2)
		}
	}
	return worst
}

// tearing sets what tears the plates towards their end and towards their side.
func (r *Result) tearing() {
	s := &r.Steel
	if r.Unshared != "" || r.Pins == 1 {
		return
	}
	rows, levels := r.rows(), r.levels()
	s.Ends, s.Sides = r.torn(&rows, s.Fy, s.Fu), r.torn(&levels, s.Fy, s.Fu)
	s.Torn, s.Whole = s.Ends.Force, s.Ends.Holds
	switch {
	case s.Sides.Lines == 0:
	case s.Ends.Lines == 0:
		s.Torn, s.Whole = s.Sides.Force, s.Sides.Holds
	default:
		// What holds two loads each alone holds shares of them that sum up to one:
		// limit analysis, the region of loads that are held is convex.
		s.Torn += use(s.Sides.Force, s.Sides.Holds) * s.Ends.Holds
	}
}

// toTearing returns the thickness of the plates that block tearing needs.
func (r *Result) toTearing(*limit.State) size {
	s, rows, levels := &r.Steel, r.rows(), r.levels()
	return r.plate(func(fy, fu float64) float64 {
		ends, sides := r.torn(&rows, fy, fu), r.torn(&levels, fy, fu)
		return s.T * (use(ends.Force, ends.Holds) + use(sides.Force, sides.Holds))
	})
}
