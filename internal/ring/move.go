package ring

import (
	"fmt"
	"math"

	"footward.example/footward/internal/geom"
)

// settlement sets how much the stack itself settles under the service values. What it
// settles by its tightening is levelled out then, so preload does not count.
//
//	s = sum(sigma_v h/M_s + 2 e_c h) + bedding, e_c = K_0 sigma_v D/(2 M)
//
// with the mean over the height of a tier of the mean stress on the spreading circle,
// so that a tier cut in two settles as before.
//
// Source: constrained moduli as ConstrainedModulus says; the strain of the ring is
// derived: fill of constant volume loses in height twice what it gains across.
func (r *Result) settlement() {
	if r.NoService != "" {
		return
	}
	r.Settles.Total = r.in.Bedding
	load := max(0, -r.in.Service.N)
	for i := range r.Tiers {
		t, out := &r.in.Tiers[i], &r.Tiers[i]
		c := cone{out.ServiceTop.Diameter, t.Diameter}
		above, own := out.ServiceTop.Light, t.Fill.UnitWeight*math.Pi/4*t.Diameter*t.Diameter
		var turned float64
		out.Give, turned = c.integrals(t.Height)
		sum := above*out.Give + own*turned
		out.Along = sum / t.Height
		if out.Modulus = t.Fill.Modulus; out.Modulus > 0 {
			out.Compressed = sum / out.Modulus
		} else if t.Fill.Grade != NoGrade {
			const slices = 64
			for k := range slices {
				z := (float64(k) + 0.5) / slices * t.Height
				q := (above + own*z) / c.area(z)
				out.Compressed += q / ConstrainedModulus(t.Fill.Grade, q) * t.Height / slices
			}
			out.Modulus = sum / out.Compressed
		} else {
			r.gap("the modulus of the fill of tier %d is not known", i)
		}
		share := load * out.Give / sum
		r.Settles.After += share * out.Compressed
		switch {
		case out.Stiffness > 0:
			out.HoopStrain = out.K0 * out.Along * t.Diameter / (2 * out.Stiffness)
			out.Spread = 2 * out.HoopStrain * t.Height
			r.Settles.After += share * out.Spread
		case t.Ring.Stiffness > 0:
			r.gap("corrosion leaves nothing of the ring of tier %d", i)
		default:
			r.gap("the stiffness of the ring of tier %d is not known", i)
		}
		if r.eaten(i) {
			r.gap(unknownLoss, i)
		}
		if t.Fill.Modulus == 0 && (t.Fill.Grade == Sn100 || t.Fill.Grade == Sn95) && !t.Fill.Tested {
			r.gap("a grade above Sn-90 needs a tested density in tier %d", i)
		}
		if out.serviceLost() {
			r.gap("the resultant leaves the loaded area in tier %d", i)
		}
		r.Settles.Total += out.Compressed + out.Spread
	}
}

// cone is the circle to which the load spreads in a tier, 2 down to 1 across, up to
// its ring.
type cone struct{ top, ring float64 }

// area returns the area of the circle at a depth below the top of the tier.
func (c cone) area(z float64) float64 {
	d := min(c.ring, c.top+z)
	return math.Pi / 4 * d * d
}

// integrals returns the integral of 1/A and of z/A over a height.
func (c cone) integrals(h float64) (give, turned float64) {
	z := min(h, max(0, c.ring-c.top))
	d, full := c.top+z, c.area(c.ring)
	give = 4/math.Pi*z/(c.top*d) + (h-z)/full
	turned = 4/math.Pi*(math.Log1p(z/c.top)-z/d) + (h*h-z*z)/2/full
	return give, turned
}

func (r *Result) gap(text string, tier int) {
	if r.Settles.Gap == "" {
		r.Settles.Gap = fmt.Sprintf(text, tier+1)
	}
}

// springs sets what is left of the preload. Without service values the design
// compression unloads the rods.
func (r *Result) springs() {
	rods := &r.in.Rods
	if rods.Count == 0 {
		return
	}
	c := geom.Clamp{
		Count: rods.Count, Area: rods.Area, Modulus: rods.Modulus, Length: rods.Length, Stack: rods.Stack,
		Preload: rods.Preload, Relaxed: rods.Relaxed, Settlement: rods.Creep, Load: rods.Load,
	}
	if c.Stack == 0 && r.NoService == "" {
		c.Stack = r.stack()
	}
	if c.Load == 0 {
		if c.Load = max(0, -r.in.Service.N); r.NoService != "" {
			c.Load = r.Press
		}
	}
	r.Load, r.Springs = c.Load, c.Springs()
}

// stack returns the stiffness of the fill, or 0 where a modulus is not known.
//
//	1/k_m = sum of the integral of 1/(M_s A) over the height of each tier
func (r *Result) stack() float64 {
	give := 0.0
	for i := range r.Tiers {
		out := &r.Tiers[i]
		if !(out.Modulus > 0) {
			return 0
		}
		give += out.Give / out.Modulus
	}
	return 1 / give
}

// Subgrade returns the modulus of subgrade reaction of the fill under the shoe
// [N/mm3], as if nothing spread, so that it is rather too soft; 0 where a modulus is
// not known.
//
//	k = 1/sum(h_i/M_s,i)
//
// Source: statics of springs in series.
func (r *Result) Subgrade() float64 {
	give := 0.0
	for i := range r.Tiers {
		modulus := or(r.in.Tiers[i].Fill.Modulus, r.Tiers[i].Modulus)
		if !(modulus > 0) {
			return 0
		}
		give += r.in.Tiers[i].Height / modulus
	}
	return 1 / give
}

// Stiffness returns the stiffness of the stack, in which the load spreads [N/mm]; 0 where
// it is not known.
//
// Source: statics of springs in series, or as given.
func (r *Result) Stiffness() float64 {
	if r.Springs.Stack > 0 || r.NoService != "" {
		return r.Springs.Stack
	}
	return r.stack()
}
