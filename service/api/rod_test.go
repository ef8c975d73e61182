package api_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"google.golang.org/protobuf/encoding/protojson"
	"google.golang.org/protobuf/proto"

	footwardv1 "footward.example/footward/proto/footward/v1"
)

const (
	pass    = footwardv1.Verdict_VERDICT_PASS
	fail    = footwardv1.Verdict_VERDICT_FAIL
	outside = footwardv1.Verdict_VERDICT_OUT_OF_SCOPE
)

// fields are the parts of requests about rods.
var fields = strings.NewReplacer(
	"EC", `"basis": {"eurocode": {}}`, "LRFD", `"basis": {"us_lrfd": {}}`, "ASD", `"basis": {"us_asd": {}}`,
	"PLATE", `"plate":{"size_x_mm":500,"size_y_mm":500,"thickness_mm":30,"steel":{"properties":{"fy_mpa":355,"fu_mpa":490}}}`,
	"THIN", `"plate":{"size_x_mm":500,"size_y_mm":500,"thickness_mm":3.5,"steel":{"properties":{"fy_mpa":250,"fu_mpa":400}}}`,
	"M20", `"rod":{"thread":{"designation":"M20"},"steel":{"grade":"ISO 898-1 8.8"},"thread_making":"THREAD_MAKING_STANDARD"}`,
	"M24", `"rod":{"thread":{"designation":"M24"},"steel":{"grade":"ISO 898-1 8.8"},"thread_making":"THREAD_MAKING_STANDARD"}`,
	"INCH", `"rod":{"thread":{"designation":"3/4-10 UNC"},"steel":{"grade":"ASTM F1554 Gr 105"}}`,
	"SOFT", `"rod":{"thread":{"designation":"3/4-10 UNC"},"steel":{"grade":"ASTM F1554 Gr 36"},"corrosion_allowance_mm":4}`,
	"FOUR", `"positions":[{"x_mm":-150,"y_mm":-150},{"x_mm":150,"y_mm":-150},{"x_mm":150,"y_mm":150},{"x_mm":-150,"y_mm":150}]`,
)

// filled puts the parts into a request.
func filled(t *testing.T, text string, m proto.Message) {
	t.Helper()
	require.NoError(t, protojson.Unmarshal([]byte(fields.Replace(text)), m))
}

// TestRodsThatMustNotPass gives each request with a sibling, a little less loaded or
// better made, that must.
func TestRodsThatMustNotPass(t *testing.T) {
	s := service(t)
	for name, c := range map[string]struct {
		bad, good string
		verdict   footwardv1.Verdict
	}{
		"shear on the diagonal": {
			`{LRFD,THIN,"rods":{INCH,FOUR,"holes":{"diameter_mm":21}},"forces":{"v_x_kn":180,"v_y_kn":180}}`,
			`{LRFD,THIN,"rods":{INCH,FOUR,"holes":{"diameter_mm":21}},"forces":{"v_x_kn":120,"v_y_kn":120}}`, fail},
		"shear on the diagonal, ASD": {
			`{ASD,THIN,"rods":{INCH,FOUR,"holes":{"diameter_mm":21}},"forces":{"v_x_kn":-120,"v_y_kn":120}}`,
			`{ASD,THIN,"rods":{INCH,FOUR,"holes":{"diameter_mm":21}},"forces":{"v_x_kn":-80,"v_y_kn":80}}`, fail},
		"torsion": {
			`{EC,PLATE,"rods":{M20,FOUR,"holes":{"diameter_mm":22}},"forces":{"t_knm":60}}`,
			`{EC,PLATE,"rods":{M20,FOUR,"holes":{"diameter_mm":22}},"forces":{"t_knm":32}}`, fail},
		"one rod": {
			`{EC,PLATE,"rods":{M20,FOUR,"holes":{"diameter_mm":22}},"rod_forces":[{"shear_x_kn":70},{},{},{}]}`,
			`{EC,PLATE,"rods":{M20,FOUR,"holes":{"diameter_mm":22}},"rod_forces":[{"shear_x_kn":38},{},{},{}]}`, fail},
		"opposed": {
			`{EC,PLATE,"rods":{M20,FOUR,"holes":{"diameter_mm":22}},"rod_forces":[{"shear_y_kn":70},{"shear_y_kn":-70},{},{}]}`,
			`{EC,PLATE,"rods":{M20,FOUR,"holes":{"diameter_mm":22}},"rod_forces":[{"shear_y_kn":38},{"shear_y_kn":-38},{},{}]}`, fail},
		"friction of a lifted foot": {
			`{EC,PLATE,"rods":{M20,FOUR,"holes":{"diameter_mm":22}},"forces":{"n_kn":200,"v_x_kn":160},"friction":{"compression_kn":800}}`,
			`{EC,PLATE,"rods":{M20,FOUR,"holes":{"diameter_mm":22}},"forces":{"n_kn":-800,"v_x_kn":160},"friction":{"compression_kn":800}}`, fail},
		"friction beyond the compression": {
			`{EC,PLATE,"rods":{M20,FOUR,"holes":{"diameter_mm":22}},"forces":{"n_kn":-10,"v_x_kn":160},"friction":{"compression_kn":5000}}`,
			`{EC,PLATE,"rods":{M20,FOUR,"holes":{"diameter_mm":22}},"forces":{"n_kn":-100,"v_x_kn":160},"friction":{"compression_kn":5000}}`, fail},
		"nut through the hole": {
			`{EC,PLATE,"rods":{M20,FOUR,"holes":{"diameter_mm":60}},"forces":{"n_kn":40}}`,
			`{EC,PLATE,"rods":{M20,FOUR,"holes":{"diameter_mm":60,"washer_side_mm":90,"washer_thickness_mm":20}},"forces":{"n_kn":40}}`, fail},
		"nut through the hole, US": {
			`{LRFD,PLATE,"rods":{M20,FOUR,"holes":{"diameter_mm":60}},"forces":{"n_kn":40}}`,
			`{LRFD,PLATE,"rods":{M20,FOUR,"holes":{"diameter_mm":60,"washer_side_mm":90,"washer_thickness_mm":20}},"forces":{"n_kn":40}}`, fail},
		"thin washer": {
			`{EC,PLATE,"rods":{M20,FOUR,"holes":{"diameter_mm":45,"washer_side_mm":60,"washer_thickness_mm":2}},"forces":{"n_kn":400}}`,
			`{EC,PLATE,"rods":{M20,FOUR,"holes":{"diameter_mm":45,"washer_side_mm":60,"washer_thickness_mm":20}},"forces":{"n_kn":400}}`, fail},
		"rods pressed across a gap": {
			`{EC,PLATE,"rods":{M20,FOUR,"holes":{"diameter_mm":22}},"forces":{"n_kn":-600,"v_x_kn":8},"stand_off":{"gap_mm":60}}`,
			`{EC,PLATE,"rods":{M20,FOUR,"holes":{"diameter_mm":22}},"forces":{"n_kn":60,"v_x_kn":8},"stand_off":{"gap_mm":60}}`, outside},
		"worn rods": {
			`{LRFD,PLATE,"rods":{SOFT,FOUR,"holes":{"diameter_mm":21}},"forces":{"n_kn":150}}`,
			`{LRFD,PLATE,"rods":{SOFT,FOUR,"holes":{"diameter_mm":21}},"forces":{"n_kn":148}}`, fail},
		"welded washers": {
			`{EC,PLATE,"rods":{M24,FOUR,"holes":{"diameter_mm":45,"washer_side_mm":90,"washer_thickness_mm":12,"welded_washers":true}},"forces":{"v_y_kn":64}}`,
			`{EC,PLATE,"rods":{M24,FOUR,"holes":{"diameter_mm":45,"washer_side_mm":90,"washer_thickness_mm":12,"welded_washers":true}},"forces":{"v_y_kn":58}}`, fail},
		"friction on little contact": {
			`{LRFD,"plate":{"size_x_mm":330.2,"size_y_mm":635,"thickness_mm":30,"steel":{"properties":{"fy_mpa":345,"fu_mpa":450}}},"rods":{SOFT,"positions":[{"y_mm":200},{"y_mm":-200}],"holes":{"diameter_mm":21}},"forces":{"n_kn":-2206.3,"v_y_kn":640},"friction":{"compression_kn":2206.3}}`,
			`{LRFD,"plate":{"size_x_mm":330.2,"size_y_mm":635,"thickness_mm":30,"steel":{"properties":{"fy_mpa":345,"fu_mpa":450}}},"rods":{SOFT,"positions":[{"y_mm":200},{"y_mm":-200}],"holes":{"diameter_mm":21}},"forces":{"n_kn":-2206.3,"v_y_kn":570},"friction":{"compression_kn":2206.3}}`, fail},
	} {
		var bad, good footwardv1.CheckAnchorRodsRequest
		filled(t, c.bad, &bad)
		filled(t, c.good, &good)
		r, err := call(s, &bad)
		require.NoError(t, err, name)
		assert.Equal(t, c.verdict, r.GetVerdict(), name)
		r, err = call(s, &good)
		require.NoError(t, err, name)
		assert.Equal(t, pass, r.GetVerdict(), "%s: %s %s", name, r.GetGoverningLimitStateId(), r.GetLimitStates())
	}
}

// TestAnchoredRodsThatMustNotPass does the same for rods in concrete.
func TestAnchoredRodsThatMustNotPass(t *testing.T) {
	s := service(t)
	held := func(block, more string) string {
		return `"anchorage":{"headed":{"embedment_mm":350,"head":{"diameter_mm":70,"thickness_mm":25},"block":{"concrete":{"properties":{"strength_mpa":25}},"size_x_mm":4000,"size_y_mm":4000,"height_mm":1200` + block + `}` + more + `}}}`
	}
	const grout = `,"grout":{"thickness_mm":30,"strength_mpa":30}`
	for name, c := range map[string]struct {
		bad, good string
		verdict   footwardv1.Verdict
	}{
		"grout, cracked": {
			`{EC,PLATE,"rods":{M24,FOUR,"holes":{"diameter_mm":26}},"forces":{"v_x_kn":60},` + held(grout, ""),
			`{EC,PLATE,"rods":{M24,FOUR,"holes":{"diameter_mm":26}},"forces":{"v_x_kn":60},` + held(grout, `,"uncracked":true`), fail},
		"grout, pulled": {
			`{EC,PLATE,"rods":{M24,FOUR,"holes":{"diameter_mm":26}},"forces":{"n_kn":4,"v_y_kn":60},` + held(grout, `,"uncracked":true`),
			`{EC,PLATE,"rods":{M24,FOUR,"holes":{"diameter_mm":26,"plate_holds_rotation":true}},"forces":{"n_kn":4,"v_y_kn":60},` + held(grout, `,"uncracked":true`), fail},
		"much grout": {
			`{EC,PLATE,"rods":{M24,FOUR,"holes":{"diameter_mm":26}},"forces":{"v_y_kn":45},` + held(`,"grout":{"thickness_mm":41,"strength_mpa":40}`, `,"uncracked":true`),
			`{EC,PLATE,"rods":{M24,FOUR,"holes":{"diameter_mm":26}},"forces":{"v_y_kn":40},` + held(`,"grout":{"thickness_mm":41,"strength_mpa":40}`, `,"uncracked":true`), fail},
		"gap": {
			`{EC,PLATE,"rods":{M24,FOUR,"holes":{"diameter_mm":26}},"forces":{"v_x_kn":60},"stand_off":{"gap_mm":30},` + held("", ""),
			`{EC,PLATE,"rods":{M24,FOUR,"holes":{"diameter_mm":26}},"forces":{"v_x_kn":48},"stand_off":{"gap_mm":30},` + held("", ""), fail},
		"gap, US": {
			`{LRFD,PLATE,"rods":{M24,FOUR,"holes":{"diameter_mm":26}},"forces":{"v_x_kn":60},"stand_off":{"gap_mm":30},` + held("", ""),
			`{LRFD,PLATE,"rods":{M24,FOUR,"holes":{"diameter_mm":26}},"forces":{"v_x_kn":24},"stand_off":{"gap_mm":30},` + held("", ""), fail},
		"gap, pressed": {
			`{LRFD,PLATE,"rods":{M24,FOUR,"holes":{"diameter_mm":26}},"forces":{"n_kn":-60,"v_x_kn":10},"stand_off":{"gap_mm":30},` + held("", ""),
			`{LRFD,PLATE,"rods":{M24,FOUR,"holes":{"diameter_mm":26}},"forces":{"n_kn":4,"v_x_kn":10},"stand_off":{"gap_mm":30},` + held("", ""), outside},
		"welded washers": {
			`{EC,PLATE,"rods":{M24,FOUR,"holes":{"diameter_mm":45,"washer_side_mm":90,"washer_thickness_mm":12,"welded_washers":true}},"forces":{"v_y_kn":64},` + held("", ""),
			`{EC,PLATE,"rods":{M24,FOUR,"holes":{"diameter_mm":45,"washer_side_mm":90,"washer_thickness_mm":12,"welded_washers":true}},"forces":{"v_y_kn":58},` + held("", ""), fail},
		"welded washers, US": {
			`{LRFD,PLATE,"rods":{M24,FOUR,"holes":{"diameter_mm":45,"washer_side_mm":90,"washer_thickness_mm":12,"welded_washers":true}},"forces":{"v_y_kn":220},` + held("", ""),
			`{LRFD,PLATE,"rods":{M24,FOUR,"holes":{"diameter_mm":45,"washer_side_mm":90,"washer_thickness_mm":12,"welded_washers":true}},"forces":{"v_y_kn":120},` + held("", ""), fail},
		"loose holes": {
			`{EC,PLATE,"rods":{M24,FOUR,"holes":{"diameter_mm":30}},"forces":{"v_y_kn":40},` + held("", ""),
			`{EC,PLATE,"rods":{M24,FOUR,"holes":{"diameter_mm":26}},"forces":{"v_y_kn":40},` + held("", ""), outside},
	} {
		var bad, good footwardv1.CheckAnchorageRequest
		filled(t, c.bad, &bad)
		filled(t, c.good, &good)
		r, err := call(s, &bad)
		require.NoError(t, err, name)
		assert.Equal(t, c.verdict, r.GetVerdict(), name)
		r, err = call(s, &good)
		require.NoError(t, err, name)
		assert.Equal(t, pass, r.GetVerdict(), "%s: %s %s", name, r.GetGoverningLimitStateId(), r.GetLimitStates())
	}
}

// TestRodsOfABaseThatMustNotPass does the same for a whole base, whose rods and
// anchorage are those of their own checks.
func TestRodsOfABaseThatMustNotPass(t *testing.T) {
	s := service(t)
	base := func(basis, rods, grout, more, forces string) *footwardv1.CheckColumnBaseRequest {
		m := &footwardv1.CheckColumnBaseRequest{}
		filled(t, `{`+basis+`,"base":{"plate":{"size_x_mm":500,"size_y_mm":500,"thickness_mm":60,"steel":{"properties":{"fy_mpa":355,"fu_mpa":490}}},
			"footprint":{"tube":{"size_x_mm":200,"size_y_mm":200,"wall_mm":10},"stiffness":"FOOTPRINT_STIFFNESS_STIFF"},
			"support":{"concrete":{"concrete":{"properties":{"strength_mpa":25}},"size_x_mm":4000,"size_y_mm":4000,"height_mm":1200`+grout+`}},
			"rods":{`+rods+`}`+more+`},"load_cases":{"cases":[{"name":"only","forces":`+forces+`}]}}`, m)
		return m
	}
	const (
		m20   = `M20,FOUR,"holes":{"diameter_mm":22}`
		m24   = `M24,FOUR,"holes":{"diameter_mm":26}`
		wide  = `M24,FOUR,"holes":{"diameter_mm":45,"washer_side_mm":90,"washer_thickness_mm":12,"welded_washers":true}`
		grout = `,"grout":{"thickness_mm":30,"strength_mpa":30}`
		held  = `,"anchorage":{"headed":{"embedment_mm":350,"head":{"diameter_mm":70,"thickness_mm":25}}}`
	)
	for name, c := range map[string]struct {
		bad, good *footwardv1.CheckColumnBaseRequest
		state     string
	}{
		"torsion": {base("EC", m20, "", "", `{"n_kn":-50,"t_knm":60}`), base("EC", m20, "", "", `{"n_kn":-50,"t_knm":32}`), "rod_anchor_shear"},
		"nut through the hole": {base("EC", `M20,FOUR,"holes":{"diameter_mm":60}`, "", "", `{"n_kn":40}`),
			base("EC", `M20,FOUR,"holes":{"diameter_mm":60,"washer_side_mm":90,"washer_thickness_mm":20}`, "", "", `{"n_kn":40}`), "plate_punching"},
		"thin washer": {base("EC", `M20,FOUR,"holes":{"diameter_mm":45,"washer_side_mm":60,"washer_thickness_mm":2}`, "", "", `{"n_kn":40}`),
			base("EC", `M20,FOUR,"holes":{"diameter_mm":45,"washer_side_mm":60,"washer_thickness_mm":20}`, "", "", `{"n_kn":40}`), "plate_washer_bending"},
		"grout":              {base("EC", m24, grout, held, `{"n_kn":-50,"v_x_kn":60}`), base("EC", m24, grout, held, `{"n_kn":-50,"v_x_kn":38}`), "anchor_rod_shear"},
		"grout, y":           {base("EC", m24, grout, held, `{"n_kn":-50,"v_y_kn":60}`), base("EC", m24, grout, held, `{"n_kn":-50,"v_y_kn":38}`), "anchor_rod_shear"},
		"welded washers":     {base("EC", wide, "", "", `{"n_kn":-50,"v_y_kn":64}`), base("EC", wide, "", "", `{"n_kn":-50,"v_y_kn":35}`), "rod_stand_off_bending"},
		"welded washers, US": {base("LRFD", wide, "", "", `{"n_kn":-50,"v_y_kn":220}`), base("LRFD", wide, "", "", `{"n_kn":-50,"v_y_kn":120}`), "rod_stand_off_stress"},
	} {
		r, err := call(s, c.bad)
		require.NoError(t, err, name)
		assert.Equal(t, fail, r.GetVerdict(), name)
		assert.Equal(t, fail, stateOf(t, r, c.state).GetVerdict(), name)
		r, err = call(s, c.good)
		require.NoError(t, err, name)
		assert.Equal(t, pass, r.GetVerdict(), "%s: %s %s", name, r.GetGoverningLimitStateId(), r.GetLimitStates())
		for _, state := range r.GetLimitStates() {
			assert.NotContains(t, state.GetReason(), "no gap under the plate", name)
		}
	}
}

// TestFrictionIsWrittenAsAStep: coefficient with its source, force with its formula,
// and a notice where the coefficient was not given.
func TestFrictionIsWrittenAsAStep(t *testing.T) {
	s := service(t)
	var rods footwardv1.CheckAnchorRodsRequest
	filled(t, `{LRFD,PLATE,"rods":{INCH,FOUR,"holes":{"diameter_mm":21}},"forces":{"n_kn":-100,"v_x_kn":60},"friction":{"compression_kn":100},"detail":"DETAIL_DERIVATION"}`, &rods)
	var base footwardv1.CheckColumnBaseRequest
	filled(t, `{LRFD,"base":{PLATE,"footprint":{"tube":{"size_x_mm":200,"size_y_mm":200,"wall_mm":10},"stiffness":"FOOTPRINT_STIFFNESS_STIFF"},
		"support":{"concrete":{"concrete":{"properties":{"strength_mpa":25}},"size_x_mm":900,"size_y_mm":900,"height_mm":600}},
		"rods":{INCH,FOUR,"holes":{"diameter_mm":21}},"friction":true},
		"load_cases":{"cases":[{"name":"only","forces":{"n_kn":-100,"v_x_kn":60}}]},"detail":"DETAIL_DERIVATION"}`, &base)
	for name, m := range map[string]proto.Message{"rods": &rods, "base": &base} {
		r, err := call(s, m)
		require.NoError(t, err, name)
		found := map[string]bool{}
		for _, f := range r.GetFactors() {
			if f.GetSymbol() == "mu" {
				assert.Contains(t, f.GetSource(), "Design Guide 1, 3rd ed.", name)
				found["mu"] = true
			}
		}
		for _, step := range r.GetDerivation() {
			if step.GetSymbol() == "F_f" {
				assert.InDelta(t, 0.65*0.4*100e3, step.GetValue(), 1e-6, name)
				assert.NotEmpty(t, step.GetExpression(), name)
				found["F_f"] = true
			}
		}
		for _, n := range r.GetNotices() {
			found[n.GetCode()] = true
		}
		for _, want := range []string{"mu", "F_f", "friction_coefficient"} {
			assert.True(t, found[want], "%s: %s", name, want)
		}
	}
}
