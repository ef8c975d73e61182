// Package friction finds what friction under a column base takes of its shear,
// for the rods of a base and for the base as a whole alike.
package friction

import (
	"math"

	"footward.example/footward/internal/basis"
	"footward.example/footward/internal/derive"
	"footward.example/footward/internal/limit"
)

// Clauses.
const (
	ClauseEC = "EN 1993-1-8:2005 6.2.2(6)"
	ClauseUS = "AISC Design Guide 1, 3rd ed. (2024), Eq. 4-30"
)

const (
	crushShare  = 0.2               // of f'c; Design Guide 1, 3rd ed., Eq. 4-30
	stressLimit = 0.8 * ksi         // MPa; the same
	ksi         = 6.894757293168361 // MPa
	takenFc     = 4 * ksi           // MPa, where the concrete is not known: there both limits are one
	sourceUS    = ClauseUS + "; Omega is 1.5/phi, the guide prints LRFD only"
	sourceMu    = "steel on grout or concrete; " + ClauseUS + " with 0.4 in Example 4.7-8"
	givenMu     = "given in the request"
)

// Input is what presses under a base, and on what.
type Input struct {
	Compression float64 // certain to act with the shear, a magnitude [N]
	Coefficient float64 // US bases [-]; Eurocode takes basis.Factors.CFd
	Assumed     bool    // whether the coefficient was not given
	Area        float64 // contact under the plate, US bases [mm2]; 0: no concrete, no limit of it
	Strength    float64 // f'c, US bases [MPa]; 0: not known
}

// Result is what friction takes, with every intermediate value.
type Result struct {
	Mu      float64 // coefficient [-]
	Slide   float64 // what slides by the coefficient [N]
	Crush   float64 // limit by the concrete [N]
	Stress  float64 // limit by the stress [N]
	Take    float64 // what friction takes [N]
	Assumed bool    // whether the strength of the concrete was taken

	in     Input
	design basis.Design
}

// Find returns what friction takes of the shear. Whatever does not press takes
// none.
//
//	Eurocode: F_f,Rd = C_f,d N_c,Ed
//	US: F_f = min(phi_f mu P, phi_c 0.2 f'c A_c, phi_c 0.8 ksi A_c)
//	phi_f 0.65, phi_c 0.75; Omega = 1.5/phi
//
// Source: EN 1993-1-8:2005 6.2.2(6); AISC Design Guide 1, 3rd ed. (2024), Eq. 4-30.
func Find(d *basis.Design, in Input) Result {
	r := Result{in: in, design: *d, Mu: d.EC.CFd}
	p := max(0, in.Compression)
	if !d.Basis.US() {
		r.Slide = r.Mu * p
		r.Take = r.Slide
		return r
	}
	r.Mu = in.Coefficient
	r.Slide = basis.Friction.Factor(d.Basis) * r.Mu * p
	r.Take = r.Slide
	if in.Area > 0 {
		fc := in.Strength
		if r.Assumed = fc == 0; r.Assumed {
			fc = takenFc
		}
		r.in.Strength = fc
		limit := basis.FrictionLimit.Factor(d.Basis) * in.Area
		r.Crush, r.Stress = limit*crushShare*fc, limit*stressLimit
		r.Take = min(r.Slide, r.Crush, r.Stress)
	}
	return r
}

// Derive writes the calculation.
func (r *Result) Derive(s *derive.Sheet) {
	b := r.design.Basis
	if !b.US() {
		s.Factor("C_f,d", r.Mu, ClauseEC)
		s.Given("N_c,Ed", r.in.Compression, "N", "compression that acts with the shear")
		s.Step("F_f,Rd", "C_f,d N_c,Ed", r.Take, "N", ClauseEC)
		return
	}
	slide, crush, stress := "phi_f mu N_c", "phi_c 0.2 f_c,f A_c,f", "phi_c q_f A_c,f"
	if b == basis.USLRFD {
		s.Factor("phi_f", basis.Friction.Phi, sourceUS)
		s.Factor("phi_c", basis.FrictionLimit.Phi, sourceUS)
	} else {
		s.Factor("Omega_f", basis.Friction.Omega, sourceUS)
		s.Factor("Omega_c", basis.FrictionLimit.Omega, sourceUS)
		slide, crush, stress = "mu N_c / Omega_f", "0.2 f_c,f A_c,f / Omega_c", "q_f A_c,f / Omega_c"
	}
	if r.in.Assumed {
		s.Factor("mu", r.Mu, sourceMu)
	} else {
		s.Factor("mu", r.Mu, givenMu)
	}
	s.Given("N_c", r.in.Compression, "N", "compression that acts with the shear")
	if r.in.Area == 0 {
		s.Step("F_f", slide, r.Take, "N", ClauseUS)
		return
	}
	s.Given("f_c,f", r.in.Strength, "MPa", "concrete or grout under the plate")
	s.Given("A_c,f", r.in.Area, "mm2", "contact under the plate")
	s.Given("q_f", stressLimit, "MPa", "0.8 ksi; "+ClauseUS)
	s.Step("F_f", "min("+slide+", "+crush+", "+stress+")", r.Take, "N", ClauseUS)
}

// The notices, in the order of an answer.
var (
	coefficient = &limit.Notice{Code: "friction_coefficient", Severity: limit.Assumption,
		Text: "The coefficient of friction was not given: 0.4 is taken, for steel on grout or concrete as in AISC Design Guide 1, 3rd ed., Example 4.7-8."}
	concrete = &limit.Notice{Code: "friction_concrete", Severity: limit.Assumption,
		Text: "The strength of the concrete or grout under the plate was not given: friction is limited as on 4000 psi (27.6 MPa) or more; weaker concrete takes at most 0.2 f'c on the contact."}
)

// Remarks returns the notices in order.
func Remarks() []*limit.Notice { return []*limit.Notice{coefficient, concrete} }

// Notices appends the notices.
func (r *Result) Notices(l *limit.Notices) {
	if r.in.Assumed && r.design.Basis.US() {
		l.Add(coefficient)
	}
	if r.Assumed {
		l.Add(concrete)
	}
}

// Pressed returns the part of a plate that is pressed evenly about the resultant
// [mm2]; 0 where that leaves the plate.
//
// Source: statics.
func Pressed(sizeX, sizeY, ex, ey float64) float64 {
	return max(0, sizeX-2*math.Abs(ex)) * max(0, sizeY-2*math.Abs(ey))
}
