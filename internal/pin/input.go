package pin

import (
	"footward.example/footward/internal/basis"
	"footward.example/footward/internal/material"
)

// Duration is the load duration class of EN 1995-1-1 Table 2.1.
type Duration uint8

// The durations, longest first. The zero value, not stated, counts as
// Permanent.
const (
	NotStated Duration = iota
	Permanent
	LongTerm
	MediumTerm
	ShortTerm
	Instantaneous
)

// Kind is what the pins are.
type Kind uint8

// The kinds. The zero value is none of them.
const (
	Bolt  Kind = iota + 1 // in a hole with clearance
	Dowel                 // a plain bar in a tight hole of the timber
)

// Arrangement is where the steel is.
type Arrangement uint8

// The arrangements. The zero value is none of them.
const (
	Outside Arrangement = iota + 1 // two plates, the timber between them
	Inside                         // one plate in a slot of the timber
	Both                           // two outside and one inside: out of scope
)

// Most pins in a row, and most rows.
const (
	MaxInRow = 32
	MaxRows  = 16
)

// Timber is the column's end. Strengths are characteristic values by Eurocode,
// and reference design values by NDS, size factor included.
type Timber struct {
	Kind         material.TimberKind
	Density      float64 // characteristic density rho_k, Eurocode [kg/m3]
	Gravity      float64 // specific gravity G, US [-]
	AlongPin     float64 // size of the column along the pins [mm]
	AcrossPin    float64 // size of the column across the pins, h [mm]
	Shear        float64 // f_v,k or F_v [MPa]
	Tension      float64 // along the grain, f_t,0,k or F_t [MPa]
	Compression  float64 // along the grain, f_c,0,k or F_c [MPa]
	Across       float64 // compression across the grain, f_c,90,k; for the rope effect [MPa]
	Modulus      float64 // mean modulus along the grain, US, for C_g [MPa]; 0: not given
	ServiceClass int     // 1 to 3; 0: not stated, US only, counts as wet
	Duration     Duration
	Kmod         float64 // Eurocode [-]; 0: by class and duration
	LoadDuration float64 // C_D, ASD [-]; 0: 0.9
	TimeEffect   float64 // lambda, LRFD [-]; 0: 0.6
	WetFactor    float64 // C_M of connections, US [-]; 0: by service class
}

// Pin is one pin; all are alike.
type Pin struct {
	Kind     Kind
	Diameter float64 // d [mm]
	Fu       float64 // tensile strength [MPa]
	Fy       float64 // yield strength [MPa]
	Fyb      float64 // bending yield strength, US [MPa]
	Nuts     bool    // whether a bolt has nuts and washers that hold it along its axis
	Washer   float64 // diameter of washers on timber, for a plate inside [mm]; 0: none
}

// Plates are the plates of the shoe at the pins.
type Plates struct {
	Arrangement Arrangement
	Thickness   float64 // of one plate, as built [mm]
	Corrosion   float64 // thickness lost over the design life [mm]
	Steel       material.Steel
	Hole        float64 // diameter of the holes d_0 [mm]
	Width       float64 // of a plate across the column [mm]
	EndDistance float64 // last pin to the free end of the plate, along the column [mm]
	Arm         float64 // middle of the pins above the foot of the plates [mm]
	Gap         float64 // clear gap between plate and timber, on each side [mm]
	Embedment   float64 // dowel bearing strength of the steel F_e, US [MPa]; 0: 1.5 F_u
	// Held says that the column's foot cannot go sideways along the pins.
	Held bool
	// Eccentricity is how far the line of the actions is from the middle between
	// two plates, along the pins, either way [mm].
	Eccentricity float64
}

// Layout is how the pins stand: rows run along the column.
type Layout struct {
	Rows          int
	InRow         int     // pins in a row
	SpacingAlong  float64 // a_1, along the grain [mm]
	SpacingAcross float64 // a_2, across the grain [mm]
	EndDistance   float64 // a_3, nearest pin to the end of the column [mm]
	EdgeDistance  float64 // a_4, nearest pin to the nearer edge [mm]
	GroupFactor   float64 // C_g, US [-]; 0: computed
}

// Actions act on the joint at the middle of the pins; design values.
type Actions struct {
	N float64 // along the column, tension positive [N]
	V float64 // across the column in the plane of the plates [N]
	M float64 // about the axis of the pins [Nmm]
}

// Input is a pinned column foot.
type Input struct {
	Design  basis.Design
	Timber  Timber
	Pin     Pin
	Plates  Plates
	Layout  Layout
	Actions Actions
	// GammaConnection is gamma_M of connections, Eurocode [-]; 0: 1.30.
	GammaConnection float64
	// EndBears says that the column's end stands on a plate.
	EndBears bool
	// Welded says that the weld of the plates is checked beside the pins.
	Welded bool
}
