package bearing

import (
	"footward.example/footward/internal/basis"
	"footward.example/footward/internal/geom"
	"footward.example/footward/internal/material"
)

// Medium is what the contact area stands on.
type Medium uint8

// The media. The zero value is none of them.
const (
	Concrete Medium = iota + 1
	Timber
	Given
)

// Input is a rectangular contact area on its support. N < 0 presses.
type Input struct {
	Design  basis.Design
	SizeX   float64 // contact along x [mm]
	SizeY   float64 // contact along y [mm]
	Actions geom.Actions
	Medium  Medium
	Block   Block         // for Concrete
	Timber  TimberBearing // for Timber
	Given   GivenPressure // for Given
}

// Block is a rectangular block of concrete with level top.
type Block struct {
	Concrete      material.Concrete
	SizeX         float64 // [mm]
	SizeY         float64 // [mm]
	Height        float64 // height over which the load can spread [mm]
	OffsetX       float64 // centre of the plate from the centre of the block [mm]
	OffsetY       float64 // [mm]
	GroutThick    float64 // thickness of the grout [mm]; 0: none
	GroutStrength float64 // characteristic strength of the grout [MPa]
}

// Grain is the direction of the pressure on timber.
type Grain uint8

// The directions.
const (
	AlongGrain Grain = iota + 1
	AcrossGrain
)

// ServiceClass is the moisture class of EN 1995-1-1 2.3.1.3, 1 to 3; 0: not
// stated.
type ServiceClass uint8

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

// AcrossSupport is how a member pressed across its grain is held below.
type AcrossSupport uint8

// The supports. The zero value is not stated.
const (
	Continuous AcrossSupport = iota + 1
	Discrete
)

// TimberBearing is timber under pressure.
type TimberBearing struct {
	Timber       material.Timber
	Direction    Grain
	ServiceClass ServiceClass
	Duration     Duration
	LoadDuration float64 // C_D, ASD [-]; 0: 0.9
	TimeEffect   float64 // lambda, LRFD [-]; 0: 0.6
	Support      AcrossSupport
	GrainAlongY  bool
	EndDistance  float64 // along the grain, to the nearer end [mm]
	HasNeighbour bool    // whether another contact stands along the grain
	ClearSpacing float64 // to that contact [mm]
	Depth        float64 // depth of the member along the pressure [mm]; 0: not known
}

// GivenPressure is a pressure that the designer answers for.
type GivenPressure struct {
	Pressure float64 // design (Eurocode, LRFD) or allowable (ASD) [MPa]
	Granular bool    // whether the medium is granular fill
	Source   string
	// Found says that the pressure was found from what stands below, not given by
	// the designer.
	Found bool
}

// from says where the pressure comes from.
func (g *GivenPressure) from() string {
	if g.Found {
		return "found: " + g.Source
	}
	return "given in the request: " + g.Source
}
