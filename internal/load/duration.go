package load

import "footward.example/footward/internal/basis"

// Duration is the load duration class of EN 1995-1-1 Table 2.1, longest first.
type Duration uint8

// The durations. The zero value is not stated: by the kind of action.
const (
	Lifelong Duration = iota + 1
	LongTerm
	MediumTerm
	ShortTerm
	Instantaneous
)

// Lasting is how long a combination lasts, for timber: as long as that of its actions
// which is there for the shortest time.
type Lasting struct {
	Class        Duration // Eurocode
	LoadDuration float64  // C_D of NDS, ASD [-]
	TimeEffect   float64  // lambda of NDS, LRFD [-]
}

// storage is the category of imposed actions that stay for years.
const storage Category = 5

// class returns the duration class of an action. Where the table names two, snow, or
// none, roofs and temperature, it is the longer, medium-term.
//
// Source: EN 1995-1-1:2004+A1:2008 Table 2.2.
func (a *Action) class() Duration {
	if a.Duration != 0 {
		return a.Duration
	}
	switch a.Kind {
	case Permanent:
		return Lifelong
	case Imposed:
		if a.Category == storage {
			return LongTerm
		}
	case Wind:
		return ShortTerm
	case Accidental:
		return Instantaneous
	}
	return MediumTerm
}

// byClass are C_D of NDS 2018 Table 2.3.2 (permanent; ten years; two months; seven
// days; ten minutes) and lambda of Table N3 for an action that states its duration.
var byClass = [Instantaneous + 1]Lasting{
	Lifelong: {LoadDuration: 0.9, TimeEffect: 0.6}, LongTerm: {LoadDuration: 1, TimeEffect: 0.7},
	MediumTerm: {LoadDuration: 1.15, TimeEffect: 0.8}, ShortTerm: {LoadDuration: 1.25, TimeEffect: 0.8},
	Instantaneous: {LoadDuration: 1.6, TimeEffect: 1},
}

// Factors returns C_D and lambda of a stated duration.
//
// Source: NDS 2018 Tables 2.3.2, N3.
func (d Duration) Factors() Lasting {
	out := byClass[d]
	out.Class = d
	return out
}

// factors returns C_D and lambda of an action. Table 2.3.2 does not name rain: that of
// occupancy is taken.
//
// Source: NDS 2018 Tables 2.3.2, N3.
func (a *Action) factors() Lasting {
	if a.Duration != 0 {
		return byClass[a.Duration]
	}
	switch a.Kind {
	case Permanent:
		return byClass[Lifelong]
	case Imposed:
		if a.Category == storage {
			return byClass[LongTerm]
		}
	case ImposedRoof:
		return byClass[ShortTerm]
	case Snow:
		return byClass[MediumTerm]
	case Wind:
		return byClass[Instantaneous]
	}
	return Lasting{LoadDuration: 1, TimeEffect: 0.8}
}

// besideWind is lambda where wind only accompanies what lies on the roof.
const besideWind = 0.8

// lasting returns how long the combination lasts whose factors stand.
//
// Source: EN 1995-1-1:2004 3.1.3(2); NDS 2018 2.3.2.2, Table N3.
func (c *collector) lasting() (l Lasting) {
	for i, f := range c.factors {
		if f == 0 {
			continue
		}
		a := &c.in.Actions[i]
		if c.in.Basis == basis.Eurocode {
			l.Class = max(l.Class, a.class())
			continue
		}
		one := a.factors()
		if a.Kind == Wind && c.rule.number == "3b" {
			one.TimeEffect = min(one.TimeEffect, besideWind)
		}
		l.LoadDuration, l.TimeEffect = max(l.LoadDuration, one.LoadDuration), max(l.TimeEffect, one.TimeEffect)
	}
	return l
}
