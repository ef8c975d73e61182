package size_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"footward.example/footward/internal/anchor"
	"footward.example/footward/internal/base"
	"footward.example/footward/internal/basis"
	"footward.example/footward/internal/geom"
	"footward.example/footward/internal/limit"
	"footward.example/footward/internal/plate"
	"footward.example/footward/internal/size"
)

func codes(r *size.Result) map[string]string {
	var l limit.Notices
	r.Notices(&l)
	out := map[string]string{}
	for _, n := range l.All() {
		out[n.Code] = n.Text
	}
	return out
}

// TestWhatIsOutOfScopeIsNamedWithItsReason has a moment on a soft footprint, which the
// plate does not cover: the answer names that, and not a weld that passes.
func TestWhatIsOutOfScopeIsNamedWithItsReason(t *testing.T) {
	in := offer(basis.Eurocode, geom.Actions{N: -200e3, Mx: 20e6})
	in.Base.Base.Plate.Footprint.Stiff = false
	in.Thickness = []float64{20, 40}
	r, err := size.Search(in)
	require.NoError(t, err)
	require.False(t, r.Found)
	assert.Equal(t, limit.OutOfScope, r.Best.Verdict)
	assert.Equal(t, "plate_centre", r.Best.Governing)
	assert.NotEmpty(t, r.Best.Reason)
}

// TestWhatStopsASmallerChoiceIsWhatDoesNotPass names of each stop a state that fails, is
// out of scope or is used too much when that choice is checked alone.
func TestWhatStopsASmallerChoiceIsWhatDoesNotPass(t *testing.T) {
	stops := 0
	for _, a := range []geom.Actions{{N: -600e3}, {N: -100e3, My: 30e6}, {N: 60e3, Vx: 20e3}, {N: -100e3, Mx: 40e6}} {
		in := offer(basis.Eurocode, a)
		in.Plans = []size.Plan{{SizeX: 300, SizeY: 360, At: corners(120, 120)}, {SizeX: 420, SizeY: 420}}
		in.Thickness, in.Throats = []float64{8, 20, 30, 50}, []float64{3, 6}
		in.Rods = offered("M16", "M20", "M30")
		r, err := size.Search(in)
		require.NoError(t, err)
		for _, stop := range r.Stops {
			if stop.State == "" || stop.State == "does_not_fit" {
				continue
			}
			c := r.Best
			*map[size.Dimension]*int{size.PlanSize: &c.Plan, size.PlateThickness: &c.Thickness, size.RodSize: &c.Rod, size.WeldThroat: &c.Throat}[stop.Dimension] = stop.Place
			built := in.Build(&c)
			out, err := base.CheckColumn(&built)
			require.NoError(t, err)
			var l limit.List
			out.States(&l)
			for _, s := range l.All() {
				if s.Kind.ID == stop.State {
					stops++
					assert.NotEqual(t, limit.Pass, s.Verdict, s.Kind.ID)
				}
			}
		}
	}
	assert.Positive(t, stops)
}

// TestHeadedRodsWeighWhatIsEmbedded has four M20 of 300 mm in concrete below a plate of 30
// mm: 4 x pi/4 x 20 x 20 x 330 x 7.85e-6 = 3.255 kg.
func TestHeadedRodsWeighWhatIsEmbedded(t *testing.T) {
	in := offer(basis.Eurocode, geom.Actions{N: -300e3})
	in.Base.Anchorage = base.Anchorage{Kind: base.Headed, BlockOfSupport: true, Headed: anchor.Input{Embedment: 300, Head: anchor.Head{Diameter: 50, Thickness: 20}}}
	in.Rates = size.Rates{RodKg: 1}
	r, err := size.Search(in)
	require.NoError(t, err)
	assert.InDelta(t, 4*math.Pi/4*400*330*7.85e-6, r.Best.Cost, 1e-6)
	in.Base.Base.Support.Block.GroutThick, in.Base.Base.Support.Block.GroutStrength = 40, 30
	r, err = size.Search(in)
	require.NoError(t, err)
	assert.InDelta(t, 4*math.Pi/4*400*370*7.85e-6, r.Best.Cost, 1e-6)
}

// TestWhatCostsNothingIsNamed unless it is the mass that is sought.
func TestWhatCostsNothingIsNamed(t *testing.T) {
	in := offer(basis.Eurocode, geom.Actions{N: -300e3})
	r, err := size.Search(in)
	require.NoError(t, err)
	assert.NotContains(t, codes(r), "size_costs_nothing")
	in.Rates = size.Rates{RodKg: 3, WeldKg: 20}
	r, err = size.Search(in)
	require.NoError(t, err)
	assert.Contains(t, codes(r)["size_costs_nothing"], ": plates.")
	in.Rates = size.Rates{PlateKg: 2, EachRod: 5, WeldKg: 20}
	r, err = size.Search(in)
	require.NoError(t, err)
	assert.NotContains(t, codes(r), "size_costs_nothing")
}

// TestTheSizesOfABaseTurnedByAQuarterAreTheSame holds y to x.
func TestTheSizesOfABaseTurnedByAQuarterAreTheSame(t *testing.T) {
	for _, b := range []basis.Basis{basis.Eurocode, basis.USLRFD, basis.USASD} {
		for _, a := range []geom.Actions{{N: -500e3, Vx: 40e3}, {N: -100e3, Mx: 25e6, Vy: 20e3}, {N: -300e3, My: 20e6, Vx: 30e3}} {
			found := [2]*size.Result{}
			for turned := range found {
				in := offer(b, a)
				p := &in.Base.Base.Plate
				p.Footprint.Shape, p.Footprint.SizeX, p.Footprint.SizeY, p.Footprint.Thick = plate.Tube, 200, 160, 10
				in.Base.Base.At = corners(150, 180)
				in.Plans = []size.Plan{{SizeX: 400, SizeY: 450, At: corners(150, 180)}, {SizeX: 440, SizeY: 500, At: corners(160, 200)}}
				if turned == 1 {
					in.Base.Cases[0].Actions = geom.Actions{N: a.N, Vx: -a.Vy, Vy: a.Vx, Mx: -a.My, My: a.Mx}
					p.Footprint.SizeX, p.Footprint.SizeY = 160, 200
					in.Base.Base.At = corners(180, 150)
					in.Plans = []size.Plan{{SizeX: 450, SizeY: 400, At: corners(180, 150)}, {SizeX: 500, SizeY: 440, At: corners(200, 160)}}
				}
				in.Thickness, in.Rods = []float64{12, 20, 30, 40, 60}, offered("M16", "M20", "M24")
				r, err := size.Search(in)
				require.NoError(t, err)
				found[turned] = r
			}
			x, y := found[0].Best, found[1].Best
			assert.Equal(t, found[0].Found, found[1].Found)
			assert.Equal(t, [4]int{x.Plan, x.Thickness, x.Rod, x.Throat}, [4]int{y.Plan, y.Thickness, y.Rod, y.Throat}, "%v %+v", b, a)
			assert.Equal(t, x.Governing, y.Governing)
			assert.InDelta(t, x.Utilization, y.Utilization, 1e-6)
		}
	}
}
