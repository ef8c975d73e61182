package weld_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"footward.example/footward/internal/basis"
	"footward.example/footward/internal/weld"
)

// TestLeastSizesBesideEachStep: AISC 360 Tables J2.4 (legs) and J2.3 (grooves) by the
// thinner part, a little above and below each thickness at which they step [in].
func TestLeastSizesBesideEachStep(t *testing.T) {
	for _, c := range []struct{ thick, leg, groove float64 }{
		{0.22, 1. / 8, 1. / 8}, {0.24, 1. / 8, 1. / 8}, {0.26, 3. / 16, 3. / 16}, {0.28, 3. / 16, 3. / 16},
		{0.45, 3. / 16, 3. / 16}, {0.49, 3. / 16, 3. / 16}, {0.51, 1. / 4, 1. / 4}, {0.58, 1. / 4, 1. / 4},
		{0.65, 1. / 4, 1. / 4}, {0.74, 1. / 4, 1. / 4}, {0.76, 5. / 16, 5. / 16}, {0.85, 5. / 16, 5. / 16},
		{1.3, 5. / 16, 5. / 16}, {1.49, 5. / 16, 5. / 16}, {1.51, 5. / 16, 3. / 8}, {1.75, 5. / 16, 3. / 8},
		{2.24, 5. / 16, 3. / 8}, {2.26, 5. / 16, 1. / 2}, {2.6, 5. / 16, 1. / 2}, {5.9, 5. / 16, 1. / 2}, {6.1, 5. / 16, 5. / 8}, {7.5, 5. / 16, 5. / 8},
	} {
		in := fillet(basis.USLRFD, 8, 0, 345, 450, 0)
		in.Run = weld.Run{Length: 300, Count: 2, Normal: 1e3}
		in.Weld.Parts[0].Thickness, in.Weld.Parts[1].Thickness = 200, c.thick*inch
		r, _ := check(t, &in)
		assert.InDelta(t, c.leg*inch, r.US.Least, 1e-9, "leg on %g", c.thick)
		in.Weld.Type, in.Weld.Leg, in.Weld.Throat = weld.PartialPenetration, 0, 3
		r, _ = check(t, &in)
		assert.InDelta(t, c.groove*inch, r.US.Least, 1e-9, "groove on %g", c.thick)
	}
}

// TestMostLegAlongAnEdge: AISC 360-22 J2.2b: the thickness below 1/4 in, 1/16 in less from
// there on.
func TestMostLegAlongAnEdge(t *testing.T) {
	for thick, want := range map[float64]float64{5.2: 5.2, 6.3: 6.3, 6.4: 4.8125, 7: 5.4125, 7.5: 5.9125} {
		in := fillet(basis.USLRFD, 4, 0, 345, 450, 0)
		in.Run = weld.Run{Length: 300, Count: 2, Normal: 1e3}
		in.Weld.Parts[1].Thickness, in.Weld.Parts[1].AlongEdge = thick, true
		r, _ := check(t, &in)
		assert.InDelta(t, want, r.US.Most, 1e-9, thick)
	}
}

// TestLongLapsLoseStrength: AISC 360-22 (J2-1): 1.2 - 0.002 l/w from 100 to 300 legs,
// 180 w/l beyond.
func TestLongLapsLoseStrength(t *testing.T) {
	for legs, want := range map[float64]float64{99: 1, 101: 0.998, 200: 0.8, 250: 0.7, 299: 0.602, 301: 180. / 301} {
		in := fillet(basis.USLRFD, 8, 0, 345, 450, 0)
		in.Run = weld.Run{Length: 8 * legs, Count: 2, Along: 1e3, EndLoaded: true}
		r, _ := check(t, &in)
		assert.InDelta(t, want, r.US.Beta, 1e-9, legs)
	}
}
