package base_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"footward.example/footward/internal/base"
	"footward.example/footward/internal/basis"
	"footward.example/footward/internal/geom"
	"footward.example/footward/internal/limit"
)

// TestRowThatPullsUnevenlyGivesEachRodItsOwn: four rods tightened to 40 kN under a shear
// whose lever turns the plate. The near pair has 40.103 kN, the far pair 40.013 kN, along
// x as along y: the mean of a row with one rod of each (40.058 kN) is no rod's pull.
func TestRowThatPullsUnevenlyGivesEachRodItsOwn(t *testing.T) {
	bending := map[string]limit.State{}
	for name, a := range map[string]geom.Actions{"along x": {N: 238, Vx: 1732}, "along y": {N: 238, Vy: 1732}} {
		in := through(basis.Eurocode, 760, 20)
		in.Cases[0].Actions, in.Below.Service[0].Actions, in.Below.Pairs[0].Permanent = a, a, a
		in.Below.Sustained[0].Actions = geom.Actions{N: a.N / 2}
		in.Anchorage.Through.Preload = 40e3
		in.Below.Stack.Settlement = 15
		in.Base.Plate.Plate.Thickness, in.Weld.Parts[0].Thickness = 15.75, 15.75
		in.Base.Rod.Corrosion = 2
		f := &in.Base.Plate.Footprint
		f.Shape, f.SizeX, f.SizeY, f.Thick, f.Web = 2, 200, 200, 10, 0
		in.Base.At = []geom.Point{{X: -150, Y: -150}, {X: 150, Y: -150}, {X: 150, Y: 150}, {X: -150, Y: 150}}
		r, err := base.CheckColumn(in)
		require.NoError(t, err)
		bending[name] = states(t, r)["tie_plate_bending"]
		near, far := 0, 0
		for _, pull := range r.Rows[0].Tensions {
			if pull > 40080 {
				near++
				assert.InDelta(t, 40103, pull, 2, name)
			} else {
				far++
				assert.InDelta(t, 40013, pull, 2, name)
			}
		}
		assert.Equal(t, [2]int{2, 2}, [2]int{near, far}, name)
	}
	assert.InEpsilon(t, bending["along x"].Utilization, bending["along y"].Utilization, 1e-9)
}
