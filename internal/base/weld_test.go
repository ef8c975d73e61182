package base_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"footward.example/footward/internal/basis"
	"footward.example/footward/internal/geom"
	"footward.example/footward/internal/limit"
	"footward.example/footward/internal/plate"
)

// TestWeldRoundAPipeColumnHasNoEnds: a pipe of 114 mm has a weld of 358 mm, not 24
// of 14.9 mm.
func TestWeldRoundAPipeColumnHasNoEnds(t *testing.T) {
	for _, b := range []basis.Basis{basis.Eurocode, basis.USLRFD, basis.USASD} {
		in := column(b, geom.Actions{N: -100e3, Vx: 5e3})
		in.Base.Plate.Footprint = plate.Footprint{Shape: plate.Pipe, SizeX: 114, SizeY: 114, Thick: 6, Stiff: true, StiffStated: true}
		in.Weld.Throat = 4
		_, s := check(t, in)
		assert.Equal(t, limit.Pass, s["weld_length_minimum"].Verdict)
		assert.InDelta(t, math.Pi*114, s["weld_length_minimum"].Resistance, 2)
	}
}

// TestWeldOfAColumnStandsOnWhatCorrosionLeavesOfThePlate: of 30 mm of plate 29 are
// lost; the shear through what is left governs the parts beside the weld.
func TestWeldOfAColumnStandsOnWhatCorrosionLeavesOfThePlate(t *testing.T) {
	for _, b := range []basis.Basis{basis.Eurocode, basis.USLRFD, basis.USASD} {
		in := column(b, geom.Actions{N: -300e3})
		_, whole := check(t, in)
		in.Base.Plate.Plate.Corrosion = 29
		_, s := check(t, in)
		assert.Equal(t, 1, s["weld_base_metal"].Member)
		assert.Greater(t, s["weld_base_metal"].Utilization, 5*whole["weld_base_metal"].Utilization)
	}
}

// TestThinColumnYieldsBesideItsWeld in each family.
func TestThinColumnYieldsBesideItsWeld(t *testing.T) {
	for _, b := range []basis.Basis{basis.Eurocode, basis.USLRFD, basis.USASD} {
		in := column(b, geom.Actions{N: -100e3, Vx: 40e3, Vy: 40e3})
		in.Weld.Parts[1].Thickness = 4
		_, thin := check(t, in)
		in.Weld.Parts[1].Thickness = 12
		_, thick := check(t, in)
		assert.Greater(t, thin["weld_base_metal"].Utilization, 1.5*thick["weld_base_metal"].Utilization, b)
	}
}
