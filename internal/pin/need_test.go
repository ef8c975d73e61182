package pin_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"

	"footward.example/footward/internal/basis"
	"footward.example/footward/internal/limit"
	"footward.example/footward/internal/material"
	"footward.example/footward/internal/pin"
)

// put puts a required size where its kind says that it belongs.
func put(in *pin.Input, size limit.Size, mm float64) {
	switch size {
	case limit.PlateThickness:
		in.Plates.Thickness = mm
	case limit.PinDiameter:
		play := in.Plates.Hole - in.Pin.Diameter
		in.Pin.Diameter, in.Plates.Hole = mm, mm+play
	case limit.ColumnThickness:
		in.Timber.AlongPin = mm
	case limit.PinSpacingAlong:
		in.Layout.SpacingAlong = mm
	case limit.PinSpacingAcross:
		in.Layout.SpacingAcross = mm
	case limit.PinEndDistance:
		in.Layout.EndDistance = mm
	case limit.PinEdgeDistance:
		in.Layout.EdgeDistance = mm
	case limit.BracketEndDistance:
		in.Plates.EndDistance = mm
	case limit.BracketWidth:
		in.Plates.Width = mm
	default:
		panic("a size that the part does not know")
	}
}

// banded is a grade whose strength falls with thickness.
var banded = &material.SteelGrade{Name: "banded", Bands: []material.SteelBand{
	{UpTo: 16, Fy: 355, Fu: 510}, {UpTo: 40, Fy: 345, Fu: 470}, {UpTo: 100, Fy: 315, Fu: 470},
}}

// sizes lists what each limit state may ask for.
var sizes = map[string][]limit.Size{
	"pin_lateral":           {limit.ColumnThickness, limit.PlateThickness},
	"pin_row":               {limit.PinSpacingAlong, limit.ColumnThickness},
	"pin_spacing":           {limit.PinSpacingAlong, limit.PinSpacingAcross, limit.PinEndDistance, limit.PinEdgeDistance},
	"pin_steel_shear":       {limit.PinDiameter},
	"pin_gap_bending":       {limit.PinDiameter},
	"column_splitting":      {limit.PinEdgeDistance, limit.ColumnThickness},
	"column_block_shear":    {limit.PinEndDistance, limit.ColumnThickness},
	"column_net_section":    {limit.ColumnThickness},
	"column_end_grain":      {limit.ColumnThickness},
	"bracket_net_section":   {limit.PlateThickness},
	"bracket_compression":   {limit.PlateThickness},
	"bracket_bending":       {limit.PlateThickness},
	"bracket_hole_bearing":  {limit.PlateThickness},
	"bracket_tear_out":      {limit.PlateThickness},
	"bracket_block_tearing": {limit.PlateThickness},
	"bracket_hole_pattern":  {limit.PinSpacingAlong, limit.PinSpacingAcross, limit.BracketEndDistance, limit.BracketWidth},
}

// asks is a random column foot with all that sizes depend on.
func asks(t *rapid.T) *pin.Input {
	in := random(t)
	if rapid.Bool().Draw(t, "grade") {
		in.Plates.Steel = material.Steel{Grade: banded}
	}
	return in
}

// verdict returns the verdict of a limit state with a size put in; Unset where
// the input does not fit then.
func verdict(in pin.Input, id string, size limit.Size, mm float64) limit.Verdict {
	put(&in, size, mm)
	r, err := pin.Check(&in)
	if err != nil {
		return limit.Unset
	}
	var l limit.List
	l.NoSizes = true
	r.States(&l)
	for _, s := range l.All() {
		if s.Kind.ID == id {
			return s.Verdict
		}
	}
	return limit.Unset
}

func TestRequiredSizesHoldAndSmallerOnesFail(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := asks(t)
		_, states := check(t, in)
		for id, s := range states {
			if s.Size != limit.NoSize {
				assert.Contains(t, sizes[id], s.Size, id)
				assert.Equal(t, limit.Pass, verdict(*in, id, s.Size, s.Required), "%s, size %d of %g mm", id, s.Size, s.Required)
				assert.NotEqual(t, limit.Pass, verdict(*in, id, s.Size, s.Required*(1-1e-5)), "%s, size %d under %g mm", id, s.Size, s.Required)
			}
		}
	})
}

func TestEverySizeIsAskedFor(t *testing.T) {
	left := map[string]map[limit.Size]bool{}
	for id, all := range sizes {
		left[id] = map[limit.Size]bool{}
		for _, v := range all {
			left[id][v] = true
		}
	}
	draw := rapid.Custom(asks)
	for seed := range 1000 {
		_, states := check(t, draw.Example(seed))
		for id, s := range states {
			delete(left[id], s.Size)
		}
	}
	for id, v := range left {
		assert.Empty(t, v, id)
	}
}

// TestNoSizeWhereMoreDoesNotHelp: a thin plate's pin that bends in wide timber
// gains nothing from more timber, a loose hole nothing from more plate.
func TestNoSizeWhereMoreDoesNotHelp(t *testing.T) {
	in := single(basis.Eurocode)
	in.Actions.N, in.Plates.Thickness, in.Plates.Hole = 50e3, 6, 13.2
	_, s := check(t, in)
	assert.Equal(t, limit.Fail, s["pin_lateral"].Verdict)
	assert.Equal(t, limit.NoSize, s["pin_lateral"].Size)
	in.Plates.Hole, in.Actions.N = 13, 12e3
	_, s = check(t, in)
	assert.Equal(t, limit.PlateThickness, s["pin_lateral"].Size)
	// Halfway from 0.5 d to d the pin resists (7843.5 + 11092.4)/2 a plane: 11.65 kN.
	in.Actions.N = (7843.516 + 11092.407) * 0.8 / 1.3
	_, s = check(t, in)
	assert.InDelta(t, 9, s["pin_lateral"].Required, 1e-4)
}

func BenchmarkStatesWithSizes(b *testing.B) {
	in := foot(basis.Eurocode)
	in.Plates.Gap = 2 // every search is made
	r, err := pin.Check(in)
	if err != nil {
		b.Fatal(err)
	}
	b.ReportAllocs()
	for b.Loop() {
		var l limit.List
		if r.States(&l); l.Verdict() == limit.Unset {
			b.Fatal("no verdict")
		}
	}
}
