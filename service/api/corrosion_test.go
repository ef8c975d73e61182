package api_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"google.golang.org/protobuf/encoding/protojson"

	"footward.example/footward/client/local"
	footwardv1 "footward.example/footward/proto/footward/v1"
)

// Every steel part is checked as if it stated the loss itself.
func TestExposureIsTheSameAsAllowancesOfTheParts(t *testing.T) {
	// Polluted ground, 25 years: 0.75 mm a face (EN 1993-5 Table 4-1, from memory).
	const exposed = `"exposure": {"design_life_years": 25, "ground": "CORROSIVE_GROUND_POLLUTED_NATURAL"}`
	for name, item := range map[string]struct{ exposure, stated string }{
		"plate": {
			`{"plateBending": {"basis": {"eurocode": {}}, ` + exposed + `, ` + plateOf(``) + `}}`,
			`{"plateBending": {"basis": {"eurocode": {}}, ` + plateOf(`, "corrosionAllowanceMm": 1.5`) + `}}`,
		},
		"rods": {
			`{"anchorRods": {"basis": {"eurocode": {}}, ` + exposed + `, ` + rodsOf(``) + `}}`,
			`{"anchorRods": {"basis": {"eurocode": {}}, ` + rodsOf(`, "corrosionAllowanceMm": 1.5`) + `}}`,
		},
		"fillet": {
			`{"weld": {"basis": {"eurocode": {}}, ` + exposed + `, ` + weldOf("FILLET", `, "throatMm": 5`, ``) + `}}`,
			`{"weld": {"basis": {"eurocode": {}}, ` + weldOf("FILLET", `, "throatMm": 5, "corrosionAllowanceMm": 0.75`, `, "corrosionAllowanceMm": 1.5`) + `}}`,
		},
		"weld through the plate": {
			`{"weld": {"basis": {"eurocode": {}}, ` + exposed + `, ` + weldOf("COMPLETE_PENETRATION", ``, ``) + `}}`,
			`{"weld": {"basis": {"eurocode": {}}, ` + weldOf("COMPLETE_PENETRATION", `, "corrosionAllowanceMm": 1.5`, ``) + `}}`,
		},
	} {
		t.Run(name, func(t *testing.T) {
			a, b := result(t, item.exposure), result(t, item.stated)
			require.Equal(t, len(b.GetLimitStates()), len(a.GetLimitStates()))
			for i, s := range b.GetLimitStates() {
				assert.Equal(t, s.GetId(), a.GetLimitStates()[i].GetId())
				assert.InDelta(t, s.GetUtilization(), a.GetLimitStates()[i].GetUtilization(), 1e-12, s.GetId())
			}
			assert.Contains(t, codesOf(a), "corrosion_by_exposure")
			assert.NotContains(t, codesOf(b), "corrosion_by_exposure")
		})
	}
}

// A part that states no loss has none, whatever it stands in.
func TestStatedZeroIsNoAllowance(t *testing.T) {
	const exposed = `"exposure": {"design_life_years": 25, "ground": "CORROSIVE_GROUND_POLLUTED_NATURAL"}`
	none := result(t, `{"plateBending": {"basis": {"eurocode": {}}, `+exposed+`, `+plateOf(`, "corrosionAllowanceMm": 0`)+`}}`)
	dry := result(t, `{"plateBending": {"basis": {"eurocode": {}}, `+plateOf(``)+`}}`)
	require.NotZero(t, dry.GetGoverningUtilization())
	assert.InDelta(t, dry.GetGoverningUtilization(), none.GetGoverningUtilization(), 1e-12)
}

func plateOf(more string) string {
	return `"plate": {"sizeXMm": 300, "sizeYMm": 300, "thicknessMm": 20, "steel": {"grade": "EN 10025-2 S355"}` + more + `},
		"footprint": {"tube": {"sizeXMm": 150, "sizeYMm": 150, "wallMm": 8}, "stiffness": "FOOTPRINT_STIFFNESS_STIFF"},
		"support": {"given": {"pressureKpa": 3000, "source": "made up", "medium": "GIVEN_MEDIUM_OTHER"}}, "forces": {"nKn": -200}`
}

func rodsOf(more string) string {
	return `"plate": {"sizeXMm": 300, "sizeYMm": 300, "thicknessMm": 20, "steel": {"grade": "EN 10025-2 S355"}, "corrosionAllowanceMm": 1.5},
		"rods": {"rod": {"thread": {"designation": "M20"}, "steel": {"grade": "ISO 898-1 8.8"}` + more + `},
		"positions": [{"xMm": 0, "yMm": 0}], "holes": {"diameterMm": 22}}, "rodForces": [{"tensionKn": 40, "shearXKn": 10}]`
}

func weldOf(kind, more, part string) string {
	return `"weld": {"kind": "WELD_KIND_` + kind + `"` + more + `, "parts": [
		{"thicknessMm": 20, "steel": {"grade": "EN 10025-2 S355"}` + part + `}, {"thicknessMm": 20, "steel": {"grade": "EN 10025-2 S355"}` + part + `}]},
		"run": {"lengthMm": 200, "alongKn": 50}`
}

func result(t *testing.T, item string) *footwardv1.CheckResult {
	t.Helper()
	c, err := local.Start(patient)
	require.NoError(t, err)
	defer func() { require.NoError(t, c.Close()) }()
	m := &footwardv1.CheckItem{}
	require.NoError(t, protojson.Unmarshal([]byte(item), m))
	out, err := c.CheckMany(t.Context(), &footwardv1.CheckManyRequest{Items: []*footwardv1.CheckItem{m}})
	require.NoError(t, err)
	require.Nil(t, out.GetOutcomes()[0].GetRefusal(), "%v", out.GetOutcomes()[0].GetRefusal())
	return out.GetOutcomes()[0].GetResult()
}

func codesOf(r *footwardv1.CheckResult) (all []string) {
	for _, n := range r.GetNotices() {
		all = append(all, n.GetCode())
	}
	return all
}
