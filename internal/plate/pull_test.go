package plate_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"footward.example/footward/internal/basis"
	"footward.example/footward/internal/plate"
)

// TestRodsOfTheLiftedSideShareItsTension takes F_T = (M + N z_C)/(z_T + z_C) of the
// fixed base with z_T 160 and z_C 92.5 mm: (92e6 - 500e3 92.5)/252.5 = 181 188 N.
func TestRodsOfTheLiftedSideShareItsTension(t *testing.T) {
	in := wald()
	in.Actions.N, in.Actions.Mx = -500e3, 92e6
	r, _ := check(t, in)
	require.False(t, r.EC.TStub.Prying)
	for i, want := range []float64{181188. / 2, 181188. / 2, 0, 0} {
		assert.InDelta(t, want, r.RodPull(i), 1, "rod %d", i)
	}
	assert.Zero(t, r.RodPull(-1))
	assert.Zero(t, r.RodPull(4))

	in.Actions.N, in.Actions.Mx = 100e3, 0
	r, _ = check(t, in)
	for i := range in.Rods.At {
		assert.InDelta(t, 25e3, r.RodPull(i), 1e-6, "uplift, rod %d", i)
	}
	in.Actions.N = -500e3
	r, _ = check(t, in)
	assert.Zero(t, r.RodPull(0))
}

// TestRodsOfTheLiftedSideShareItsTensionUS sums the block's tension over the rods.
func TestRodsOfTheLiftedSideShareItsTensionUS(t *testing.T) {
	in := wald()
	in.Design.Basis = basis.USLRFD
	in.Actions.N, in.Actions.Mx = -100e3, -60e6
	r, _ := check(t, in)
	require.Positive(t, r.US.Tu)
	assert.Zero(t, r.RodPull(0))
	assert.InDelta(t, r.US.Tu, r.RodPull(2)+r.RodPull(3), 1e-6)
}

// TestPryingPullsTheRodsHarder takes m 50, n 40 mm and F 40 kN at rods of length 60
// mm: rho = 60/L_b*, L_b* = 8.8 50^3 157/(110 10^3) = 1570, rho 0.03822;
// Q = 40 (1 - 0.03822) 25/(40 (1 + 40/150) + 0.03822 25) = 18.63 kN.
func TestPryingPullsTheRodsHarder(t *testing.T) {
	in := ec(220, 10, 250, 20, plate.Footprint{Shape: plate.Tube, SizeX: 40, SizeY: 40, Thick: 5})
	in.Rods = plate.Rods{At: wald().Rods.At, Resistance: 100e3, Diameter: 16, StressArea: 157, Stretch: 60}
	for i := range in.Rods.At {
		p := &in.Rods.At[i]
		p.X, p.Y = p.X/120*50, p.Y/160*70
	}
	in.Actions.N = 80e3
	r, _ := check(t, in)
	require.True(t, r.EC.TStub.Prying)
	assert.InDelta(t, 1570, r.EC.TStub.LbStar, 0.01)
	assert.InDelta(t, 18.63e3, r.EC.Prying, 10)
	assert.InDelta(t, (40e3+18.63e3)/2, r.RodPull(0), 5)
	assert.InDelta(t, r.RodPull(0), r.RodPull(3), 1e-9)
	// As L_b comes to L_b*, prying ends without a step.
	in.Rods.Stretch, in.Actions.N = r.EC.TStub.LbStar*(1-1e-9), 40e3
	r, _ = check(t, in)
	assert.InDelta(t, 10e3, r.RodPull(0), 1)
}
