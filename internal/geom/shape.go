// Package geom holds the geometry that the parts share: plates, points,
// segments and their section properties.
package geom

import "footward.example/footward/internal/material"

// Point is a point in the plane of the plate, from its centre.
type Point struct {
	X float64 // [mm]
	Y float64 // [mm]
}

// Segment is a straight piece of a line in the plane of the plate.
type Segment struct {
	A, B Point
}

// Plate is a flat rectangular steel plate centred on the column axis.
type Plate struct {
	SizeX     float64 // size along x [mm]
	SizeY     float64 // size along y [mm]
	Thickness float64 // as built [mm]
	Corrosion float64 // thickness lost over the design life [mm]
	Steel     material.Steel
}

// Net returns the thickness that is left after corrosion [mm].
//
// Source: geometry.
func (p *Plate) Net() float64 { return p.Thickness - p.Corrosion }

// Actions are the six actions of the column on the base: tension positive, z
// up, right-handed (see the drawing in the contract's common.proto).
type Actions struct {
	N  float64 // axial force, tension positive [N]
	Vx float64 // shear along x [N]
	Vy float64 // shear along y [N]
	Mx float64 // moment about x, positive presses the -y side [Nmm]
	My float64 // moment about y, positive presses the +x side [Nmm]
	T  float64 // torsion about z [Nmm]
}
