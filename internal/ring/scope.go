package ring

import (
	"fmt"
	"math"
	"strings"

	"footward.example/footward/internal/basis"
	"footward.example/footward/internal/geom"
	"footward.example/footward/internal/limit"
)

// phiUntested is the greatest angle of friction of fill that nobody tested [rad].
const phiUntested = 38 * math.Pi / 180

// unknownLoss is why a ring that corrodes counts for nothing.
const unknownLoss = "the ring of tier %d corrodes, and neither wall_thickness_mm nor a durability of its own says what is left"

// eaten reports whether what corrosion leaves of a ring is not known.
func (r *Result) eaten(i int) bool {
	ring := &r.in.Tiers[i].Ring
	return r.in.Exposed && ring.Kind == Steel && ring.Wall == 0 && ring.Durability == 0
}

// scope sets why states cannot pass, and which have no numbers.
func (r *Result) scope() {
	in := r.in
	a := &in.Actions
	if in.Service == (geom.Actions{}) {
		r.NoService = "no service values were given"
	} else if !(in.Service.N < 0) {
		r.NoService = "the service values have no compression"
	}
	switch {
	case r.Press > 0:
	case r.Moment > 0 || r.Shear > 0:
		r.NoStress = "a moment without compression presses the fill through the rods, which is not computed here"
	case r.Preload > 0:
		// The preload alone presses.
	default:
		r.NoStress, r.Skipped = "nothing presses on the stack", true
	}
	var why []string
	add := func(no bool, text string, v ...any) {
		if no {
			why = append(why, fmt.Sprintf(text, v...))
		}
	}
	add(in.Repeated, "repeated or machine load")
	add(in.Sloping, "on a slope")
	add(in.Flooded, "water above the base")
	add(a.T != 0 || in.Service.T != 0, "torsion")
	for i := range in.Tiers {
		t := &in.Tiers[i]
		add(!t.Ring.Tested, "the ring of tier %d was not tested", i+1)
		if r.eaten(i) {
			add(true, unknownLoss, i+1)
		}
		add(t.Ring.Kind.extensible() && t.Ring.Stiffness == 0, "the stiffness of the extensible ring of tier %d is not known", i+1)
		add(!t.Fill.Tested && t.Fill.Phi > phiUntested+1e-9, "friction above 38 degrees of fill not tested in tier %d", i+1)
	}
	// A service load that is too small must not make a small test enough.
	needs := max(1.5*-in.Service.N, r.Press)
	switch {
	case !in.LoadTested:
		add(true, "no load test")
	case r.NoService != "":
		add(true, "no service compression that the load test can be held against")
	case in.TestShoe > min(in.Shoe.SizeX, in.Shoe.SizeY)*(1+1e-9):
		add(true, "the load test was through a plate of %.4g mm, which tells nothing of a smaller one", in.TestShoe)
	default:
		// What fill bears by the test alone has its preload besides.
		r.Heave.Tested = in.LoadTest >= max(needs, r.Press+r.Preload)
		add(in.LoadTest < needs, "the load test of %.4g kN does not reach 1.5 times the service load and the design load, %.4g kN", in.LoadTest/1e3, needs/1e3)
	}
	if len(why) > 0 {
		r.Unverified = "not verified: " + strings.Join(why, "; ")
	}
}

// bound makes a state that its numbers satisfy out of scope where the stack is not
// verified, or for a reason of its own. A state that they do not satisfy stays failed.
func (r *Result) bound(s limit.State, own string) limit.State {
	why := r.Unverified
	if own != "" {
		if why == "" {
			why = "not verified: " + own
		} else {
			why += "; " + own
		}
	}
	if s.Verdict == limit.Pass && why != "" {
		s.Verdict, s.Reason = limit.OutOfScope, why
	}
	return s
}

// withoutFactor says which resistance factor of LRFD was not given.
func (r *Result) withoutFactor(name string, v float64) string {
	if r.in.Design.Basis == basis.USLRFD && v == 0 {
		return name + " was not given: the resistance is nominal"
	}
	return ""
}
