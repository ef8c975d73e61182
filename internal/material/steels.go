package material

import "slices"

// Sources of the catalogue of steels.
const (
	en10025 = "EN 10025-2:2019, R_eH and least R_m by thickness (not compared with the printed edition)"
	en1993  = "EN 1993-1-1:2005 Table 3.1 with A1:2014 (not compared with the printed edition)"
)

const (
	ksi          = 6.894757293168361 // MPa; lbf/in2 by definition of pound and inch
	psi          = ksi / 1000        // MPa
	in           = 25.4              // mm
	in2          = in * in           // mm2
	anyThickness = 1000.0            // mm; thicker than any plate accepted
)

// steels are the steels of plates and joined parts. Where two standards give
// different strengths for one name, both stand here under their own names.
var steels = []SteelGrade{
	{"EN 10025-2 S235", []SteelBand{{16, 235, 360}, {40, 225, 360}, {100, 215, 360}, {150, 195, 350}, {200, 185, 340}, {250, 175, 340}}, 0.80, en10025},
	{"EN 10025-2 S275", []SteelBand{{16, 275, 410}, {40, 265, 410}, {63, 255, 410}, {80, 245, 410}, {100, 235, 410}, {150, 225, 400}, {200, 215, 380}, {250, 205, 380}}, 0.85, en10025},
	{"EN 10025-2 S355", []SteelBand{{16, 355, 470}, {40, 345, 470}, {63, 335, 470}, {80, 325, 470}, {100, 315, 470}, {150, 295, 450}, {200, 285, 450}, {250, 275, 450}}, 0.90, en10025},
	{"EN 1993-1-1 S235", []SteelBand{{40, 235, 360}, {80, 215, 360}}, 0.80, en1993},
	{"EN 1993-1-1 S275", []SteelBand{{40, 275, 430}, {80, 255, 410}}, 0.85, en1993},
	{"EN 1993-1-1 S355", []SteelBand{{40, 355, 490}, {80, 335, 470}}, 0.90, en1993},
	{"ASTM A36", []SteelBand{{8 * in, 36 * ksi, 58 * ksi}}, 0, "ASTM A36/A36M-19, plates to 8 in (not compared with the printed edition)"},
	{"ASTM A572 Gr 50", []SteelBand{{4 * in, 50 * ksi, 65 * ksi}}, 0, "ASTM A572/A572M, Grade 50, plates to 4 in (not compared with the printed edition)"},
	{"ASTM A992", []SteelBand{{anyThickness, 50 * ksi, 65 * ksi}}, 0, "ASTM A992/A992M, rolled sections (not compared with the printed edition)"},
	{"ASTM A500 Gr C, rectangular", []SteelBand{{anyThickness, 50 * ksi, 62 * ksi}}, 0, "ASTM A500/A500M-21, Grade C (not compared with the printed edition)"},
	{"ASTM A53 Gr B", []SteelBand{{anyThickness, 35 * ksi, 60 * ksi}}, 0, "ASTM A53/A53M, Grade B pipe (not compared with the printed edition)"},
}

// Steels returns the catalogue of steels.
func Steels() []SteelGrade { return slices.Clone(steels) }

// SteelByName finds a steel.
func SteelByName(name string) (*SteelGrade, bool) {
	for i := range steels {
		if steels[i].Name == name {
			return &steels[i], true
		}
	}
	return nil, false
}
