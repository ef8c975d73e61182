package compare

// Kind is what an item is, which its rate goes by.
type Kind uint8

// The kinds. The zero value is none of them.
const (
	NoKind Kind = iota
	SteelPlate
	SteelRod
	WeldMetal
	Reinforcement
	Concrete
	Blinding
	Fill // granular, compacted
	Levelling
	NewRing
	ReusedRing
	Geotextile
	Formwork
	Excavation
	Backfill // soil of the excavation, put back
	Surplus  // soil of the excavation that is left over
	kinds    // how many there are
)

// names are how rows without a name are called.
var names = [kinds]string{
	SteelPlate: "steel plate", SteelRod: "steel rods", WeldMetal: "weld metal", Reinforcement: "reinforcement",
	Concrete: "concrete", Blinding: "blinding", Fill: "granular fill", Levelling: "levelling layer",
	NewRing: "rings", ReusedRing: "reused rings", Geotextile: "geotextile", Formwork: "formwork",
	Excavation: "excavation", Backfill: "backfill", Surplus: "surplus soil",
}

// String returns the kind in words.
func (k Kind) String() string {
	if k >= kinds {
		return ""
	}
	return names[k]
}

// material reports whether an item is a material brought to the site, and not work
// or soil that is there.
func (k Kind) material() bool { return k >= SteelPlate && k <= Geotextile }

// bulk reports whether an item is counted by its volume in place.
func (k Kind) bulk() bool { return k == Concrete || k == Blinding || k == Fill || k == Levelling }

// Item is a quantity of one kind.
type Item struct {
	Kind   Kind
	Name   string  // empty: that of the kind
	Mass   float64 // [kg]; 0: not counted by mass
	Volume float64 // in place, compacted [m3]; 0: not counted by volume
	Loose  float64 // as delivered or dug, loose [m3]; 0: not known
	Area   float64 // [m2]; 0: not counted by area
	Count  int     // pieces; 0: not counted by pieces
	Tyre   bool    // rings that are worn tyres
}

// Footing is one of the footings that are compared.
type Footing struct {
	Label string
	Items []Item
}

// Measure is what a rate counts by.
type Measure uint8

// The measures. The zero value is none of them.
const (
	NoMeasure Measure = iota
	PerKg
	PerM3      // in place
	PerLooseM3 // as delivered or dug
	PerM2
	PerPiece
)

// String returns the measure in words.
func (m Measure) String() string {
	return [...]string{"", "kg", "m3 in place", "m3 loose", "m2", "piece"}[min(m, PerPiece)]
}

// amount returns the quantity of an item by a measure.
func (i *Item) amount(m Measure) float64 {
	switch m {
	case PerKg:
		return i.Mass
	case PerM3:
		return i.Volume
	case PerLooseM3:
		return i.Loose
	case PerM2:
		return i.Area
	case PerPiece:
		return float64(i.Count)
	}
	return 0
}

// name returns how the row is called.
func (i *Item) name() string {
	if i.Name != "" {
		return i.Name
	}
	return i.Kind.String()
}
