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

// stack is two tiers of tyres under a shoe, in a pit.
func stack() compare.Stack {
	return compare.Stack{
		Rings: []compare.Ring{
			{Inner: 600, Outer: 700, Height: 200, Count: 2, Mass: 9, Reused: true, Tyre: true, UnitWeight: 20e-6, Loose: 1.25},
			{Inner: 900, Outer: 1000, Height: 300, Count: 1, Mass: 40, UnitWeight: 20e-6, Loose: 1.25},
		},
		Shoe: compare.Plate{SizeX: 400, SizeY: 400, Thickness: 20}, Brackets: 6,
		Bottom:     compare.Plate{SizeX: 800, SizeY: 800, Thickness: 10, Round: true},
		Rods:       compare.Rods{Count: 4, Diameter: 20, Length: 900, Fittings: 2},
		Weld:       compare.Weld{Length: 1200, Throat: 5},
		Levelling:  compare.Course{SizeX: 1200, SizeY: 1200, Thickness: 100, UnitWeight: 18e-6, Loose: 1.2},
		Geotextile: compare.Sheet{SizeX: 1500, SizeY: 1500, Layers: 1, Laps: 0.1, Mass: 0.2},
		Dig:        compare.Dig{Depth: 610, Space: 300, Slope: 0.5, UnitWeight: 18e-6, Bulking: 1.3},
	}
}

func items(t require.TestingT, in compare.Stack) map[string]compare.Item {
	all, err := compare.RingQuantities(&in)
	require.NoError(t, err)
	return byName(all)
}

func padItems(t require.TestingT, in compare.Pad) map[string]compare.Item {
	all, err := compare.PadQuantities(&in)
	require.NoError(t, err)
	return byName(all)
}

func byName(all []compare.Item) map[string]compare.Item {
	out := map[string]compare.Item{}
	for _, i := range all {
		name := i.Name
		if name == "" {
			name = i.Kind.String()
		}
		out[name] = i
	}
	return out
}

// TestStackByHand: worked by hand.
func TestStackByHand(t *testing.T) {
	all := items(t, stack())
	// 400 x 400 x 20 x 7.85e-6.
	assert.InDelta(t, 25.12, all["shoe plate"].Mass, 1e-9)
	assert.InDelta(t, 6, all["brackets of the shoe"].Mass, 1e-9)
	// pi/4 800^2 x 10 x 7.85e-6.
	assert.InDelta(t, 39.458, all["bottom plate"].Mass, 1e-3)
	// 4 x 314.159 x 900 x 7.85e-6 + 2.
	assert.InDelta(t, 10.878, all["steel rods"].Mass, 1e-3)
	assert.Equal(t, 4, all["steel rods"].Count)
	// 1200 x 25 x 7.85e-6.
	assert.InDelta(t, 0.2355, all["weld metal"].Mass, 1e-9)
	assert.Equal(t, 2, all["reused rings"].Count)
	assert.InDelta(t, 18, all["reused rings"].Mass, 1e-9)
	assert.True(t, all["reused rings"].Tyre)
	assert.InDelta(t, 40, all["rings"].Mass, 1e-9)
	// 0.282743 x 0.4 + 0.636173 x 0.3 = 0.113097 + 0.190852 m3.
	assert.InDelta(t, 0.303949, all["granular fill"].Volume, 1e-6)
	assert.InDelta(t, 0.379936, all["granular fill"].Loose, 1e-6)
	assert.InDelta(t, 0.303949*20e3/9.80665, all["granular fill"].Mass, 1e-2)
	assert.InDelta(t, 0.144, all["levelling layer"].Volume, 1e-12)
	assert.InDelta(t, 0.1728, all["levelling layer"].Loose, 1e-12)
	assert.InDelta(t, 2.475, all["geotextile"].Area, 1e-12)
	assert.InDelta(t, 0.495, all["geotextile"].Mass, 1e-12)
	// 1.8 by 1.8 m at the bottom, 0.61 m deep, 0.5 across for 1:
	// 0.61 (3.24 + 3.6 x 0.305 + 4/3 x 0.25 x 0.3721) = 0.61 (3.24 + 1.098 + 0.124033).
	assert.InDelta(t, 2.721840, all["excavation"].Volume, 1e-6)
	assert.InDelta(t, 2.721840*1.3, all["excavation"].Loose, 1e-6)
	// Up to the surface: 0.144 + 0.502655 x 0.01 + 0.785398 x 0.3 + 0.384845 x 0.2.
	taken := 0.144 + 0.00502655 + 0.2356194 + 0.0769690
	assert.InDelta(t, taken, all["surplus soil"].Volume, 1e-6)
	assert.InDelta(t, 2.721840-taken, all["backfill"].Volume, 1e-6)
	assert.InDelta(t, taken*18e3/9.80665, all["surplus soil"].Mass, 1e-2)
}

// TestPadByHand: worked by hand.
func TestPadByHand(t *testing.T) {
	in := compare.Pad{
		SizeX: 1500, SizeY: 1200, Thickness: 350, Plinth: compare.Plinth{SizeX: 400, SizeY: 300, Height: 500},
		X: compare.Bars{Diameter: 12, Spacing: 150}, Y: compare.Bars{Diameter: 10, Spacing: 200}, Cover: 50, Bend: 100, Other: 5,
		Blinding: 50, Beyond: 100, Dig: compare.Dig{Depth: 800, Space: 400},
	}
	all := padItems(t, in)
	// 1.5 x 1.2 x 0.35 + 0.4 x 0.3 x 0.5.
	assert.InDelta(t, 0.69, all["concrete"].Volume, 1e-12)
	assert.InDelta(t, 0.69*24e3/9.80665, all["concrete"].Mass, 1e-6)
	// Along x: (1200 - 100 - 12)/150 = 7.25, so 9 bars of 1600 mm and 113.097 mm2; along
	// y: (1500 - 100 - 10)/200 = 6.95, so 8 of 1300 mm and 78.540 mm2.
	assert.InDelta(t, (9*1600*113.0973+8*1300*78.5398)*7.85e-6+5, all["reinforcement"].Mass, 1e-4)
	// 1.7 x 1.4 x 0.05.
	assert.InDelta(t, 0.119, all["blinding"].Volume, 1e-12)
	// 2 (1.5 + 1.2) 0.35 + 2 (0.4 + 0.3) 0.5.
	assert.InDelta(t, 2.59, all["formwork"].Area, 1e-12)
	// 2.5 x 2.2 x 0.8, upright.
	assert.InDelta(t, 4.4, all["excavation"].Volume, 1e-12)
	// 0.119 + 0.63 + 0.4 x 0.3 x 0.4 below the surface.
	assert.InDelta(t, 0.797, all["surplus soil"].Volume, 1e-12)
	assert.InDelta(t, 3.603, all["backfill"].Volume, 1e-12)

	in.Against, in.Dig.Space, in.Plinth = true, 0, compare.Plinth{}
	assert.NotContains(t, padItems(t, in), "formwork")
}

// TestPitIsTheIntegralOfItsPlans holds the closed form against a sum of slices.
func TestPitIsTheIntegralOfItsPlans(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := stack()
		in.Dig = compare.Dig{
			Depth: rapid.Float64Range(100, 3000).Draw(t, "depth"), Space: rapid.Float64Range(0, 1000).Draw(t, "space"),
			Slope: rapid.Float64Range(0, 2).Draw(t, "slope"),
		}
		const slices = 2000
		sum := 0.0
		for i := range slices {
			side := 1200 + 2*in.Dig.Space + 2*in.Dig.Slope*in.Dig.Depth*(float64(i)+0.5)/slices
			sum += side * side * in.Dig.Depth / slices / 1e9
		}
		all := items(t, in)
		assert.InEpsilon(t, sum, all["excavation"].Volume, 1e-6)
		assert.InEpsilon(t, all["excavation"].Volume, all["backfill"].Volume+all["surplus soil"].Volume, 1e-12)
	})
}

// TestFillOfOneRingWithoutLooseFactor leaves the volume to order out.
func TestFillOfOneRingWithoutLooseFactor(t *testing.T) {
	in := stack()
	in.Rings[0].Loose = 0
	assert.Zero(t, items(t, in)["granular fill"].Loose)
}

func fields(t *testing.T, err error) []string {
	var faults limit.Faults
	require.ErrorAs(t, err, &faults)
	var out []string
	for _, f := range faults {
		out = append(out, f.Field)
	}
	return out
}

func TestFaultsOfQuantitiesAreNamed(t *testing.T) {
	nan := math.NaN()
	in := stack()
	in.Rings[0] = compare.Ring{Inner: 900, Outer: 800, Height: nan, Count: 0, Mass: 0, UnitWeight: 0, Loose: 0.5, Tyre: true}
	in.Shoe.SizeX, in.Bottom.SizeX, in.Brackets = nan, 700, -1
	in.Rods.Diameter, in.Weld.Throat = 0, 0
	in.Levelling.UnitWeight, in.Geotextile.Layers = 0, 0
	in.Dig.Depth, in.Dig.Slope = 50, nan
	_, err := compare.RingQuantities(&in)
	assert.ElementsMatch(t, []string{
		"rings[0].height_mm", "rings[0].count", "rings[0].mass_kg", "rings[0].fill_unit_weight_kn_m3", "rings[0].loose_factor",
		"rings[0].inner_diameter_mm", "rings[0].reused", "shoe.size_x_mm", "bottom_plate.size_y_mm", "levelling.unit_weight_kn_m3",
		"brackets_kg", "rods.diameter_mm", "weld.throat_mm", "geotextile.layers", "excavation.slope", "excavation.depth_mm",
	}, fields(t, err))
	_, err = compare.RingQuantities(&compare.Stack{})
	assert.Equal(t, []string{"rings"}, fields(t, err))

	_, err = compare.PadQuantities(&compare.Pad{
		SizeX: nan, SizeY: 500, Thickness: 0, Plinth: compare.Plinth{Height: 100}, Cover: 300,
		X: compare.Bars{Diameter: 12, Spacing: 5}, Y: compare.Bars{Diameter: nan}, Against: true,
		Dig: compare.Dig{Depth: 100, Space: 1, Bulking: 9}, Blinding: 200,
	})
	assert.ElementsMatch(t, []string{
		"pad.size_x_mm", "pad.thickness_mm", "plinth.size_x_mm", "plinth.size_y_mm", "reinforcement.x.spacing_mm",
		"reinforcement.cover_mm", "reinforcement.y.diameter_mm", "excavation.working_space_mm", "excavation.bulking_factor",
		"excavation.depth_mm",
	}, fields(t, err))
}

func TestMoreOfAFootingIsNeverLess(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		number := func(name string, low, high float64) float64 { return rapid.Float64Range(low, high).Draw(t, name) }
		in := compare.Pad{
			SizeX: number("x", 500, 3000), SizeY: number("y", 500, 3000), Thickness: number("h", 200, 900), Cover: 50,
			X: compare.Bars{Diameter: 12, Spacing: number("s", 100, 300)}, Y: compare.Bars{Diameter: 12, Spacing: 200},
			Dig: compare.Dig{Depth: 1000, Space: number("space", 0, 500), Slope: number("m", 0, 1)},
		}
		before := padItems(t, in)
		in.SizeX, in.Thickness = in.SizeX*number("wider", 1, 2), in.Thickness*number("thicker", 1, 1.1)
		after := padItems(t, in)
		for name, i := range before {
			if name == "backfill" {
				continue
			}
			assert.GreaterOrEqual(t, after[name].Mass, i.Mass*(1-1e-12), name)
			assert.GreaterOrEqual(t, after[name].Volume, i.Volume*(1-1e-12), name)
			assert.GreaterOrEqual(t, after[name].Area, i.Area*(1-1e-12), name)
		}
	})
}
