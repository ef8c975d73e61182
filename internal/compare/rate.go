package compare

// Value is a rate with its source.
type Value struct {
	Given  bool
	Per    Measure
	Value  float64 // in the unit of its rate over Per [-]
	Source string  // where it comes from
}

// Rate is what a kind of item costs in money, labour and carbon.
type Rate struct {
	Kind   Kind
	Cost   Value // in the user's currency
	Hours  Value // of labour
	Carbon Value // kg CO2e, product stage A1 to A3
	// Distance to the site, of surplus soil from it [km]; 0: not given.
	Distance float64
	OnSite   bool // whether it is found there, or stays, without transport
}

// Haul is what transport costs, for each tonne and kilometre.
type Haul struct {
	Cost   Value // in the user's currency; Per is not read
	Carbon Value // kg CO2e, stage A4; Per is not read
}

// Rates are all rates of a comparison.
type Rates struct {
	Each []Rate
	Haul Haul
	// Strong says that the concrete is stronger than that of the default, whose carbon
	// then does not stand in.
	Strong bool
	// NoDefaults says that nothing stands in for a rate of carbon not given.
	NoDefaults bool
}

const (
	ice    = "Inventory of Carbon and Energy (University of Bath), version 2.0 of 2011, cradle to gate, not compared with the printed edition: "
	reused = "cut-off rule of EN 15804: what a thing cost before stays with its first life (not compared with the printed edition); sorting and cleaning not counted"
)

// defaults are rates of embodied carbon of the product stage. Blinding, weld metal,
// new rings, geotextile and formwork have none: their makes differ too much, or no
// value is known by heart.
var defaults = []Rate{
	{Kind: SteelPlate, Carbon: Value{true, PerKg, 1.66, ice + "steel plate, average recycled content"}},
	{Kind: SteelRod, Carbon: Value{true, PerKg, 1.40, ice + "steel bar and rod, average recycled content"}},
	{Kind: Reinforcement, Carbon: Value{true, PerKg, 1.40, ice + "steel bar and rod, average recycled content"}},
	{Kind: Concrete, Carbon: Value{true, PerKg, 0.113, ice + "concrete 25/30 MPa, average cement of the United Kingdom"}},
	{Kind: Fill, Carbon: Value{true, PerKg, 0.0052, ice + "aggregate, general"}},
	{Kind: Levelling, Carbon: Value{true, PerKg, 0.0052, ice + "aggregate, general"}},
	{Kind: ReusedRing, Carbon: Value{true, PerPiece, 0, reused}},
}

// Defaults returns the rates that stand in for those not given, each with its source.
func Defaults() []Rate { return append([]Rate(nil), defaults...) }

// standsIn returns the default carbon of a kind.
func standsIn(k Kind) Value {
	for i := range defaults {
		if defaults[i].Kind == k {
			return defaults[i].Carbon
		}
	}
	return Value{}
}

// of returns the rate of a kind, with the default of carbon where none is given.
func (r *Rates) of(k Kind) (rate Rate, byDefault bool) {
	rate.Kind = k
	for i := range r.Each {
		if r.Each[i].Kind == k {
			rate = r.Each[i]
		}
	}
	if !rate.Carbon.Given && !r.NoDefaults && !(k == Concrete && r.Strong) {
		rate.Carbon = standsIn(k)
		byDefault = rate.Carbon.Given
	}
	return rate, byDefault
}
