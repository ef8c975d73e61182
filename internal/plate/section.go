package plate

import (
	"math"

	"footward.example/footward/internal/basis"
	"footward.example/footward/internal/geom"
	"footward.example/footward/internal/section"
)

// Contact is how support and rods share the actions under a rigid plate.
type Contact struct {
	Found  bool
	Reason string // why there is no equilibrium
	// Share of the bearing strength that is needed to balance the actions [-].
	Need     float64
	Pressure section.Pressure // of what presses; unused by Eurocode
	Tensions []float64        // of each rod [N]
}

// Finder finds the contact. By Eurocode the support presses under the footprint
// widened by spread [mm], in United States practice under the whole plate. Without
// rods, only what is needed of the strength is looked for.
type Finder func(spread float64, rods bool) Contact

// Sections are the straight sections of the plate at any angle, which hold it where
// the clauses' own pattern does not fit.
type Sections struct {
	Asked   bool // whether there is something that the pattern does not fit
	Known   bool // whether the contact was looked for
	Contact Contact
	Pressed section.Line
	Inside  bool    // whether the plate inside the footprint governs instead
	Mp      float64 // greatest moment per width on the pressed side [Nmm/mm]
	Rp      float64 // its resistance [Nmm/mm]
	Pulled  section.Line
	Bay     bool    // whether that lies along a web or plate inside the footprint's outline
	Mt      float64 // greatest moment per width on the pulled side [Nmm/mm]
	Rt      float64 // its resistance [Nmm/mm]
	Rods    float64 // tension of the rod that pulls most over its resistance [-]

	find Finder
}

// ask decides whether critical sections at any angle are needed: where the pattern
// does not fit, or does not know of a rod that pulls too.
func (r *Result) ask() {
	if r.Case == Idle || r.Case == Concentric {
		return
	}
	lifts := r.EC.Lifted || r.US.Lifted
	r.Sections.Asked = r.Biaxial || r.Misfit != Fits || lifts && (r.strays() || r.risen() || r.pierced())
}

// risen reports whether in United States practice the block is so short that the
// rods of the pressed side rise too: they pull, and the block presses as much more.
func (r *Result) risen() bool {
	u := &r.US
	return u.Block > 0 && r.lifts.row[other].Count > 0 && u.Block < r.frame.L/2-r.lifts.row[other].S
}

// pierced reports whether a hole crosses the line of a face that holds the rods,
// which the clauses take whole.
func (r *Result) pierced() bool {
	in := r.in
	h := in.holdingLines()
	x, y := h.round, h.round
	if h.n > 1 {
		x, y = x+h.at[2].X, y+h.at[2].Y
	}
	for _, p := range in.Rods.At {
		if math.Abs(math.Abs(p.X)-x) < in.Rods.Hole/2 || math.Abs(math.Abs(p.Y)-y) < in.Rods.Hole/2 {
			return true
		}
	}
	return false
}

// strays reports whether a rod stands off the footprint's sides, beyond the ends of
// the flanges, or between flanges or plates.
func (r *Result) strays() bool {
	f := &r.frame
	for i, p := range r.in.Rods.At {
		s, across := math.Abs(p.X), math.Abs(p.Y)
		if f.AlongY {
			s, across = across, s
		}
		if across > f.W/2 || s <= f.H/2 && r.Counts(i) {
			return true
		}
	}
	return false
}

// NeedsSections reports whether the plate must be held by Hold too.
func (r *Result) NeedsSections() bool { return r.Sections.Asked }

// Hold holds the plate by critical sections at any angle.
func (r *Result) Hold(find Finder) {
	if s := &r.Sections; s.Asked {
		s.find, s.Known = find, true
		r.sections(s, r.T, r.Fy, find(r.EC.C, true))
	}
}

// sections finds the worst sections of a plate of thickness t [mm].
func (r *Result) sections(s *Sections, t, fy float64, c Contact) {
	in := r.in
	s.Contact, s.Rods = c, 0
	s.Mp, s.Mt, s.Inside, s.Bay = 0, 0, false, false
	if in.Design.Basis == basis.Eurocode {
		s.Rp, s.Rt = t*t*fy/6/in.Design.EC.GammaM0, t*t*fy/4/in.Design.EC.GammaM0
	} else {
		s.Rp = basis.Flexure.Factor(in.Design.Basis) * fy * t * t / 4
		s.Rt = s.Rp
	}
	if !c.Found {
		return
	}
	for i, v := range c.Tensions {
		if in.Rods.Resistance > 0 && r.Counts(i) {
			s.Rods = max(s.Rods, v/in.Rods.Resistance)
		}
	}
	r.press(s)
	if len(c.Tensions) > 0 {
		r.pull(s)
	}
}

// press finds the worst section on the pressed side.
//
// Eurocode: the plate spreads the pressure by c, at which it just yields under the
// bearing strength; what the balance needs of that strength bends it in the same
// proportion, m = f_req c^2/2 against t^2 f_y/6.
//
// Source: EN 1993-1-8:2005 6.2.5(4); statics.
func (r *Result) press(s *Sections) {
	in := r.in
	if in.Design.Basis == basis.Eurocode {
		s.Mp = s.Contact.Need * s.Rp
		return
	}
	z := &s.Contact.Pressure
	if len(z.Zone) < 3 {
		return
	}
	hull, outline := in.bendingLines(), section.Rectangle(in.Plate.SizeX, in.Plate.SizeY)
	plate := section.Plate{Outline: outline[:]} // the whole width, as the cantilevers of the Manual have it
	var rods [mostRods]section.Rod
	n := min(mostRods, len(in.Rods.At))
	for i := range n {
		rods[i] = section.Rod{At: in.Rods.At[i], Tension: s.Contact.Tensions[i]}
	}
	s.Pressed = section.WorstPressed(&plate, &section.Hull{Corners: hull.corners(), Round: hull.round}, z, rods[:n])
	s.Mp = s.Pressed.Unit
	if m := r.under(z); m > s.Mp {
		s.Mp, s.Inside = m, true
	}
}

// under returns the moment per width of the cantilever that stands for the plate
// inside the footprint, under the greatest pressure there; less in proportion where
// less than a third of it is pressed.
func (r *Result) under(z *section.Pressure) float64 {
	var u American
	in := r.in
	lineX, lineY := in.lines()
	peak, share := 0.0, 1.0
	for _, c := range section.Rectangle(lineX, lineY) {
		peak = max(peak, z.P+z.X*c.X+z.Y*c.Y)
	}
	u.inside(in, peak/in.Bearing.Pressure)
	if u.Inside == 0 {
		return 0
	}
	if z.X == 0 && z.Y == 0 {
		a := &in.Actions
		mx, my := math.Abs(a.Mx), math.Abs(a.My)
		wide := min(lineX, lineY)
		if mx+my > 0 {
			wide = (lineX*mx + lineY*my) / (mx + my)
		}
		share = min(1, pressedWithin(z.Zone, lineX/2, lineY/2)/(wide*u.Inside*shortest))
	}
	return share * peak * u.Inside * u.Inside / 2
}

// pull finds the worst section on the pulled side: of rods outside the footprint,
// and of those between its flanges or plates.
func (r *Result) pull(s *Sections) {
	in := r.in
	spread := section.Wedge
	if in.Design.Basis == basis.Eurocode {
		spread = section.YieldLines
	}
	hull, outline := in.holdingLines(), section.Rectangle(in.Plate.SizeX, in.Plate.SizeY)
	plate := section.Plate{Outline: outline[:], Holes: in.Rods.At, Diameter: in.Rods.Hole}
	var rods [mostRods]section.Rod
	n := 0
	var index [mostRods]int
	for i, p := range in.Rods.At {
		if n < mostRods && hull.outside(p) {
			rods[n], index[n] = section.Rod{At: p, Tension: s.Contact.Tensions[i]}, i
			n++
		}
	}
	s.Pulled = section.WorstPulled(&plate, &section.Hull{Corners: hull.corners(), Round: hull.round}, rods[:n], spread)
	s.Mt = s.Pulled.Unit
	if s.Pulled.Count > 0 {
		s.Pulled.Rod = index[s.Pulled.Rod]
	}
	for side := range bays {
		if l := r.bay(side, s.Contact.Tensions, spread); l.Unit > s.Mt {
			s.Pulled, s.Mt, s.Bay = l, l.Unit, true
		}
	}
}

// mostRods is the most rods that are held.
const mostRods = 64

// bays are those on either side of a web, or at either plate of two.
const bays = 2

// bay finds the section of the plate at the web of an I-section, or at one of two
// plates, that rods between them bend: as if it were held there alone, and along
// no more than lies between the flanges.
func (r *Result) bay(side int, tensions []float64, spread section.Spread) section.Line {
	in, f := r.in, &r.in.Footprint
	var rods [mostRods]section.Rod
	var index [mostRods]int
	n, face := 0, f.Web/2
	if f.Shape == TwoPlates {
		face = f.SizeX/2 - f.Thick
	}
	long, sign := f.SizeY, 1.0
	far := in.Plate.SizeX/2 - face
	if f.Shape == ISection {
		long -= 2 * f.Thick
	} else {
		far = face // to the middle between the plates
	}
	if side == 1 {
		sign = -1
	}
	for i, p := range in.Rods.At {
		arm, ok := in.inBay(p)
		if ok && n < mostRods && (p.X*sign > 0 || p.X == 0 && sign > 0) {
			rods[n], index[n] = section.Rod{At: geom.Point{X: 1 + arm, Y: p.Y}, Tension: tensions[i]}, i
			n++
		}
	}
	if n == 0 {
		return section.Line{}
	}
	outline, hull := section.Rectangle(2+2*max(far, 1), long), section.Rectangle(2, 3*long)
	l := section.PulledAt(&section.Plate{Outline: outline[:]}, &section.Hull{Corners: hull[:]}, rods[:n], spread, 0)
	if l.Count == 0 {
		return section.Line{}
	}
	// The section lies square to the x axis, towards the rods.
	l.Rod, l.Offset = index[l.Rod], face
	if l.Angle = 0; (sign < 0) != (f.Shape == TwoPlates) {
		l.Angle = math.Pi
	}
	if f.Shape == TwoPlates {
		l.Offset = -face
	}
	return l
}
