package plate_test

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"footward.example/footward/internal/bed"
	"footward.example/footward/internal/geom"
	"footward.example/footward/internal/plate"
)

// thinPlate returns the greatest moment per width of the plate as a thin plate on a soft
// bed that the footprint does not keep flat [Nmm/mm].
func thinPlate(t *testing.T, in *plate.Input) float64 {
	p, f := &in.Plate, &in.Footprint
	n := in.Actions.N
	patches := []bed.Patch{{SizeX: f.SizeX, SizeY: f.SizeY, N: n}}
	if f.Shape == plate.TwoPlates {
		at, m := (f.SizeX-f.Thick)/2, in.Actions.My/(f.SizeX-f.Thick)
		patches = []bed.Patch{{At: geom.Point{X: at}, SizeX: f.Thick, SizeY: f.SizeY, N: n/2 - m},
			{At: geom.Point{X: -at}, SizeX: f.Thick, SizeY: f.SizeY, N: n/2 + m}}
	}
	s := &bed.Solver{Fineness: 20}
	r, err := s.Solve(&bed.Input{Plate: bed.Plate{SizeX: p.SizeX, SizeY: p.SizeY, Thickness: p.Thickness, E: 210e3, Nu: 0.3},
		Modulus: 0.02, Patches: patches})
	require.NoError(t, err)
	return max(r.X.Most, r.Y.Most)
}

func soft(x, y float64, f plate.Footprint) *plate.Input {
	in := ec(x, 25, 265, 1, f)
	in.Plate.SizeY, in.Footprint.Stiff = y, false
	in.Actions.N = -100e3
	return in
}

// TestSmallSoftFootprintIsHeldAtItsMiddle compares with a thin plate on a soft bed: L/B 1
// to 3 either way round, footprints of 0.05 to 0.5 of the width, square and long.
func TestSmallSoftFootprintIsHeldAtItsMiddle(t *testing.T) {
	for _, l := range []float64{1, 1.5, 2, 3} {
		for _, c := range []float64{0.05, 0.1, 0.15, 0.2, 0.3, 0.5} {
			for _, long := range []float64{1, 2, 4} {
				x, y := 400*c*long, 400*c/long
				if x > 400*l {
					continue
				}
				in := soft(400*l, 400, plate.Footprint{Shape: plate.Rectangle, SizeX: x, SizeY: y})
				r, _ := check(t, in)
				assert.GreaterOrEqual(t, r.Centre.M, 0.96*thinPlate(t, in), "L/B %g c/B %g %g", l, c, long)
				if l == 1 && long == 1 {
					assert.LessOrEqual(t, r.Centre.M, 1.08*thinPlate(t, in), "L/B %g c/B %g", l, c)
				}
				turned := soft(400, 400*l, plate.Footprint{Shape: plate.Rectangle, SizeX: y, SizeY: x})
				same, _ := check(t, turned)
				assert.InEpsilon(t, r.Centre.M, same.Centre.M, 1e-9)
			}
		}
	}
}

// TestTwoSoftPlatesAreHeldAlongAndAcross compares with a thin plate on a soft bed under
// two lines, as near or far apart as the plate allows, also under a moment across.
func TestTwoSoftPlatesAreHeldAlongAndAcross(t *testing.T) {
	for _, x := range []float64{200, 400, 800} {
		for _, apart := range []float64{0.2, 0.5, 0.75, 0.95} {
			for _, along := range []float64{0.1, 0.2, 0.5, 0.8} {
				for _, thick := range []float64{5, 15} {
					in := soft(x, 400, plate.Footprint{Shape: plate.TwoPlates, SizeX: apart * x, SizeY: along * 400, Thick: thick})
					for _, my := range []float64{0, 0.05 * 100e3 * x} {
						in.Actions.My = my
						if r, _ := check(t, in); r.Centre.Done {
							assert.GreaterOrEqual(t, r.Centre.M, 0.96*thinPlate(t, in), fmt.Sprint(x, apart, along, thick, my))
						}
					}
				}
			}
		}
	}
}
