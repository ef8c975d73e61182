package weld

import (
	"math"

	"footward.example/footward/internal/basis"
	"footward.example/footward/internal/geom"
	"footward.example/footward/internal/limit"
)

// Flow is a force per length of weld, split by its axis.
type Flow struct {
	Along  float64 // along the axis [N/mm]
	Across float64 // across it, parallel to the plate [N/mm]
	Normal float64 // square to the plate [N/mm]
}

// size returns the resultant.
func (f Flow) size() float64 {
	return math.Sqrt(f.Along*f.Along + f.Across*f.Across + f.Normal*f.Normal)
}

// inPlane returns the part of the resultant that is parallel to the plate.
func (f Flow) inPlane() float64 { return math.Sqrt(f.Along*f.Along + f.Across*f.Across) }

// Spot is an end of a segment, or the run.
type Spot struct {
	Segment int // counted from 0
	End     int // 0: start, 1: end
}

// Result holds every intermediate value of a check.
type Result struct {
	in       *Input
	Grouped  bool
	Throat   float64 // as made [mm]
	Leg      float64 // of a fillet, as made [mm]
	A        float64 // throat left after corrosion [mm]
	W        float64 // leg left after corrosion [mm]
	End      float64 // length that each end loses [mm]
	Runs     float64 // number of runs [-]
	Length   float64 // effective length of a run, or of the shortest segment [mm]
	Shortest int     // that segment, counted from 0
	Actions  geom.Actions
	Group    geom.Group
	Share    geom.Share
	Reason   string  // why the group cannot carry its actions; empty: it can
	Thin     float64 // thickness of the thinner part [mm]
	Sections float64 // thicknesses of the parts over the runs that share them [-]

	EC     Eurocode
	US     American
	Centre Centre
}

// Check verifies a weld. Errors: limit.Faults.
func Check(in *Input) (Result, error) {
	var faults limit.Faults
	Validate(in, &faults)
	if len(faults) > 0 {
		return Result{}, faults
	}
	r := compute(in)
	if isEC(in) && in.Weld.Type != CompletePenetration {
		r.flows(r.beside) // no size of a weld helps the parts
	}
	return r, nil
}

func compute(in *Input) Result {
	w := &in.Weld
	r := Result{in: in, Grouped: len(in.Group.Segments) > 0}
	r.Thin = min(w.Parts[0].Thickness, w.Parts[1].Thickness)
	us := in.Design.Basis.US()
	r.sizes(us)
	// Eurocode: an end without full size loses a throat, 4.5.1(1).
	if !us && !w.FullSize && !in.Group.Continuous {
		r.End = r.Throat
	}
	r.Sections = sharedSection
	if w.OwnSection || w.Type == CompletePenetration {
		r.Sections = 1
	}
	if r.Grouped {
		r.shareGroup()
	} else {
		r.Runs = float64(max(1, in.Run.Count))
		r.Length = max(0, in.Run.Length-2*r.End)
		if r.Runs == 1 {
			r.Sections = 1
		}
	}
	if us {
		r.us()
	} else {
		r.eurocode()
	}
	return r
}

// sharedSection is what each of two runs has of the thickness that they share.
const sharedSection = 0.5

// sizes finds throat and leg, as made and after corrosion.
func (r *Result) sizes(us bool) {
	w := &r.in.Weld
	share := 1 / math.Sqrt2
	if us {
		share = throatOverLeg
	}
	switch {
	case w.Type == CompletePenetration:
		r.Throat = r.Thin
	case w.Leg > 0:
		r.Throat = share * w.Leg
	default:
		r.Throat = w.Throat
	}
	r.A = r.Throat - w.Corrosion
	if w.Type == Fillet {
		r.Leg, r.W = r.Throat/share, r.A/share
	}
}

// shareGroup distributes the actions along the segments.
func (r *Result) shareGroup() {
	g := &r.in.Group
	r.Actions = g.Actions.At(g.AtX, g.AtY, g.AtZ)
	r.Group = geom.LineGroup(g.Segments, r.End)
	r.Runs, r.Length = 1, math.MaxFloat64
	for i := range g.Segments {
		if l := max(0, g.Segments[i].Length()-2*r.End); l < r.Length {
			r.Length, r.Shortest = l, i
		}
	}
	if g.Continuous {
		r.Length = r.Group.N
	}
	if r.Group.N == 0 {
		return
	}
	r.Share = r.Group.Share(&r.Actions)
	if !r.Share.Bends {
		r.Reason = "the segments lie on one line and cannot carry a moment about it"
	}
}

// none reports whether no effective length of the weld is left.
func (r *Result) none() bool {
	if r.Grouped {
		return r.Group.N == 0
	}
	return r.Length == 0
}

// flows calls visit with the force per length of the run, or at both ends of
// every segment.
func (r *Result) flows(visit func(at Spot, f Flow)) {
	in := r.in
	if r.none() || r.Reason != "" {
		return
	}
	if !r.Grouped {
		l := r.Runs * r.Length
		visit(Spot{}, Flow{math.Abs(in.Run.Along) / l, math.Abs(in.Run.Across) / l, math.Abs(in.Run.Normal) / l})
		return
	}
	for i := range in.Group.Segments {
		full := &in.Group.Segments[i]
		s := full.Trimmed(r.End)
		l := full.Length()
		ux, uy := (full.B.X-full.A.X)/l, (full.B.Y-full.A.Y)/l
		for end, p := range [2]geom.Point{s.A, s.B} {
			x, y := r.Share.Shear(p)
			visit(Spot{i, end}, Flow{math.Abs(x*ux + y*uy), math.Abs(y*ux - x*uy), math.Abs(r.Share.Axial(p))})
		}
	}
}

// loaded reports whether the weld carries anything.
func (r *Result) loaded() bool {
	if !r.Grouped {
		f := &r.in.Run
		return f.Along != 0 || f.Across != 0 || f.Normal != 0
	}
	return r.Actions != geom.Actions{}
}

// elastic reports whether the weld is a run or a group that shares its actions
// elastically.
func (r *Result) elastic() bool {
	return !r.Grouped || r.in.Group.Method != InstantaneousCentre
}

// byCentre reports whether the strength is that about the instantaneous centre.
func (r *Result) byCentre() bool {
	return !r.elastic() && r.in.Weld.Type == Fillet && !isEC(r.in)
}

// strengths returns yield and tensile strength of a part [MPa].
func (p *Part) strengths() (fy, fu float64) {
	fy, fu, _ = p.Steel.At(p.Thickness)
	return fy, fu
}

func isEC(in *Input) bool { return in.Design.Basis == basis.Eurocode }
