package base_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"footward.example/footward/internal/base"
	"footward.example/footward/internal/basis"
	"footward.example/footward/internal/geom"
	"footward.example/footward/internal/limit"
	"footward.example/footward/internal/material"
	"footward.example/footward/internal/plate"
)

// TestWeldAgreesWithThePartsThatTheBaseKnows: a thicker or stronger part than there
// is would weld better than the real one.
func TestWeldAgreesWithThePartsThatTheBaseKnows(t *testing.T) {
	tube := plate.Footprint{Shape: plate.Tube, SizeX: 200, SizeY: 200, Thick: 12, Stiff: true, StiffStated: true}
	strong := material.Steel{Fy: 355, Fu: 510, BetaW: 0.9}
	for name, c := range map[string]struct {
		change func(*base.ColumnInput)
		fields []string
	}{
		"as they are": {func(*base.ColumnInput) {}, nil},
		"wall of the tube": {func(in *base.ColumnInput) { in.Weld.Parts[1].Thickness = 30 },
			[]string{"base.weld.parts[1].thickness_mm"}},
		"plate": {func(in *base.ColumnInput) { in.Weld.Parts[0].Thickness = 31 },
			[]string{"base.weld.parts[0].thickness_mm"}},
		"stronger plate": {func(in *base.ColumnInput) { in.Weld.Parts[0].Steel = strong },
			[]string{"base.weld.parts[0].steel"}},
		"no weld": {func(in *base.ColumnInput) { in.HasWeld, in.Weld.Parts[1].Thickness = false, 30 }, nil},
	} {
		t.Run(name, func(t *testing.T) {
			in := column(basis.Eurocode, geom.Actions{N: -100e3})
			in.Base.Plate.Plate.Thickness = 30
			in.Base.Plate.Footprint = tube
			in.Base.Plate.Plate.Steel = in.Weld.Parts[0].Steel
			in.Weld.Parts[1].Thickness = 12
			c.change(in)
			var faults limit.Faults
			base.ValidateColumn(in, &faults)
			var fields []string
			for _, f := range faults {
				assert.Equal(t, limit.Conflict, f.Fault)
				fields = append(fields, f.Field)
			}
			assert.Equal(t, c.fields, fields)
		})
	}
}
