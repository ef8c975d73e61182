package ring_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"footward.example/footward/internal/ring"
)

// TestModulusOfFill: AASHTO LRFD Table 12.12.3.5-1 (from memory), M_s [psi] at vertical
// stresses of 1 to 60 psi, straight between, and the end values beyond.
func TestModulusOfFill(t *testing.T) {
	const psi = 0.006894757293168
	stress := []float64{0, 1, 5, 7.5, 10, 20, 40, 50, 60, 100}
	for grade, row := range map[ring.Grade][]float64{
		ring.Sn100: {2350, 2350, 3450, 3825, 4200, 5500, 7500, 8400, 9300, 9300},
		ring.Sn95:  {2000, 2000, 2600, 2800, 3000, 3450, 4250, 4625, 5000, 5000},
		ring.Sn90:  {1275, 1275, 1500, 1562.5, 1625, 1800, 2100, 2300, 2500, 2500},
		ring.Sn85:  {470, 470, 520, 545, 570, 650, 825, 912.5, 1000, 1000},
	} {
		for i, want := range row {
			assert.InEpsilon(t, want*psi, ring.ConstrainedModulus(grade, stress[i]*psi), 1e-9, "%d at %g", grade, stress[i])
		}
	}
	assert.Zero(t, ring.ConstrainedModulus(0, 0.1))
}
