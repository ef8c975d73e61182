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

// TestPryingPullsTheRodsHarder takes m 50, n 40 mm and F 20 kN at rods that stretch
// over 60 mm: L_b/L_b* = 60/1570 = 0.03822, k = 0.625 50^3 0.03822 = 2986 mm3,
// Q = 20 (50^2 40/2 - 2986)/(50 40^2 + 40^3/3 + 2986) = 9.013 kN.
func TestPryingPullsTheRodsHarder(t *testing.T) {
	in := pried()
	in.Actions.N = 40e3
	r, _ := check(t, in)
	require.True(t, r.EC.TStub.Prying)
	assert.InDelta(t, 9.013e3, r.EC.Prying, 3)
	assert.InDelta(t, (20e3+9.013e3)/2, r.RodPull(0), 2)
	assert.InDelta(t, r.RodPull(0), r.RodPull(3), 1e-9)

	// A rod that the base pulls more than its row's half has prying on all of it.
	in.Shared = plate.Shared{Known: true, Tensions: []float64{15e3, 5e3, 10e3, 10e3}}
	r, _ = check(t, in)
	assert.InDelta(t, 15e3*1.45066, r.RodPull(0), 5)
	assert.InDelta(t, 10e3*1.45066, r.RodPull(1), 5)
	in.Shared = plate.Shared{}

	// Beyond the plastic moment at the weld (F 27.5 kN) prying is what is missing:
	// (40 000 50 - 1 375 000)/40 = 15 625 N, less than the elastic 18.0 kN; at 50 kN
	// a side it is 28 125 N, more than the elastic 22.5 kN; and never above 2 M_pl/n
	// = 34 375 N.
	for n, want := range map[float64]float64{80e3: 40e3 * 0.45066, 100e3: 28125, 200e3: 34375} {
		in.Actions.N = n
		r, _ = check(t, in)
		assert.InDelta(t, want, r.EC.Prying, 10)
	}

	// At n = 1.25 m prying ends at L_b* without a step.
	in.Plate.SizeX, in.Plate.SizeY, in.Actions.N = 280, 280, 10e3
	r, _ = check(t, in)
	require.InDelta(t, 62.5, r.EC.TStub.N, 1e-9)
	in.Rods.Stretch = r.EC.TStub.LbStar * (1 - 1e-9)
	r, _ = check(t, in)
	assert.True(t, r.EC.TStub.Prying)
	assert.InDelta(t, 2.5e3, r.RodPull(0), 1e-3)
}
