package ground

import "footward.example/footward/internal/basis"

// set is the factors of one approach.
type set struct {
	id         Approach
	name       string
	a2, m2, r2 bool    // which sets of Annex A it takes; else A1, M1, R1
	late       bool    // factors on the effects, not on eccentricity and inclination
	g, q       float64 // on permanent unfavourable and variable actions
	phi, c, cu float64 // on strengths
	rv, rh     float64 // on resistances
}

// sets holds the approaches, in the order of an answer.
//
// Source: EN 1997-1:2004 2.4.7.3.4.
var sets = [...]set{
	{id: DA1Part1, name: "DA1-1"},
	{id: DA1Part2, name: "DA1-2", a2: true, m2: true},
	{id: DA2, name: "DA2*", r2: true, late: true},
	{id: DA3, name: "DA3", m2: true},
}

// partials returns the factors on actions: those of the combinations, else those of
// the basis. What the combinations take for Q destabilises too.
func (in *Input) partials() Partials {
	or := func(v, of float64) float64 {
		if v == 0 {
			return of
		}
		return v
	}
	p, g := &in.Partials, &in.Design.EC.Ground
	return Partials{
		GSup: or(p.GSup, g.GSup), GInf: or(p.GInf, g.GInf), Q: or(p.Q, g.Q), QC: or(p.QC, g.QA2),
		GDst: or(p.GDst, g.GDst), GStb: or(p.GStb, g.GStb), QDst: or(p.QDst, or(p.Q, g.QDst)),
	}
}

// recommended reports whether no factor on actions is another than recommended.
func (in *Input) recommended() bool {
	g, r := in.partials(), basis.RecommendedGround()
	return g == Partials{GSup: r.GSup, GInf: r.GInf, Q: r.Q, QC: r.QA2, GDst: r.GDst, GStb: r.GStb, QDst: r.QDst}
}

// own returns a set with its factors.
//
// Source: EN 1997-1:2004 Tables A.3, A.4, A.5 (A.5 from memory).
func (in *Input) own(s *set) *set {
	c, p, g := *s, in.partials(), &in.Design.EC.Ground
	c.g, c.q, c.phi, c.c, c.cu, c.rv, c.rh = p.GSup, p.Q, 1, 1, 1, 1, 1
	if c.a2 {
		c.g, c.q = 1, p.QC
	}
	if c.m2 {
		c.phi, c.c, c.cu = g.Phi, g.C, g.Cu
	}
	if c.r2 {
		c.rv, c.rh = g.Rv, g.Rh
	}
	return &c
}

// stability returns the factor of safety of overturning and uplift.
func (in *Input) stability() float64 {
	if in.Stability == 0 {
		return stabilityFS
	}
	return in.Stability
}

// plain is the set of the United States bases: no factor but the one on the
// resistance.
func (in *Input) plain() *set {
	bearing, sliding := in.Safety, in.stability()
	if bearing == 0 {
		bearing = bearingFS
	}
	if in.Design.Basis == basis.USLRFD {
		bearing = 1 / in.Resistance
		if in.Slip > 0 {
			sliding = 1 / in.Slip
		}
	}
	return &set{g: 1, q: 1, phi: 1, c: 1, cu: 1, rv: bearing, rh: sliding}
}

// takes returns the set of row i, or nil if it is not taken; the United States
// bases take their own once.
func (in *Input) takes(i int) *set {
	if in.Design.Basis.US() {
		if i == 0 {
			return in.plain()
		}
		return nil
	}
	if len(in.Approaches) == 0 {
		return in.own(&sets[i])
	}
	for _, a := range in.Approaches {
		if a == sets[i].id {
			return in.own(&sets[i])
		}
	}
	return nil
}
