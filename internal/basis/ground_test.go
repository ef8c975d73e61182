package basis_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"footward.example/footward/internal/basis"
)

func TestFactorsOfTheGroundAreThoseOfAnnexA(t *testing.T) {
	// EN 1997-1:2004 Tables A.1, A.3, A.4, A.5, A.15, as literals.
	assert.Equal(t, basis.Ground{
		Phi: 1.25, C: 1.25, Cu: 1.4, Rv: 1.4, Rh: 1.1, GSup: 1.35, GInf: 1, Q: 1.5, QA2: 1.3, GDst: 1.1, GStb: 0.9, QDst: 1.5,
	}, basis.RecommendedGround())
	assert.Equal(t, 1.15, basis.Recommended().GammaS)
	assert.Equal(t, 0.8, basis.Recommended().AlphaCTPl)
}

func TestFactorsOfTheGroundThatCannotBeAreRefused(t *testing.T) {
	for name, change := range map[string]func(*basis.Factors){
		"gamma_phi below 1":   func(f *basis.Factors) { f.Ground.Phi = 0.9 },
		"gamma_R,h zero":      func(f *basis.Factors) { f.Ground.Rh = 0 },
		"gamma_G no number":   func(f *basis.Factors) { f.Ground.GSup = math.NaN() },
		"gamma_G,stb above 1": func(f *basis.Factors) { f.Ground.GStb = 1.1 },
		"gamma_S below 1":     func(f *basis.Factors) { f.GammaS = 0.9 },
		"alpha_ct,pl above 1": func(f *basis.Factors) { f.AlphaCTPl = 1.1 },
	} {
		d := basis.Design{Basis: basis.Eurocode, EC: basis.Recommended()}
		change(&d.EC)
		assert.False(t, d.Valid(), name)
	}
}
