package bearing_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"footward.example/footward/internal/basis"
	"footward.example/footward/internal/bearing"
	"footward.example/footward/internal/derive"
	"footward.example/footward/internal/geom"
	"footward.example/footward/internal/limit"
	"footward.example/footward/internal/material"
)

const (
	in  = 25.4
	ksi = 6.894757293168361
	kip = 4448.2216152605
)

func design(b basis.Basis) basis.Design { return basis.Design{Basis: b, EC: basis.Recommended()} }

func block(strength, plan, height float64) bearing.Block {
	return bearing.Block{Concrete: material.Concrete{Strength: strength}, SizeX: plan, SizeY: plan, Height: height}
}

// AISC Design Examples v16.0, Example J.6: 22 in plate on a 24 in pedestal.
func exampleJ6(b basis.Basis, force float64) *bearing.Input {
	return &bearing.Input{
		Design: design(b), SizeX: 22 * in, SizeY: 22 * in, Actions: geom.Actions{N: -force},
		Medium: bearing.Concrete, Block: block(3*ksi, 24*in, 24*in),
	}
}

func TestAISCExampleJ6(t *testing.T) {
	r, err := bearing.Check(exampleJ6(basis.USLRFD, 690*kip))
	require.NoError(t, err)
	assert.InDelta(t, 875, r.Concrete.Rc/kip, 0.5)
	r, err = bearing.Check(exampleJ6(basis.USASD, 460*kip))
	require.NoError(t, err)
	assert.InDelta(t, 583, r.Concrete.Rc/kip, 0.5)
}

// TestJointPressure holds figures of SCI P358 Table G.33 (f_jd 17.0, alpha 1.5)
// and of the worked example of Wald (k_j 2.5, f_jd 13.3).
func TestJointPressure(t *testing.T) {
	uk := design(basis.Eurocode)
	uk.EC.AlphaCC = 0.85
	s, err := bearing.Available(&bearing.Input{Design: uk, SizeX: 400, SizeY: 400, Medium: bearing.Concrete, Block: block(30, 600, 600)})
	require.NoError(t, err)
	assert.InDelta(t, 17.0, s.Pressure, 0.05)

	wald := &bearing.Input{Design: design(basis.Eurocode), SizeX: 340, SizeY: 340, Medium: bearing.Concrete, Block: block(12, 850, 900)}
	s, err = bearing.Available(wald)
	require.NoError(t, err)
	assert.InDelta(t, 2.5, s.Concrete.Scale, 1e-9)
	assert.InDelta(t, 13.3, s.Pressure, 0.05)
}

// TestBearingAreaFactor holds NDS 2018 Table 3.10.4 (from memory).
func TestBearingAreaFactor(t *testing.T) {
	for length, cb := range map[float64]float64{0.5: 1.75, 1: 1.38, 1.5: 1.25, 2: 1.19, 3: 1.13, 4: 1.10, 6: 1.00} {
		r, err := bearing.Check(&bearing.Input{
			Design: design(basis.USASD), SizeX: length * in, SizeY: 100, Actions: geom.Actions{N: -1},
			Medium: bearing.Timber, Timber: bearing.TimberBearing{
				Timber: material.Timber{Along: 9, Across: 4, Kind: material.SolidSoftwood}, Direction: bearing.AcrossGrain,
				ServiceClass: 1, EndDistance: 3 * in,
			},
		})
		require.NoError(t, err)
		assert.InDelta(t, cb, r.Timber.Cb, 0.0065, "l_b %g in", length)
	}
}

func TestConcreteLimits(t *testing.T) {
	for _, c := range []struct {
		name          string
		block         bearing.Block
		scale, capped float64 // EN 1992-1-1:2004 6.7
	}{
		{"no room beside the plate", block(30, 300, 900), 1, 1},
		{"height governs the spread", block(30, 900, 150), 1.5, 1.5},
		{"at the cap of 3", block(30, 900, 900), 3, 3},
		{"beyond the cap of 3", block(30, 1500, 1500), 5, 3},
	} {
		t.Run(c.name, func(t *testing.T) {
			r, err := bearing.Check(&bearing.Input{Design: design(basis.Eurocode), SizeX: 300, SizeY: 300,
				Actions: geom.Actions{N: -1e5}, Medium: bearing.Concrete, Block: c.block})
			require.NoError(t, err)
			assert.InDelta(t, c.scale, r.Concrete.Scale, 1e-12)
			assert.InDelta(t, 20*300*300*c.capped, r.Concrete.FRdu, 1e-3)
			assert.LessOrEqual(t, r.Concrete.Fjd, 2*r.Concrete.Fcd+1e-9)
		})
	}
}

func TestEccentricLoadMovesTheSpreadWithIt(t *testing.T) {
	// The plate stands 50 mm off centre towards +x; a moment M_y > 0 presses
	// the +x side, where the edge of the block is near.
	near := bearing.Input{Design: design(basis.Eurocode), SizeX: 300, SizeY: 300, Medium: bearing.Concrete,
		Block: block(30, 500, 900), Actions: geom.Actions{N: -2e5, My: 1e7}}
	near.Block.OffsetX = 50
	far := near
	far.Actions.My = -1e7
	a, err := bearing.Check(&near)
	require.NoError(t, err)
	b, err := bearing.Check(&far)
	require.NoError(t, err)
	assert.InDelta(t, 50, a.Ex, 1e-9)
	assert.InDelta(t, (500-2*100)/200., a.Concrete.Scale, 1e-9)
	assert.InDelta(t, 500/300., b.Concrete.Scale, 1e-9, "the other way the whole block is round the load, and the uncut side governs")

}

func TestVerdicts(t *testing.T) {
	states := func(in *bearing.Input) *limit.List {
		r, err := bearing.Check(in)
		require.NoError(t, err)
		var l limit.List
		r.States(&l)
		return &l
	}
	in := exampleJ6(basis.Eurocode, 100e3)
	assert.Equal(t, limit.Pass, states(in).Verdict())
	in.Actions.N = 100e3
	assert.Equal(t, limit.NotApplicable, states(in).Verdict(), "uplift")
	in.Actions.N = -100e3
	in.Actions.Mx = 100e3 * 22 * 25.4 / 2
	assert.Equal(t, limit.Fail, states(in).Verdict(), "resultant on the edge")
	in.Actions.Mx = 0
	in.Block.GroutThick, in.Block.GroutStrength = 30, 2
	assert.Equal(t, limit.OutOfScope, states(in).Verdict(), "grout too weak for beta_j")
	in.Block.GroutThick, in.Block.GroutStrength = 60, 15
	assert.Equal(t, limit.OutOfScope, states(in).Verdict(), "thick grout weaker than the concrete")
}

func TestFaultsNameEveryField(t *testing.T) {
	var f limit.Faults
	bearing.Validate(&bearing.Input{Medium: bearing.Concrete, SizeX: math.NaN(), SizeY: -1,
		Actions: geom.Actions{N: math.Inf(1)}}, &f)
	var fields []string
	for _, v := range f {
		fields = append(fields, v.Field)
	}
	assert.ElementsMatch(t, []string{"basis.family", "contact.size_x_mm", "contact.size_y_mm", "forces.n_kn",
		"support.concrete.concrete", "support.concrete.height_mm", "support.concrete.size_x_mm", "support.concrete.size_y_mm"}, fields)
}

// drawn returns a sound input.
func drawn(t *rapid.T) *bearing.Input {
	size := rapid.Float64Range(50, 800)
	in := &bearing.Input{
		Design: design(rapid.SampledFrom([]basis.Basis{basis.Eurocode, basis.USLRFD, basis.USASD}).Draw(t, "basis")),
		SizeX:  size.Draw(t, "x"), SizeY: size.Draw(t, "y"),
		Medium: rapid.SampledFrom([]bearing.Medium{bearing.Concrete, bearing.Timber, bearing.Given}).Draw(t, "medium"),
		Given:  bearing.GivenPressure{Pressure: rapid.Float64Range(0.05, 5).Draw(t, "p")},
		Timber: bearing.TimberBearing{
			Timber: material.Timber{Along: rapid.Float64Range(5, 40).Draw(t, "along"),
				Across: rapid.Float64Range(1, 9).Draw(t, "across"), Kind: material.TimberKind(rapid.IntRange(1, 3).Draw(t, "kind"))},
			Direction:    bearing.Grain(rapid.IntRange(1, 2).Draw(t, "grain")),
			ServiceClass: bearing.ServiceClass(rapid.IntRange(1, 3).Draw(t, "class")),
			Duration:     bearing.Duration(rapid.IntRange(0, 5).Draw(t, "duration")),
			Support:      bearing.AcrossSupport(rapid.IntRange(0, 2).Draw(t, "support")),
			EndDistance:  rapid.Float64Range(0, 300).Draw(t, "end"),
		},
	}
	in.Actions.N = -rapid.Float64Range(1e3, 2e6).Draw(t, "n")
	in.Actions.Mx = rapid.Float64Range(-0.4, 0.4).Draw(t, "ey") * in.SizeY * in.Actions.N
	in.Actions.My = rapid.Float64Range(-0.4, 0.4).Draw(t, "ex") * in.SizeX * in.Actions.N
	in.Block = bearing.Block{Concrete: material.Concrete{Strength: rapid.Float64Range(12, 60).Draw(t, "fck")},
		SizeX: in.SizeX * rapid.Float64Range(1.3, 5).Draw(t, "bx"), SizeY: in.SizeY * rapid.Float64Range(1.3, 5).Draw(t, "by"),
		Height: rapid.Float64Range(100, 2000).Draw(t, "h")}
	in.Block.OffsetX = rapid.Float64Range(-0.1, 0.1).Draw(t, "ox") * in.SizeX
	return in
}

func governing(t require.TestingT, in *bearing.Input) float64 {
	r, err := bearing.Check(in)
	require.NoError(t, err)
	var l limit.List
	r.States(&l)
	return l.Governing().Utilization
}

func TestStrongerMediumNeverBearsLess(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := drawn(t)
		more := *in
		more.Block.Concrete.Strength *= 1.1
		more.Given.Pressure *= 1.1
		more.Timber.Timber.Along *= 1.1
		more.Timber.Timber.Across *= 1.1
		assert.LessOrEqual(t, governing(t, &more), governing(t, in)+1e-12)
	})
}

func TestEccentricityNeverHelps(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := drawn(t)
		in.Block.OffsetX = 0
		in.Timber.Direction = bearing.AlongGrain // C_b of the NDS grows as the contact shrinks
		in.Actions.My = 0
		off := *in
		off.Actions.My = 0.1 * in.SizeX * in.Actions.N
		assert.GreaterOrEqual(t, governing(t, &off), governing(t, in)-1e-12)
	})
}

func TestMirrorGivesTheSameAnswer(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := drawn(t)
		m := *in
		m.Actions.My, m.Block.OffsetX = -in.Actions.My, -in.Block.OffsetX
		assert.InEpsilon(t, governing(t, in), governing(t, &m), 1e-9)
		turned := *in // by a quarter: x becomes y
		turned.SizeX, turned.SizeY = in.SizeY, in.SizeX
		turned.Actions.Mx, turned.Actions.My = in.Actions.My, -in.Actions.Mx
		turned.Block.SizeX, turned.Block.SizeY = in.Block.SizeY, in.Block.SizeX
		turned.Block.OffsetX, turned.Block.OffsetY = -in.Block.OffsetY, in.Block.OffsetX
		turned.Actions.Mx, turned.Actions.My = -in.Actions.My, in.Actions.Mx
		turned.Timber.GrainAlongY = !in.Timber.GrainAlongY
		assert.InEpsilon(t, governing(t, in), governing(t, &turned), 1e-9)
	})
}

func TestLoadScalesUtilization(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := drawn(t)
		in.Actions.Mx, in.Actions.My = 0, 0
		twice := *in
		twice.Actions.N *= 2
		r, err := bearing.Check(in)
		require.NoError(t, err)
		r2, err := bearing.Check(&twice)
		require.NoError(t, err)
		assert.InEpsilon(t, 2*r.Q, r2.Q, 1e-12)
	})
}

// At three parts of live load to one of dead load the factored load is
// (1.2 + 3*1.6)/4 = 1.5 times the unfactored one (ASCE 7-22 2.3.1), so LRFD and
// ASD agree within phi Omega / 1.5.
func TestLRFDAgreesWithASD(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := drawn(t)
		in.Medium = bearing.Concrete
		in.Design.Basis = basis.USASD
		asd := governingOf(t, in, "concrete_bearing")
		in.Design.Basis = basis.USLRFD
		in.Actions.N, in.Actions.Mx, in.Actions.My = in.Actions.N*1.5, in.Actions.Mx*1.5, in.Actions.My*1.5
		lrfd := governingOf(t, in, "concrete_bearing")
		assert.InEpsilon(t, 1.5/(0.65*2.31), lrfd/asd, 1e-9)
	})
}

func governingOf(t require.TestingT, in *bearing.Input, id string) float64 {
	r, err := bearing.Check(in)
	require.NoError(t, err)
	var l limit.List
	r.States(&l)
	for _, s := range l.All() {
		if s.Kind.ID == id {
			return s.Utilization
		}
	}
	return math.NaN()
}

func TestRequiredSidePasses(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := drawn(t)
		in.Actions.Mx, in.Actions.My = 0, 0
		r, err := bearing.Check(in)
		require.NoError(t, err)
		var l limit.List
		r.States(&l)
		s := l.All()[1]
		if s.Size == limit.NoSize {
			t.Skip("no square will do")
		}
		in.SizeX, in.SizeY = s.Required, s.Required
		assert.LessOrEqual(t, governing(t, in), 1+1e-6)
	})
}

func TestDerivationAddsUp(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := drawn(t)
		r, err := bearing.Check(in)
		require.NoError(t, err)
		var s derive.Sheet
		r.Derive(&s)
		require.NoError(t, derive.Verify(s.Steps))
		st, err := bearing.Available(in)
		require.NoError(t, err)
		s.Reset(false)
		st.Derive(&s)
		require.NoError(t, derive.Verify(s.Steps))
	})
}

func TestWildNumbersNeverLeave(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := drawn(t)
		wild := rapid.OneOf(rapid.Float64(), rapid.SampledFrom([]float64{0, math.NaN(), math.Inf(1), math.Inf(-1), 1e300, -1e300, 1e-300}))
		for _, f := range []*float64{&in.SizeX, &in.SizeY, &in.Actions.N, &in.Actions.Mx, &in.Block.SizeX, &in.Block.OffsetX,
			&in.Block.Height, &in.Block.Concrete.Strength, &in.Given.Pressure, &in.Timber.Timber.Across, &in.Timber.EndDistance,
			&in.Design.EC.GammaC} {
			if rapid.Bool().Draw(t, "wild") {
				*f = wild.Draw(t, "v")
			}
		}
		r, err := bearing.Check(in)
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

func TestCheckAllocatesNothing(t *testing.T) {
	in := exampleJ6(basis.Eurocode, 1e5)
	assert.Zero(t, testing.AllocsPerRun(100, func() { sink, _ = bearing.Check(in) }))
}

var sink bearing.Result

func BenchmarkCheck(b *testing.B) {
	in := exampleJ6(basis.Eurocode, 1e5)
	b.ReportAllocs()
	for b.Loop() {
		sink, _ = bearing.Check(in)
	}
}
