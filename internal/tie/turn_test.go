package tie_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"footward.example/footward/internal/basis"
	"footward.example/footward/internal/derive"
	"footward.example/footward/internal/geom"
	"footward.example/footward/internal/limit"
	"footward.example/footward/internal/material"
)

// TestThinPlateTurnsAboutNoEdgeThatItCannotReach: 40 kN on fill of 800 mm, of which 36 kN
// hold, and a plate of 4 m. Of 6 mm, m_Rd = 235 6^2/6 = 1410 N carries 36 kN on an outstand
// of 1410 4000/36 000 = 157 mm: 36 (0.4 + 0.157) = 20.0 kNm hold, not 36 2 = 72 kNm. Of
// 20 mm it reaches 400 + 15 667 4000/36 000 = 2141 mm, past its edge.
func TestThinPlateTurnsAboutNoEdgeThatItCannotReach(t *testing.T) {
	for _, c := range []struct {
		thick, arm float64
		verdict    limit.Verdict
	}{
		{6, 400 + 1410.*4000/36e3, limit.Fail}, {20, 2000, limit.Pass},
	} {
		for _, along := range []bool{false, true} {
			in := square(basis.Eurocode, 100)
			in.Plate = geom.Plate{SizeX: 4000, SizeY: 4000, Thickness: c.thick, Steel: material.Steel{Fy: 235, Fu: 360}}
			in.PressX, in.PressY, in.PressDiameter = 0, 0, 800
			in.Clamped, in.Share, in.Height = 40e3, 0, 1300
			in.Actions = geom.Actions{N: 10e3, Vx: 20e3}
			at := 0
			if along {
				in.Actions, at = geom.Actions{N: 10e3, Vy: -20e3}, 1
			}
			r, got := check(t, in)
			assert.InEpsilon(t, c.arm, r.Turn[at].Arm, 1e-9)
			assert.InEpsilon(t, 36e3*c.arm, got["tie_overturning"].Resistance, 1e-9)
			assert.InEpsilon(t, 10e3*c.arm+20e3*1300, got["tie_overturning"].Demand, 1e-9)
			assert.Equal(t, c.verdict, got["tie_overturning"].Verdict)
			var sheet derive.Sheet
			r.Derive(&sheet)
			require.NoError(t, derive.Verify(sheet.Steps))
		}
	}
}

// TestPlateUnderAllOfItsFillTurnsAboutItsEdge has no outstand to carry.
func TestPlateUnderAllOfItsFillTurnsAboutItsEdge(t *testing.T) {
	for _, b := range bases {
		for _, diameter := range []float64{0, 1000, 1400} {
			in := square(b, 300)
			in.Plate.Thickness, in.Actions.Vx = 1, 1e3
			if diameter > 0 {
				in.PressX, in.PressY, in.PressDiameter = 0, 0, diameter
			}
			r, _ := check(t, in)
			assert.InDelta(t, 500, r.Turn[0].Arm, 1e-9)
			assert.InDelta(t, 500, r.Turn[1].Arm, 1e-9)
		}
	}
}
