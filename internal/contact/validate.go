package contact

import (
	"fmt"
	"math"

	"footward.example/footward/internal/geom"
	"footward.example/footward/internal/limit"
)

// Ranges that the kernel accepts.
const (
	mostCorners  = 720
	mostRods     = 64
	greatestSize = 1e5  // mm
	leastArea    = 1e-3 // mm2
	// N/mm
	leastStiffness    = 1e-3
	greatestStiffness = 1e12
)

func within(v, low, high float64) bool { return v >= low && v <= high }

// Validate adds to faults everything about the input that does not fit.
func Validate(in *Input, faults *limit.Faults) {
	validateOutline(in.Outline, "outline", faults)
	if len(in.Hole) > 0 {
		validateOutline(in.Hole, "hole", faults)
		for i, p := range in.Hole {
			if len(in.Outline) >= 3 && !inside(in.Outline, p, 0) {
				faults.Add(limit.Geometry, fmt.Sprintf("hole[%d]", i), "is not inside the outline")
				break
			}
		}
	}
	for i, c := range in.Cuts {
		validateOutline(c, fmt.Sprintf("cuts[%d]", i), faults)
	}
	if b := &in.Bed; b.Modulus == 0 && b.Strength == 0 {
		faults.Add(limit.Missing, "bed", "needs a modulus, a strength or both")
	} else {
		if b.Modulus != 0 {
			faults.Range("bed.modulus", b.Modulus, 1e-9, 1e9, 1, " N/mm3")
		}
		if b.Strength != 0 {
			faults.Range("bed.strength", b.Strength, 1e-9, 1e6, 1, " MPa")
		}
	}
	if len(in.Rods) > mostRods {
		faults.Add(limit.Number, "rods", fmt.Sprintf("has %d rods; must have at most %d", len(in.Rods), mostRods))
	}
	for i := range in.Rods {
		r := &in.Rods[i]
		if r.fits() {
			continue
		}
		field := fmt.Sprintf("rods[%d]", i)
		if !within(r.Stiffness, leastStiffness, greatestStiffness) {
			faults.Add(limit.OutOfRange, field, fmt.Sprintf("stiffness of %g N/mm is not between %g and %g N/mm",
				r.Stiffness, leastStiffness, greatestStiffness))
		}
		if !within(r.Preload, 0, geom.GreatestForce) || !within(r.Gap, 0, greatestSize) {
			faults.Add(limit.OutOfRange, field, "needs a preload and a gap that are not negative")
		}
		if r.Preload > 0 && r.Gap > 0 {
			faults.Add(limit.Conflict, field, "has a preload or a gap, not both")
		}
		if !within(r.At.X, -greatestSize, greatestSize) || !within(r.At.Y, -greatestSize, greatestSize) {
			faults.Add(limit.OutOfRange, field, "stands too far away")
		}
	}
	in.Actions.Range("forces", faults)
}

// fits reports whether there is nothing wrong with a rod.
func (r *Rod) fits() bool {
	return within(r.Stiffness, leastStiffness, greatestStiffness) && within(r.Preload, 0, geom.GreatestForce) &&
		within(r.Gap, 0, greatestSize) && r.Preload*r.Gap == 0 &&
		within(r.At.X, -greatestSize, greatestSize) && within(r.At.Y, -greatestSize, greatestSize)
}

func validateOutline(p []geom.Point, field string, faults *limit.Faults) {
	if len(p) < 3 || len(p) > mostCorners {
		faults.Add(limit.Number, field, fmt.Sprintf("has %d corners; must have 3 to %d", len(p), mostCorners))
		return
	}
	for i, v := range p {
		if !within(v.X, -greatestSize, greatestSize) || !within(v.Y, -greatestSize, greatestSize) {
			faults.Add(limit.OutOfRange, fmt.Sprintf("%s[%d]", field, i), "is too far away")
			return
		}
	}
	if !(integrate(p).a >= leastArea) {
		faults.Add(limit.Geometry, field, "encloses no area")
		return
	}
	if !convex(p) {
		faults.Add(limit.Geometry, field, "is not convex, or runs round more than once")
	}
}

// convex reports whether a polygon turns one way only, and once round.
func convex(p []geom.Point) bool {
	side, turned := 0.0, 0.0
	for i := range p {
		q, r := p[(i+1)%len(p)], p[(i+2)%len(p)]
		ax, ay, bx, by := q.X-p[i].X, q.Y-p[i].Y, r.X-q.X, r.Y-q.Y
		w := ax*by - ay*bx
		if w*side < 0 {
			return false
		}
		if w != 0 {
			side = w
		}
		turned += math.Atan2(w, ax*bx+ay*by)
	}
	return math.Abs(math.Abs(turned)-2*math.Pi) < 1e-6
}
