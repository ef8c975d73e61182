package contact

import "footward.example/footward/internal/geom"

// Bed is what the plate presses on.
type Bed struct {
	// Modulus of subgrade reaction k [N/mm3]; 0: a plastic block of Strength.
	Modulus float64
	// Greatest pressure f [MPa]; 0: not limited.
	Strength float64
}

// BlockModulus stands for the modulus of a plastic block [N/mm3]: from 1e4 to
// 1e6 the block's length changes by 6e-5.
const BlockModulus = 1e6

// modulus returns k [N/mm3].
func (b *Bed) modulus() float64 {
	if b.Modulus == 0 {
		return BlockModulus
	}
	return b.Modulus
}

// Rod holds the plate down at a point.
type Rod struct {
	At        geom.Point
	Stiffness float64 // E A / L [N/mm]
	Preload   float64 // tension before the actions, when all rods have pressed the bed [N]
	Gap       float64 // rise of the plate before the rod pulls [mm]
}

// Input is a rigid plate under actions; N, M_x and M_y are used.
type Input struct {
	// Outline of the contact, convex, in either sense.
	Outline []geom.Point
	// Hole in the outline, such as the inside of a ring; usually none.
	Hole []geom.Point
	// Further parts of the outline that do not press, each convex and apart from the
	// others; they may reach its edge.
	Cuts    [][]geom.Point
	Bed     Bed
	Rods    []Rod
	Actions geom.Actions
}

// Rectangle returns the outline of a rectangle with its centre at the origin.
func Rectangle(sizeX, sizeY float64) []geom.Point {
	x, y := sizeX/2, sizeY/2
	return []geom.Point{{X: -x, Y: -y}, {X: x, Y: -y}, {X: x, Y: y}, {X: -x, Y: y}}
}
