package tie

import (
	"math"

	"footward.example/footward/internal/basis"
	"footward.example/footward/internal/geom"
	"footward.example/footward/internal/limit"
)

// Soil is the ground outside the prism above the bottom plate.
type Soil struct {
	Depth  float64 // of the plate below the surface [mm]; 0: no ground counts
	Weight float64 // unit weight [N/mm3]
	Angle  float64 // of the surface of rupture from the vertical [rad]
}

// Input is a group of rods through a stack to a bottom plate.
type Input struct {
	Design      basis.Design
	Plate       geom.Plate // the bottom plate
	At          []geom.Point
	Each        []float64 // tension of every rod [N]; empty with ShareReason
	ShareReason string    // why the tensions are not known
	Hole        float64   // diameter of the holes [mm]
	Nut         float64   // mean width of a nut [mm]
	Cover       float64   // width of a nut or its washer, whichever is wider [mm]
	RodArea     float64   // stress area left [mm2]
	Modulus     float64   // of the rods [MPa]
	Length      float64   // that stretches [mm]
	// Plan of the fill that presses on the plate [mm]: a rectangle, of which a side that is
	// 0 is the plate's, or a circle. All 0: the worse of plate and circle in it.
	PressX        float64 // [mm]
	PressY        float64 // [mm]
	PressDiameter float64 // [mm]
	Height        float64 // from the foot to the underside of the bottom plate [mm]
	Clamped       float64 // weight of what the rods clamp, characteristic [N]
	ClampedFound  bool    // whether the caller found it and writes how
	Soil          Soil
	Share         float64 // of a weight that counts, favourable [-]; 0: by the basis
	Actions       geom.Actions
	Preload       float64 // of each rod when tightened [N]
	Relaxed       float64 // share of it that relaxation takes [-]
	Settlement    float64 // of the clamped fill after tightening [mm]
	Stack         float64 // stiffness of the stack [N/mm]; 0: not known
	Load          float64 // compression after tightening [N]; 0: that of Actions
	Held          float64 // of the preload of a rod that Each holds already [N]
	Needed        float64 // preload that must be left in each rod [N]; 0: none
	MostStretch   float64 // of a rod by the actions [mm]; 0: no limit
	// What initial preload asks for besides.
	RodStrength float64    // design tension resistance of a rod [N]; 0: not known
	Top         geom.Plate // below the upper nuts, with the same holes; no thickness: none
}

// Result holds every intermediate value of a check.
type Result struct {
	in *Input

	Each     []float64 // tension of every rod, with its initial preload [N]
	Pull     float64   // tension of the rods together, with it [N]
	Ft       float64   // greatest tension of a rod, with it [N]
	Acts     float64   // greatest tension of a rod by the actions alone [N]
	Bend     [2]Bend   // of the plate, along x and along y
	Top      [2]Bend   // of the upper plate under the initial preload alone
	TopHolds float64   // its moment resistance per width [Nmm/mm]
	TopPunch float64   // its resistance against punching under a nut [N]
	Resists  float64   // moment resistance of the plate per width [Nmm/mm]
	Punch    float64   // resistance against punching under a nut [N]
	Share    float64   // of a weight that counts [-]
	Outside  float64   // weight of the ground outside the prism [N]
	Holds    float64   // weight that counts against uplift [N]
	Turn     [2]Turn   // overturning along x and along y
	Stretch  float64   // of the rod that the actions pull most [mm]
	Load     float64   // compression that unloads the rods [N]
	Springs  geom.Springs

	bare         [2]bool // the bending that governs is that without preload
	tense, acted int     // rods with the greatest tension, with and without preload
}

// Bend is the bending of the bottom plate along one axis, at the section that
// governs.
type Bend struct {
	Reason string  // why there is no balance; empty: there is
	Round  bool    // the fill presses as a circle
	Half   float64 // half the length of the block of pressure, or its radius [mm]
	E      float64 // its middle from that of the plate [mm]
	Load   float64 // of the fill on the plate per length; of a circle per area [N/mm, MPa]
	At     float64 // the section from the middle of the plate [mm]
	M      float64 // moment, positive where the rods bend the plate up [Nmm]
	Width  float64 // over which it spreads [mm]
	PerMM  float64 // moment per width [Nmm/mm]
}

// Turn is overturning about an edge of the bottom plate, or about the line in it that the
// plate can still press on.
type Turn struct {
	Fill   float64 // half of the fill that presses [mm]
	Arm    float64 // of that line from the middle [mm]
	Demand float64 // [Nmm]
	Holds  float64 // [Nmm]
}

// Check verifies rods through a stack. Errors: limit.Faults.
func Check(in *Input) (*Result, error) {
	var faults limit.Faults
	Validate(in, &faults)
	if len(faults) > 0 {
		return nil, faults
	}
	r := &Result{in: in}
	c := in.clamp()
	r.Each = make([]float64, len(in.Each))
	for i, t := range in.Each {
		r.Each[i] = c.Pulled(t, in.Held)
		r.Pull += r.Each[i]
		if r.Each[i] > r.Ft {
			r.Ft, r.tense = r.Each[i], i
		}
		if t > r.Acts {
			r.Acts, r.acted = t, i
		}
	}
	r.plate()
	r.top()
	r.weights()
	r.Stretch = r.Acts * in.Length / (in.Modulus * in.RodArea)
	r.Load, r.Springs = c.Load, c.Springs()
	return r, nil
}

// clamp returns the rods as springs beside the stack. Compression that comes after
// tightening is that of the actions unless it is told.
func (in *Input) clamp() geom.Clamp {
	c := geom.Clamp{
		Count: len(in.At), Area: in.RodArea, Modulus: in.Modulus, Length: in.Length, Stack: in.Stack,
		Preload: in.Preload, Relaxed: in.Relaxed, Settlement: in.Settlement, Load: in.Load,
	}
	if c.Load == 0 {
		c.Load = max(0, -in.Actions.N)
	}
	return c
}

// plate sets bending and punching of the bottom plate.
//
//	EN: m_Rd = f_y t^2/(6 gamma_M0), elastic; US: phi F_y t^2/4 or F_y t^2/(4 Omega)
//	punching 0.6 pi d_m t f_u/gamma_M2; US with phi or Omega
//
// Source: EN 1993-1-1:2005 6.2.5; EN 1993-1-8:2005 Table 3.4; AISC 360-22 F11,
// J4.2(b).
func (r *Result) plate() {
	in := r.in
	_, fu, _ := in.Plate.Steel.At(in.Plate.Thickness)
	t := in.Plate.Net()
	r.Resists = MomentResistance(&in.Plate, &in.Design)
	r.Punch = r.punchPerMM(fu) * t
	r.Bend = bends(&in.Plate, in, r.Each, in.plans())
	if in.Preload > 0 {
		// One day the preload is gone.
		later := bends(&in.Plate, in, in.Each, in.plans())
		for i := range later {
			r.Bend[i] = *worst(&[2]Bend{r.Bend[i], later[i]})
			r.bare[i] = r.Bend[i] == later[i]
		}
	}
}

// top sets what the initial preload alone does to the plate below the upper nuts: the fill
// presses on all of it, or on the circle in it.
func (r *Result) top() {
	in := r.in
	p := &in.Top
	if in.Preload == 0 || p.Thickness == 0 {
		return
	}
	_, fu, _ := p.Steel.At(p.Thickness)
	r.TopHolds, r.TopPunch = MomentResistance(p, &in.Design), r.punchPerMM(fu)*p.Net()
	each := make([]float64, len(in.At))
	for i := range each {
		each[i] = in.Preload
	}
	r.Top = bends(p, in, each, unknownPlans(p))
}

// MomentResistance returns the moment that a plate resists per width [Nmm/mm].
//
//	EN: m_Rd = f_y t^2/(6 gamma_M0), elastic; US: phi F_y t^2/4 or F_y t^2/(4 Omega)
//
// Source: EN 1993-1-1:2005 6.2.5; AISC 360-22 F11.
func MomentResistance(p *geom.Plate, d *basis.Design) float64 {
	fy, _, _ := p.Steel.At(p.Thickness)
	return p.Net() * p.Net() * strength(fy, d)
}

// NeededThickness returns the thickness as built that resists a moment per width
// [mm]; 0 where none does.
//
// Source: as MomentResistance, turned round.
func NeededThickness(p *geom.Plate, d *basis.Design, m float64) float64 {
	return p.Needed(func(fy, _ float64) float64 { return math.Sqrt(m / strength(fy, d)) })
}

// strength returns what m_Rd is over t^2.
func strength(fy float64, d *basis.Design) float64 {
	if d.Basis.US() {
		return fy * basis.Flexure.Factor(d.Basis) / 4
	}
	return fy / d.EC.GammaM0 / 6
}

func (r *Result) punchPerMM(fu float64) float64 {
	d, v := &r.in.Design, 0.6*math.Pi*r.in.Nut*fu
	if d.Basis.US() {
		return v * basis.Rupture.Factor(d.Basis)
	}
	return v / d.EC.GammaM2
}

// weights sets what holds against uplift and overturning.
//
//	V_outside = h^2 tan(a) (b_x + b_y + pi/3 h tan(a))
//
// the ground outside the prism above the plate, up to planes at an angle a and
// cones at the corners.
//
// A plate wider than its fill turns about its edge only where it carries there, as a
// cantilever, all that holds:
//
//	a = min(b/2, r + m_R b_across/(gamma_stb W - N)), N not above 0
//
// Source: geometry; EN 1997-1:2004 2.4.7.4 and Table A.15, EN 1990 Table A1.2(A)
// (0.9); ASCE 7-22 2.3.1 (0.9 D), 2.4.1 (0.6 D); statics.
func (r *Result) weights() {
	in, a := r.in, &r.in.Actions
	r.Share = in.Share
	if r.Share == 0 {
		r.Share = favourable[in.Design.Basis]
	}
	tan, h := math.Tan(in.Soil.Angle), in.Soil.Depth
	r.Outside = in.Soil.Weight * h * h * tan * (in.Plate.SizeX + in.Plate.SizeY + math.Pi/3*h*tan)
	r.Holds = r.Share * (in.Clamped + r.Outside)
	holds := r.Share*in.Clamped + max(0, -a.N)
	for i, edge := range [2]struct{ size, across, m, v float64 }{
		{in.Plate.SizeX, in.Plate.SizeY, a.My, a.Vx}, {in.Plate.SizeY, in.Plate.SizeX, a.Mx, a.Vy},
	} {
		t := Turn{Fill: edge.size / 2}
		for _, p := range in.plans() {
			side := [2]float64{p.x, p.y}[i]
			t.Fill = min(t.Fill, max(p.diameter, side)/2)
		}
		t.Arm = edge.size / 2
		if out := r.Resists * edge.across / holds; holds > 0 && t.Fill+out < t.Arm {
			t.Arm = t.Fill + out
		}
		t.Demand = max(0, a.N)*t.Arm + math.Abs(edge.m) + math.Abs(edge.v)*in.Height
		t.Holds = holds * t.Arm
		r.Turn[i] = t
	}
}

// favourable is what counts of a weight that holds.
var favourable = [basis.Count]float64{basis.Eurocode: 0.9, basis.USLRFD: 0.9, basis.USASD: 0.6}
