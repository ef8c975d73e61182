package weld

import "math"

const clauseBeside = "EN 1993-1-1:2005 6.2.1(5), 6.2.5, 6.2.6; statics"

// Beside is the part beside a weld that is used most, Eurocode.
type Beside struct {
	Part     int // counted from 0
	Spot     Spot
	Flow     Flow
	Sections float64 // thicknesses that the run or segment has to itself [-]
	Shear    float64 // resistance per length parallel to the plate [N/mm]
	Normal   float64 // resistance per length square to the plate [N/mm]
	Used     float64 // utilization [-]
}

// beside holds a flow against both parts, which yield where the weld does not.
//
//	tau = q/t against f_y/(sqrt(3) gamma_M0), sigma = q_n/t against f_y/gamma_M0
//	(sigma/(f_y/gamma_M0))^2 + 3 (tau/(f_y/gamma_M0))^2 <= 1
//
// What is square to the plate pulls at the part that stands on it, and shears the
// plate through its thickness in one plane beside each run. t is what corrosion
// leaves.
//
// Source: EN 1993-1-1:2005 (6.1), (6.6), (6.18); the weld clauses of EN 1993-1-8
// leave the parts to it.
func (r *Result) beside(at Spot, f Flow) {
	b, sections := &r.EC.Beside, r.sectionsOf(at)
	for part := range r.in.Weld.Parts {
		fy, _ := r.in.Weld.Parts[part].strengths()
		strength := fy / r.in.Design.EC.GammaM0 * r.baseThickness(part)
		shear := strength / math.Sqrt(3)
		normal := shear
		if part != 0 {
			normal = strength * sections
		}
		shear *= sections
		if used := math.Hypot(f.inPlane()/shear, f.Normal/normal); used > b.Used {
			*b = Beside{Part: part, Spot: at, Flow: f, Sections: sections, Shear: shear, Normal: normal, Used: used}
		}
	}
}

// sectionsOf returns what a run or segment has of the parts' thickness, Eurocode
// [-]. A fillet along an edge is that of a lap, whose edges each have their own
// section; in a group, two segments on both faces of the second part share.
//
// Source: statics.
func (r *Result) sectionsOf(at Spot) float64 {
	w := &r.in.Weld
	switch {
	case r.Sections == 1 || w.Parts[0].AlongEdge || w.Parts[1].AlongEdge:
		return 1
	case !r.Grouped:
		return r.Sections
	}
	segments := r.in.Group.Segments
	s := &segments[at.Segment]
	ux, uy := direction(s)
	l := s.Length()
	// Lines may be given at the roots or in the middle of the throats.
	most := w.Parts[1].Thickness + 2*math.Sqrt2*r.Throat
	for j := range segments {
		o := &segments[j]
		if j == at.Segment {
			continue
		}
		ax, ay, bx, by := o.A.X-s.A.X, o.A.Y-s.A.Y, o.B.X-s.A.X, o.B.Y-s.A.Y
		off, turn := math.Abs(ux*ay-uy*ax), math.Abs(ux*(by-ay)-uy*(bx-ax))
		from, to := ux*ax+uy*ay, ux*bx+uy*by
		if turn <= parallel*o.Length() && off <= most && min(from, to) < l*(1-parallel) && max(from, to) > l*parallel {
			return r.Sections
		}
	}
	return 1
}

// edge returns the thickness of the thinner part along whose edge a fillet runs
// [mm]; 0: none.
func (w *Spec) edge() float64 {
	thin := 0.0
	for i := range w.Parts {
		if p := &w.Parts[i]; w.Type == Fillet && p.AlongEdge && (thin == 0 || p.Thickness < thin) {
			thin = p.Thickness
		}
	}
	return thin
}

// fits reports whether a throat or leg could be made: the legs of a fillet along
// an edge are no longer than the edge. US practice has a limit state of it.
func (r *Result) fits(size float64) bool {
	edge := r.in.Weld.edge()
	return !isEC(r.in) || edge == 0 || math.Sqrt2*size <= edge+rounding
}
