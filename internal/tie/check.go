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
	PressX      float64   // plan of the fill that presses on the plate [mm]
	PressY      float64   // [mm]
	Height      float64   // from the foot to the underside of the bottom plate [mm]
	Clamped     float64   // weight of what the rods clamp, characteristic [N]
	Soil        Soil
	Share       float64 // of a weight that counts, favourable [-]; 0: by the basis
	Actions     geom.Actions
	Preload     float64 // of each rod when tightened [N]
	Relaxed     float64 // share of it that relaxation takes [-]
	Settlement  float64 // of the clamped fill after tightening [mm]
	Stack       float64 // stiffness of the stack [N/mm]; 0: rigid
	Needed      float64 // preload that must be left in each rod [N]; 0: none
	MostStretch float64 // of a rod [mm]; 0: no limit
}

// Result holds every intermediate value of a check.
type Result struct {
	in *Input

	Pull      float64 // tension of the rods together [N]
	Ft        float64 // greatest tension of a rod [N]
	Bend      [2]Bend // of the plate, along x and along y
	Resists   float64 // moment resistance of the plate per width [Nmm/mm]
	Punch     float64 // resistance against punching under a nut [N]
	Share     float64 // of a weight that counts [-]
	Outside   float64 // weight of the ground outside the prism [N]
	Holds     float64 // weight that counts against uplift [N]
	Turn      [2]Turn // overturning along x and along y
	Stretch   float64 // of the rod that pulls most [mm]
	Stiffness float64 // of all rods together [N/mm]
	Lost      float64 // preload of a rod that settlement takes [N]
	Left      float64 // preload of a rod that is left, not below 0 [N]

	tense int // rod with the greatest tension, counted from 0
}

// Bend is the bending of the bottom plate along one axis, at the section that
// governs.
type Bend struct {
	Reason string  // why there is no balance; empty: there is
	Half   float64 // half the length of the block of pressure [mm]
	E      float64 // its middle from that of the plate [mm]
	Load   float64 // of the fill on the plate per length [N/mm]
	At     float64 // the section from the middle of the plate [mm]
	M      float64 // moment, positive where the rods bend the plate up [Nmm]
	Width  float64 // over which it spreads [mm]
	PerMM  float64 // moment per width [Nmm/mm]
}

// Turn is overturning about an edge of the bottom plate.
type Turn struct {
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
	for i, t := range in.Each {
		r.Pull += t
		if t > r.Ft {
			r.Ft, r.tense = t, i
		}
	}
	r.plate()
	r.weights()
	r.Stretch = r.Ft * in.Length / (in.Modulus * in.RodArea)
	r.preload()
	return r, nil
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
	r.Bend[0] = r.bend(func(p geom.Point) (float64, float64) { return p.X, p.Y }, in.PressX, in.Plate.SizeY)
	r.Bend[1] = r.bend(func(p geom.Point) (float64, float64) { return p.Y, p.X }, in.PressY, in.Plate.SizeX)
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
// Source: geometry; EN 1997-1:2004 2.4.7.4 and Table A.15, EN 1990 Table A1.2(A)
// (0.9); ASCE 7-22 2.3.1 (0.9 D), 2.4.1 (0.6 D).
func (r *Result) weights() {
	in, a := r.in, &r.in.Actions
	r.Share = in.Share
	if r.Share == 0 {
		r.Share = favourable[in.Design.Basis]
	}
	tan, h := math.Tan(in.Soil.Angle), in.Soil.Depth
	r.Outside = in.Soil.Weight * h * h * tan * (in.Plate.SizeX + in.Plate.SizeY + math.Pi/3*h*tan)
	r.Holds = r.Share * (in.Clamped + r.Outside)
	for i, edge := range [2]struct{ size, m, v float64 }{
		{in.Plate.SizeX, a.My, a.Vx}, {in.Plate.SizeY, a.Mx, a.Vy},
	} {
		r.Turn[i] = Turn{
			Demand: max(0, a.N)*edge.size/2 + math.Abs(edge.m) + math.Abs(edge.v)*in.Height,
			Holds:  (r.Share*in.Clamped + max(0, -a.N)) * edge.size / 2,
		}
	}
}

// favourable is what counts of a weight that holds.
var favourable = [basis.Count]float64{basis.Eurocode: 0.9, basis.USLRFD: 0.9, basis.USASD: 0.6}

// preload sets what is left of the preload.
//
//	k_r = n E A_s/L, loss = s/(1/k_r + 1/k_m)/n
//
// Source: statics of springs in series.
func (r *Result) preload() {
	in, n := r.in, float64(len(r.in.At))
	r.Stiffness = n * in.Modulus * in.RodArea / in.Length
	give := 1 / r.Stiffness
	if in.Stack > 0 {
		give += 1 / in.Stack
	}
	r.Lost = in.Settlement / give / n
	r.Left = max(0, in.Preload*(1-in.Relaxed)-r.Lost)
}
