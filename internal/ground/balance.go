package ground

import (
	"math"

	"footward.example/footward/internal/geom"
)

// balance sets overturning about an edge and uplift.
//
//	EN: 0.9 (W - W_bed + L - N_G) against 1.1 of the lift L, of buoyancy and of
//	other G, and 1.5 of Q, all magnitudes
//	US: the actions as they are, what holds over the factor of safety
//
// Source: EN 1990:2002 Table A1.2(A); EN 1997-1:2004 Tables A.1, A.15 (from
// memory). UPL has 1.0 on permanent actions that lift; 1.1 is on the safe side.
func (r *Result) balance() {
	in, g, q := r.in, &r.in.Permanent, &r.in.Variable
	own := in.partials()
	hold, gd, qd, lift := own.GStb, own.GDst, own.QDst, in.lift()
	if in.Design.Basis.US() {
		sum := in.sum()
		g, q, hold, gd, qd, lift = &sum, &geom.Actions{}, 1/in.stability(), 1, 1, max(0, sum.N)
	}
	up := gd*(lift+r.Buoyancy) + qd*max(0, q.N)
	down := hold * (in.Weight - in.Bed + lift - g.N)
	r.Uplift = Turn{Demand: up, Holds: down}
	mx := gd*(math.Abs(g.My)+math.Abs(g.Vx)*in.Height) + qd*(math.Abs(q.My)+math.Abs(q.Vx)*in.Height)
	my := gd*(math.Abs(g.Mx)+math.Abs(g.Vy)*in.Height) + qd*(math.Abs(q.Mx)+math.Abs(q.Vy)*in.Height)
	if in.Shape == Circle {
		r.Overturning[0] = Turn{Demand: math.Hypot(mx, my) + up*in.Diameter/2, Holds: down * in.Diameter / 2}
		return
	}
	r.Overturning = [2]Turn{
		{Demand: mx + up*in.SizeX/2, Holds: down * in.SizeX / 2},
		{Demand: my + up*in.SizeY/2, Holds: down * in.SizeY / 2},
	}
}

// sum returns permanent and variable actions together.
func (in *Input) sum() geom.Actions {
	g, q := &in.Permanent, &in.Variable
	return geom.Actions{N: g.N + q.N, Vx: g.Vx + q.Vx, Vy: g.Vy + q.Vy, Mx: g.Mx + q.Mx, My: g.My + q.My, T: g.T + q.T}
}

// presumptive sets the greatest pressure under unfactored loads.
//
//	p = V/A (1 + 6 e_x/B + 6 e_y/L), circle V/A (1 + 8 e/D)
//
// Eccentricities are those of the force less buoyancy, which is none of the pressure.
//
// Source: statics of a straight line of pressure, as long as the whole base
// presses.
func (r *Result) presumptive() {
	in := r.in
	if in.Presumptive.Pressure == 0 {
		return
	}
	lifted := false
	for _, f := range in.factors(&set{g: 1, q: 1}) {
		l := in.load(f)
		var area, more float64
		if in.Shape == Circle {
			area, more = math.Pi*in.Diameter*in.Diameter/4, 8*l.E/in.Diameter
		} else {
			area, more = in.SizeX*in.SizeY, 6*(l.Ex/in.SizeX+l.Ey/in.SizeY)
		}
		if l.V < 0 || l.V == 0 && l.Mx+l.My > 0 || more > 1+1e-9 {
			lifted = true
			continue
		}
		if p := max(0, l.V+r.Buoyancy) / area * (1 + more); p >= r.Peak {
			r.Peak, r.Contact = p, l
		}
	}
	r.Kern = !lifted
}
