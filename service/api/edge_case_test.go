package api_test

import (
	"encoding/json"
	"math"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
	"google.golang.org/protobuf/encoding/protojson"
	"google.golang.org/protobuf/proto"

	"footward.example/footward/service/api"
)

// edgeCase is a request of the corpus, changed so that a reason is near: one number of it
// then moves from low to high; or one value turns, which has two sides but no edge.
type edgeCase struct {
	from string   // name in the corpus
	set  []string // path = JSON
	move string   // path
	turn string   // path = JSON, several divided by "; "
	why  string   // why the edge turns the verdict, where it may
	low  float64
	high float64
}

// setIn sets a value in JSON by its path, places in lists by their number.
func setIn(t testing.TB, at any, assignment string) {
	path, text, ok := strings.Cut(assignment, " = ")
	require.True(t, ok, assignment)
	var v any
	require.NoError(t, json.Unmarshal([]byte(text), &v), assignment)
	keys := strings.Split(path, ".")
	for i, key := range keys {
		last := i == len(keys)-1
		switch in := at.(type) {
		case map[string]any:
			if last {
				if in[key] = v; v == nil {
					delete(in, key)
				}
			} else if in[key] == nil {
				in[key] = map[string]any{}
			}
			at = in[key]
		case []any:
			n, err := strconv.Atoi(key)
			require.NoError(t, err, assignment)
			if last {
				in[n] = v
			}
			at = in[n]
		default:
			require.Fail(t, "no such place", assignment)
		}
	}
}

// requestWith returns a request of the corpus with values set.
func requestWith(t testing.TB, all []named, from string, set []string) proto.Message {
	k := slices.IndexFunc(all, func(n named) bool { return n.name == from })
	require.NotEqual(t, -1, k, from)
	m := proto.Clone(requestOf(all[k].item))
	text, err := protojson.MarshalOptions{UseProtoNames: true}.Marshal(m)
	require.NoError(t, err)
	var at map[string]any
	require.NoError(t, json.Unmarshal(text, &at))
	for _, s := range set {
		setIn(t, at, s)
	}
	text, err = json.Marshal(at)
	require.NoError(t, err)
	proto.Reset(m)
	require.NoError(t, protojson.Unmarshal(text, m), "%s: %s", from, set)
	return m
}

// sides looks at both sides of a case, at the edge where it has one.
func (c *edgeCase) sides(t testing.TB, s *api.Check, all []named, kernel *reasons) (a, b seen) {
	at := func(more ...string) seen {
		m := requestWith(t, all, c.from, append(slices.Clone(c.set), more...))
		out := look(s, m, kernel)
		require.False(t, out.refused, "%s with %s and %s: %s", c.from, c.set, more, out.applies)
		return out
	}
	if c.turn != "" {
		return look(s, requestWith(t, all, c.from, c.set), kernel), at(strings.Split(c.turn, "; ")...)
	}
	move := func(v float64) seen { return at(c.move + " = " + strconv.FormatFloat(v, 'g', -1, 64)) }
	low, high := c.low, c.high
	a, b = move(low), move(high)
	require.NotEqual(t, a.applies, b.applies, "%s with %s: nothing begins or ends to apply", c.from, c.set)
	for math.Abs(high-low) > 1e-6*max(math.Abs(c.low), math.Abs(c.high)) {
		middle := (low + high) / 2
		if v := move(middle); v.applies == a.applies {
			low, a = middle, v
		} else {
			high, b = middle, v
		}
	}
	return a, b
}

// edgeCases bring reasons near that the corpus does not come by.
var edgeCases = []edgeCase{
	// Stacks of rings.
	{from: "hand-ring-stack", set: []string{"tiers.0.fill.tested = false"}, move: "tiers.0.fill.friction_angle_deg", low: 37, high: 39},
	{from: "hand-ring-stack", set: []string{`tiers.0.fill = {"unit_weight_kn_m3": 20, "friction_angle_deg": 38, "grade": "COMPACTION_GRADE_SN_95", "tested": true}`}, turn: "tiers.0.fill.tested = false"},
	{from: "hand-ring-stack", set: []string{"load_tested = true", "load_test_kn = 100"}, move: "load_test_shoe_mm", low: 400, high: 600},
	{from: "hand-ring-stack", set: []string{"shoe.size_x_mm = 650", "shoe.size_y_mm = 650", "tiers.0.ring.edge_load_kn = 500"}, move: "forces.m_y_knm", low: 1, high: 9},
	{from: "hand-ring-stack", turn: "repeated_load = true; sloping = true"},
	// Rods through a stack.
	{from: "hand-through", move: "anchorage.through.initial_preload_kn", low: 10, high: 300},
	{from: "hand-through", set: []string{"anchorage.through.initial_preload_kn = 10", `rods.rod.steel = {"properties": {"fy_mpa": 900, "fu_mpa": 1000}}`}, move: "rods.rod.steel.properties.fu_mpa", low: 990, high: 1010},
	// Footings.
	{from: "bowles-hansen-25", set: []string{`bearing_author = "BEARING_AUTHOR_TERZAGHI"`}, move: "permanent.v_x_kn", low: 0, high: 1},
	{from: "ec-presumptive", set: []string{`basis = {"us_asd": {}}`, "variable = null"}, move: "permanent.m_y_knm", low: 4, high: 60},
	{from: "ec-presumptive", set: []string{`basis = {"us_asd": {}}`}, turn: `basis = {"us_lrfd": {}}`},
	{from: "ec-presumptive", set: []string{"permanent.v_x_kn = 5"}, turn: "soil.friction_angle_deg = 30"},
	{from: "hand-footing", move: "permanent.t_knm", low: 0, high: 1},
	// Rods.
	{from: "hand-base-shear", set: []string{`rods.rod.steel = {"properties": {"fy_mpa": 640, "fu_mpa": 800}}`}, move: "rods.rod.steel.properties.fy_mpa", low: 630, high: 650},
	{from: "hand-base-shear", set: []string{`rods.rod.steel = {"properties": {"fy_mpa": 640, "fu_mpa": 800}}`}, move: "rods.rod.steel.properties.fu_mpa", low: 990, high: 1010},
	{from: "hand-base-shear", set: []string{"forces.n_kn = 40", "rods.holes = {\"diameter_mm\": 60, \"washer_thickness_mm\": 20}"}, turn: "rods.holes.washer_side_mm = 90"},
	{from: "hand-base-shear", set: []string{`rods.positions = [{"x_mm": 0}]`, "forces = {\"v_x_kn\": 10}", "friction = null"}, move: "forces.t_knm", low: 0, high: 1},
	{from: "hand-base-shear", set: []string{`rods.positions = [{"x_mm": -100}, {"x_mm": 100}]`, "forces = {\"n_kn\": 40}", "friction = null"}, move: "forces.m_x_knm", low: 0, high: 1},
	{from: "hand-base-shear", set: []string{"forces = {\"n_kn\": 10}", "friction = null", "stand_off = {\"gap_mm\": 50}"}, move: "forces.n_kn", low: -10, high: 10},
	{from: "hand-base-shear", set: []string{"stand_off.gap_mm = 50"}, turn: "stand_off = null"},
	{from: "hand-base-shear", turn: "rods.rod.countersunk = true"},
	// Anchors in concrete.
	{from: "hand-anchor-tension", move: "anchorage.headed.embedment_mm", low: 39, high: 41},
	{from: "hand-anchor-tension", turn: "anchorage.headed.lightweight_factor = 0.8"},
	{from: "hand-anchor-tension", set: []string{`rods.rod.thread = {"properties": {"diameter_mm": 58, "stress_area_mm2": 2000}}`, "rods.holes.diameter_mm = 70", "rods.rod.nut_mean_width_mm = 90", "anchorage.headed.head.diameter_mm = 150"}, move: "rods.rod.thread.properties.diameter_mm", low: 59, high: 61},
	{from: "hand-anchor-us", set: []string{`rods.rod.thread = {"properties": {"diameter_mm": 100, "stress_area_mm2": 7000}}`, `rods.rod.steel = {"properties": {"fy_mpa": 248, "fu_mpa": 400}}`, "rods.holes.diameter_mm = 115", "rods.rod.nut_mean_width_mm = 150", "anchorage.headed.head.bearing_area_mm2 = 9000", "plate.size_x_mm = 600", "plate.size_y_mm = 600"}, move: "rods.rod.thread.properties.diameter_mm", low: 101, high: 102},
	{from: "hand-anchor-tension", set: []string{`rods.rod.steel = {"properties": {"fy_mpa": 900, "fu_mpa": 1000}}`, "rod_forces.0.shear_x_kn = 10"}, move: "rods.rod.steel.properties.fu_mpa", low: 990, high: 1010},
	// Plates.
	{from: "wald-tension", set: []string{`footprint = {"pipe": {"diameter_mm": 200, "wall_mm": 10}, "stiffness": "FOOTPRINT_STIFFNESS_STIFF"}`}, move: "forces.m_x_knm", low: 0, high: 120},
	{from: "wald-tension", set: []string{`rods.positions = [{"x_mm": -40, "y_mm": 125}, {"x_mm": 40, "y_mm": 125}, {"x_mm": -40, "y_mm": -125}, {"x_mm": 40, "y_mm": -125}]`}, move: "footprint_weld_throat_mm", low: 21.5, high: 22.5},
	{from: "wald-tension", turn: `rods.positions = [{"x_mm": -120, "y_mm": 0}, {"x_mm": 120, "y_mm": 0}]`},
	{from: "wald-tension", turn: `rods.positions = [{"x_mm": -120, "y_mm": 160}, {"x_mm": 120, "y_mm": 160}, {"y_mm": 160}, {"x_mm": -120, "y_mm": -160}, {"x_mm": 120, "y_mm": -160}, {"y_mm": -160}]`},
	{from: "wald-tension", set: []string{`footprint = {"tube": {"size_x_mm": 260, "size_y_mm": 260, "wall_mm": 10}, "stiffness": "FOOTPRINT_STIFFNESS_STIFF"}`}, turn: `rods.positions = [{"x_mm": -60, "y_mm": 60}, {"x_mm": 60, "y_mm": 60}, {"x_mm": -60, "y_mm": -60}, {"x_mm": 60, "y_mm": -60}]`},
	{from: "dg1-large-moment", move: "footprint.i_section.width_mm", low: 60, high: 200},
	{from: "hand-column-flange", set: []string{"forces.n_kn = -100", "forces.m_x_knm = -20"}, move: "footprint.i_section.flange_mm", low: 6, high: 8},
	// Welds.
	{from: "hand-full-penetration", set: []string{`basis = {"us_lrfd": {}}`, `weld.filler = {"properties": {"strength_mpa": 480}}`}, turn: `weld.filler.properties.strength_mpa = 300`},
	{from: "hand-weld-normal", turn: `weld.filler = {"properties": {"strength_mpa": 300}}`},
	{from: "hand-weld-normal", set: []string{"weld.parts.0.steel.properties.fu_mpa = 600"}, move: "weld.parts.0.steel.properties.fy_mpa", low: 450, high: 470},
	{from: "hand-weld-normal", move: "weld.parts.0.thickness_mm", low: 3, high: 5},
	{from: "aisc-table-8-38-k0-a0.2", set: []string{"weld.leg_mm = null", "weld.throat_mm = 6", `weld.kind = "WELD_KIND_PARTIAL_PENETRATION"`, "group.method = null"}, turn: `group.method = "WELD_GROUP_METHOD_INSTANTANEOUS_CENTRE"`},
	{from: "aisc-table-8-38-k0-a0.2", turn: `basis = {"eurocode": {}}`},
	{from: "hand-weld-normal", turn: `weld.kind = "WELD_KIND_COMPLETE_PENETRATION"; weld.throat_mm = null`},
	{from: "aisc-v16-j2a-lrfd", turn: `weld.kind = "WELD_KIND_COMPLETE_PENETRATION"; weld.leg_mm = null; weld.throat_mm = null`},
	{from: "aisc-v16-j1-lrfd", move: "run.length_mm", low: 10, high: 100},
	// Pins.
	{from: "ec5-m12-c24", set: []string{`pin.kind = "PIN_KIND_DOWEL"`, "plates.hole_diameter_mm = 8"}, move: "pin.diameter_mm", low: 5, high: 7},
	{from: "ec5-m12-c24", move: "forces.m_knm", low: 0, high: 1, why: "one pin is a hinge"},
	{from: "ec5-m12-c24", set: []string{"plates.hole_diameter_mm = 31", "plates.width_mm = 200", "plates.end_distance_mm = 80"}, move: "pin.diameter_mm", low: 29.5, high: 30.5},
	{from: "nds-12g-1-5-n", set: []string{"plates.hole_diameter_mm = 27"}, move: "pin.diameter_mm", low: 25, high: 26},
	{from: "hand-pin", move: "forces.v_kn", low: 80, high: 200},
	{from: "hand-pin", turn: `plates.arrangement = "PIN_PLATES_OUTSIDE_AND_INSIDE"`},
	{from: "nds-12g-1-5-n", turn: `plates.arrangement = "PIN_PLATES_OUTSIDE_AND_INSIDE"`},
	// Pads.
	{from: "ground-pad-plain", turn: `base.substructure.reinforcement = {"bars": {"diameter_mm": 14, "spacing_mm": 150}, "cover_mm": 75, "fy_mpa": 500}`},
	{from: "ground-pad-bars-us", move: "base.substructure.reinforcement.fy_mpa", low: 545, high: 560},
	{from: "ground-pad-bars", move: "base.support.concrete.offset_x_mm", low: 0, high: 50},
	{from: "ground-pad-plain", set: []string{"action_set.actions.0.forces.m_y_knm = 50"}, turn: "action_set.actions.0.forces.m_y_knm = 80"},
	{from: "ground-pad-bars-us", set: []string{"base.substructure.reinforcement.bend_mm = 200", "base.substructure.reinforcement.bars.spacing_mm = 300", "base.substructure.reinforcement.bars.diameter_mm = 25"}, turn: "action_set.actions.0.forces.n_kn = -700"},
	{from: "ground-pad-bars", move: "base.support.concrete.height_mm", low: 400, high: 1500},
	{from: "ground-pad-top", set: []string{"base.support.concrete.size_x_mm = 4000", "base.support.concrete.size_y_mm = 4000", "base.support.concrete.height_mm = 150"}, turn: "action_set.actions.1.forces.m_x_knm = 60"},
	{from: "ground-pad-bars-us", move: "base.support.concrete.height_mm", low: 1300, high: 1900},
	// Bearing.
	{from: "hand-resultant", set: []string{grouted}, move: "support.concrete.grout.thickness_mm", low: 75, high: 85},
	{from: "hand-resultant", set: []string{grouted, "support.concrete.grout.thickness_mm = 60"}, move: "support.concrete.grout.strength_mpa", low: 18, high: 22},
	{from: "hand-resultant", set: []string{grouted, "support.concrete.grout.thickness_mm = 30"}, move: "support.concrete.grout.strength_mpa", low: 3, high: 5},
	// Welds that cannot carry a moment.
	{from: "aisc-table-8-38-k0-a0.2", set: []string{"group.method = null", `group.segments = [{"y1_mm": -100, "y2_mm": 100}]`, "group.at_x_mm = null"}, move: "group.forces.m_y_knm", low: 0, high: 1},
	// Settlement.
	{from: "us-clay", turn: "layers.0 = {\"thickness_mm\": 3000, \"unit_weight_kn_m3\": 18, \"modulus_mpa\": 5}"},
	// Whole bases.
	{from: "whole-block-ec", turn: `action_set = null; load_cases = {"cases": [{"name": "one", "forces": {"n_kn": -60}}]}`},
	{from: "whole-block-asd", turn: `action_set = null; load_cases = {"cases": [{"name": "one", "forces": {"n_kn": -60}}]}`},
	{from: "demo/5-base", turn: `action_set.kinds = ["COMBINATION_KIND_STRENGTH"]`},
	{from: "whole-block-ec", turn: `action_set.kinds = ["COMBINATION_KIND_CHARACTERISTIC"]`},
	{from: "hand-bottom-plate-on-ground", set: []string{"base.anchorage = null", "action_set.actions.0.forces.m_y_knm = 4"}, turn: "action_set.actions.0.forces.m_y_knm = 9"},
	{from: "hand-bottom-plate-on-ground", set: []string{"base.anchorage = null", "base.rods = null", "base.substructure.ground = null"}, move: "action_set.actions.0.forces.v_x_kn", low: 0, high: 1},
}

// grouted is a plate on grout.
const grouted = `support = {"concrete": {"concrete": {"grade": "C20/25"}, "size_x_mm": 1000, "size_y_mm": 1000, "height_mm": 800, "grout": {"thickness_mm": 30, "strength_mpa": 30}}}`

// edgeless are the reasons that nothing a caller gives brings about or takes away within
// what is computed, each with why.
var edgeless = map[string]string{
	"the bed and the rods give way so far that the plate turns over":                                                     "fails",
	"of some stage there is a load case of another kind and none of kind CHARACTERISTIC: stage %d (0: none stated)":      "the stage of a case is a whole number; TestWhatLoadCasesLeaveOutIsNotPassed has both sides",
	"a stiff patch is narrower than the mesh":                                                                            "a bottom plate has no stiff patch",
	"is %g and must be from %g to %g%s":                                                                                  "of a request that is refused",
	"moments about both axes at once are beyond the clauses' pattern, and the contact of plate and support is not known": "the contact of a plate and of a base is always known",
	"no balance was found: the rods stand where they cannot hold the plate":                                              "fails",
	"no bearing resistance is left under the inclined force":                                                             "fails",
	"no effective length of weld is left":                                                                                "fails",
	"no instantaneous centre was found; use the elastic method":                                                          "a search that ends without one, which no request is known to do",
	"nothing of the thickness counts":                                                                                    "fails",
	"the bars are more than what fails in tension (ACI 318-19 7.3.3.1, 8.3.3.1)":                                         "fails",
	"the force along the base is more than the clay holds":                                                               "fails",
	"the force along the base is more than the ground under it holds":                                                    "fails",
	"the plate inside the footprint governs":                                                                             "names what governs",
	"the preload alone stands where the bed does not balance it":                                                         "fails",
	"the upper plate is not known":                                                                                       "every request of rods through a stack has one",
	"no resistance is left":                                                                                              "fails, and stands beside what is shown for information",
	"the demand is beyond what can be computed":                                                                          "fails",
	"too many limit states":                                                                                              "no check has so many",
	"torsion acts and there are no rods to carry it":                                                                     "fails",
}
