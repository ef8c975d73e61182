// Package geom holds the geometry that the parts share: plates, points,
// segments and their section properties.
package geom

import (
	"fmt"

	"footward.example/footward/internal/limit"
	"footward.example/footward/internal/material"
)

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

// greatestSize is the greatest size of a plate [mm]; the contract's is less.
const greatestSize = 1e5

func within(v, low, high float64) bool { return v >= low && v <= high }

// Validate adds to faults everything about the plate that does not fit.
func (p *Plate) Validate(faults *limit.Faults) {
	if !within(p.SizeX, 1e-3, greatestSize) {
		faults.Add(limit.OutOfRange, "plate.size_x_mm", "must be a positive length")
	}
	if !within(p.SizeY, 1e-3, greatestSize) {
		faults.Add(limit.OutOfRange, "plate.size_y_mm", "must be a positive length")
	}
	if !within(p.Thickness, 1e-3, greatestSize) {
		faults.Add(limit.OutOfRange, "plate.thickness_mm", "must be a positive length")
	} else if !(p.Corrosion >= 0 && p.Corrosion < p.Thickness) {
		faults.Add(limit.Geometry, "plate.corrosion_allowance_mm",
			fmt.Sprintf("loss of %g mm leaves nothing of the %g mm plate", p.Corrosion, p.Thickness))
	} else if fy, fu, ok := p.Steel.At(p.Thickness); !ok || !within(fy, 1, 1e4) || !within(fu, 1, 1e4) {
		faults.Add(limit.OutOfRange, "plate.steel", fmt.Sprintf("has no strength at %g mm", p.Thickness))
	}
}

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
