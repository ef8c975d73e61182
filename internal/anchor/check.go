package anchor

import (
	"math"
	"slices"

	"footward.example/footward/internal/basis"
	"footward.example/footward/internal/limit"
)

// Result holds every intermediate value of a check.
type Result struct {
	in     *Input
	ec     bool
	reason string // why the basis does not cover the whole; empty: it does

	As     float64 // stress area left after corrosion [mm2]
	D      float64 // diameter left [mm]
	Ah     float64 // bearing area of the head [mm2]
	Factor float64 // 1/gamma_Mc, or phi of the concrete [-]
	V      float64 // shear on the group [N]
	Ft     float64 // greatest tension of a rod [N]
	Fv     float64 // greatest shear of a rod [N]
	Steel  Steel
	Cone   Cone
	Pull   Pull
	Blow   Blow
	Pry    Cone    // of the rods that push
	KPry   float64 // k_8 or k_cp [-]
	PryRd  float64 // [N]
	Edge   Edge

	pulling, pushing group
	// The rods of them whose cone is used most.
	breaking, prying group
	Brittle          bool // whether the steel counts as brittle
	ByClass          bool // whether the catalogue tells so

	tense, sheared int // rods with the greatest forces, counted from 0
}

// Steel is the resistance of one rod.
type Steel struct {
	K6      float64 // share of f_uk in shear [-]
	KGrout  float64 // what grout under the plate leaves [-]
	NRk     float64 // nominal, tension [N]
	NRd     float64 // design, tension [N]
	VRk     float64 // nominal, shear [N]
	VRd     float64 // design, shear [N]
	GammaN  float64 // partial factor, or phi, tension [-]
	GammaV  float64 // partial factor, or phi, shear [-]
	Both    float64 // squares of the utilizations of the worst rod together [-]
	BothRod int     // that rod, counted from 0
	Reason  string  // why shear is not covered; empty: it is
	Lever   Lever
}

// Lever is the shear of a rod with a lever arm, EN 1992-4.
type Lever struct {
	Why    string  // why the rods bend; empty: they do not
	A3     float64 // [mm]
	E1     float64 // from the surface to the shear [mm]
	Arm    float64 // l_a [mm]
	AlphaM float64 // 1: the plate may turn, 2: it may not [-]
	W      float64 // elastic modulus of the stress section [mm3]
	M0     float64 // without tension [Nmm]
	Rod    int     // governing rod, counted from 0
	Ft, Fv float64 // its tension and shear [N]
	M      float64 // beside its tension [Nmm]
	VRd    float64 // design, not more than without a lever arm [N]
}

// Cone is the concrete cone of a group.
type Cone struct {
	H     float64 // embedment that counts [mm]
	K     float64 // k_1, or k_c in N and mm [-]
	Power float64 // of the embedment [-]
	N0    float64 // of one rod far from edges [N]
	A0    float64 // [mm2]
	A     float64 // [mm2]
	PsiS  float64 // edges [-]
	PsiRe float64 // shell spalling, EN [-]
	PsiEx float64 // eccentricity along x [-]
	PsiEy float64 // eccentricity along y [-]
	PsiC  float64 // uncracked concrete, ACI [-]
	NRk   float64 // nominal [N]
	NRd   float64 // design [N]
}

// Pull is the pull-out of one rod.
type Pull struct {
	K   float64 // k_2, or 8 psi_c,P [-]
	NRk float64 // nominal [N]
	NRd float64 // design [N]
}

// Blow is the blow-out of a side face, where it governs.
type Blow struct {
	Applies bool
	Side    int     // index in sides
	Rods    int     // in the row [-]
	C1      float64 // distance of the row from the face [mm]
	C2      float64 // corner distance [mm]
	S       float64 // greatest step along the face, EN; of the outer rods, ACI [mm]
	Force   float64 // tension that counts [N]
	N0      float64 // of one rod [N]
	A0      float64 // EN [mm2]
	A       float64 // EN [mm2]
	PsiS    float64 // corner [-]
	PsiG    float64 // group [-]
	PsiEc   float64 // eccentricity, EN [-]
	NRk     float64 // nominal [N]
	NRd     float64 // design [N]
}

// Edge is the concrete edge under shear, where it governs.
type Edge struct {
	Applies bool
	Side    int     // index in sides
	C1      float64 // distance of the row from the edge, as it counts [mm]
	C2      float64 // corner distance [mm]
	Lf      float64 // length of the rod that carries shear [mm]
	Alpha   float64 // exponent, EN [-]
	Beta    float64 // exponent, EN [-]
	V0      float64 // of one rod [N]
	A0      float64 // [mm2]
	A       float64 // [mm2]
	PsiS    float64 // corner [-]
	PsiH    float64 // thin block [-]
	PsiEc   float64 // eccentricity [-]
	PsiA    float64 // direction of the shear [-]
	PsiC    float64 // uncracked concrete, ACI [-]
	Vn      float64 // shear towards the edge [N]
	Vt      float64 // shear along the edge [N]
	E       float64 // eccentricity of the shear along the edge [mm]
	VRk     float64 // nominal [N]
	VRd     float64 // design [N]
}

// notDuctile are the classes that are not known to have the strain at rupture that a
// basis asks for: ISO 898-1 (from memory) has 12 % for 8.8 and 9 % for 10.9, 8 % for
// 6.8, and no measured 14 % for any class cold-formed, 4.8 to 6.8.
//
// ACI 318-19 2.3, ductile steel element; EN 1992-4:2018 7.2.2.3.1.
var notDuctile = [basis.Count][]string{
	basis.Eurocode: {"ISO 898-1 6.8"},
	basis.USLRFD:   {"ISO 898-1 4.8", "ISO 898-1 5.8", "ISO 898-1 6.8", "ISO 898-1 8.8", "ISO 898-1 10.9"},
}

// Check verifies a group of headed rods in concrete. Errors: limit.Faults.
func Check(in *Input) (*Result, error) {
	var faults limit.Faults
	Validate(in, &faults)
	if len(faults) > 0 {
		return nil, faults
	}
	r := &Result{in: in, ec: in.Design.Basis == basis.Eurocode}
	if r.reason = outside(in); r.reason != "" {
		return r, nil
	}
	r.ByClass = !in.Brittle && slices.Contains(notDuctile[in.Design.Basis], in.Steel.Class)
	r.Brittle = in.Brittle || r.ByClass
	r.As, r.D = in.Thread.NetArea(in.Corrosion), in.Thread.Diameter-in.Corrosion
	r.Ah = in.Head.bears(in.Thread.Diameter)
	r.pulling, r.pushing = in.gather(tension), in.gather(shear)
	// Shears in different directions count by their magnitudes.
	r.V = r.pushing.force
	for i, f := range in.Each {
		if f.Tension > r.Ft {
			r.Ft, r.tense = f.Tension, i
		}
		if v := math.Hypot(f.ShearX, f.ShearY); v > r.Fv {
			r.Fv, r.sheared = v, i
		}
	}
	if r.ec {
		r.Factor = 1 / in.Design.EC.GammaC
		r.steelEN()
		r.Pull = r.pullEN()
		r.KPry = max(1, in.PryFactor)
	} else {
		r.Factor = phiConcrete
		r.steelACI()
		r.Pull = r.pullACI()
		r.KPry = pryACI(in.Embedment)
	}
	r.breaking, r.Cone = r.worst(&r.pulling, tension)
	r.prying, r.Pry = r.worst(&r.pushing, shear)
	r.PryRd = r.KPry * r.Pry.NRd
	r.blow()
	r.edge()
	return r, nil
}

func tension(f Force) float64 { return f.Tension }

func shear(f Force) float64 { return math.Hypot(f.ShearX, f.ShearY) }

// bears returns the bearing area of a head: a round head counts as far as it is
// thick enough.
//
//	A_h = pi/4 (d_h^2 - d^2), d_h <= 6 t_h + d
//
// Source: EN 1992-4:2018 7.2.1.5 (from memory).
func (h *Head) bears(d float64) float64 {
	if h.Area > 0 {
		return h.Area
	}
	dh := min(h.Diameter, 6*h.Thickness+d)
	return math.Pi / 4 * (dh*dh - d*d)
}

// cone returns the cone of a group.
//
//	N = N_0 A/A_0 psi_s psi_re psi_ec psi_c, A_0 = (3 h)^2
//	psi_s = 0.7 + 0.3 c/(1.5 h) <= 1, psi_ec = 1/(1 + 2 e/(3 h)) for each direction
//
// Source: EN 1992-4:2018 7.2.1.4; ACI 318-19 17.6.2, whose e/(1.5 h) is the same,
// and which has 16 h^(5/3) for 24 h^1.5 from 11 to 25 in. (17.6.2.2.3).
func (r *Result) cone(g *group) Cone {
	if len(g.rods) == 0 {
		return Cone{}
	}
	in := r.in
	c := Cone{H: g.reduced(in.Embedment), PsiRe: 1, PsiC: 1}
	if r.ec {
		c.K = kCone(in.Uncracked)
		c.PsiRe = min(1, 0.5+c.H/200)
	} else {
		c.K = coneACI * r.light()
		if in.Uncracked {
			c.PsiC = coneUncrackedACI
		}
	}
	c.Power = 1.5
	if !r.ec && within(c.H, deepFrom*(1-1e-9), deepTo*(1+1e-9)) {
		c.K, c.Power = deepACI*r.light(), 5.0/3
	}
	c.N0 = c.K * math.Sqrt(in.Block.Concrete.Strength) * math.Pow(c.H, c.Power)
	c.A0, c.A = 9*c.H*c.H, in.cones(g.rods, 1.5*c.H)
	c.PsiS = min(1, 0.7+0.3*g.least/(1.5*c.H))
	c.PsiEx, c.PsiEy = 1/(1+2*g.ex/(3*c.H)), 1/(1+2*g.ey/(3*c.H))
	c.NRk = c.N0 * c.A / c.A0 * c.PsiS * c.PsiRe * c.PsiEx * c.PsiEy * c.PsiC
	c.NRd = c.NRk * r.Factor
	return c
}

// blow finds the side face whose blow-out governs.
func (r *Result) blow() {
	in, worst := r.in, 0.0
	for side := range sides {
		for _, i := range r.pulling.rods {
			c1 := in.edges(in.At[i])[side]
			if r.ec && c1 > 0.5*in.Embedment || !r.ec && in.Embedment <= 2.5*c1 {
				continue
			}
			row := in.row(r.pulling.rods, side, c1)
			b := Blow{Applies: true, Side: side, Rods: len(row), C1: c1, C2: in.corner(row, side)}
			if r.ec {
				r.blowEN(&b, row)
			} else {
				r.blowACI(&b, row)
			}
			if u := b.Force / b.NRd; !r.Blow.Applies || u > worst {
				r.Blow, worst = b, u
			}
		}
	}
}
