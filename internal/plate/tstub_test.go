package plate_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"footward.example/footward/internal/geom"
)

// TestLengthsOfTheTStub: EN 1993-1-8:2005 Table 6.6, m = 160 - 100 - 0.8 6 sqrt 2 = 53.21,
// e_x = 50, in non-circular patterns.
func TestLengthsOfTheTStub(t *testing.T) {
	for name, c := range map[string]struct{ wide, at, want float64 }{
		"4 m + 1.25 e_x":        {800, 150, 275.35},
		"w/2 + 2 m + 0.625 e_x": {800, 60, 197.67},
		"e + 2 m + 0.625 e_x":   {380, 150, 177.67},
		"b_p/2":                 {360, 100, 180},
	} {
		in := wald()
		in.Plate.SizeX = c.wide
		in.Rods.At = []geom.Point{{X: -c.at, Y: 160}, {X: c.at, Y: 160}, {X: -c.at, Y: -160}, {X: c.at, Y: -160}}
		in.Actions.N, in.Actions.Mx = -500e3, 92e6
		r, _ := check(t, in)
		assert.InDelta(t, c.want, r.EC.TStub.Lnc, 0.01, name)
	}
}
