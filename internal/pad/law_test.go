package pad_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"footward.example/footward/internal/basis"
	"footward.example/footward/internal/contact"
	"footward.example/footward/internal/derive"
	"footward.example/footward/internal/geom"
	"footward.example/footward/internal/limit"
	"footward.example/footward/internal/pad"
)

// strengths are the states that say whether the concrete and its bars hold.
var strengths = []string{
	"pad_plain_thickness", "pad_plain_bending", "pad_plain_shear", "pad_plain_punching", "pad_bending_x", "pad_bending_y",
	"pad_shear", "pad_shear_strut", "pad_punching", "pad_column_perimeter",
}

func fails(s limit.State) bool { return s.Verdict == limit.Fail }

// notWorse holds every strength of after against before.
func notWorse(t require.TestingT, before, after map[string]limit.State) {
	for _, id := range strengths {
		a, b := before[id], after[id]
		if a.Kind == nil {
			continue
		}
		if a.Rated && b.Rated {
			assert.LessOrEqual(t, b.Utilization, a.Utilization*(1+1e-6), id)
		}
		assert.False(t, !fails(a) && fails(b) && a.Verdict == limit.Pass, id)
	}
}

// TestGreatestPressureIsAboveThatOfARigidPlate holds the product of two directions
// against a rigid plate on a bed without tension.
func TestGreatestPressureIsAboveThatOfARigidPlate(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := footing(basis.Eurocode)
		in.SizeX, in.SizeY = rapid.Float64Range(600, 4000).Draw(t, "x"), rapid.Float64Range(600, 4000).Draw(t, "y")
		in.Weight = 0
		ex := rapid.Float64Range(0, 0.46).Draw(t, "e_x") * in.SizeX
		ey := rapid.Float64Range(0, 0.46).Draw(t, "e_y") * in.SizeY
		in.Actions = geom.Actions{N: -100e3, Mx: 100e3 * ey, My: -100e3 * ex}
		r, _ := check(t, in)
		var solver contact.Solver
		exact, err := solver.Solve(&contact.Input{
			Outline: contact.Rectangle(in.SizeX, in.SizeY), Bed: contact.Bed{Modulus: 0.1}, Actions: in.Actions,
		})
		if err != nil || !exact.Found {
			t.Fatalf("no plate: %v %s", err, exact.Reason)
		}
		if r.Gross < exact.Peak*(1-1e-6) {
			t.Fatalf("%g at the corner, but %g under a rigid plate", r.Gross, exact.Peak)
		}
		if (r.Kern || ex < 1 || ey < 1) && r.Gross > exact.Peak*1.01 {
			t.Fatalf("%g at the corner, not %g", r.Gross, exact.Peak)
		}
	})
}

func TestThickerPadIsNeverWorse(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := random(t)
		in.Height = 3000 // the lever stays
		thin, before := check(t, in)
		in.Thickness += rapid.Float64Range(0, 500).Draw(t, "more")
		thick, after := check(t, in)
		for i := range thin.Spans {
			if thin.Spans[i].RhoV > 0 && thick.Spans[i].RhoV == 0 {
				delete(before, "pad_shear") // bars count no longer: deeper, they reach less far beyond the section
			}
		}
		notWorse(t, before, after)
	})
}

func TestMoreSteelIsNeverWorse(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := random(t)
		_, before := check(t, in)
		x, y := &in.Reinforcement.X, &in.Reinforcement.Y
		if x.Diameter == 0 {
			return // plain
		}
		x.Spacing, y.Spacing = max(0.8*x.Spacing, pad.LeastSpacing(x.Diameter)), max(0.8*y.Spacing, pad.LeastSpacing(y.Diameter))
		r, after := check(t, in)
		if in.Design.Basis.US() && (r.Spans[0].As > r.Spans[0].AsMost || r.Spans[1].As > r.Spans[1].AsMost) {
			return // more than what fails in tension is refused
		}
		notWorse(t, before, after)
	})
}

func TestMoreLoadIsNeverBetter(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := random(t)
		in.Weight = 0 // more of everything
		_, after := check(t, in)
		f := rapid.Float64Range(0.2, 1).Draw(t, "share")
		a := &in.Actions
		a.N, a.Vx, a.Vy, a.Mx, a.My = a.N*f, a.Vx*f, a.Vy*f, a.Mx*f, a.My*f
		_, before := check(t, in)
		notWorse(t, after, before)
	})
}

func TestMoreMomentIsNeverBetter(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := random(t)
		_, after := check(t, in)
		f := rapid.Float64Range(0, 1).Draw(t, "share")
		in.Actions.Mx, in.Actions.My = in.Actions.Mx*f, in.Actions.My*f
		_, before := check(t, in)
		if before["pad_equilibrium"].Verdict == after["pad_equilibrium"].Verdict {
			notWorse(t, after, before)
		}
	})
}

func TestSignOfMomentAndShearDoesNotMatter(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := random(t)
		one, before := check(t, in)
		a := &in.Actions
		a.Vx, a.Vy, a.Mx, a.My = -a.Vx, -a.Vy, -a.Mx, -a.My
		two, after := check(t, in)
		assert.Equal(t, one.Net, two.Net)
		assert.Equal(t, before, after)
	})
}

// TestAxesCanBeSwapped turns the whole pad by a quarter.
func TestAxesCanBeSwapped(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := random(t)
		_, before := check(t, in)
		a, s := &in.Actions, &in.Reinforcement
		in.SizeX, in.SizeY = in.SizeY, in.SizeX
		in.Column.SizeX, in.Column.SizeY = in.Column.SizeY, in.Column.SizeX
		s.X, s.Y, s.YBelow = s.Y, s.X, !s.YBelow
		if s.X.Diameter == 0 {
			s.YBelow = false
		}
		a.Vx, a.Vy, a.Mx, a.My = a.Vy, a.Vx, a.My, a.Mx
		_, after := check(t, in)
		for id, to := range map[string]string{"pad_bending_x": "pad_bending_y", "pad_bending_y": "pad_bending_x", "pad_punching": "pad_punching",
			"pad_shear": "pad_shear", "pad_plain_thickness": "pad_plain_thickness", "pad_top_bending": "pad_top_bending"} {
			assert.InDelta(t, before[id].Utilization, after[to].Utilization, 1e-6*(1+before[id].Utilization), id)
			assert.Equal(t, before[id].Verdict, after[to].Verdict, id)
		}
	})
}

// TestRequiredSizesJustHold puts what is asked for into the pad.
func TestRequiredSizesJustHold(t *testing.T) {
	tried := map[limit.Size]int{}
	rapid.Check(t, func(t *rapid.T) {
		in := random(t)
		_, states := check(t, in)
		for id, s := range states {
			just := in
			switch s.Size {
			case limit.PadThickness:
				just.Thickness = s.Required
				if just.Height > 0 && just.Height < s.Required {
					just.Height = s.Required
				}
				if s.Required < 1 || just.Reinforcement.Cover+just.Reinforcement.X.Diameter+just.Reinforcement.Y.Diameter >= s.Required*(1-1e-9) {
					continue
				}
			case limit.SteelPerWidth:
				if id == "pad_least_reinforcement" {
					bars := &just.Reinforcement.X
					if s.Member == 2 {
						bars = &just.Reinforcement.Y
					}
					bars.Spacing = bars.Area() * bars.Spacing / s.Required
				} else if id == "pad_bending_x" {
					just.Reinforcement.X.Spacing *= just.Reinforcement.X.Area() / s.Required
				} else {
					just.Reinforcement.Y.Spacing *= just.Reinforcement.Y.Area() / s.Required
				}
				if x, y := &just.Reinforcement.X, &just.Reinforcement.Y; x.Spacing < pad.LeastSpacing(x.Diameter) || y.Spacing < pad.LeastSpacing(y.Diameter) || max(just.Reinforcement.X.Spacing, just.Reinforcement.Y.Spacing) > 5000 {
					continue // no room for so many bars
				}
			default:
				continue
			}
			tried[s.Size]++
			_, after := check(t, just)
			if id == "pad_least_reinforcement" {
				assert.LessOrEqual(t, after[id].Utilization, max(1, s.Utilization)+1e-6, id)
				continue
			}
			assert.Contains(t, []limit.Verdict{limit.Pass, limit.NotApplicable}, after[id].Verdict, id)
			if after[id].Rated && s.Size == limit.SteelPerWidth {
				assert.InDelta(t, 1, after[id].Utilization, 1e-6, id)
			}
		}
	})
	assert.Positive(t, tried[limit.PadThickness])
	assert.Positive(t, tried[limit.SteelPerWidth])
}

// TestModulusOfThePerimeterIsItsIntegral: W is the sum of the distances from the axis
// along the perimeter (EN 1992-1-1 (6.40)).
func TestModulusOfThePerimeterIsItsIntegral(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := footing(basis.Eurocode)
		in.SizeX, in.SizeY = 4000, 4000
		side := rapid.Float64Range(100, 600).Draw(t, "c")
		in.Column = pad.Column{SizeX: side, SizeY: side} // k of Table 6.1 is 0.6
		in.Actions = geom.Actions{N: -900e3, My: 20e6}
		r, _ := check(t, in)
		p := r.Punch
		w := 0.6 * r.My / ((p.Turn - p.Force/(p.U*p.D)) * p.D)
		sum := 2*side*side/4 + 2*side*(side/2+p.A) // along x; across it at the ends
		const parts = 1000
		for i := range parts {
			angle := (float64(i) + 0.5) / parts * math.Pi / 2
			sum += 4 * (side/2 + p.A*math.Cos(angle)) * p.A * math.Pi / 2 / parts
		}
		assert.InEpsilon(t, sum, w, 1e-5)
		assert.InEpsilon(t, 4*side+2*math.Pi*p.A, p.U, 1e-12)
	})
}

// TestAnyInputThatFitsIsAnswered over all magnitudes.
func TestAnyInputThatFitsIsAnswered(t *testing.T) {
	answered := 0
	rapid.Check(t, func(t *rapid.T) {
		in := random(t)
		size := func(name string, low, high float64) float64 {
			return math.Exp(rapid.Float64Range(math.Log(low), math.Log(high)).Draw(t, name))
		}
		in.SizeX, in.SizeY, in.Thickness = size("X", 1, 1e5), size("Y", 1, 1e5), size("H", 1, 1e4)
		in.Column = pad.Column{SizeX: in.SizeX * rapid.SampledFrom([]float64{0.01, 0.5, 1}).Draw(t, "share x"), SizeY: in.SizeY * rapid.SampledFrom([]float64{0.01, 0.5, 1}).Draw(t, "share y")}
		in.Height = 0
		in.Actions.N, in.Weight = -size("press", 1e-3, 1e9), size("weight", 1e-3, 1e9)
		in.Actions.Mx, in.Actions.My = size("turn x", 1e-3, 1e12), size("turn y", 1e-3, 1e12)
		in.Actions.Vx, in.Actions.Vy = 0, 0
		r, err := pad.Check(&in)
		if err != nil {
			return
		}
		answered++
		var l limit.List
		r.States(&l)
		for _, s := range l.All() {
			for _, v := range []float64{s.Demand, s.Resistance, s.Utilization, s.Required} {
				assert.False(t, math.IsNaN(v) || math.IsInf(v, 0), s.Kind.ID)
			}
		}
		var sheet derive.Sheet
		r.Derive(&sheet)
		assert.NoError(t, derive.Verify(sheet.Steps))
	})
	assert.Positive(t, answered)
}

// TestPadAsWideAsItsColumn bends one way only.
func TestPadAsWideAsItsColumn(t *testing.T) {
	for _, b := range bases {
		in := footing(b)
		in.Column.SizeY = in.SizeY
		_, states := check(t, in)
		assert.Equal(t, limit.Pass, states["pad_bending_y"].Verdict)
		assert.Equal(t, limit.NotApplicable, states["pad_punching"].Verdict)
		assert.Equal(t, 1, states["pad_bar_anchorage"].Member)
	}
}

// TestFootingsMayNeglectTheSizeEffect only ever makes it weaker to count it.
func TestFootingsMayNeglectTheSizeEffect(t *testing.T) {
	in := footing(basis.USLRFD)
	in.Thickness = 900
	_, without := check(t, in)
	in.SizeEffect = true
	_, with := check(t, in)
	assert.Greater(t, with["pad_shear"].Utilization+with["pad_punching"].Utilization, without["pad_shear"].Utilization+without["pad_punching"].Utilization)
}

// TestShortBarsOfALongPadAreDenser by 2 beta/(beta + 1), ACI only.
func TestShortBarsOfALongPadAreDenser(t *testing.T) {
	for _, b := range bases {
		in := footing(b)
		in.Actions = geom.Actions{N: -500e3}
		r, _ := check(t, in)
		assert.Equal(t, 1.0, r.Spans[0].Band)
		want := 1.0
		if b.US() {
			want = 2 * 1.2 / 2.2
		}
		assert.InEpsilon(t, want, r.Spans[1].Band, 1e-12)
		assert.InEpsilon(t, r.Net*625*625/2*want, r.Spans[1].M, 1e-12)
	}
	in := footing(basis.USLRFD)
	in.SizeX, in.SizeY = in.SizeY, in.SizeX
	r, _ := check(t, in)
	assert.Greater(t, r.Spans[0].Band, 1.0)
	assert.Equal(t, 1.0, r.Spans[1].Band)
}

func TestHookedBarsByACIAreOutOfScope(t *testing.T) {
	in := footing(basis.USLRFD)
	in.Reinforcement.Bend = 0
	in.SizeX, in.SizeY = 700, 700
	_, states := check(t, in)
	require.Equal(t, limit.Fail, states["pad_bar_anchorage"].Verdict)
	in.Reinforcement.Bend = 200
	_, states = check(t, in)
	assert.Equal(t, limit.OutOfScope, states["pad_bar_anchorage"].Verdict)
}
