package weld

import (
	"fmt"
	"math"

	"footward.example/footward/internal/geom"
	"footward.example/footward/internal/limit"
)

// Ranges that the kernel accepts; the contract's are narrower or the same.
const (
	greatestSize     = 1e5  // mm
	leastSize        = 1e-3 // mm
	greatestStrength = 1e4  // MPa
	leastBetaW       = 0.8  // EN 1993-1-8:2005 Table 4.1
	greatestRuns     = 100
	greatestSegments = 200
)

func within(v, low, high float64) bool { return v >= low && v <= high }

// fields of the two parts.
var partFields = [2]string{"weld.parts[0]", "weld.parts[1]"}

// Validate adds to faults everything about the input that does not fit.
func Validate(in *Input, faults *limit.Faults) {
	if !in.Design.Valid() {
		faults.Add(limit.UnknownValue, "basis.family", "is not a design basis with usable factors")
	}
	for i := range in.Weld.Parts {
		in.Weld.Parts[i].validate(partFields[i], faults)
	}
	in.Weld.validate(faults)
	switch f := in.Weld.Filler.Strength; {
	case !within(f, 0, greatestStrength):
		faults.Add(limit.OutOfRange, "weld.filler", fmt.Sprintf("strength of %g MPa is not between 0 and %g MPa", f, greatestStrength))
	case f == 0 && in.Design.Basis.US():
		faults.Add(limit.Missing, "weld.filler", "is needed with the US bases")
	}
	in.fillet(faults)
	if len(in.Group.Segments) > 0 {
		in.Group.validate(faults)
		return
	}
	in.Run.validate(faults)
}

func (p *Part) validate(field string, faults *limit.Faults) {
	if !within(p.Thickness, leastSize, greatestSize) {
		faults.Add(limit.OutOfRange, field+".thickness_mm", outside("thickness", p.Thickness, "mm", leastSize, greatestSize))
		return
	}
	if !(p.Corrosion >= 0 && p.Corrosion < p.Thickness) {
		faults.Add(limit.Geometry, field+".thickness_mm", fmt.Sprintf("of %g mm is all lost to corrosion of %g mm", p.Thickness, p.Corrosion))
		return
	}
	switch fy, fu, ok := p.Steel.At(p.Thickness); {
	case !ok && p.Steel.Grade != nil:
		faults.Add(limit.OutOfRange, field+".steel", fmt.Sprintf("%s has no strength at %g mm", p.Steel.Grade.Name, p.Thickness))
	case !ok || !within(fy, 1, greatestStrength) || !within(fu, 1, greatestStrength):
		faults.Add(limit.OutOfRange, field+".steel",
			fmt.Sprintf("needs f_y of at least 1 MPa and f_u of at least f_y; it has f_y %g MPa and f_u %g MPa", fy, fu))
	}
	if b := p.Steel.BetaW; p.Steel.Grade == nil && b != 0 && !within(b, leastBetaW, 1) {
		faults.Add(limit.OutOfRange, field+".steel.properties.beta_w", outside("factor", b, "", leastBetaW, 1))
	}
}

// outside says that a value is not within its limits.
func outside(what string, v float64, unit string, low, high float64) string {
	if unit != "" {
		unit = " " + unit
	}
	return fmt.Sprintf("%s of %g%s is not between %g and %g%s", what, v, unit, low, high, unit)
}

// validate looks at the size of the weld.
func (w *Spec) validate(faults *limit.Faults) {
	usual := true
	for _, f := range [...]struct {
		field, what string
		v           float64
	}{{"weld.leg_mm", "leg", w.Leg}, {"weld.throat_mm", "throat", w.Throat}} {
		if f.v != 0 && !within(f.v, leastSize, greatestSize) {
			faults.Add(limit.OutOfRange, f.field, outside(f.what, f.v, "mm", leastSize, greatestSize))
			usual = false
		}
	}
	thin := min(w.Parts[0].Thickness, w.Parts[1].Thickness)
	size, sized := w.Throat, true
	switch w.Type {
	case Fillet:
		size = max(w.Throat, throatOverLeg*w.Leg)
		sized = w.Leg > 0 || w.Throat > 0
		if w.Leg > 0 && w.Throat > 0 {
			faults.Add(limit.Conflict, "weld.leg_mm", fmt.Sprintf("give the leg of %g mm or the throat of %g mm, not both", w.Leg, w.Throat))
		} else if w.Leg == 0 && w.Throat == 0 {
			faults.Add(limit.Missing, "weld.throat_mm", "a fillet weld needs its throat or its leg")
		}
	case PartialPenetration:
		sized = w.Throat > 0
		if w.Leg != 0 {
			faults.Add(limit.Conflict, "weld.leg_mm", "goes with fillet welds only")
		}
		if w.Throat == 0 {
			faults.Add(limit.Missing, "weld.throat_mm", "a partial-penetration weld needs its effective throat")
		} else if w.Throat > thin {
			faults.Add(limit.Geometry, "weld.throat_mm",
				fmt.Sprintf("throat of %g mm is more than the thinner part of %g mm", w.Throat, thin))
		}
	case CompletePenetration:
		size, sized = thin, thin > 0
		if w.Leg != 0 {
			faults.Add(limit.Conflict, "weld.leg_mm", "goes with fillet welds only")
		}
		if w.Throat != 0 {
			faults.Add(limit.Conflict, "weld.throat_mm", "a complete-penetration weld takes the thinner part; give no throat")
		}
	default:
		faults.Add(limit.UnknownValue, "weld.kind", "is not a kind of weld")
		sized = false
	}
	switch {
	case !within(w.Corrosion, 0, greatestSize):
		faults.Add(limit.OutOfRange, "weld.corrosion_allowance_mm", outside("loss", w.Corrosion, "mm", 0, greatestSize))
	case usual && sized && !(size-w.Corrosion >= leastLeft/2):
		faults.Add(limit.Geometry, "weld.corrosion_allowance_mm",
			fmt.Sprintf("loss of %g mm leaves nothing of the throat of %.3g mm", w.Corrosion, size))
	}
}

// fillet looks at a fillet along an edge, Eurocode: its legs cannot be more than the
// edge. US practice holds them by a limit state.
func (in *Input) fillet(faults *limit.Faults) {
	w := &in.Weld
	edge, field, leg := w.edge(), "weld.leg_mm", w.Leg
	if leg == 0 {
		field, leg = "weld.throat_mm", math.Sqrt2*w.Throat
	}
	if isEC(in) && edge > 0 && leg > edge+2*rounding {
		faults.Add(limit.Geometry, field, fmt.Sprintf("makes legs of %.4g mm along an edge of %g mm", leg, edge))
	}
}

func (r *Run) validate(faults *limit.Faults) {
	if !within(r.Length, leastSize, greatestSize) {
		faults.Add(limit.OutOfRange, "run.length_mm", outside("length", r.Length, "mm", leastSize, greatestSize))
	}
	if r.Count < 0 || r.Count > greatestRuns {
		faults.Add(limit.OutOfRange, "run.count", fmt.Sprintf("of %d runs is not between 0 and %d", r.Count, greatestRuns))
	}
	for _, f := range [...]struct {
		field string
		v     float64
	}{{"run.along_kn", r.Along}, {"run.across_kn", r.Across}, {"run.normal_kn", r.Normal}} {
		if !within(f.v, -geom.GreatestForce, geom.GreatestForce) {
			faults.Add(limit.OutOfRange, f.field, outside("force", f.v/1e3, "kN", -geom.GreatestForce/1e3, geom.GreatestForce/1e3))
		}
	}
}

// segmentFault says what is wrong with a segment; empty: nothing.
func segmentFault(s *geom.Segment) string {
	for _, v := range [...]float64{s.A.X, s.A.Y, s.B.X, s.B.Y} {
		if !within(v, -greatestSize, greatestSize) {
			return outside("coordinate", v, "mm", -greatestSize, greatestSize)
		}
	}
	if !(s.Length() >= leastSize) {
		return fmt.Sprintf("starts and ends at x %g mm, y %g mm: it has no length", s.A.X, s.A.Y)
	}
	return ""
}

func (g *Group) validate(faults *limit.Faults) {
	if len(g.Segments) > greatestSegments {
		faults.Add(limit.Number, "group.segments",
			fmt.Sprintf("has %d segments; must have 1 to %d", len(g.Segments), greatestSegments))
		return
	}
	whole := true
	for i := range g.Segments {
		if why := segmentFault(&g.Segments[i]); why != "" {
			faults.Add(limit.Geometry, fmt.Sprintf("group.segments[%d]", i), why)
			whole = false
		}
	}
	if whole {
		g.thrice(faults)
	}
	a := &g.Actions
	for _, f := range [...]struct {
		field string
		v     float64
		unit  string
		scale float64 // kernel units in the field's
		most  float64
		plane bool // allowed with the instantaneous centre
	}{
		{"group.forces.n_kn", a.N, "kN", 1e3, geom.GreatestForce, false},
		{"group.forces.v_x_kn", a.Vx, "kN", 1e3, geom.GreatestForce, true},
		{"group.forces.v_y_kn", a.Vy, "kN", 1e3, geom.GreatestForce, true},
		{"group.forces.m_x_knm", a.Mx, "kNm", 1e6, geom.GreatestMoment, false},
		{"group.forces.m_y_knm", a.My, "kNm", 1e6, geom.GreatestMoment, false},
		{"group.forces.t_knm", a.T, "kNm", 1e6, geom.GreatestMoment, true},
		{"group.at_x_mm", g.AtX, "mm", 1, greatestSize, true},
		{"group.at_y_mm", g.AtY, "mm", 1, greatestSize, true},
		{"group.at_z_mm", g.AtZ, "mm", 1, greatestSize, false},
	} {
		if !within(f.v, -f.most, f.most) {
			faults.Add(limit.OutOfRange, f.field, outside("value", f.v/f.scale, f.unit, -f.most/f.scale, f.most/f.scale))
		} else if g.Method == InstantaneousCentre && !f.plane && f.v != 0 {
			faults.Add(limit.Conflict, f.field, fmt.Sprintf(
				"value of %g %s: with the instantaneous centre only V_x, V_y and T in the plane of the weld", f.v/f.scale, f.unit))
		}
	}
	if g.Continuous {
		if i := g.open(); i >= 0 {
			faults.Add(limit.Geometry, fmt.Sprintf("group.segments[%d]", i),
				fmt.Sprintf("of a continuous weld does not start within %g mm of where the one before it ends", closes))
		}
	}
	if g.EndLoaded && g.Method == InstantaneousCentre {
		faults.Add(limit.Conflict, "group.end_loaded", "goes with the elastic method: a lap does not turn about an instantaneous centre")
	}
	if g.Method > InstantaneousCentre {
		faults.Add(limit.UnknownValue, "group.method", "is not a method")
	}
}
