package api_test

import (
	"math"
	"regexp"
	"testing"

	"github.com/stretchr/testify/assert"

	"footward.example/footward/internal/derive"
)

// severals are the symbols that stand for several values under the same words, with
// the reason: the steps follow each other in blocks, and each block notes its own
// values before it uses them.
var severals = []struct{ steps, why string }{
	{`^(V|H|H_x|M_x|M_y|e|e_x|e_y|A'|B'|L') \| (statics|API RP 2GEO|EN 1997-1:2004 D\.2)`, "the ground: a block for each design approach and limit state, begun by V; and the pad, whose weight has its own factor"},
	{`^(t_d|phi_d|N_q|N_c|N_gamma|s_q|s_c|s_gamma|h_r|m|m_B|m_L|i_q|i_c|i_gamma|p_q|p_gamma|q_ult|R_d) \| (EN 1997-1:2004|exponent|the angle)`, "the ground: partial factors and load of each design approach"},
	{`^q \| statics`, "overburden in the ground, pressure of a stage in the settlement, with other formulas"},
	{`^(N \| on top|P \| compression on top|M_y \| about y|V_x \| along x|N \| tension positive)`, "the stack: under what the plate presses, then under the actions themselves; the pad: its own combination, case_pad"},
	{`^(N_Ed|P|P_p|R_c|k_A|g_y) \| (tension positive|compression|AISC 360-22 J8|sqrt|to which)`, "the bearing: the whole contact, which the plate needs, then the area about the resultant; anchorage: all rods together"},
}

// TestSymbolOfOneClauseHasOneValue holds the steps of a derivation apart: a symbol with
// the same words behind it stands for one value, or severals says why it does not.
func TestSymbolOfOneClauseHasOneValue(t *testing.T) {
	used := map[string]bool{}
	wholeAnswers(t, func(name string, a *wholeAnswer) {
		assert.NoError(t, derive.Verify(steps(a.GetResult())), name)
		for symbol, all := range a.steps {
			values := map[string]float64{}
			for _, d := range all {
				is, known := values[d.GetClause()]
				values[d.GetClause()] = d.GetValue()
				if !known || math.Abs(is-d.GetValue()) <= 1e-9*math.Abs(is) {
					continue
				}
				why := false
				for _, s := range severals {
					if regexp.MustCompile(s.steps).MatchString(symbol + " | " + d.GetClause()) {
						why, used[s.steps] = true, true
					}
				}
				assert.True(t, why, "%s: %s [%s] is %g and %g", name, symbol, d.GetClause(), is, d.GetValue())
			}
		}
	})
	for _, s := range severals {
		assert.True(t, used[s.steps], "nothing has several values by %s any more", s.steps)
	}
}
