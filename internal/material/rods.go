package material

import (
	"math"
	"slices"
)

// RodSteelRow is a row of the catalogue of rod steels.
type RodSteelRow struct {
	Name   string
	Fy     float64 // yield strength [MPa]
	Fu     float64 // tensile strength [MPa]
	UpTo   float64 // greatest diameter for these strengths, included [mm]; 0: any
	Source string
}

const (
	iso898 = "EN 1993-1-8:2005 Table 3.1, ISO 898-1:2013 (not compared with the printed edition)"
	f1554  = "ASTM F1554-20 (not compared with the printed edition)"
)

// rodSteels are the property classes and grades of rods. A grade whose strength
// falls with the diameter has several rows, the thinnest first.
var rodSteels = []RodSteelRow{
	{"ISO 898-1 4.6", 240, 400, 0, iso898},
	{"ISO 898-1 4.8", 320, 400, 0, iso898},
	{"ISO 898-1 5.6", 300, 500, 0, iso898},
	{"ISO 898-1 5.8", 400, 500, 0, iso898},
	{"ISO 898-1 6.8", 480, 600, 0, iso898},
	{"ISO 898-1 8.8", 640, 800, 0, iso898},
	{"ISO 898-1 10.9", 900, 1000, 0, iso898},
	{"ASTM F1554 Gr 36", 36 * ksi, 58 * ksi, 4 * in, f1554},
	{"ASTM F1554 Gr 55", 55 * ksi, 75 * ksi, 4 * in, f1554},
	{"ASTM F1554 Gr 105", 105 * ksi, 125 * ksi, 3 * in, f1554},
	{"ASTM A193 Gr B7", 105 * ksi, 125 * ksi, 2.5 * in, "ASTM A193/A193M, Grade B7 (not compared with the printed edition)"},
	{"ASTM A193 Gr B7", 95 * ksi, 115 * ksi, 4 * in, "ASTM A193/A193M, Grade B7 (not compared with the printed edition)"},
	{"ASTM A36 rod", 36 * ksi, 58 * ksi, 8 * in, "ASTM A36/A36M-19 (not compared with the printed edition)"},
}

// RodSteels returns the catalogue of rod steels.
func RodSteels() []RodSteelRow { return slices.Clone(rodSteels) }

// RodSteelByName finds a rod steel for a diameter [mm].
func RodSteelByName(name string, diameter float64) (RodSteel, bool) {
	for i := range rodSteels {
		r := &rodSteels[i]
		if r.Name == name && (r.UpTo == 0 || diameter <= r.UpTo) {
			return RodSteel{Class: r.Name, Fy: r.Fy, Fu: r.Fu}, true
		}
	}
	return RodSteel{}, false
}

// ThreadRow is a row of the catalogue of threads.
type ThreadRow struct {
	Name       string
	Diameter   float64 // nominal diameter [mm]
	Pitch      float64 // [mm]
	StressArea float64 // tensile stress area [mm2]
	Source     string
}

const (
	iso898Area = "ISO 898-1:2013, printed stress areas, coarse thread (not compared with the printed edition)"
	iso724Area = "ISO 724 and ISO 898-1 formula pi/4 (d - 0.9382 P)^2, rounded (not compared with the printed edition)"
	uncArea    = "ASME B1.1-2003, 0.7854 (d - 0.9743/n)^2 (not compared with the printed edition)"
)

var threads = append([]ThreadRow{
	{"M8", 8, 1.25, 36.6, iso898Area},
	{"M10", 10, 1.5, 58.0, iso898Area},
	{"M12", 12, 1.75, 84.3, iso898Area},
	{"M14", 14, 2, 115, iso898Area},
	{"M16", 16, 2, 157, iso898Area},
	{"M18", 18, 2.5, 192, iso898Area},
	{"M20", 20, 2.5, 245, iso898Area},
	{"M22", 22, 2.5, 303, iso898Area},
	{"M24", 24, 3, 353, iso898Area},
	{"M27", 27, 3, 459, iso898Area},
	{"M30", 30, 3.5, 561, iso898Area},
	{"M33", 33, 3.5, 694, iso898Area},
	{"M36", 36, 4, 817, iso898Area},
	{"M39", 39, 4, 976, iso898Area},
	{"M42", 42, 4.5, 1121, iso724Area},
	{"M45", 45, 4.5, 1306, iso724Area},
	{"M48", 48, 5, 1473, iso724Area},
	{"M52", 52, 5, 1758, iso724Area},
	{"M56", 56, 5.5, 2030, iso724Area},
	{"M60", 60, 5.5, 2362, iso724Area},
	{"M64", 64, 6, 2676, iso724Area},
}, unc()...)

// unc returns the unified coarse threads.
func unc() []ThreadRow {
	rows := []struct {
		name     string
		diameter float64 // in
		perInch  float64
	}{
		{"3/8-16 UNC", 0.375, 16}, {"1/2-13 UNC", 0.5, 13}, {"5/8-11 UNC", 0.625, 11},
		{"3/4-10 UNC", 0.75, 10}, {"7/8-9 UNC", 0.875, 9}, {"1-8 UNC", 1, 8},
		{"1 1/8-7 UNC", 1.125, 7}, {"1 1/4-7 UNC", 1.25, 7}, {"1 3/8-6 UNC", 1.375, 6},
		{"1 1/2-6 UNC", 1.5, 6}, {"1 3/4-5 UNC", 1.75, 5}, {"2-4.5 UNC", 2, 4.5},
		{"2 1/4-4.5 UNC", 2.25, 4.5}, {"2 1/2-4 UNC", 2.5, 4}, {"2 3/4-4 UNC", 2.75, 4},
		{"3-4 UNC", 3, 4}, {"3 1/2-4 UNC", 3.5, 4}, {"4-4 UNC", 4, 4},
	}
	out := make([]ThreadRow, len(rows))
	for i, r := range rows {
		out[i] = ThreadRow{r.name, r.diameter * in, in / r.perInch,
			math.Pi / 4 * math.Pow(r.diameter-0.9743/r.perInch, 2) * in2, uncArea}
	}
	return out
}

// Threads returns the catalogue of threads, metric before inch.
func Threads() []ThreadRow { return slices.Clone(threads) }

// ThreadByName finds a thread.
func ThreadByName(name string) (Thread, bool) {
	for i := range threads {
		t := &threads[i]
		if t.Name == name {
			return Thread{Name: t.Name, Diameter: t.Diameter, StressArea: t.StressArea}, true
		}
	}
	return Thread{}, false
}

// WeldMetalRow is a row of the catalogue of fillers.
type WeldMetalRow struct {
	Name     string
	Strength float64 // least tensile strength of the deposited metal [MPa]
	Source   string
}

const (
	aws     = "AWS A5.1/A5.5 classification (not compared with the printed edition)"
	iso2560 = "EN ISO 2560-A, least tensile strength (not compared with the printed edition)"
)

var weldMetals = []WeldMetalRow{
	{"AWS E60", 60 * ksi, aws},
	{"AWS E70", 70 * ksi, aws},
	{"AWS E80", 80 * ksi, aws},
	{"EN ISO 2560 E 35", 440, iso2560},
	{"EN ISO 2560 E 38", 470, iso2560},
	{"EN ISO 2560 E 42", 500, iso2560},
	{"EN ISO 2560 E 46", 530, iso2560},
	{"EN ISO 2560 E 50", 560, iso2560},
}

// WeldMetals returns the catalogue of fillers.
func WeldMetals() []WeldMetalRow { return slices.Clone(weldMetals) }

// WeldMetalByName finds a filler.
func WeldMetalByName(name string) (WeldMetalRow, bool) {
	for i := range weldMetals {
		if weldMetals[i].Name == name {
			return weldMetals[i], true
		}
	}
	return WeldMetalRow{}, false
}
