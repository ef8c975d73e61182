package size_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"footward.example/footward/internal/base"
	"footward.example/footward/internal/basis"
	"footward.example/footward/internal/bearing"
	"footward.example/footward/internal/geom"
	"footward.example/footward/internal/limit"
	"footward.example/footward/internal/material"
	"footward.example/footward/internal/plate"
	"footward.example/footward/internal/rod"
	"footward.example/footward/internal/size"
	"footward.example/footward/internal/weld"
)

func offered(names ...string) []size.Rod {
	var out []size.Rod
	for _, n := range names {
		out = append(out, size.Rod{Thread: thread(n)})
	}
	return out
}

func thread(name string) material.Thread {
	t, _ := material.ThreadByName(name)
	return t
}

func corners(x, y float64) []geom.Point {
	return []geom.Point{{X: -x, Y: y}, {X: x, Y: y}, {X: -x, Y: -y}, {X: x, Y: -y}}
}

// offer is an HE 200 B on concrete with four rods, under some combinations.
func offer(b basis.Basis, cases ...geom.Actions) *size.Input {
	d := basis.Design{Basis: b, EC: basis.Recommended()}
	s355, _ := material.SteelByName("EN 10025-2 S355")
	steel, _ := material.RodSteelByName("ISO 898-1 8.8", 20)
	part := weld.Part{Thickness: 30, Steel: material.Steel{Grade: s355}}
	in := &size.Input{Rates: size.Mass, Most: 1, Base: base.ColumnInput{
		Base: base.PlateInput{
			Plate: plate.Input{Design: d, Plate: geom.Plate{SizeX: 420, SizeY: 420, Thickness: 30, Steel: material.Steel{Grade: s355}},
				Footprint:  plate.Footprint{Shape: plate.ISection, SizeX: 200, SizeY: 200, Thick: 15, Web: 9, Stiff: true, StiffStated: true},
				WeldThroat: 6},
			Support: bearing.Input{Design: d, SizeX: 420, SizeY: 420, Medium: bearing.Concrete,
				Block: bearing.Block{Concrete: material.Concrete{Strength: 25}, SizeX: 1200, SizeY: 1200, Height: 1000}},
			HasRods: true, At: corners(90, 160), Stretch: 500,
			Rod:   rod.Rod{Thread: thread("M20"), Steel: steel, Making: rod.Standard},
			Holes: rod.Holes{Diameter: 22},
		},
		HasWeld: true, Mu: 0.4,
		Weld: weld.Spec{Type: weld.Fillet, Throat: 6, Parts: [2]weld.Part{part, part}, Filler: material.WeldMetal{Strength: 482}},
	}}
	for _, a := range cases {
		in.Base.Cases = append(in.Base.Cases, base.Case{Name: "case", Actions: a})
	}
	return in
}

// exhaustive checks every choice and returns the cheapest that passes.
func exhaustive(t require.TestingT, in *size.Input) (best float64, found bool) {
	for p := range max(1, len(in.Plans)) {
		for k := range max(1, len(in.Thickness)) {
			for d := range max(1, len(in.Rods)) {
				for a := range max(1, len(in.Throats)) {
					one := *in
					pick(&one, p, k, d, a)
					r, err := size.Search(&one)
					if err != nil {
						continue
					}
					require.Equal(t, 1, r.Choices)
					if r.Found && (!found || r.Best.Cost < best) {
						best, found = r.Best.Cost, true
					}
				}
			}
		}
	}
	return best, found
}

func pick(in *size.Input, p, k, d, a int) {
	if len(in.Plans) > 0 {
		in.Plans = in.Plans[p : p+1]
	}
	if len(in.Thickness) > 0 {
		in.Thickness = in.Thickness[k : k+1]
	}
	if len(in.Rods) > 0 {
		in.Rods = in.Rods[d : d+1]
	}
	if len(in.Throats) > 0 {
		in.Throats = in.Throats[a : a+1]
	}
}

// TestSearchFindsWhatTryingEveryChoiceFinds on small offers.
func TestSearchFindsWhatTryingEveryChoiceFinds(t *testing.T) {
	passes, misses := 0, 0
	rapid.Check(t, func(t *rapid.T) {
		number := func(name string, low, high float64) float64 { return rapid.Float64Range(low, high).Draw(t, name) }
		b := rapid.SampledFrom([]basis.Basis{basis.Eurocode, basis.USLRFD, basis.USASD}).Draw(t, "basis")
		in := offer(b,
			geom.Actions{N: -number("N", 1e5, 1.5e6), Vx: number("V", 0, 5e4)},
			geom.Actions{N: -number("N", 0, 5e5), Mx: number("M", 0, 9e7), Vy: number("V", 0, 5e4)})
		in.Plans = []size.Plan{{SizeX: 340, SizeY: 400, At: corners(90, 150)}, {SizeX: 420, SizeY: 420}, {SizeX: 500, SizeY: 520, At: corners(100, 190)}}
		in.Thickness = []float64{20, 12, 40}
		in.Rods = offered("M30", "M16", "M24")
		in.Throats = []float64{3, 5, 8}
		in.Rates = size.Rates{PlateKg: number("plate", 0, 3), RodKg: number("rod", 0, 5), EachRod: number("each", 0, 20), WeldKg: number("weld", 0, 50)}
		in.Most = rapid.SampledFrom([]float64{0.8, 1}).Draw(t, "most")
		r, err := size.Search(in)
		if err != nil {
			t.Fatal(err)
		}
		best, found := exhaustive(t, in)
		if r.Found != found || found && r.Best.Cost > best*(1+1e-12) {
			t.Fatalf("found %v at %g, every choice tried %v at %g", r.Found, r.Best.Cost, found, best)
		}
		if !found {
			misses++
			return
		}
		passes++
		if r.Next != nil && r.Next.Cost < r.Best.Cost {
			t.Fatalf("the next best at %g is cheaper than the best at %g", r.Next.Cost, r.Best.Cost)
		}
		if r.Checked > 27+27+10 {
			t.Fatalf("%d of 81 were checked", r.Checked)
		}
	})
	t.Logf("%d offers with a choice that passes, %d without", passes, misses)
	assert.Positive(t, passes)
}

func TestStopsNameWhatStopsSmallerValues(t *testing.T) {
	in := offer(basis.Eurocode, geom.Actions{N: -900e3}, geom.Actions{N: -200e3, Mx: 60e6, Vy: 20e3})
	in.Thickness = []float64{5, 8, 10, 15, 20, 25, 30}
	in.Rods = offered("M16", "M20", "M24", "M30")
	in.Throats = []float64{3, 4, 5, 6, 8, 10}
	r, err := size.Search(in)
	require.NoError(t, err)
	require.True(t, r.Found)
	assert.Equal(t, limit.Pass, r.Best.Verdict)
	assert.Equal(t, 7*4*6, r.Choices)
	assert.Less(t, r.Checked, r.Choices)
	stopped := map[size.Dimension]string{}
	for _, s := range r.Stops {
		stopped[s.Dimension] = s.State
		assert.NotEmpty(t, s.State, "a smaller value is cheaper, so it must fail")
	}
	assert.Contains(t, stopped[size.PlateThickness], "plate_")
	var l limit.Notices
	r.Notices(&l)
	assert.NotEmpty(t, l.All())
}

func TestNoChoiceGivesTheClosestMiss(t *testing.T) {
	in := offer(basis.Eurocode, geom.Actions{N: -3e6})
	in.Thickness = []float64{10, 20, 30}
	r, err := size.Search(in)
	require.NoError(t, err)
	assert.False(t, r.Found)
	assert.Greater(t, r.Best.Utilization, 1.0)
	for i := range in.Thickness {
		one := *in
		pick(&one, 0, i, 0, 0)
		miss, err := size.Search(&one)
		require.NoError(t, err)
		assert.GreaterOrEqual(t, miss.Best.Utilization, r.Best.Utilization)
	}

	in.Plans = []size.Plan{{SizeX: 100, SizeY: 100}}
	_, err = size.Search(in)
	var faults limit.Faults
	require.ErrorAs(t, err, &faults, "nothing that is offered can be built")
}

func TestFaultsOfTheOffer(t *testing.T) {
	in := offer(basis.Eurocode, geom.Actions{N: -1e5})
	in.Base.Base.HasRods, in.Base.HasWeld, in.Most = false, false, 0
	in.Rods, in.Throats = offered("M16"), []float64{3}
	in.Thickness = []float64{-1}
	in.Plans = []size.Plan{{SizeX: 0, SizeY: 1}}
	in.Rates.RodKg = -1
	_, err := size.Search(in)
	var faults limit.Faults
	require.ErrorAs(t, err, &faults)
	var fields []string
	for _, f := range faults {
		fields = append(fields, f.Field)
	}
	assert.ElementsMatch(t, []string{"offer.rods", "offer.throat_mm", "offer.thickness_mm[0]", "offer.plans[0]", "max_utilization", "rates"}, fields)

	in = offer(basis.Eurocode, geom.Actions{N: -1e5})
	in.Thickness, in.Throats = make([]float64, 500), make([]float64, 500)
	_, err = size.Search(in)
	require.ErrorAs(t, err, &faults)
	assert.Equal(t, "offer", faults[0].Field)
}

func BenchmarkSearch(b *testing.B) {
	in := offer(basis.Eurocode, geom.Actions{N: -900e3}, geom.Actions{N: -300e3, Mx: 10e6, Vy: 20e3}, geom.Actions{N: -200e3, Mx: 60e6, Vy: 20e3})
	for i := range 20 {
		f := float64(i) * 10
		in.Plans = append(in.Plans, size.Plan{SizeX: 340 + f, SizeY: 400 + f, At: corners(90, 150+f/2)})
	}
	for i := range 25 {
		in.Thickness = append(in.Thickness, 10+2*float64(i))
		in.Throats = append(in.Throats, 3+0.5*float64(i))
	}
	for _, n := range []string{"M16", "M20", "M24", "M27", "M30", "M33", "M36", "M39"} {
		in.Rods = append(in.Rods, offered(n)...)
	}
	for b.Loop() {
		r, err := size.Search(in)
		if err != nil || !r.Found {
			b.Fatal(err)
		}
		b.ReportMetric(float64(r.Choices), "choices")
		b.ReportMetric(float64(r.Checked), "checked")
	}
}
