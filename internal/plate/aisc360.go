package plate

import (
	"math"

	"footward.example/footward/internal/basis"
)

const (
	clauseCantilever = "AISC Manual Part 14; AISC 360-22 F11"
	clauseBlock      = "AISC Design Guide 1, 3rd ed. 2024, chapter 4"
	clauseTension    = "AISC Design Guide 1, 3rd ed. 2024, chapter 4; AISC 360-22 F11"
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
	Block  float64 // length of the block that balances with the rods [mm]
	Y      float64 // length that is pressed [mm]
	Fp     float64 // pressure [MPa]
	Bent   bool    // whether the sharing of the base bends the pressed side more
	Along  float64 // moment per width of the cantilever along the moment [Nmm/mm]
	Across float64 // of that across it [Nmm/mm]
	Under  float64 // of that which stands for the plate inside [Nmm/mm]
	Mu     float64 // the greatest [Nmm/mm]
	Lifted bool    // whether a side lifts and rods hold it
	Tu     float64 // tension on the lifted side [N]
	Shared bool    // whether that is the tension of the base's sharing
	Arm    float64 // from the rods to the bending line x [mm]
	Wide   float64 // width at 45 degrees of the rod that has the least [mm]
	Corner Corner  // straight yield line past the flange that holds least
	Width  float64 // effective width of a rod, no more than that line gives [mm]
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
// Source: AISC Design Guide 1, 3rd ed. 2024, chapter 4; AISC 360-22 J8, F11.
func (r *Result) us() {
	in, u := r.in, &r.US
	u.Rm = basis.Flexure.Factor(in.Design.Basis) * r.Fy * r.T * r.T / 4
	if r.Case == Idle {
		return
	}
	f := &r.frame
	r.rows()
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
	r.bend()
	r.lift()
}

// bend finds the moment on the pressed side: of the block, and of what the base
// was found to press. A block of full strength stands for an elastic bed only
// where its pressure is not known.
func (r *Result) bend() {
	in, u, f, s := r.in, &r.US, &r.frame, &r.in.Shared
	raised := s.Known && r.share()
	if !(u.Fp > 0) {
		return
	}
	u.inside(in, r.P, f.L*f.B*in.Bearing.Pressure)
	u.L = max(u.M1, u.N1, u.Inside)
	u.press(f.L)
	if !s.Known || !s.Elastic && !raised {
		return
	}
	peak := *u
	peak.Bent, peak.Fp, peak.Y = true, s.Peak, f.L
	peak.press(f.L)
	if !s.Elastic {
		block := *u
		_, sum, _ := r.sharing()
		block.Bent, block.Fp, block.Y = true, in.Bearing.Pressure, min(f.L, max(0, sum-r.N)/u.Q)
		block.press(f.L)
		if block.Mu < peak.Mu {
			peak = block
		}
	}
	if peak.Mu > u.Mu || s.Elastic && r.Case != Concentric {
		*u = peak
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
	f, u, l := &r.frame, &r.US, &r.lifts
	switch {
	case r.P >= u.Q*f.L:
		return false // pressed beyond its strength all over: no equilibrium
	case len(r.in.Rods.At) == 0:
		r.Loose = true
		return false
	case l.why[first] != Fits:
		r.Misfit = l.why[first]
		return false
	}
	row := l.row[first]
	arm := row.S + f.L/2
	u.Need, u.Have = r.M-r.N*row.S, u.Q*arm*arm/2
	if u.Need <= 0 { // both sides lift
		return r.pullBoth()
	}
	if u.Need > u.Have {
		return false
	}
	// arm - sqrt(...) turned round, which keeps its digits when Y is short.
	u.Y = 2 * u.Need / u.Q / (arm + math.Sqrt(max(0, arm*arm-2*u.Need/u.Q)))
	u.Block, u.Fp = u.Y, r.in.Bearing.Pressure
	return r.raise(first, max(0, u.Q*u.Y+r.N), false)
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

// shortest is the least share of a cantilever across it that a pressed strip bends:
// one that is shorter spreads, at much less than 45 degrees.
const shortest = 1.0 / 3

// press finds the greatest moment per width on the pressed side of a plate of the
// length l, pressed over Y from its edge:
//
//	along:  f_p Y (m - Y/2) for Y < m, else f_p m^2/2
//	across: f_p n^2/2, inside: f_p l_i^2/2, each less in proportion where it is
//	        pressed over less than a third of n from the edge, of l_i from m on
//
// Source: AISC Design Guide 1, 3rd ed. 2024, chapter 4; the shares are statics.
func (u *American) press(l float64) {
	y := min(u.Y, u.M1)
	u.Along = u.Fp * y * (u.M1 - y/2)
	u.Across = u.Fp * u.N1 * u.N1 / 2 * strip(u.Y, u.N1, l)
	u.Under = u.Fp * u.Inside * u.Inside / 2 * strip(u.Y-u.M1, u.Inside, l-u.M1)
	u.Mu = max(u.Along, u.Across, u.Under)
}

// strip returns the share of a cantilever's moment that a strip of the length y
// brings, where l is the most that can be pressed [-].
func strip(y, lever, l float64) float64 {
	if y >= l || lever == 0 {
		return 1
	}
	return min(1, max(0, y)/(shortest*lever))
}

// lift finds the moment per width on the lifted side: each rod bends the plate
// about the middle of the flange over a width that grows at 45 degrees, no wider
// than half way to the next rod or to the side of the plate, nor than yield lines
// past the flange hold.
func (r *Result) lift() {
	u, l, in := &r.US, &r.lifts, r.in
	if r.Misfit != Fits || r.Loose {
		return
	}
	worst := -1.0
	for k := range l.t {
		row := &l.row[k]
		if !(l.t[k] > 0 || k == first && u.Need > 0 && u.Fp > 0 && row.Count > 0) {
			continue
		}
		if !in.Footprint.flanged(r.frame.AlongY) {
			r.Misfit, u.Lifted = NoFlange, false
			continue
		}
		arm := row.S - r.frame.H/2 + in.Footprint.Thick/2
		if (row.Gauge-r.frame.W)/2 > arm {
			r.Misfit, u.Lifted = RoundCorner, false
			continue
		}
		f := r.side(k)
		corner := in.corner(&f, row, row.S-f.H/2, r.pulled())
		wide := in.leastWidth(&f, arm)
		width := min(wide, corner.Hold*arm/float64(row.Count))
		if m := l.t[k] / float64(row.Count) * arm / width; m > worst && r.Misfit == Fits {
			worst = m
			u.Lifted, u.Shared, u.Tu, u.Arm, u.Wide, u.Corner, u.Width, u.Mt = true, l.shared[k], l.t[k], arm, wide, corner, width, m
			r.turn(k)
		}
	}
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
