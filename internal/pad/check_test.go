package pad_test

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
	"footward.example/footward/internal/pad"
)

var bases = []basis.Basis{basis.Eurocode, basis.USLRFD, basis.USASD}

// footing is a reinforced pad under a post; without bars it is the plain one.
func footing(b basis.Basis) pad.Input {
	return pad.Input{
		Design: basis.Design{Basis: b, EC: basis.Recommended()}, Factored: true,
		SizeX: 1800, SizeY: 1500, Thickness: 450,
		Column: pad.Column{SizeX: 300, SizeY: 250}, Concrete: material.Concrete{Strength: 25},
		Reinforcement: pad.Reinforcement{
			X: pad.Bars{Diameter: 12, Spacing: 120}, Y: pad.Bars{Diameter: 12, Spacing: 120}, Cover: 75, Yield: 500, Bend: 200,
		},
		Actions: geom.Actions{N: -500e3, Vx: 10e3, Mx: 10e6, My: 15e6}, Weight: 40e3,
	}
}

func random(t *rapid.T) pad.Input {
	in := footing(rapid.SampledFrom(bases).Draw(t, "basis"))
	number := func(name string, low, high float64) float64 { return rapid.Float64Range(low, high).Draw(t, name) }
	in.SizeX, in.SizeY, in.Thickness = number("x", 600, 4000), number("y", 600, 4000), number("h", 200, 1200)
	in.Column = pad.Column{SizeX: number("c_x", 100, 600), SizeY: number("c_y", 100, 600)}
	in.Concrete.Strength = number("f", 18, 50)
	in.Reinforcement.YBelow = rapid.Bool().Draw(t, "y below")
	in.Reinforcement.X.Diameter, in.Reinforcement.Y.Diameter = number("phi_x", 8, 32), number("phi_y", 8, 32)
	in.Reinforcement.X.Spacing, in.Reinforcement.Y.Spacing = number("s_x", 80, 300), number("s_y", 80, 300)
	in.Reinforcement.Bend = rapid.SampledFrom([]float64{0, 250}).Draw(t, "bend")
	if rapid.Bool().Draw(t, "plain") {
		in.Reinforcement = pad.Reinforcement{}
	}
	in.Actions = geom.Actions{
		N: -number("N", 0, 2e6), Vx: number("V_x", -30e3, 30e3), Vy: number("V_y", -30e3, 30e3),
		Mx: number("M_x", -1e8, 1e8), My: number("M_y", -1e8, 1e8),
	}
	in.Weight = number("W", 0, 200e3)
	in.SizeEffect, in.Blinding = rapid.Bool().Draw(t, "size effect"), rapid.Bool().Draw(t, "blinding")
	if rapid.Bool().Draw(t, "high") {
		in.Height = in.Thickness + number("above", 0, 1000)
	}
	return in
}

func check(t require.TestingT, in pad.Input) (pad.Result, map[string]limit.State) {
	r, err := pad.Check(&in)
	require.NoError(t, err)
	var l limit.List
	r.States(&l)
	out := map[string]limit.State{}
	for _, s := range l.All() {
		out[s.Kind.ID] = s
	}
	return r, out
}

func TestEveryAnswerIsFiniteAndCanBeFollowed(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := random(t)
		r, states := check(t, in)
		for _, k := range pad.Kinds() {
			if k.Clause[in.Design.Basis] != "" {
				assert.Contains(t, states, k.ID)
			} else {
				assert.NotContains(t, states, k.ID)
			}
		}
		for id, s := range states {
			for _, v := range []float64{s.Demand, s.Resistance, s.Utilization, s.Required} {
				assert.False(t, math.IsNaN(v) || math.IsInf(v, 0), id)
			}
			if !s.Rated && s.Verdict != limit.Pass {
				assert.NotEmpty(t, s.Reason, id)
			}
		}
		var sheet derive.Sheet
		r.Derive(&sheet)
		assert.NoError(t, derive.Verify(sheet.Steps))
		var notices limit.Notices
		r.Notices(&notices)
		assert.NotEmpty(t, notices.All())
		for _, n := range notices.All() {
			assert.Contains(t, pad.Remarks(), n)
		}
	})
}

func TestStepsOfAUsualPadHaveExpressions(t *testing.T) {
	for _, b := range bases {
		for _, plain := range []bool{false, true} {
			in := footing(b)
			if plain {
				in.Reinforcement = pad.Reinforcement{}
			}
			r, _ := check(t, in)
			var sheet derive.Sheet
			r.Derive(&sheet)
			require.NoError(t, derive.Verify(sheet.Steps))
			written := 0
			for _, s := range sheet.Steps {
				if s.Expression != "" {
					written++
				}
			}
			assert.Greater(t, written, 20)
		}
	}
}

func TestWhatIsOutOfScopeIsNeverAPass(t *testing.T) {
	for _, c := range []struct {
		name   string
		change func(*pad.Input)
	}{
		{"service actions", func(in *pad.Input) { in.Design.Basis, in.Factored = basis.USASD, false }},
		{"strong concrete", func(in *pad.Input) { in.Concrete.Strength = 55 }},
		{"weak concrete, US", func(in *pad.Input) { in.Design.Basis = basis.USLRFD; in.Concrete.Strength = 15 }},
		{"soft bars", func(in *pad.Input) { in.Reinforcement.Yield = 250 }},
		{"hard bars, US", func(in *pad.Input) { in.Design.Basis = basis.USLRFD; in.Reinforcement.Yield = 690 }},
		{"thick bars", func(in *pad.Input) { in.Reinforcement.X.Diameter = 40 }},
	} {
		t.Run(c.name, func(t *testing.T) {
			in := footing(basis.Eurocode)
			c.change(&in)
			r, states := check(t, in)
			for id, s := range states {
				assert.Equal(t, limit.OutOfScope, s.Verdict, id)
				assert.NotEmpty(t, s.Reason, id)
			}
			var sheet derive.Sheet
			r.Derive(&sheet)
			assert.Empty(t, sheet.Steps)
		})
	}
}

// TestPulledPadHangs: under a pull the weight hangs from the column, by statics.
func TestPulledPadHangs(t *testing.T) {
	for _, b := range bases {
		in := footing(b)
		in.Actions = geom.Actions{N: 40e3}
		in.Weight = 100e3
		r, states := check(t, in)
		// What presses from below takes its part: 60 of 100 kN.
		want := 40e3 / (in.SizeX * in.SizeY) * r.Spans[0].A * r.Spans[0].A / 2
		assert.InEpsilon(t, want, r.Spans[0].MTop, 1e-9)
		assert.NotEqual(t, limit.NotApplicable, states["pad_top_bending"].Verdict)
		assert.Zero(t, r.Punch.Force)
		var sheet derive.Sheet
		r.Derive(&sheet)
		assert.NoError(t, derive.Verify(sheet.Steps))
		in.Actions.N = 120e3 // lifted off
		_, states = check(t, in)
		assert.Equal(t, limit.Fail, states["pad_equilibrium"].Verdict)
	}
}

func TestResultantOffThePadFails(t *testing.T) {
	in := footing(basis.Eurocode)
	in.Actions.My = 600e6
	_, states := check(t, in)
	assert.Equal(t, limit.Fail, states["pad_equilibrium"].Verdict)
	assert.Equal(t, limit.NotApplicable, states["pad_punching"].Verdict)
}

// TestHangingPadNeedsItsTop: beyond the kern the weight has nothing below it.
func TestHangingPadNeedsItsTop(t *testing.T) {
	in := footing(basis.Eurocode)
	in.Actions = geom.Actions{N: -20e3, My: 40e6}
	in.Weight = 100e3
	r, states := check(t, in)
	require.False(t, r.Kern)
	// 0.1 MN over 1.8 m by 1.5 m, over 0.75 m.
	assert.InEpsilon(t, 100e3/(1800*1500)*750*750/2, states["pad_top_bending"].Demand, 1e-9)
	assert.Equal(t, limit.Pass, states["pad_top_bending"].Verdict)
	in.Weight, in.Actions.My, in.SizeX, in.Thickness = 900e3, 700e6, 4000, 200
	_, states = check(t, in)
	assert.Equal(t, limit.OutOfScope, states["pad_top_bending"].Verdict)
}

func TestEveryFaultIsNamed(t *testing.T) {
	nan := math.NaN()
	in := pad.Input{
		SizeX: nan, SizeY: 100, Thickness: -1, Column: pad.Column{SizeX: 0, SizeY: 200}, Concrete: material.Concrete{Strength: nan},
		Reinforcement: pad.Reinforcement{X: pad.Bars{Diameter: 20, Spacing: 10}, Y: pad.Bars{Diameter: nan, Spacing: nan}, Cover: nan, Bend: -1, Yield: nan},
		Actions:       geom.Actions{N: nan, Vx: nan, Vy: nan, Mx: nan, My: nan, T: nan}, Height: 10, Weight: -1,
	}
	in.Height = nan
	_, err := pad.Check(&in)
	var faults limit.Faults
	require.ErrorAs(t, err, &faults)
	var fields []string
	for _, f := range faults {
		fields = append(fields, f.Field)
		assert.NotEmpty(t, f.Reason)
	}
	assert.ElementsMatch(t, []string{
		"basis.family", "pad.size_x_mm", "pad.thickness_mm", "column.size_x_mm", "column.size_y_mm", "concrete.strength_mpa",
		"weight_kn", "height_mm", "forces.n_kn", "forces.v_x_kn", "forces.v_y_kn", "forces.m_x_knm", "forces.m_y_knm", "forces.t_knm",
		"reinforcement.x.spacing_mm", "reinforcement.y.diameter_mm", "reinforcement.y.spacing_mm",
		"reinforcement.yield_strength_mpa", "reinforcement.bend_mm", "reinforcement.cover_mm",
	}, fields)

	in = footing(basis.Eurocode)
	in.Height, in.Reinforcement.Cover = 300, 430
	_, err = pad.Check(&in)
	require.ErrorAs(t, err, &faults)
	assert.Equal(t, "height_mm", faults[0].Field)
	assert.Equal(t, "reinforcement.cover_mm", faults[1].Field)
}

func BenchmarkCheck(b *testing.B) {
	for name, basis := range map[string]basis.Basis{"eurocode": basis.Eurocode, "aci": basis.USLRFD} {
		b.Run(name, func(b *testing.B) {
			in := footing(basis)
			l := limit.List{NoSizes: true}
			b.ReportAllocs()
			for b.Loop() {
				r, err := pad.Check(&in)
				if err != nil {
					b.Fatal(err)
				}
				l.Reset()
				r.States(&l)
				if l.Governing() == nil {
					b.Fatal("nothing governs")
				}
			}
		})
	}
}
