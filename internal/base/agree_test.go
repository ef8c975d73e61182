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
	"footward.example/footward/internal/weld"
)

// TestWeldHasThePartsThatTheBaseKnows: a thicker wall or a stronger steel than there
// is would weld better than the real one.
func TestWeldHasThePartsThatTheBaseKnows(t *testing.T) {
	strong := material.Steel{Fy: 355, Fu: 510, BetaW: 0.8}
	tubes := func(change func(*base.ColumnInput)) (limit.State, bool) {
		in := column(basis.Eurocode, geom.Actions{N: -100e3, Vx: 60e3})
		in.Base.Plate.Footprint = plate.Footprint{Shape: plate.Tube, SizeX: 200, SizeY: 200, Thick: 12, Stiff: true, StiffStated: true}
		in.Base.Plate.Plate.Thickness, in.Base.Plate.Plate.Steel = 30, in.Weld.Parts[0].Steel
		in.Weld.Type, in.Weld.Throat = weld.CompletePenetration, 0
		in.Weld.Parts[1].Thickness = 12
		change(in)
		r, got := check(t, in)
		var notices limit.Notices
		r.Notices(&notices)
		said := false
		for _, n := range notices.All() {
			said = said || n.Code == "base_weld_parts"
		}
		return got["weld_full_penetration"], said
	}
	right, said := tubes(func(*base.ColumnInput) {})
	assert.False(t, said)
	for name, change := range map[string]func(*base.ColumnInput){
		"wall of the tube": func(in *base.ColumnInput) { in.Weld.Parts[1].Thickness = 30 },
		"stronger plate":   func(in *base.ColumnInput) { in.Weld.Parts[0].Steel = strong },
	} {
		got, said := tubes(change)
		assert.True(t, said, name)
		assert.InDelta(t, right.Utilization, got.Utilization, 1e-12, name)
		assert.Positive(t, got.Utilization, name)
	}
	var faults limit.Faults
	in := column(basis.Eurocode, geom.Actions{N: -100e3})
	in.Weld.Parts[0].Thickness = 31
	base.ValidateColumn(in, &faults)
	assert.Equal(t, limit.Faults{{Field: "base.weld.parts[0].thickness_mm", Fault: limit.Conflict, Reason: "of 31 mm is not the plate's, of 30 mm"}}, faults)
}
