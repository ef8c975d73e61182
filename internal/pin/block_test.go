package pin_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"

	"footward.example/footward/internal/basis"
	"footward.example/footward/internal/limit"
	"footward.example/footward/internal/pin"
)

// rowsApart is two rows of n pins, 100 mm apart, under tension and a moment.
func rowsApart(b basis.Basis, n int, axial, moment float64) *pin.Input {
	in := foot(b)
	in.Timber.AcrossPin, in.Plates.Width = 250, 200
	in.Layout = pin.Layout{Rows: 2, InRow: n, SpacingAlong: 60, SpacingAcross: 100, EndDistance: 100, EdgeDistance: 75, GroupFactor: 1}
	if n == 1 {
		in.Layout.SpacingAlong = 0
	}
	in.Plates.Arm = 300
	in.Actions = pin.Actions{N: axial, M: moment}
	return in
}

// TestARowThatPressesHoldsNothingForOneThatPulls: N 4 kN and M 1 kNm over rows 100
// mm apart give 2 kN and 10 kN each way a row of one pin: 12 and -8 kN. Alone, the
// row that pulls has two planes by EN 1995-1-1 (A.1): 0.7 2 (100 - 13/2) 100 4
// 0.8/1.3 = 32.2 kN; by NDS Appendix E.3 F'_v 100 100 with F_v 4 0.9 = 36 kN.
func TestARowThatPressesHoldsNothingForOneThatPulls(t *testing.T) {
	for _, m := range []float64{1e6, -1e6} {
		r, s := check(t, rowsApart(basis.Eurocode, 1, 4e3, m))
		assert.Equal(t, 1, r.Timber.Out)
		assert.InDelta(t, 12e3, s["column_block_shear"].Demand, 1e-6)
		assert.InDelta(t, 0.7*2*(100-6.5)*100*4*0.8/1.3, s["column_block_shear"].Resistance, 1e-6)
		in := rowsApart(basis.USASD, 1, 4e3, m)
		in.Timber.ServiceClass = 1
		r, s = check(t, in)
		assert.Equal(t, 1, r.Timber.Out)
		assert.InDelta(t, 12e3, s["column_block_shear"].Demand, 1e-6)
		assert.InDelta(t, 4*0.9*100*100, s["column_block_shear"].Resistance, 1e-6)
	}
}

// TestSeveralPinsOfARowTearOutTogether: three in a row at 60 mm share 12 kN. EN:
// L_v = 2 (2 (60 - 13) + 93.5) = 375 mm; NDS: 3 pins of s_critical 60 mm.
func TestSeveralPinsOfARowTearOutTogether(t *testing.T) {
	in := rowsApart(basis.Eurocode, 3, 4e3, 0)
	// The moment that gives a row 10 kN: F = n M a_2/2/J; J = 6 50^2 + 4 60^2.
	in.Actions.M = 10e3 * (6*50*50 + 4*60*60) / (3 * 50)
	r, s := check(t, in)
	assert.Equal(t, 1, r.Timber.Out)
	assert.InDelta(t, 12e3, s["column_block_shear"].Demand, 1e-6)
	assert.InDelta(t, 0.7*375*100*4*0.8/1.3, s["column_block_shear"].Resistance, 1e-6)
	us := rowsApart(basis.USLRFD, 3, 4e3, in.Actions.M)
	us.Timber.ServiceClass = 1
	_, s = check(t, us)
	assert.InDelta(t, 12e3, s["column_block_shear"].Demand, 1e-6)
	assert.InDelta(t, 3*100*60*4*2.88*0.75*0.6, s["column_block_shear"].Resistance, 1e-6)
}

// TestRowsThatPullTogetherAreAGroup: without a moment both rows pull, and the
// group is torn off with the timber between them: NDS E.4, F'_t (100 - d_h) 100 and
// one row; the worse of one row and the group governs.
func TestRowsThatPullTogetherAreAGroup(t *testing.T) {
	in := rowsApart(basis.USASD, 3, 40e3, 0)
	in.Timber.ServiceClass = 1
	row := 3 * 4 * 0.9 * 100 * 60.0
	in.Timber.Tension = 1 // weak: the group governs
	group := row + 1*0.9*100*(100-12-inch/16)
	r, s := check(t, in)
	assert.Equal(t, 2, r.Timber.Out)
	assert.InDelta(t, 40e3, s["column_block_shear"].Demand, 1e-6)
	assert.InDelta(t, group, s["column_block_shear"].Resistance, 1e-6)
	in.Timber.Tension = 10
	r, s = check(t, in)
	assert.Equal(t, 1, r.Timber.Out)
	assert.InDelta(t, 20e3, s["column_block_shear"].Demand, 1e-6)
	assert.InDelta(t, row, s["column_block_shear"].Resistance, 1e-6)
}

// TestNoBlockHoldsMoreThanItsRows looks at every set of rows side by side: what
// its pins press towards the end, found pin by pin, never exceeds what the answer
// allows.
func TestNoBlockHoldsMoreThanItsRows(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := random(t)
		in.Plates.Arrangement, in.Plates.Gap = pin.Outside, 0
		r, s := check(t, in)
		state := s["column_block_shear"]
		if !state.Rated {
			t.Skip("nothing pulls, or beyond the basis")
		}
		l, n := &in.Layout, float64(r.Pins)
		polar := 0.0
		for i := range l.Rows {
			for k := range l.InRow {
				x, z := (float64(i)-float64(l.Rows-1)/2)*l.SpacingAcross, (float64(k)-float64(l.InRow-1)/2)*l.SpacingAlong
				polar += x*x + z*z
			}
		}
		for from := range l.Rows {
			for to := from; to < l.Rows; to++ {
				pull := 0.0
				for i := from; i <= to; i++ {
					f := r.Nj / n
					if polar > 0 {
						f -= in.Actions.M * (float64(i) - float64(l.Rows-1)/2) * l.SpacingAcross / polar
					}
					pull += max(0, f) * float64(l.InRow)
				}
				lt := float64(to-from) * max(0, l.SpacingAcross-r.Timber.Hole)
				holds := r.Timber.TearRow + r.Timber.Ft*r.Timber.Width*lt
				if in.Design.Basis == basis.Eurocode {
					lv := 2 * (float64(l.InRow-1)*max(0, l.SpacingAlong-r.Timber.Hole) + l.EndDistance - r.Timber.Hole/2)
					holds = max(1.5*lt*in.Timber.AlongPin*in.Timber.Tension, 0.7*lv*in.Timber.AlongPin*in.Timber.Shear) *
						r.Timber.Kmod / r.Timber.GammaC
				}
				assert.LessOrEqual(t, pull/holds, state.Utilization*(1+1e-9))
			}
		}
	})
}

// TestTheSignOfAMomentDoesNotLoadTheTimberLess: V 8 kN and M 3.5 kNm in four pins
// at 80 by 150 mm: J = 4 (40^2 + 75^2) = 28 900 mm2; two pins carry 4 kN and 2 3.5
// 40/28.9 = 9.689 kN: 13.689 kN between the levels, whichever way M turns.
func TestTheSignOfAMomentDoesNotLoadTheTimberLess(t *testing.T) {
	for _, b := range bases {
		for _, v := range []float64{8e3, -8e3} {
			for _, m := range []float64{3.5e6, -3.5e6} {
				in := foot(b)
				in.Timber.AcrossPin, in.Plates.Width = 300, 300
				in.Layout = pin.Layout{Rows: 2, InRow: 2, SpacingAlong: 80, SpacingAcross: 150, EndDistance: 120, EdgeDistance: 75, GroupFactor: 1}
				in.Actions = pin.Actions{V: v, M: m}
				_, s := check(t, in)
				assert.InDelta(t, 4e3+2*3.5e6*40/28900, s["column_splitting"].Demand, 1e-6)
			}
		}
	}
}

// TestOnePinTearsOutToo: a single pin 84 mm from the end of weak timber.
func TestOnePinTearsOutToo(t *testing.T) {
	in := single(basis.Eurocode)
	in.Layout.EndDistance, in.Timber.Shear, in.Actions.N = 84, 1.5, 12e3
	_, s := check(t, in)
	assert.InDelta(t, 0.7*2*(84-6.5)*100*1.5*0.8/1.3, s["column_block_shear"].Resistance, 1e-6)
	assert.Equal(t, limit.Fail, s["column_block_shear"].Verdict)
	in.Actions.N = 9.9e3
	_, s = check(t, in)
	assert.Equal(t, limit.Pass, s["column_block_shear"].Verdict)
}
