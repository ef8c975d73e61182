package weld

import (
	"footward.example/footward/internal/basis"
	"footward.example/footward/internal/geom"
	"footward.example/footward/internal/material"
)

// Type is the kind of weld.
type Type uint8

// The kinds. The zero value is none of them.
const (
	Fillet Type = iota + 1
	PartialPenetration
	CompletePenetration
)

// Part is a part that the weld joins.
type Part struct {
	Thickness float64 // at the weld [mm]
	Steel     material.Steel
	AlongEdge bool // whether the fillet runs along an edge of the part
	// Corrosion is the thickness lost over the design life [mm], where the base
	// metal resists; sizes of welds go by the thickness as built.
	Corrosion float64
}

// Spec is what the weld is, apart from where it lies.
type Spec struct {
	Type      Type
	Leg       float64 // fillet leg [mm]; 0: not given
	Throat    float64 // effective throat [mm]; 0: not given
	Parts     [2]Part // the first is the plate, the second stands on it
	Filler    material.WeldMetal
	Corrosion float64 // throat lost over the design life [mm]
	FullSize  bool    // full size up to both ends
	// Whether each run or segment has the full thickness of the parts to
	// itself; otherwise two share it.
	OwnSection bool
}

// Run is one straight run, or several equal ones that share the force equally.
type Run struct {
	Length    float64 // of one run, end to end [mm]
	Count     int     // number of runs; 0 counts as 1
	Along     float64 // force along the axis, all runs [N]
	Across    float64 // across the axis, parallel to the plate, all runs [N]
	Normal    float64 // square to the plate, all runs [N]
	EndLoaded bool
}

// Method is how a group shares its actions.
type Method uint8

// The methods. The zero value counts as Elastic.
const (
	Elastic Method = iota + 1
	InstantaneousCentre
)

// Group is a group of straight segments of one weld in the x-y plane.
type Group struct {
	Segments []geom.Segment
	Actions  geom.Actions
	AtX      float64 // where the actions are applied [mm]
	AtY      float64 // [mm]
	AtZ      float64 // height above the plane of the weld [mm]
	Method   Method
	// EndLoaded says that the welds are those of a lap, loaded from their ends.
	EndLoaded bool
	// Continuous says that the segments are one closed line without ends.
	Continuous bool
}

// Input is a weld and its actions. With segments in Group it is a group, else
// a run.
type Input struct {
	Design basis.Design
	Weld   Spec
	Run    Run
	Group  Group
}
