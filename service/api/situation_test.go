package api_test

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"footward.example/footward/client"
	"footward.example/footward/client/footward/reading"
	footwardv1 "footward.example/footward/proto/footward/v1"
)

// headedBase is a plate with four cast-in rods under loads.
func headedBase(basis, steel, loads string) string {
	return fmt.Sprintf(`
column_base:
  basis: {%s: {}}
  base:
    plate: {size_x_mm: 400, size_y_mm: 400, thickness_mm: 30, steel: {grade: EN 10025-2 S355}}
    footprint: {tube: {size_x_mm: 200, size_y_mm: 200, wall_mm: 10}, stiffness: FOOTPRINT_STIFFNESS_STIFF}
    support: {concrete: {concrete: {%s}, size_x_mm: 1200, size_y_mm: 1200, height_mm: 600}}
    rods:
      rod: {thread: {designation: M20}, steel: {grade: ISO 898-1 8.8}}
      positions: [{x_mm: -150, y_mm: -150}, {x_mm: 150, y_mm: -150}, {x_mm: 150, y_mm: 150}, {x_mm: -150, y_mm: 150}]
      holes: {diameter_mm: 22}
    anchorage: {headed: {embedment_mm: 300, head: {diameter_mm: 50, thickness_mm: 20}}}
  include_combinations: true
  %s`, basis, steel, loads)
}

const (
	eurocodeBasis = "eurocode"
	c25           = "grade: C25/30"
)

func actionSet(kinds string, actions ...string) string {
	return "action_set: {kinds: [" + kinds + "], actions: [" + strings.Join(actions, ", ") + "]}"
}

func act(name, kind, forces string) string {
	return fmt.Sprintf("{name: %s, kind: ACTION_KIND_%s, forces: {%s}}", name, kind, forces)
}

func noticeText(r *footwardv1.CheckResult, code string) string {
	for _, n := range r.GetNotices() {
		if n.GetCode() == code {
			return n.GetText()
		}
	}
	return ""
}

// TestAnImpactIsCheckedWithoutBeingAskedFor has a base that holds its snow and not the
// impact: by default the answer is that of the accidental situation (EN 1990 6.11b).
func TestAnImpactIsCheckedWithoutBeingAskedFor(t *testing.T) {
	g, s := act("G", "PERMANENT", "n_kn: -50"), act("snow", "SNOW", "n_kn: -20")
	impact := act("impact", "ACCIDENTAL", "v_x_kn: 300, m_y_knm: 160")
	all := parsedResult(t, headedBase(eurocodeBasis, c25, actionSet("", g, s, impact)))
	assert.Equal(t, footwardv1.Verdict_VERDICT_FAIL, all.GetVerdict())
	assert.Contains(t, state(t, all, all.GetGoverningLimitStateId()).GetCombination(), "(6.11b)")
	without := parsedResult(t, headedBase(eurocodeBasis, c25, actionSet("COMBINATION_KIND_STRENGTH, COMBINATION_KIND_EQUILIBRIUM", g, s, impact)))
	assert.Equal(t, footwardv1.Verdict_VERDICT_PASS, without.GetVerdict())
	assert.Contains(t, noticeText(without, "load_action_not_combined"), "impact")
	small := parsedResult(t, headedBase(eurocodeBasis, c25, actionSet("", g, s, act("impact", "ACCIDENTAL", "v_x_kn: 10"))))
	assert.Equal(t, footwardv1.Verdict_VERDICT_PASS, small.GetVerdict())
	assert.Empty(t, noticeText(small, "load_action_not_combined"))
}

// greatestTension returns the greatest tension of a rod in a table [kN].
func greatestTension(t *testing.T, item string) (most float64) {
	t.Helper()
	m := parsed(t, item).GetColumnBase()
	r, err := service(t).CheckColumnBase(t.Context(), m)
	require.NoError(t, err)
	for _, row := range r.GetResult().GetCombinationRows() {
		for _, f := range row.GetRodTensionsKn() {
			most = max(most, f)
		}
	}
	return most
}

// TestRodsThatHoldDownHaveSetA has 1.5 x 40 - 0.9 x 50 = 15 kN of uplift on four rods
// (EN 1990 Table A1.2(A)); 1.5 x 40 - 1.0 x 50 = 10 kN by set B alone.
func TestRodsThatHoldDownHaveSetA(t *testing.T) {
	g, w := act("G", "PERMANENT", "n_kn: -50"), act("W", "WIND", "n_kn: 40")
	assert.InDelta(t, 15.0/4, greatestTension(t, headedBase(eurocodeBasis, c25, actionSet("", g, w))), 1e-6)
	b := headedBase(eurocodeBasis, c25, actionSet("COMBINATION_KIND_STRENGTH", g, w))
	assert.InDelta(t, 10.0/4, greatestTension(t, b), 1e-6)
	assert.NotEmpty(t, noticeText(parsedResult(t, b), "base_equilibrium_left_out"))
}

// TestUpliftAndSideForceOfOneWindPullTogether gives one wind whole and in two parts: the
// rods have the same, in every code family.
func TestUpliftAndSideForceOfOneWindPullTogether(t *testing.T) {
	g := act("D", "PERMANENT", "n_kn: -30")
	whole := act("W", "WIND", "n_kn: 80, v_x_kn: 25, m_y_knm: 20")
	parts := []string{act("W1", "WIND", "n_kn: 80"), act("W2", "WIND", "v_x_kn: 25, m_y_knm: 20")}
	for basis, concrete := range map[string]string{eurocodeBasis: c25, "us_lrfd": "properties: {strength_mpa: 25}", "us_asd": "properties: {strength_mpa: 25}"} {
		one := parsedResult(t, headedBase(basis, concrete, actionSet("", g, whole)))
		two := parsedResult(t, headedBase(basis, concrete, actionSet("", append([]string{g}, parts...)...)))
		for _, id := range []string{"rod_tension", "rod_combined"} {
			if basis != eurocodeBasis && id == "rod_combined" {
				continue
			}
			assert.InDelta(t, state(t, one, id).GetUtilization(), state(t, two, id).GetUtilization(), 1e-6, "%s %s", basis, id)
		}
		assert.Contains(t, noticeText(two, "load_parts_of_one_action"), "W1 + W2")
		assert.Empty(t, noticeText(one, "load_parts_of_one_action"))
	}
}

// TestServiceValuesProveNoStrength leaves the strength of a base open that was checked
// under other combinations alone; beside strength they change nothing.
func TestServiceValuesProveNoStrength(t *testing.T) {
	g, q := act("G", "PERMANENT", "n_kn: -50"), act("S", "SNOW", "n_kn: -20")
	for _, kind := range []string{"CHARACTERISTIC", "FREQUENT", "QUASI_PERMANENT", "GROUND", "EQUILIBRIUM"} {
		r := parsedResult(t, headedBase(eurocodeBasis, c25, actionSet("COMBINATION_KIND_"+kind, g, q)))
		assert.Equal(t, footwardv1.Verdict_VERDICT_OUT_OF_SCOPE, r.GetVerdict(), kind)
		for _, s := range r.GetLimitStates() {
			assert.NotEqual(t, footwardv1.Verdict_VERDICT_PASS, s.GetVerdict(), s.GetId())
		}
		assert.Contains(t, state(t, r, "plate_compression").GetReason(), "kinds")
	}
	for _, kinds := range []string{"COMBINATION_KIND_STRENGTH, COMBINATION_KIND_QUASI_PERMANENT", "COMBINATION_KIND_STRENGTH_AB"} {
		r := parsedResult(t, headedBase(eurocodeBasis, c25, actionSet(kinds, g, q)))
		assert.Equal(t, footwardv1.Verdict_VERDICT_PASS, r.GetVerdict(), kinds)
	}
	r := parsedResult(t, headedBase(eurocodeBasis, c25, actionSet("COMBINATION_KIND_ACCIDENTAL", g, q, act("A", "ACCIDENTAL", "v_x_kn: 10"))))
	assert.Equal(t, footwardv1.Verdict_VERDICT_PASS, r.GetVerdict())
	assert.NotEmpty(t, noticeText(r, "base_persistent_left_out"))
}

// TestAStackWithoutSetAIsNotStable leaves overturning and uplift open; strength is not.
func TestAStackWithoutSetAIsNotStable(t *testing.T) {
	m := demoBase(t)
	m.Exposure, m.Base.Substructure.Settlement = nil, nil
	m.GetActionSet().Kinds = []footwardv1.CombinationKind{footwardv1.CombinationKind_COMBINATION_KIND_STRENGTH}
	out, err := service(t).CheckColumnBase(t.Context(), m)
	require.NoError(t, err)
	for id, want := range map[string]footwardv1.Verdict{
		"ring_overturning": footwardv1.Verdict_VERDICT_OUT_OF_SCOPE, "tie_overturning": footwardv1.Verdict_VERDICT_OUT_OF_SCOPE,
		"ring_edge_stress": footwardv1.Verdict_VERDICT_PASS, "plate_compression": footwardv1.Verdict_VERDICT_PASS,
		"ground_overturning": footwardv1.Verdict_VERDICT_PASS,
	} {
		assert.Equal(t, want, state(t, out.GetResult(), id).GetVerdict(), id)
	}
	m.GetActionSet().Kinds = append(m.GetActionSet().Kinds, footwardv1.CombinationKind_COMBINATION_KIND_EQUILIBRIUM)
	out, err = service(t).CheckColumnBase(t.Context(), m)
	require.NoError(t, err)
	assert.Equal(t, footwardv1.Verdict_VERDICT_PASS, out.GetResult().GetVerdict())
}

// onTimber is a plate without rods on a beam, across the grain.
func onTimber(basis, timber, bearing, loads string) string {
	return fmt.Sprintf(`
column_base:
  basis: {%s: {}}
  base:
    plate: {size_x_mm: 300, size_y_mm: 300, thickness_mm: 40, steel: {grade: EN 10025-2 S355}}
    footprint: {tube: {size_x_mm: 200, size_y_mm: 200, wall_mm: 10}, stiffness: FOOTPRINT_STIFFNESS_STIFF}
    support: {timber: {timber: {grade: %s}, service_class: SERVICE_CLASS_2, %s}}
  include_combinations: true
  %s`, basis, timber, bearing, loads)
}

const c24 = "EN 338 C24"

// TestTimberLastsAsItsCombinationDoes has a permanent force of 1.35 x 100 kN beside a
// little wind, across the grain of C24 (f_c,90,k 2.5 MPa): 0.6 x 2.5/1.3 x 300 x 300 =
// 103.85 kN, 1.30. Short-term is what the timber is said to be, and no better.
func TestTimberLastsAsItsCombinationDoes(t *testing.T) {
	across := "direction: GRAIN_DIRECTION_ACROSS"
	roof, wind := act("roof", "PERMANENT", "n_kn: -100"), act("wind", "WIND", "n_kn: -5")
	for _, stated := range []string{"", ", load_duration: LOAD_DURATION_SHORT_TERM"} {
		r := parsedResult(t, onTimber(eurocodeBasis, c24, across+stated, actionSet("", roof, wind)))
		s := state(t, r, "timber_across_grain")
		assert.Equal(t, footwardv1.Verdict_VERDICT_FAIL, s.GetVerdict())
		assert.InDelta(t, 135/(0.6*2.5/1.3*90), s.GetUtilization(), 1e-6)
		assert.Contains(t, s.GetCombination(), ": 1.35 roof")
		assert.NotEmpty(t, noticeText(r, "base_duration_by_combination"))
	}
	// Snow that the caller says to be short-term: 75 + 54 kN on 0.9 x 2.5/1.3 x 90 = 155.8.
	snow := "{name: snow, kind: ACTION_KIND_SNOW, load_duration: LOAD_DURATION_SHORT_TERM, forces: {n_kn: -50}}"
	r := parsedResult(t, onTimber(eurocodeBasis, c24, across, actionSet("", act("roof", "PERMANENT", "n_kn: -40"), snow)))
	assert.Equal(t, footwardv1.Verdict_VERDICT_PASS, r.GetVerdict())
	assert.InDelta(t, (1.35*40+1.5*50)/(0.9*2.5/1.3*90), state(t, r, "timber_across_grain").GetUtilization(), 1e-6)
	// A stated duration that is longer than the combination's holds.
	r = parsedResult(t, onTimber(eurocodeBasis, c24, across+", load_duration: LOAD_DURATION_LONG_TERM", actionSet("", act("roof", "PERMANENT", "n_kn: -40"), snow)))
	assert.InDelta(t, (1.35*40+1.5*50)/(0.7*2.5/1.3*90), state(t, r, "timber_across_grain").GetUtilization(), 1e-6)
}

// TestLoadCasesHaveTheirOwnDuration has the same by cases made ready.
func TestLoadCasesHaveTheirOwnDuration(t *testing.T) {
	across := "direction: GRAIN_DIRECTION_ACROSS, load_duration: LOAD_DURATION_SHORT_TERM"
	cases := func(own string) string {
		return "load_cases: {cases: [{name: roof, " + own + "forces: {n_kn: -135}}, {name: wind, forces: {n_kn: -140}}]}"
	}
	r := parsedResult(t, onTimber(eurocodeBasis, c24, across, cases("load_duration: LOAD_DURATION_PERMANENT, ")))
	s := state(t, r, "timber_across_grain")
	assert.Equal(t, "roof", s.GetCombination())
	assert.InDelta(t, 135/(0.6*2.5/1.3*90), s.GetUtilization(), 1e-6)
	r = parsedResult(t, onTimber(eurocodeBasis, c24, across, cases("")))
	assert.Equal(t, footwardv1.Verdict_VERDICT_PASS, r.GetVerdict(), "all are short-term, as the timber says")
	assert.NotEmpty(t, noticeText(r, "base_duration_for_all"))
}

// TestTimeEffectIsThatOfTheCombination holds lambda 0.6 under 1.4 D and 1.0 under wind
// (NDS 2018 Table N3), C_D 0.9 and 1.6 (Table 2.3.2), along the grain of F_c 1350 psi =
// 9.308 MPa on 300 x 300 mm. LRFD: 9.308 x 2.4 x 0.9 x 90 = 1809.5 kN by lambda 1;
// 140/1085.7 = 0.1289 governs 220/1809.5 = 0.1216. ASD: 100/753.9 = 0.1326 governs
// 160/1340.3 = 0.1194.
func TestTimeEffectIsThatOfTheCombination(t *testing.T) {
	const along, fc = "direction: GRAIN_DIRECTION_ALONG", 1350 * 6.894757293e-3
	d, w := act("D", "PERMANENT", "n_kn: -100"), act("W", "WIND", "n_kn: -100")
	for basis, want := range map[string]struct {
		stated      string
		utilization float64
	}{
		"us_lrfd": {", time_effect_factor: 1", 140 / (fc * 2.4 * 0.9 * 0.6 * 90)},
		"us_asd":  {", load_duration_factor: 1.6", 100 / (fc * 0.9 * 90)},
	} {
		for _, stated := range []string{"", want.stated} {
			s := state(t, parsedResult(t, onTimber(basis, timberUS, along+stated, actionSet("", d, w))), "timber_along_grain")
			assert.InDelta(t, want.utilization, s.GetUtilization(), 1e-6, basis)
			assert.Regexp(t, `\): 1(\.4)? D$`, s.GetCombination())
		}
	}
	// 1.2 x 100 + 150 kN of wind alone: by lambda 1, 270/1809.5, above 140/1085.7.
	s := state(t, parsedResult(t, onTimber("us_lrfd", timberUS, along, actionSet("", d, act("W", "WIND", "n_kn: -150")))), "timber_along_grain")
	assert.InDelta(t, 270/(fc*2.4*0.9*90), s.GetUtilization(), 1e-6)
}

const timberUS = "NDS Douglas Fir-Larch No. 2"

// parsed reads a check as the command does.
func parsed(t *testing.T, item string) *footwardv1.CheckItem {
	t.Helper()
	items, err := reading.Read(strings.NewReader(item))
	require.NoError(t, err)
	require.Len(t, items, 1)
	return items[0].Check
}

func parsedResult(t *testing.T, item string) *footwardv1.CheckResult {
	t.Helper()
	r, err := service(t).CheckColumnBase(t.Context(), parsed(t, item).GetColumnBase())
	require.NoError(t, err)
	return r.GetResult()
}

// TestAnImpactReachesTheGround has an impact against a block on sand: 1.0 of it slides
// (EN 1997-1 2.4.7.1(3)), with the ground's own factors as ever.
func TestAnImpactReachesTheGround(t *testing.T) {
	check := func(v float64, turned bool) *footwardv1.CheckResult {
		m := onBlock(t, 75)
		impact := &footwardv1.ForcesAtFoot{VXKn: v}
		if turned {
			impact = &footwardv1.ForcesAtFoot{VYKn: v}
		}
		set := m.GetActionSet()
		set.Actions = append(set.Actions, &footwardv1.Action{Name: "impact", Kind: footwardv1.ActionKind_ACTION_KIND_ACCIDENTAL, Forces: impact})
		m.Base.Rods = parsed(t, headedBase(eurocodeBasis, c25, actionSet("", act("G", "PERMANENT", "n_kn: -1")))).GetColumnBase().Base.Rods
		r, err := service(t).CheckColumnBase(t.Context(), &footwardv1.CheckColumnBaseRequest{Basis: m.GetBasis(), Exposure: m.GetExposure(), Base: m.GetBase(),
			Loads: &footwardv1.CheckColumnBaseRequest_ActionSet{ActionSet: set}})
		require.NoError(t, err, "%v", client.Violations(err))
		return r.GetResult()
	}
	for _, turned := range []bool{false, true} {
		r := check(20, turned)
		s := state(t, r, "ground_sliding")
		assert.Contains(t, s.GetCombination(), "(6.11b)")
		assert.InDelta(t, 20, s.GetDemand(), 1e-9)
		assert.Equal(t, footwardv1.Verdict_VERDICT_PASS, s.GetVerdict())
		assert.NotEmpty(t, noticeText(r, "base_ground_accidental"))
		// 80 kN and the block of 1.8 x 1.8 x 0.5 x 25 = 40.5 kN hold by tan 30/1.25 (constant volume, as none is given) and the
		// friction share of 1.
		assert.InDelta(t, (80+40.5+weightAbove)*0.577350/1.25, s.GetResistance(), 1e-3)
		assert.Equal(t, footwardv1.Verdict_VERDICT_FAIL, state(t, check(100, turned), "ground_sliding").GetVerdict())
	}
}

// weightAbove is other_weight_kn of the base that is compared.
const weightAbove = 1.5

// TestKindsWithoutAnyCombinationAreRefused by the name of what makes none.
func TestKindsWithoutAnyCombinationAreRefused(t *testing.T) {
	m := parsed(t, headedBase(eurocodeBasis, c25, actionSet("COMBINATION_KIND_ACCIDENTAL", act("G", "PERMANENT", "n_kn: -50")))).GetColumnBase()
	_, err := service(t).CheckColumnBase(t.Context(), m)
	var fields []string
	for _, v := range client.Violations(err) {
		fields = append(fields, v.GetField())
	}
	assert.Equal(t, []string{"action_set.kinds"}, fields)
}

// TestAPadHasTheWeightOfSetBByEitherFormula has permanent actions alone, by which (6.10) and
// (6.10a) are one: the block of 40.5 kN that hangs at the side that lifts has 1.35 by both.
func TestAPadHasTheWeightOfSetBByEitherFormula(t *testing.T) {
	pads := func(kind footwardv1.CombinationKind) map[string]float64 {
		m := onBlock(t, 75)
		set := m.GetActionSet()
		set.Actions = []*footwardv1.Action{{Name: "G", Kind: footwardv1.ActionKind_ACTION_KIND_PERMANENT,
			Forces: &footwardv1.ForcesAtFoot{NKn: -20, MXKnm: 18}}}
		set.Kinds = []footwardv1.CombinationKind{kind, footwardv1.CombinationKind_COMBINATION_KIND_EQUILIBRIUM}
		m.Base.Rods = parsed(t, headedBase(eurocodeBasis, c25, actionSet("", act("G", "PERMANENT", "n_kn: -1")))).GetColumnBase().Base.Rods
		r, err := service(t).CheckColumnBase(t.Context(), &footwardv1.CheckColumnBaseRequest{Basis: m.GetBasis(), Exposure: m.GetExposure(), Base: m.GetBase(),
			Loads: &footwardv1.CheckColumnBaseRequest_ActionSet{ActionSet: set}})
		require.NoError(t, err, "%v", client.Violations(err))
		out := map[string]float64{}
		for _, s := range r.GetResult().GetLimitStates() {
			if strings.HasPrefix(s.GetId(), "pad_") {
				out[s.GetId()] = s.GetDemand()
			}
		}
		return out
	}
	one := pads(footwardv1.CombinationKind_COMBINATION_KIND_STRENGTH)
	require.Positive(t, one["pad_top_bending"])
	two := pads(footwardv1.CombinationKind_COMBINATION_KIND_STRENGTH_AB)
	for id, demand := range one {
		assert.InDelta(t, demand, two[id], 1e-9, id)
	}
}
