package friction_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"footward.example/footward/internal/basis"
	"footward.example/footward/internal/derive"
	"footward.example/footward/internal/friction"
)

const (
	kip = 4448.2216152605
	ksi = 6.894757293168361
	in2 = 25.4 * 25.4
)

// TestFrictionOfTheGuide holds AISC Design Guide 1, 3rd ed., Example 4.7-8 and Eq.
// 4-30: 496 kip, mu 0.4, 325 in2, 4 ksi: 129 kip; both limits 195 kip.
func TestFrictionOfTheGuide(t *testing.T) {
	d := basis.Design{Basis: basis.USLRFD}
	in := friction.Input{Compression: 496 * kip, Coefficient: 0.4, Area: 325 * in2, Strength: 4 * ksi}
	r := friction.Find(&d, in)
	assert.InDelta(t, 129, r.Take/kip, 0.5)
	assert.InDelta(t, 195, r.Crush/kip, 0.05)
	assert.InDelta(t, 195, r.Stress/kip, 0.05)
	in.Strength = 3 * ksi // 0.75 0.6 ksi 100 in2 = 45 kip
	in.Area = 100 * in2
	assert.InDelta(t, 45, friction.Find(&d, in).Take/kip, 1e-9)
	in.Strength = 8 * ksi // 0.75 0.8 ksi 100 in2 = 60 kip
	assert.InDelta(t, 60, friction.Find(&d, in).Take/kip, 1e-9)
	in.Strength = 0 // as on 4 ksi: 60 kip
	r = friction.Find(&d, in)
	assert.InDelta(t, 60, r.Take/kip, 1e-9)
	assert.True(t, r.Assumed)
}

// TestFrictionByAllowableStrength: 0.4 330 kip / 2.31 = 57.14 kip; the limit of
// 100 in2 is 0.8 ksi 100 in2 / 2.00 = 40 kip.
func TestFrictionByAllowableStrength(t *testing.T) {
	d := basis.Design{Basis: basis.USASD}
	in := friction.Input{Compression: 330 * kip, Coefficient: 0.4, Area: 325 * in2, Strength: 4 * ksi}
	assert.InDelta(t, 57.14, friction.Find(&d, in).Take/kip, 0.01)
	in.Area = 100 * in2
	assert.InDelta(t, 40, friction.Find(&d, in).Take/kip, 1e-9)
}

func TestFrictionByEurocodeIsItsShareOfTheCompression(t *testing.T) {
	d := basis.Design{Basis: basis.Eurocode, EC: basis.Recommended()}
	assert.InDelta(t, 20e3, friction.Find(&d, friction.Input{Compression: 100e3}).Take, 1e-9)
	assert.Zero(t, friction.Find(&d, friction.Input{Compression: -100e3}).Take, "lifted")
}

func TestFrictionCanBeFollowed(t *testing.T) {
	for _, b := range []basis.Basis{basis.Eurocode, basis.USLRFD, basis.USASD} {
		d := basis.Design{Basis: b, EC: basis.Recommended()}
		for _, in := range []friction.Input{
			{Compression: 1e6, Coefficient: 0.4, Area: 325 * in2, Strength: 20},
			{Compression: 1e6, Coefficient: 0.7, Area: 1e4},
			{Compression: 1e6, Coefficient: 0.3},
		} {
			r := friction.Find(&d, in)
			var s derive.Sheet
			r.Derive(&s)
			require.NoError(t, derive.Verify(s.Steps))
			if d.Basis.US() {
				assert.Equal(t, "given in the request", sourceOf(t, &s, "mu"))
				in.Assumed = true
				assumed, own := friction.Find(&d, in), derive.Sheet{}
				assumed.Derive(&own)
				assert.Contains(t, sourceOf(t, &own, "mu"), "Example 4.7-8")
			}
			last := s.Steps[len(s.Steps)-1]
			assert.NotEmpty(t, last.Expression, "what friction takes is computed, not given")
			assert.InDelta(t, r.Take, last.Value, 1e-9)
		}
	}
}

func sourceOf(t *testing.T, s *derive.Sheet, symbol string) string {
	t.Helper()
	for _, f := range s.Factors {
		if f.Symbol == symbol {
			return f.Source
		}
	}
	require.Fail(t, "no such factor", symbol)
	return ""
}
