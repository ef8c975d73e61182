package plate_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"footward.example/footward/internal/basis"
	"footward.example/footward/internal/plate"
)

// TestPipeClippedByThePlateCountsWhatIsThere counts cells of the ring between the widened
// faces of the wall that lie on the plate: within it, cut by one side, by both, and past
// its corner, so that the whole plate but the inside is pressed.
func TestPipeClippedByThePlateCountsWhatIsThere(t *testing.T) {
	const cells = 1200
	for _, c := range []struct{ x, y, d, thick, pressure float64 }{
		{400, 400, 200, 40, 20}, {300, 400, 280, 40, 10}, {400, 300, 280, 40, 10}, {300, 290, 280, 40, 10},
		{300, 290, 280, 40, 0.6}, {290, 300, 280, 30, 0.3}, {600, 290, 280, 60, 0.6},
	} {
		in := ec(c.x, c.thick, 235, c.pressure, plate.Footprint{Shape: plate.Pipe, SizeX: c.d, SizeY: c.d, Thick: 8})
		in.Plate.SizeY = c.y
		in.Actions.N = -1e5
		r, _ := check(t, in)
		out, inside := c.d/2+r.EC.C, max(0, c.d/2-8-r.EC.C)
		count := 0.0
		for i := range cells {
			for j := range cells {
				d := math.Hypot(((float64(i)+0.5)/cells-0.5)*c.x, ((float64(j)+0.5)/cells-0.5)*c.y)
				if d <= out && d >= inside {
					count++
				}
			}
		}
		assert.InEpsilon(t, count/cells/cells*c.x*c.y, r.EC.Area, 2e-4, "%+v c %g", c, r.EC.C)
	}
}

// TestMomentsOfEitherSignAnswerTheSame takes uplift, none and compression.
func TestMomentsOfEitherSignAnswerTheSame(t *testing.T) {
	for _, b := range []basis.Basis{basis.Eurocode, basis.USLRFD, basis.USASD} {
		for _, n := range []float64{-300e3, 0, 50e3} {
			in := wald()
			in.Design.Basis = b
			in.Actions.N, in.Actions.Mx = n, 60e6
			_, one := check(t, in)
			in.Actions.Mx = -60e6
			_, two := check(t, in)
			assert.Equal(t, one, two)
		}
	}
}
