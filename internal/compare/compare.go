package compare

import (
	"fmt"
	"slices"

	"footward.example/footward/internal/limit"
)

// Input is what is compared. The first footing is what the others are held against.
type Input struct {
	Footings []Footing
	Rates    Rates
}

// Figure is one rate times one quantity.
type Figure struct {
	Known   bool
	Value   float64 // amount times rate [-]; 0 unless Known
	Amount  float64 // quantity by Per [-]
	Rate    float64 // for each of Per [-]
	Per     Measure
	Source  string
	Default bool   // whether the rate stands in for one not given
	Reason  string // why it is not known
}

// Row is an item with what it costs.
type Row struct {
	Item       Item
	Name       string
	Cost       Figure // in the user's currency
	Hours      Figure // of labour
	Carbon     Figure // kg CO2e, A1 to A3
	Moved      bool   // whether it is carried to or from the site by the distance given
	HaulCost   Figure // in the user's currency
	HaulCarbon Figure // kg CO2e, A4
}

// Sum is a total, with the rows that it lacks.
type Sum struct {
	Value   float64  // of the rows that are known [-]
	Partial bool     // whether a row is missing
	Missing []string // the names of the rows that are missing
}

// Totals are those of one footing.
type Totals struct {
	Mass       Sum     // of materials brought to the site [kg]
	Volume     Sum     // of concrete, blinding, fill and levelling layer in place [m3]
	Dug        float64 // excavated, in place [m3]
	Cost       Sum     // in the user's currency, without transport
	Hours      Sum     // of labour
	Carbon     Sum     // kg CO2e, A1 to A3
	HaulCost   Sum     // in the user's currency
	HaulCarbon Sum     // kg CO2e, A4
}

// Answer is one footing with its rows and totals.
type Answer struct {
	Label  string
	Rows   []Row
	Totals Totals
}

// Contrast is one total of a footing against that of the first.
type Contrast struct {
	Known      bool
	Difference float64 // over that of the first [-]
	HasRatio   bool    // whether the first is not 0
	Ratio      float64 // to that of the first [-]
	Reason     string  // why it is not known
}

// Contrasts are those of one footing.
type Contrasts struct {
	Label, Against                                          string
	Mass, Volume, Cost, Hours, Carbon, HaulCost, HaulCarbon Contrast
}

// Result is a comparison.
type Result struct {
	in        *Input
	Answers   []Answer
	Contrasts []Contrasts // of the second footing on
}

// Compare counts and contrasts footings. Errors: limit.Faults.
func Compare(in *Input) (*Result, error) {
	var faults limit.Faults
	Validate(in, &faults)
	if len(faults) > 0 {
		return nil, faults
	}
	r := &Result{in: in}
	for i := range in.Footings {
		r.Answers = append(r.Answers, in.answer(&in.Footings[i]))
	}
	for i := range r.Answers[1:] {
		r.Contrasts = append(r.Contrasts, contrasts(&r.Answers[0], &r.Answers[i+1]))
	}
	return r, nil
}

// tonne is how many kg a tonne has.
const tonne = 1000.0

func (in *Input) answer(f *Footing) Answer {
	a := Answer{Label: f.Label, Rows: make([]Row, 0, len(f.Items))}
	t := &a.Totals
	for _, item := range f.Items {
		rate, byDefault := in.Rates.of(item.Kind)
		row := Row{Item: item, Name: item.name()}
		row.Cost, row.Hours, row.Carbon = figure(&item, rate.Cost), figure(&item, rate.Hours), figure(&item, rate.Carbon)
		row.Carbon.Default = byDefault
		if !item.Kind.material() && item.Kind != Formwork && !rate.Carbon.Given {
			row.Carbon.Reason = "work on site: no rate given, and not part of the product stage"
		}
		if item.Kind.material() {
			t.Mass.amount(row.Name, item.Mass)
		}
		if item.Kind.bulk() {
			t.Volume.amount(row.Name, item.Volume)
		}
		if item.Kind == Excavation {
			t.Dug += item.Volume
		}
		row.Moved = item.Kind.material() || item.Kind == Surplus
		if row.Moved {
			row.HaulCost = haul(&item, &rate, in.Rates.Haul.Cost)
			row.HaulCarbon = haul(&item, &rate, in.Rates.Haul.Carbon)
			t.HaulCost.add(row.Name, &row.HaulCost)
			t.HaulCarbon.add(row.Name, &row.HaulCarbon)
		}
		t.Cost.add(row.Name, &row.Cost)
		t.Hours.add(row.Name, &row.Hours)
		// The product stage is that of materials and formwork; work on site counts where
		// its carbon is given.
		if item.Kind.material() || item.Kind == Formwork || row.Carbon.Known {
			t.Carbon.add(row.Name, &row.Carbon)
		}
		a.Rows = append(a.Rows, row)
	}
	return a
}

// figure returns rate times quantity.
func figure(i *Item, v Value) Figure {
	if !v.Given {
		return Figure{Reason: "no rate given"}
	}
	f := Figure{Rate: v.Value, Per: v.Per, Source: v.Source, Amount: i.amount(v.Per)}
	if f.Amount == 0 {
		f.Reason = fmt.Sprintf("the rate is by %s, which is not known of this item", v.Per)
		return f
	}
	f.Known, f.Value = true, f.Amount*v.Value
	return f
}

// haul returns the rate of transport times mass and distance.
func haul(i *Item, r *Rate, v Value) Figure {
	switch distance := r.Distance; {
	case r.OnSite:
		return Figure{Known: true, Source: "found on the site, no transport"}
	case !v.Given:
		return Figure{Reason: "no rate of transport given"}
	case distance == 0:
		return Figure{Reason: "no distance given"}
	case i.Mass == 0:
		return Figure{Reason: "its mass is not known"}
	}
	f := Figure{Known: true, Rate: v.Value, Source: v.Source, Amount: i.Mass / tonne * r.Distance}
	f.Value = f.Amount * v.Value
	return f
}

// add adds a figure, or notes that it is missing.
func (s *Sum) add(name string, f *Figure) {
	if !f.Known {
		s.lack(name)
		return
	}
	s.Value += f.Value
}

// amount adds a quantity, or notes that it is missing.
func (s *Sum) amount(name string, v float64) {
	if v == 0 {
		s.lack(name)
	}
	s.Value += v
}

func (s *Sum) lack(name string) {
	s.Partial = true
	if !slices.Contains(s.Missing, name) {
		s.Missing = append(s.Missing, name)
	}
}

func contrasts(first, other *Answer) Contrasts {
	a, b := &first.Totals, &other.Totals
	return Contrasts{
		Label: other.Label, Against: first.Label,
		Mass: whole(&a.Mass, &b.Mass), Volume: whole(&a.Volume, &b.Volume),
		Cost: whole(&a.Cost, &b.Cost), Hours: whole(&a.Hours, &b.Hours), Carbon: whole(&a.Carbon, &b.Carbon),
		HaulCost: whole(&a.HaulCost, &b.HaulCost), HaulCarbon: whole(&a.HaulCarbon, &b.HaulCarbon),
	}
}

func contrast(first, other float64) Contrast {
	c := Contrast{Known: true, Difference: other - first}
	if first != 0 {
		c.HasRatio, c.Ratio = true, other/first
	}
	return c
}

// whole contrasts two totals if neither is partial.
func whole(first, other *Sum) Contrast {
	if first.Partial || other.Partial {
		return Contrast{Reason: "a total is partial: rates or quantities are missing"}
	}
	return contrast(first.Value, other.Value)
}
