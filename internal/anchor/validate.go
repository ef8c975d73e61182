package anchor

import (
	"fmt"

	"footward.example/footward/internal/basis"
	"footward.example/footward/internal/geom"
	"footward.example/footward/internal/limit"
)

const (
	greatestSize = 1e5 // mm
)

func within(v, low, high float64) bool { return v >= low && v <= high }

// Validate adds to faults everything about the anchorage that does not fit; rods
// and their forces are those of their own check.
func Validate(in *Input, faults *limit.Faults) {
	b, h, d := &in.Block, &in.Head, in.Thread.Diameter
	sound := true
	for _, f := range [...]struct {
		field string
		v     float64
	}{
		{"block.size_x_mm", b.SizeX}, {"block.size_y_mm", b.SizeY}, {"block.height_mm", b.Height}, {"embedment_mm", in.Embedment},
	} {
		if !within(f.v, 1e-3, greatestSize) {
			faults.Add(limit.OutOfRange, path+f.field, "must be a positive length")
			sound = false
		}
	}
	if !within(b.Concrete.Strength, 1, 1e3) {
		faults.Add(limit.OutOfRange, path+"block.concrete", "needs a strength")
	}
	for _, v := range [...]float64{b.OffsetX, b.OffsetY} {
		faults.Range(path+"block", v, -greatestSize, greatestSize, 1, " mm, its offset")
		sound = sound && within(v, -greatestSize, greatestSize)
	}
	validateHead(h, d, faults)
	if !(in.PryFactor == 0 || within(in.PryFactor, 1, 2)) {
		faults.Add(limit.OutOfRange, path+"pry_out_factor", "must be between 1 and 2")
	}
	if !(in.LightFactor == 0 || within(in.LightFactor, 0.75, 1)) {
		faults.Add(limit.OutOfRange, path+"lightweight_factor", "must be between 0.75 and 1")
	}
	if !within(in.Under.GroutThick, 0, greatestSize) {
		faults.Add(limit.OutOfRange, path+"block.grout.thickness_mm", "must be a length, not negative")
	}
	if !sound {
		return
	}
	if in.Embedment >= b.Height {
		faults.Add(limit.Geometry, path+"embedment_mm",
			fmt.Sprintf("of %g mm does not fit into the block, %g mm high", in.Embedment, b.Height))
	} else if t := in.Head.Thickness; in.Embedment+t > b.Height {
		faults.Add(limit.Geometry, path+"embedment_mm",
			fmt.Sprintf("of %g mm and a head of %g mm do not fit into the block, %g mm high", in.Embedment, t, b.Height))
	}
	for i, p := range in.At {
		if e := in.edges(p); !(min(e[0], e[1], e[2], e[3]) > d/2) {
			faults.Add(limit.Geometry, fmt.Sprintf("rods.positions[%d]", i), fmt.Sprintf(
				"is not inside the concrete of %g by %g mm", b.SizeX, b.SizeY))
		}
	}
	validateForces(in, faults)
}

const path = "anchorage.headed."

func validateHead(h *Head, d float64, faults *limit.Faults) {
	sized := h.Diameter != 0 || h.Thickness != 0
	switch {
	case h.Area != 0 && sized:
		faults.Add(limit.Conflict, path+"head", "give its size or its bearing area, not both")
	case h.Area != 0 && !within(h.Area, 1e-3, 1e8):
		faults.Add(limit.OutOfRange, path+"head.bearing_area_mm2", "must be a positive area")
	case h.Area != 0:
	case !within(h.Thickness, 1e-3, greatestSize):
		faults.Add(limit.Missing, path+"head.thickness_mm", "is needed beside the diameter: a thin head does not bear as a whole")
	case !(h.Diameter > d && h.Diameter <= greatestSize):
		faults.Add(limit.Geometry, path+"head.diameter_mm",
			fmt.Sprintf("head of %g mm is not wider than the rod of %g mm", h.Diameter, d))
	}
}

func validateForces(in *Input, faults *limit.Faults) {
	if in.ShareReason != "" {
		return
	}
	if len(in.Each) != len(in.At) || len(in.At) == 0 {
		faults.Add(limit.Number, "rod_forces", fmt.Sprintf("has %d forces for %d rods", len(in.Each), len(in.At)))
	}
	for i, f := range in.Each {
		geom.RangeOfRod(i, f.Tension, f.ShearX, f.ShearY, faults)
	}
}

// Limits of the two standards.
const (
	leastStrengthEN = 12    // EN 1992-4:2018 6.1 and Annex: C12/15 to C90/105 (from memory) [MPa]
	mostStrengthEN  = 90    // [MPa]
	leastDepthEN    = 40    // 1.2, h_ef [mm]
	mostDiameterEN  = 60    // 7.2.2.5, d_nom [mm]
	mostDiameterACI = 101.6 // ACI 318-19 17.3.2, 4 in. (from memory) [mm]
	leastStrengthUS = 2500 * psi
	mostStrengthUS  = 10000 * psi // 17.3.1
)

// outside says why the basis does not cover the anchorage at all; empty: it does.
func outside(in *Input) string {
	fc, d := in.Block.Concrete.Strength, in.Thread.Diameter
	switch {
	case in.Design.Basis == basis.USASD:
		return "ACI 318 designs anchorage by strength (LRFD) and has no allowable values"
	case in.ShareReason != "":
		return in.ShareReason
	case in.Design.Basis == basis.USLRFD && !within(fc, leastStrengthUS*(1-1e-9), mostStrengthUS*(1+1e-9)):
		return "ACI 318-19 chapter 17 covers concrete of 2500 to 10 000 psi"
	case in.Design.Basis == basis.USLRFD && d > mostDiameterACI:
		return "ACI 318-19 chapter 17 covers rods up to 4 in."
	case in.Design.Basis == basis.USLRFD:
		return ""
	case !within(fc, leastStrengthEN, mostStrengthEN):
		return "EN 1992-4 covers concrete C12/15 to C90/105"
	case in.LightFactor != 0 && in.LightFactor != 1:
		return "EN 1992-4 covers normal-weight concrete only"
	case in.Embedment < leastDepthEN:
		return "EN 1992-4 covers embedments from 40 mm"
	case d > mostDiameterEN:
		return "EN 1992-4 covers rods up to 60 mm"
	}
	return ""
}
