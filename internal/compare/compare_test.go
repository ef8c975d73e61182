package compare_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"footward.example/footward/internal/compare"
	"footward.example/footward/internal/limit"
)

func rate(per compare.Measure, v float64) compare.Value {
	return compare.Value{Given: true, Per: per, Value: v, Source: "the builder's offer"}
}

// two are a stack and a pad, counted.
func two(t require.TestingT) []compare.Footing {
	s := stack()
	rings, err := compare.RingQuantities(&s)
	require.NoError(t, err)
	pad, err := compare.PadQuantities(&compare.Pad{
		SizeX: 1200, SizeY: 1200, Thickness: 400, Cover: 75, X: compare.Bars{Diameter: 12, Spacing: 150}, Y: compare.Bars{Diameter: 12, Spacing: 150},
		Dig: compare.Dig{Depth: 700, Space: 300, UnitWeight: 18e-6},
	})
	require.NoError(t, err)
	return []compare.Footing{{Label: "pad", Items: pad}, {Label: "rings", Items: rings}}
}

// TestTotalsByHand: worked by hand. Concrete 2.4 m3 by 120 and 1.5 h; 5650 kg by
// 0.113; bars 100 kg by 2 and 0.02 h, 1.40; 30 km at 0.1 for each tonne and kilometre.
func TestTotalsByHand(t *testing.T) {
	r, err := compare.Compare(&compare.Input{
		Footings: []compare.Footing{
			{Label: "a", Items: []compare.Item{
				{Kind: compare.Concrete, Volume: 2.4, Mass: 5650}, {Kind: compare.Reinforcement, Mass: 100},
			}},
			{Label: "b", Items: []compare.Item{{Kind: compare.Concrete, Volume: 1.2, Mass: 2825}}},
		},
		Rates: compare.Rates{
			Each: []compare.Rate{
				{Kind: compare.Concrete, Cost: rate(compare.PerM3, 120), Hours: rate(compare.PerM3, 1.5), Distance: 30},
				{Kind: compare.Reinforcement, Cost: rate(compare.PerKg, 2), Hours: rate(compare.PerKg, 0.02), Distance: 30},
			},
			Haul: compare.Haul{Carbon: rate(0, 0.1), Cost: rate(0, 0.2)},
		},
	})
	require.NoError(t, err)
	a := r.Answers[0].Totals
	assert.InDelta(t, 5750, a.Mass.Value, 1e-9)
	assert.InDelta(t, 2.4, a.Volume.Value, 1e-12)
	assert.InDelta(t, 488, a.Cost.Value, 1e-9)
	assert.InDelta(t, 5.6, a.Hours.Value, 1e-9)
	assert.InDelta(t, 638.45+140, a.Carbon.Value, 1e-9)
	assert.InDelta(t, 17.25, a.HaulCarbon.Value, 1e-9)
	assert.InDelta(t, 34.5, a.HaulCost.Value, 1e-9)
	assert.False(t, a.Cost.Partial || a.Hours.Partial || a.Carbon.Partial || a.HaulCarbon.Partial)
	require.Len(t, r.Contrasts, 1)
	c := r.Contrasts[0]
	assert.InDelta(t, 144-488, c.Cost.Difference, 1e-9)
	assert.InDelta(t, 144.0/488, c.Cost.Ratio, 1e-12)
	assert.InDelta(t, 319.225/778.45, c.Carbon.Ratio, 1e-12)
	assert.InDelta(t, 0.5, c.Volume.Ratio, 1e-12)
	assert.True(t, r.Answers[0].Rows[0].Carbon.Default)
	assert.Contains(t, r.Answers[0].Rows[0].Carbon.Source, "not compared with the printed edition")
}

// TestNoRateIsNeverNothingInSilence: without rates there is no cost, no labour and no
// contrast of them, and every row says so.
func TestNoRateIsNeverNothingInSilence(t *testing.T) {
	r, err := compare.Compare(&compare.Input{Footings: two(t)})
	require.NoError(t, err)
	for _, a := range r.Answers {
		assert.True(t, a.Totals.Cost.Partial && a.Totals.Hours.Partial && a.Totals.HaulCarbon.Partial)
		assert.NotEmpty(t, a.Totals.Cost.Missing)
		for _, row := range a.Rows {
			assert.False(t, row.Cost.Known)
			assert.Equal(t, "no rate given", row.Cost.Reason)
		}
	}
	c := r.Contrasts[0]
	assert.False(t, c.Cost.Known)
	assert.NotEmpty(t, c.Cost.Reason)
	assert.True(t, c.Mass.Known)
	// New rings, weld metal and geotextile have no default.
	assert.Equal(t, []string{"weld metal", "rings", "geotextile"}, r.Answers[1].Totals.Carbon.Missing)
	assert.Equal(t, []string{"formwork"}, r.Answers[0].Totals.Carbon.Missing)
	assert.False(t, c.Carbon.Known)

	var l limit.Notices
	r.Notices(&l)
	var codes []string
	for _, n := range l.All() {
		codes = append(codes, n.Code)
		assert.Contains(t, compare.Remarks(), n)
	}
	assert.ElementsMatch(t, codes, []string{
		"compare_same_function", "compare_left_out", "compare_partial_total", "compare_transport_not_given",
		"compare_default_carbon", "compare_reused_cut_off", "compare_worn_tyres", "compare_quantities",
	})
}

func TestRateByWhatIsNotKnownIsNoRate(t *testing.T) {
	in := compare.Input{
		Footings: []compare.Footing{{Items: []compare.Item{{Kind: compare.Fill, Volume: 1, Mass: 2000}, {Kind: compare.Geotextile, Area: 4}}}},
		Rates:    compare.Rates{Each: []compare.Rate{{Kind: compare.Fill, Cost: rate(compare.PerLooseM3, 30)}}},
	}
	r, err := compare.Compare(&in)
	require.NoError(t, err)
	assert.False(t, r.Answers[0].Rows[0].Cost.Known)
	assert.Contains(t, r.Answers[0].Rows[0].Cost.Reason, "m3 loose")
	assert.Equal(t, []string{"geotextile"}, r.Answers[0].Totals.Mass.Missing)
}

func TestUserRatesOutrankDefaults(t *testing.T) {
	in := compare.Input{Footings: two(t)}
	for _, d := range compare.Defaults() {
		assert.NotEmpty(t, d.Carbon.Source)
		assert.False(t, d.Cost.Given || d.Hours.Given)
		in.Rates.Each = append(in.Rates.Each, compare.Rate{Kind: d.Kind, Carbon: rate(d.Carbon.Per, d.Carbon.Value*2)})
	}
	r, err := compare.Compare(&in)
	require.NoError(t, err)
	plain, err := compare.Compare(&compare.Input{Footings: in.Footings})
	require.NoError(t, err)
	assert.InEpsilon(t, 2*plain.Answers[0].Totals.Carbon.Value, r.Answers[0].Totals.Carbon.Value, 1e-12)
	assert.False(t, r.Answers[0].Rows[0].Carbon.Default)

	in.Rates = compare.Rates{NoDefaults: true}
	r, err = compare.Compare(&in)
	require.NoError(t, err)
	assert.Zero(t, r.Answers[0].Totals.Carbon.Value)
	assert.True(t, r.Answers[0].Totals.Carbon.Partial)
}

// TestTotalsAreTheSumsOfTheirRows whatever the rates.
func TestTotalsAreTheSumsOfTheirRows(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := compare.Input{Footings: two(t)}
		for k := compare.SteelPlate; k <= compare.Surplus; k++ {
			if rapid.Bool().Draw(t, "rated") {
				per := rapid.SampledFrom([]compare.Measure{compare.PerKg, compare.PerM3, compare.PerLooseM3, compare.PerM2, compare.PerPiece}).Draw(t, "per")
				in.Rates.Each = append(in.Rates.Each, compare.Rate{
					Kind: k, Cost: rate(per, rapid.Float64Range(0, 100).Draw(t, "cost")), Distance: rapid.Float64Range(0, 50).Draw(t, "km"),
				})
			}
		}
		in.Rates.Haul.Carbon = rate(0, 0.1)
		r, err := compare.Compare(&in)
		require.NoError(t, err)
		for i, a := range r.Answers {
			require.Len(t, a.Rows, len(in.Footings[i].Items))
			cost, haul, missing := 0.0, 0.0, false
			for _, row := range a.Rows {
				cost += row.Cost.Value
				haul += row.HaulCarbon.Value
				missing = missing || !row.Cost.Known
				for _, f := range []compare.Figure{row.Cost, row.Hours, row.Carbon, row.HaulCost, row.HaulCarbon} {
					assert.False(t, math.IsNaN(f.Value) || math.IsInf(f.Value, 0))
					assert.True(t, f.Known || f.Value == 0)
				}
			}
			assert.InDelta(t, a.Totals.Cost.Value, cost, 1e-9*(1+cost))
			assert.InDelta(t, a.Totals.HaulCarbon.Value, haul, 1e-9*(1+haul))
			assert.Equal(t, missing, a.Totals.Cost.Partial)
		}
	})
}

func TestFaultsOfAComparisonAreNamed(t *testing.T) {
	_, err := compare.Compare(&compare.Input{})
	assert.Equal(t, []string{"footings"}, fields(t, err))
	_, err = compare.Compare(&compare.Input{
		Footings: []compare.Footing{{}, {Items: []compare.Item{{Kind: 99, Mass: 1}, {Kind: compare.Fill}, {Kind: compare.Fill, Mass: math.NaN()}}}},
		Rates: compare.Rates{
			Each: []compare.Rate{
				{Kind: compare.Fill, Cost: compare.Value{Given: true, Value: -1}},
				{Kind: compare.Fill, Distance: math.Inf(1)},
				{Kind: compare.NoKind},
			},
			Haul: compare.Haul{Carbon: compare.Value{Given: true, Value: math.NaN(), Source: "a table"}},
		},
	})
	assert.ElementsMatch(t, []string{
		"footings[0].items", "footings[1].items[0].kind", "footings[1].items[1]", "footings[1].items[2].mass_kg",
		"rates[0].cost.value", "rates[0].cost.per", "rates[0].cost.source", "rates[1].kind", "rates[1].distance_km", "rates[2].kind",
		"transport.carbon.value",
	}, fields(t, err))
}

func BenchmarkCompare(b *testing.B) {
	in := compare.Input{Footings: two(b)}
	b.ReportAllocs()
	for b.Loop() {
		if r, err := compare.Compare(&in); err != nil || len(r.Contrasts) != 1 {
			b.Fatal(err)
		}
	}
}
