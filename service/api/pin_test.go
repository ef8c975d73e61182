package api_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"google.golang.org/protobuf/encoding/protojson"

	"footward.example/footward/client"
	"footward.example/footward/internal/limit"
	footwardv1 "footward.example/footward/proto/footward/v1"
)

// pinned is a column foot on two bolts, with more fields of the plates and of the
// request.
func pinned(basis, arrangement, plates, more string) string {
	return `{"basis": {"` + basis + `": {}}, "timber": {"kind": "TIMBER_KIND_SOLID_SOFTWOOD", "densityKgM3": 350,
		"specificGravity": 0.42, "sizeAlongPinMm": 140, "sizeAcrossPinMm": 140, "shearStrengthMpa": 4, "tensionAlongMpa": 14.5,
		"compressionAlongMpa": 21, "modulusMpa": 11000, "serviceClass": "SERVICE_CLASS_2"},
		"pin": {"kind": "PIN_KIND_BOLT", "diameterMm": 16, "fuMpa": 400, "fyMpa": 240, "fyBendingMpa": 310},
		"plates": {"arrangement": "` + arrangement + `", "thicknessMm": 8, "steel": {"grade": "EN 10025-2 S235"},
		"holeDiameterMm": 17, "widthMm": 120, "endDistanceMm": 40, "armMm": 180` + plates + `},
		"layout": {"rows": 1, "pinsPerRow": 2, "spacingAlongMm": 80, "endDistanceMm": 120, "edgeDistanceMm": 70},
		"forces": {"nKn": 10, "vKn": 2}` + more + `}`
}

const shoeWeld = `, "bracketWeld": {"lines": "BRACKET_WELD_LINES_BOTH_FACES", "weld": {"kind": "WELD_KIND_FILLET", "throatMm": 4,
	"filler": {"properties": {"strengthMpa": 480}}, "parts": [
	{"thicknessMm": 20, "steel": {"grade": "EN 10025-2 S235"}}, {"thicknessMm": 8, "steel": {"grade": "EN 10025-2 S235"}}]}}`

var allBases = []string{"eurocode", "us_lrfd", "us_asd"}

func ids(r *footwardv1.CheckResult) []string {
	var out []string
	for _, s := range r.GetLimitStates() {
		out = append(out, s.GetId())
	}
	return out
}

func TestPlatesOutsideAndInsideAreOutOfScopeWithTheReason(t *testing.T) {
	for _, b := range allBases {
		for _, weld := range []string{"", shoeWeld} {
			r := result(t, `{"pin": `+pinned(b, "PIN_PLATES_OUTSIDE_AND_INSIDE", "", weld)+`}`)
			assert.Equal(t, footwardv1.Verdict_VERDICT_OUT_OF_SCOPE, r.GetVerdict())
			assert.Contains(t, r.GetReason(), "four planes")
			assert.Empty(t, r.GetLimitStates())
		}
	}
}

func TestTheWeldOfAShoeJoinsItsPins(t *testing.T) {
	for _, b := range allBases {
		alone := result(t, `{"pin": `+pinned(b, "PIN_PLATES_OUTSIDE", "", "")+`}`)
		joined := result(t, `{"pin": `+pinned(b, "PIN_PLATES_OUTSIDE", "", shoeWeld)+`}`)
		assert.Equal(t, ids(alone), ids(joined)[:len(alone.GetLimitStates())])
		assert.Contains(t, ids(joined), "weld_length_minimum")
		assert.Contains(t, codesOf(alone), "pin_bracket_weld")
		assert.NotContains(t, codesOf(joined), "pin_bracket_weld")
		assert.Contains(t, codesOf(joined), "bracket_weld_group")
	}
}

func TestEveryFaultOfAShoeWeldHasItsPath(t *testing.T) {
	for name, c := range map[string]struct{ request, want string }{
		"unknown steel": {strings.Replace(pinned("eurocode", "PIN_PLATES_OUTSIDE", "", shoeWeld),
			`20, "steel": {"grade": "EN 10025-2 S235"}`, `20, "steel": {"grade": "tin"}`, 1), "bracket_weld.weld.parts[0].steel.grade"},
		"no lines": {strings.Replace(pinned("eurocode", "PIN_PLATES_OUTSIDE", "", shoeWeld),
			`"lines": "BRACKET_WELD_LINES_BOTH_FACES", `, "", 1), "bracket_weld.lines"},
		"thicker than the plate": {strings.Replace(pinned("eurocode", "PIN_PLATES_OUTSIDE", "", shoeWeld),
			`{"thicknessMm": 8,`, `{"thicknessMm": 9,`, 1), "bracket_weld.weld.parts[1].thickness_mm"},
		"eccentric plate inside": {pinned("eurocode", "PIN_PLATES_INSIDE", `, "eccentricityMm": 5`, ""), "plates.eccentricity_mm"},
	} {
		t.Run(name, func(t *testing.T) {
			m := &footwardv1.CheckPinRequest{}
			require.NoError(t, protojson.Unmarshal([]byte(c.request), m))
			_, err := service(t).CheckPin(t.Context(), m)
			require.Error(t, err)
			refused(t, err)
			var fields []string
			for _, v := range client.Violations(err) {
				fields = append(fields, v.GetField())
			}
			assert.Equal(t, []string{c.want}, fields)
		})
	}
}

func TestExposureReachesPlatesAndWeldOfAShoe(t *testing.T) {
	// 0.75 mm a face, as TestExposureIsTheSameAsAllowancesOfTheParts.
	exposed := strings.Replace(pinned("eurocode", "PIN_PLATES_OUTSIDE", "", shoeWeld), `"basis": {"eurocode": {}}`,
		`"basis": {"eurocode": {}}, "exposure": {"design_life_years": 25, "ground": "CORROSIVE_GROUND_POLLUTED_NATURAL"}`, 1)
	stated := pinned("eurocode", "PIN_PLATES_OUTSIDE", `, "corrosionAllowanceMm": 1.5`,
		strings.Replace(shoeWeld, `"throatMm": 4`, `"throatMm": 4, "corrosionAllowanceMm": 0.75`, 1))
	a, b := result(t, `{"pin": `+exposed+`}`), result(t, `{"pin": `+stated+`}`)
	require.Equal(t, ids(b), ids(a))
	for i, s := range b.GetLimitStates() {
		assert.InDelta(t, s.GetUtilization(), a.GetLimitStates()[i].GetUtilization(), 1e-12, s.GetId())
	}
}

// TestSizesOfTheKernelAreThoseOfTheContract holds the two lists to each other.
func TestSizesOfTheKernelAreThoseOfTheContract(t *testing.T) {
	for size, kind := range map[limit.Size]footwardv1.SizeKind{
		limit.NoSize: footwardv1.SizeKind_SIZE_KIND_UNSPECIFIED, limit.PlateThickness: footwardv1.SizeKind_SIZE_KIND_PLATE_THICKNESS,
		limit.HoleDiameter: footwardv1.SizeKind_SIZE_KIND_HOLE_DIAMETER, limit.PinDiameter: footwardv1.SizeKind_SIZE_KIND_PIN_DIAMETER,
		limit.ColumnThickness: footwardv1.SizeKind_SIZE_KIND_COLUMN_THICKNESS, limit.PinSpacingAlong: footwardv1.SizeKind_SIZE_KIND_PIN_SPACING_ALONG,
		limit.PinSpacingAcross: footwardv1.SizeKind_SIZE_KIND_PIN_SPACING_ACROSS, limit.PinEndDistance: footwardv1.SizeKind_SIZE_KIND_PIN_END_DISTANCE,
		limit.PinEdgeDistance: footwardv1.SizeKind_SIZE_KIND_PIN_EDGE_DISTANCE, limit.BracketEndDistance: footwardv1.SizeKind_SIZE_KIND_BRACKET_END_DISTANCE,
		limit.BracketWidth: footwardv1.SizeKind_SIZE_KIND_BRACKET_WIDTH,
	} {
		assert.EqualValues(t, kind, size)
	}
}
