package pin_test

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"footward.example/footward/internal/limit"
	"footward.example/footward/internal/pin"
)

// never holds each state that is evaluated both times, but for the distances, which the tables
// ask for by the angle of the force.
func never(t *rapid.T, less, than map[string]limit.State, what string) {
	use := func(s limit.State) (float64, bool) {
		if s.Verdict == limit.Fail && !s.Rated {
			return math.Inf(1), true
		}
		return s.Utilization, s.Rated && (s.Verdict == limit.Pass || s.Verdict == limit.Fail)
	}
	for id, s := range than {
		was, known := use(s)
		now, still := use(less[id])
		if known && still && id != "pin_spacing" && !(now >= was*(1-1e-9)) {
			t.Fatalf("%s: %s uses %g, not %g", what, id, now, was)
		}
	}
}

// most is the greatest use but for distances, infinite where one fails without a number;
// and where one is out of scope if that counts.
func most(states map[string]limit.State, scope bool) (u float64) {
	for id, s := range states {
		switch {
		case id == "pin_spacing":
		case scope && s.Verdict == limit.OutOfScope:
			return math.Inf(1)
		case s.Verdict == limit.Fail && !s.Rated:
			return math.Inf(1)
		case s.Rated && (s.Verdict == limit.Pass || s.Verdict == limit.Fail):
			u = max(u, s.Utilization)
		}
	}
	return u
}

// TestForceTurnedByAnyAngleIsNeverUsedLess than its parts along the column and across it, by
// what governs: the number of pins that count grows with the angle (EN 1995-1-1
// 8.5.1.1(4)), for which the part along the row is held by itself (8.1.2(5)). Hankinson's
// line of the NDS has hollows between the axes, Z_perp being so much less: 15 %.
func TestForceTurnedByAnyAngleIsNeverUsedLess(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := random(t)
		in.EndBears = false
		f, angle := float64(rapid.IntRange(100, 50000).Draw(t, "F")), rapid.Float64Range(0, 2*math.Pi).Draw(t, "angle")
		s, c := math.Sincos(angle)
		load := func(n, v float64) float64 {
			out := *in
			out.Actions = pin.Actions{N: f * n, V: f * v}
			_, states := check(t, &out)
			return most(states, n*v != 0)
		}
		slack := 1e-9
		if in.Design.Basis.US() {
			slack = 0.15
		}
		whole, along, across := load(c, s), load(c, 0), load(0, s)
		if !(whole >= max(along, across)*(1-slack)) {
			t.Fatalf("%g of all, %g along, %g across", whole, along, across)
		}
	})
}

// TestMomentThatLoadsOnePinMoreIsNeverUsedLess: a moment takes from some pins what it gives
// to others.
func TestMomentThatLoadsOnePinMoreIsNeverUsedLess(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := random(t)
		in.EndBears = false
		if in.Layout.Rows < 2 || in.Layout.InRow < 2 {
			return // a single hole of a line is held by its bearing, no block is torn there
		}
		in.Actions.N, in.Actions.V = math.Round(in.Actions.N), math.Round(in.Actions.V)
		in.Actions.M = float64(rapid.IntRange(-5000, 5000).Draw(t, "M Nm")) * 1000
		even := *in
		even.Actions.M = 0
		_, whole := check(t, in)
		_, without := check(t, &even)
		never(t, whole, without, "with a moment")
	})
}
