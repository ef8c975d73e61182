package plate

import (
	"math"

	"footward.example/footward/internal/basis"
)

const (
	clauseCantilever = "AISC Manual Part 14; AISC 360-22 F11"
	clauseBlock      = "AISC Design Guide 1, 2nd ed., 3.3, 3.4"
	clauseTension    = "AISC Design Guide 1, 2nd ed., 3.4; AISC 360-22 F11"
)

// American holds the intermediate values by United States practice.
type American struct {
	M1     float64 // cantilever along the moment (m of an I-section) [mm]
	N1     float64 // cantilever across it (n of an I-section) [mm]
	X      float64 // of lambda [-]
	Lambda float64 // [-]
	Inside float64 // cantilever that stands for the plate inside the footprint [mm]
	L      float64 // the longest [mm]
	Q      float64 // greatest pressure under the plate's width q_max [N/mm]
	E      float64 // eccentricity M/P [mm]; 0 under tension
	Ecrit  float64 // greatest eccentricity that needs no rods [mm]
	Small  bool    // whether the moment is small
	Need   float64 // moment about the rods (large moment) [Nmm]
	Have   float64 // greatest moment that pressure has about them [Nmm]
	Y      float64 // length of the pressed block [mm]
	Fp     float64 // pressure [MPa]
	Mu     float64 // greatest moment per width on the pressed side [Nmm/mm]
	Lifted bool    // whether a side lifts and rods hold it
	Tu     float64 // tension on the lifted side [N]
	Shared bool    // whether that is the tension of the base's sharing
	Arm    float64 // from the rods to the bending line x [mm]
	Width  float64 // effective width of the rod that has the least [mm]
	Mt     float64 // moment per width on the lifted side [Nmm/mm]
	Rm     float64 // available moment per width [Nmm/mm]
}

// Share of the footprint's size at whose ends the plate bends.
const (
	depthLine = 0.95 // depth of an I-section, sizes of a tube
	widthLine = 0.80 // width of an I-section, diameter of a pipe
)

// us finds the pressed block and the tension by United States practice.
//
//	e_crit = N/2 - P/(2 q_max)
//	small: Y = N - 2 e, f_p = P/(B Y)
//	large: Y = (f + N/2) - sqrt((f + N/2)^2 - 2 (M + P f)/q_max), T = q_max Y - P
//
// Source: AISC Design Guide 1, 2nd ed., 3.3, 3.4; AISC 360-22 J8, F11.
func (r *Result) us() {
	in, u := r.in, &r.US
	u.Rm = basis.Flexure.Factor(in.Design.Basis) * r.Fy * r.T * r.T / 4
	if r.Case == Idle || r.Case == Biaxial {
		return
	}
	f := &r.frame
	lineX, lineY := in.lines()
	u.M1, u.N1 = (f.L-lineY)/2, (f.B-lineX)/2
	if !f.AlongY {
		u.M1, u.N1 = (f.L-lineX)/2, (f.B-lineY)/2
	}
	u.Q = in.Bearing.Pressure * f.B
	switch {
	case r.Case == Concentric:
		u.Y, u.Fp = f.L, r.P/(f.L*f.B)
	case r.P > 0 && r.M <= r.P*(f.L-r.P/u.Q)/2:
		u.Small, u.E, u.Ecrit = true, r.M/r.P, (f.L-r.P/u.Q)/2
		u.Y = f.L - 2*u.E
		u.Fp = r.P / (f.B * u.Y)
	default:
		if r.P > 0 {
			u.E, u.Ecrit = r.M/r.P, (f.L-r.P/u.Q)/2
		}
		if !r.large() {
			return
		}
	}
	r.shareUS()
	if u.Fp > 0 {
		u.inside(in, r.P, f.L*f.B*in.Bearing.Pressure)
		u.press(in.Shared.Known)
	}
	r.lift()
}

// shareUS raises pressure and tension to those that the base was found to have.
func (r *Result) shareUS() {
	u, s := &r.US, &r.in.Shared
	if !s.Known || r.Reason != "" || r.Loose {
		return
	}
	if u.Fp > 0 {
		u.Fp = max(u.Fp, s.Peak)
	}
	if t := r.pulled(); t > u.Tu && (u.Lifted || r.hold(false)) {
		u.Lifted, u.Shared, u.Tu = true, true, t
	}
}

// lines returns the distances between the lines at which the plate bends, along
// x and along y [mm].
func (in *Input) lines() (x, y float64) {
	f := &in.Footprint
	switch f.Shape {
	case ISection:
		return widthLine * f.SizeX, depthLine * f.SizeY
	case Pipe:
		return widthLine * f.SizeX, widthLine * f.SizeY
	}
	return depthLine * f.SizeX, depthLine * f.SizeY
}

// large finds the block and the tension of a plate that lifts.
func (r *Result) large() bool {
	f, u := &r.frame, &r.US
	if r.P >= u.Q*f.L {
		return false // pressed beyond its strength all over: no equilibrium
	}
	if !r.hold(false) {
		return false
	}
	arm := r.Row.S + f.L/2
	u.Need, u.Have = r.M-r.N*r.Row.S, u.Q*arm*arm/2
	if u.Need <= 0 { // both sides lift
		if !r.hold(true) {
			return false
		}
		u.Tu = r.N/2 + r.M/(2*r.Row.S)
		u.Lifted, r.Both = true, true
		return true
	}
	if u.Need > u.Have {
		return false
	}
	// arm - sqrt(...) turned round, which keeps its digits when Y is short.
	u.Y = 2 * u.Need / u.Q / (arm + math.Sqrt(max(0, arm*arm-2*u.Need/u.Q)))
	u.Fp = r.in.Bearing.Pressure
	u.Tu = max(0, u.Q*u.Y+r.N)
	u.Lifted = true
	return true
}

// inside finds the cantilever that stands for the plate inside the footprint.
//
// I-section: lambda n', with the strength available pressed for phi P_p:
//
//	X = 4 d b_f / (d + b_f)^2 P / (phi P_p)
//	lambda = 2 sqrt(X) / (1 + sqrt(1 - X)) <= 1, n' = sqrt(d b_f) / 4
//
// Where a moment acts, lambda is 1. Two plates: half the gap, as a simple span.
// Tube and pipe: the plate inside as a simply supported slab with yield lines,
// a^2/24 (sqrt(3 + (a/b)^2) - a/b)^2 and R^2/6 per unit of pressure.
//
// Source: AISC Manual Part 14; K. W. Johansen, Yield-line theory, 1962 (from
// memory).
func (u *American) inside(in *Input, p, strength float64) {
	f := &in.Footprint
	clearX, clearY := f.SizeX-2*f.Thick, f.SizeY-2*f.Thick
	switch f.Shape {
	case ISection:
		u.X, u.Lambda = 1, 1
		if in.Actions.Mx == 0 && in.Actions.My == 0 {
			u.X = 4 * f.SizeX * f.SizeY / square(f.SizeX+f.SizeY) * p / strength
			if u.X < 1 {
				u.Lambda = min(1, 2*math.Sqrt(u.X)/(1+math.Sqrt(1-u.X)))
			}
		}
		u.Inside = u.Lambda * math.Sqrt(f.SizeX*f.SizeY) / 4
	case Tube:
		a, k := min(clearX, clearY), min(clearX, clearY)/max(clearX, clearY)
		u.Inside = a * (math.Sqrt(3+k*k) - k) / math.Sqrt(12)
	case Pipe:
		u.Inside = clearX / 2 / math.Sqrt(3)
	case TwoPlates:
		u.Inside = clearX / 2
	}
}

// press finds the greatest moment per width on the pressed side; where the bed is
// not a block, the whole cantilever is pressed.
func (u *American) press(whole bool) {
	u.L = max(u.M1, u.N1, u.Inside)
	u.Mu = u.Fp * square(max(u.N1, u.Inside)) / 2
	along := u.Fp * u.M1 * u.M1 / 2
	if u.Y < u.M1 && !whole {
		along = u.Fp * u.Y * (u.M1 - u.Y/2)
	}
	u.Mu = max(u.Mu, along)
}

// lift finds the moment per width on the lifted side: each rod bends the plate
// about the middle of the flange over a width that grows at 45 degrees, no wider
// than half way to the next rod or to the side of the plate.
func (r *Result) lift() {
	u := &r.US
	if !u.Lifted {
		return
	}
	f, in := &r.frame, r.in
	if !in.Footprint.flanged(f.AlongY) {
		r.Reason, u.Lifted = "the cantilever from the rods needs a flange, wall or plate across its direction; an I-section about its web's axis, a pipe and a solid footprint are not covered", false
		return
	}
	u.Arm = r.Row.S - f.H/2 + in.Footprint.Thick/2
	if r.beyondTips() > u.Arm {
		r.Reason, u.Lifted = farBeyond, false
		return
	}
	u.Width = in.leastWidth(f, u.Arm)
	u.Mt = u.Tu / float64(r.Row.Count) * u.Arm / u.Width
}

func (in *Input) leastWidth(f *frame, reach float64) float64 {
	least := math.Inf(1)
	across := func(i int) (float64, bool) {
		p := in.Rods.At[i]
		if f.AlongY {
			return p.X, p.Y*f.Side > f.H/2
		}
		return p.Y, p.X*f.Side > f.H/2
	}
	for i := range in.Rods.At {
		a, ok := across(i)
		if !ok {
			continue
		}
		left, right := min(reach, f.B/2+a), min(reach, f.B/2-a)
		for j := range in.Rods.At {
			if b, ok := across(j); ok && j != i {
				if b < a {
					left = min(left, (a-b)/2)
				} else {
					right = min(right, (b-a)/2)
				}
			}
		}
		least = min(least, left+right)
	}
	return least
}
