package anchor

import (
	"footward.example/footward/internal/basis"
	"footward.example/footward/internal/geom"
	"footward.example/footward/internal/material"
)

// Force is what one rod carries.
type Force struct {
	Tension float64 // [N]
	ShearX  float64 // [N]
	ShearY  float64 // [N]
}

// Head is what holds a rod at its lower end: a size, or the area that bears.
type Head struct {
	Diameter  float64 // of a round head, or of the circle inside a nut or plate [mm]
	Thickness float64 // [mm]
	Area      float64 // bearing area without the rod's own [mm2]; 0: by the size
}

// Block is the concrete in which the rods stand.
type Block struct {
	Concrete material.Concrete
	SizeX    float64 // [mm]
	SizeY    float64 // [mm]
	Height   float64 // [mm]
	OffsetX  float64 // centre of the plate from that of the block [mm]
	OffsetY  float64 // [mm]
}

// Input is a group of headed rods in a block.
type Input struct {
	Design      basis.Design
	Thread      material.Thread
	Steel       material.RodSteel
	Corrosion   float64 // diameter lost over the design life [mm]
	At          []geom.Point
	Each        []Force // of every rod; empty with ShareReason
	ShareReason string  // why the forces of the rods are not known
	Embedment   float64 // h_ef [mm]
	Head        Head
	Block       Block
	Uncracked   bool    // whether the concrete is shown to stay uncracked
	PryFactor   float64 // k_8 of the Eurocode [-]; 0: 1
	LightFactor float64 // lambda of light-weight concrete, US [-]; 0: 1
	Brittle     bool    // whether the steel breaks at small strain
	Under       Under
}

// Under is what lies between the concrete and where the plate bears on a rod.
type Under struct {
	GroutThick    float64 // [mm]; 0: none
	GroutStrength float64 // [MPa]
	Gap           float64 // clear gap that the rods bridge [mm]; 0: none
	Clamped       bool    // whether a nut clamps the rods at the surface
	Plate         float64 // thickness of the plate as built [mm]
	Washer        float64 // thickness of welded washers that alone bear on the rods [mm]; 0: the plate bears
	Loose         bool    // whether nothing bears on the rods in the holes
	HoldsRotation bool    // whether the plate keeps the rods' upper ends from turning
	Level         bool    // whether neither tension nor a moment acts on the plate
}
