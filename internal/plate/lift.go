package plate

// The two sides of a plate along the direction of the moment: that which the moment
// lifts, and the other, which lifts too under uplift or preload.
const (
	first = iota
	other
	sides
)

// lifts is what pulls on the two sides.
type lifts struct {
	side   float64        // of the first in the frame
	row    [sides]Row     // the rods that hold it
	why    [sides]Misfit  // why there is no such row
	t      [sides]float64 // tension [N]
	prying [sides]float64 // prying on it [N]
	shared [sides]bool    // whether the tension is that of the base's sharing
}

// rows finds the rods of both sides. It reports whether there are any at all.
func (r *Result) rows() bool {
	if len(r.in.Rods.At) == 0 {
		return false
	}
	l, f := &r.lifts, r.frame
	l.side = f.Side
	for k := range l.row {
		l.row[k], l.why[k] = r.in.row(&f)
		f.Side = -f.Side
	}
	return true
}

// raise gives side k a tension, if there is a row that can take it.
func (r *Result) raise(k int, t float64, shared bool) bool {
	l := &r.lifts
	if l.why[k] != Fits {
		r.Misfit = l.why[k]
		return false
	}
	l.t[k], l.shared[k] = t, shared
	return true
}

// pullBoth shares the actions between the rods of two sides that both lift.
//
//	T_1 = (N z_2 + M)/(z_1 + z_2)   T_2 = (N z_1 - M)/(z_1 + z_2)
func (r *Result) pullBoth() bool {
	l := &r.lifts
	if l.why[other] != Fits {
		r.Misfit = l.why[other]
		return false
	}
	z1, z2 := l.row[first].S, l.row[other].S
	r.Both = true
	return r.raise(first, (r.N*z2+r.M)/(z1+z2), false) && r.raise(other, (r.N*z1-r.M)/(z1+z2), false)
}

// sharing returns the tension that the base was found to give the rods outside the
// footprint on each side, and all its rods together with their moment about the
// axis, positive for those of the first side.
func (r *Result) sharing() (t [sides]float64, sum, moment float64) {
	in, f := r.in, &r.frame
	for i, v := range in.Shared.Tensions {
		s := in.Rods.At[i].X
		if f.AlongY {
			s = in.Rods.At[i].Y
		}
		s *= r.lifts.side
		sum, moment = sum+v, moment+v*s
		switch {
		case s > f.H/2:
			t[first] += v
		case s < -f.H/2:
			t[other] += v
		}
	}
	return t, sum, moment
}

// share raises the tensions to those that the base was found to have. It reports
// whether any was raised.
func (r *Result) share() (raised bool) {
	if r.Misfit != Fits || r.Loose {
		return false
	}
	t, _, _ := r.sharing()
	for k := range t {
		if t[k] > r.lifts.t[k] {
			if !r.raise(k, t[k], true) {
				return false
			}
			raised = true
		}
	}
	return raised
}

// pulled returns how many sides pull.
func (r *Result) pulled() float64 {
	if r.lifts.t[first] > 0 && r.lifts.t[other] > 0 {
		return sides
	}
	return 1
}

// side returns the frame in which side k lifts.
func (r *Result) side(k int) frame {
	f := r.frame
	f.Side = r.lifts.side
	if k == other {
		f.Side = -f.Side
	}
	return f
}

// turn makes side k the one that the result shows.
func (r *Result) turn(k int) { r.Row, r.frame = r.lifts.row[k], r.side(k) }

// RodPull returns the greatest tension of rod i by the plate's own method [N]: the
// tension of its side shared by the row, or its own of the base's sharing where that
// is more, with the prying on it where prying is found, or that of the sections; 0
// where it does not pull. Rods and what holds them must carry it.
//
// Source: EN 1993-1-8:2005 6.2.6.11(3), 6.2.8.3; AISC Design Guide 1, 3rd ed. 2024, chapter 4.
func (r *Result) RodPull(i int) float64 {
	if i < 0 || i >= len(r.in.Rods.At) {
		return 0
	}
	found := r.sectionPull(i)
	f, l := &r.frame, &r.lifts
	s := r.in.Rods.At[i].X
	if f.AlongY {
		s = r.in.Rods.At[i].Y
	}
	k := first
	switch s *= l.side; {
	case s < -f.H/2:
		k = other
	case s <= f.H/2:
		return found
	}
	if !(l.t[k] > 0) {
		return found
	}
	t := l.t[k] / float64(l.row[k].Count)
	if r.in.Shared.Known {
		t = max(t, r.in.Shared.Tensions[i])
	}
	return max(found, t*(1+l.prying[k]/l.t[k]))
}

// beyondTips returns how far the outermost rods stand beyond the ends of the
// flange, wall or plate that holds them [mm]; negative: within them.
func (r *Result) beyondTips() float64 { return (r.Row.Gauge - r.frame.W) / 2 }
