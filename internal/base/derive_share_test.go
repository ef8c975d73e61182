package base_test

import (
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
