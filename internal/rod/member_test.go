package rod_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"

	"footward.example/footward/internal/basis"
	"footward.example/footward/internal/geom"
	"footward.example/footward/internal/limit"
	"footward.example/footward/internal/rod"
)

// used is what a state uses, infinite where it fails without a number; known is false
// where it is not evaluated.
func used(s limit.State) (u float64, known bool) {
	switch {
	case s.Verdict == limit.Fail && !s.Rated:
		return math.Inf(1), true
	case s.Verdict == limit.Pass || s.Verdict == limit.Fail:
		return s.Utilization, true
	}
	return 0, false
}

// never holds each state that is known both times, but for base_shear, which holds the sum of
// all shears by its clause; the worst rod is held by rod_shear.
func never(t *rapid.T, less, than map[string]limit.State, what string) {
	for id, s := range than {
		was, known := used(s)
		now, still := used(less[id])
		if known && still && id != "base_shear" && !(now >= was*(1-1e-9)) {
			t.Fatalf("%s: %s uses %g of it, %g before", what, id, now, was)
		}
	}
}

// apart gives every rod a force of its own, of whole newtons.
func apart(t *rapid.T) *rod.Input {
	in := drawn(t)
	in.Actions = geom.Actions{}
	in.Each = make([]rod.Force, len(in.At))
	newtons := func(name string, low, high int) float64 { return float64(rapid.IntRange(low, high).Draw(t, name)) }
	for i := range in.Each {
		in.Each[i] = rod.Force{Tension: newtons("T", 0, 150000), ShearX: newtons("x", -40000, 40000), ShearY: newtons("y", -40000, 40000)}
	}
	return in
}

// TestMoreForceInOneRodIsNeverUsedLess whichever it is, and whatever the others have.
func TestMoreForceInOneRodIsNeverUsedLess(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := apart(t)
		_, before := check(t, in)
		in.Each = append([]rod.Force(nil), in.Each...)
		f := &in.Each[rapid.IntRange(0, len(in.Each)-1).Draw(t, "rod")]
		by := rapid.Float64Range(1, 3).Draw(t, "by")
		f.Tension *= by
		f.ShearX, f.ShearY = f.ShearX*by, f.ShearY*by
		_, after := check(t, in)
		never(t, after, before, "more")
	})
}

// TestRodWithoutShearDoesNotHideTheOneThatBends: a rod of M16 4.6 under 35 kN holds that, above
// A_s f_uk/gamma_Ms = 157 400/2 = 31.4 kN, but has no bending resistance left and no shear to
// bend it; another beside it has 20 kN of shear across a gap of 40 mm and fails.
func TestRodWithoutShearDoesNotHideTheOneThatBends(t *testing.T) {
	in := four(basis.Eurocode, "M16", "ISO 898-1 4.6", 18, 120)
	in.StandOff = rod.StandOff{Gap: 40}
	in.Each = []rod.Force{{Tension: 35e3}, {ShearX: 20e3}, {ShearX: 100}, {ShearX: 100}}
	_, s := check(t, in)
	assert.Equal(t, limit.Pass, s["rod_tension"].Verdict)
	assert.Equal(t, limit.Fail, s["rod_stand_off_bending"].Verdict)
	assert.InDelta(t, 20e3, s["rod_stand_off_bending"].Demand, 1e-6)
	in.Each[1].ShearX = 100
	_, s = check(t, in)
	assert.Equal(t, limit.Pass, s["rod_stand_off_bending"].Verdict)
	assert.Positive(t, s["rod_stand_off_bending"].Utilization)
}

// TestNoRodIsHiddenByTheOthers: a group is never used less than any of its rods with the
// same force in a group that has no force else.
func TestNoRodIsHiddenByTheOthers(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := apart(t)
		in.Friction = rod.Friction{} // which a rod alone would have to itself
		_, all := check(t, in)
		one := *in
		one.Each = make([]rod.Force, len(in.At))
		k := rapid.IntRange(0, len(in.Each)-1).Draw(t, "rod")
		one.Each[k] = in.Each[k]
		_, alone := check(t, &one)
		never(t, all, alone, "all")
	})
}

// TestShearTurnedByAnyAngleIsNeverUsedLess than its parts along x and along y alone.
func TestShearTurnedByAnyAngleIsNeverUsedLess(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := drawn(t)
		in.Actions = geom.Actions{N: in.Actions.N}
		v, angle := rapid.Float64Range(1e3, 2e5).Draw(t, "V"), rapid.Float64Range(0, 2*math.Pi).Draw(t, "angle")
		load := func(x, y float64) map[string]limit.State {
			out := *in
			out.Actions.Vx, out.Actions.Vy = v*x, v*y
			_, s := check(t, &out)
			return s
		}
		s, c := math.Sincos(angle)
		whole := load(c, s)
		never(t, whole, load(c, 0), "all of it, not along x alone")
		never(t, whole, load(0, s), "all of it, not along y alone")
		if u, _ := used(whole["base_shear"]); u < max(load(c, 0)["base_shear"].Utilization, load(0, s)["base_shear"].Utilization)*(1-1e-9) {
			t.Fatalf("base_shear: %g", u)
		}
	})
}
