package basis_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"footward.example/footward/internal/basis"
)

// TestFactorsOfTheTwoUSFormats holds that Omega = 1.5/phi, by which LRFD and ASD
// agree at a live load of three times the dead load (AISC 360-22 Commentary B3),
// to the rounding of the printed factors.
func TestFactorsOfTheTwoUSFormats(t *testing.T) {
	for name, s := range map[string]basis.Strength{
		"concrete": basis.ConcreteBearing, "flexure": basis.Flexure, "rupture": basis.Rupture,
		"shear yield": basis.ShearYield, "tension yield": basis.TensionYield, "groove": basis.GrooveTension,
	} {
		assert.InDelta(t, 1.5, s.Phi*s.Omega, 0.005, name)
		assert.Equal(t, s.Phi, s.Factor(basis.USLRFD), name)
		assert.Equal(t, 1/s.Omega, s.Factor(basis.USASD), name)
		assert.Zero(t, s.Factor(basis.Eurocode), name)
	}
}

func TestDesignRefusesFactorsThatCannotBe(t *testing.T) {
	good := basis.Design{Basis: basis.Eurocode, EC: basis.Recommended()}
	assert.True(t, good.Valid())
	for name, change := range map[string]func(*basis.Design){
		"no basis":         func(d *basis.Design) { d.Basis = basis.Unset },
		"unknown basis":    func(d *basis.Design) { d.Basis = 9 },
		"gamma_M0 zero":    func(d *basis.Design) { d.EC.GammaM0 = 0 },
		"gamma_M1 below 1": func(d *basis.Design) { d.EC.GammaM1 = 0.9 },
		"gamma_M2 below 1": func(d *basis.Design) { d.EC.GammaM2 = 0.9 },
		"beta_j above 2/3": func(d *basis.Design) { d.EC.BetaJ = 0.7 },
		"friction of 1":    func(d *basis.Design) { d.EC.CFd = 1 },
	} {
		d := good
		change(&d)
		assert.False(t, d.Valid(), name)
	}
	assert.True(t, (&basis.Design{Basis: basis.USASD}).Valid())
}

func TestEveryBasisNamesItsEditionsAndDefaults(t *testing.T) {
	for b := basis.Eurocode; b.Valid(); b++ {
		assert.NotEmpty(t, b.Editions())
		for _, d := range b.Defaults() {
			assert.NotEmpty(t, d.Symbol)
			assert.Positive(t, d.Value, d.Symbol)
			assert.NotEmpty(t, d.Source, d.Symbol)
		}
	}
	assert.Empty(t, basis.Unset.Editions())
}
