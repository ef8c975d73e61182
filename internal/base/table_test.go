package base

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"footward.example/footward/internal/basis"
	"footward.example/footward/internal/geom"
)

// TestStraightLineOfPressureWithoutTension: N/A (1 + 6 e/b) within the kern; beyond it a
// triangle over 3 (b/2 - e), so 4/(3 (1 - 2 e/b)) of the mean. Statics.
func TestStraightLineOfPressureWithoutTension(t *testing.T) {
	for share, want := range map[float64]float64{0: 1, 0.1: 1.6, 1. / 6: 2, 0.25: 8. / 3, 1. / 3: 4} {
		assert.InDelta(t, want, straight(share), 1e-12, share)
	}
}

// TestWeightOfAPadInACombinationThatDoesNotSay: EN 1990 Table A1.2(B) 1.35, (A) 0.9;
// ASCE 7-22 2.3.1 1.4 and 0.9.
func TestWeightOfAPadInACombinationThatDoesNotSay(t *testing.T) {
	assert.Equal(t, []float64{1.35, 0.9}, padWeights(basis.Eurocode, &Case{}))
	assert.Equal(t, []float64{1.4, 0.9}, padWeights(basis.USLRFD, &Case{}))
	assert.Equal(t, []float64{1.4, 0.9}, padWeights(basis.USASD, &Case{}))
	for b := basis.Eurocode; b.Valid(); b++ {
		assert.Equal(t, []float64{1.1}, padWeights(b, &Case{Weights: []float64{1.1}}))
	}
}

// TestRatiosOfSizesAreTheGreatest of plate, footprint and rods, each way.
func TestRatiosOfSizesAreTheGreatest(t *testing.T) {
	in := &ColumnInput{}
	in.Base.Plate.Plate.SizeX, in.Base.Plate.Plate.SizeY = 200, 400
	in.Base.Plate.Footprint.SizeX, in.Base.Plate.Footprint.SizeY = 150, 100
	assert.InDelta(t, 2, in.ratio(), 1e-12)       // plate
	assert.InDelta(t, 1.5, in.ratioBack(), 1e-12) // footprint
	in.Base.At = []geom.Point{{X: -40, Y: 30}, {X: 20, Y: -200}}
	assert.InDelta(t, 5, in.ratio(), 1e-12) // 200/40
	assert.InDelta(t, 1.5, in.ratioBack(), 1e-12)
	in.Base.At = []geom.Point{{X: -90, Y: 0}, {X: 0, Y: 30}}
	assert.InDelta(t, 2, in.ratio(), 1e-12)
	assert.InDelta(t, 3, in.ratioBack(), 1e-12) // 90/30
	x, y := in.reach()
	assert.Equal(t, [2]float64{90, 30}, [2]float64{x, y})
	in.Base.At = append(in.Base.At, geom.Point{X: 25, Y: -70})
	x, y = in.reach()
	assert.Equal(t, [2]float64{25, 30}, [2]float64{x, y}) // what is on an axis stands off by nothing
}
