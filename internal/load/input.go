package load

import (
	"slices"

	"footward.example/footward/internal/basis"
	"footward.example/footward/internal/geom"
)

// Kind is what an action is.
type Kind uint8

// The kinds. The zero value is none of them.
const (
	Permanent Kind = iota + 1
	Imposed
	ImposedRoof
	Snow
	Wind
	Rain
	Temperature
	Accidental
)

// Category is the category of an imposed action, A to G; 0: not stated.
type Category uint8

// Site is where snow lies. The zero value counts as High.
type Site uint8

// The sites.
const (
	Low Site = iota + 1
	High
	Nordic
)

// Psi are the factors of a variable action.
type Psi struct {
	Combination    float64 // psi_0 [-]
	Frequent       float64 // psi_1 [-]
	QuasiPermanent float64 // psi_2 [-]
}

// Action is one action at the foot.
type Action struct {
	Name     string
	Kind     Kind
	Category Category
	Site     Site
	OwnPsi   bool // whether Psi is given
	Psi      Psi
	First    int    // first stage, counted from 1; 0: the first
	Last     int    // last stage; 0: it stays
	Group    string // of alternatives that never act together; empty: none
	Part     string // whole of which it is a part; empty: of what is of its kind
	Duration Duration
	Forces   geom.Actions
}

// Situation is what a combination is for.
type Situation uint8

// The situations. The zero value is none of them.
const (
	Strength Situation = iota + 1
	StrengthAB
	Ground
	Equilibrium
	AccidentalCase
	Characteristic
	Frequent
	QuasiPermanent
)

// Factors are the partial factors of EN 1990 Table A1.2.
type Factors struct {
	GSup  float64 // gamma_G,sup, set B [-]
	GInf  float64 // gamma_G,inf, sets B and C [-]
	Q     float64 // gamma_Q, sets A and B [-]
	Xi    float64 // xi of (6.10b) [-]
	GSupA float64 // gamma_G,sup, set A [-]
	GInfA float64 // gamma_G,inf, set A [-]
	QC    float64 // gamma_Q, set C [-]
	// Whether the leading variable action of an accidental combination has its
	// frequent value.
	AccidentalFrequent bool
}

// Recommended returns the recommended factors.
//
// Source: EN 1990:2002+A1:2005 Table A1.2(A) to (C).
func Recommended() Factors {
	return Factors{GSup: 1.35, GInf: 1, Q: 1.5, Xi: 0.85, GSupA: 1.1, GInfA: 0.9, QC: 1.3}
}

// Input are the actions on a foot through its stages.
type Input struct {
	Basis      basis.Basis
	Factors    Factors // Eurocode
	Stages     []string
	Actions    []Action
	Situations []Situation // none: Usual
	// Stop is asked now and then; an error ends the work. nil: never.
	Stop func() error
}

// Usual returns the situations that are combined unless others are asked for: the
// accidental one where an accidental action is given.
func (in *Input) Usual() []Situation {
	if in.Basis != basis.Eurocode {
		return []Situation{Strength}
	}
	usual := []Situation{Strength, Equilibrium}
	if in.Accidental() {
		usual = append(usual, AccidentalCase)
	}
	return append(usual, Characteristic, Frequent, QuasiPermanent)
}

// Accidental reports whether an accidental action is given.
func (in *Input) Accidental() bool {
	return slices.ContainsFunc(in.Actions, func(a Action) bool { return a.Kind == Accidental })
}
