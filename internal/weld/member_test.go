package weld_test

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"footward.example/footward/internal/basis"
	"footward.example/footward/internal/geom"
	"footward.example/footward/internal/limit"
)

// TestForceTurnedByAnyAngleIsNeverUsedLess than its parts along x and along y alone, in a
// rectangle of welds: each line has its share of both, along it or across.
func TestForceTurnedByAnyAngleIsNeverUsedLess(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := fillet(rapid.SampledFrom([]basis.Basis{basis.Eurocode, basis.USLRFD, basis.USASD}).Draw(t, "basis"), 0, 6, 235, 360, 0.8)
		x, y := rapid.Float64Range(60, 300).Draw(t, "x"), rapid.Float64Range(60, 300).Draw(t, "y")
		at := [4]geom.Point{{X: -x, Y: -y}, {X: x, Y: -y}, {X: x, Y: y}, {X: -x, Y: y}}
		for i := range at {
			in.Group.Segments = append(in.Group.Segments, geom.Segment{A: at[i], B: at[(i+1)%4]})
		}
		n := newtons(300000).Draw(t, "N")
		v, angle := math.Abs(newtons(300000).Draw(t, "V")), rapid.Float64Range(0, 2*math.Pi).Draw(t, "angle")
		load := func(a, b float64) map[string]limit.State {
			in.Group.Actions = geom.Actions{N: n, Vx: v * a, Vy: v * b, Mx: -100 * v * b, My: 100 * v * a}
			_, s := check(t, &in)
			return s
		}
		s, c := math.Sincos(angle)
		whole := load(c, s)
		for _, part := range []map[string]limit.State{load(c, 0), load(0, s)} {
			for _, id := range strengths {
				if !(used(whole[id]) >= used(part[id])*(1-1e-9)) {
					t.Fatalf("%s: %g of all, %g of a part", id, used(whole[id]), used(part[id]))
				}
			}
		}
	})
}

// TestNoSegmentIsHiddenByTheOthers: a group is never used less than any one of its
// segments as a run of its own under the force that the group gives its worse end.
func TestNoSegmentIsHiddenByTheOthers(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := drawn(t)
		if len(in.Group.Segments) == 0 || in.Weld.Type != 1 || in.Group.EndLoaded || in.Group.Continuous {
			return // no group of fillets with ends
		}
		in.Weld.FullSize, in.Weld.OwnSection = true, true
		r, states := check(t, &in)
		if r.Reason != "" {
			return
		}
		k := rapid.IntRange(0, len(in.Group.Segments)-1).Draw(t, "segment")
		g := &in.Group.Segments[k]
		for _, p := range []geom.Point{g.A, g.B} {
			l := g.Length()
			ux, uy := (g.B.X-g.A.X)/l, (g.B.Y-g.A.Y)/l
			vx, vy := r.Share.Shear(p)
			alone := in
			alone.Group.Segments = nil
			alone.Run.Length, alone.Run.Count, alone.Run.EndLoaded = l, 1, false
			alone.Run.Along, alone.Run.Across, alone.Run.Normal = l*(vx*ux+vy*uy), l*(-vx*uy+vy*ux), l*r.Share.Axial(p)
			one, run := check(t, &alone)
			for _, id := range []string{"weld_directional", "weld_normal_stress", "weld_metal"} {
				u := used(run[id])
				if id == "weld_metal" {
					u *= max(1, one.US.Kds) // no increase by direction within a group
				}
				if !(used(states[id]) >= u*(1-1e-9)) {
					t.Fatalf("%s: %g of the group, %g of segment %d", id, used(states[id]), u, k)
				}
			}
		}
	})
}
