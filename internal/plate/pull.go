package plate

// RodPull returns the greatest tension of rod i by the plate's own method [N]: the
// tension of its side shared by the row, with the prying on it where prying is
// found; 0 where it does not pull. Rods and what holds them must carry it where it
// is more than their share of the base.
//
// Source: EN 1993-1-8:2005 6.2.6.11(3), 6.2.8.3; AISC Design Guide 1, 2nd ed., 3.4.
func (r *Result) RodPull(i int) float64 {
	if i < 0 || i >= len(r.in.Rods.At) || !(r.EC.Lifted || r.US.Lifted) || r.Row.Count == 0 {
		return 0
	}
	f := &r.frame
	s := r.in.Rods.At[i].X
	if f.AlongY {
		s = r.in.Rods.At[i].Y
	}
	s *= f.Side
	if !(s > f.H/2 || r.Both && s < -f.H/2) {
		return 0
	}
	t := r.US.Tu
	if r.EC.Lifted {
		t = r.EC.Ft + r.EC.Prying
	}
	return t / float64(r.Row.Count)
}

// pry returns the prying on a row under the tension f [N], 0 where the rods stretch
// so far that none develops.
//
//	Q/F = (1 - rho) m/2 / (n (1 + n/(3 m)) + rho m/2), rho = L_b/L_b*
//	2 M_pl/m < F: at least Q = (F m - 2 M_pl)/n; never above 2 M_pl/n
//
// An elastic strip is held flat at the weld, by the rods that stretch, and rests at
// the distance n beyond them; the stretch at which it no longer touches there is
// that of L_b*. Beyond the plastic moment at the weld prying must do the rest, up to
// that moment at the rods.
//
// Source: statics of that strip; EN 1993-1-8:2005 6.2.6.11(3), Table 6.2.
func (s *TStub) pry(f float64) float64 {
	if !s.Prying || !(s.N > 0) {
		return 0
	}
	rho := s.Lb / s.LbStar
	q := f * (1 - rho) * s.M / 2 / (s.N*(1+s.N/(3*s.M)) + rho*s.M/2)
	return min(max(q, (f*s.M-2*s.Mpl2)/s.N), 2*s.Mpl2/s.N)
}
