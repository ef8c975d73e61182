package plate

import (
	"math"

	"footward.example/footward/internal/limit"
)

const (
	clauseColumnPressed = "EN 1993-1-8:2005 6.2.8.3(4), 6.2.6.7"
	clauseColumnPulled  = "EN 1993-1-8:2005 6.2.8.3(2), 6.2.6.8"
)

// Column is the column's own flange and web where they meet the plate, by
// Eurocode.
type Column struct {
	Known bool    // whether the steel of an I-section or a tube is known
	Fy    float64 // yield strength of its thicker part [MPa]
	Class int     // of the section in bending; 2 stands for 1 too
	W     float64 // section modulus that its class allows, of class 3 for 4 [mm3]
	V     float64 // shear along the web, a magnitude [N]
	Vpl   float64 // plastic shear resistance of the webs [N]
	Rho   float64 // reduction by shear [-]
	McRd  float64 // moment resistance [Nmm]
	FcRd  float64 // resistance of flange and web in compression [N]
	FtRd  float64 // resistance of the web in tension [N]
}

const (
	tallSection = 600.0 // mm; above it the web counts for no more than a fifth; EN 1993-1-8:2005 6.2.6.7(1)
	webShare    = 0.2
	cornerOut   = 3.0 // wall thicknesses of the outside radius of a tube; EN 10219-2, its greatest
)

// column finds the resistance of the column's flange and web.
//
//	F_c,fb,Rd = M_c,Rd / (h - t_f)
//	F_t,wb,Rd = b_eff t_w f_y / gamma_M0, b_eff of the T-stub
//
// Above 600 mm the flange alone carries at least 0.8 of F_c,fb,Rd. M_c,Rd is
// reduced as a whole where the shear is above half of V_pl.
//
// Source: EN 1993-1-8:2005 6.2.6.7, 6.2.6.8; EN 1993-1-1:2005 6.2.5, 6.2.6, 6.2.8.
func (r *Result) column() {
	in, f, c := r.in, &r.frame, &r.Column
	foot := &in.Footprint
	if !foot.SteelKnown || foot.Shape != ISection && foot.Shape != Tube || !foot.flanged(f.AlongY) ||
		!(r.EC.Pressed || r.EC.Lifted) {
		return
	}
	t, w := foot.Thick, foot.Thick
	if foot.Shape == ISection {
		w = foot.Web
	}
	c.Known = true
	c.Fy, _, _ = foot.Steel.At(max(t, w))
	gamma := in.Design.EC.GammaM0
	webs, outstand, flat := w, (f.W-w)/2, f.H-2*t
	plastic := f.W*t*(f.H-t) + w*flat*flat/4
	second := f.W*t*square(f.H-t)/2 + f.W*t*t*t/6 + w*flat*flat*flat/12
	if foot.Shape == Tube {
		webs = 2 * w
		plastic += w * flat * flat / 4
		second += w * flat * flat * flat / 12
		// What the round corners lack, at their outside.
		lost := (4 - math.Pi) * (cornerOut*cornerOut - square(cornerOut-1)) * t * t / 4
		plastic -= 4 * lost * f.H / 2
		second -= 4 * lost * f.H * f.H / 4
		outstand = 0
	}
	c.class(foot.Shape, outstand/t, max(0, f.W-2*t)/t, flat/w)
	c.W = plastic
	if c.Class >= 3 {
		c.W = second / (f.H / 2)
	}
	c.V = math.Abs(in.Actions.Vx)
	if f.AlongY {
		c.V = math.Abs(in.Actions.Vy)
	}
	c.Vpl = webs * flat * c.Fy / math.Sqrt(3) / gamma
	if c.V > c.Vpl/2 {
		c.Rho = min(1, square(2*c.V/c.Vpl-1))
	}
	c.McRd = max(0, c.W) * (1 - c.Rho) * c.Fy / gamma
	c.FcRd = c.McRd / (f.H - t)
	if f.H > tallSection {
		c.FcRd = min(c.FcRd, f.W*t*c.Fy/gamma/(1-webShare))
	}
	c.FtRd = r.EC.TStub.L1 * w * c.Fy / gamma
}

// class classifies the section in bending by the slenderness of its outstands, of
// its wall across and of its web.
//
// Source: EN 1993-1-1:2005 Table 5.2.
func (c *Column) class(shape Shape, outstand, wall, web float64) {
	e := math.Sqrt(235 / c.Fy)
	flange, two, three := outstand, 10.0, 14.0
	if shape == Tube {
		flange, two, three = wall, 38, 42
	}
	switch {
	case flange <= two*e && web <= 83*e:
		c.Class = 2
	case flange <= three*e && web <= 124*e:
		c.Class = 3
	default:
		c.Class = 4
	}
}

func (r *Result) columnPressedState() limit.State {
	e, c := &r.EC, &r.Column
	switch {
	case r.Case == Concentric:
		return limit.Skip(columnPressed, noMoment)
	case !e.Pressed || r.Misfit != Fits:
		return r.columnLeft(columnPressed, noPress)
	case !c.Known:
		return limit.Skip(columnPressed, r.unknownSection())
	}
	s := limit.Evaluate(columnPressed, e.Fc, c.FcRd)
	if c.Class == 4 && s.Verdict == limit.Pass {
		return limit.Beyond(columnPressed, slender)
	}
	return s
}

func (r *Result) columnPulledState() limit.State {
	e, c := &r.EC, &r.Column
	switch {
	case !e.Lifted && r.Case == Concentric:
		return limit.Skip(columnPulled, noLift)
	case !e.Lifted:
		return r.columnLeft(columnPulled, noLift)
	case !c.Known:
		return limit.Skip(columnPulled, r.unknownSection())
	}
	return limit.Evaluate(columnPulled, e.Ft, c.FtRd)
}

// unknownSection says why the column's section is not checked.
func (r *Result) unknownSection() string {
	if shape := r.in.Footprint.Shape; shape == ISection || shape == Tube {
		return noSteel
	}
	return "it is that of I-sections and tubes alone; what stands on the plate here is not checked"
}
