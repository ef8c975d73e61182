// Package material holds the materials of a column base: their strengths, and
// catalogues of them, each row with its source.
package material

import "math"

// Steel is the steel of a plate or a joined part: a grade whose strength
// follows the thickness, or strengths that hold for any.
type Steel struct {
	Grade *SteelGrade // nil: the strengths below hold
	Fy    float64     // yield strength [MPa]
	Fu    float64     // tensile strength [MPa]
	BetaW float64     // correlation factor of welds [-]; EN 1993-1-8 Table 4.1
}

// SteelGrade is a row of the catalogue of steels.
type SteelGrade struct {
	Name   string
	Bands  []SteelBand // thinnest first
	BetaW  float64     // correlation factor, EN 1993-1-8:2005 Table 4.1; 0: the table has none [-]
	Source string
}

// SteelBand gives the strengths up to a thickness.
type SteelBand struct {
	UpTo float64 // greatest thickness, included [mm]
	Fy   float64 // yield strength [MPa]
	Fu   float64 // tensile strength [MPa]
}

// At returns yield and tensile strength [MPa] at a thickness [mm]. ok is false
// where the grade has no strength at that thickness.
//
// Source: the grade's own row.
func (s *Steel) At(thickness float64) (fy, fu float64, ok bool) {
	if s.Grade == nil {
		return s.Fy, s.Fu, s.Fy > 0 && s.Fu >= s.Fy
	}
	for i := range s.Grade.Bands {
		b := &s.Grade.Bands[i]
		if thickness <= b.UpTo {
			return b.Fy, b.Fu, true
		}
	}
	return 0, 0, false
}

// Correlation returns beta_w [-]; where it is not known, 1.0, the greatest of
// the table and so the most cautious.
//
// Source: EN 1993-1-8:2005 Table 4.1.
func (s *Steel) Correlation() float64 {
	b := s.BetaW
	if s.Grade != nil {
		b = s.Grade.BetaW
	}
	if b == 0 {
		return 1
	}
	return b
}

// Concrete is a concrete.
type Concrete struct {
	Strength float64 // cylinder strength f_ck or f'c [MPa]
}

// TimberKind is what a timber is made of.
type TimberKind uint8

// The kinds of timber.
const (
	SolidSoftwood TimberKind = iota + 1
	GluedLaminated
	SolidHardwood
)

// Timber is a timber.
type Timber struct {
	Along  float64 // compression along the grain, f_c,0,k or F_c [MPa]
	Across float64 // compression across the grain, f_c,90,k or F_c-perp [MPa]
	Kind   TimberKind
}

// RodSteel is the material of a rod.
type RodSteel struct {
	Class string  // catalogue name; empty: strengths were given
	Fy    float64 // yield strength f_yb [MPa]
	Fu    float64 // tensile strength f_ub [MPa]
}

// Thread is the thread of a rod.
type Thread struct {
	Name       string  // catalogue name; empty: sizes were given
	Diameter   float64 // nominal diameter d [mm]
	StressArea float64 // tensile stress area A_s [mm2]
}

// NominalArea returns the area of the nominal diameter [mm2].
//
// Source: geometry.
func (t *Thread) NominalArea() float64 { return math.Pi / 4 * t.Diameter * t.Diameter }

// NetDiameter returns the diameter of the stress area that corrosion leaves [mm]
// when it takes so much of the diameter.
//
// Source: geometry.
func (t *Thread) NetDiameter(loss float64) float64 {
	return math.Sqrt(4*t.StressArea/math.Pi) - loss
}

// NetArea returns the stress area that corrosion leaves [mm2] when it takes so
// much of the diameter.
//
// Source: geometry.
func (t *Thread) NetArea(loss float64) float64 {
	d := t.NetDiameter(loss)
	return math.Pi / 4 * d * d
}

// WeldMetal is a filler.
type WeldMetal struct {
	Strength float64 // tensile strength of the deposited metal, F_EXX or R_m [MPa]; 0: not given
}
