package base

import (
	"strings"

	"footward.example/footward/internal/bearing"
	"footward.example/footward/internal/derive"
	"footward.example/footward/internal/geom"
	"footward.example/footward/internal/limit"
	"footward.example/footward/internal/plate"
	"footward.example/footward/internal/rod"
)

// PlateInput is a base plate with what stands under it and what holds it.
type PlateInput struct {
	Plate   plate.Input   // its Bearing and Rods are found here
	Support bearing.Input // its contact is the plate
	HasRods bool
	Rod     rod.Rod
	Stretch float64 // stretch length of the rods [mm]; 0: as cast in concrete
	At      []geom.Point
	Holes   rod.Holes
}

// PlateResult is the plate's result with those of the parts it rests on.
type PlateResult struct {
	Strength bearing.Strength
	Rods     rod.Result // when the plate has rods
	Plate    plate.Result

	in     PlateInput
	rodsIn rod.Input
}

// rods returns the input by which the strength of the rods is found: without
// actions, for the strength does not depend on them.
func (in *PlateInput) rods() rod.Input {
	return rod.Input{Design: in.Plate.Design, Plate: in.Plate.Plate, Rod: in.Rod, At: in.At, Holes: in.Holes}
}

// ValidatePlate adds to faults everything about the input that does not fit.
func ValidatePlate(in *PlateInput, faults *limit.Faults) {
	p := in.Plate
	p.Bearing.Pressure = 1                          // found from a valid support
	p.Rods, p.Shared = plate.Rods{}, plate.Shared{} // found from valid rods
	plate.Validate(&p, faults)

	var rest limit.Faults
	bearing.Validate(&in.Support, &rest)
	if in.HasRods {
		rods := in.rods()
		rod.Validate(&rods, &rest)
		plate.ValidateClear(&p.Footprint, in.At, in.Rod.Thread.Diameter, &rest)
	}
	for _, f := range rest {
		// The contact is the plate, which has been looked at.
		if !strings.HasPrefix(f.Field, "contact.") && !known(*faults, f.Field) {
			*faults = append(*faults, f)
		}
	}
}

func known(faults limit.Faults, field string) bool {
	for i := range faults {
		if faults[i].Field == field {
			return true
		}
	}
	return false
}

// CheckPlate verifies a base plate on its support.
//
// Errors: limit.Faults; *limit.Scope where the support has no strength by the
// basis.
func CheckPlate(in *PlateInput) (*PlateResult, error) {
	var faults limit.Faults
	ValidatePlate(in, &faults)
	if len(faults) > 0 {
		return nil, faults
	}
	r := &PlateResult{in: *in}
	var err error
	if r.Strength, err = bearing.Available(&r.in.Support); err != nil {
		return nil, err
	}
	p := &r.in.Plate
	p.Bearing = plate.Bearing{Pressure: r.Strength.Pressure, Clause: r.Strength.Clause}
	if in.Support.Medium == bearing.Concrete {
		p.Bearing.GroutThick = in.Support.Block.GroutThick
	}
	p.Rods = plate.Rods{}
	if in.HasRods {
		r.rodsIn = in.rods()
		if r.Rods, err = rod.Check(&r.rodsIn); err != nil {
			return nil, err
		}
		p.Rods = plate.Rods{
			At: in.At, Resistance: r.Rods.FtRd, Diameter: in.Rod.Thread.Diameter, StressArea: r.Rods.As,
			Washer: in.Holes.WasherThickness, Stretch: in.Stretch, Hole: in.Holes.Diameter,
		}
	}
	if r.Plate, err = plate.Check(p); err != nil {
		return nil, err
	}
	if r.Plate.NeedsSections() {
		r.Plate.Hold(r.contact())
	}
	return r, nil
}

// PlateKinds returns the limit states in order.
func PlateKinds() []*limit.Kind { return plate.Kinds() }

// PlateRemarks returns the notices of the plate in order; those of its support
// are bearing's.
func PlateRemarks() []*limit.Notice { return plate.Remarks() }

// States appends the limit states in their fixed order.
func (r *PlateResult) States(l *limit.List) { r.Plate.States(l) }

// Notices appends the notices of the plate, then those about its support.
func (r *PlateResult) Notices(l *limit.Notices) {
	r.Plate.Notices(l)
	r.Strength.Notices(l)
}

// Derive writes where the strengths of the support and of the rods come from,
// then the plate.
func (r *PlateResult) Derive(s *derive.Sheet) {
	r.Strength.Derive(s)
	if r.Plate.EC.Lifted {
		r.Rods.DeriveTension(s)
	}
	r.Plate.Derive(s)
}
