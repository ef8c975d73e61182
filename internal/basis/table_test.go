package basis_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"footward.example/footward/internal/basis"
)

// TestFactorsOfAISC: AISC 360-22 J4.2(a) 1.00 and 1.50, J4.2(b) and J3 0.75 and 2.00. By LRFD
// phi, by ASD 1/Omega.
func TestFactorsOfAISC(t *testing.T) {
	for _, c := range []struct {
		s          basis.Strength
		phi, omega float64
	}{
		{basis.ShearYield, 1, 1.5}, {basis.Rupture, 0.75, 2}, {basis.TensionYield, 0.9, 1.67}, {basis.FrictionLimit, 0.75, 2}, {basis.Friction, 0.65, 2.31},
	} {
		assert.InDelta(t, c.phi, c.s.Factor(basis.USLRFD), 1e-12)
		assert.InDelta(t, 1/c.omega, c.s.Factor(basis.USASD), 1e-12)
	}
}
