package api_test

import (
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	footwardv1 "footward.example/footward/proto/footward/v1"
)

// rodTension is the pull of the rod that is pulled most, of all combinations.
func rodTension(a *wholeAnswer) []said {
	if a.state["rod_tension"] == nil {
		return nil
	}
	out := a.demands("rod_tension", "plate_punching", "plate_washer_bending", "anchor_rod_tension", "anchor_pull_out", "tie_plate_punching")
	most := 0.0
	for _, r := range a.GetResult().GetCombinationRows() {
		for _, v := range r.GetRodTensionsKn() {
			most = max(most, v)
		}
	}
	return append(out, said{"rods of the table", most})
}

// rods returns the pull of each rod in the derivation [kN].
func (a *wholeAnswer) rods() (out []said) {
	for symbol := range a.steps {
		if strings.HasPrefix(symbol, "T_rod#") {
			out = append(out, a.step(symbol, "", 1e3)...)
		}
	}
	return out
}

// rodTensionOfTheCase is that pull in the derivation, which is of one combination.
func rodTensionOfTheCase(a *wholeAnswer) []said {
	all := a.rods()
	if len(all) == 0 {
		return nil
	}
	most := said{"rods of the sharing", 0}
	for _, v := range all {
		most.value = max(most.value, v.value)
	}
	return append(slices.Concat(a.step("F_t,Ed", "given", 1e3), a.step("F_a", "actions", 1e3), a.step("F_t", "greatest", 1e3)), most)
}

// peak is the greatest pressure under the plate in the combination that is worst for it.
func peak(a *wholeAnswer) []said {
	r := a.row("base_pressure")
	if r == nil {
		return nil
	}
	return append(a.demands("base_pressure"), said{"row of the table", r.GetPeakPressureMpa()})
}

// shear is what acts in the combination that is worst for it.
func shear(id string) func(a *wholeAnswer) []said {
	return func(a *wholeAnswer) []said {
		r := a.row(id)
		if r == nil {
			return nil
		}
		f := r.GetForces()
		v := said{"row of the table", math.Hypot(f.GetVXKn(), f.GetVYKn())}
		if f := a.step("F_s", "", 1e3); id == "base_shear" && f != nil {
			if len(a.GetResult().GetCombinationRows()) > 1 {
				return nil // the step is of the combination that governs
			}
			v = said{"row of the table less friction", v.value - f[0].value}
		}
		return append(a.demands(id), v)
	}
}

// movesOfStack are what the stack settles by itself.
func movesOfStack(a *wholeAnswer) []said {
	if a.state["ring_settlement"] == nil {
		return nil
	}
	most := 0.0
	for _, s := range a.GetResult().GetSettlementStages() {
		most = max(most, s.GetAboveMm())
	}
	out := slices.Concat(a.demands("ring_settlement"), a.step("s", "the stack itself", 1))
	if len(a.GetResult().GetSettlementStages()) > 0 {
		out = append(out, said{"stages of the ground", most})
	}
	if e := a.state["settle_elastic"]; e != nil && e.GetCombination() == a.state["ring_settlement"].GetCombination() {
		out = append(out, a.step("s_above", "", 1)...)
		for _, ground := range a.step("s_elastic", "", 1) {
			out = append(out, said{"settle_elastic less the ground's", e.GetDemand() - ground.value})
		}
	}
	return out
}

// settles is what the base settles at last.
func settles(a *wholeAnswer) []said {
	if a.state["settle_elastic"] == nil {
		return nil
	}
	most := 0.0
	for _, s := range a.GetResult().GetSettlementStages() {
		most = max(most, s.GetElasticMm()+s.GetAboveMm())
	}
	last := a.step("s_elastic,all", "", 1)
	if last == nil {
		last = a.step("s_elastic", "", 1)
	}
	return append(append(a.demands("settle_elastic"), last...), said{"stages of the ground", most})
}

// tilts is the steepest slope of all stages.
func tilts(a *wholeAnswer) []said {
	if a.state["settle_tilt"] == nil {
		return nil
	}
	most := 0.0
	for _, s := range a.GetResult().GetSettlementStages() {
		most = max(most, s.GetTilt())
	}
	return append(append(a.demands("settle_tilt"), a.step("theta", "6.6.2", 1)...), said{"stages of the ground", most})
}

var (
	onPad    = regexp.MustCompile(`; ([\d.]+) on the weight of the pad`)
	firstOne = regexp.MustCompile(`: ([\d.]+) `)
)

// weight is that of pad and soil above, without any factor.
func weight(a *wholeAnswer) (out []said) {
	pad, whole, bed := a.steps["case_pad"], a.step("W", "footing, stack", 1e3), a.step("W_bed", "", 1e3)
	if pad == nil || whole == nil || bed == nil {
		return nil
	}
	factor := func(e *regexp.Regexp, text string) float64 {
		f, err := strconv.ParseFloat(e.FindStringSubmatch(text)[1], 64)
		if err != nil {
			return math.NaN()
		}
		return f
	}
	ground := 1.0
	if b := a.asked.GetBasis().Basis(); b != footwardv1.Basis_BASIS_EUROCODE {
		ground = factor(firstOne, a.steps["pair"][0].GetClause())
	}
	of := a.step("W", "pad and soil", 1e3)
	sum, under := a.step("W_g", "", 1e3), a.step("W_l,g", "", 1e3)
	return []said{
		{"step W of the ground less its bed", (whole[0].value - bed[0].value) / ground},
		{"sum of the parts", (sum[0].value - under[0].value) / ground},
		{"step W of the pad", of[0].value / factor(onPad, pad[0].GetClause())},
	}
}

// frictionAtShoe is what friction below the plate takes of the shear, by the base and by the stack.
func frictionAtShoe(a *wholeAnswer) []said {
	mu, delta, share := a.step("mu_s", "", 1), a.step("delta_0", "", 1), a.step("k_s", "Annex A", 1)
	if mu == nil || delta == nil {
		return nil
	}
	k := 1.0
	if share != nil {
		k = share[0].value
	}
	return []said{{"mu_s of the base", mu[0].value}, {"tan(delta_0) k_s of the stack", math.Tan(delta[0].value) * k}}
}

// shearAtShoe is what that friction takes in all of a plate that no rod holds down.
func shearAtShoe(a *wholeAnswer) []said {
	takes, stack, key := a.step("F_s", "", 1), a.step("V_R0", "", 1), a.step("V_key", "", 1)
	if takes == nil || stack == nil {
		return nil
	}
	for _, t := range a.rods() {
		if t.value > 0 {
			return nil // it presses plate and fill together, and the base leaves that alone
		}
	}
	for _, k := range key {
		stack[0].value -= k.value
	}
	return append(takes, stack...)
}

// preloadLeft is what is left of the preload of a rod.
func preloadLeft(a *wholeAnswer) []said {
	left := a.step("F_l", "", 1e3)
	if left == nil {
		return nil
	}
	for _, id := range []string{"ring_preload", "tie_preload"} {
		if l := a.state[id]; l != nil {
			left = append(left, said{"resistance of " + id, l.GetResistance()})
		}
	}
	return left
}

// quantities that an answer gives in more than one place.
var quantities = []struct {
	what string
	find func(*wholeAnswer) []said
}{
	{"greatest tension of a rod", rodTension},
	{"greatest tension of a rod, in the derivation", rodTensionOfTheCase},
	{"peak pressure", peak},
	{"shear on the rods", shear("base_shear")},
	{"shear on the plate", shear("base_shear_path")},
	{"shear on the stack", shear("ring_sliding")},
	{"settlement of the stack", movesOfStack},
	{"settlement", settles},
	{"tilt", tilts},
	{"weight of the pad", weight},
	{"friction at the shoe", frictionAtShoe},
	{"shear at the shoe", shearAtShoe},
	{"preload left", preloadLeft},
}

// TestOneQuantityHasOneFigure holds what stands twice in one answer to one value.
func TestOneQuantityHasOneFigure(t *testing.T) {
	held := map[string]int{}
	wholeAnswers(t, func(name string, a *wholeAnswer) {
		for _, q := range quantities {
			all := q.find(a)
			if len(all) < 2 {
				continue
			}
			held[q.what]++
			for _, one := range all[1:] {
				assert.InDelta(t, all[0].value, one.value, 1e-9*math.Abs(all[0].value)+1e-12, "%s: %s: %s and %s", name, q.what, all[0].where, one.where)
			}
		}
	})
	for _, q := range quantities {
		assert.Positive(t, held[q.what], "no answer gives the %s twice", q.what)
	}
}
