package compare

import (
	"fmt"

	"footward.example/footward/internal/limit"
)

// Ranges that the kernel accepts; the contract's are narrower or the same.
const (
	greatestSize   = 1e5  // mm
	greatestAmount = 1e12 // kg, m3, m2
	greatestRate   = 1e9
	greatestWeight = 1e-3 // N/mm3
	mostFootings   = 50
	mostItems      = 500
	mostRings      = 100
	mostPieces     = 1000000
)

func within(v, low, high float64) bool { return v >= low && v <= high }

// bound is a field with its range.
type bound struct {
	field          string
	v, least, most float64
}

func hold(faults *limit.Faults, path string, all []bound) {
	for _, b := range all {
		if !within(b.v, b.least, b.most) {
			faults.Add(limit.OutOfRange, path+b.field, fmt.Sprintf("must be a number from %g to %g", b.least, b.most))
		}
	}
}

// Validate adds to faults everything about a comparison that does not fit.
func Validate(in *Input, faults *limit.Faults) {
	if n := len(in.Footings); n == 0 || n > mostFootings {
		faults.Add(limit.Number, "footings", fmt.Sprintf("must be 1 to %d", mostFootings))
	}
	for i := range in.Footings {
		path := fmt.Sprintf("footings[%d].items", i)
		items := in.Footings[i].Items
		if n := len(items); n == 0 || n > mostItems {
			faults.Add(limit.Number, path, fmt.Sprintf("must be 1 to %d", mostItems))
		}
		for j := range items {
			validateItem(fmt.Sprintf("%s[%d]", path, j), &items[j], faults)
		}
	}
	validateRates(&in.Rates, faults)
}

func validateItem(path string, i *Item, faults *limit.Faults) {
	if i.Kind == NoKind || i.Kind >= kinds {
		faults.Add(limit.UnknownValue, path+".kind", "must be a known kind of item")
	}
	hold(faults, path, []bound{
		{".mass_kg", i.Mass, 0, greatestAmount}, {".volume_m3", i.Volume, 0, greatestAmount},
		{".loose_volume_m3", i.Loose, 0, greatestAmount}, {".area_m2", i.Area, 0, greatestAmount},
		{".count", float64(i.Count), 0, mostPieces},
	})
	if i.Mass == 0 && i.Volume == 0 && i.Loose == 0 && i.Area == 0 && i.Count == 0 {
		faults.Add(limit.Missing, path, "needs a quantity")
	}
}

func validateRates(r *Rates, faults *limit.Faults) {
	seen := map[Kind]bool{}
	for i := range r.Each {
		e := &r.Each[i]
		path := fmt.Sprintf("rates[%d]", i)
		switch {
		case e.Kind == NoKind || e.Kind >= kinds:
			faults.Add(limit.UnknownValue, path+".kind", "must be a known kind of item")
		case seen[e.Kind]:
			faults.Add(limit.Conflict, path+".kind", "has its rate already")
		}
		seen[e.Kind] = true
		for _, v := range [...]struct {
			field string
			v     *Value
		}{{".cost", &e.Cost}, {".hours", &e.Hours}, {".carbon", &e.Carbon}} {
			validateValue(path+v.field, v.v, true, faults)
		}
		hold(faults, path, []bound{{".distance_km", e.Distance, 0, 50000}})
		if e.OnSite && e.Distance != 0 {
			faults.Add(limit.Conflict, path+".on_site", "does not go with a distance")
		}
	}
	validateValue("transport.cost", &r.Haul.Cost, false, faults)
	validateValue("transport.carbon", &r.Haul.Carbon, false, faults)
}

// validateValue refuses negative rates: a credit for what is avoided or stored is no
// part of the product stage.
func validateValue(path string, v *Value, measured bool, faults *limit.Faults) {
	if !v.Given {
		return
	}
	hold(faults, path, []bound{{".value", v.Value, 0, greatestRate}})
	if measured && (v.Per == NoMeasure || v.Per > PerPiece) {
		faults.Add(limit.UnknownValue, path+".per", "must say what the rate counts by")
	}
	if v.Source == "" {
		faults.Add(limit.Missing, path+".source", "is needed: a rate counts only with its source")
	}
}

// ValidateStack adds to faults everything about a stack that does not fit.
func ValidateStack(in *Stack, faults *limit.Faults) {
	if n := len(in.Rings); n == 0 || n > mostRings {
		faults.Add(limit.Number, "rings", fmt.Sprintf("must be 1 to %d", mostRings))
	}
	for i := range in.Rings {
		r := &in.Rings[i]
		path := fmt.Sprintf("rings[%d]", i)
		hold(faults, path, []bound{
			{".inner_diameter_mm", r.Inner, 1, greatestSize}, {".outer_diameter_mm", r.Outer, 1, greatestSize},
			{".height_mm", r.Height, 1, greatestSize}, {".count", float64(r.Count), 1, mostRings},
			{".mass_kg", r.Mass, 1e-3, greatestAmount}, {".fill_unit_weight_kn_m3", r.UnitWeight, 1e-9, greatestWeight},
		})
		loose(faults, path+".loose_factor", r.Loose)
		if r.Inner > r.Outer {
			faults.Add(limit.Geometry, path+".inner_diameter_mm", fmt.Sprintf("of %g mm is wider than the outer one of %g mm", r.Inner, r.Outer))
		}
		if r.Tyre && !r.Reused {
			faults.Add(limit.Conflict, path+".reused", "must be set: a worn tyre had a life before")
		}
	}
	validatePlate(faults, "shoe", &in.Shoe)
	validatePlate(faults, "bottom_plate", &in.Bottom)
	validateCourse(faults, "levelling", &in.Levelling)
	hold(faults, "", []bound{
		{"brackets_kg", in.Brackets, 0, greatestAmount},
		{"rods.count", float64(in.Rods.Count), 0, 1000}, {"rods.fittings_kg", in.Rods.Fittings, 0, greatestAmount},
		{"weld.length_mm", in.Weld.Length, 0, 1e7}, {"geotextile.laps", in.Geotextile.Laps, 0, 2},
		{"geotextile.size_x_mm", in.Geotextile.SizeX, 0, greatestSize}, {"geotextile.mass_kg_m2", in.Geotextile.Mass, 0, 100},
	})
	if in.Rods.Count > 0 {
		hold(faults, "rods", []bound{{".diameter_mm", in.Rods.Diameter, 1, 500}, {".length_mm", in.Rods.Length, 1, greatestSize}})
	}
	if in.Weld.Length > 0 {
		hold(faults, "weld", []bound{{".throat_mm", in.Weld.Throat, 0.1, 100}})
	}
	if in.Geotextile.SizeX > 0 {
		hold(faults, "geotextile", []bound{{".size_y_mm", in.Geotextile.SizeY, 1, greatestSize}, {".layers", float64(in.Geotextile.Layers), 1, mostRings}})
	}
	validateDig(faults, &in.Dig, in.Levelling.Thickness)
}

func validatePlate(faults *limit.Faults, path string, p *Plate) {
	hold(faults, path, []bound{{".thickness_mm", p.Thickness, 0, 1000}})
	if p.Thickness == 0 {
		return
	}
	hold(faults, path, []bound{{".size_x_mm", p.SizeX, 1, greatestSize}, {".size_y_mm", p.SizeY, 1, greatestSize}})
	if p.Round && p.SizeX != p.SizeY {
		faults.Add(limit.Conflict, path+".size_y_mm", "of a round plate is its diameter again")
	}
}

func validateCourse(faults *limit.Faults, path string, c *Course) {
	hold(faults, path, []bound{{".thickness_mm", c.Thickness, 0, greatestSize}})
	if c.Thickness == 0 {
		return
	}
	hold(faults, path, []bound{
		{".size_x_mm", c.SizeX, 1, greatestSize}, {".size_y_mm", c.SizeY, 1, greatestSize},
		{".unit_weight_kn_m3", c.UnitWeight, 1e-9, greatestWeight},
	})
	loose(faults, path+".loose_factor", c.Loose)
}

// loose holds the share of loose over compacted volume, 0 if it is not known.
func loose(faults *limit.Faults, field string, v float64) {
	if v != 0 && !within(v, 1, 3) {
		faults.Add(limit.OutOfRange, field, "must be from 1 to 3: loose volume over compacted")
	}
}

func validateDig(faults *limit.Faults, d *Dig, lowest float64) {
	hold(faults, "excavation", []bound{
		{".depth_mm", d.Depth, 0, greatestSize}, {".working_space_mm", d.Space, 0, greatestSize}, {".slope", d.Slope, 0, 10},
		{".unit_weight_kn_m3", d.UnitWeight, 0, greatestWeight},
	})
	loose(faults, "excavation.bulking_factor", d.Bulking)
	if d.Depth > 0 && d.Depth < lowest {
		faults.Add(limit.Geometry, "excavation.depth_mm", fmt.Sprintf("of %g mm is less than the lowest course of %g mm", d.Depth, lowest))
	}
}

// ValidatePad adds to faults everything about a pad that does not fit.
func ValidatePad(in *Pad, faults *limit.Faults) {
	hold(faults, "", []bound{
		{"pad.size_x_mm", in.SizeX, 1, greatestSize}, {"pad.size_y_mm", in.SizeY, 1, greatestSize}, {"pad.thickness_mm", in.Thickness, 1, greatestSize},
		{"pad.unit_weight_kn_m3", in.UnitWeight, 0, greatestWeight}, {"plinth.height_mm", in.Plinth.Height, 0, greatestSize},
		{"reinforcement.cover_mm", in.Cover, 0, 1000}, {"reinforcement.bend_mm", in.Bend, 0, greatestSize}, {"reinforcement.other_kg", in.Other, 0, greatestAmount},
		{"blinding.thickness_mm", in.Blinding, 0, greatestSize}, {"blinding.beyond_mm", in.Beyond, 0, greatestSize},
	})
	if in.Plinth.Height > 0 {
		hold(faults, "plinth", []bound{{".size_x_mm", in.Plinth.SizeX, 1, greatestSize}, {".size_y_mm", in.Plinth.SizeY, 1, greatestSize}})
	}
	for _, b := range [...]struct {
		field         string
		bars          Bars
		length, width float64
	}{{"reinforcement.x", in.X, in.SizeX, in.SizeY}, {"reinforcement.y", in.Y, in.SizeY, in.SizeX}} {
		hold(faults, b.field, []bound{{".diameter_mm", b.bars.Diameter, 0, 100}})
		if !(b.bars.Diameter > 0) {
			continue
		}
		hold(faults, b.field, []bound{{".spacing_mm", b.bars.Spacing, b.bars.Diameter, 5000}})
		if !(2*in.Cover+b.bars.Diameter < min(b.length, b.width)) {
			faults.Add(limit.Geometry, "reinforcement.cover_mm", fmt.Sprintf("of %g mm leaves no room for bars in the pad", in.Cover))
		}
	}
	if in.Against && in.Dig.Space > 0 {
		faults.Add(limit.Conflict, "excavation.working_space_mm", "leaves nothing to cast the pad against")
	}
	validateDig(faults, &in.Dig, in.Blinding)
}
