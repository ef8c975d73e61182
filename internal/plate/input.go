package plate

import (
	"footward.example/footward/internal/basis"
	"footward.example/footward/internal/geom"
	"footward.example/footward/internal/material"
	"footward.example/footward/internal/section"
)

// Shape is the shape of a footprint.
type Shape uint8

// The shapes. The zero value is none of them.
const (
	ISection  Shape = iota + 1 // web along y, flanges along x
	Tube                       // rectangular hollow section or welded box
	Pipe                       // round hollow section
	Rectangle                  // solid
	TwoPlates                  // two plates along y, mirror-wise about x = 0
)

// Footprint is what stands on the plate, centred.
type Footprint struct {
	Shape Shape
	// Outside sizes [mm]: ISection width and depth, Tube and Rectangle sizes,
	// Pipe diameter in both, TwoPlates overall width (gap and both plates) and
	// length.
	SizeX float64
	SizeY float64
	// Flange (ISection), wall (Tube, Pipe) or plate (TwoPlates) thickness [mm].
	Thick float64
	Web   float64 // web thickness (ISection) [mm]
	Stiff bool    // whether the plate stays flat under the footprint
	// Whether Stiff was stated at all.
	StiffStated bool
	// Steel of the section, where it is known.
	Steel      material.Steel
	SteelKnown bool
}

// Bearing is the bearing pressure that the support offers the plate.
type Bearing struct {
	// Available pressure over the whole plate [MPa]: f_jd (Eurocode),
	// phi_c f_p (LRFD), f_p / Omega_c (ASD), or a given design pressure.
	Pressure float64
	Clause   string
	// Thickness of the grout under the plate [mm], for the stretch length.
	GroutThick float64
}

// Rods are the rods that hold the plate down.
type Rods struct {
	At         []geom.Point
	Resistance float64 // design or available tension of one rod [N]
	Diameter   float64 // nominal [mm]
	StressArea float64 // [mm2]
	Washer     float64 // washer thickness [mm]
	Stretch    float64 // stretch length L_b [mm]; 0: as an anchor cast in concrete
	Hole       float64 // diameter of the holes [mm]; 0: none are taken off a section
}

// Shared is how a base was found to share its actions between support and rods,
// where that is known. The plate is then held for what it says where that is more
// than its own method finds.
type Shared struct {
	Known    bool
	Elastic  bool      // whether the bed is elastic, so that it presses by its modulus
	Peak     float64   // greatest pressure [MPa]
	Tensions []float64 // of each rod [N]
	// What presses, on an elastic bed: its zone and its pressure.
	Pressure section.Pressure
}

// weldLeft returns the throat that corrosion leaves [mm].
func (in *Input) weldLeft() float64 { return max(0, in.WeldThroat-in.WeldLost) }

// Input is a base plate between footprint and support.
type Input struct {
	Design     basis.Design
	Plate      geom.Plate
	Footprint  Footprint
	Actions    geom.Actions
	Bearing    Bearing
	Rods       Rods    // no positions: no rods
	WeldThroat float64 // of the fillet round the footprint as made [mm]; 0: none
	WeldLost   float64 // of it, lost to corrosion over the design life [mm]
	Shared     Shared
}
