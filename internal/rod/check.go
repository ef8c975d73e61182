package rod

import (
	"math"

	"footward.example/footward/internal/basis"
	"footward.example/footward/internal/friction"
	"footward.example/footward/internal/geom"
	"footward.example/footward/internal/limit"
)

// Result holds every intermediate value of a check.
type Result struct {
	in    *Input
	Share geom.Share // when the actions were shared
	// Why the tensions could not be shared; empty: they could.
	TensionReason string
	// Why the shears could not be shared; empty: they could.
	ShearReason string
	Tense       bool    // whether there is any tension
	V           float64 // shear on the whole group [N]
	Friction    float64 // shear that friction can take [N]
	Rub         friction.Result
	Clamped     bool    // whether less compression counts than was given
	Left        float64 // share of the shear that is left to the rods [-]
	Sheared     bool    // whether the rods carry any shear
	Oversize    bool    // whether the holes exceed the nominal clearance

	D  float64 // diameter left after corrosion [mm]
	Ds float64 // diameter of the stress area left after corrosion [mm]
	As float64 // stress area left after corrosion [mm2]
	Ab float64 // nominal area left after corrosion [mm2]
	// Whether the thread is not an intact one of the catalogue, for which the shares
	// of Table J3.2 hold.
	Worn bool

	FtRd   float64 // tension resistance of a rod [N]
	FvRd   float64 // shear resistance of a rod [N]
	EC     Eurocode
	US     American
	Bend   Bending
	Worst  Worst
	Edge   Spacing
	Washer float64 // bending resistance of the plate washer, as rod tension [N]
}

// Worst is the rod that governs each limit state, counted from 0, and what it
// carries. No rod: -1.
type Worst struct {
	Tension     int
	Ft          float64 // its tension [N]
	Shear       int
	Fv          float64 // its shear [N]
	Combined    int
	Interaction float64 // Eurocode sum, or f_rt over the reduced strength in US practice [-]
	Ftc, Fvc    float64 // tension and shear of that rod [N]
	Bearing     int
	BearingUse  float64 // utilization of the plate in bearing [-]
	Fb          float64 // bearing force [N]
	FbRd        float64 // bearing resistance [N]
	AlongY      bool    // whether that force lies along y
	TearOut     int
	TearUse     float64 // utilization of the plate in tear-out [-]
	Fo          float64 // tear-out force [N]
	FoRd        float64 // tear-out resistance [N]
	Lc          float64 // clear distance of that rod [mm]
}

// Check verifies a group of rods. Errors: limit.Faults.
func Check(in *Input) (Result, error) {
	var faults limit.Faults
	Validate(in, &faults)
	if len(faults) > 0 {
		return Result{}, faults
	}
	r := Result{in: in}
	r.D = in.Rod.Thread.Diameter - in.Rod.Corrosion
	r.Ds = in.Rod.Thread.NetDiameter(in.Rod.Corrosion)
	r.As = in.Rod.Thread.NetArea(in.Rod.Corrosion)
	r.Ab = math.Pi / 4 * r.D * r.D
	r.Worn = in.Rod.Corrosion > 0 || in.Rod.Thread.Name == ""
	r.Oversize = Oversized(in)
	r.share()
	r.friction()
	if in.Design.Basis == basis.Eurocode {
		r.eurocode()
	} else {
		r.us()
	}
	r.worst()
	r.EC.base(r.Friction, r.carrying())
	r.US.Base = r.Friction + r.carrying()*r.FvRd
	r.bending()
	r.Edge = leastSpacing(in)
	return r, nil
}

// noMoment is the most that counts as no moment at all where no rod is pulled: what is
// left of a sum of moments that cancel [Nmm].
const noMoment = 10

// share distributes the actions or takes the forces given.
func (r *Result) share() {
	in := r.in
	if len(in.Each) > 0 {
		var x, y float64
		for _, f := range in.Each {
			r.Tense = r.Tense || f.Tension > 0
			x += f.ShearX
			y += f.ShearY
		}
		r.V = math.Hypot(x, y)
		return
	}
	a := in.Actions
	r.V = math.Hypot(a.Vx, a.Vy)
	gap := in.StandOff.Gap > 0
	pressed := a.N <= 0 && math.Abs(a.Mx) <= noMoment && math.Abs(a.My) <= noMoment
	if pressed {
		a.N, a.Mx, a.My = 0, 0, 0 // compression goes through the plate
	}
	r.Share = geom.PointGroup(in.At).Share(&a)
	if !r.Share.Turns {
		r.ShearReason = "the rods stand in one place and cannot carry the torsion"
	}
	if gap && in.Actions.N < 0 {
		r.TensionReason = pressedRods
		return
	}
	if pressed {
		return
	}
	r.Tense = true
	if !r.Share.Bends {
		r.TensionReason = "the rods stand on one line and cannot carry the moment across it"
		return
	}
	least, most := math.Inf(1), 0.0
	for _, p := range in.At {
		t := r.Share.Axial(p)
		least, most = min(least, t), max(most, math.Abs(t))
	}
	switch {
	case least >= -1e-9*most:
	case gap:
		r.TensionReason = pressedRods
	default:
		r.TensionReason = "a rod would be pressed: the plate bears on its support, and sharing by contact is not part of this check; give rod_forces"
	}
}

// pressedRods is why rods across a gap are not covered under compression.
const pressedRods = "the rods alone bridge the gap and some are pressed: their resistance in compression and their buckling are not part of this check"

// friction finds what friction takes and what is left to the rods. A foot that the
// forces lift presses on nothing, and one that they press does so with no more
// than their compression.
//
// Source: EN 1993-1-8:2005 6.2.2(6); statics.
func (r *Result) friction() {
	in := r.in
	r.Left = 1
	torsion := len(in.Each) == 0 && in.Actions.T != 0
	if !in.Friction.Counted || in.StandOff.Gap > 0 || torsion {
		return
	}
	p := in.Friction.Compression
	if len(in.Each) == 0 {
		p = min(p, max(0, -in.Actions.N))
	} else if lifted(in.Each) {
		p = 0
	}
	r.Clamped = p < in.Friction.Compression*(1-1e-9)
	r.Rub = friction.Find(&in.Design, friction.Input{Compression: p, Coefficient: in.Friction.Coefficient, Assumed: in.Friction.Assumed,
		Area: in.Plate.SizeX * in.Plate.SizeY, Strength: in.Friction.Strength})
	r.Friction = r.Rub.Take
	if len(in.Each) == 0 && r.V > 0 {
		r.Left = max(0, 1-r.Friction/r.V)
	}
}

// lifted reports whether every rod pulls, so that nothing is known to press.
func lifted(each []Force) bool {
	for _, f := range each {
		if f.Tension == 0 {
			return false
		}
	}
	return true
}

// Force returns what rod i carries.
func (r *Result) Force(i int) Force {
	in := r.in
	if len(in.Each) > 0 {
		return in.Each[i]
	}
	var f Force
	if r.Tense && r.TensionReason == "" {
		f.Tension = max(0, r.Share.Axial(in.At[i]))
	}
	if r.ShearReason == "" {
		x, y := r.Share.Shear(in.At[i])
		f.ShearX, f.ShearY = x*r.Left, y*r.Left
	}
	return f
}

// worst finds the rod that governs each limit state.
func (r *Result) worst() {
	w := &r.Worst
	*w = Worst{Tension: -1, Shear: -1, Combined: -1, Bearing: -1, TearOut: -1}
	for i := range r.in.At {
		f := r.Force(i)
		v := math.Sqrt(f.ShearX*f.ShearX + f.ShearY*f.ShearY)
		r.Sheared = r.Sheared || v > 0
		if w.Tension < 0 || f.Tension > w.Ft {
			w.Tension, w.Ft = i, f.Tension
		}
		if w.Shear < 0 || v > w.Fv {
			w.Shear, w.Fv = i, v
		}
		if u := r.interaction(f.Tension, v); w.Combined < 0 || u > w.Interaction {
			w.Combined, w.Interaction, w.Ftc, w.Fvc = i, u, f.Tension, v
		}
		if v == 0 {
			continue
		}
		if r.in.Design.Basis.US() {
			r.press(i, v)
		}
		r.bear(i, f.ShearX, false)
		r.bear(i, f.ShearY, true)
	}
}

func (r *Result) interaction(t, v float64) float64 {
	if r.in.Design.Basis == basis.Eurocode {
		return v/r.FvRd + t/(1.4*r.FtRd)
	}
	return r.reduced(t, v)
}

// press holds the whole shear of a rod against the plate that it bears on: 2.4 d t
// F_u has no direction.
//
// Source: AISC 360-22 (J3-6a).
func (r *Result) press(i int, force float64) {
	w, rd := &r.Worst, r.plateBearingUS()
	if u := use(force, rd); w.Bearing < 0 || u > w.BearingUse {
		w.Bearing, w.BearingUse, w.Fb, w.FbRd = i, u, force, rd
	}
}

// bear holds one component of a rod's shear against the plate at its hole: its
// bearing by Eurocode (Table 3.4, note 3), its tear-out in US practice.
func (r *Result) bear(i int, force float64, alongY bool) {
	force = math.Abs(force)
	if force == 0 {
		return
	}
	h := surround(r.in, i, alongY)
	w := &r.Worst
	if r.in.Design.Basis == basis.Eurocode {
		rd := r.plateBearingEC(&h)
		r.EC.F1vb = min(r.EC.F1vb, rd)
		if u := use(force, rd); w.Bearing < 0 || u > w.BearingUse {
			w.Bearing, w.BearingUse, w.Fb, w.FbRd, w.AlongY = i, u, force, rd, alongY
		}
		return
	}
	lc := min(h.E1-r.in.Holes.Diameter/2, h.P1-r.in.Holes.Diameter)
	rd := r.tearOut(lc)
	if u := use(force, rd); w.TearOut < 0 || u > w.TearUse {
		w.TearOut, w.TearUse, w.Fo, w.FoRd, w.Lc = i, u, force, rd, lc
	}
}

// carrying returns how many rods may carry shear: none in loose holes [-].
func (r *Result) carrying() float64 {
	if r.Oversize && !r.in.Holes.WeldedWashers {
		return 0
	}
	return float64(len(r.in.At))
}

// use returns a utilization that stays finite where no resistance is left; a rod that
// has nothing to carry is not the worst for that.
func use(force, resistance float64) float64 {
	switch {
	case force == 0:
		return 0
	case !(resistance > 0):
		return math.MaxFloat64
	}
	return force / resistance
}
