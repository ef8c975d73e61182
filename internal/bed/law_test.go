package bed_test

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"footward.example/footward/internal/bed"
	"footward.example/footward/internal/contact"
	"footward.example/footward/internal/geom"
	"footward.example/footward/internal/limit"
)

// held returns a plate of 400 mm under 200 kN and 60 kNm with four rods.
func held(thickness, k float64) *bed.Input {
	in := steel(400, 200, thickness, k)
	in.Patches[0].My = 60e6
	for _, p := range []geom.Point{{X: -150, Y: -150}, {X: -150, Y: 150}, {X: 150, Y: -150}, {X: 150, Y: 150}} {
		in.Rods = append(in.Rods, bed.Rod{At: p, Stiffness: 247e3})
	}
	return in
}

// rigid returns the same plate for package contact.
func rigid(t require.TestingT, in *bed.Input) contact.Result {
	c := &contact.Input{Outline: contact.Rectangle(in.Plate.SizeX, in.Plate.SizeY), Bed: contact.Bed{Modulus: in.Modulus}}
	for _, p := range in.Patches {
		c.Actions.N += p.N
		c.Actions.Mx += p.Mx + p.At.Y*p.N
		c.Actions.My += p.My - p.At.X*p.N
	}
	for _, r := range in.Rods {
		c.Rods = append(c.Rods, contact.Rod(r))
	}
	var s contact.Solver
	r, err := s.Solve(c)
	require.NoError(t, err)
	require.True(t, r.Found, r.Reason)
	return r
}

// TestRodsOfAnotherProgram holds rod tension and peak pressure of another program
// (own, no evidence for the mechanics).
func TestRodsOfAnotherProgram(t *testing.T) {
	for _, c := range []struct{ k, tension, peak, digits float64 }{
		{0.05, 92.4e3, 5.52, 0.002}, {0.2, 91.0e3, 0, 0.002}, {1, 85.2e3, 0, 0.002}, {10, 67.6e3, 6.64, 0.006}, {100, 59.5e3, 11.6, 0.015},
	} {
		// A hundredth of the load leaves the plate flat on the softest bed, too.
		in := held(25, c.k)
		in.Patches[0].N /= 100
		in.Patches[0].My /= 100
		in.Patches[0].Stiff = true
		r, _ := solve(t, in, 0)
		r.Rods[0], r.Rods[1], r.Peak = 100*r.Rods[0], 100*r.Rods[1], 100*r.Peak
		t.Logf("k %g: T %.0f, peak %.3f, contact %.3f, %d steps", c.k, r.Rods[0], r.Peak, r.Contact, r.Steps)
		assert.InEpsilon(t, c.tension, r.Rods[0], c.digits, "k %g", c.k)
		assert.InEpsilon(t, r.Rods[0], r.Rods[1], 1e-6)
		if c.peak > 0 {
			assert.InEpsilon(t, c.peak, r.Peak, c.digits, "k %g", c.k)
		}
		assert.Negative(t, r.X.Hog.Moment)
	}
}

func TestStiffPlateWithRodsIsRigid(t *testing.T) {
	in := held(2000, 0.5)
	in.Rods[0].Preload, in.Rods[1].Gap = 30e3, 0.2
	in.Patches[0].Mx = -20e6
	r, _ := solve(t, in, 0)
	want := rigid(t, in)
	assert.InEpsilon(t, want.Peak, r.Peak, 1e-3)
	for i := range r.Rods {
		assert.InDelta(t, want.Rods[i], r.Rods[i], 1e-3*want.Rods[0])
	}
}

// TestPreloadIsWhatRodsPullBeforeTheActions on a soft bed as on a stiff one.
func TestPreloadIsWhatRodsPullBeforeTheActions(t *testing.T) {
	for _, k := range []float64{0.03, 10} {
		in := held(2000, k)
		for i := range in.Rods {
			in.Rods[i].Preload = 40e3
		}
		in.Patches[0].N, in.Patches[0].Mx, in.Patches[0].My = 0, 0, 0
		r, _ := solve(t, in, 0)
		for i := range r.Rods {
			assert.InEpsilon(t, 40e3, r.Rods[i], 1e-5, "k %g", k)
		}
		assert.InEpsilon(t, 40e3*float64(len(in.Rods)), r.Pressed, 1e-5)
	}
}

// draw draws a plate with a patch that keeps its resultant inside, with or
// without rods.
func draw(t *rapid.T, rods bool) *bed.Input {
	number := func(name string, low, high float64) float64 { return rapid.Float64Range(low, high).Draw(t, name) }
	l, b := number("L", 300, 1000), number("B", 300, 1000)
	in := &bed.Input{Plate: bed.Plate{SizeX: l, SizeY: b, Thickness: number("t", 15, 60), E: 210e3, Nu: 0.3}}
	in.Modulus = math.Pow(10, number("log k", -2, 1.5))
	p := bed.Patch{SizeX: l * number("b_x", 0.1, 0.5), SizeY: b * number("b_y", 0.1, 0.5), N: -number("N", 1e3, 1e6)}
	p.At = geom.Point{X: l * number("x", -0.2, 0.2), Y: b * number("y", -0.2, 0.2)}
	p.My = -p.N * l * float64(rapid.IntRange(-200, 200).Draw(t, "e_x")) / 1000
	p.Mx = -p.N * b * float64(rapid.IntRange(-200, 200).Draw(t, "e_y")) / 1000
	if rods {
		// In thousandths, and preload in newtons: less is no load to balance.
		p.N *= float64(rapid.IntRange(-500, 1000).Draw(t, "lift")) / 1000
		// Much of it on one side would turn the plate over on a soft bed by itself.
		preload := float64(rapid.IntRange(0, 50000).Draw(t, "preload"))
		for _, s := range [][2]float64{{-1, -1}, {-1, 1}, {1, -1}, {1, 1}} {
			in.Rods = append(in.Rods, bed.Rod{At: geom.Point{X: 0.4 * s[0] * l, Y: 0.4 * s[1] * b},
				Stiffness: math.Pow(10, number("log k_r", 4, 6)), Preload: preload * number("of all", 0.9, 1)})
		}
	}
	p.Stiff = rapid.Bool().Draw(t, "stiff")
	in.Patches = []bed.Patch{p}
	return in
}

func TestEquilibriumIsFoundAndHolds(t *testing.T) {
	var s bed.Solver
	worst, longest := 0.0, 0
	for _, rods := range []bool{false, true} {
		rapid.Check(t, func(t *rapid.T) {
			in := draw(t, rods)
			if bed.RelativeStiffness(&in.Plate, in.Modulus)*25 < max(in.Plate.SizeX, in.Plate.SizeY) {
				return
			}
			r, err := s.Solve(in)
			if err != nil && strings.Contains(err.Error(), "turns over") {
				return
			}
			if err != nil {
				t.Fatal(err)
			}
			if !(r.Residual <= 1e-8) {
				t.Fatalf("residual %g after %d steps", r.Residual, r.Steps)
			}
			worst, longest = max(worst, r.Residual), max(longest, r.Steps)
			acts := r.Pressed
			for _, f := range r.Rods {
				if !(f >= 0) {
					t.Fatalf("a rod pushes %g", f)
				}
				acts += f
			}
			for _, p := range r.Pressure {
				if !(p >= 0 && p <= r.Peak) {
					t.Fatalf("pressure %g, peak %g", p, r.Peak)
				}
			}
			// Nothing bends the plate at its edges, and nothing is missing there.
			for _, m := range []float64{s.SectionX(in.Plate.SizeX / 2).Moment, s.SectionX(-in.Plate.SizeX / 2).Moment} {
				if !(math.Abs(m) <= 1e-7*acts*in.Plate.SizeX) {
					t.Fatalf("moment at the edge %g", m)
				}
			}
			// The greatest moments are greatest.
			for i := range 41 {
				at := in.Plate.SizeY * (float64(i)/40 - 0.5)
				m, small := s.SectionY(at).Moment, 1e-6*acts*in.Plate.SizeY
				if p := in.Patches[0]; p.Stiff && math.Abs(at-p.At.Y) < p.SizeY/2 {
					continue
				}
				if !(m <= r.Y.Sag.Moment+small && m >= r.Y.Hog.Moment-small) {
					t.Fatalf("moment %g at %g, of %g to %g", m, at, r.Y.Hog.Moment, r.Y.Sag.Moment)
				}
			}
		})
	}
	t.Logf("residual at most %.1e, steps at most %d", worst, longest)
}

// TestStifferPlateNeverPressesMore under a patch in the middle that is at most 4 l
// wide. Under a wider one the pressure has its peak beside the patch's edges.
func TestStifferPlateNeverPressesMore(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		side := rapid.Float64Range(300, 1000).Draw(t, "side")
		in := steel(side, side*rapid.Float64Range(0.2, 0.8).Draw(t, "share"), side/40, math.Pow(10, rapid.Float64Range(-2, 1).Draw(t, "log k")))
		in.Patches[0].SizeX = min(in.Patches[0].SizeX, 4*bed.RelativeStiffness(&in.Plate, in.Modulus))
		in.Patches[0].SizeY = in.Patches[0].SizeX
		before := math.Inf(1)
		for range 5 {
			r, _ := solve(t, in, 12)
			if !(r.Peak <= before*(1+1e-4)) {
				t.Fatalf("%g after %g", r.Peak, before)
			}
			before = r.Peak
			in.Plate.Thickness *= 1.3
		}
		if mean := 200e3 / (side * side); !(before >= mean*(1-1e-6)) {
			t.Fatalf("%g below the mean %g", before, mean)
		}
	})
}

// TestDoubleLoadDoublesEverything holds without rods even where the plate lifts:
// the pressed area does not depend on how much presses.
func TestDoubleLoadDoublesEverything(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := draw(t, false)
		in.Modulus = min(in.Modulus, 0.5)
		r, s := solve(t, in, 12)
		face := s.SectionX(10)
		double := *in
		p := in.Patches[0]
		p.N, p.Mx, p.My = 2*p.N, 2*p.Mx, 2*p.My
		double.Patches = []bed.Patch{p}
		again, s2 := solve(t, &double, 12)
		near := func(want, have, scale float64) {
			if !(math.Abs(want-have) <= 1e-6*scale) {
				t.Fatalf("%g, not %g", have, want)
			}
		}
		near(2*r.Peak, again.Peak, r.Peak)
		near(2*r.Deepest, again.Deepest, r.Deepest)
		near(r.Contact, again.Contact, 1)
		near(2*face.Moment, s2.SectionX(10).Moment, -p.N*in.Plate.SizeX)
	})
}

// TestMirrorAndQuarterTurn of plate and loads mirror and turn the answer.
func TestMirrorAndQuarterTurn(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := draw(t, rapid.Bool().Draw(t, "rods"))
		in.Modulus = max(0.1, min(in.Modulus, 0.5))
		in.Patches[0].N, in.Patches[0].Mx, in.Patches[0].My = in.Patches[0].N/100, in.Patches[0].Mx/100, in.Patches[0].My/100
		r, _ := solve(t, in, 12)
		turned := bed.Input{Plate: in.Plate, Modulus: in.Modulus}
		turned.Plate.SizeX, turned.Plate.SizeY = in.Plate.SizeY, in.Plate.SizeX
		for _, p := range in.Patches {
			p.At, p.SizeX, p.SizeY, p.Mx, p.My = geom.Point{X: -p.At.Y, Y: p.At.X}, p.SizeY, p.SizeX, -p.My, p.Mx
			turned.Patches = append(turned.Patches, p)
		}
		for _, rod := range in.Rods {
			rod.At = geom.Point{X: -rod.At.Y, Y: rod.At.X}
			turned.Rods = append(turned.Rods, rod)
		}
		again, _ := solve(t, &turned, 12)
		acts := r.Pressed
		for _, f := range r.Rods {
			acts += f
		}
		near := func(what string, want, have, scale float64) {
			if !(math.Abs(want-have) <= 1e-5*scale) {
				t.Fatalf("%s: %g, turned %g", what, want, have)
			}
		}
		near("peak", r.Peak, again.Peak, r.Peak+acts/in.Plate.SizeX/in.Plate.SizeY)
		near("sag", r.X.Sag.Moment, again.Y.Sag.Moment, acts*in.Plate.SizeX)
		near("hog", r.Y.Hog.Moment, again.X.Hog.Moment, acts*in.Plate.SizeY)
		near("local", r.X.Local, again.Y.Local, acts)
		for i := range r.Rods {
			near("rod", r.Rods[i], again.Rods[i], acts)
		}
	})
}

// TestPatchOfManyIsThatOfOne splits a patch in two strips of one linear pressure.
func TestPatchOfManyIsThatOfOne(t *testing.T) {
	one := steel(500, 200, 20, 1)
	one.Patches[0].My, one.Patches[0].Mx = 8e6, -3e6
	two := *one
	two.Patches = []bed.Patch{{At: geom.Point{X: -60}, SizeX: 80, SizeY: 200}, {At: geom.Point{X: 40}, SizeX: 120, SizeY: 200}}
	require.True(t, bed.Spread(two.Patches, &geom.Actions{N: -200e3, My: 8e6, Mx: -3e6}))
	a, _ := solve(t, one, 0)
	b, _ := solve(t, &two, 0)
	assert.InEpsilon(t, a.Peak, b.Peak, 1e-3)
	assert.InEpsilon(t, a.X.Sag.Moment, b.X.Sag.Moment, 1e-3)
	assert.InEpsilon(t, a.Overhang, b.Overhang, 1e-9)
}

// TestFlangesPressApart takes the moment at the middle of two strips from statics
// of an even pressure: q L^3/8 less N/2 times the strips' arm.
func TestFlangesPressApart(t *testing.T) {
	in := steel(400, 200, 50, 0.01)
	in.Patches = []bed.Patch{{At: geom.Point{X: -90}, SizeX: 15, SizeY: 150}, {At: geom.Point{X: 90}, SizeX: 15, SizeY: 150}}
	require.True(t, bed.Spread(in.Patches, &geom.Actions{N: -200e3}))
	r, s := solve(t, in, 0)
	require.InDelta(t, 1.25, r.Peak, 0.01)
	assert.InEpsilon(t, 1.25*400*400*400/8-100e3*90, s.SectionX(0).Moment, 0.01)
	assert.InEpsilon(t, 1.25*400*400*400/8, r.Y.Sag.Moment+200e3*150/8, 0.01)
	assert.InDelta(t, 102.5, r.Overhang, 125-102.5) // the flanges' ends reach 125 mm
	assert.True(t, bed.Rigid(r.Overhang, r.Length))
	assert.False(t, bed.Rigid(0.61*r.Length, r.Length))
	assert.False(t, bed.Rigid(math.NaN(), r.Length))
}

// TestStubOfAnotherProgram holds q = N/L^2, contact and moment at the face over q
// a^2/2 of plates under a soft patch and under a stiff stub (own, no evidence for
// the mechanics; two digits, curvatures converged to 1 %).
func TestStubOfAnotherProgram(t *testing.T) {
	for _, c := range []struct {
		side, patch, thickness, k   float64
		stiff                       bool
		peak, contact, face, middle float64
	}{
		{400, 200, 25, 0.05, false, 1.02, 1, 0.99, 0}, {400, 200, 25, 0.2, false, 1.06, 1, 0.96, 2.64}, {400, 200, 25, 10, false, 2.50, 0.91, 0.40, 1.33},
		{400, 200, 25, 100, false, 4.19, 0.55, 0.09, 0.29}, {600, 250, 25, 0.2, false, 1.34, 1, 0.86, 2.22}, {1000, 300, 25, 0.2, false, 2.92, 0.87, 0.48, 1.49},
		{1000, 300, 40, 10, false, 7.22, 0.36, 0.12, 0.61}, {400, 200, 25, 0.2, true, 1, 1, 0.99, 0}, {400, 200, 25, 10, true, 1.18, 1, 0.82, 0},
		{400, 200, 25, 100, true, 1.72, 0.90, 0.42, 0}, {600, 250, 25, 0.2, true, 1.05, 1, 0.96, 0}, {1000, 300, 25, 0.2, true, 1.63, 0.98, 0.69, 0},
		{1000, 300, 40, 10, true, 3.08, 0.57, 0.30, 0},
	} {
		in := steel(c.side, c.patch, c.thickness, c.k)
		in.Patches[0].Stiff = c.stiff
		r, s := solve(t, in, 0)
		q, a := 200e3/(c.side*c.side), (c.side-c.patch)/2
		m0 := q * a * a / 2
		face := s.SectionX(c.patch / 2).Unit
		t.Logf("%v: %.3f %.3f %.3f %.3f, %d steps", c, r.Peak/q, r.Contact, face/m0, r.X.Local/m0, r.Steps)
		assert.InDelta(t, c.peak, r.Peak/q, 0.006*c.peak+0.005, "%v", c)
		assert.InDelta(t, c.contact, r.Contact, 0.015, "%v", c)
		assert.InDelta(t, c.face, face/m0, 0.016, "%v", c)
		if c.middle > 0 {
			assert.InDelta(t, c.middle, r.X.Local/m0, 0.016, "%v", c)
		}
		if c.stiff {
			assert.InEpsilon(t, c.patch/2, math.Abs(r.X.Sag.At), 1e-9)
			assert.InEpsilon(t, face, r.X.Sag.Unit, 1e-6)
		}
	}
}

func TestNoEquilibriumSaysWhy(t *testing.T) {
	for name, c := range map[string]struct {
		change func(*bed.Input)
		want   string
	}{
		"uplift":            {func(in *bed.Input) { in.Patches[0].N = 1e3 }, "lifted"},
		"moment alone":      {func(in *bed.Input) { in.Patches[0].N, in.Patches[0].Mx = 0, 1e6 }, "lifted"},
		"resultant outside": {func(in *bed.Input) { in.Patches[0].My = 200e3 * 201 }, "outside"},
		"resultant on edge": {func(in *bed.Input) { in.Patches[0].Mx = 200e3 * 200 }, "outside"},
		"narrow stub":       {func(in *bed.Input) { in.Patches[0].SizeX, in.Patches[0].Stiff = 1, true }, "narrower"},
		"soft rods": {func(in *bed.Input) {
			in.Patches[0].N = 1e5
			for i := range 2 {
				in.Rods = append(in.Rods, bed.Rod{At: geom.Point{X: 100, Y: 200*float64(i) - 100}, Stiffness: 0.1})
			}
		}, "turns over"},
	} {
		t.Run(name, func(t *testing.T) {
			in := steel(400, 200, 25, 1)
			c.change(in)
			var s bed.Solver
			_, err := s.Solve(in)
			var unsolved *bed.Unsolved
			require.ErrorAs(t, err, &unsolved)
			assert.Contains(t, err.Error(), c.want)
		})
	}
	s := bed.Solver{Limit: 2}
	_, err := s.Solve(steel(600, 250, 10, 10))
	var unsolved *bed.Unsolved
	require.ErrorAs(t, err, &unsolved)
	assert.Contains(t, err.Error(), "did not converge")
	assert.Equal(t, 2, unsolved.Steps)
}

// TestStiffFlangesAreFlat takes flanges of 15 mm that stay straight across the plate.
func TestStiffFlangesAreFlat(t *testing.T) {
	in := steel(1000, 300, 25, 0.2)
	in.Patches = []bed.Patch{{At: geom.Point{X: -150}, SizeX: 15, SizeY: 300}, {At: geom.Point{X: 150}, SizeX: 15, SizeY: 300}}
	require.True(t, bed.Spread(in.Patches, &geom.Actions{N: -200e3}))
	soft, _ := solve(t, in, 16)
	in.Patches[0].Stiff, in.Patches[1].Stiff = true, true
	stiff, _ := solve(t, in, 16)
	assert.Less(t, stiff.Peak, soft.Peak)
	assert.InDelta(t, sunk(t, &stiff, 142.5, 30), sunk(t, &stiff, 142.5, 150), 0.02*stiff.Deepest)
	assert.Greater(t, sunk(t, &soft, 142.5, 30), 1.05*sunk(t, &soft, 142.5, 150))
}

func TestNoLoadDoesNothing(t *testing.T) {
	in := steel(400, 200, 25, 1)
	in.Patches[0].N = 0
	r, _ := solve(t, in, 0)
	assert.Zero(t, r.Peak)
	assert.Equal(t, bed.Bending{Width: 400}, r.X)
}

func TestFaultsAreNamed(t *testing.T) {
	for field, change := range map[string]func(*bed.Input){
		"plate.size_x_mm":            func(in *bed.Input) { in.Plate.SizeX = math.NaN() },
		"plate.size_y_mm":            func(in *bed.Input) { in.Plate.SizeY = 0 },
		"plate":                      func(in *bed.Input) { in.Plate.SizeX = 5e4 },
		"plate.thickness_mm":         func(in *bed.Input) { in.Plate.Thickness = -1 },
		"plate.modulus_mpa":          func(in *bed.Input) { in.Plate.E = math.Inf(1) },
		"plate.poisson_ratio":        func(in *bed.Input) { in.Plate.Nu = 0.5 },
		"bed.subgrade_modulus_n_mm3": func(in *bed.Input) { in.Modulus = math.NaN() },
		"patches":                    func(in *bed.Input) { in.Patches = nil },
		"patches[0]":                 func(in *bed.Input) { in.Patches[0].At.X = math.NaN() },
		"patches[1].n_kn":            func(in *bed.Input) { in.Patches = append(in.Patches, bed.Patch{SizeX: 1, SizeY: 1, N: math.NaN()}) },
		"rods[0]":                    func(in *bed.Input) { in.Rods = []bed.Rod{{}} },
		"rods[1]": func(in *bed.Input) {
			in.Rods = []bed.Rod{{Stiffness: 1e5}, {Stiffness: 1e5, At: geom.Point{Y: 201}}}
		},
	} {
		t.Run(field, func(t *testing.T) {
			in := steel(400, 200, 25, 1)
			change(in)
			var s bed.Solver
			_, err := s.Solve(in)
			var faults limit.Faults
			require.ErrorAs(t, err, &faults)
			assert.Equal(t, field, faults[0].Field)
		})
	}
	in := &bed.Input{Plate: bed.Plate{SizeX: -1}, Rods: []bed.Rod{{Gap: 1, Preload: 1}}}
	var faults limit.Faults
	bed.Validate(in, &faults)
	assert.GreaterOrEqual(t, len(faults), 7, "all at once")
	faults = nil
	bed.Validate(steel(2000, 200, 5, 100), &faults)
	require.Len(t, faults, 1)
	assert.True(t, strings.HasPrefix(faults[0].Field, "plate.thickness"))
}

func TestSolvingAgainIsTheSame(t *testing.T) {
	var s bed.Solver
	in := held(25, 10)
	a, err := s.Solve(in)
	require.NoError(t, err)
	_, err = s.Solve(steel(600, 100, 30, 1))
	require.NoError(t, err)
	b, err := s.Solve(in)
	require.NoError(t, err)
	assert.Equal(t, a.Peak, b.Peak)
	assert.Equal(t, a.X, b.X)
	assert.Equal(t, a.Steps, b.Steps)
}

func BenchmarkSolve(b *testing.B) {
	lifting, stub := steel(1000, 300, 25, 0.2), held(25, 10)
	stub.Patches[0].Stiff = true
	for name, in := range map[string]*bed.Input{
		"full": steel(400, 200, 25, 0.2), "concrete": steel(400, 200, 25, 10), "lifting": lifting, "held": held(25, 10), "stub": stub,
		"thin": steel(600, 250, 10, 10),
	} {
		b.Run(name, func(b *testing.B) {
			var s bed.Solver
			b.ReportAllocs()
			for b.Loop() {
				r, err := s.Solve(in)
				if err != nil {
					b.Fatal(err)
				}
				b.ReportMetric(float64(r.Steps), "steps")
				b.ReportMetric(float64(r.Elements[0]), "elements")
			}
			b.ReportMetric(float64(b.Elapsed().Microseconds())/1e3/float64(b.N), "ms/op")
		})
	}
}
