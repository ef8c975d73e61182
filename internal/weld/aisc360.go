package weld

import (
	"math"

	"footward.example/footward/internal/basis"
)

const (
	clauseJ24     = "AISC 360-22 Table J2.4"
	clauseJ23     = "AISC 360-22 Table J2.3"
	clauseJ22b    = "AISC 360-22 J2.2b"
	clauseMetal   = "AISC 360-22 J2.4, Table J2.5"
	clauseKds     = "AISC 360-22 (J2-5)"
	clauseBeta    = "AISC 360-22 (J2-1)"
	clauseGroove  = "AISC 360-22 Table J2.5"
	clauseBase    = "AISC 360-22 J2.4, J4"
	clauseCentre  = "AISC 360-22 J2.4; AISC Manual part 8, instantaneous centre (not compared with the printed edition)"
	throatOverLeg = 0.707 // AISC Manual part 8
)

const (
	inch          = 25.4 // mm; exact
	metalShare    = 0.60 // F_nw over F_EXX; AISC 360-22 Table J2.5
	leastLegs     = 4.0  // legs; AISC 360-22 J2.2b
	endLegs       = 100.0
	farLegs       = 300.0
	farShare      = 180.0    // legs that count beyond 300; AISC 360-22 J2.2b
	endStart      = 1.2      // AISC 360-22 (J2-1)
	endFall       = 0.002    // AISC 360-22 (J2-1)
	edgeThickness = inch / 4 // AISC 360-22 J2.2b
	edgeSetBack   = inch / 16
	shearShare    = 0.60 // AISC 360-22 J4.2
	acrossMore    = 0.5  // AISC 360-22 (J2-5)
	acrossPower   = 1.5
)

// leastLegUS is AISC 360-22 Table J2.4 [mm]: thinner part up to, least leg.
var leastLegUS = [...][2]float64{
	{inch / 4, inch / 8}, {inch / 2, 3 * inch / 16}, {3 * inch / 4, inch / 4}, {math.MaxFloat64, 5 * inch / 16},
}

// leastGrooveUS is AISC 360-22 Table J2.3 [mm]: thinner part up to, least throat.
var leastGrooveUS = [...][2]float64{
	{inch / 4, inch / 8}, {inch / 2, 3 * inch / 16}, {3 * inch / 4, inch / 4}, {1.5 * inch, 5 * inch / 16},
	{2.25 * inch, 3 * inch / 8}, {6 * inch, inch / 2}, {math.MaxFloat64, 5 * inch / 8},
}

// rounding lets a thickness of 1/4 in that was converted from inches count as
// 1/4 in [mm].
const rounding = 1e-6

func lookUp(table [][2]float64, thickness float64) float64 {
	for _, row := range table {
		if thickness <= row[0]+rounding {
			return row[1]
		}
	}
	return table[len(table)-1][1]
}

// American holds the intermediate values of AISC 360.
type American struct {
	Factor float64 // phi or 1/Omega of fillet welds and rupture [-]
	Theta  float64 // angle of the force to the axis of the weld [rad]
	Kds    float64 // directional strength increase [-]
	Beta   float64 // length factor of end-loaded welds [-]
	Least  float64 // least leg, or least throat of a groove weld [mm]
	Most   float64 // greatest leg along an edge [mm]; 0: no edge
	// Weld metal of fillets, where it governs.
	Spot   Spot
	Flow   Flow
	Demand float64 // force per length [N/mm]
	Legs   float64 // leg that counts: what is left, at most a quarter of the length [mm]
	Metal  float64 // strength per length of fillet [N/mm]
	// Groove welds.
	GrooveShear   float64 // [N/mm]
	GrooveTension float64 // [N/mm]
	Groove        float64 // utilization, shear and tension combined [-]
	GrooveSpot    Spot
	GrooveFlow    Flow
	// Base metal, where it governs.
	Part       int // counted from 0
	BaseSpot   Spot
	BaseFlow   Flow
	BaseShear  float64 // strength per length parallel to the plate [N/mm]
	BaseNormal float64 // strength per length square to the plate [N/mm]
	Base       float64 // utilization [-]
}

// us computes the strengths of weld metal and base metal per length of weld.
//
//	F_nw = 0.60 F_EXX k_ds, k_ds = 1 + 0.5 sin^1.5 theta, on 0.707 w
//	beta = 1.2 - 0.002 l/w for end-loaded welds over 100 w, 180 w from 300 w
//
// A length below 4 w counts with a leg of l/4.
//
// Source: AISC 360-22 J2.2b, J2.4, Table J2.5, J4.
func (r *Result) us() {
	u, x := &r.US, r.in
	b, w := x.Design.Basis, &x.Weld
	u.Factor, u.Kds, u.Beta = basis.Rupture.Factor(b), 1, 1
	r.leastAndMost()
	f := w.Filler.Strength
	u.GrooveShear = u.Factor * metalShare * f * r.A
	u.GrooveTension = basis.GrooveTension.Factor(b) * metalShare * f * r.A
	if !r.Grouped {
		u.Theta, u.Kds = increase(x)
		u.Legs = min(r.W, r.Length/leastLegs)
		u.Beta = r.endLoaded(u.Legs)
	} else {
		u.Beta = r.endLoaded(r.W)
	}
	perLeg := u.Factor * metalShare * f * u.Kds * u.Beta * throatOverLeg
	u.Legs = r.W
	u.Metal = perLeg * r.W
	worst := -1.0
	r.flows(func(at Spot, f Flow) {
		legs := min(r.W, r.lengthOf(at)/leastLegs)
		if d := f.size(); use(d, perLeg*legs) > worst {
			worst = use(d, perLeg*legs)
			u.Demand, u.Flow, u.Spot, u.Legs, u.Metal = d, f, at, legs, perLeg*legs
		}
		if g := math.Hypot(f.inPlane()/u.GrooveShear, f.Normal/u.GrooveTension); g > u.Groove {
			u.Groove, u.GrooveSpot, u.GrooveFlow = g, at, f
		}
		for part := range w.Parts {
			r.baseMetal(part, at, f)
		}
	})
	if r.byCentre() {
		r.Centre = r.instantaneousCentre()
	}
}

// leastAndMost finds the sizes that detailing allows.
func (r *Result) leastAndMost() {
	u, w := &r.US, &r.in.Weld
	if w.Type == PartialPenetration {
		u.Least = lookUp(leastGrooveUS[:], r.Thin)
	} else {
		u.Least = lookUp(leastLegUS[:], r.Thin)
	}
	for i := range w.Parts {
		p := &w.Parts[i]
		if !p.AlongEdge {
			continue
		}
		most := p.Thickness
		if p.Thickness >= edgeThickness-rounding {
			most -= edgeSetBack
		}
		if u.Most == 0 || most < u.Most {
			u.Most = most
		}
	}
}

// increase returns the angle of the force to the axis of a run [rad] and the
// directional strength increase [-]. It holds for runs that are all at the same
// angle to the force and so deform alike; not in a group shared elastically, and
// not at the end of a hollow section pulled square to the plate, for which a run
// with its own section is taken.
func increase(in *Input) (theta, kds float64) {
	across := math.Hypot(in.Run.Across, in.Run.Normal)
	if across == 0 {
		return 0, 1
	}
	along := math.Abs(in.Run.Along)
	theta = math.Atan2(across, along)
	if hollowEnd(in) {
		return theta, 1
	}
	return theta, 1 + acrossMore*math.Pow(across/math.Hypot(across, along), acrossPower)
}

func hollowEnd(in *Input) bool { return in.Weld.OwnSection && in.Run.Normal != 0 }

// lengthOf returns the length of a run, of a segment, or of a closed line [mm].
func (r *Result) lengthOf(at Spot) float64 {
	if !r.Grouped || r.in.Group.Continuous {
		return r.Length
	}
	return r.in.Group.Segments[at.Segment].Length()
}

// endLoaded returns the length factor beta of an end-loaded fillet [-].
func (r *Result) endLoaded(leg float64) float64 {
	if !r.lapped() || r.in.Weld.Type != Fillet {
		return 1
	}
	switch ratio := r.lap() / leg; {
	case ratio <= endLegs:
		return 1
	case ratio <= farLegs:
		return endStart - endFall*ratio
	default:
		return farShare / ratio
	}
}

// baseMetal holds a flow against one part: yield and rupture in shear for what
// acts parallel to the plate. What is square to the plate pulls at the part that
// stands on it, and shears the plate through its thickness, in one plane beside
// each run.
//
//	R_n = 0.60 F_y t, 0.60 F_u t (shear); F_y t, F_u t (tension), per length
//
// t is what corrosion leaves.
//
// Source: AISC 360-22 J4.1, J4.2.
func (r *Result) baseMetal(part int, at Spot, f Flow) {
	u, b := &r.US, r.in.Design.Basis
	fy, fu := r.in.Weld.Parts[part].strengths()
	t := r.baseThickness(part)
	shear := min(basis.ShearYield.Factor(b)*shearShare*fy, basis.Rupture.Factor(b)*shearShare*fu) * t
	normal := shear
	if part != 0 {
		normal = min(basis.TensionYield.Factor(b)*fy, basis.Rupture.Factor(b)*fu) * t * r.Sections
	}
	shear *= r.Sections
	if used := math.Hypot(f.inPlane()/shear, f.Normal/normal); used > u.Base {
		u.Base, u.Part, u.BaseSpot, u.BaseFlow, u.BaseShear, u.BaseNormal = used, part, at, f, shear, normal
	}
}

// baseThickness returns the thickness of a part that counts [mm].
func (r *Result) baseThickness(part int) float64 {
	p := &r.in.Weld.Parts[part]
	t := p.Thickness - p.Corrosion
	if r.in.Weld.Type == CompletePenetration {
		t = min(t, r.A)
	}
	return t
}

// beyondUS says why AISC 360 does not cover the weld; empty: it does.
func (r *Result) beyondUS() string {
	w := &r.in.Weld
	if w.Type == CompletePenetration {
		for i := range w.Parts {
			if _, fu := w.Parts[i].strengths(); w.Filler.Strength >= fu {
				return r.Reason
			}
		}
		return "a complete-penetration weld needs a filler that matches the weaker part (AISC 360-22 Table J2.5)"
	}
	return r.Reason
}
