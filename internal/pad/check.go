package pad

import (
	"math"

	"footward.example/footward/internal/basis"
	"footward.example/footward/internal/limit"
)

const quarterPi = math.Pi / 4

// Strength are the strengths that the standard takes.
type Strength struct {
	Fcd      float64 // design compressive strength, Eurocode [MPa]
	Fctm     float64 // mean tensile strength, Eurocode [MPa]
	Fctd     float64 // design tensile strength, Eurocode [MPa]
	FctdPl   float64 // design tensile strength of plain concrete, Eurocode [MPa]
	Fyd      float64 // design yield strength of the bars, Eurocode [MPa]
	GammaS   float64 // partial factor of the bars, Eurocode [-]
	AlphaPl  float64 // alpha_ct,pl, Eurocode [-]
	Root     float64 // sqrt(f'c), of psi and in psi, ACI [MPa]
	Counts   float64 // thickness of plain concrete that counts, ACI [mm]
	BetaOne  float64 // beta_1 of the block, ACI [-]
	PhiPlain float64 // of plain concrete, ACI [-]
}

// Span is the pad along one direction, from the loaded area to the edge, for a
// strip of unit width.
type Span struct {
	A      float64 // overhang a beyond the loaded area [mm]
	Depth  float64 // effective depth d of the bars along it; of a plain pad 0 [mm]
	As     float64 // area of the bars per width [mm2/mm]
	Bar    float64 // diameter of the bars [mm]
	Gap    float64 // spacing of the bars [mm]
	Band   float64 // factor on the moment for the middle band, ACI 13.3.3.3 [-]
	M      float64 // moment at the face, underside in tension [Nmm/mm]
	AsMost float64 // area of the bars that may count [mm2/mm]
	MRd    float64 // resistance against M [Nmm/mm]
	AsNeed float64 // area of the bars that M needs [mm2/mm]; 0: none is enough
	RhoMin float64 // least share of the bars: of d (Eurocode) or of h (ACI) [-]
	Rho    float64 // share of the bars, likewise [-]
	MTop   float64 // moment at the face, top in tension [Nmm/mm]
	Plain  float64 // resistance of the plain section against a moment [Nmm/mm]
	V      float64 // shear at the section that counts [N/mm]
	At     float64 // distance of that section from the face [mm]
	RhoV   float64 // share of the bars that counts in shear [-]
	K      float64 // size factor k or lambda_s [-]
	VRd    float64 // shear resistance [N/mm]
	VFace  float64 // shear at the face [N/mm]
	Strut  float64 // resistance of the concrete at the face, Eurocode [N/mm]
	Need   float64 // thickness of a plain pad, Eurocode 12.9.3 [mm]
	Reach  float64 // distance x from the edge where bars are anchored, Eurocode [mm]
	Pull   float64 // force of the bars to be anchored, Eurocode 9.8.2.2 [N/mm]
	Bond   float64 // length that anchors a bar [mm]
	Has    float64 // length that is there [mm]
}

// Perimeter is a control perimeter of punching.
type Perimeter struct {
	A     float64 // distance from the loaded area [mm]
	D     float64 // depth that counts [mm]
	U     float64 // length [mm]
	Area  float64 // inside it [mm2]
	Force float64 // of the column less the mean pressure inside [N]
	Even  float64 // stress by the greatest pressure outside it [MPa]
	Turn  float64 // stress by the column's force and moments [MPa]
	V     float64 // the greater of the two [MPa]
	K     float64 // size factor k or lambda_s [-]
	Rho   float64 // share of the bars [-]
	R     float64 // resistance [MPa]
}

// Result holds every intermediate value of a check.
type Result struct {
	in *Input

	Scope  string  // why nothing can be checked; empty: it can
	V      float64 // force on the ground, pressing positive [N]
	Mx     float64 // about x at the underside, magnitude [Nmm]
	My     float64 // about y at the underside, magnitude [Nmm]
	Ex     float64 // eccentricity along x [mm]
	Ey     float64 // eccentricity along y [mm]
	Share  float64 // greatest eccentricity over half the size [-]
	OnPad  bool    // whether the resultant is on the pad
	Kern   bool    // whether the whole underside presses
	Factor float64 // greatest pressure over the mean [-]
	Gross  float64 // greatest pressure [MPa]
	Own    float64 // pressure of the weight [MPa]
	Net    float64 // greatest pressure that bends the pad [MPa]
	Hang   float64 // weight that no pressure carries, at the edge that lifts [MPa]

	Strength  Strength
	Spans     [2]Span   // along x and along y
	Punch     Perimeter // the perimeter that governs
	PunchSkip string    // why there is no punching; empty: there is
	Column    Perimeter // the perimeter of the loaded area, Eurocode
}

// Check verifies a pad. Errors: limit.Faults.
func Check(in *Input) (Result, error) {
	var faults limit.Faults
	Validate(in, &faults)
	if len(faults) > 0 {
		return Result{}, faults
	}
	return evaluate(in), nil
}

const (
	serviceOnly = "ACI 318-19 has no allowable stresses: give factored actions and say so"
	strongEC    = "concrete outside C12/15 to C50/60 is not covered"
	strongUS    = "f'c outside 17 to 69 MPa (2500 to 10 000 psi) is not covered (ACI 318-19 Table 19.2.1.1, 22.5.3.1)"
	yieldEC     = "bars outside f_yk 400 to 600 MPa are not covered (EN 1992-1-1 3.2.2(3))"
	yieldUS     = "bars above f_y 80 ksi are not covered"
	thickBar    = "bars thicker than 32 mm are not covered (EN 1992-1-1 8.4.2(2), 8.8)"
)

func (in *Input) scope() string {
	us := in.Design.Basis.US()
	f, y := in.Concrete.Strength, in.Reinforcement.Yield
	bars := in.reinforced()
	switch {
	case in.Design.Basis == basis.USASD && !in.Factored:
		return serviceOnly
	case !us && !within(f, 12, 50):
		return strongEC
	case us && !within(f, 17, 69):
		return strongUS
	case bars && !us && !within(y, 400, 600):
		return yieldEC
	case bars && us && y > 80e3*psi*(1+1e-2):
		return yieldUS
	case bars && !us && max(in.Reinforcement.X.Diameter, in.Reinforcement.Y.Diameter) > 32:
		return thickBar
	}
	return ""
}

// evaluate does the whole calculation.
func evaluate(in *Input) Result {
	r := Result{in: in, Scope: in.scope()}
	if r.Scope != "" {
		return r
	}
	r.press()
	if !r.OnPad {
		return r
	}
	r.spans()
	if in.Design.Basis.US() {
		r.aci()
	} else {
		r.eurocode()
	}
	return r
}

// spans sets the geometry of both directions and the moments at the faces.
//
//	m = p_net a^2/2, where the pad hangs w_h a^2/2 with tension at the top
//
// The shear of what hangs is not looked at: where the plain top holds, w_h is at most
// 0.24 f_ctd,pl (h/a)^2, and the shear of the section 0.36 f_ctd,pl h/a. The pull of
// a column is then at most what hangs, and shears its perimeter by less than f_ctd,pl/2.
//
// Source: statics of a cantilever.
func (r *Result) spans() {
	in, s := r.in, &r.in.Reinforcement
	x, y := &r.Spans[0], &r.Spans[1]
	x.A, y.A = (in.SizeX-in.Column.SizeX)/2, (in.SizeY-in.Column.SizeY)/2
	x.As, y.As = s.X.Area(), s.Y.Area()
	x.Bar, y.Bar, x.Gap, y.Gap = s.X.Diameter, s.Y.Diameter, s.X.Spacing, s.Y.Spacing
	if in.reinforced() {
		bottom := in.Thickness - s.Cover
		x.Depth, y.Depth = bottom-x.Bar/2, bottom-y.Bar/2
		if s.YBelow {
			x.Depth -= y.Bar
		} else {
			y.Depth -= x.Bar
		}
	}
	for i := range r.Spans {
		a := &r.Spans[i]
		a.Band = 1
		a.M = r.Net * a.A * a.A / 2
		a.MTop = r.Hang * a.A * a.A / 2
		a.VFace = r.Net * a.A
	}
}

// depth returns the mean effective depth.
func (r *Result) depth() float64 { return (r.Spans[0].Depth + r.Spans[1].Depth) / 2 }
