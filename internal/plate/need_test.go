package plate_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"footward.example/footward/internal/limit"
	"footward.example/footward/internal/material"
	"footward.example/footward/internal/plate"
)

// TestThicknessAskedForHoldsWhereThePressedStripMoves takes plates that lift on one
// side and whose pressed strip is cut by the axis of the base, so that the lever arm
// follows the thickness: what is asked for holds to the last digit, also where it lies
// in another band of the steel.
func TestThicknessAskedForHoldsWhereThePressedStripMoves(t *testing.T) {
	graded := &material.SteelGrade{Bands: []material.SteelBand{{UpTo: 16, Fy: 355, Fu: 490}, {UpTo: 40, Fy: 300, Fu: 470}, {UpTo: 100, Fy: 200, Fu: 470}}}
	asked := 0
	for _, depth := range []float64{60, 100, 160} {
		for _, moment := range []float64{10e6, 20e6, 40e6} {
			for _, steel := range []material.Steel{{Fy: 235, Fu: 360}, {Grade: graded}} {
				in := ec(300, 12, 355, 5, plate.Footprint{Shape: plate.Tube, SizeX: 100, SizeY: depth, Thick: 6})
				in.Plate.SizeY = depth + 240
				in.Plate.Steel = steel
				in.Rods = plate.Rods{At: corners(50, depth/2+60), Resistance: 1e6, Diameter: 24, StressArea: 353}
				in.Actions.N, in.Actions.Mx = 30e3, moment
				_, s := check(t, in)
				u := s["plate_tension_tstub"]
				if u.Size != limit.PlateThickness {
					continue
				}
				asked++
				in.Plate.Thickness = u.Required
				_, s = check(t, in)
				require.True(t, s["plate_tension_tstub"].Rated)
				assert.Equal(t, limit.Pass, s["plate_tension_tstub"].Verdict, "%g mm: %g", u.Required, s["plate_tension_tstub"].Utilization)
				in.Plate.Thickness = u.Required * 0.999
				_, s = check(t, in)
				if !(s["plate_tension_tstub"].Utilization > 1) && steel.Grade == nil {
					assert.Fail(t, "less would do", "%g mm: %g", in.Plate.Thickness, s["plate_tension_tstub"].Utilization)
				}
			}
		}
	}
	assert.Greater(t, asked, 12)
}
