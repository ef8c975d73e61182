package record

import "math"

// Modulus returns E_v [MPa] of a round plate of a radius [mm].
//
//	E_v = 1.5 r/(a1 + a2 sigma_max)
//
// sigma_max is that of the first loading, for both cycles. It is the secant of
// the parabola between 0.3 and 0.7 sigma_max.
//
// Source: DIN 18134:2012 (from memory).
func Modulus(p Parabola, radius, most float64) float64 {
	return 1.5 * radius / (p.A1 + p.A2*most)
}

// PlateModulus returns E_PLT [MPa] of a round plate of a diameter [mm] by a secant dp/ds [MPa/mm].
//
//	E_PLT = (dp/ds) (pi b/4) (1 - nu^2)
//
// Source: EN 1997-2:2007 Annex K.2 (equation from memory).
func PlateModulus(secant, diameter, poisson float64) float64 {
	return secant * math.Pi * diameter / 4 * (1 - poisson*poisson)
}

// SandScale returns how many times a footing of width B settles what a plate of
// width b does under the same pressure on sand [-]; at most 4.
//
//	s_B/s_b = (2 B/(B + b))^2
//
// Source: Terzaghi and Peck 1948.
func SandScale(footing, plate float64) float64 {
	v := 2 * footing / (footing + plate)
	return v * v
}

// ClayScale returns the same on clay [-].
//
// Source: Terzaghi 1955.
func ClayScale(footing, plate float64) float64 { return footing / plate }

// SlackLoad returns the load at which tightened rods go slack [N].
//
//	N_0 = F_0 (k_f + k_r)/k_r
//
// Source: statics of two springs.
func SlackLoad(c *Clamp) float64 { return c.Preload * (c.Fill + c.Rods) / c.Rods }

// PreloadLoss returns what an embedment of the fill takes off the preload [N].
//
//	dF = k_f k_r/(k_f + k_r) delta
//
// Source: statics of two springs.
func PreloadLoss(c *Clamp) float64 {
	return min(c.Preload, c.Fill*c.Rods/(c.Fill+c.Rods)*c.Embedment)
}

// Cycle is what one cycle of loading gives.
type Cycle struct {
	Fit      Parabola
	Ev       float64 // [MPa]
	Eplt     float64 // [MPa]
	Known    bool
	Reason   string
	Stresses []float64 // [MPa]
}

// cycle fits one cycle; most is the greatest stress of the first loading.
func (r *Result) cycle(stress, settled []float64, most float64) (c Cycle) {
	c.Stresses = stress
	switch {
	case r.in.Diameter == 0:
		c.Reason = "the modulus is that of a round plate"
		return c
	case len(stress) < 5:
		c.Reason = "fewer than 5 stages of load: no parabola"
		return c
	}
	p, ok := ParabolaOf(stress, settled)
	c.Fit = p
	switch {
	case !ok || p.A1 <= 0 || p.A1+p.A2*most <= 0:
		c.Reason = "the curve that is fitted does not rise from the start: seating or failure, check the zero of the gauges and the preload"
		return c
	case p.A2 > 0:
		c.Reason = "settlement grows faster than load: the plate nears failure or the rods go slack, and the formula is not for that"
		return c
	}
	c.Known = true
	c.Ev = Modulus(p, r.in.Diameter/2, most)
	c.Eplt = PlateModulus(1/(p.A1+p.A2*most), r.in.Diameter, r.in.Poisson)
	return c
}

// moduli reads both cycles.
func (r *Result) moduli() {
	var x, y, x2, y2 []float64
	most := 0.0
	for i := range r.usable {
		p := &r.usable[i]
		switch p.Phase {
		case First:
			x, y = append(x, p.Load/r.Area), append(y, p.Settlement)
			most = max(most, p.Load/r.Area)
		case Unloading:
			x2, y2 = []float64{p.Load / r.Area}, []float64{p.Settlement}
		case Reloading:
			if p.Load/r.Area < most*(1-1e-9) {
				x2, y2 = append(x2, p.Load/r.Area), append(y2, p.Settlement)
			}
		}
	}
	r.Greatest = most
	r.FirstLoading, r.Reload = r.cycle(x, y, most), r.cycle(x2, y2, most)
	if r.FirstLoading.Known && r.Reload.Known && r.Reload.Ev < r.FirstLoading.Ev {
		r.Reload.Known, r.Reload.Reason = false, "the reload is softer than the first loading: damaged or disturbed"
	}
}

// Subgrade is the subgrade reaction of the plate and of the footing.
type Subgrade struct {
	Plate     float64 // k_s = q/s [MPa/mm]; 0: not read
	At        float64 // settlement where it was read [mm]
	Pressure  float64 // there [MPa]
	Scale     float64 // s_B/s_b [-]; 0: no footing
	Footing   float64 // [MPa/mm]
	BoundOnly bool    // the footing is more than 3 times as wide
	Reason    string
}

func (r *Result) subgrade() {
	s := &r.Subgrade
	s.At = r.in.SubgradeAt
	load, ok := r.loadAt(s.At, false)
	if !ok {
		s.Reason = "the first loading does not reach the settlement at which it is read"
		return
	}
	s.Pressure = load / r.Area
	s.Plate = s.Pressure / s.At
	f := &r.in.Footing
	if f.Width == 0 {
		return
	}
	s.Scale = min(4, SandScale(f.Width, r.Width))
	if f.Clay {
		s.Scale = ClayScale(f.Width, r.Width)
	}
	s.BoundOnly = f.Width > 3*r.Width*(1+1e-9)
	s.Footing = s.Plate / s.Scale
}
