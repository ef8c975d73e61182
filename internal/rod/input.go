package rod

import (
	"footward.example/footward/internal/basis"
	"footward.example/footward/internal/geom"
	"footward.example/footward/internal/material"
)

// MaxRods is the most rods in one group.
const MaxRods = 64

// Making is how the threads were made.
type Making uint8

// The ways. The zero value, not known, counts as CutOnSite.
const (
	Standard Making = iota + 1
	CutOnSite
)

// Rod is a threaded rod.
type Rod struct {
	Thread       material.Thread
	Steel        material.RodSteel
	Making       Making
	ShankInPlane bool    // whether the plain shank stands in the shear plane
	Countersunk  bool    // whether the head is countersunk
	NutWidth     float64 // mean width of nut or head d_m [mm]; 0: not given
	Corrosion    float64 // diameter lost over the design life [mm]
}

// Holes are the holes of the plate.
type Holes struct {
	Diameter        float64 // d_0 [mm]
	Tolerance       float64 // of a rod's place, in any direction [mm]
	WeldedWashers   bool
	WasherThickness float64 // [mm]; 0: none
	WasherSide      float64 // side of a square plate washer [mm]; 0: none
	WasherFy        float64 // yield strength of the washer [MPa]; 0: as the plate
	// Whether the plate keeps the rods' upper ends from turning where they bend
	// below welded washers or in grout.
	HoldsRotation bool
}

// Force is the action on one rod.
type Force struct {
	Tension float64 // [N]
	ShearX  float64 // [N]
	ShearY  float64 // [N]
}

// StandOff is a gap under the plate that the rods bridge.
type StandOff struct {
	Gap                float64 // clear gap [mm]; 0: none
	ClampedAtSurface   bool
	PlateHoldsRotation bool
}

// Friction counts friction under the plate towards the shear of the base.
type Friction struct {
	Counted     bool
	Compression float64 // certain to act with the shear, a magnitude [N]
	Coefficient float64 // US bases [-]; Eurocode takes basis.Factors.CFd
	Assumed     bool    // whether the coefficient was not given
	Strength    float64 // of the concrete or grout under the plate, US bases [MPa]; 0: not given
}

// Input is a group of rods through a plate. Each, when not empty, gives the
// force of every rod; otherwise Actions are shared by the elastic method.
type Input struct {
	Design   basis.Design
	Plate    geom.Plate
	Rod      Rod
	At       []geom.Point
	Holes    Holes
	Actions  geom.Actions
	Each     []Force
	StandOff StandOff
	Friction Friction
	Anchored bool // whether what holds the rods below is checked beside them
}
