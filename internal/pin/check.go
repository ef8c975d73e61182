package pin

import (
	"math"

	"footward.example/footward/internal/limit"
)

// Result holds every intermediate value of a check.
type Result struct {
	in *Input
	ec bool

	Pins     int
	Uneven   float64 // share of the nearer of two plates over a half [-]
	Polar    float64 // sum of x^2 + z^2 of the pins [mm2]
	Nj       float64 // axial force that the pins carry [N]
	End      float64 // compression on the end grain, a magnitude [N]
	Unshared string  // why the pins cannot carry the actions; empty: they can
	Loaded   bool    // whether any pin carries a force
	Toward   bool    // whether a pin presses the timber towards the column's end, by Eurocode also square to the grain
	Sideways bool    // whether a pin presses across the grain
	Lengthy  bool    // whether a pin presses along the grain
	MaxSin   float64 // of the angles of the pins' forces to the grain [-]
	MaxCos   float64 // [-]
	Pulling  int     // rows that press towards the column's end
	Row      float64 // greatest force along the grain of one row [N]
	Shear    float64 // greatest shear in the timber within and beside the group [N]
	Most     float64 // greatest force on a pin [N]

	X       float64 // governing pin, from the middle of the group [mm]
	Z       float64 // [mm]
	F       float64 // its force [N]
	Fx      float64 // across the grain [N]
	Fz      float64 // along the grain, towards the column's end positive [N]
	Alpha   float64 // its angle to the grain [rad]
	Lateral float64 // its resistance [N]

	Timber Section
	EC     Eurocode
	US     American
	Steel  Steel
	Least  [4]Distance // a_1, a_2, a_3, a_4
	reason string      // why the basis does not cover the pins
}

// Distance is a distance of the layout against its minimum. Nothing needed
// where there is none.
type Distance struct {
	Has   float64 // [mm]
	Needs float64 // [mm]
}

// planes is the number of shear planes of a pin.
const planes = 2.0

// Check verifies a pinned column foot. Errors: limit.Faults; *limit.Scope for
// plates outside and inside together.
func Check(in *Input) (*Result, error) {
	var faults limit.Faults
	Validate(in, &faults)
	if len(faults) > 0 {
		return nil, faults
	}
	if in.Plates.Arrangement == Both {
		return nil, in.beyond()
	}
	r := &Result{in: in}
	r.compute()
	return r, nil
}

// beyond says why pins with four shear planes are not covered.
func (in *Input) beyond() *limit.Scope {
	if in.Design.Basis.US() {
		return &limit.Scope{Clause: "NDS 2018 12.3.9 (not compared with the printed edition)",
			Reason: "plates outside and inside cut a pin in four planes, each of which counts as a connection in single shear: its equations are not part of this check, nor is how three plates share the force"}
	}
	return &limit.Scope{Clause: "EN 1995-1-1:2004 8.1.3 (not compared with the printed edition)",
		Reason: "plates outside and inside cut a pin in four planes, whose failure modes must be compatible: that, and how three plates share the force, is not part of this check"}
}

// compute finds every value of a valid input.
func (r *Result) compute() {
	r.atPins()
	r.steel()
	if r.ec {
		r.splittingEC()
		r.plugEC()
	} else {
		r.splittingUS()
		r.tearUS()
	}
	r.block()
}

// atPins finds what the pins carry, how they are held, and how far apart they must
// stand.
func (r *Result) atPins() {
	r.ec, r.Pins = !r.in.Design.Basis.US(), r.in.Layout.Rows*r.in.Layout.InRow
	r.share()
	r.section()
	if r.ec {
		r.eurocode()
		r.leastEC()
	} else {
		r.us()
		r.leastUS()
	}
	r.worst()
}

// place returns where a pin stands from the middle of the group [mm].
func (r *Result) place(row, k int) (x, z float64) {
	l := &r.in.Layout
	return (float64(row) - float64(l.Rows-1)/2) * l.SpacingAcross,
		(float64(k) - float64(l.InRow-1)/2) * l.SpacingAlong
}

// force returns what the pin at x, z presses on the timber with: across the
// grain, and along it with the direction to the column's end positive.
//
//	F_x = k_e (V/n + M z/J), F_z = k_e (N/n - M x/J)
//
// k_e is 1 + e/x_p for an eccentricity e and plates whose inner faces are x_p from
// the middle: the pin counts as if both planes carried the share of the nearer
// plate, which leaves out the thickness of the plates on the safe side.
//
// Source: elastic method of bolt groups.
func (r *Result) force(x, z float64) (fx, fz float64) {
	a, n := &r.in.Actions, float64(r.Pins)
	fx, fz = a.V/n, r.Nj/n
	if r.Polar > 0 {
		fx += a.M * z / r.Polar
		fz -= a.M * x / r.Polar
	}
	return fx * r.Uneven, fz * r.Uneven
}

// share distributes the actions over the pins.
func (r *Result) share() {
	in := r.in
	r.Uneven = 1
	if e := in.Plates.Eccentricity; e > 0 {
		r.Uneven += e / in.apart()
	}
	r.Nj = in.Actions.N
	if in.EndBears && r.Nj < 0 {
		r.Nj, r.End = 0, -r.Nj
	}
	for row := range in.Layout.Rows {
		for k := range in.Layout.InRow {
			x, z := r.place(row, k)
			r.Polar += x*x + z*z
		}
	}
	if in.Actions.M != 0 && !(r.Polar > 0) {
		r.Unshared = "one pin is a hinge and cannot carry a moment"
	}
	for row := range in.Layout.Rows {
		along := 0.0
		if _, fz := r.force(r.place(row, 0)); fz > 0 {
			r.Pulling++
		}
		for k := range in.Layout.InRow {
			fx, fz := r.force(r.place(row, k))
			along += math.Abs(fz)
			f := math.Hypot(fx, fz)
			r.Most = max(r.Most, f)
			if f == 0 {
				continue
			}
			r.Loaded = true
			r.Sideways = r.Sideways || fx != 0
			r.Lengthy = r.Lengthy || fz != 0
			// By EN 1995-1-1 a force square to the grain counts for both ends.
			r.Toward = r.Toward || fz > 0 || r.ec && fz == 0
			r.MaxSin = max(r.MaxSin, math.Abs(fx)/f)
			r.MaxCos = max(r.MaxCos, math.Abs(fz)/f)
		}
		r.Row = max(r.Row, along)
	}
	// Shear in the timber grows level by level from the column's end. A moment the
	// other way round loads the levels in the other order, and the sign of a
	// moment is easily mistaken: the worse of both counts.
	sum := 0.0
	for k := range in.Layout.InRow {
		_, z := r.place(0, k)
		fx, _ := r.force(0, z)
		sum += fx / r.Uneven * float64(in.Layout.Rows)
		r.Shear = max(r.Shear, math.Abs(sum), math.Abs(in.Actions.V-sum))
	}
}

// worst finds the pin that governs against the timber.
func (r *Result) worst() {
	if r.reason != "" || r.Unshared != "" {
		return
	}
	in, use := r.in, -1.0
	for row := range in.Layout.Rows {
		for k := range in.Layout.InRow {
			x, z := r.place(row, k)
			fx, fz := r.force(x, z)
			f, alpha := math.Hypot(fx, fz), math.Atan2(math.Abs(fx), math.Abs(fz))
			if f == 0 {
				alpha = 0
			}
			resists := r.lateral(alpha)
			if u := f / resists; u > use {
				use = u
				r.X, r.Z, r.F, r.Fx, r.Fz, r.Alpha, r.Lateral = x, z, f, fx, fz, alpha, resists
			}
		}
	}
	r.lateral(r.Alpha) // leaves the values of the governing pin in r
}

// lateral returns the resistance of a pin at an angle to the grain [N].
//
// Source: EN 1995-1-1:2004 8.2.3, 8.5.1; NDS 2018 12.3.
func (r *Result) lateral(alpha float64) float64 {
	if r.ec {
		return r.lateralEC(alpha)
	}
	return r.lateralUS(alpha)
}

// tightest returns the distance that is tightest against its minimum.
func (r *Result) tightest() (which int, d Distance) {
	use := -1.0
	for i, v := range r.Least {
		if v.Needs > 0 && v.Needs/v.Has > use {
			use, which, d = v.Needs/v.Has, i, v
		}
	}
	return which, d
}

// distances gives the minima of the layout their places.
func (r *Result) distances(a1, a2, a3, a4 float64) {
	l := &r.in.Layout
	r.Least = [4]Distance{{l.SpacingAlong, a1}, {l.SpacingAcross, a2}, {l.EndDistance, a3}, {l.EdgeDistance, a4}}
	if l.InRow == 1 {
		r.Least[0] = Distance{}
	}
	if l.Rows == 1 {
		r.Least[1] = Distance{}
	}
}
