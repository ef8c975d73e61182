package material

import "slices"

// Weight is a row of the catalogue of unit weights.
type Weight struct {
	Name   string
	Least  float64 // least mean unit weight [kN/m3]
	Most   float64 // greatest; equal to Least where the source has one value [kN/m3]
	Source string
}

const (
	tableA1 = "EN 1991-1-1:2002 Table A.1 (not compared with the printed edition)"
	tableA3 = "EN 1991-1-1:2002 Table A.3 (not compared with the printed edition)"
	tableA4 = "EN 1991-1-1:2002 Table A.4 (not compared with the printed edition)"
	tableA6 = "EN 1991-1-1:2002 Table A.6 (not compared with the printed edition)"
	tableA7 = "EN 1991-1-1:2002 Table A.7 (not compared with the printed edition)"
	tableAW = "EN 1991-1-1:2002 Annex A, liquids (not compared with the printed edition)"
)

// WaterWeight is the unit weight of ground water that the checks take [N/mm3].
const WaterWeight = 9.81e-6

// weights are nominal unit weights. Growing media are not among them: no standard
// gives them, and they weigh far more wet than dry, so the supplier's values are
// needed for both states.
var weights = []Weight{
	{"concrete, normal weight", 24, 24, tableA1},
	{"concrete, normal weight, reinforced", 25, 25, tableA1},
	{"timber C24", 4.2, 4.2, tableA3},
	{"timber C30", 4.6, 4.6, tableA3},
	{"glued laminated timber GL24h", 3.7, 3.7, tableA3},
	{"glued laminated timber GL28h", 4.1, 4.1, tableA3},
	{"steel", 77, 78.5, tableA4},
	{"aluminium", 27, 27, tableA4},
	{"ballast or gravel, loose", 15, 16, tableA6},
	{"hardcore", 18.5, 19.5, tableA6},
	{"puddle clay", 18.5, 19.5, tableA6},
	{"gravel and sand, bulk", 15, 20, tableA7},
	{"sand", 14, 19, tableA7},
	{"water, fresh", 10, 10, tableAW},
}

// Weights returns the catalogue of unit weights.
func Weights() []Weight { return slices.Clone(weights) }
