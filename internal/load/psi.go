package load

// Psi factors of EN 1990:2002+A1:2005 Table A1.1, by category A to G.
var imposed = [...]Psi{
	1: {0.7, 0.5, 0.3}, // A, dwellings
	2: {0.7, 0.5, 0.3}, // B, offices
	3: {0.7, 0.7, 0.6}, // C, where people gather
	4: {0.7, 0.7, 0.6}, // D, shops
	5: {1.0, 0.9, 0.8}, // E, storage
	6: {0.7, 0.7, 0.6}, // F, vehicles up to 30 kN
	7: {0.7, 0.5, 0.3}, // G, vehicles over 30 kN up to 160 kN
}

var (
	snowLow  = Psi{0.5, 0.2, 0}
	snowHigh = Psi{0.7, 0.5, 0.2} // above 1000 m, and the Nordic countries
	wind     = Psi{0.6, 0.2, 0}
	warmth   = Psi{0.6, 0.5, 0}
)

// psi returns the factors of a variable action.
//
// Source: EN 1990:2002+A1:2005 Table A1.1.
func (a *Action) psi() Psi {
	if a.OwnPsi {
		return a.Psi
	}
	switch a.Kind {
	case Imposed:
		return imposed[a.Category]
	case Snow:
		if a.Site == Low {
			return snowLow
		}
		return snowHigh
	case Wind:
		return wind
	case Temperature:
		return warmth
	}
	return Psi{} // category H, roofs
}
