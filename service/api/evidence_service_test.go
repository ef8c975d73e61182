package api_test

import (
	"os"
	"testing"

	"buf.build/go/protoyaml"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"google.golang.org/genproto/googleapis/rpc/errdetails"
	"google.golang.org/grpc/codes"
	"google.golang.org/grpc/status"
	"google.golang.org/protobuf/proto"

	"footward.example/footward/internal/derive"
	footwardv1 "footward.example/footward/proto/footward/v1"
	"footward.example/footward/service/api"
)

// demoOf reads a request of the demo.
func demoOf[M proto.Message](t testing.TB, name string, m M) M {
	t.Helper()
	text, err := os.ReadFile("../../testdata/demo-more/" + name)
	require.NoError(t, err)
	require.NoError(t, protoyaml.Unmarshal(text, m))
	return m
}

func trialStacks(t testing.TB) *footwardv1.AssessLoadTestsRequest {
	return demoOf(t, "tests.yaml", &footwardv1.AssessLoadTestsRequest{})
}

func followed(t *testing.T, all []*footwardv1.DerivationStep) {
	t.Helper()
	require.NotEmpty(t, all)
	var steps []derive.Step
	for _, s := range all {
		steps = append(steps, derive.Step{Symbol: s.GetSymbol(), Expression: s.GetExpression(), Numbers: s.GetNumbers(), Value: s.GetValue()})
	}
	assert.NoError(t, derive.Verify(steps))
}

// TestTrialStacksOfTheDemo: two failed, one was stopped; likelihood with V 0.15. By hand:
// exp(mu - 1.645 sqrt(s^2 + se^2)) with s 0.1492, and 0.9 x 0.95 / 1.4 of it.
func TestTrialStacksOfTheDemo(t *testing.T) {
	m := trialStacks(t)
	m.Detail = footwardv1.Detail_DETAIL_DERIVATION
	r, err := api.NewEvidence(rules()).AssessLoadTests(t.Context(), m)
	require.NoError(t, err)
	finite(t, r.ProtoReflect())
	assert.Equal(t, m.GetLabel(), r.GetLabel())
	assert.EqualValues(t, 2, r.GetFailed())
	assert.EqualValues(t, 1, r.GetSurvived())
	assert.Equal(t, footwardv1.TestRoute_TEST_ROUTE_LIKELIHOOD, r.GetRoute())
	x := r.GetCharacteristic().GetValueKn()
	assert.InEpsilon(t, x*0.9*0.95/1.4, r.GetDesign().GetValueKn(), 1e-12)
	// Were the survivor a failure: 1.89 tests of V 0.15 on the mean 420, and more is known.
	assert.Greater(t, x, 420*(1-1.89*0.15))
	assert.Less(t, x, 412.0)
	assert.InDelta(t, 400/2.5, r.GetAllowable().GetValueKn(), 1e-9)
	assert.Contains(t, r.GetPhiMean().GetReason(), "without failure")
	assert.InDelta(t, min(420/1.2, 400/1.05), r.GetCorrelation().GetCharacteristicKn(), 1e-9)
	followed(t, r.GetDerivation())
	assert.NotEmpty(t, r.GetFactors())
	assert.NotEmpty(t, r.GetProvenance().GetCaution())
	for _, n := range r.GetNotices() {
		assert.NotEmpty(t, n.GetText())
	}
}

func TestEvidenceByDetail(t *testing.T) {
	m := trialStacks(t)
	m.Detail = footwardv1.Detail_DETAIL_GOVERNING
	r, err := api.NewEvidence(rules()).AssessLoadTests(t.Context(), m)
	require.NoError(t, err)
	assert.Empty(t, r.GetDerivation())
	assert.Empty(t, r.GetFactors())
	require.NotEmpty(t, r.GetNotices())
	assert.Empty(t, r.GetNotices()[0].GetText())
	m.Detail = footwardv1.Detail_DETAIL_UNSPECIFIED
	r, err = api.NewEvidence(rules()).AssessLoadTests(t.Context(), m)
	require.NoError(t, err)
	assert.Empty(t, r.GetDerivation())
	assert.NotEmpty(t, r.GetFactors())
}

func TestAllStacksThatSurvivedAreALowerBoundOnly(t *testing.T) {
	m := trialStacks(t)
	for _, one := range m.GetTests() {
		one.Mode = 0
	}
	r, err := api.NewEvidence(rules()).AssessLoadTests(t.Context(), m)
	require.NoError(t, err)
	assert.True(t, r.GetLowerBoundOnly())
	assert.Equal(t, footwardv1.TestRoute_TEST_ROUTE_SURVIVORS, r.GetRoute())
	m.Variation = nil
	r, err = api.NewEvidence(rules()).AssessLoadTests(t.Context(), m)
	require.NoError(t, err)
	assert.True(t, r.GetLowerBoundOnly())
	assert.Nil(t, r.GetCharacteristic().ValueKn)
	assert.Contains(t, r.GetCharacteristic().GetReason(), "lower bound only")
	assert.InDelta(t, 0.63, r.GetSurvivors().GetShare(), 0.005)
}

func TestFieldsOfEvidenceAreNamed(t *testing.T) {
	named := func(err error) (fields []string) {
		require.Equal(t, codes.InvalidArgument, status.Code(err), "%v", err)
		for _, d := range status.Convert(err).Details() {
			if b, ok := d.(*errdetails.BadRequest); ok {
				for _, v := range b.GetFieldViolations() {
					fields = append(fields, v.GetField())
				}
			}
		}
		return fields
	}
	m := trialStacks(t)
	m.Tests[1].SizeMm, m.Tests[2].Date, m.Variation.Source = 900, "17.4.2026", ""
	_, err := api.NewEvidence(rules()).AssessLoadTests(t.Context(), m)
	assert.ElementsMatch(t, []string{"tests[1].size_mm", "tests[2].date", "variation.source"}, named(err))
	record := demoOf(t, "reading.yaml", &footwardv1.ReadLoadTestRequest{})
	record.Plate.DiameterMm, record.Stages[1].Phase = 0, 0
	_, err = api.NewEvidence(rules()).ReadLoadTest(t.Context(), record)
	assert.ElementsMatch(t, []string{"plate", "stages[1].phase"}, named(err))
}

// TestRecordOfTheDemo: a hold at 200 kN, stopped at 400 kN.
func TestRecordOfTheDemo(t *testing.T) {
	m := demoOf(t, "reading.yaml", &footwardv1.ReadLoadTestRequest{})
	m.Detail = footwardv1.Detail_DETAIL_DERIVATION
	r, err := api.NewEvidence(rules()).ReadLoadTest(t.Context(), m)
	require.NoError(t, err)
	finite(t, r.ProtoReflect())
	assert.False(t, r.GetFailed())
	assert.InDelta(t, 400, r.GetResistanceKn(), 1e-9)
	assert.Len(t, r.GetCriteria(), 5)
	assert.Len(t, r.GetStages(), len(m.GetStages()))
	// 40 (110 + 132)/132, and 110 x 132/242 x 0.3 of the preload.
	assert.InDelta(t, 73.33, r.GetClamp().GetSlackLoadKn(), 0.01)
	assert.InDelta(t, 18, r.GetClamp().GetPreloadLostKn(), 1e-9)
	require.Len(t, r.GetCreep(), 1)
	assert.Greater(t, r.GetCreep()[0].GetLifeMm(), 5.17)
	assert.Contains(t, r.GetFirstLoading().GetReason(), "faster than load")
	assert.NotNil(t, r.GetSubgrade().FootingNMm3)
	followed(t, r.GetDerivation())
	assert.NotEmpty(t, r.GetProvenance().GetCaution())
}
