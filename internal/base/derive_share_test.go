package base_test

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"footward.example/footward/internal/base"
	"footward.example/footward/internal/basis"
	"footward.example/footward/internal/derive"
	"footward.example/footward/internal/geom"
)

// TestWhatIsSharedFollowsFromTheSinkingPlane, on a plastic bed, on an elastic one, with a
// preload, and with a greater one to which rods through a stack are tightened.
func TestWhatIsSharedFollowsFromTheSinkingPlane(t *testing.T) {
	for name, in := range map[string]*base.ColumnInput{
		"plastic": column(basis.USLRFD, geom.Actions{N: -40e3, My: 20e6, Mx: 5e6}),
		"elastic": func() *base.ColumnInput {
			in := column(basis.Eurocode, geom.Actions{N: -40e3, My: 20e6})
			in.Modulus, in.Preload = 0.5, 20e3
			return in
		}(),
		"tightened": func() *base.ColumnInput {
			in := through(basis.Eurocode, 760, 20)
			in.Anchorage.Through.Preload = 9e3
			return in
		}(),
	} {
		t.Run(name, func(t *testing.T) {
			r, _ := check(t, in)
			var sheet derive.Sheet
			r.Derive(&sheet)
			require.NoError(t, derive.Verify(sheet.Steps))
			found := 0
			for i := range sheet.Steps {
				s := &sheet.Steps[i]
				if s.Symbol == "p_max" && s.Clause == "statics: rigid plate on a bed without tension, rods in tension only" || strings.HasPrefix(s.Symbol, "T_rod#") && s.Clause != "the plate's own method, which pulls this rod more; see there" {
					assert.NotEmpty(t, s.Expression, s.Symbol)
					found++
				}
			}
			assert.Greater(t, found, 4)
		})
	}
}

// TestSumsOfACombinationAndClampedWeightAreDerived: what is computed does not stand as given.
func TestSumsOfACombinationAndClampedWeightAreDerived(t *testing.T) {
	in := through(basis.Eurocode, 760, 20)
	in.Actions = []base.Action{{Name: "frame", Forces: geom.Actions{N: -80e3}}, {Name: "wind", Forces: geom.Actions{N: 5e3, Vx: 1e3, My: 1e6}}}
	in.Cases[0].Actions = geom.Actions{N: -1.35*80e3 + 1.5*5e3, Vx: 1.5e3, My: 1.5e6}
	in.Cases[0].Factors = []float64{1.35, 1.5}
	r, _ := check(t, in)
	var sheet derive.Sheet
	r.Derive(&sheet)
	require.NoError(t, derive.Verify(sheet.Steps))
	want := map[string]float64{"N,c": -100.5e3, "V_x,c": 1.5e3, "M_y,c": 1.5e6, "M_y": 1.5e6, "V_x": 1.5e3,
		"W": 77e-6*760*760*20 + math.Pi/4*700*700*600*20e-6}
	for i := range sheet.Steps {
		s := &sheet.Steps[i]
		if v, ok := want[s.Symbol]; ok {
			assert.NotEmpty(t, s.Expression, s.Symbol)
			assert.InEpsilon(t, v, s.Value, 1e-9, s.Symbol)
			delete(want, s.Symbol)
		}
	}
	assert.Empty(t, want)
}
