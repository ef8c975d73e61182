package bearing

import (
	"fmt"
	"math"

	"footward.example/footward/internal/limit"
)

// Ranges that the kernel accepts; the contract's are narrower or the same.
const (
	greatestSize = 1e5  // mm
	leastSize    = 1e-3 // mm
)

func within(v, low, high float64) bool { return v >= low && v <= high }

func sized(v float64) bool { return within(v, leastSize, greatestSize) }

// Validate adds to faults everything about the input that does not fit.
func Validate(in *Input, faults *limit.Faults) {
	if !in.Design.Valid() {
		faults.Add(limit.UnknownValue, "basis.family", "is not a design basis with usable factors")
	}
	faults.Range("contact.size_x_mm", in.SizeX, leastSize, greatestSize, 1, " mm")
	faults.Range("contact.size_y_mm", in.SizeY, leastSize, greatestSize, 1, " mm")
	in.Actions.Range("forces", faults)
	switch in.Medium {
	case Concrete:
		validateBlock(in, faults)
	case Timber:
		validateTimber(in, faults)
	case Given:
		if !within(in.Given.Pressure, 1e-9, 1e3) {
			faults.Add(limit.OutOfRange, "support.given.pressure_kpa", "must be a positive pressure")
		}
	default:
		faults.Add(limit.Missing, "support", "needs one of concrete, timber, given")
	}
}

func validateBlock(in *Input, faults *limit.Faults) {
	b := &in.Block
	if !within(b.Concrete.Strength, 1, greatestFck) {
		faults.Add(limit.OutOfRange, "support.concrete.concrete",
			fmt.Sprintf("strength of %g MPa is not between 1 and %g MPa", b.Concrete.Strength, greatestFck))
	}
	faults.Range("support.concrete.height_mm", b.Height, leastSize, greatestSize, 1, " mm")
	if !within(b.GroutThick, 0, greatestSize) || (b.GroutThick > 0 && !within(b.GroutStrength, 1e-3, 1e3)) {
		faults.Add(limit.OutOfRange, "support.concrete.grout", "needs a positive thickness and strength")
	}
	onBlock(faults, "support.concrete.size_x_mm", in.SizeX, b.SizeX, b.OffsetX)
	onBlock(faults, "support.concrete.size_y_mm", in.SizeY, b.SizeY, b.OffsetY)
}

// onBlock demands that a contact stays on its block along one axis.
func onBlock(faults *limit.Faults, field string, contact, block, offset float64) {
	if !(contact/2+math.Abs(offset) <= block/2*(1+1e-12)) || !sized(block) {
		faults.Add(limit.Geometry, field, fmt.Sprintf(
			"block of %g mm is smaller than the contact of %g mm that stands %g mm off its centre", block, contact, offset))
	}
}

func validateTimber(in *Input, faults *limit.Faults) {
	t := &in.Timber
	if !within(t.Timber.Along, 1e-3, 1e3) || !within(t.Timber.Across, 1e-3, 1e3) || t.Timber.Kind == 0 || t.Timber.Kind > 3 {
		faults.Add(limit.Missing, "support.timber.timber", "needs a known kind and positive strengths")
	}
	if t.Direction != AlongGrain && t.Direction != AcrossGrain {
		faults.Add(limit.UnknownValue, "support.timber.direction", "must be along or across the grain")
	}
	if t.ServiceClass > 3 || (t.ServiceClass == 0 && !in.Design.Basis.US()) {
		faults.Add(limit.Missing, "support.timber.service_class", "must be 1, 2 or 3 with the Eurocode")
	}
	if t.Duration > Instantaneous {
		faults.Add(limit.UnknownValue, "support.timber.load_duration", "is not a load duration class")
	}
	if !within(t.LoadDuration, 0, 2) {
		faults.Add(limit.OutOfRange, "support.timber.load_duration_factor", "must be between 0.9 and 2")
	}
	if !within(t.TimeEffect, 0, 1.25) {
		faults.Add(limit.OutOfRange, "support.timber.time_effect_factor", "must be between 0.6 and 1.25")
	}
	for _, l := range [...]struct {
		field string
		v     float64
	}{
		{"support.timber.end_distance_mm", t.EndDistance},
		{"support.timber.clear_spacing_mm", t.ClearSpacing},
		{"support.timber.depth_mm", t.Depth},
	} {
		if !within(l.v, 0, greatestSize) {
			faults.Add(limit.OutOfRange, l.field, "must be a length, not negative")
		}
	}
}
