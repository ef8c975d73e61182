package geom

import (
	"fmt"
	"math"

	"footward.example/footward/internal/limit"
)

// The greatest actions that are computed with.
const (
	GreatestForce  = 1e9  // [N]
	GreatestMoment = 1e12 // [Nmm]
)

// Computable reports whether every part of actions is a number that is computed with.
func (a *Actions) Computable() bool {
	force, moment := true, true
	for _, v := range [...]float64{a.N, a.Vx, a.Vy} {
		force = force && math.Abs(v) <= GreatestForce
	}
	for _, v := range [...]float64{a.Mx, a.My, a.T} {
		moment = moment && math.Abs(v) <= GreatestMoment
	}
	return force && moment
}

// Range adds a fault for every part of actions that is no number or too great.
func (a *Actions) Range(path string, faults *limit.Faults) {
	if a.Computable() {
		return
	}
	for _, f := range [...]struct {
		field string
		v     float64
	}{{".n_kn", a.N}, {".v_x_kn", a.Vx}, {".v_y_kn", a.Vy}} {
		faults.Range(path+f.field, f.v, -GreatestForce, GreatestForce, 1e3, " kN")
	}
	for _, f := range [...]struct {
		field string
		v     float64
	}{{".m_x_knm", a.Mx}, {".m_y_knm", a.My}, {".t_knm", a.T}} {
		faults.Range(path+f.field, f.v, -GreatestMoment, GreatestMoment, 1e6, " kNm")
	}
}

// RangeOfRod adds a fault for what the force of a rod, counted from 0, has that is no
// number or too great, or presses the rod.
func RangeOfRod(rod int, tension, shearX, shearY float64, faults *limit.Faults) {
	if a := (Actions{N: tension, Vx: shearX, Vy: shearY}); a.N >= 0 && a.Computable() {
		return
	}
	path := fmt.Sprintf("rod_forces[%d]", rod)
	faults.Range(path+".tension_kn", tension, 0, GreatestForce, 1e3, " kN")
	faults.Range(path+".shear_x_kn", shearX, -GreatestForce, GreatestForce, 1e3, " kN")
	faults.Range(path+".shear_y_kn", shearY, -GreatestForce, GreatestForce, 1e3, " kN")
}
