package pad

import (
	"footward.example/footward/internal/basis"
	"footward.example/footward/internal/geom"
	"footward.example/footward/internal/material"
)

// Column is the stiff area through which the column presses on the middle of the
// pad: a concrete column, or of a steel base plate at most the rectangle halfway
// between the faces of the column and the edges of the plate (ACI 318-19 Table
// 13.2.7.1).
type Column struct {
	SizeX float64 // [mm]
	SizeY float64 // [mm]
}

// Bars are equal bars of one direction.
type Bars struct {
	Diameter float64 // [mm]
	Spacing  float64 // between centres [mm]
}

// Area returns the area of the bars per width [mm2/mm].
//
// Source: geometry.
func (b Bars) Area() float64 {
	if b.Spacing == 0 {
		return 0
	}
	return quarterPi * b.Diameter * b.Diameter / b.Spacing
}

// Reinforcement is the steel near the underside. The zero value is plain concrete.
type Reinforcement struct {
	X      Bars    // bars along x
	Y      Bars    // bars along y
	YBelow bool    // whether the bars along y are the lower layer; else those along x
	Cover  float64 // of the lower layer and of the ends of the bars [mm]
	Bend   float64 // length of every bar that is bent up at its ends [mm]; 0: straight
	Yield  float64 // f_yk or f_y [MPa]
}

// Input is a pad with its column and its actions.
type Input struct {
	Design        basis.Design
	SizeX         float64 // of the pad along x [mm]
	SizeY         float64 // of the pad along y [mm]
	Thickness     float64 // h [mm]
	Column        Column
	Concrete      material.Concrete
	Reinforcement Reinforcement
	// Actions are design values at the foot of the column. ACI 318-19 knows only
	// factored ones: with ASD, Factored must say that these are.
	Actions  geom.Actions
	Factored bool
	Height   float64 // of the place where the actions act, above the underside [mm]; 0: the top of the pad
	Weight   float64 // of the pad and the soil above it, with the factor of the combination [N]
	Blinding bool    // whether the pad is cast on blinding; else against the ground

	SizeEffect bool // ACI: count the size effect of shear, which footings may neglect
}

// reinforced reports whether there are bars.
func (in *Input) reinforced() bool {
	return in.Reinforcement.X.Diameter > 0 || in.Reinforcement.Y.Diameter > 0
}

// lever returns the height of the actions above the underside.
func (in *Input) lever() float64 { return max(in.Height, in.Thickness) }
