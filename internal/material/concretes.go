package material

import "slices"

// ConcreteRow is a row of the catalogue of concretes.
type ConcreteRow struct {
	Name     string
	Strength float64 // cylinder strength f_ck or f'c [MPa]
	Source   string
}

const (
	en1992 = "EN 1992-1-1:2004 Table 3.1"
	aci    = "specified compressive strength in its name"
)

var concretes = []ConcreteRow{
	{"C12/15", 12, en1992}, {"C16/20", 16, en1992}, {"C20/25", 20, en1992},
	{"C25/30", 25, en1992}, {"C30/37", 30, en1992}, {"C35/45", 35, en1992},
	{"C40/50", 40, en1992}, {"C45/55", 45, en1992}, {"C50/60", 50, en1992},
	{"f'c 2500 psi", 2500 * psi, aci}, {"f'c 3000 psi", 3000 * psi, aci},
	{"f'c 3500 psi", 3500 * psi, aci}, {"f'c 4000 psi", 4000 * psi, aci},
	{"f'c 5000 psi", 5000 * psi, aci}, {"f'c 6000 psi", 6000 * psi, aci},
	{"f'c 8000 psi", 8000 * psi, aci},
}

// Concretes returns the catalogue of concretes.
func Concretes() []ConcreteRow { return slices.Clone(concretes) }

// ConcreteByName finds a concrete.
func ConcreteByName(name string) (ConcreteRow, bool) {
	for i := range concretes {
		if concretes[i].Name == name {
			return concretes[i], true
		}
	}
	return ConcreteRow{}, false
}

// TimberRow is a row of the catalogue of timbers.
type TimberRow struct {
	Name   string
	Timber Timber
	US     bool // reference design values of the NDS, not characteristic values
	Source string
}

const (
	en338   = "EN 338:2016 Table 1 (not compared with the printed edition)"
	en14080 = "EN 14080:2013 Table 5 (not compared with the printed edition)"
	nds     = "NDS Supplement 2018 Table 4A, size factor not included (not compared with the printed edition)"
)

var timbers = []TimberRow{
	{"EN 338 C16", Timber{17, 2.2, SolidSoftwood}, false, en338},
	{"EN 338 C18", Timber{18, 2.2, SolidSoftwood}, false, en338},
	{"EN 338 C24", Timber{21, 2.5, SolidSoftwood}, false, en338},
	{"EN 338 C30", Timber{24, 2.7, SolidSoftwood}, false, en338},
	{"EN 14080 GL24h", Timber{24, 2.5, GluedLaminated}, false, en14080},
	{"EN 14080 GL24c", Timber{21.5, 2.5, GluedLaminated}, false, en14080},
	{"EN 14080 GL28h", Timber{28, 2.5, GluedLaminated}, false, en14080},
	{"EN 14080 GL30h", Timber{30, 2.5, GluedLaminated}, false, en14080},
	{"EN 14080 GL32h", Timber{32, 2.5, GluedLaminated}, false, en14080},
	{"NDS Douglas Fir-Larch No. 2", Timber{1350 * psi, 625 * psi, SolidSoftwood}, true, nds},
	{"NDS Douglas Fir-Larch No. 1", Timber{1500 * psi, 625 * psi, SolidSoftwood}, true, nds},
	{"NDS Hem-Fir No. 2", Timber{1300 * psi, 405 * psi, SolidSoftwood}, true, nds},
	{"NDS Spruce-Pine-Fir No. 1/No. 2", Timber{1150 * psi, 425 * psi, SolidSoftwood}, true, nds},
}

// Timbers returns the catalogue of timbers.
func Timbers() []TimberRow { return slices.Clone(timbers) }

// TimberByName finds a timber.
func TimberByName(name string) (TimberRow, bool) {
	for i := range timbers {
		if timbers[i].Name == name {
			return timbers[i], true
		}
	}
	return TimberRow{}, false
}
