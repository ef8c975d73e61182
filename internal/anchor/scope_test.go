package anchor_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"footward.example/footward/internal/anchor"
	"footward.example/footward/internal/basis"
	"footward.example/footward/internal/limit"
	"footward.example/footward/internal/material"
)

// TestWhatTheStandardsCover: EN 1992-4:2018 C12/15 to C90/105, embedments from 40 mm, rods up
// to 60 mm; ACI 318-19 2500 to 10 000 psi (17.24 to 68.95 MPa), rods up to 4 in.
func TestWhatTheStandardsCover(t *testing.T) {
	for _, c := range []struct {
		b                basis.Basis
		fc, d, embedment float64
		covered          bool
	}{
		{basis.Eurocode, 12, 24, 300, true}, {basis.Eurocode, 11.9, 24, 300, false},
		{basis.Eurocode, 90, 24, 300, true}, {basis.Eurocode, 90.1, 24, 300, false},
		{basis.Eurocode, 30, 24, 40, true}, {basis.Eurocode, 30, 24, 39.9, false},
		{basis.Eurocode, 30, 60, 300, true}, {basis.Eurocode, 30, 60.1, 300, false},
		{basis.USLRFD, 17.3, 24, 300, true}, {basis.USLRFD, 17.2, 24, 300, false},
		{basis.USLRFD, 68.9, 24, 300, true}, {basis.USLRFD, 69, 24, 300, false},
		{basis.USLRFD, 30, 101.6, 300, true}, {basis.USLRFD, 30, 102, 300, false},
	} {
		in := group(c.b)
		in.Block.Concrete.Strength, in.Embedment = c.fc, c.embedment
		in.Thread = material.Thread{Diameter: c.d, StressArea: 0.75 * c.d * c.d}
		in.Head = anchor.Head{Diameter: 2.5 * c.d, Thickness: c.d}
		_, s := check(t, in)
		assert.Equal(t, c.covered, s["anchor_cone"].Verdict != limit.OutOfScope, "%+v: %s", c, s["anchor_cone"].Reason)
	}
}
