package record

// Phase is what a stage of load belongs to.
type Phase uint8

// The phases.
const (
	First Phase = iota + 1
	Seating
	Unloading
	Reloading
)

// Reading is one reading within a stage.
type Reading struct {
	Minutes float64   // from the start of the stage [min]
	Load    float64   // at the reading [N]; 0: that of the stage
	Gauges  []float64 // settlements, gauges at equal angles [mm]
}

// Stage is one stage of load.
type Stage struct {
	Phase    Phase
	Load     float64 // [N]
	Readings []Reading
}

// Clamp is fill held between plates by tightened rods.
type Clamp struct {
	Asked     bool
	Fill      float64 // stiffness k_f of the fill [N/mm]
	Rods      float64 // stiffness k_r of all rods [N/mm]
	Preload   float64 // F_0 of all rods [N]
	Embedment float64 // of the fill under the plate since tightening [mm]
}

// Force is one reading of the preload.
type Force struct {
	Minutes float64 // since tightening [min]
	Force   float64 // of all rods [N]
}

// Footing is what the subgrade reaction is carried over to.
type Footing struct {
	Width float64 // B [mm]; 0: not asked
	Clay  bool
}

// Input is the record of one test.
type Input struct {
	Diameter      float64 // of a round plate [mm]; 0: rectangular
	SizeX, SizeY  float64 // of a rectangular plate [mm]
	GaugeRadius   float64 // of the circle of gauges [mm]; 0: no tilt asked
	Stages        []Stage
	Plunged       bool    // the last stage could not be held
	Damaged       int     // stage at which damage was seen, counted from 1; 0: none
	Damage        string  // what was seen
	Poisson       float64 // [-]
	SubgradeAt    float64 // settlement at which k_s is read [mm]
	Footing       Footing
	Years         float64 // design life [years]; 0: not asked
	Clay          bool    // of the ground below: creep is then a lower bound
	Clamp         Clamp
	PreloadRecord []Force
}
