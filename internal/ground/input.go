package ground

import (
	"footward.example/footward/internal/basis"
	"footward.example/footward/internal/geom"
)

// Shape is the plan of a footing.
type Shape uint8

// The shapes. The zero value is none of them.
const (
	NoShape Shape = iota
	Rectangle
	Circle
)

// Author is whose set of bearing factors is used.
type Author uint8

// The authors. The zero value is none of them; Annex is EN 1997-1 Annex D,
// which the Eurocode takes by itself.
const (
	NoAuthor Author = iota
	Terzaghi
	Meyerhof
	Hansen
	Vesic
	Annex
)

// Approach is a design approach of EN 1997-1.
type Approach uint8

// The approaches. The zero value is none of them.
const (
	NoApproach Approach = iota
	DA1Part1            // A1 + M1 + R1
	DA1Part2            // A2 + M2 + R1
	DA2                 // A1 + M1 + R2, eccentricity and inclination of characteristic actions
	DA3                 // A1 + M2 + R3
)

// Soil is the ground that the base stands on.
type Soil struct {
	Friction  float64 // drained angle of friction, characteristic [rad]; 0: no drained strength is known
	Cohesion  float64 // drained cohesion, characteristic [MPa]
	Critical  float64 // angle of friction at constant volume, for sliding [rad]; 0: Friction, at most 30 degrees
	Undrained float64 // undrained shear strength, characteristic [MPa]; 0: not known
	Above     float64 // unit weight above the base, the least that stays there [N/mm3]
	Below     float64 // unit weight below the base, wet [N/mm3]
	Water     float64 // highest water, depth below the surface [mm]
	Dry       bool    // no water within reach; Water is not read
}

// Interface is the contact between base and ground.
type Interface struct {
	Share  float64 // friction angle of the base over that of the soil [-]: 1 cast or fill, 2/3 smooth steel
	Sealed bool    // neither water nor air can get between base and undrained clay
}

// Layer is a strong granular layer over clay. The footing stands on the layer,
// whose strength and weight are those of Soil.
type Layer struct {
	Thickness float64 // below the base [mm]; 0: no layer
	Clay      float64 // undrained strength of the clay below, characteristic [MPa]
	Punching  float64 // coefficient K_s of punching shear, for design strengths [-]
}

// Presumptive is an allowable pressure without data of the ground.
type Presumptive struct {
	Pressure float64 // allowable under unfactored loads [MPa]; 0: none
	Source   string
}

// Partials are partial factors on actions where the combinations have their own,
// Eurocode; 0: those of the basis.
type Partials struct {
	GSup float64 // permanent, unfavourable, A1 [-]
	GInf float64 // permanent, favourable, A1 and A2 [-]
	Q    float64 // variable, A1, and destabilising [-]
	QC   float64 // variable, A2 [-]
	GDst float64 // permanent, destabilising [-]
	GStb float64 // permanent, stabilising [-]
	QDst float64 // variable, destabilising [-]; 0: Q if that is given
}

// Input is a footing with its actions and its ground.
type Input struct {
	Design    basis.Design
	Shape     Shape
	SizeX     float64      // of a rectangle [mm]
	SizeY     float64      // of a rectangle [mm]
	Diameter  float64      // of a circle [mm]
	Depth     float64      // of the base below the lowest surface beside it [mm]
	Height    float64      // of the foot of the column, where the actions act, above the base [mm]
	Permanent geom.Actions // Eurocode: characteristic; else both together are those of one combination
	Variable  geom.Actions
	// Linked says that the variable actions act all at once or not at all. Else
	// each check also takes them without their pressing force.
	Linked bool
	// Lift is what of the permanent force lifts by a source of its own, of which
	// Permanent.N is the rest after what presses; 0: Permanent.N if it lifts [N].
	Lift float64
	// Apart says that permanent forces along the base and moments are of other
	// sources than the weight. Eurocode.
	Apart bool
	// Weight of footing, stack and soil above it, characteristic; for the United
	// States bases with the factor of the combination in it [N].
	Weight float64
	// Bed is the part of Weight that hangs on nothing, a loose layer below the
	// footing: it presses on the ground and holds nothing [N].
	Bed         float64
	Soil        Soil
	Interface   Interface
	Layer       Layer
	Presumptive Presumptive
	Partials    Partials
	Approaches  []Approach // Eurocode; empty: all
	Author      Author     // United States bases
	Safety      float64    // factor of safety of bearing, ASD [-]; 0: 3
	Resistance  float64    // resistance factor phi_b of bearing, LRFD [-]; required there
	Stability   float64    // factor of safety of sliding, overturning and uplift, United States bases [-]; 0: 1.5
	Slip        float64    // resistance factor of sliding, LRFD [-]; 0: 1/Stability
}

// Values without a place in a national annex.
const (
	bearingFS    = 3.0 // common practice, no standard
	stabilityFS  = 1.5 // common practice, no standard
	mostCritical = 30  // degrees; common practice for phi_cv not known, no source
	nu0          = 0.4 // of V_d, 6.5.3(12)
	leastLayer   = 0.25
)

// width returns the lesser side or the diameter.
func (in *Input) width() float64 {
	if in.Shape == Circle {
		return in.Diameter
	}
	return min(in.SizeX, in.SizeY)
}
