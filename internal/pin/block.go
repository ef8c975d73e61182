package pin

import "math"

// block finds the rows that shear out of the timber along the grain.
//
// A row that presses the other way holds nothing for those that pull, nor does a
// row that pulls less for the one that pulls most: each row is held alone, and the
// one, two and more rows that pull most, side by side, are held together.
//
// Source: EN 1995-1-1:2004 Annex A; NDS 2018 Appendix E.
func (r *Result) block() {
	if r.ec && r.reason != "" || r.Unshared != "" {
		return
	}
	s, worst := &r.Timber, -1.0
	for k := 1; k <= r.Pulling; k++ {
		pull, holds := r.pull(k), r.holds(k)
		if u := use(pull, holds); u > worst {
			worst = u
			s.Out, s.Pull, s.Lt, s.Block = k, pull, r.between(k), holds
		}
	}
}

// pull returns what the k rows that pull most press towards the column's end with
// [N]. Eccentricity along the pins turns what the timber as a whole carries, but
// adds nothing to it.
//
// Source: elastic method of bolt groups.
func (r *Result) pull(k int) float64 {
	rows := r.rows()
	return r.together(&rows, k)
}

// between returns the net width of timber between the outer ones of k rows [mm].
//
//	L_net,t = (k - 1)(a_2 - d_h)
//
// Source: EN 1995-1-1:2004 (A.5).
func (r *Result) between(k int) float64 {
	return float64(k-1) * max(0, r.in.Layout.SpacingAcross-r.Timber.Hole)
}

// holds returns the resistance of k rows side by side to shearing out [N].
//
//	EN: max(1.5 A_net,t f_t,0,k, 0.7 A_net,v f_v,k) k_mod/gamma_M
//	    A_net,v = L_net,v t (modes f, j, k, l, m), else L_net,v (L_net,t + 2 t_ef)/2 per side
//	US: n F'_v t s_critical + F'_t t L_net,t, half of the row at either edge
//
// Source: EN 1995-1-1:2004 (A.1) to (A.7) (from memory); NDS 2018 Appendix E.3, E.4.
func (r *Result) holds(k int) float64 {
	s, lt := &r.Timber, r.between(k)
	if !r.ec {
		return s.TearRow + s.Ft*s.Width*lt
	}
	t := &r.in.Timber
	return max(blockTension*lt*s.Width*t.Tension, blockShear*s.Lv*r.wide(k)*t.Shear) * s.Kmod / s.GammaC
}

// wide returns what a net length in shear of k rows is multiplied by for its area
// [mm]: the timber, or what comes out as a plug on both sides of a slot.
//
// Source: EN 1995-1-1:2004 (A.3).
func (r *Result) wide(k int) float64 {
	s := &r.Timber
	if s.Straight {
		return s.Width
	}
	return min(s.Width, r.between(k)+2*s.Tef)
}

// plugEC sets the net length in shear and the thickness of the plug.
//
//	L_net,v = 2 ((n - 1)(a_1 - d_h) + a_3 - d_h/2)
//	t_ef = t_1 (sqrt(2 + M_y/(f_h d t_1^2)) - 1) (mode g), 2 sqrt(M_y/(f_h d)) (mode h)
//
// Source: EN 1995-1-1:2004 (A.4), (A.6), (A.7) (from memory).
func (r *Result) plugEC() {
	if r.reason != "" {
		return
	}
	s, e, l := &r.Timber, &r.EC, &r.in.Layout
	s.Lv = 2 * (float64(l.InRow-1)*max(0, l.SpacingAlong-s.Hole) + max(0, l.EndDistance-s.Hole/2))
	s.Straight = true
	t1 := s.Side
	if t1 == 0 {
		return
	}
	// The mode along the grain, which is that of the force that tears.
	q := e.Fh0 * r.in.Pin.Diameter
	f, g := q*t1, tilted(q, t1, r.in.Plates.Gap, e.My)
	h := onePlastic * hinged(q, r.in.Plates.Gap, 2*e.My)
	if least := min(g, h); least < f {
		s.Straight = false
		s.Tef = t1 * (math.Sqrt(2+e.My/(q*t1*t1)) - 1)
		if h < g {
			s.Tef = 2 * math.Sqrt(e.My/q)
		}
		s.Tef = min(s.Tef, t1)
	}
}

// tearUS sets the tear-out of one row, in two planes of half the shear stress each.
//
//	Z'_RT = n F'_v t s_critical
//
// Source: NDS 2018 Appendix E.3.
func (r *Result) tearUS() {
	s, l := &r.Timber, &r.in.Layout
	critical := l.EndDistance
	if l.InRow > 1 {
		critical = min(critical, l.SpacingAlong)
	}
	s.TearRow = float64(l.InRow) * s.Fv * s.Width * critical
}
