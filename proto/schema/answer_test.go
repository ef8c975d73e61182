package schema_test

import (
	"io"
	"net/http"
	"net/http/httptest"
	"os"
	"testing"

	"buf.build/go/protoyaml"
	"github.com/santhosh-tekuri/jsonschema/v6"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"google.golang.org/grpc/status"
	"google.golang.org/protobuf/encoding/protojson"
	"google.golang.org/protobuf/proto"
	"google.golang.org/protobuf/reflect/protoreflect"

	"footward.example/footward/client/local"
	footwardv1 "footward.example/footward/proto/footward/v1"
	"footward.example/footward/proto/schema"
)

// whole prepares the schemas of the document.
func whole(t *testing.T) func(name string, text []byte) {
	c := jsonschema.NewCompiler()
	require.NoError(t, c.AddResource("file:///openapi.json", value(t, schema.OpenAPI())))
	return func(name string, text []byte) {
		t.Helper()
		s, err := c.Compile("file:///openapi.json#/components/schemas/" + name)
		require.NoError(t, err)
		assert.NoError(t, s.Validate(value(t, text)), name)
	}
}

// TestAnswersFitTheDocument: of every check of the demo in full, and of everything
// else that is served.
func TestAnswersFitTheDocument(t *testing.T) {
	if testing.Short() {
		t.Skip("asks for everything that is served")
	}
	fits := whole(t)
	answered := func(t *testing.T, m proto.Message, err error) {
		t.Helper()
		require.NoError(t, err)
		// As it goes over HTTP.
		text, err := protojson.MarshalOptions{UseProtoNames: true, EmitDefaultValues: true}.Marshal(m)
		require.NoError(t, err)
		fits(string(m.ProtoReflect().Descriptor().Name()), text)
	}
	c, err := local.Start()
	require.NoError(t, err)
	t.Cleanup(func() { _ = c.Close() })
	read := func(name string, m proto.Message) {
		text, err := os.ReadFile("../../testdata/" + name)
		require.NoError(t, err)
		require.NoError(t, protoyaml.Unmarshal(text, m))
	}
	ctx := t.Context()
	list := &footwardv1.CheckManyRequest{Items: []*footwardv1.CheckItem{{Check: &footwardv1.CheckItem_Weld{}}}}
	for _, name := range []string{
		"demo/1-bearing", "demo/2-plate", "demo/3-weld", "demo/4-rods", "demo/5-base", "demo/6-pins",
		"demo-more/anchorage", "demo-more/footing", "demo-more/ring-stack", "demo-more/settlement",
	} {
		item := &footwardv1.CheckItem{}
		read(name+".yaml", item)
		check := item.ProtoReflect()
		inner := check.Mutable(check.WhichOneof(check.Descriptor().Oneofs().Get(0))).Message()
		detail := inner.Descriptor().Fields().ByName("detail")
		inner.Set(detail, protoreflect.ValueOfEnum(footwardv1.Detail_DETAIL_DERIVATION.Number()))
		list.Items = append(list.Items, item)
		if base := item.GetColumnBase(); base != nil {
			base.IncludeCombinations = true
			m, err := c.CheckColumnBase(ctx, base)
			answered(t, m, err)
		}
		if settlement := item.GetSettlement(); settlement != nil {
			m, err := c.CheckSettlement(ctx, settlement)
			answered(t, m, err)
		}
	}
	many, err := c.CheckMany(ctx, list)
	answered(t, many, err)
	assert.NotNil(t, many.GetOutcomes()[0].GetRefusal())

	actions := &footwardv1.CombineActionsRequest{}
	read("demo-more/actions.yaml", actions)
	combined, err := c.CombineActions(ctx, actions)
	answered(t, combined, err)
	footings := &footwardv1.CompareFootingsRequest{}
	read("demo-more/compare.yaml", footings)
	compared, err := c.CompareFootings(ctx, footings)
	answered(t, compared, err)
	tests, record := &footwardv1.AssessLoadTestsRequest{}, &footwardv1.ReadLoadTestRequest{}
	read("demo-more/tests.yaml", tests)
	assessed, err := c.AssessLoadTests(ctx, tests)
	answered(t, assessed, err)
	read("demo-more/reading.yaml", record)
	recorded, err := c.ReadLoadTest(ctx, record)
	answered(t, recorded, err)
	sizes := &footwardv1.SizeColumnBaseRequest{}
	read("demo-more/sizes.yaml", sizes)
	sized, err := c.SizeColumnBase(ctx, sizes)
	answered(t, sized, err)

	bases, err := c.ListDesignBases(ctx, &footwardv1.ListDesignBasesRequest{})
	answered(t, bases, err)
	steels, err := c.ListSteels(ctx, &footwardv1.ListSteelsRequest{})
	answered(t, steels, err)
	timbers, err := c.ListTimbers(ctx, &footwardv1.ListTimbersRequest{})
	answered(t, timbers, err)
	states, err := c.ListLimitStates(ctx, &footwardv1.ListLimitStatesRequest{})
	answered(t, states, err)
	notices, err := c.ListNotices(ctx, &footwardv1.ListNoticesRequest{})
	answered(t, notices, err)

	_, err = c.CheckWeld(ctx, &footwardv1.CheckWeldRequest{})
	refusal := status.Convert(err).Proto()
	require.NotEmpty(t, refusal.GetDetails())
	text, err := protojson.Marshal(refusal)
	require.NoError(t, err)
	fits("Status", text)
}

// TestTheDocumentIsServed as JSON.
func TestTheDocumentIsServed(t *testing.T) {
	w := httptest.NewRecorder()
	schema.ServeHTTP(w, httptest.NewRequest(http.MethodGet, "/openapi.json", nil))
	body, err := io.ReadAll(w.Result().Body)
	require.NoError(t, err)
	assert.Equal(t, schema.OpenAPI(), body)
	assert.Equal(t, "application/json", w.Result().Header.Get("Content-Type"))
}
