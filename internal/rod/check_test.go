package rod_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"footward.example/footward/internal/basis"
	"footward.example/footward/internal/derive"
	"footward.example/footward/internal/geom"
	"footward.example/footward/internal/limit"
	"footward.example/footward/internal/material"
	"footward.example/footward/internal/rod"
)

const (
	inch = 25.4
	ksi  = 6.894757293168361
	kip  = 4448.2216152605
)

// four returns four rods in a square of side 2a in a big plate.
func four(b basis.Basis, thread, class string, hole, a float64) *rod.Input {
	th, _ := material.ThreadByName(thread)
	st, _ := material.RodSteelByName(class, th.Diameter)
	return &rod.Input{
		Design: basis.Design{Basis: b, EC: basis.Recommended()},
		Plate:  geom.Plate{SizeX: 400, SizeY: 400, Thickness: 20, Steel: material.Steel{Fy: 345, Fu: 470}},
		Rod:    rod.Rod{Thread: th, Steel: st, Making: rod.Standard},
		At:     []geom.Point{{X: -a, Y: -a}, {X: a, Y: -a}, {X: a, Y: a}, {X: -a, Y: a}},
		Holes:  rod.Holes{Diameter: hole},
	}
}

func check(t require.TestingT, in *rod.Input) (rod.Result, map[string]limit.State) {
	r, err := rod.Check(in)
	require.NoError(t, err)
	var l limit.List
	r.States(&l)
	out := map[string]limit.State{}
	for _, s := range l.All() {
		out[s.Kind.ID] = s
	}
	return r, out
}

// TestBoltTables holds SCI P363 (EN 1993-1-8 Table 3.4), class 8.8, kN.
func TestBoltTables(t *testing.T) {
	for _, c := range []struct {
		thread               string
		hole, ft, fv, digits float64
	}{
		{"M12", 14, 48.6, 27.5, 0.05}, {"M16", 18, 90.4, 60.3, 0.05}, {"M20", 22, 141, 94.1, 0.5},
		{"M24", 26, 203, 136, 0.5}, {"M30", 33, 323, 215, 0.5},
	} {
		in := four(basis.Eurocode, c.thread, "ISO 898-1 8.8", c.hole, 120)
		r, _ := check(t, in)
		assert.InDelta(t, c.ft, r.FtRd/1e3, c.digits, c.thread)
		assert.InDelta(t, c.fv, r.FvRd/1e3, c.digits, c.thread)
		in.Rod.Making = rod.CutOnSite
		cut, _ := check(t, in)
		assert.InEpsilon(t, 0.85, cut.FtRd/r.FtRd, 1e-12)
	}
}

// TestCombinedStrength holds AISC Design Examples, Example J.3: 3/4 in Group
// 120 bolt, threads in the plane; F_u 120 ksi.
func TestCombinedStrength(t *testing.T) {
	in := four(basis.USLRFD, "3/4-10 UNC", "ASTM F1554 Gr 36", 21, 120)
	in.Rod.Steel = material.RodSteel{Fy: 92 * ksi, Fu: 120 * ksi}
	in.At = in.At[:1]
	in.Each = []rod.Force{{Tension: 23.4 * kip, ShearX: 8 * kip}}
	r, s := check(t, in)
	assert.InDelta(t, 25.5, 23.4/r.Worst.Interaction, 0.1)
	assert.Equal(t, limit.Pass, s["rod_combined"].Verdict)
	in.Design.Basis = basis.USASD
	in.Each = []rod.Force{{Tension: 15.5 * kip, ShearX: 5.33 * kip}}
	r, _ = check(t, in)
	assert.InDelta(t, 16.9, 15.5/r.Worst.Interaction, 0.1)
}

func TestTensionMeansLiftedSide(t *testing.T) {
	in := four(basis.Eurocode, "M20", "ISO 898-1 8.8", 22, 150)
	in.Actions = geom.Actions{N: 100e3, Mx: 6e6} // lifts +y
	r, s := check(t, in)
	assert.InDelta(t, 25e3+6e6/600, r.Force(2).Tension, 1e-6)
	assert.InDelta(t, 25e3-6e6/600, r.Force(0).Tension, 1e-6)
	assert.Contains(t, []int{3, 4}, s["rod_tension"].Member)
	in.Actions = geom.Actions{N: 100e3, My: 6e6} // presses +x
	r, _ = check(t, in)
	assert.InDelta(t, 25e3-6e6/600, r.Force(1).Tension, 1e-6)
}

func TestScopeAndReasons(t *testing.T) {
	with := func(change func(*rod.Input)) map[string]limit.State {
		in := four(basis.Eurocode, "M20", "ISO 898-1 8.8", 22, 150)
		in.Actions = geom.Actions{N: 40e3, Vx: 20e3}
		change(in)
		_, s := check(t, in)
		return s
	}
	s := with(func(*rod.Input) {})
	assert.Equal(t, limit.Pass, s["rod_tension"].Verdict)
	s = with(func(in *rod.Input) { in.Actions.My = 50e6 })
	assert.Equal(t, limit.OutOfScope, s["rod_tension"].Verdict, "one side pressed")
	assert.Equal(t, limit.Pass, s["rod_shear"].Verdict)
	s = with(func(in *rod.Input) { in.Actions.N = -500e3 })
	assert.Equal(t, limit.NotApplicable, s["rod_tension"].Verdict, "compression goes through the plate")
	s = with(func(in *rod.Input) { in.Holes.Diameter = 26 })
	assert.Equal(t, limit.Fail, s["rod_shear"].Verdict, "loose holes")
	assert.Equal(t, limit.Fail, s["base_shear"].Verdict, "loose holes")
	s = with(func(in *rod.Input) { in.Holes.Diameter = 26; in.Holes.WeldedWashers = true })
	assert.Equal(t, limit.Pass, s["rod_shear"].Verdict)
	s = with(func(in *rod.Input) {
		in.Holes.Diameter = 26
		in.Actions.N = -200e3
		in.Friction = rod.Friction{Counted: true, Compression: 200e3}
	})
	assert.Equal(t, limit.NotApplicable, s["rod_shear"].Verdict, "friction takes it all")
	assert.InDelta(t, 0.5, s["base_shear"].Utilization, 1e-9)
	s = with(func(in *rod.Input) { in.Rod.Steel = material.RodSteel{Fy: 1000, Fu: 1200} })
	assert.Equal(t, limit.OutOfScope, s["rod_tension"].Verdict, "harder than 10.9")
	s = with(func(in *rod.Input) { in.Rod.Steel, _ = material.RodSteelByName("ISO 898-1 10.9", 20) })
	assert.Equal(t, limit.OutOfScope, s["base_shear"].Verdict, "f_yb 900")
	s = with(func(in *rod.Input) { in.StandOff = rod.StandOff{Gap: 40} })
	assert.Equal(t, limit.NotApplicable, s["base_shear"].Verdict)
	assert.True(t, s["rod_stand_off_bending"].Rated)
	s = with(func(in *rod.Input) { in.Rod.Countersunk = true })
	for _, id := range []string{"base_shear", "plate_bearing", "plate_punching"} {
		assert.Equal(t, limit.OutOfScope, s[id].Verdict, "countersunk: %s", id)
	}
	s = with(func(in *rod.Input) {
		in.Rod.Thread, _ = material.ThreadByName("M10")
		in.Holes.Diameter = 12
	})
	assert.Equal(t, limit.Fail, s["rod_shear"].Verdict, "2 mm is loose for M10")
	s = with(func(in *rod.Input) { in.Holes.Tolerance = 3 })
	assert.Equal(t, limit.Fail, s["hole_tolerance"].Verdict)
	assert.InDelta(t, 26, s["hole_tolerance"].Required, 1e-12)
	s = with(func(in *rod.Input) { in.At = in.At[:2]; in.Actions.Mx = 1e6 })
	assert.Equal(t, limit.OutOfScope, s["rod_tension"].Verdict, "two rods on a line")
}

// TestOversizedHoleNeedsMoreEdge: AISC 360-22 Tables J3.4 and J3.5 (from memory),
// 3/4 in bolt, 1 in of edge, 1/8 in more in an oversized hole.
func TestOversizedHoleNeedsMoreEdge(t *testing.T) {
	in := four(basis.USLRFD, "3/4-10 UNC", "ASTM F1554 Gr 36", 0.8125*inch, 150)
	r, _ := check(t, in)
	assert.InDelta(t, inch, r.Edge.EdgeNeed, 1e-9)
	in.Holes.Diameter = 0.9375 * inch
	r, _ = check(t, in)
	assert.InDelta(t, 1.125*inch, r.Edge.EdgeNeed, 1e-9)
	in.Holes.Diameter = 2 * inch
	r, _ = check(t, in)
	assert.InDelta(t, inch+(1.25*inch-2)/2, r.Edge.EdgeNeed, 1e-9)
}

// TestLeverArm is a slip check, constructed from EN 1992-4:2018 7.2.2.3.2: d 24,
// stress diameter 21.2, gap 40, plate 30, restrained, 0.3 of N_Rd,s.
func TestLeverArm(t *testing.T) {
	in := four(basis.Eurocode, "M24", "ISO 898-1 8.8", 26, 120)
	in.Plate.Thickness = 30
	in.StandOff = rod.StandOff{Gap: 40, PlateHoldsRotation: true}
	in.Each = make([]rod.Force, 4)
	in.Each[2] = rod.Force{Tension: 0.3 * 353 * 800 / 1.5, ShearX: 1e3}
	r, s := check(t, in)
	assert.InDelta(t, 67, r.Bend.Arm, 1e-12)
	assert.InDelta(t, 0.898e6, r.Bend.M0, 1e3)
	assert.InDelta(t, 18.8e3/r.Bend.GammaV, r.Bend.VRd, 100)
	assert.Equal(t, 3, s["rod_stand_off_bending"].Member)
}

func TestFaultsNameEveryField(t *testing.T) {
	in := four(basis.Eurocode, "M20", "ISO 898-1 8.8", 20, 150)
	in.At[1] = geom.Point{X: 195}
	in.At[2] = in.At[0]
	in.Plate.Corrosion = 20
	in.Rod.Corrosion = 30
	in.Each = make([]rod.Force, 3)
	var f limit.Faults
	rod.Validate(in, &f)
	var fields []string
	for _, v := range f {
		fields = append(fields, v.Field)
	}
	assert.ElementsMatch(t, []string{"rods.holes.diameter_mm", "rods.positions[1]", "rods.positions[2]",
		"plate.corrosion_allowance_mm", "rods.rod.corrosion_allowance_mm", "rod_forces"}, fields)
}

func drawn(t *rapid.T) *rod.Input {
	b := rapid.SampledFrom([]basis.Basis{basis.Eurocode, basis.USLRFD, basis.USASD}).Draw(t, "basis")
	class := rapid.SampledFrom([]string{"ISO 898-1 4.6", "ISO 898-1 5.8", "ISO 898-1 8.8", "ASTM F1554 Gr 36"}).Draw(t, "class")
	in := four(b, rapid.SampledFrom([]string{"M16", "M20", "M24", "M30"}).Draw(t, "thread"), class, 0,
		rapid.Float64Range(60, 140).Draw(t, "a"))
	in.Holes.Diameter = in.Rod.Thread.Diameter + rapid.Float64Range(1, 6).Draw(t, "play")
	in.Holes.WeldedWashers = rapid.Bool().Draw(t, "washers")
	in.Holes.WasherSide, in.Holes.WasherThickness = 80, 12
	in.Plate.Thickness = rapid.Float64Range(8, 40).Draw(t, "t")
	// Forces of tenths of a newton: what is less is no force.
	f := rapid.Map(rapid.IntRange(-2000000, 2000000), func(n int) float64 { return float64(n) / 10 })
	in.Actions = geom.Actions{N: f.Draw(t, "N"), Vx: f.Draw(t, "Vx"), Vy: f.Draw(t, "Vy"),
		Mx: 5 * f.Draw(t, "Mx"), My: 5 * f.Draw(t, "My"), T: 50 * f.Draw(t, "T")}
	if rapid.Bool().Draw(t, "gap") {
		in.StandOff = rod.StandOff{Gap: rapid.Float64Range(5, 100).Draw(t, "gap"), PlateHoldsRotation: rapid.Bool().Draw(t, "held")}
	}
	if rapid.Bool().Draw(t, "friction") {
		in.Friction = rod.Friction{Counted: true, Compression: 1e5, Coefficient: 0.4}
	}
	if rapid.Bool().Draw(t, "corroded") {
		in.Rod.Corrosion, in.Plate.Corrosion = 1.5, 1
	}
	return in
}

func TestBiggerStrongerThickerIsNeverWeaker(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := drawn(t)
		_, before := check(t, in)
		for name, change := range map[string]func(*rod.Input){
			"strength": func(in *rod.Input) { in.Rod.Steel.Fu *= 1.05 },
			"plate":    func(in *rod.Input) { in.Plate.Thickness *= 1.1 },
			"diameter": func(in *rod.Input) {
				in.Rod.Thread.Diameter *= 1.02
				in.Rod.Thread.StressArea *= 1.02 * 1.02
				in.Holes.Diameter += 0.02 * in.Rod.Thread.Diameter
			},
		} {
			more := *in
			change(&more)
			_, after := check(t, &more)
			for _, id := range []string{"rod_tension", "rod_shear", "rod_combined", "plate_punching"} {
				if before[id].Verdict == limit.Fail && !before[id].Rated {
					continue // nothing is weaker than no resistance
				}
				assert.LessOrEqual(t, after[id].Utilization, before[id].Utilization+1e-12, "%s: %s", name, id)
			}
		}
	})
}

func TestQuarterTurnGivesTheSameAnswer(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := drawn(t)
		turned := *in
		turned.At = make([]geom.Point, len(in.At))
		for i, p := range in.At {
			turned.At[i] = geom.Point{X: -p.Y, Y: p.X}
		}
		a := in.Actions
		turned.Actions = geom.Actions{N: a.N, Vx: -a.Vy, Vy: a.Vx, Mx: -a.My, My: a.Mx, T: a.T}
		_, s := check(t, in)
		_, q := check(t, &turned)
		for id := range s {
			assert.Equal(t, s[id].Verdict, q[id].Verdict, id)
			assert.InDelta(t, s[id].Utilization, q[id].Utilization, 1e-9*(1+s[id].Utilization), id)
		}
	})
}

func TestTwiceTheLoadIsTwiceTheUse(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := drawn(t)
		in.Friction = rod.Friction{}
		a := in.Actions
		_, s := check(t, in)
		in.Actions = geom.Actions{N: 2 * a.N, Vx: 2 * a.Vx, Vy: 2 * a.Vy, Mx: 2 * a.Mx, My: 2 * a.My, T: 2 * a.T}
		_, q := check(t, in)
		for _, id := range []string{"rod_tension", "rod_shear", "base_shear", "plate_bearing", "plate_tear_out", "plate_punching"} {
			assert.InDelta(t, 2*s[id].Utilization, q[id].Utilization, 1e-9*(1+s[id].Utilization), id)
		}
	})
}

// At a ratio of live to dead load of 3 the factored load is 1.5 times the
// unfactored one (ASCE 7-22 2.3.1), and phi Omega is 1.5 for rods.
func TestLRFDAgreesWithASD(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := drawn(t)
		in.Friction = rod.Friction{}
		in.Design.Basis = basis.USASD
		_, asd := check(t, in)
		a := in.Actions
		in.Actions = geom.Actions{N: 1.5 * a.N, Vx: 1.5 * a.Vx, Vy: 1.5 * a.Vy, Mx: 1.5 * a.Mx, My: 1.5 * a.My, T: 1.5 * a.T}
		in.Design.Basis = basis.USLRFD
		_, lrfd := check(t, in)
		for _, id := range []string{"rod_tension", "rod_shear", "rod_combined", "plate_bearing", "plate_punching"} {
			assert.InDelta(t, asd[id].Utilization, lrfd[id].Utilization, 1e-9*(1+asd[id].Utilization), id)
		}
	})
}

func TestRequiredSizesPass(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := drawn(t)
		_, s := check(t, in)
		for _, id := range []string{"rod_tension", "rod_shear"} {
			if s[id].Size == limit.NoSize {
				continue
			}
			fed := *in
			scale := s[id].Required / in.Rod.Thread.Diameter
			if scale < 0.3 {
				continue // the hole pattern and its clearances would be another
			}
			fed.Rod.Thread.Diameter *= scale
			fed.Rod.Thread.StressArea *= scale * scale
			fed.Holes.Diameter = fed.Rod.Thread.Diameter + 1
			if rod.Validate(&fed, new(limit.Faults)); fed.Rod.Thread.Diameter > 55 {
				continue
			}
			_, q := check(t, &fed)
			assert.LessOrEqual(t, q[id].Utilization, 1+1e-6, id)
		}
		for _, id := range []string{"plate_bearing", "plate_tear_out", "plate_punching"} {
			if s[id].Required < in.Plate.Corrosion+1 {
				continue // none, or thinner than any plate
			}
			fed := *in
			fed.Plate.Thickness = s[id].Required
			_, q := check(t, &fed)
			assert.LessOrEqual(t, q[id].Utilization, 1+1e-6, id)
		}
	})
}

func TestDerivationAddsUp(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := drawn(t)
		r, _ := check(t, in)
		var s derive.Sheet
		r.Derive(&s)
		require.NoError(t, derive.Verify(s.Steps))
	})
}

func TestWildNumbersNeverLeave(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := drawn(t)
		wild := rapid.OneOf(rapid.Float64(), rapid.SampledFrom([]float64{0, math.NaN(), math.Inf(1), math.Inf(-1), 1e300, -1e300, 1e-300}))
		for _, f := range []*float64{&in.Plate.SizeX, &in.Plate.Thickness, &in.Actions.N, &in.Actions.Mx, &in.Actions.T,
			&in.Rod.Thread.Diameter, &in.Rod.Thread.StressArea, &in.Rod.Steel.Fu, &in.Holes.Diameter, &in.At[0].X,
			&in.StandOff.Gap, &in.Friction.Compression, &in.Design.EC.GammaM2} {
			if rapid.Bool().Draw(t, "wild") {
				*f = wild.Draw(t, "v")
			}
		}
		r, err := rod.Check(in)
		if err != nil {
			return
		}
		var l limit.List
		r.States(&l)
		for _, s := range l.All() {
			for _, v := range []float64{s.Demand, s.Resistance, s.Utilization, s.Required} {
				if !(math.Abs(v) <= math.MaxFloat64) {
					t.Fatalf("%s holds %g", s.Kind.ID, v)
				}
			}
		}
	})
}

var sink rod.Result

func TestCheckAllocatesNothing(t *testing.T) {
	in := four(basis.Eurocode, "M20", "ISO 898-1 8.8", 22, 150)
	in.Actions = geom.Actions{N: 40e3, Vx: 20e3, T: 1e6}
	assert.Zero(t, testing.AllocsPerRun(100, func() { sink, _ = rod.Check(in) }))
}

func BenchmarkCheck(b *testing.B) {
	in := four(basis.Eurocode, "M20", "ISO 898-1 8.8", 22, 150)
	in.Actions = geom.Actions{N: 40e3, Vx: 20e3, T: 1e6}
	b.ReportAllocs()
	for b.Loop() {
		sink, _ = rod.Check(in)
	}
}
