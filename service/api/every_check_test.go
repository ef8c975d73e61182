package api_test

import (
	"context"
	"io"
	"strings"
	"testing"

	"github.com/prometheus/client_golang/prometheus"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"google.golang.org/grpc/codes"
	"google.golang.org/grpc/status"
	"google.golang.org/protobuf/proto"
	"google.golang.org/protobuf/reflect/protoreflect"

	"footward.example/footward/client/local"
	"footward.example/footward/internal/limit"
	footwardv1 "footward.example/footward/proto/footward/v1"
	"footward.example/footward/service/api"
	"footward.example/footward/service/telemetry"
)

// TestEveryCheckIsAnsweredEverywhere goes through the choices of CheckItem: each is
// answered alone, in a batch and in a stream, counted by its kind, listed, and fuzzed.
func TestEveryCheckIsAnsweredEverywhere(t *testing.T) {
	c, err := local.Start(patient)
	require.NoError(t, err)
	defer func() { assert.NoError(t, c.Close()) }()
	states, err := c.ListLimitStates(t.Context(), &footwardv1.ListLimitStatesRequest{})
	require.NoError(t, err)
	listed := map[footwardv1.CheckKind]bool{}
	for _, s := range states.GetLimitStates() {
		listed[s.GetCheck()] = true
	}
	fuzzed := map[protoreflect.FullName]bool{}
	for _, k := range kinds {
		fuzzed[k().ProtoReflect().Descriptor().FullName()] = true
	}

	registry := prometheus.NewRegistry()
	metrics, err := telemetry.New(registry)
	require.NoError(t, err)
	s := api.NewCheck(rules(), metrics, 64<<20)
	choices := (&footwardv1.CheckItem{}).ProtoReflect().Descriptor().Oneofs().ByName("check").Fields()
	require.GreaterOrEqual(t, choices.Len(), 10)
	for i := range choices.Len() {
		f := choices.Get(i)
		name := string(f.Name())
		t.Run(name, func(t *testing.T) {
			kind := footwardv1.CheckKind(footwardv1.CheckKind_value["CHECK_KIND_"+strings.ToUpper(name)])
			require.NotZero(t, kind, "CheckKind has no value for it")
			assert.True(t, listed[kind], "the catalogue does not list its limit states")
			assert.True(t, fuzzed[f.Message().FullName()], "it is not fuzzed")

			item := &footwardv1.CheckItem{}
			empty := item.ProtoReflect().Mutable(f).Message().Interface()
			_, err := call(s, empty)
			assert.Equal(t, codes.InvalidArgument, status.Code(err), "%v", err)

			many, err := s.CheckMany(context.Background(), &footwardv1.CheckManyRequest{Items: []*footwardv1.CheckItem{item}})
			require.NoError(t, err)
			outcome := many.GetOutcomes()[0]
			for _, v := range outcome.GetRefusal().GetViolations() {
				assert.True(t, strings.HasPrefix(v.GetField(), name+"."), v.GetField())
			}
			require.NotEmpty(t, outcome.GetRefusal().GetViolations())

			stream, err := c.StreamChecks(t.Context())
			require.NoError(t, err)
			require.NoError(t, stream.Send(&footwardv1.StreamChecksRequest{Items: []*footwardv1.CheckItem{item}}))
			require.NoError(t, stream.CloseSend())
			got, err := stream.Recv()
			require.NoError(t, err)
			assert.True(t, proto.Equal(outcome, got.GetOutcomes()[0]))
			_, err = stream.Recv()
			assert.ErrorIs(t, err, io.EOF)

			families, err := registry.Gather()
			require.NoError(t, err)
			counted := 0.0
			for _, family := range families {
				if family.GetName() != "footward_refused_fields_total" {
					continue
				}
				for _, m := range family.GetMetric() {
					for _, l := range m.GetLabel() {
						if l.GetName() == "check" && l.GetValue() == name {
							counted += m.GetCounter().GetValue()
						}
					}
				}
			}
			assert.Positive(t, counted, "no series counts it")
		})
	}
}

// TestListsOfTheTestsAreWhole holds the parts that these tests go through to those
// that the service lists.
func TestListsOfTheTestsAreWhole(t *testing.T) {
	seen := map[string]*limit.Kind{}
	for _, p := range parts {
		for _, k := range p.kinds {
			seen[k.ID] = k
		}
	}
	all, err := api.NewCatalog().ListLimitStates(t.Context(), &footwardv1.ListLimitStatesRequest{})
	require.NoError(t, err)
	for _, s := range all.GetLimitStates() {
		assert.Contains(t, seen, s.GetId())
	}
}
