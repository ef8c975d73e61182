package weld_test

import (
	"math"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"

	"footward.example/footward/internal/basis"
	"footward.example/footward/internal/geom"
	"footward.example/footward/internal/limit"
	"footward.example/footward/internal/material"
	"footward.example/footward/internal/weld"
)

// newtons are forces known to a tenth of a newton, either way.
func newtons(most int) *rapid.Generator[float64] {
	return rapid.Map(rapid.IntRange(-10*most, 10*most), func(n int) float64 { return float64(n) / 10 })
}

func drawn(t *rapid.T) weld.Input {
	b := rapid.SampledFrom([]basis.Basis{basis.Eurocode, basis.USLRFD, basis.USASD}).Draw(t, "basis")
	in := fillet(b, 0, rapid.Float64Range(3, 15).Draw(t, "a"), 235, 360, 0.8)
	in.Weld.Type = weld.Type(rapid.IntRange(1, 3).Draw(t, "type"))
	if in.Weld.Type == weld.CompletePenetration {
		in.Weld.Throat = 0
	}
	if in.Weld.Type == weld.Fillet && rapid.Bool().Draw(t, "leg given") {
		in.Weld.Leg, in.Weld.Throat = in.Weld.Throat*1.4, 0
	}
	in.Weld.Parts[1].Thickness = rapid.Float64Range(17, 40).Draw(t, "t")
	in.Weld.Parts[1].Steel = rapid.SampledFrom([]material.Steel{
		{Fy: 355, Fu: 470, BetaW: 0.9}, {Fy: 420, Fu: 480}, {Fy: 215, Fu: 340, BetaW: 0.8}}).Draw(t, "steel")
	in.Weld.Parts[1].AlongEdge = rapid.Bool().Draw(t, "edge") && in.Weld.Type == weld.Fillet &&
		max(in.Weld.Leg, in.Weld.Throat*math.Sqrt2) < in.Weld.Parts[1].Thickness
	in.Weld.FullSize, in.Weld.OwnSection = rapid.Bool().Draw(t, "full"), rapid.Bool().Draw(t, "own")
	in.Weld.Corrosion = rapid.Float64Range(0, 1.5).Draw(t, "corrosion")
	f := newtons(300000)
	if rapid.Bool().Draw(t, "run") {
		in.Run = weld.Run{Length: rapid.Float64Range(20, 3000).Draw(t, "l"), Count: rapid.IntRange(0, 4).Draw(t, "n"),
			Along: f.Draw(t, "along"), Across: f.Draw(t, "across"), Normal: f.Draw(t, "normal"), EndLoaded: rapid.Bool().Draw(t, "end")}
		return in
	}
	in.Group = cShape(rapid.Float64Range(100, 400).Draw(t, "l"), rapid.Float64Range(0.2, 1).Draw(t, "k"), rapid.Float64Range(0, 2).Draw(t, "arm"))
	in.Group.Method = weld.Elastic
	in.Group.EndLoaded = rapid.Bool().Draw(t, "lap")
	if rapid.Bool().Draw(t, "closed") {
		s := in.Group.Segments
		in.Group.Segments = append(s[:len(s):len(s)], geom.Segment{A: s[len(s)-1].B, B: s[0].A})
		in.Group.Continuous = in.Group.Segments[0].B == in.Group.Segments[1].A && in.Group.Segments[1].B == in.Group.Segments[2].A
	}
	in.Group.AtZ = rapid.Float64Range(-300, 300).Draw(t, "z")
	in.Group.Actions = geom.Actions{N: f.Draw(t, "N"), Vx: f.Draw(t, "Vx"), Vy: f.Draw(t, "Vy"),
		Mx: 50 * f.Draw(t, "Mx"), My: 50 * f.Draw(t, "My"), T: 50 * f.Draw(t, "T")}
	return in
}

// move turns, shifts and perhaps mirrors a group with its actions, and runs its
// segments the other way.
func move(t *rapid.T, g weld.Group) weld.Group {
	phi := rapid.Float64Range(0, 2*math.Pi).Draw(t, "turn")
	c, s := math.Cos(phi), math.Sin(phi)
	flip := rapid.SampledFrom([]float64{1, -1}).Draw(t, "mirror")
	turn := func(x, y float64) (float64, float64) { return c*x - s*flip*y, s*x + c*flip*y }
	dx, dy := rapid.Float64Range(-500, 500).Draw(t, "dx"), rapid.Float64Range(-500, 500).Draw(t, "dy")
	at := func(p geom.Point) geom.Point {
		x, y := turn(p.X, p.Y)
		return geom.Point{X: x + dx, Y: y + dy}
	}
	out := g
	out.Segments = nil
	for _, s := range slices.Backward(g.Segments) {
		out.Segments = append(out.Segments, geom.Segment{A: at(s.B), B: at(s.A)})
	}
	a := &out.Actions
	a.Vx, a.Vy = turn(a.Vx, a.Vy)
	// Moments are axial vectors: a mirror turns them round.
	a.Mx, a.My = turn(a.Mx, a.My)
	a.Mx, a.My, a.T = flip*a.Mx, flip*a.My, flip*a.T
	p := at(geom.Point{X: g.AtX, Y: g.AtY})
	out.AtX, out.AtY = p.X, p.Y
	return out
}

var strengths = []string{"weld_directional", "weld_normal_stress", "weld_simplified", "weld_full_penetration", "weld_metal",
	"weld_groove", "weld_base_metal"}

// used is a utilization, infinite where no resistance is left.
func used(s limit.State) float64 {
	if s.Verdict == limit.Fail && !s.Rated {
		return math.Inf(1)
	}
	return s.Utilization
}

func TestThickerThroatIsNeverWeaker(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := drawn(t)
		in.Weld.FullSize = true            // else a thicker throat shortens the run
		in.Weld.Parts[1].AlongEdge = false // else it may not fit its edge
		_, before := check(t, &in)
		in.Weld.Throat, in.Weld.Leg = 1.1*in.Weld.Throat, 1.1*in.Weld.Leg
		_, after := check(t, &in)
		for _, id := range strengths {
			assert.LessOrEqual(t, used(after[id]), used(before[id])*(1+1e-12), id)
		}
	})
}

func TestCorrosionNeverStrengthensAndLeavesDetailingAlone(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := drawn(t)
		_, before := check(t, &in)
		in.Weld.Corrosion += 0.5
		_, after := check(t, &in)
		for _, id := range strengths {
			assert.GreaterOrEqual(t, used(after[id]), used(before[id])*(1-1e-12), id)
		}
		for _, id := range []string{"weld_throat_minimum", "weld_size_minimum", "weld_size_maximum", "weld_length_minimum"} {
			assert.Equal(t, before[id], after[id], id)
		}
	})
}

func TestDirectionalNeverAsksMoreThanSimplified(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := drawn(t)
		in.Design.Basis = basis.Eurocode
		_, s := check(t, &in)
		assert.LessOrEqual(t, used(s["weld_directional"]), used(s["weld_simplified"])*(1+1e-12))
	})
}

// eaten reports whether a throat takes just all of a segment at its ends: whether that
// segment is still there is a matter of the last digit.
func eaten(in *weld.Input, throat float64) bool {
	for i := range in.Group.Segments {
		if math.Abs(2*throat-in.Group.Segments[i].Length()) < 1e-6*throat {
			return true
		}
	}
	return false
}

func TestMovedGroupGivesTheSameAnswer(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := drawn(t)
		if len(in.Group.Segments) == 0 {
			t.Skip("a run has no place")
		}
		moved := in
		moved.Group = move(t, in.Group)
		_, before := check(t, &in)
		_, after := check(t, &moved)
		for _, id := range strengths {
			assert.InDelta(t, before[id].Utilization, after[id].Utilization, 1e-7*(1+before[id].Utilization), id)
			if eaten(&in, before[id].Required) || eaten(&in, after[id].Required) {
				continue
			}
			assert.InDelta(t, before[id].Required, after[id].Required, 1e-6*(1+before[id].Required), id)
		}
	})
}

func TestFlowsAddUpToTheActions(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := drawn(t)
		if len(in.Group.Segments) == 0 {
			t.Skip("a run")
		}
		r, _ := check(t, &in)
		if r.Reason != "" || r.Group.N < 100 {
			t.Skip("little left of the ends")
		}
		var sum geom.Actions
		for i := range in.Group.Segments {
			s := in.Group.Segments[i].Trimmed(r.End)
			// Simpson's rule is exact for moments of a linear flow.
			for j, share := range [3]float64{1. / 6, 4. / 6, 1. / 6} {
				k := float64(j) / 2
				p := geom.Point{X: s.A.X + k*(s.B.X-s.A.X), Y: s.A.Y + k*(s.B.Y-s.A.Y)}
				l := share * s.Length()
				n := l * r.Share.Axial(p)
				x, y := r.Share.Shear(p)
				x, y = l*x, l*y
				sum.N += n
				sum.Vx += x
				sum.Vy += y
				sum.Mx += p.Y * n
				sum.My -= p.X * n
				sum.T += p.X*y - p.Y*x
			}
		}
		g, a := &in.Group, in.Group.Actions
		assert.InDelta(t, a.N, sum.N, 1e-3)
		assert.InDelta(t, a.Vx, sum.Vx, 1e-3)
		assert.InDelta(t, a.Vy, sum.Vy, 1e-3)
		assert.InDelta(t, a.Mx+g.AtY*a.N-g.AtZ*a.Vy, sum.Mx, 1)
		assert.InDelta(t, a.My+g.AtZ*a.Vx-g.AtX*a.N, sum.My, 1)
		assert.InDelta(t, a.T+g.AtX*a.Vy-g.AtY*a.Vx, sum.T, 1)
	})
}

func TestTwiceTheLoadIsTwiceTheUse(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := drawn(t)
		_, once := check(t, &in)
		r := &in.Run
		r.Along, r.Across, r.Normal = 2*r.Along, 2*r.Across, 2*r.Normal
		a := &in.Group.Actions
		*a = geom.Actions{N: 2 * a.N, Vx: 2 * a.Vx, Vy: 2 * a.Vy, Mx: 2 * a.Mx, My: 2 * a.My, T: 2 * a.T}
		_, twice := check(t, &in)
		for _, id := range strengths {
			assert.InDelta(t, 2*once[id].Utilization, twice[id].Utilization, 1e-9*(1+once[id].Utilization), id)
		}
	})
}

func TestGroupOfOneIsARun(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := drawn(t)
		in.Run.EndLoaded, in.Run.Count, in.Weld.OwnSection = false, 1, true
		in.Group = weld.Group{}
		in.Run.Length = rapid.Float64Range(60, 900).Draw(t, "length")
		group := in
		group.Group.Segments = []geom.Segment{{A: geom.Point{X: -in.Run.Length / 2}, B: geom.Point{X: in.Run.Length / 2}}}
		group.Group.Actions = geom.Actions{Vx: in.Run.Along, Vy: in.Run.Across, N: in.Run.Normal}
		_, run := check(t, &in)
		r, one := check(t, &group)
		for _, id := range strengths {
			u := run[id].Utilization
			if id == "weld_metal" {
				single, _ := check(t, &in)
				u *= single.US.Kds / max(1, r.US.Kds)
			}
			assert.InDelta(t, u, one[id].Utilization, 1e-9*(1+u), id)
		}
	})
}

func TestRequiredSizesPassAndAreLeast(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := drawn(t)
		if rapid.Bool().Draw(t, "about the centre") && len(in.Group.Segments) > 0 && in.Design.Basis.US() && in.Weld.Type == weld.Fillet {
			a := &in.Group.Actions
			in.Group.Method, a.N, a.Mx, a.My, in.Group.AtZ = weld.InstantaneousCentre, 0, 0, 0, 0
			in.Group.EndLoaded = false
		}
		_, s := check(t, &in)
		for id, state := range s {
			size := state.Required
			feed := func(size float64) (limit.State, bool) {
				fed := in
				fed.Weld.Leg, fed.Weld.Throat = 0, 0
				switch state.Size {
				case limit.WeldThroat:
					fed.Weld.Throat = size
				case limit.WeldLeg:
					fed.Weld.Leg = size
				case limit.WeldLength:
					if len(in.Group.Segments) > 0 {
						return limit.State{}, false
					}
					fed = in
					fed.Run.Length = size
				}
				var f limit.Faults
				if weld.Validate(&fed, &f); len(f) > 0 {
					return limit.State{}, false
				}
				_, q := check(t, &fed)
				return q[id], true
			}
			if state.Size == limit.NoSize {
				continue
			}
			if q, ok := feed(size); ok {
				assert.LessOrEqual(t, used(q), 1+1e-9, "%s: %g", id, size)
			} else if state.Size != limit.WeldLength {
				assert.LessOrEqual(t, size, in.Weld.Corrosion*1.5+0.01, "%s: %g is refused", id, size)
			}
			if q, ok := feed(size * 0.999); ok && size > in.Weld.Corrosion*1.5+0.01 {
				assert.Greater(t, used(q), 0.999, "%s: %g is not the least", id, size)
			}
		}
	})
}
