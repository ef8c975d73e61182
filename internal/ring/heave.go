package ring

import (
	"math"
	"strconv"

	"footward.example/footward/internal/basis"
	"footward.example/footward/internal/derive"
	"footward.example/footward/internal/limit"
)

// Heave is the open fill between the loaded circle and the ring, down to where the
// load has spread to the ring: it hands on to the ring what confines the loaded fill,
// and can be pushed up.
type Heave struct {
	Depth  float64 // of that fill [mm]; 0: the shoe covers the top ring
	Needed float64 // mean confining stress that the loaded fill needs there [MPa]
	Holds  float64 // mean passive pressure of the open fill [MPa]
	Tested bool    // a load test through this shoe reaches far enough
}

// heave sets what the open fill beside the shoe must react, and can by its weight and
// cohesion alone, without friction on loaded fill and ring.
//
//	sigma_3 = mean of (q - 2 c sqrt(K_p))/K_p, by the edge stress of top and bottom of a tier
//	sigma_p = mean of K_p (p_cover + gamma z) + 2 c sqrt(K_p)
//
// Source: Rankine; statics of the annulus.
func (r *Result) heave() {
	in, h := r.in, &r.Heave
	if r.NoStress != "" {
		return
	}
	needs, holds := 0.0, 0.0
	overburden := in.Cover
	for i := range in.Tiers {
		t, out := &in.Tiers[i], &r.Tiers[i]
		open := min(t.Height, t.Diameter-out.Top.Diameter)
		if open <= 0 || out.lost() {
			break
		}
		h.Depth += open
		needs += out.confined(open)
		holds += (out.Kp*(overburden+t.Fill.UnitWeight*open/2) + 2*out.C*math.Sqrt(out.Kp)) * open
		overburden += t.Fill.UnitWeight * open
		if open < t.Height {
			break
		}
	}
	if h.Depth == 0 {
		return
	}
	h.Needed, h.Holds = needs/h.Depth, holds/h.Depth
	if in.Design.Basis == basis.USASD {
		h.Holds /= r.Safety.Fill
	} else if in.Design.Basis == basis.USLRFD {
		h.Holds *= or(r.Safety.PhiB, 1)
	}
}

// heaveState never passes by numbers where statics do not find that the open fill
// reacts: then a load test of this build through this shoe stands for it, or nothing.
func (r *Result) heaveState() limit.State {
	h := &r.Heave
	switch {
	case r.NoStress != "":
		return r.noStress(heaving)
	case r.Tiers[0].lost():
		return limit.State{Kind: heaving, Verdict: limit.Fail, Member: 1, Reason: leaves}
	case h.Depth == 0:
		return limit.Skip(heaving, "the plate covers the fill of the top ring")
	}
	s := limit.Evaluate(heaving, h.Needed, h.Holds).Of(1)
	switch {
	case s.Verdict == limit.Pass:
		return r.bound(s, r.ownFactor())
	case h.Tested:
		s.Verdict = limit.NotApplicable
		s.Reason = "by statics the open fill beside the plate is pushed up; the load test of this build through this plate stands for it"
	default:
		s.Verdict = limit.OutOfScope
		s.Reason = "not verified: by statics the open fill beside the plate is pushed up: cover it, widen the plate, or load this build through this plate"
	}
	return s
}

func (r *Result) deriveHeave(sheet *derive.Sheet) {
	h := &r.Heave
	if h.Depth == 0 {
		return
	}
	sheet.Given("p_v0", r.in.Cover, "MPa", "held down on the open fill beside the plate")
	needs, holds, depths, depth := "", "", "", 0.0
	overburden := r.in.Cover
	for i := range r.Tiers {
		s, out, t := steps{sheet, strconv.Itoa(i + 1)}, &r.Tiers[i], &r.in.Tiers[i]
		open := min(t.Height, t.Diameter-out.Top.Diameter)
		if depth >= h.Depth {
			break
		}
		root := 2 * out.C * math.Sqrt(out.Kp)
		s.step("a_#", "min(h_#, D_# - d_t#)", open, "mm", "height of the open fill in the tier")
		const top, bottom, most = "max(0, q_et# - 2 c_# sqrt(K_p#))", "max(0, q_eb# - 2 c_# sqrt(K_p#))", "max(0, q_ew# - 2 c_# sqrt(K_p#))"
		formula := "(" + top + " + " + bottom + ") / (2 K_p#) a_#"
		if out.Within.Level > 0 {
			formula = "((" + top + " + " + most + ") k_w# + (" + most + " + " + bottom + ") (1 - k_w#)) / (2 K_p#) a_#"
		}
		s.step("S_n#", formula, out.confined(open), "N/mm", "confinement that the loaded fill needs")
		s.step("S_p#", "(K_p# (p_v"+strconv.Itoa(i)+" + gamma_# a_# / 2) + 2 c_# sqrt(K_p#)) a_#",
			(out.Kp*(overburden+t.Fill.UnitWeight*open/2)+root)*open, "N/mm", "Rankine, passive")
		overburden += t.Fill.UnitWeight * open
		s.step("p_v#", "p_v"+strconv.Itoa(i)+" + gamma_# a_#", overburden, "MPa", "own weight of the open fill")
		depth += open
		needs, holds, depths = needs+" + S_n"+s.at, holds+" + S_p"+s.at, depths+" + a_"+s.at
	}
	sheet.Step("sigma_n", "("+needs[3:]+") / ("+depths[3:]+")", h.Needed, "MPa", "mean")
	sheet.Step("sigma_p", "k_f ("+holds[3:]+") / ("+depths[3:]+")", h.Holds, "MPa", "mean")
}

// confined returns the confinement that the loaded fill needs along the open height of
// its tier [N/mm]: trapezoids from its top to its bottom, by way of the place between
// them where the edge stress is greatest, if there is one.
//
// Source: Mohr and Coulomb; trapezoidal rule.
func (out *TierResult) confined(open float64) float64 {
	needed := func(f *Face) float64 { return Needed(f.Edge, out.Phi, out.C) }
	top, bottom := needed(&out.Top), needed(&out.Bottom)
	if out.Within.Level == 0 {
		return (top + bottom) / 2 * open
	}
	most, above := needed(&out.Within), open*float64(out.Within.Level)/cuts
	return (top+most)/2*above + (most+bottom)/2*(open-above)
}
