package base

import "footward.example/footward/internal/limit"

// elsewhere are notices of parts about what they leave out, and when the whole has it.
var elsewhere = []struct {
	code string
	when func(*ColumnInput) bool
}{
	{"plate_bearing_apart", always},
	{"plate_rods_apart", func(in *ColumnInput) bool { return in.Anchorage.Kind != NotHeld }},
	{"plate_prying", func(in *ColumnInput) bool { return in.Anchorage.Kind != NotHeld }},
	{"anchor_block", (*ColumnInput).onPad},
	{"pad_pulled", func(in *ColumnInput) bool { return in.Anchorage.Kind == Headed }},
	{"pad_one_combination", always},
	{"pad_not_checked", always},
	{"ground_one_combination", always},
	{"ground_variable_linked", func(in *ColumnInput) bool { return len(in.Below.Pairs) > 1 }},
	{"ring_ground_apart", func(in *ColumnInput) bool { return in.Below.HasGround }},
	{"tie_overturning_edge", func(in *ColumnInput) bool { return in.Below.HasGround }},
	{"ground_ring_footing", func(in *ColumnInput) bool { return !in.Below.HasStack }},
	{"ground_settlement", func(in *ColumnInput) bool { return in.Below.HasSettlement }},
}

func always(*ColumnInput) bool { return true }

// onPad reports whether the support is a block that is checked as a pad.
func (in *ColumnInput) onPad() bool {
	return in.Below.HasGround && !in.Below.HasStack && in.Base.Support.Block.OffsetX == 0 && in.Base.Support.Block.OffsetY == 0
}

var padRest = &limit.Notice{Code: "base_pad_not_checked", Severity: limit.Caution,
	Text: "Of the pad, torsion, starter bars, crack widths, exposure class and seismic detailing are not checked; its concrete is taken as of normal weight."}

// reword drops what parts say of what the whole has, and says what is left of it.
func (c *column) reword(l *limit.Notices) {
	for _, e := range elsewhere {
		if e.when(c.in) {
			l.Drop(e.code)
		}
	}
	if c.in.onPad() {
		l.Add(padRest)
	}
}
