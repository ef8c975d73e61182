package anchor

import "math"

// edge finds the concrete edge that governs under shear.
func (r *Result) edge() {
	if len(r.pushing.rods) == 0 {
		return
	}
	worst := 0.0
	for side := range sides {
		e := r.edgeAt(side)
		if e.Vn == 0 && e.Vt == 0 {
			continue
		}
		if u := math.Hypot(e.Vn, e.Vt) / e.VRd; !r.Edge.Applies || u > worst {
			r.Edge, worst = e, u
		}
	}
}

// edgeAt returns the concrete edge of a side: the row nearest to it carries all.
//
//	V = V_0 A/A_0 psi_s psi_h psi_ec psi_alpha psi_c, A_0 = 4.5 c_1^2
//	psi_s = 0.7 + 0.3 c_2/(1.5 c_1) <= 1, psi_h = sqrt(1.5 c_1/h) >= 1
//	psi_ec = 1/(1 + 2 e/(3 c_1)), psi_alpha = 1/sqrt(cos^2 a + (0.5 sin a)^2)
//
// Where the corners and the height are all nearer than 1.5 c_1, c_1 counts as
// max(c_2/1.5, h/1.5, s/3).
//
// Source: EN 1992-4:2018 7.2.2.5; ACI 318-19 17.7.2, which gives twice the
// strength along an edge: the same psi_alpha.
func (r *Result) edgeAt(side int) Edge {
	in, h := r.in, r.in.Block.Height
	c1 := r.pushing.near[side]
	row := in.row(r.pushing.rods, side, c1)
	e := Edge{Applies: true, Side: side, C1: c1, C2: in.corner(row, side), PsiC: 1}
	var at, sum float64
	for _, i := range r.pushing.rods {
		f := in.Each[i]
		out := f.ShearX*sides[side].out.X + f.ShearY*sides[side].out.Y
		e.Vn += max(0, out)
		beside := f.ShearY
		if side >= 2 {
			beside = f.ShearX
		}
		e.Vt += math.Abs(beside)
		v := math.Hypot(f.ShearX, f.ShearY)
		at, sum = at+v*along(in.At[i], side), sum+v
	}
	middle := 0.0
	for _, i := range row {
		middle += along(in.At[i], side) / float64(len(row))
	}
	e.E = math.Abs(at/sum - middle)
	if far := in.farCorner(row, side); far < 1.5*c1 && h < 1.5*c1 {
		e.C1 = min(c1, max(far/1.5, h/1.5, in.widest(row, side)/3))
	}
	c := e.C1
	if r.ec {
		r.edgeEN(&e)
	} else {
		r.edgeACI(&e)
	}
	e.A0, e.A = 4.5*c*c, in.width(row, side, 1.5*c)*min(h, 1.5*c)
	e.PsiS = min(1, 0.7+0.3*e.C2/(1.5*c))
	e.PsiH = max(1, math.Sqrt(1.5*c/h))
	e.PsiEc = 1 / (1 + 2*e.E/(3*c))
	v := math.Hypot(e.Vn, e.Vt)
	e.PsiA = v / math.Hypot(e.Vn, 0.5*e.Vt)
	if v == 0 {
		e.PsiA = 1
	}
	e.VRk = e.V0 * e.A / e.A0 * e.PsiS * e.PsiH * e.PsiEc * e.PsiA * e.PsiC
	e.VRd = e.VRk * r.Factor
	return e
}
