package base

import (
	"fmt"
	"math"
	"strings"

	"footward.example/footward/internal/derive"
	"footward.example/footward/internal/geom"
	"footward.example/footward/internal/limit"
	"footward.example/footward/internal/pin"
	"footward.example/footward/internal/weld"
)

// Lines is where the weld at the foot of a shoe's plates lies.
type Lines uint8

// The places. The zero value is none of them.
const (
	BothFaces Lines = iota + 1
	OneFace         // the outer one of two plates
)

// BracketWeld is the weld of a shoe's plates to its base plate, over the whole
// width of the plates.
type BracketWeld struct {
	Weld    weld.Spec // its second part is the plate of the shoe
	Lines   Lines
	Contact bool // whether compression goes through contact
}

// PinInput is a pinned column foot with the weld of its plates.
type PinInput struct {
	Pin    pin.Input
	Welded bool
	Weld   BracketWeld
}

// PinResult is the outcome of CheckPin.
type PinResult struct {
	Pin  *pin.Result
	Weld weld.Result // when the plates are welded

	in   PinInput
	weld weld.Input
}

// atWeld returns the weld of the plates with the actions that reach it, as seen
// from the middle between the plates.
//
// The plates are one group of segments. An axial force at the eccentricity e
// presses or pulls one plate more than the other. Shear and moment in the plane
// of the plates count as if both plates carried the share of the nearer, k_e/2:
// the plates bend too easily across themselves to even it out by torsion of the
// group. Moment and shear times their height add up, whatever their signs, as in
// the plates themselves.
//
//	M_x = k_e (|M| + |V| L), M_y = e |N_j|, V_y = k_e |V|
func (in *PinInput) atWeld(axial, uneven float64) weld.Input {
	p, a := &in.Pin.Plates, &in.Pin.Actions
	if in.Weld.Contact {
		axial = max(0, axial)
	}
	v := uneven * math.Abs(a.V)
	spec := in.Weld.Weld
	spec.Parts[1].Corrosion = max(spec.Parts[1].Corrosion, p.Corrosion)
	return weld.Input{Design: in.Pin.Design, Weld: spec, Group: weld.Group{
		Segments: in.segments(), Method: weld.Elastic,
		Actions: geom.Actions{
			N: axial, Vy: v, Mx: -(uneven*math.Abs(a.M) + v*p.Arm), My: -p.Eccentricity * axial,
		},
	}}
}

// segments returns the lines of the weld: x along the pins, y across the column.
func (in *PinInput) segments() []geom.Segment {
	p := &in.Pin.Plates
	middle, half := in.Pin.Timber.AlongPin/2+p.Gap+p.Thickness/2, p.Thickness/2
	plates := []float64{-middle, middle}
	if p.Arrangement == pin.Inside {
		plates = []float64{0}
	}
	var out []geom.Segment
	add := func(x float64) {
		out = append(out, geom.Segment{A: geom.Point{X: x, Y: -p.Width / 2}, B: geom.Point{X: x, Y: p.Width / 2}})
	}
	for _, x := range plates {
		switch {
		case in.Weld.Weld.Type == weld.CompletePenetration:
			add(x)
		case in.Weld.Lines == OneFace:
			add(x + math.Copysign(half, x))
		default:
			add(x - half)
			add(x + half)
		}
	}
	return out
}

// ValidatePin adds to faults everything about the input that does not fit.
func ValidatePin(in *PinInput, faults *limit.Faults) {
	pin.Validate(&in.Pin, faults)
	if !in.Welded {
		return
	}
	if in.Weld.Lines != BothFaces && in.Weld.Lines != OneFace {
		faults.Add(limit.UnknownValue, "bracket_weld.lines", "must be both faces or one face of each plate")
	}
	w := in.atWeld(0, 1)
	var found limit.Faults
	weld.Validate(&w, &found)
	for _, f := range found {
		// The group comes from plates and column, which have been looked at.
		if strings.HasPrefix(f.Field, "group.") || known(*faults, f.Field) {
			continue
		}
		f.Field = "bracket_weld." + f.Field
		*faults = append(*faults, f)
	}
	const same = 1 + 1e-9 // sizes converted from inches
	if t, of := in.Weld.Weld.Parts[1].Thickness, in.Pin.Plates.Thickness; t > of*same {
		faults.Add(limit.Geometry, "bracket_weld.weld.parts[1].thickness_mm",
			fmt.Sprintf("of %g mm is more than the plate of the shoe of %g mm", t, of))
	}
}

// CheckPin verifies a pinned column foot. Errors: limit.Faults; *limit.Scope for
// plates outside and inside together.
func CheckPin(in *PinInput) (*PinResult, error) {
	var faults limit.Faults
	ValidatePin(in, &faults)
	if len(faults) > 0 {
		return nil, faults
	}
	r := &PinResult{in: *in}
	r.in.Pin.Welded = in.Welded
	var err error
	if r.Pin, err = pin.Check(&r.in.Pin); err != nil || !in.Welded {
		return r, err
	}
	r.weld = r.in.atWeld(r.Pin.Nj, r.Pin.Uneven)
	r.Weld, err = weld.Check(&r.weld)
	return r, err
}

// The notices of the weld of a shoe's plates, in the order of an answer.
var (
	bracketGroup = &limit.Notice{Code: "bracket_weld_group", Severity: limit.Info,
		Text: "The weld of the plates is one elastic group of segments, loaded by the pins' axial force, shear and moment, the shear at the height of the pins; moments add up whatever their signs."}
	bracketSeat = &limit.Notice{Code: "bracket_weld_seat", Severity: limit.Assumption,
		Text: "The plate on which the column's end stands passes its compression to the base plate by itself, not through the weld of the plates."}
	bracketContact = &limit.Notice{Code: "bracket_weld_contact", Severity: limit.Assumption,
		Text: "Compression of the column goes through contact of the plates with the base plate, to which they must be fitted, and is left out of the weld's group. Compression from moment stays with the weld, which also holds the plates in place."}
)

// PinRemarks returns the notices in order: the pins', then those of the weld of
// the plates; those of welds are weld's.
func PinRemarks() []*limit.Notice {
	return append(pin.Remarks(), bracketGroup, bracketSeat, bracketContact)
}

// States appends the limit states in their fixed order: pins, then weld.
func (r *PinResult) States(l *limit.List) {
	r.Pin.States(l)
	if r.in.Welded {
		r.Weld.States(l)
	}
}

// Notices appends the notices of pins and weld.
func (r *PinResult) Notices(l *limit.Notices) {
	r.Pin.Notices(l)
	if !r.in.Welded {
		return
	}
	l.Add(bracketGroup)
	if r.in.Pin.EndBears {
		l.Add(bracketSeat)
	}
	if r.in.Weld.Contact {
		l.Add(bracketContact)
	}
	r.Weld.Notices(l)
}

// Derive writes the pins, then what reaches the weld of the plates, then the weld.
func (r *PinResult) Derive(s *derive.Sheet) {
	r.Pin.Derive(s)
	if !r.in.Welded {
		return
	}
	a := &r.weld.Group.Actions
	if r.in.Weld.Contact {
		s.Step("N_w", "max(0, N_j)", a.N, "N", "compression by contact")
	} else {
		s.Step("N_w", "N_j", a.N, "N", "statics")
	}
	shear, moment := "abs(V)", "abs(M) + V_w L"
	if r.in.Pin.Plates.Eccentricity > 0 {
		shear, moment = "k_e abs(V)", "k_e abs(M) + V_w L"
		s.Step("M_w,e", "-(e_a N_w)", a.My, "Nmm", "eccentricity along the pins")
	}
	s.Step("V_w", shear, a.Vy, "N", "statics")
	s.Step("M_w", "-("+moment+")", a.Mx, "Nmm", "statics")
	r.Weld.Derive(s)
}
