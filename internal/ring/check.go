package ring

import (
	"math"

	"footward.example/footward/internal/basis"
	"footward.example/footward/internal/geom"
	"footward.example/footward/internal/limit"
)

// Result holds every intermediate value of a check.
type Result struct {
	in *Input

	Safety  Safety  // the factors used, defaults filled in
	Shoe    float64 // d_0 [mm]
	Press   float64 // compression on top, without preload [N]
	Preload float64 // of all rods together, which presses too [N]
	Weight  float64 // of the fill, characteristic [N]
	Height  float64 // of the stack [mm]
	Shear   float64 // [N]
	Moment  float64 // on top [Nmm]
	Load    float64 // compression that unloads the rods [N]
	Tiers   []TierResult
	Slides  []Slide // the shoe on the fill, tier on tier, the last tier on what is below
	Turn    Turn
	Surface float64 // bearing resistance of the fill under the shoe without rings [MPa]
	Settles Settles
	Springs geom.Springs
	Heave   Heave

	// Unverified says why no state can pass; empty where one can.
	Unverified string
	// NoService says why service values are missing; empty where they are not.
	NoService string
	// NoStress says why the fill has no stresses to check; Skipped: none is needed.
	NoStress string
	Skipped  bool
}

// TierResult is what one tier comes to.
type TierResult struct {
	Top, Bottom   Face    // under the design values
	ServiceTop    Face    // under the service values, weight in full
	ServiceBottom Face    // likewise
	Within        Face    // between top and bottom, where the edge stress is greater than at both; else zero
	ServiceWithin Face    // likewise under the service values
	UnevenWithin  Face    // between top and bottom, where edge over mean stress is greater than at both; else zero
	Wider         bool    // what presses on the tier reaches over the edge of its ring, or the edge of one above does
	Uneven        float64 // greatest edge stress over mean stress of top, bottom and between [-]
	Wall          float64 // friction that the ring may have to carry down to here [N]

	Phi     float64 // design angle of friction [rad]
	C       float64 // design cohesion [MPa]
	Kp      float64 // [-]
	Ka      float64 // [-]
	K0      float64 // of the characteristic angle [-]
	Even    float64 // greatest of the even stresses of top, bottom and between [MPa]
	Edge    float64 // greatest of the edge stresses [MPa]
	Service float64 // greatest of the edge stresses under service values [MPa]

	Durability  float64 // share of the ring's strength left [-]
	Left        float64 // share of its steel that corrosion leaves [-]; 1 where none is told
	Joint       float64 // [-]
	Partial     float64 // [-]
	Reduced     float64 // hoop strength after durability and joint [N]; 0: not known
	Stretch     float64 // hoop force at the strain allowed of an extensible ring [N]; 0: none
	Rd          float64 // design hoop resistance T_Rd [N]; 0: not known
	Confinement float64 // that the ring gives the fill [MPa]
	Apparent    float64 // the same as a cohesion c_r, never added [MPa]
	Strength    float64 // design strength of the fill [MPa]
	ByCohesion  float64 // the same by c_r [MPa]

	Needed   float64 // confinement that the edge stress needs [MPa]
	ByNeed   float64 // hoop force of it [N]
	Moves    float64 // outward movement of the ring at T_Rd [mm]; 0: not known
	K        float64 // coefficient of earth pressure after that movement [-]
	ByEarth  float64 // hoop force by it and compaction [N]
	Ultimate float64 // the greater [N]
	ByRest   float64 // hoop force in service by K_0 and compaction [N]

	Along      float64 // mean of the stress in service over the height, without preload [MPa]
	Give       float64 // height over the area to which the load spreads [1/mm]
	Modulus    float64 // constrained modulus M_s, of a grade the secant [MPa]; 0: not known
	Stiffness  float64 // of the ring that corrosion leaves [N/mm]; 0: not known
	Compressed float64 // settlement by M_s [mm]
	HoopStrain float64 // [-]
	Spread     float64 // settlement by the strain of the ring [mm]
}

// Slide is sliding at one interface.
type Slide struct {
	Angle float64 // of friction, characteristic [rad]
	Force float64 // that rubs [N]
	Holds float64 // [N]
}

// Turn is overturning about the edge of the lowest tier.
type Turn struct {
	Demand float64 // [Nmm]
	Holds  float64 // [Nmm]
}

// Settles is the settlement of the stack itself.
type Settles struct {
	Total float64 // all that is known [mm]
	After float64 // of it by the load in service alone [mm]
	// Gap says what is missing of Total; empty where nothing is.
	Gap string
}

// The shares by default. Chosen for this project on the cautious side, no source.
var (
	durability = [...]float64{Steel: 0.8, Concrete: 0.8, Geocell: 0.25, Tyre: 0.25, Other: 0.25}
	joints     = [...]float64{Steel: 0.5, Concrete: 0.5, Geocell: 0.5, Tyre: 1, Other: 0.5}
	// partials lean on EN 1993-1-8 Table 2.1, EN 1992-1-1 2.4.2.4 and, for geocells,
	// on practice for reinforced fill (from memory).
	partials = [...]float64{Steel: 1.25, Concrete: 1.5, Geocell: 1.4, Tyre: 1.5, Other: 1.5}
	// heavy and light are factors on weight: EN 1990 Table A1.2; ASCE 7-22 2.3.1. With
	// ASD 0.9 over the factor of safety of 1.5 is the 0.6 of ASCE 7-22 2.4.1.
	heavy = [basis.Count]float64{basis.Eurocode: 1.35, basis.USLRFD: 1.4, basis.USASD: 1}
	light = [basis.Count]float64{basis.Eurocode: 0.9, basis.USLRFD: 0.9, basis.USASD: 0.9}
)

const strainByDefault = 0.02

func or(v, other float64) float64 {
	if v == 0 {
		return other
	}
	return v
}

// Check verifies a stack tier by tier. Errors: limit.Faults.
//
// Source: statics; Mohr and Coulomb; as each step says.
func Check(in *Input) (*Result, error) {
	var faults limit.Faults
	Validate(in, &faults)
	if err := faults.Err(); err != nil {
		return nil, err
	}
	r := &Result{in: in, Safety: in.Safety, Tiers: make([]TierResult, len(in.Tiers))}
	s, b := &r.Safety, in.Design.Basis
	s.GammaPhi, s.Fill, s.Stability = or(s.GammaPhi, 1.25), or(s.Fill, 3), or(s.Stability, 1.5)
	s.Unfavourable, s.Favourable = or(s.Unfavourable, heavy[b]), or(s.Favourable, light[b])
	a := &in.Actions
	r.Press = max(0, -a.N)
	r.Preload = float64(in.Rods.Count) * in.Rods.Preload
	r.Shear, r.Moment = math.Hypot(a.Vx, a.Vy), math.Hypot(a.Mx, a.My)
	r.Shoe = or(in.Shoe.Loaded, min(in.Shoe.SizeX, in.Shoe.SizeY))
	r.scope()
	for i := range r.Tiers {
		r.strength(i)
	}
	r.stresses()
	for i := range r.Tiers {
		r.hoops(i)
	}
	r.bearing()
	r.heave()
	r.stability()
	r.settlement()
	r.springs()
	return r, nil
}

// momentAt returns the moment at a depth below the shoe, shear and moment by their
// amounts.
func momentAt(a *geom.Actions, depth float64) float64 {
	return math.Hypot(math.Abs(a.Mx)+math.Abs(a.Vy)*depth, math.Abs(a.My)+math.Abs(a.Vx)*depth)
}

// cuts are the parts into which a tier is cut to find its greatest stress: the lever
// of a shear may grow faster with depth than the circle to which the load spreads.
const cuts = 8

// stresses sets the faces of the tiers.
//
//	d_i = min(D_i, d_(i-1) + h_i), N_i = N_(i-1) + gamma pi D_i^2 h_i/4
//
// Source: 2 to 1 spread, common practice in soil; derived for rings. Statics.
func (r *Result) stresses() {
	in, d := r.in, r.Shoe
	for i := range in.Tiers {
		t, out := &in.Tiers[i], &r.Tiers[i]
		// A ring hands what its edge carries to one as wide below it.
		out.Wider = r.reach(i) > t.Diameter || i > 0 && r.Tiers[i-1].Wider && r.reach(i) == t.Diameter
		d = min(d, t.Diameter)
		own := t.Fill.UnitWeight * math.Pi / 4 * t.Diameter * t.Diameter
		at := func(level int) (f, s Face) {
			z := t.Height * float64(level) / cuts
			return r.faces(min(t.Diameter, d+z), r.Height+z, r.Weight+own*z)
		}
		out.Top, out.ServiceTop = at(0)
		out.Bottom, out.ServiceBottom = at(cuts)
		for level := 1; level < cuts; level++ {
			f, s := at(level)
			out.Within.keep(f, level, &out.Top, &out.Bottom)
			out.UnevenWithin.keepUneven(f, level, &out.Top, &out.Bottom)
			out.ServiceWithin.keep(s, level, &out.ServiceTop, &out.ServiceBottom)
		}
		d = min(t.Diameter, d+t.Height)
		r.Height += t.Height
		r.Weight += own * t.Height
	}
}

// faces returns the contact at a depth, on a circle and under a weight, by the design
// and by the service values.
func (r *Result) faces(d, depth, weight float64) (f, s Face) {
	in := r.in
	f = Face{Diameter: d, Depth: depth, Moment: momentAt(&in.Actions, depth),
		Force: r.Press + r.Preload + r.Safety.Unfavourable*weight,
		Light: r.Press + r.Safety.Favourable*weight}
	if r.NoStress == "" {
		f = face(f)
	}
	service := max(0, -in.Service.N)
	s = Face{Diameter: d, Depth: depth, Moment: momentAt(&in.Service, depth),
		Force: service + r.Preload + weight, Light: service + weight}
	if r.NoService == "" {
		s = face(s)
	}
	return f, s
}

// lost reports whether the resultant leaves the loaded circle anywhere in the tier.
func (out *TierResult) lost() bool { return out.Top.Lost || out.Bottom.Lost || out.Within.Lost }

func (out *TierResult) serviceLost() bool {
	return out.ServiceTop.Lost || out.ServiceBottom.Lost || out.ServiceWithin.Lost
}

// reach returns how wide what presses on a tier is.
func (r *Result) reach(i int) float64 {
	switch s := &r.in.Shoe; {
	case i > 0:
		return r.in.Tiers[i-1].Diameter
	case s.Round:
		return s.SizeX
	default:
		return math.Hypot(s.SizeX, s.SizeY)
	}
}
