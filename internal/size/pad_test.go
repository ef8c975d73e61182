package size_test

import (
	"context"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"footward.example/footward/internal/basis"
	"footward.example/footward/internal/geom"
	"footward.example/footward/internal/ground"
	"footward.example/footward/internal/limit"
	"footward.example/footward/internal/material"
	"footward.example/footward/internal/pad"
	"footward.example/footward/internal/size"
)

// shelter is a post of a shelter with snow and wind, on sand.
func shelter(b basis.Basis) *size.PadInput {
	return &size.PadInput{
		Ground: ground.Input{
			Design: basis.Design{Basis: b, EC: basis.Recommended()}, Depth: 800,
			Permanent: geom.Actions{N: -120e3}, Variable: geom.Actions{N: -80e3, Vx: 6e3},
			Soil:      ground.Soil{Friction: 32 * math.Pi / 180, Above: 17e-6, Below: 18e-6, Dry: true},
			Interface: ground.Interface{Share: 1}, Author: ground.Vesic, Resistance: 0.45,
		},
		Pad: pad.Input{
			Column: pad.Column{SizeX: 250, SizeY: 250}, Concrete: material.Concrete{Strength: 25},
			Reinforcement: pad.Reinforcement{Cover: 75, Yield: 500, Bend: 150},
		},
		Cases: []size.PadCase{{Name: "all", Actions: geom.Actions{N: -290e3, Vx: 9e3}, Weight: 1.35}, {Name: "wind", Actions: geom.Actions{N: -120e3, Vx: 9e3}, Weight: 1}},
		Soil:  17e-6, WeightFactor: 1.2, Above: 300,
		Plan: size.Steps{Least: 500, Step: 50, Most: 3000}, Thickness: size.Steps{Least: 250, Step: 50, Most: 1000},
		Bars: []pad.Bars{{Diameter: 12, Spacing: 200}, {Diameter: 12, Spacing: 125}, {Diameter: 16, Spacing: 125}, {Diameter: 10, Spacing: 200}},
		Most: 1,
	}
}

// alone returns the offer with one choice only.
func alone(in size.PadInput, x, h float64, bars int) *size.PadInput {
	in.Plan.Least, in.Plan.Most, in.Thickness.Least, in.Thickness.Most = x, x, h, h
	if bars >= 0 {
		in.Bars = in.Bars[bars : bars+1]
	}
	return &in
}

// firstThatHolds tries every choice by itself, in the order of the search.
func firstThatHolds(t require.TestingT, in *size.PadInput) (size.PadChoice, bool) {
	order := []int{3, 0, 1, 2} // by area per width
	if len(in.Bars) == 0 {
		order = []int{-1}
	}
	for x := in.Plan.Least; x <= in.Plan.Most+1e-6; x += in.Plan.Step {
		for h := in.Thickness.Least; h <= in.Thickness.Most+1e-6; h += in.Thickness.Step {
			for _, b := range order {
				r, err := size.SearchPad(alone(*in, x, h, b))
				if err == nil && r.Found {
					r.Best.Bars = b
					return r.Best, true
				}
			}
		}
	}
	return size.PadChoice{}, false
}

func TestPadSearchFindsWhatTryingEveryChoiceFinds(t *testing.T) {
	found := 0
	rapid.Check(t, func(t *rapid.T) {
		number := func(name string, low, high float64) float64 { return rapid.Float64Range(low, high).Draw(t, name) }
		in := shelter(rapid.SampledFrom([]basis.Basis{basis.Eurocode, basis.USLRFD, basis.USASD}).Draw(t, "basis"))
		in.Ground.Permanent = geom.Actions{N: -number("G", 10e3, 600e3), My: number("M", 0, 30e6)}
		in.Ground.Variable = geom.Actions{N: -number("Q", 0, 200e3), Vx: number("V", 0, 20e3)}
		if in.Ground.Design.Basis != basis.USASD && rapid.Bool().Draw(t, "own cases") {
			in.Cases = nil
		}
		in.Plan = size.Steps{Least: 800, Step: 500, Most: 2300}
		in.Thickness = size.Steps{Least: 250, Step: 150, Most: 700}
		in.Most = rapid.SampledFrom([]float64{0.8, 1}).Draw(t, "most")
		if rapid.Bool().Draw(t, "plain") {
			in.Bars = nil
		}
		r, err := size.SearchPad(in)
		require.NoError(t, err)
		best, holds := firstThatHolds(t, in)
		require.Equal(t, holds, r.Found)
		if holds {
			found++
			assert.Equal(t, best, r.Best)
			assert.Equal(t, limit.Pass, r.Best.Verdict)
			assert.LessOrEqual(t, r.Best.Utilization, in.Most+1e-6)
			var l limit.List
			r.States(&l)
			assert.Equal(t, limit.Pass, l.Verdict())
			most := 0.0
			for _, k := range l.All() {
				if !pad.Detailing(k.Kind) {
					most = max(most, k.Utilization)
				}
			}
			assert.InDelta(t, r.Best.Utilization, most, 1e-12)
		}
	})
	assert.Positive(t, found)
}

// TestPadHoldsByItsPartsAlone builds the best choice by hand and checks it with the
// parts.
func TestPadHoldsByItsPartsAlone(t *testing.T) {
	in := shelter(basis.Eurocode)
	r, err := size.SearchPad(in)
	require.NoError(t, err)
	require.True(t, r.Found)
	c := r.Best
	area := c.SizeX * c.SizeY
	weight := area*c.Thickness*25e-6 + area*(800-c.Thickness)*17e-6
	assert.InEpsilon(t, weight, c.Weight, 1e-12)
	assert.InEpsilon(t, area*c.Thickness, c.Volume, 1e-12)

	g := in.Ground
	g.Shape, g.SizeX, g.SizeY, g.Height, g.Weight = ground.Rectangle, c.SizeX, c.SizeY, c.Thickness+300, weight
	of, err := ground.Check(&g)
	require.NoError(t, err)
	var l limit.List
	of.States(&l)
	assert.Equal(t, limit.Pass, l.Verdict())
	for _, k := range in.Cases {
		p := in.Pad
		p.Design, p.SizeX, p.SizeY, p.Thickness, p.Height = g.Design, c.SizeX, c.SizeY, c.Thickness, c.Thickness+300
		p.Actions, p.Weight = k.Actions, k.Weight*weight
		p.Reinforcement.X, p.Reinforcement.Y = in.Bars[c.Bars], in.Bars[c.Bars]
		of, err := pad.Check(&p)
		require.NoError(t, err)
		l.Reset()
		of.States(&l)
		assert.Equal(t, limit.Pass, l.Verdict(), k.Name)
	}
}

// TestPadByHand: worked by hand. 200 kN on an allowable 150 kPa, base 450 mm deep, plain
// C25/30 of 24 kN/m3: 139.2 kPa are left at 450 mm, 1.4368 m2, 1198.7 mm, so 1200 mm;
// 1150 mm has 151.2 + 10.8 = 162.0 kPa. sigma = 1.35 x 200/1.44 = 187.5 kPa, a 475 mm:
// 475 sqrt(0.5625/0.9576)/0.85 = 428.3 mm, so 450 mm.
func TestPadByHand(t *testing.T) {
	in := shelter(basis.Eurocode)
	in.Ground.Permanent, in.Ground.Variable = geom.Actions{N: -200e3}, geom.Actions{}
	in.Ground.Soil, in.Ground.Depth = ground.Soil{Dry: true}, 450
	in.Ground.Presumptive = ground.Presumptive{Pressure: 0.15, Source: "a table"}
	in.Cases, in.Bars = nil, nil
	r, err := size.SearchPad(in)
	require.NoError(t, err)
	require.True(t, r.Found)
	assert.Equal(t, 1200.0, r.Best.SizeX)
	assert.Equal(t, 450.0, r.Best.Thickness)
	var l limit.List
	r.States(&l)
	for _, s := range l.All() {
		switch s.Kind.ID {
		case "ground_presumptive":
			assert.InDelta(t, (200/1.44+10.8)/1e3, s.Demand, 1e-9)
		case "pad_plain_thickness":
			assert.InDelta(t, 428.3, s.Demand, 0.1)
		}
	}
}

func TestPadStopsNameWhatStopsSmallerPads(t *testing.T) {
	in := shelter(basis.Eurocode)
	in.Ground.Permanent.N = -500e3
	in.Cases = nil
	r, err := size.SearchPad(in)
	require.NoError(t, err)
	require.True(t, r.Found)
	stops := map[size.Dimension]size.PadChoice{}
	for _, s := range r.Stops {
		stops[s.Dimension] = s.Choice
		assert.NotEmpty(t, s.Choice.Governing)
		assert.True(t, s.Choice.Verdict != limit.Pass || s.Choice.Utilization > in.Most)
		again, err := size.SearchPad(alone(*in, s.Choice.SizeX, s.Choice.Thickness, s.Choice.Bars))
		require.NoError(t, err)
		assert.False(t, again.Found)
	}
	assert.Contains(t, stops[size.PadPlan].Governing, "ground_")
	assert.InDelta(t, r.Best.SizeX-50, stops[size.PadPlan].SizeX, 1e-9)
	assert.Contains(t, stops, size.PadDepth)
	assert.InDelta(t, r.Best.Thickness-50, stops[size.PadDepth].Thickness, 1e-9)
	var n limit.Notices
	r.Notices(&n)
	for _, own := range size.PadRemarks() {
		if own.Code == "size_pad_stands_out" {
			continue // it does not
		}
		assert.Contains(t, n.All(), own)
	}
	assert.Less(t, r.Checked, r.Choices)
}

func TestMoreLoadNeverTakesASmallerPlan(t *testing.T) {
	for _, b := range []basis.Basis{basis.Eurocode, basis.USLRFD, basis.USASD} {
		before := 0.0
		for load := 50e3; load < 900e3; load += 50e3 {
			in := shelter(b)
			in.Ground.Permanent.N, in.Ground.Variable = -load, geom.Actions{}
			in.Cases = []size.PadCase{{Name: "all", Actions: geom.Actions{N: -1.4 * load}, Weight: 1.4}}
			r, err := size.SearchPad(in)
			require.NoError(t, err)
			require.True(t, r.Found, "%v at %g", b, load)
			assert.GreaterOrEqual(t, r.Best.SizeX, before)
			before = r.Best.SizeX
		}
	}
}

func TestPadKeepsItsAspect(t *testing.T) {
	in := shelter(basis.Eurocode)
	in.Aspect = 1.3
	r, err := size.SearchPad(in)
	require.NoError(t, err)
	require.True(t, r.Found)
	assert.GreaterOrEqual(t, r.Best.SizeY, 1.3*r.Best.SizeX-1e-6)
	assert.Less(t, r.Best.SizeY, 1.3*r.Best.SizeX+50)
}

func TestNoPadGivesTheClosestMiss(t *testing.T) {
	in := shelter(basis.Eurocode)
	in.Plan.Most = 600
	r, err := size.SearchPad(in)
	require.NoError(t, err)
	assert.False(t, r.Found)
	assert.Empty(t, r.Stops)
	assert.Equal(t, 600.0, r.Best.SizeX)
	assert.Greater(t, r.Best.Utilization, 1.0)
	var l limit.List
	r.States(&l)
	assert.Equal(t, limit.Fail, l.Verdict())

	// A pad narrower than its column still tells what the ground says.
	in = shelter(basis.Eurocode)
	in.Plan, in.Ground.Permanent.N = size.Steps{Least: 200, Step: 100, Most: 300}, 1e6
	r, err = size.SearchPad(in)
	require.NoError(t, err)
	assert.False(t, r.Found)

	// A top that needs bars is out of scope of the concrete, and never a pass.
	in = shelter(basis.Eurocode)
	in.Cases[1].Actions.N = 95e3
	in.Plan, in.Thickness, in.Bars = size.Steps{Least: 3000, Step: 50, Most: 3000}, size.Steps{Least: 250, Step: 50, Most: 250}, in.Bars[2:3]
	r, err = size.SearchPad(in)
	require.NoError(t, err)
	assert.False(t, r.Found)
	assert.Equal(t, limit.OutOfScope, r.Best.Verdict)
	assert.Contains(t, r.Best.Governing, "pad_")
}

func TestPadSearchStopsWhenAsked(t *testing.T) {
	in := shelter(basis.Eurocode)
	ctx, cancel := context.WithCancel(context.Background())
	asked := 0
	in.Stop = func() error {
		if asked++; asked == 5 {
			cancel()
		}
		return ctx.Err()
	}
	_, err := size.SearchPad(in)
	require.ErrorIs(t, err, context.Canceled)
	assert.Equal(t, 5, asked)
}

func TestFaultsOfThePadSearchAreNamed(t *testing.T) {
	for _, c := range []struct {
		change func(*size.PadInput)
		fields []string
	}{
		{func(in *size.PadInput) {
			in.Plan.Least, in.Thickness.Step, in.Above, in.Concrete, in.Soil, in.Most, in.Aspect = 1, 0, -1, 1, math.NaN(), 2, 99
			in.Bars[0].Spacing, in.Cases[1].Weight = 5, math.NaN()
		}, []string{"plan", "thickness.step_mm", "above_mm", "concrete_unit_weight_kn_m3", "soil_unit_weight_kn_m3", "max_utilization", "aspect", "bars[0]", "cases[1].weight_factor"}},
		{func(in *size.PadInput) { in.Plan.Step, in.Thickness.Step = 1, 1 }, []string{"plan"}},
		{func(in *size.PadInput) { in.Soil = 0 }, []string{"soil_unit_weight_kn_m3"}},
		{func(in *size.PadInput) { in.Ground.Design.Basis, in.Cases = basis.USASD, nil }, []string{"cases"}},
		{func(in *size.PadInput) { in.Ground.Design.Basis, in.WeightFactor = basis.USLRFD, 0 }, []string{"weight_factor"}},
		{func(in *size.PadInput) {
			in.Ground.Interface.Share, in.Pad.Concrete.Strength, in.Cases[0].Actions.N = 0, 0, math.Inf(-1)
		}, []string{"base_contact.friction_share", "concrete.strength_mpa", "forces.n_kn"}},
	} {
		in := shelter(basis.Eurocode)
		c.change(in)
		_, err := size.SearchPad(in)
		var faults limit.Faults
		require.ErrorAs(t, err, &faults)
		var fields []string
		for _, f := range faults {
			fields = append(fields, f.Field)
		}
		assert.ElementsMatch(t, c.fields, fields)
	}
}

func BenchmarkSearchPad(b *testing.B) {
	for name, plain := range map[string]bool{"reinforced": false, "plain": true} {
		b.Run(name, func(b *testing.B) {
			in := shelter(basis.Eurocode)
			in.Ground.Permanent.N, in.Cases = -500e3, nil
			if plain {
				in.Bars = nil
			}
			for b.Loop() {
				r, err := size.SearchPad(in)
				if err != nil || !r.Found {
					b.Fatal(err)
				}
				b.ReportMetric(float64(r.Choices), "choices")
				b.ReportMetric(float64(r.Checked), "checked")
			}
		})
	}
}
