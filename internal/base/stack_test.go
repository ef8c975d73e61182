package base_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"footward.example/footward/internal/base"
	"footward.example/footward/internal/basis"
	"footward.example/footward/internal/contact"
	"footward.example/footward/internal/geom"
	"footward.example/footward/internal/limit"
	"footward.example/footward/internal/pad"
	"footward.example/footward/internal/ring"
	"footward.example/footward/internal/rod"
)

// TestRodsThatPullPressThroughWhatThePlateCarries takes the resultant of bed and rods from
// the sharing, and the greatest of what presses by hand: the rigid plate, its rectangle,
// its circle, up to an eccentricity of 0.4 d_0.
func TestRodsThatPullPressThroughWhatThePlateCarries(t *testing.T) {
	far := 0
	for _, along := range []bool{false, true} {
		for m := 2e6; m <= 14e6; m += 0.5e6 {
			a := geom.Actions{N: -20e3, My: m}
			if along {
				a = geom.Actions{N: -20e3, Mx: m}
			}
			in := onRings(basis.Eurocode, a)
			in.Modulus, in.Base.Stretch = 0.5, 9000
			in.Base.Rod.Steel.Fu, in.Base.Rod.Steel.Fy = 5000, 5000 // holds whatever comes
			bed := contact.Input{Outline: contact.Rectangle(420, 420), Bed: contact.Bed{Modulus: 0.5}, Actions: a}
			for _, at := range in.Base.At {
				bed.Rods = append(bed.Rods, contact.Rod{At: at, Stiffness: 210000 * in.Base.Rod.Thread.NetArea(0) / 9000})
			}
			var solver contact.Solver
			solved, err := solver.Solve(&bed)
			require.NoError(t, err)
			sum, turn := 0.0, m
			for i, v := range solved.Rods {
				at := in.Base.At[i].X
				if along {
					at = -in.Base.At[i].Y
				}
				sum, turn = sum+v, turn+v*at
			}
			if sum == 0 || !solved.Found {
				continue
			}
			r, got := check(t, in)
			more := 0.0
			for _, v := range r.Rows[0].Tensions {
				more += v
			}
			n := sum + 20e3
			e := math.Abs(turn) / n
			require.Less(t, e, 210., "the plate of 30 mm carries all of it")
			straight := 1 + 6*e/420
			if e > 70 {
				straight = 4 / (3 * (1 - 2*e/420))
			}
			area := math.Pi / 4 * 420 * 420
			p := max(solved.Peak, n/(420*420)*straight, n/area*ring.EdgeFactor(420, min(e, 0.4*420)))
			if e > 0.32*420 {
				far++
			}
			want := p + max(0, more-sum)/area
			assert.InEpsilon(t, want, got["ring_edge_stress"].Demand, 1e-6, "M %g along y %v, e/d %g", m, along, e/420)
		}
	}
	assert.Positive(t, far, "some beyond 0.32 d_0")
}

// TestUpliftOfRodsGivenOneByOneIsThatOfTheFoot: 4 20 kN against 0.9 30 kN of weight.
func TestUpliftOfRodsGivenOneByOneIsThatOfTheFoot(t *testing.T) {
	in := column(basis.Eurocode, geom.Actions{})
	held := anchorages()["through"]
	held.Through.Clamped, held.Through.Preload = 30e3, 0
	alone := base.AnchorageInput{Stretch: 900, Anchorage: held, Rods: rod.Input{
		Design: in.Base.Plate.Design, Plate: in.Base.Plate.Plate, Rod: in.Base.Rod, At: in.Base.At, Holes: in.Base.Holes,
		Each: []rod.Force{{Tension: 20e3}, {Tension: 20e3}, {Tension: 20e3}, {Tension: 20e3}},
	}}
	r, err := base.CheckAnchorage(&alone)
	require.NoError(t, err)
	s := states(t, r)["tie_uplift"]
	assert.Equal(t, limit.Fail, s.Verdict)
	assert.InDelta(t, 80e3, s.Demand, 1e-6)
	assert.InDelta(t, 27e3, s.Resistance, 1e-6)
}

// TestRodsOutsideTheRingBendThePlateWithTheGround: rods at 150 and 160 mm stand outside a
// ring of 400 mm and inside one of 700 mm.
func TestRodsOutsideTheRingBendThePlateWithTheGround(t *testing.T) {
	for _, diameter := range []float64{400, 700} {
		in := through(basis.Eurocode, 760, 20)
		in.Below.Stack.Tiers = append([]ring.Tier(nil), in.Below.Stack.Tiers...)
		for i := range in.Below.Stack.Tiers {
			in.Below.Stack.Tiers[i].Diameter = diameter
		}
		in.Base.At = []geom.Point{{X: -160, Y: -160}, {X: 160, Y: -160}, {X: 160, Y: 160}, {X: -160, Y: 160}}
		in.Anchorage.Through.PressX, in.Anchorage.Through.PressY = 0, 0
		_, loose := check(t, in)
		in.Anchorage.Through.Preload = 20e3
		_, got := check(t, in)
		own := got["bottom_plate_on_ground"].Demand - loose["bottom_plate_on_ground"].Demand
		if diameter == 400 {
			require.Positive(t, got["tie_plate_bending"].Demand)
			assert.InEpsilon(t, got["tie_plate_bending"].Demand-loose["tie_plate_bending"].Demand, own, 1e-6)
		} else {
			assert.InDelta(t, 0, own, 1e-9)
		}
	}
}

// TestPadIsBentHalfwayToTheEdgeOfThePlate: ACI 318-19 Table 13.2.7.1, (200 + 420)/2 mm, and
// in LRFD under 0.9 and 1.4 of its weight.
func TestPadIsBentHalfwayToTheEdgeOfThePlate(t *testing.T) {
	for _, a := range []geom.Actions{{N: -400e3}, {N: -40e3, My: 30e6}, {N: -40e3, Mx: 30e6}} {
		in := column(basis.USLRFD, a)
		s := &in.Base.Support.Block
		s.SizeX, s.SizeY, s.Height, s.GroutThick = 2000, 1800, 500, 30
		in.Below = onRings(basis.USLRFD, a).Below
		in.Below.HasStack, in.Below.HasSettlement, in.Below.Levelling, in.Below.OtherWeight = false, false, base.Levelling{}, 0
		in.Base.HasRods = true
		_, got := check(t, in)
		want := map[string]float64{}
		for _, factor := range []float64{0.9, 1.4} {
			p := pad.Input{Design: in.Base.Plate.Design, SizeX: 2000, SizeY: 1800, Thickness: 500, Concrete: s.Concrete,
				Column: pad.Column{SizeX: 310, SizeY: 310}, Actions: a, Factored: true, Height: 30 + 30 + 500, Weight: factor * 24e-6 * 2000 * 1800 * 500}
			r, err := pad.Check(&p)
			require.NoError(t, err)
			for id, state := range states(t, &r) {
				want[id] = max(want[id], state.Demand)
			}
		}
		for _, id := range []string{"pad_plain_bending", "pad_plain_shear", "pad_plain_punching", "pad_top_bending", "pad_equilibrium"} {
			assert.InDelta(t, want[id], got[id].Demand, 1e-6*(1+want[id]), "%+v %s", a, id)
		}
	}
}

// TestRodsShorterThanWhatTheyClampAreRefused, 5 % apart.
func TestRodsShorterThanWhatTheyClampAreRefused(t *testing.T) {
	whole := 30. + 600 + 20
	for length, refused := range map[float64]bool{0.94 * whole: true, 0.96 * whole: false, 0: false} {
		in := through(basis.Eurocode, 760, 20)
		in.Base.Stretch = length
		_, err := base.CheckColumn(in)
		assert.Equal(t, refused, err != nil, "%g: %v", length, err)
	}
}

// TestFillIsNotPressedWhereAllRodsPull lifts a plate from its stack. Whether it is pushed
// aside too makes no stress of the fill, and no balance that is not computed: sliding and
// overturning have the shear.
func TestFillIsNotPressedWhereAllRodsPull(t *testing.T) {
	for _, d := range []basis.Basis{basis.Eurocode, basis.USLRFD, basis.USASD} {
		for _, a := range []geom.Actions{{N: 10e3}, {N: 10e3, Vx: 1e3}, {N: 10e3, Vy: -1e3}, {N: 10e3, Vx: 1e3, My: 0.2e6}} {
			in := onRings(d, a)
			_, got := check(t, in)
			for _, id := range []string{"ring_local_edge", "ring_fill_strength", "ring_edge_stress", "ring_hoop_ultimate", "ring_open_fill"} {
				assert.Equal(t, limit.NotApplicable, got[id].Verdict, "%s: %s", id, got[id].Reason)
			}
			if a.Vx != 0 || a.Vy != 0 {
				assert.InDelta(t, math.Hypot(a.Vx, a.Vy)/1e3, got["ring_sliding"].Demand/1e3, 1e-9)
			}
		}
	}
}
