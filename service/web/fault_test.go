package web_test

import (
	"encoding/json"
	"net/http"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"google.golang.org/genproto/googleapis/rpc/errdetails"
	"google.golang.org/grpc/codes"
	"google.golang.org/protobuf/encoding/protojson"

	"footward.example/footward/client"
	footwardv1 "footward.example/footward/proto/footward/v1"
)

const (
	unknownValue = footwardv1.FieldReason_FIELD_REASON_UNKNOWN_VALUE
	outOfRange   = footwardv1.FieldReason_FIELD_REASON_OUT_OF_RANGE
	conflict     = footwardv1.FieldReason_FIELD_REASON_CONFLICT
	count        = footwardv1.FieldReason_FIELD_REASON_COUNT
)

// paths are the fields of violations.
func paths(all []*footwardv1.FieldViolation) []string {
	var out []string
	for _, v := range all {
		out = append(out, v.GetField())
	}
	return out
}

// TestOneBadItemOfABatchIsRefusedInItsPlace: whatever is wrong with the text of an
// item, the others are answered.
func TestOneBadItemOfABatchIsRefusedInItsPlace(t *testing.T) {
	p := produce(t)
	good := `{"bearing": ` + bearing + `}`
	for _, c := range []struct {
		name, item string
		fields     []string
		reason     footwardv1.FieldReason
		words      string
	}{
		{"misspelt field", strings.Replace(good, "pressure_kpa", "presure_kpa", 1),
			[]string{"bearing.support.given.presure_kpa", "bearing.support.given.pressure_kpa"},
			unknownValue, `unknown field "presure_kpa", nearest is pressure_kpa; known are pressure_kpa, source, `},
		{"misspelt in the other spelling", strings.Replace(good, "size_x_mm", "sizeXMn", 1),
			[]string{"bearing.contact.sizeXMn", "bearing.contact.size_x_mm"}, unknownValue, `nearest is size_x_mm`},
		{"wrong name of an enum", strings.Replace(good, "GIVEN_MEDIUM_OTHER", "MEDIUM_OTHER", 1), []string{"bearing.support.given.medium"},
			unknownValue, `is "MEDIUM_OTHER", nearest is GIVEN_MEDIUM_OTHER; must be one of GIVEN_MEDIUM_GRANULAR_FILL, GIVEN_MEDIUM_OTHER`},
		{"text for a number", strings.Replace(good, "-120", `"-120 kN"`, 1), []string{"bearing.forces.n_kn"},
			unknownValue, `is "-120 kN"; must be a number; units stand in the name of the field`},
		{"number that is too large", strings.Replace(good, "-120", `-1e999`, 1), []string{"bearing.forces.n_kn"},
			outOfRange, `is -1e999; is too large for a number`},
		{"list for a message", strings.Replace(good, `{"n_kn": -120}`, `[-120]`, 1), []string{"bearing.forces"},
			unknownValue, `is a list; must be an object with the fields of ForcesAtFoot`},
		{"field twice", strings.Replace(good, `{"n_kn": -120}`, `{"n_kn": -120, "nKn": -1}`, 1), []string{"bearing.forces.n_kn"},
			conflict, "second time"},
		{"field beside the check", strings.Replace(good, `{"bearing"`, `{"labl": "x", "bearing"`, 1), []string{"labl"},
			unknownValue, `unknown field "labl"; known are bearing, plate_bending, `},
		{"field of a part, beside it", strings.Replace(good, `"contact"`, `"size_x_mm": 500, "contact"`, 1), []string{"bearing.size_x_mm"},
			unknownValue, `; contact has one of this name`},
		{"misspelt check", strings.Replace(good, "bearing", "baering", 1), []string{"baering"},
			unknownValue, `unknown field "baering", nearest is bearing`},
		{"two checks", strings.Replace(good, `{"bearing"`, `{"weld": {}, "bearing"`, 1), nil, conflict, "excludes weld"},
		{"no object", `17`, []string{"check"}, unknownValue, "the item is a number; it must be an object with one check"},
		{"null", `null`, []string{"check"}, unknownValue, "the item is null"},
	} {
		t.Run(c.name, func(t *testing.T) {
			r := p.post(t, manyPath, `{"items": [`+good+", "+c.item+","+good+`]}`)
			require.Equal(t, http.StatusOK, r.StatusCode, r.body)
			var answer footwardv1.CheckManyResponse
			require.NoError(t, protojson.Unmarshal([]byte(r.body), &answer))
			require.Len(t, answer.GetOutcomes(), 3)
			for _, i := range []int{0, 2} {
				assert.InDelta(t, 0.75, answer.GetOutcomes()[i].GetResult().GetGoverningUtilization(), 1e-9)
			}
			violations := answer.GetOutcomes()[1].GetRefusal().GetViolations()
			require.NotEmpty(t, violations)
			assert.EqualValues(t, 1, answer.GetOutcomes()[1].GetIndex())
			assert.Equal(t, c.reason, violations[0].GetReason())
			assert.Contains(t, violations[0].GetDescription(), c.words)
			if c.fields != nil {
				assert.Equal(t, c.fields, paths(violations))
			}
		})
	}
	assert.Regexp(t, `footward_refused_fields_total\{check="bearing",reason="unknown_value"\} \d+\n`, p.scrape())
	assert.NotContains(t, p.scrape(), `footward_refused_fields_total{check="bearing",reason="unknown_value"} 0`)
	assert.Contains(t, p.scrape(), `footward_checks_total{basis="eurocode",check="bearing",verdict="pass"} 26`, "none that was refused is counted as answered")
}

// TestAllFaultsOfABodyAreToldAtOnce: those of its text, those of its schema and the
// names that the catalogue lacks.
func TestAllFaultsOfABodyAreToldAtOnce(t *testing.T) {
	p := produce(t)
	r := p.post(t, footwardv1.CheckService_CheckPlateBending_FullMethodName, `{
		"lable": "x",
		"basis": {"eurocode": {"steel": {"gamma_m0": "one"}}},
		"plate": {"size_x_mm": 300, "size_y_mm": -300, "thicknes_mm": 20, "steel": {"grade": "S236"}},
		"footprint": "tube",
		"forces": {"n_kn": -120, "nKn": -1},
		"support": {"concrete": {}, "given": {}},
		"rods": {"positions": [{"x_mm": 1}, {"x_mm": "2 mm"}, 3]}
	}`)
	require.Equal(t, http.StatusBadRequest, r.StatusCode, r.body)
	violations := client.Violations(r.status(t).Err())
	got := map[string]*footwardv1.FieldViolation{}
	for _, v := range violations {
		assert.NotContains(t, got, v.GetField(), "told once")
		got[v.GetField()] = v
	}
	for _, path := range []string{
		"lable", "basis.eurocode.steel.gamma_m0", "plate.thicknes_mm", "plate.thickness_mm", "plate.size_y_mm", "plate.steel.grade",
		"footprint", "forces.n_kn", "support.given", "rods.positions[1].x_mm", "rods.positions[2]",
	} {
		assert.Contains(t, got, path)
	}
	assert.Contains(t, got["basis.eurocode.steel.gamma_m0"].GetDescription(), `is "one"; must be a number`)
	assert.Contains(t, got["footprint"].GetDescription(), `is "tube"; must be an object with the fields of Footprint`)
	assert.Contains(t, r.body, `"reason":"FIELDS_REFUSED"`)
	assert.Contains(t, p.scrape(), `grpc_server_handled_total{grpc_code="InvalidArgument",grpc_method="CheckPlateBending",grpc_service="footward.v1.CheckService",grpc_type="unary"} 1`)
	assert.Contains(t, p.scrape(), `footward_refused_fields_total{check="plate_bending",reason="conflict"} 2`)
	assert.NotContains(t, p.scrape(), `footward_checks_total{basis="eurocode",check="plate_bending",verdict="pass"} 1`)
}

// TestNothingThatWasReadInPartIsAnswered asks every method with a field that it
// does not have, and with a text that is no request.
func TestNothingThatWasReadInPartIsAnswered(t *testing.T) {
	p := produce(t)
	for _, m := range methods() {
		r := p.post(t, pathOf(m), `{"luck": 7}`)
		assert.Equal(t, http.StatusBadRequest, r.StatusCode, m.FullName())
		assert.Contains(t, paths(client.Violations(r.status(t).Err())), "luck", m.FullName())
		for _, body := range []string{"{\"label\": \"\xff\"}", "nonsense", "[]", "\xff\xfe{\x00}\x00", "\ufeff{}", " \n"} {
			r := p.post(t, pathOf(m), body)
			assert.Equal(t, http.StatusBadRequest, r.StatusCode, m.FullName())
			assert.Equal(t, codes.InvalidArgument, r.status(t).Code())
			assert.Regexp(t, "^the body (is|begins)", r.status(t).Message(), m.FullName())
			assert.Equal(t, []string{""}, paths(client.Violations(r.status(t).Err())), "%s %q", m.FullName(), body)
		}
	}
	assert.Contains(t, p.post(t, bearingPath, "\xff\xfe{\x00}\x00").status(t).Message(), "UTF-16")
	assert.NotContains(t, p.log.String(), "level=ERROR")
}

// TestWhatACallerSentIsCutInRefusals: an answer is not as large as the request.
func TestWhatACallerSentIsCutInRefusals(t *testing.T) {
	p := produce(t)
	long := strings.Repeat("9", messageBytes/2)
	for _, body := range []string{
		`{"forces": {"n_kn": "` + long + `"}}`, `{"forces": {"n_kn": ` + long + `}}`, `{"` + long + `": 1}`, `{"detail": "` + long + `"}`,
		`{"contact": "` + long + `"}`, long,
	} {
		r := p.post(t, bearingPath, body)
		assert.Equal(t, http.StatusBadRequest, r.StatusCode)
		assert.Less(t, len(r.body), 4000)
		var s struct{ Details []errdetails.BadRequest }
		require.NoError(t, json.Unmarshal([]byte(r.body), &s))
		for _, v := range client.Violations(r.status(t).Err()) {
			assert.LessOrEqual(t, len([]rune(v.GetDescription())), 303)
			assert.LessOrEqual(t, len(v.GetField()), 100)
		}
	}
	for header, value := range map[string]string{"Content-Type": "text/", "Content-Encoding": "x", "Request-Timeout": "1"} {
		r := p.post(t, bearingPath, "{}", header, value+strings.Repeat("y", 8000))
		assert.Less(t, len(r.body), 400, header)
	}
}

// TestALongListIsCountedAndNotRead: two letters of a text become no message of
// hundreds of bytes.
func TestALongListIsCountedAndNotRead(t *testing.T) {
	p := produce(t)
	r := p.post(t, manyPath, `{"items": [{}`+strings.Repeat(",{}", 10_000)+`]}`)
	assert.Equal(t, http.StatusBadRequest, r.StatusCode)
	violations := client.Violations(r.status(t).Err())
	require.Len(t, violations, 1)
	assert.Equal(t, "items", violations[0].GetField())
	assert.Equal(t, count, violations[0].GetReason())
	assert.Contains(t, violations[0].GetDescription(), "is a list of 10001;")

	// As gRPC says it.
	_, err := p.grpc.CheckMany(t.Context(), &footwardv1.CheckManyRequest{Items: make([]*footwardv1.CheckItem, 10_001)})
	assert.Equal(t, err.Error(), r.status(t).Err().Error())
}
