package size

import (
	"fmt"
	"math"
	"strings"

	"footward.example/footward/internal/base"
	"footward.example/footward/internal/compare"
	"footward.example/footward/internal/limit"
)

// ValidateComparison adds to faults everything that does not fit.
func ValidateComparison(in *Comparison, faults *limit.Faults) {
	before := len(*faults)
	add := func(found limit.Faults, field func(string) string) {
		for _, f := range found {
			if f.Field = field(f.Field); f.Field != "" {
				*faults = append(*faults, f)
			}
		}
	}
	base.ValidateColumn(&in.Base, faults)
	s := &in.Base.Below
	if !s.HasStack {
		faults.Add(limit.Missing, "base.substructure.stack", "is needed: it is what a pad is held against")
	}
	if !s.HasGround {
		faults.Add(limit.Missing, "base.substructure.ground", "is needed: the pad is sized for it")
	}
	if n := len(s.Stack.Tiers); s.HasStack && len(in.Stack.Rings) != n {
		faults.Add(limit.Number, "supply.rings", "must say of every tier what its ring is")
	}
	if len(*faults) > before {
		return
	}
	if !in.AbovePad {
		in.validatePlinth(faults)
	}
	var found limit.Faults
	p := in.pad()
	ValidatePad(&p, &found)
	add(found, padPath)
	if p.Ground.Layer.Thickness == 0 && s.Ground.Layer.Thickness > 0 {
		faults.Add(limit.Conflict, "pad.depth_mm", "puts the pad into the clay below the granular layer: the layer is no ground of the pad, give the clay as the soil")
		return
	}
	found = nil
	compare.ValidateStack(in.stack(), &found)
	add(found, func(field string) string {
		switch part, _, _ := strings.Cut(field, "."); part {
		case "shoe", "bottom_plate", "weld", "levelling":
			return "" // those of the base
		case "rods":
			if field != "rods.fittings_kg" {
				return ""
			}
			return "supply.rod_fittings_kg"
		case "excavation":
			return field
		}
		// Of the inner diameter only the base speaks.
		return "supply." + strings.Replace(field, "inner_diameter_mm", "outer_diameter_mm", 1)
	})
	found = nil
	compare.ValidatePad(in.concrete(&p, &PadChoice{SizeX: p.Plan.Most, SizeY: p.across(p.Plan.Most), Thickness: p.Thickness.Most, Bars: min(0, len(p.Bars)-1)}), &found)
	add(found, padPath)
	found = nil
	compare.Validate(&compare.Input{Footings: []compare.Footing{{Items: []compare.Item{{Kind: compare.Fill, Mass: 1}}}}, Rates: in.Rates}, &found)
	*faults = append(*faults, found...)
}

// validatePlinth adds to faults that a plinth is smaller than what stands on it: there
// plate and rods would have no concrete below them.
func (in *Comparison) validatePlinth(faults *limit.Faults) {
	b := &in.Base.Base
	x, y := b.Plate.Plate.SizeX, b.Plate.Plate.SizeY
	if b.HasRods {
		d := b.Rod.Thread.Diameter
		for _, at := range b.At {
			x, y = max(x, 2*math.Abs(at.X)+d), max(y, 2*math.Abs(at.Y)+d)
		}
	}
	for _, v := range [...]struct {
		field     string
		of, takes float64
	}{{"pad.plinth_x_mm", in.plinthX(), x}, {"pad.plinth_y_mm", in.plinthY(), y}} {
		if v.of < v.takes {
			faults.Add(limit.OutOfRange, v.field, fmt.Sprintf("of %g mm is less than plate and rods take, %g mm", v.of, v.takes))
		}
	}
}

// padPath is the contract's path of a field of the pad.
func padPath(field string) string {
	switch part, rest, _ := strings.Cut(field, "."); part {
	case "excavation":
		return field
	case "pad", "concrete", "plan", "thickness":
		if part == "concrete" {
			return "pad.concrete"
		}
		if part == "pad" {
			return "pad." + rest
		}
		return "pad." + field
	case "soil_unit_weight_kn_m3":
		return "base.substructure.ground.soil.unit_weight_above_kn_m3"
	case "base_contact", "soil", "layer", "presumptive", "footing", "permanent", "variable", "bearing_author", "forces", "basis":
		return "" // those of the base, which have been looked at
	}
	return "pad." + field
}
