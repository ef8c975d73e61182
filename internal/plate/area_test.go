package plate_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"footward.example/footward/internal/plate"
)

// TestSpreadUnderWallsIsWhatLiesBesideThem counts cells of the plate no farther than c
// from the walls of a tube, along x and y, or from two plates: where the inside is open
// and where the spread closes it.
func TestSpreadUnderWallsIsWhatLiesBesideThem(t *testing.T) {
	const cells = 900
	for _, shape := range []plate.Shape{plate.Tube, plate.TwoPlates} {
		for _, c := range []struct{ x, y, thick, pressure float64 }{
			{400, 300, 10, 20}, {300, 400, 10, 20}, {210, 170, 10, 10}, {400, 400, 60, 2},
		} {
			f := plate.Footprint{Shape: shape, SizeX: 200, SizeY: 160, Thick: 8}
			in := ec(c.x, c.thick, 235, c.pressure, f)
			in.Plate.SizeY = c.y
			in.Actions.N = -1e4
			r, _ := check(t, in)
			wide := r.EC.C
			count := 0.0
			for i := range cells {
				for j := range cells {
					x, y := math.Abs((float64(i)+0.5)/cells-0.5)*c.x, math.Abs((float64(j)+0.5)/cells-0.5)*c.y
					within := x <= 100+wide && y <= 80+wide
					open := x < 92-wide && (shape == plate.TwoPlates || y < 72-wide)
					if within && !open {
						count++
					}
				}
			}
			assert.InEpsilon(t, count/cells/cells*c.x*c.y, r.EC.Area, 8e-3, "%v %+v c %g", shape, c, wide)
		}
	}
}
