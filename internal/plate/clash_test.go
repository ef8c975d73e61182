package plate_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"footward.example/footward/internal/basis"
	"footward.example/footward/internal/geom"
	"footward.example/footward/internal/limit"
	"footward.example/footward/internal/plate"
)

// TestNoRodPassesThroughTheSteelOnThePlate puts rods of 20 mm in the steel of each
// footprint, 9 mm off it and 11 mm off it.
func TestNoRodPassesThroughTheSteelOnThePlate(t *testing.T) {
	refused := func(f plate.Footprint, x, y float64) bool {
		in := ec(400, 20, 235, 10, f)
		in.Design.Basis = basis.USLRFD
		in.Actions.N = 30e3
		in.Rods = plate.Rods{At: []geom.Point{{X: x, Y: y}, {X: -x, Y: -y}}, Resistance: 1e5, Diameter: 20, StressArea: 245}
		var faults limit.Faults
		plate.Validate(in, &faults)
		return len(faults) > 0
	}
	tube := plate.Footprint{Shape: plate.Tube, SizeX: 200, SizeY: 200, Thick: 6}
	for _, x := range []float64{97, 100, 109, 85} {
		assert.True(t, refused(tube, x, 0), "tube, x %g", x)
		assert.True(t, refused(tube, 0, x), "tube, y %g", x)
	}
	assert.False(t, refused(tube, 111, 0))
	assert.False(t, refused(tube, 107.2, 107.2), "10.2 mm off the corner")
	assert.False(t, refused(tube, 0, 83), "inside: left out, not refused")
	pipe := plate.Footprint{Shape: plate.Pipe, SizeX: 200, SizeY: 200, Thick: 6}
	assert.True(t, refused(pipe, 70, 70))
	assert.False(t, refused(pipe, 80, 80))
	i := plate.Footprint{Shape: plate.ISection, SizeX: 200, SizeY: 200, Thick: 10, Web: 8}
	assert.True(t, refused(i, 13, 0), "web")
	assert.False(t, refused(i, 15, 0), "between the flanges")
	assert.True(t, refused(i, 50, 82), "flange from inside")
	two := plate.Footprint{Shape: plate.TwoPlates, SizeX: 200, SizeY: 200, Thick: 10}
	assert.True(t, refused(two, 95, 105))
	assert.False(t, refused(two, 75, 0), "between the plates")
	assert.False(t, refused(plate.Footprint{Shape: plate.Rectangle, SizeX: 200, SizeY: 200}, 95, 0), "a solid one may be recessed")
}
