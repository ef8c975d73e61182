package api_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"google.golang.org/protobuf/encoding/protojson"

	"footward.example/footward/client"
	footwardv1 "footward.example/footward/proto/footward/v1"
)

const (
	passes = footwardv1.Verdict_VERDICT_PASS
	fails  = footwardv1.Verdict_VERDICT_FAIL
)

func stateOf(t *testing.T, r *footwardv1.CheckResult, id string) *footwardv1.LimitState {
	t.Helper()
	for _, s := range r.GetLimitStates() {
		if s.GetId() == id {
			return s
		}
	}
	t.Fatalf("no limit state %s", id)
	return nil
}

// rowsOf is a column of 140 mm on two rows of one or more pins, 95.5 mm apart.
func rowsOf(basis string, n int, axial, moment float64) string {
	along, duration := "", map[string]string{"eurocode": `"loadDuration": "LOAD_DURATION_SHORT_TERM"`,
		"us_lrfd": `"timeEffectFactor": 1`, "us_asd": `"loadDurationFactor": 1.6`}[basis]
	if n > 1 {
		along = `, "spacingAlongMm": 100`
	}
	return fmt.Sprintf(`{"pin": {"basis": {%q: {}}, "timber": {"kind": "TIMBER_KIND_SOLID_SOFTWOOD", "sizeAlongPinMm": 140,
		"sizeAcrossPinMm": 252, "shearStrengthMpa": 1.17, "tensionAlongMpa": 14.7, "compressionAlongMpa": 10, "densityKgM3": 480, "specificGravity": 0.5,
		"modulusMpa": 11000, "serviceClass": "SERVICE_CLASS_1", %s},
		"pin": {"kind": "PIN_KIND_BOLT", "diameterMm": 19.05, "fuMpa": 830, "fyMpa": 640, "fyBendingMpa": 896},
		"plates": {"arrangement": "PIN_PLATES_OUTSIDE", "thicknessMm": 20, "steel": {"properties": {"fyMpa": 345, "fuMpa": 450}},
		"holeDiameterMm": 20.55, "widthMm": 252, "endDistanceMm": 60, "armMm": 300},
		"layout": {"rows": 2, "pinsPerRow": %d, "endDistanceMm": 133.35, "edgeDistanceMm": 78.2, "spacingAcrossMm": 95.5%s},
		"forces": {"nKn": %g, "mKnm": %g}}}`, basis, duration, n, along, axial, moment)
}

// TestAMomentTearsOutTheRowItPulls: what one row pulls, by statics, is what it must
// hold; a little less moment passes.
func TestAMomentTearsOutTheRowItPulls(t *testing.T) {
	for _, b := range allBases {
		for n := 1; n <= 3; n++ {
			polar := 0.0
			for k := range n {
				z := (float64(k) - float64(n-1)/2) * 100
				polar += 2 * (47.75*47.75 + z*z)
			}
			row := func(m float64) float64 { return 10 + float64(n)*m*1e3*47.75/polar }
			holds := stateOf(t, result(t, rowsOf(b, n, 20, 3)), "column_block_shear").GetResistance()
			at := (holds - 10) * polar / (float64(n) * 47.75) / 1e3
			for _, sign := range []float64{1, -1} {
				s := stateOf(t, result(t, rowsOf(b, n, 20, sign*at*1.01)), "column_block_shear")
				assert.InDelta(t, row(at*1.01), s.GetDemand(), 1e-6)
				assert.InDelta(t, holds, s.GetResistance(), 1e-6)
				assert.Equal(t, fails, s.GetVerdict())
				assert.Equal(t, passes, stateOf(t, result(t, rowsOf(b, n, 20, sign*at*0.99)), "column_block_shear").GetVerdict())
			}
		}
	}
}

// TestShoeSwaysUnlessItsFootIsHeld: two plates of 4 mm, 180 mm high, with one level
// of bolts carry less than as cantilevers by Euler.
func TestShoeSwaysUnlessItsFootIsHeld(t *testing.T) {
	thin := func(basis, plates string, n float64) string {
		s := strings.Replace(pinned(basis, "PIN_PLATES_OUTSIDE", plates, ""), `"thicknessMm": 8`, `"thicknessMm": 4`, 1)
		s = strings.Replace(s, `"pinsPerRow": 2, "spacingAlongMm": 80`, `"pinsPerRow": 1`, 1)
		return `{"pin": ` + strings.Replace(s, `"nKn": 10, "vKn": 2`, fmt.Sprintf(`"nKn": %g`, n), 1) + `}`
	}
	euler := math.Pi * math.Pi * 210 * 2 * 120 * 64 / 12 / (360 * 360)
	for _, b := range allBases {
		r := result(t, thin(b, "", -euler))
		assert.Equal(t, fails, stateOf(t, r, "bracket_compression").GetVerdict())
		assert.Contains(t, codesOf(r), "pin_plates_sway")
		assert.Equal(t, passes, stateOf(t, result(t, thin(b, "", -euler/2.1)), "bracket_compression").GetVerdict())
		r = result(t, thin(b, `, "footHeldAlongPins": true`, -euler))
		assert.Equal(t, passes, stateOf(t, r, "bracket_compression").GetVerdict())
		assert.Contains(t, codesOf(r), "pin_foot_held")
	}
	plain := stateOf(t, result(t, thin("eurocode", "", -5)), "bracket_compression").GetResistance()
	annex := strings.Replace(thin("eurocode", "", -5), `"eurocode": {}`, `"eurocode": {"steel": {"gammaM1": 1.1}}`, 1)
	r := result(t, annex)
	assert.InDelta(t, plain/1.1, stateOf(t, r, "bracket_compression").GetResistance(), 1e-9)
	found := false
	for _, f := range r.GetFactors() {
		found = found || f.GetSymbol() == "gamma_M1" && f.GetValue() == 1.1 && f.GetSource() != ""
	}
	assert.True(t, found, "gamma_M1 is printed with its source")
}

// TestThicknessThatBlockTearingAsksForHolds in both families.
func TestThicknessThatBlockTearingAsksForHolds(t *testing.T) {
	torn := func(basis string, thickness float64) string {
		return fmt.Sprintf(`{"pin": {"basis": {%q: {}}, "timber": {"kind": "TIMBER_KIND_SOLID_HARDWOOD", "sizeAlongPinMm": 240, "sizeAcrossPinMm": 420,
			"shearStrengthMpa": 4, "tensionAlongMpa": 20, "compressionAlongMpa": 24, "densityKgM3": 540, "specificGravity": 0.5,
			"modulusMpa": 11000, "serviceClass": "SERVICE_CLASS_1"},
			"pin": {"kind": "PIN_KIND_BOLT", "diameterMm": 12, "fuMpa": 800, "fyMpa": 640, "fyBendingMpa": 640},
			"plates": {"arrangement": "PIN_PLATES_INSIDE", "thicknessMm": %.9g, "steel": {"properties": {"fyMpa": 235, "fuMpa": 360}},
			"holeDiameterMm": 13.5, "widthMm": 420, "endDistanceMm": 33.75, "armMm": 121},
			"layout": {"rows": 4, "pinsPerRow": 3, "endDistanceMm": 84, "edgeDistanceMm": 138, "spacingAlongMm": 60.5, "spacingAcrossMm": 48},
			"forces": {"nKn": 250}}}`, basis, thickness)
	}
	for _, b := range allBases {
		s := stateOf(t, result(t, torn(b, 3)), "bracket_block_tearing")
		require.Equal(t, fails, s.GetVerdict())
		need := s.GetRequiredSize().GetValue()
		assert.Equal(t, passes, stateOf(t, result(t, torn(b, need*(1+1e-7))), "bracket_block_tearing").GetVerdict())
		assert.Equal(t, fails, stateOf(t, result(t, torn(b, need*0.999)), "bracket_block_tearing").GetVerdict())
	}
}

// welded is a weld of a group or run by a basis.
func welded(basis, parts, layout string) string {
	return `{"weld": {"basis": {"` + basis + `": {}}, "weld": {"kind": "WELD_KIND_FILLET", "legMm": 6, "filler": {"properties": {"strengthMpa": 482}},
		"parts": [{"thicknessMm": 20, "steel": {"properties": {"fyMpa": 235, "fuMpa": 360}}}, {` + parts + `, "steel": {"properties": {"fyMpa": 235, "fuMpa": 360}}}]},
		` + layout + `}}`
}

// TestThinPartFailsBesideItsWeld in each family, and holds where it is thicker.
func TestThinPartFailsBesideItsWeld(t *testing.T) {
	for _, b := range allBases {
		for _, run := range []string{`"normalKn": 300`, `"alongKn": 150`, `"acrossKn": 150`} {
			layout := `"run": {"lengthMm": 200, "count": 2, ` + run + `}`
			s := stateOf(t, result(t, welded(b, `"thicknessMm": 4`, layout)), "weld_base_metal")
			assert.Equal(t, fails, s.GetVerdict(), "%s %s", b, run)
			s = stateOf(t, result(t, welded(b, `"thicknessMm": 12`, layout)), "weld_base_metal")
			assert.Equal(t, passes, s.GetVerdict(), "%s %s", b, run)
			s = stateOf(t, result(t, welded(b, `"thicknessMm": 12, "corrosionAllowanceMm": 8`, layout)), "weld_base_metal")
			assert.Equal(t, fails, s.GetVerdict(), "%s %s", b, run)
		}
	}
}

// TestLapOfAGroupIsThatOfARun: the same two lines of 2500 mm either way.
func TestLapOfAGroupIsThatOfARun(t *testing.T) {
	lines := `"group": {"segments": [{"x1Mm": -100, "x2Mm": -100, "y2Mm": 2500}, {"x1Mm": 100, "x2Mm": 100, "y2Mm": 2500}],
		"forces": {"vYKn": 3000}, "atYMm": 1250%s}`
	for _, b := range allBases {
		id := "weld_metal"
		if b == "eurocode" {
			id = "weld_directional"
		}
		full := strings.Replace(welded(b, `"thicknessMm": 20`, fmt.Sprintf(lines, "")), `"kind"`, `"fullSizeToEnds": true, "kind"`, 1)
		lap := strings.Replace(full, `"atYMm": 1250`, `"atYMm": 1250, "endLoaded": true`, 1)
		run := strings.Replace(welded(b, `"thicknessMm": 20`, `"run": {"lengthMm": 2500, "count": 2, "alongKn": 3000, "endLoaded": true}`),
			`"kind"`, `"fullSizeToEnds": true, "kind"`, 1)
		a, c := result(t, lap), result(t, run)
		assert.InDelta(t, stateOf(t, c, id).GetUtilization(), stateOf(t, a, id).GetUtilization(), 1e-9)
		assert.Equal(t, fails, stateOf(t, a, id).GetVerdict())
		assert.Contains(t, codesOf(result(t, full)), "weld_long_line")
		assert.NotContains(t, codesOf(a), "weld_long_line")
	}
}

// TestWeldRoundASmallPipeIsOneLine in CheckWeld and under a column.
func TestWeldRoundASmallPipeIsOneLine(t *testing.T) {
	var chords []string
	for i := range 32 {
		s1, c1 := math.Sincos(2 * math.Pi * float64(i) / 32)
		s2, c2 := math.Sincos(2 * math.Pi * float64(i+1) / 32)
		chords = append(chords, fmt.Sprintf(`{"x1Mm": %.2f, "y1Mm": %.2f, "x2Mm": %.2f, "y2Mm": %.2f}`, 57*c1, 57*s1, 57*c2, 57*s2))
	}
	group := func(more string) string {
		return `"group": {"segments": [` + strings.Join(chords, ", ") + `], "forces": {"nKn": 50}` + more + `}`
	}
	for _, b := range allBases {
		apart := stateOf(t, result(t, welded(b, `"thicknessMm": 8`, group(""))), "weld_length_minimum")
		assert.NotEqual(t, passes, apart.GetVerdict())
		r := result(t, welded(b, `"thicknessMm": 8`, group(`, "continuous": true`)))
		whole := stateOf(t, r, "weld_length_minimum")
		assert.Equal(t, passes, whole.GetVerdict())
		assert.InDelta(t, 2*math.Pi*57, whole.GetResistance(), 1)
		assert.Contains(t, codesOf(r), "weld_continuous")
	}
	open := `"group": {"segments": [` + strings.Join(chords[:31], ", ") + `], "forces": {"nKn": 50}, "continuous": true}`
	m := &footwardv1.CheckItem{}
	require.NoError(t, protojson.Unmarshal([]byte(welded("eurocode", `"thicknessMm": 8`, open)), m))
	_, err := service(t).CheckWeld(t.Context(), m.GetWeld())
	require.Error(t, err)
	refused(t, err)
	require.Len(t, client.Violations(err), 1)
	assert.Equal(t, "group.segments[0]", client.Violations(err)[0].GetField())
}
