package api_test

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	footwardv1 "footward.example/footward/proto/footward/v1"
)

// footingOf is a square footing with more fields.
func footingOf(more string) string {
	return `{"footing": {"basis": {"eurocode": {"ground": {"gamma_phi": 1.15, "gamma_r_h": 1.2}, "actions": {"gamma_g_inf_equilibrium": 0.95}}},
		"footing": {"rectangle": {"size_x_mm": 1500, "size_y_mm": 1500}, "depth_mm": 500}, "height_mm": 600, "detail": "DETAIL_DERIVATION",
		"permanent": {"n_kn": -80, "v_x_kn": 5}, "weight_kn": 30, "base_contact": {"friction_share": 1},
		"soil": {"friction_angle_deg": 32, "unit_weight_kn_m3": 18, "unit_weight_above_kn_m3": 18, "dry": true}` + more + `}}`
}

func TestFactorsOfTheGroundAreStatedAsGiven(t *testing.T) {
	r := result(t, footingOf(""))
	seen := map[string]string{}
	for _, f := range r.GetFactors() {
		seen[fmt.Sprintf("%s %g", f.GetSymbol(), f.GetValue())] = f.GetSource()
	}
	for _, given := range []string{"gamma_phi 1.15", "gamma_stb 0.95"} {
		assert.Equal(t, "given in the request", seen[given], "%v", seen)
	}
	assert.Contains(t, seen["gamma_phi 1"], "EN 1997-1")
	assert.Contains(t, seen["gamma_c 1.25"], "EN 1997-1")
}

// TestFactorsOnActionsReachTheGround: 1.0 on weight and permanent shear and 1.5 on the
// wind, or what is given instead.
func TestFactorsOnActionsReachTheGround(t *testing.T) {
	slides := func(factors string) float64 {
		item := blockOf(`{"name": "G", "kind": "ACTION_KIND_PERMANENT", "forces": {"n_kn": -60, "v_x_kn": 2}},
			{"name": "wind", "kind": "ACTION_KIND_WIND", "forces": {"v_x_kn": 10}}`, "")
		item = strings.Replace(item, `"eurocode": {}`, `"eurocode": {"actions": {`+factors+`}}`, 1)
		item = strings.Replace(item, `"ground": {"depth_mm"`, `"ground": {"design_approaches": ["DESIGN_APPROACH_2"], "depth_mm"`, 1)
		return state(t, result(t, item), "ground_sliding").GetDemand()
	}
	assert.InDelta(t, 2+1.5*10, slides(""), 1e-9)
	assert.InDelta(t, 2+1.3*10, slides(`"gamma_q": 1.3`), 1e-9)
	assert.InDelta(t, 2+1.5*10, slides(`"gamma_q": 1.5`), 1e-9)
}

// blockOf is a column base on a block on the ground under actions.
func blockOf(actions, more string) string {
	return `{"column_base": {"basis": {"eurocode": {}}, "base": {
		"plate": {"size_x_mm": 300, "size_y_mm": 300, "thickness_mm": 30, "steel": {"grade": "EN 10025-2 S355"}},
		"footprint": {"tube": {"size_x_mm": 100, "size_y_mm": 100, "wall_mm": 8}, "stiffness": "FOOTPRINT_STIFFNESS_STIFF"},
		"support": {"concrete": {"concrete": {"grade": "C25/30"}, "size_x_mm": 1400, "size_y_mm": 1400, "height_mm": 900}},
		"substructure": {"concrete_unit_weight_kn_m3": 25, "ground": {"depth_mm": 900, "base_contact": {"friction_share": 1},
			"soil": {"friction_angle_deg": 35, "unit_weight_kn_m3": 19, "unit_weight_above_kn_m3": 19, "dry": true}}` + more + `}},
		"action_set": {"actions": [` + actions + `]}}}`
}

func TestPermanentLiftOfAMembraneIsNotLostInTheRoof(t *testing.T) {
	r := result(t, blockOf(`{"name": "roof", "kind": "ACTION_KIND_PERMANENT", "forces": {"n_kn": -100}},
		{"name": "membrane", "kind": "ACTION_KIND_PERMANENT", "forces": {"n_kn": 95, "v_x_kn": 3}}`, ""))
	up := state(t, r, "ground_uplift")
	// EN 1997-1 2.4.7.4: 1.1 95 kN against 0.9 (100 + 1.4 1.4 0.9 25) kN.
	assert.InDelta(t, 1.1*95, up.GetDemand(), 1e-3)
	assert.InDelta(t, 0.9*(100+44.1), up.GetResistance(), 1e-3)
	slide := state(t, r, "ground_sliding")
	assert.Greater(t, slide.GetUtilization(), 1.35*3/((144.1-1.35*95)*0.5774)*0.999)
}

func TestSettlementOfABaseAddsItsLayers(t *testing.T) {
	layers := `, "settlement": {"layers": [{"thickness_mm": 1500, "unit_weight_kn_m3": 18, "n60": 4},
		{"thickness_mm": 3000, "unit_weight_kn_m3": 17, "oedometer": {"compression_index": 0.3, "void_ratio": 1}}]}`
	r := result(t, blockOf(`{"name": "G", "kind": "ACTION_KIND_PERMANENT", "forces": {"n_kn": -190}}`, layers))
	sand, clay, total := state(t, r, "settle_burland_burbidge"), state(t, r, "settle_consolidation"), state(t, r, "settle_total")
	assert.InDelta(t, sand.GetDemand()+clay.GetDemand(), total.GetDemand(), 1e-9)
	assert.Equal(t, footwardv1.Verdict_VERDICT_PASS, sand.GetVerdict())
	assert.Equal(t, footwardv1.Verdict_VERDICT_PASS, clay.GetVerdict())
	assert.Equal(t, footwardv1.Verdict_VERDICT_FAIL, total.GetVerdict())
}

func TestPadIsNamedWithTheFactorOnItsWeight(t *testing.T) {
	r := result(t, blockOf(`{"name": "G", "kind": "ACTION_KIND_PERMANENT", "forces": {"n_kn": -60}},
		{"name": "wind", "kind": "ACTION_KIND_WIND", "forces": {"v_x_kn": 10}}`, ""))
	assert.Contains(t, state(t, r, "pad_equilibrium").GetCombination(), "0.9 on the weight of the pad")
}

func TestPresumptivePressureWithoutSoilIsChecked(t *testing.T) {
	r := result(t, `{"footing": {"basis": {"eurocode": {}}, "footing": {"rectangle": {"size_x_mm": 1000, "size_y_mm": 1000}, "depth_mm": 600},
		"permanent": {"n_kn": -80}, "height_mm": 0, "weight_kn": 18.8, "base_contact": {"friction_share": 1}, "presumptive": {"pressure_kpa": 150, "source": "constructed"}}}`)
	s := state(t, r, "ground_presumptive")
	assert.InDelta(t, 0.0988, s.GetDemand(), 1e-6)
	assert.Equal(t, footwardv1.Verdict_VERDICT_PASS, s.GetVerdict())
}

func TestBlockInWaterIsLight(t *testing.T) {
	wet := strings.Replace(blockOf(`{"name": "G", "kind": "ACTION_KIND_PERMANENT", "forces": {"n_kn": -60}},
		{"name": "wind", "kind": "ACTION_KIND_WIND", "forces": {"v_x_kn": 10}}`, ""), `"dry": true`, `"water_depth_mm": 300`, 1)
	r := result(t, wet)
	// 9.81 0.6 1.96 = 11.54 kN up: 1.5 10 0.93 kNm over 0.9 (60 + 44.1) - 11.54 kN, of half of 1.4 m.
	assert.InDelta(t, 13.95/(0.9*104.1-9.81*0.6*1.96)/0.7, state(t, r, "pad_equilibrium").GetDemand(), 1e-3)
	assert.Contains(t, codesOf(r), "ground_water_above_base")
}

// TestWaterOfAStatedDepthCountsInDryGround says both: water at 300 mm counts, and at 30 m
// it is as good as none.
func TestWaterOfAStatedDepthCountsInDryGround(t *testing.T) {
	block := blockOf(`{"name": "G", "kind": "ACTION_KIND_PERMANENT", "forces": {"n_kn": -60}},
		{"name": "wind", "kind": "ACTION_KIND_WIND", "forces": {"v_x_kn": 10}}`, "")
	sand := `{"settlement": {"basis": {"eurocode": {}}, "footing": {"circle": {"diameter_mm": 1200}, "depth_mm": 500}, "unit_weight_above_kn_m3": 17,
		"dry": true, "layers": [{"thickness_mm": 3000, "unit_weight_kn_m3": 18, "oedometer": {"compression_index": 0.2, "void_ratio": 1}}],
		"stages": [{"name": "a", "compression_kn": 60}]}}`
	for _, m := range []struct{ request, id string }{{block, "ground_bearing_da3"}, {block, "ground_overturning"}, {sand, "settle_consolidation"}} {
		use := func(water string) float64 {
			return state(t, result(t, strings.Replace(m.request, `"dry": true`, water, 1)), m.id).GetUtilization()
		}
		assert.InDelta(t, use(`"water_depth_mm": 300`), use(`"dry": true, "water_depth_mm": 300`), 1e-12, m.id)
		assert.InDelta(t, use(`"dry": true`), use(`"dry": true, "water_depth_mm": 30000`), 1e-12, m.id)
		assert.Greater(t, use(`"water_depth_mm": 300`), use(`"dry": true`), m.id)
	}
}

// TestFootingWithoutHeightOrWeightIsRefused: without its height a shear turns nothing,
// without its weight nothing of it presses. Nothing must be said.
func TestFootingWithoutHeightOrWeightIsRefused(t *testing.T) {
	whole := footingOf("")
	for _, field := range []string{`"height_mm": 600, `, `"weight_kn": 30, `} {
		require.Contains(t, whole, field)
		_, err := call(service(t), requestOf(parsed(t, strings.Replace(whole, field, "", 1))))
		assert.ErrorContains(t, err, "is required", field)
		none := field[:strings.Index(field, ":")] + ": 0, "
		assert.NotEmpty(t, result(t, strings.Replace(whole, field, none, 1)).GetLimitStates(), none)
	}
}
