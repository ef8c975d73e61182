package api_test

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"google.golang.org/protobuf/encoding/protojson"

	"footward.example/footward/client/local"
	footwardv1 "footward.example/footward/proto/footward/v1"
)

// standing returns a column base of 457 by 406 by 31.75 mm on concrete, rods 100 mm off a
// tube, under one load case.
func standing(basis, forces string) string {
	return `{"columnBase": {"basis": {"` + strings.ToLower(basis) + `": {}}, "base": {
		"plate": {"sizeXMm": 457.2, "sizeYMm": 406.4, "thicknessMm": 31.75, "steel": {"grade": "ASTM A572 Gr 50"}},
		"footprint": {"tube": {"sizeXMm": 203.2, "sizeYMm": 203.2, "wallMm": 9.525}, "stiffness": "FOOTPRINT_STIFFNESS_STIFF"},
		"support": {"concrete": {"concrete": {"grade": "f'c 4000 psi"}, "sizeXMm": 2400, "sizeYMm": 2000, "heightMm": 650}},
		"rods": {"rod": {"thread": {"designation": "1-8 UNC"}, "steel": {"grade": "ASTM F1554 Gr 55"}},
			"positions": [{"xMm": -175, "yMm": -100}, {"xMm": 175, "yMm": -100}, {"xMm": 175, "yMm": 100}, {"xMm": -175, "yMm": 100}],
			"holes": {"diameterMm": 33}}},
		"loadCases": {"cases": [{"name": "w", "forces": ` + forces + `}]}}}`
}

// TestPlateOfABaseIsBentByWhatPresses takes a moment that rods hold, and a hundredth of it.
func TestPlateOfABaseIsBentByWhatPresses(t *testing.T) {
	for _, basis := range []string{"US_LRFD", "US_ASD"} {
		whole := state(t, result(t, standing(basis, `{"nKn": -29, "mYKnm": 16.1}`)), "plate_cantilever")
		assert.Equal(t, footwardv1.Verdict_VERDICT_PASS, whole.GetVerdict())
		assert.Less(t, whole.GetUtilization(), 0.5)
		little := state(t, result(t, standing(basis, `{"nKn": -0.29, "mYKnm": 0.161}`)), "plate_cantilever")
		assert.InDelta(t, whole.GetUtilization()/100, little.GetUtilization(), 1e-3)
	}
}

// TestSecondMomentOfABaseIsNeverAFailOfItsEquilibrium takes two small moments.
func TestSecondMomentOfABaseIsNeverAFailOfItsEquilibrium(t *testing.T) {
	for _, n := range []int{-300, 0, 50} {
		r := result(t, standing("US_LRFD", fmt.Sprintf(`{"nKn": %d, "mXKnm": 0.001, "mYKnm": 0.001}`, n)))
		assert.NotEqual(t, footwardv1.Verdict_VERDICT_FAIL, state(t, r, "plate_equilibrium").GetVerdict(), "N %d", n)
	}
}

// TestSectionOfAColumnIsCheckedWhereItsSteelIsGiven, and else a notice says that it is not.
func TestSectionOfAColumnIsCheckedWhereItsSteelIsGiven(t *testing.T) {
	item := func(steel string) string {
		return `{"plateBending": {"basis": {"eurocode": {}},
			"plate": {"sizeXMm": 500, "sizeYMm": 500, "thicknessMm": 40, "steel": {"grade": "EN 10025-2 S355"}},
			"footprint": {"iSection": {"depthMm": 300, "widthMm": 300, "flangeMm": 4, "webMm": 3}, "stiffness": "FOOTPRINT_STIFFNESS_STIFF"` + steel + `},
			"forces": {"nKn": -2000, "mXKnm": 250},
			"support": {"concrete": {"concrete": {"grade": "C25/30"}, "sizeXMm": 1000, "sizeYMm": 1000, "heightMm": 800}}}}`
	}
	open := result(t, item(""))
	assert.Contains(t, codesOf(open), "plate_column_not_checked")
	assert.Equal(t, footwardv1.Verdict_VERDICT_NOT_APPLICABLE, state(t, open, "column_flange_compression").GetVerdict())
	closed := result(t, item(`, "steel": {"grade": "EN 10025-2 S355"}`))
	assert.NotContains(t, codesOf(closed), "plate_column_not_checked")
	s := state(t, closed, "column_flange_compression")
	assert.Equal(t, footwardv1.Verdict_VERDICT_FAIL, s.GetVerdict())
	assert.Greater(t, s.GetUtilization(), 3.0)

	c, err := local.Start(patient)
	require.NoError(t, err)
	defer func() { require.NoError(t, c.Close()) }()
	m := &footwardv1.CheckItem{}
	require.NoError(t, protojson.Unmarshal([]byte(item(`, "steel": {"grade": "no such steel"}`)), m))
	out, err := c.CheckMany(t.Context(), &footwardv1.CheckManyRequest{Items: []*footwardv1.CheckItem{m}})
	require.NoError(t, err)
	refusal := out.GetOutcomes()[0].GetRefusal()
	require.NotNil(t, refusal)
	assert.Equal(t, "plate_bending.footprint.steel.grade", refusal.GetViolations()[0].GetField())
}

// TestSectionsOfAPlateHoldNoColumn has rods off the middle, which the clause does not fit:
// straight sections hold the plate, and nothing is said to hold flange and web.
func TestSectionsOfAPlateHoldNoColumn(t *testing.T) {
	r := result(t, `{"plateBending": {"basis": {"eurocode": {}},
		"plate": {"sizeXMm": 420, "sizeYMm": 420, "thicknessMm": 30, "steel": {"grade": "EN 10025-2 S235"}},
		"footprint": {"iSection": {"depthMm": 200, "widthMm": 200, "flangeMm": 15, "webMm": 9}, "stiffness": "FOOTPRINT_STIFFNESS_STIFF",
			"steel": {"grade": "EN 10025-2 S235"}},
		"forces": {"nKn": -50, "mXKnm": 20},
		"support": {"concrete": {"concrete": {"grade": "C25/30"}, "sizeXMm": 1000, "sizeYMm": 1000, "heightMm": 800}},
		"rods": {"rod": {"thread": {"designation": "M24"}, "steel": {"grade": "ISO 898-1 8.8"}},
			"positions": [{"xMm": -60, "yMm": -160}, {"xMm": 90, "yMm": -160}, {"xMm": 90, "yMm": 160}, {"xMm": -60, "yMm": 160}],
			"holes": {"diameterMm": 26}}}}`)
	assert.NotEqual(t, footwardv1.Verdict_VERDICT_NOT_APPLICABLE, state(t, r, "plate_section_pulled").GetVerdict())
	assert.Contains(t, state(t, r, "plate_tension_tstub").GetReason(), "sections at any angle hold the plate")
	assert.Contains(t, codesOf(r), "plate_column_not_checked")
	for _, id := range []string{"column_flange_compression", "column_web_tension"} {
		s := state(t, r, id)
		assert.Equal(t, footwardv1.Verdict_VERDICT_NOT_APPLICABLE, s.GetVerdict())
		assert.Contains(t, s.GetReason(), "the column's own section is not checked")
	}
}

// TestWornWeldOfABaseLengthensTheLeverArm gives the weld of a base an allowance.
func TestWornWeldOfABaseLengthensTheLeverArm(t *testing.T) {
	item := func(lost float64) string {
		return fmt.Sprintf(`{"columnBase": {"basis": {"eurocode": {}}, "base": {
			"plate": {"sizeXMm": 420, "sizeYMm": 420, "thicknessMm": 15, "steel": {"grade": "EN 10025-2 S235"}},
			"footprint": {"iSection": {"depthMm": 200, "widthMm": 200, "flangeMm": 15, "webMm": 9}, "stiffness": "FOOTPRINT_STIFFNESS_STIFF"},
			"support": {"concrete": {"concrete": {"grade": "C25/30"}, "sizeXMm": 1000, "sizeYMm": 1000, "heightMm": 800}},
			"weld": {"kind": "WELD_KIND_FILLET", "throatMm": 6, "corrosionAllowanceMm": %g, "parts": [
				{"thicknessMm": 15, "steel": {"grade": "EN 10025-2 S235"}}, {"thicknessMm": 15, "steel": {"grade": "EN 10025-2 S235"}}]},
			"rods": {"rod": {"thread": {"designation": "M24"}, "steel": {"grade": "ISO 898-1 8.8"}},
				"positions": [{"xMm": -120, "yMm": -160}, {"xMm": 120, "yMm": -160}, {"xMm": 120, "yMm": 160}, {"xMm": -120, "yMm": 160}],
				"holes": {"diameterMm": 26}}},
			"loadCases": {"cases": [{"name": "w", "forces": {"nKn": -50, "mXKnm": 20}}]}}}`, lost)
	}
	sound, worn := state(t, result(t, item(1e-9)), "plate_tension_tstub"), state(t, result(t, item(1)), "plate_tension_tstub")
	// l = B/2: the resistance goes with 1/m, m = 60 - 0.8 sqrt(2) a = 53.21 and 54.34 mm.
	assert.InEpsilon(t, 53.212/54.343, worn.GetResistance()/sound.GetResistance(), 1e-4)
}
