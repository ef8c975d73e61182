package ring

import "fmt"

// settlement sets how much the stack itself settles under the service values.
//
//	s = sum(sigma_v h/M_s + 2 e_c h) + bedding, e_c = K_0 sigma_v D/(2 M)
//
// with the stress at the top of each tier, its greatest.
//
// Source: constrained moduli as ConstrainedModulus says; the strain of the ring is
// derived: fill of constant volume loses in height twice what it gains across.
func (r *Result) settlement() {
	if r.NoService != "" {
		return
	}
	r.Settles.Total = r.in.Bedding
	for i := range r.Tiers {
		t, out := &r.in.Tiers[i], &r.Tiers[i]
		q := max(out.ServiceTop.Mean, out.ServiceBottom.Mean)
		if out.Modulus = t.Fill.Modulus; out.Modulus == 0 {
			out.Modulus = ConstrainedModulus(t.Fill.Grade, q)
		}
		if out.Modulus > 0 {
			out.Compressed = q * t.Height / out.Modulus
		} else {
			r.gap("the modulus of the fill of tier %d is not known", i)
		}
		if t.Ring.Stiffness > 0 {
			out.HoopStrain = out.K0 * q * t.Diameter / (2 * t.Ring.Stiffness)
			out.Spread = 2 * out.HoopStrain * t.Height
		} else {
			r.gap("the stiffness of the ring of tier %d is not known", i)
		}
		if t.Fill.Modulus == 0 && (t.Fill.Grade == Sn100 || t.Fill.Grade == Sn95) && !t.Fill.Tested {
			r.gap("a grade above Sn-90 needs a tested density in tier %d", i)
		}
		if out.ServiceTop.Lost || out.ServiceBottom.Lost {
			r.gap("the resultant leaves the loaded area in tier %d", i)
		}
		r.Settles.Total += out.Compressed + out.Spread
	}
}

func (r *Result) gap(text string, tier int) {
	if r.Settles.Gap == "" {
		r.Settles.Gap = fmt.Sprintf(text, tier+1)
	}
}

// springs sets what is left of the preload. Where the stiffness of the stack is not
// known, the load is taken as going wholly into the rods' loss, and the stack as
// rigid for creep.
//
//	k_r = n E A_s/L, loss by load P k_r/(k_r + k_m), by creep d/(1/k_r + 1/k_m)
//
// Source: statics of springs (bolted-joint practice, from memory).
func (r *Result) springs() {
	rods, s := &r.in.Rods, &r.Springs
	if rods.Count == 0 {
		return
	}
	n := float64(rods.Count)
	s.Rods = n * rods.Modulus * rods.Area / rods.Length
	if s.Stack = rods.Stack; s.Stack == 0 && r.NoService == "" {
		s.Stack = r.stack()
	}
	s.Load, s.Creep = max(0, -r.in.Service.N)/n, rods.Creep*s.Rods/n
	if s.Stack > 0 {
		s.Load *= s.Rods / (s.Rods + s.Stack)
		s.Creep *= s.Stack / (s.Rods + s.Stack)
	}
	s.Left = max(0, rods.Preload-s.Load-s.Creep)
}

// stack returns the stiffness of the fill, or 0 where a modulus is not known.
func (r *Result) stack() float64 {
	give := 0.0
	for i := range r.Tiers {
		out := &r.Tiers[i]
		if !(out.Modulus > 0) {
			return 0
		}
		give += r.in.Tiers[i].Height / out.Modulus / ((out.ServiceTop.Area + out.ServiceBottom.Area) / 2)
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
