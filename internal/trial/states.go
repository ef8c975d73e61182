package trial

import "math"

// factorLikeASD is the total factor of IBC on the load at failure.
const factorLikeASD = 2.5

// SampleCorrection returns C_P of n tests [-].
//
//	C_P = (1 + 1/n) m/(m - 2),  m = n - 1;  5.7 at n = 3
//
// Source: AISI S100-16 K2.1.1 (from memory).
func SampleCorrection(n int) float64 {
	if n == 3 {
		return 5.7
	}
	m := float64(n - 1)
	return (1 + 1/float64(n)) * m / (m - 2)
}

// LoadCalibration returns C_phi and V_Q [-] of 1.2 D + 1.6 L at a ratio r of dead to
// live load.
//
//	C_phi = (1.2 r + 1.6)/(1.05 r + 1),  V_Q = sqrt((1.05 r 0.1)^2 + 0.25^2)/(1.05 r + 1)
//
// Source: AISI S100 Commentary (from memory).
func LoadCalibration(r float64) (c, v float64) {
	return (1.2*r + 1.6) / (1.05*r + 1), math.Hypot(1.05*r*0.1, 0.25) / (1.05*r + 1)
}

// ResistanceFactor returns phi [-] on the mean of n tests.
//
//	phi = C_phi exp(-beta0 sqrt(V_M^2 + V_F^2 + C_P V_P^2 + V_Q^2)),  V_P >= 0.065
//
// M_m, F_m and P_m are 1: the tests are the strength.
//
// Source: AISI S100-16 K2.1.1 (from memory).
func ResistanceFactor(n int, beta, vm, vf, vp, c, vq float64) float64 {
	return c * math.Exp(-beta*math.Sqrt(vm*vm+vf*vf+SampleCorrection(n)*vp*vp+vq*vq))
}

// Allowance is what IBC 1709.3.1 allows.
type Allowance struct {
	Load                        float64 // allowable [N]
	Deflection, Failure, Tested float64 // least of each [N]; Failure 0: none failed
	Reason                      string  // why none is given
}

func allowance(tests []Test) (a Allowance) {
	a.Deflection, a.Tested = math.Inf(1), math.Inf(1)
	failure := math.Inf(1)
	for i := range tests {
		t := &tests[i]
		if t.Deflection == 0 {
			return Allowance{Reason: "the load at the deflection limit of every test is needed"}
		}
		a.Deflection, a.Tested = min(a.Deflection, t.Deflection), min(a.Tested, t.Load)
		if t.Failed {
			failure = min(failure, t.Load)
		}
	}
	a.Load = min(a.Deflection, a.Tested/factorLikeASD, failure/factorLikeASD)
	if failure < math.Inf(1) {
		a.Failure = failure
	}
	return a
}

// Resistance is what the pattern of AISI S100 K2 comes to.
type Resistance struct {
	Phi, Omega float64 // on the mean [-]
	Load       float64 // phi times the mean [N]
	CP, VP     float64 // [-]
	CPhi, VQ   float64 // [-]
	Reason     string  // why none is given
}

func (r *Result) resistance(failed []float64) (s Resistance) {
	switch {
	case r.Survived > 0:
		return Resistance{Reason: "tests without failure have no mean: phi needs every test loaded to failure"}
	case len(failed) < 3:
		return Resistance{Reason: "at least 3 tests to failure are needed"}
	}
	for _, v := range failed {
		if len(failed) < 6 && math.Abs(v/r.Mean-1) > 0.15 {
			return Resistance{Reason: "a result is more than 15 % off the mean: three more tests are needed"}
		}
	}
	in := &r.in.States
	s.CPhi, s.VQ = 1.52, 0.21
	if in.HasDeadLive {
		s.CPhi, s.VQ = LoadCalibration(in.DeadLive)
	}
	s.CP, s.VP = SampleCorrection(len(failed)), max(0.065, r.Variation)
	s.Phi = ResistanceFactor(len(failed), in.Beta, in.Material, in.Fabrication, s.VP, s.CPhi, s.VQ)
	s.Omega, s.Load = 1.6/s.Phi, s.Phi*r.Mean
	return s
}
