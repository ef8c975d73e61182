package api_test

import (
	"context"
	"testing"

	"github.com/prometheus/client_golang/prometheus"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"google.golang.org/grpc/codes"
	"google.golang.org/grpc/status"

	footwardv1 "footward.example/footward/proto/footward/v1"
	"footward.example/footward/service/api"
	"footward.example/footward/service/telemetry"
)

// leaves is a context whose caller leaves after it was asked so often.
type leaves struct {
	context.Context
	after int
}

func (l *leaves) Err() error {
	if l.after--; l.after < 0 {
		return context.Canceled
	}
	return nil
}

// TestOnlyWhatIsAnsweredIsCounted: nothing of a batch whose caller leaves before its
// last item, or whose answer is too large; of one that is answered every item.
func TestOnlyWhatIsAnsweredIsCounted(t *testing.T) {
	registry := prometheus.NewRegistry()
	metrics, err := telemetry.New(registry)
	require.NoError(t, err)
	counted := func(name string) (sum float64) {
		families, err := registry.Gather()
		require.NoError(t, err)
		for _, f := range families {
			if f.GetName() == name {
				for _, m := range f.GetMetric() {
					sum += m.GetCounter().GetValue()
				}
			}
		}
		return sum
	}
	const checks, refused = "footward_checks_total", "footward_refused_fields_total"
	m := batch(9)
	m.Items = append(m.Items, &footwardv1.CheckItem{Check: &footwardv1.CheckItem_AnchorRods{AnchorRods: &footwardv1.CheckAnchorRodsRequest{}}})
	c := api.NewCheck(rules(), metrics, 1<<20)
	_, err = c.CheckMany(&leaves{t.Context(), 9}, m)
	require.Equal(t, codes.Canceled, status.Code(err))
	_, err = api.NewCheck(rules(), metrics, 1).CheckMany(t.Context(), m)
	require.Equal(t, codes.OutOfRange, status.Code(err))
	assert.Zero(t, counted(checks))
	assert.Zero(t, counted(refused))

	r, err := c.CheckMany(t.Context(), m)
	require.NoError(t, err)
	assert.Equal(t, 9.0, counted(checks))
	assert.Equal(t, float64(len(r.GetOutcomes()[9].GetRefusal().GetViolations())), counted(refused))
}

// TestEveryKindOfItemIsCountedAsItsOwn whatever item the contract has.
func TestEveryKindOfItemIsCountedAsItsOwn(t *testing.T) {
	registry := prometheus.NewRegistry()
	metrics, err := telemetry.New(registry)
	require.NoError(t, err)
	m := &footwardv1.CheckManyRequest{}
	choices := (&footwardv1.CheckItem{}).ProtoReflect().Descriptor().Oneofs().Get(0).Fields()
	for i := range choices.Len() {
		item := &footwardv1.CheckItem{}
		item.ProtoReflect().Mutable(choices.Get(i))
		m.Items = append(m.Items, item)
	}
	_, err = api.NewCheck(rules(), metrics, 1<<20).CheckMany(t.Context(), m)
	require.NoError(t, err)
	families, err := registry.Gather()
	require.NoError(t, err)
	kinds := map[string]bool{}
	for _, f := range families {
		if f.GetName() != "footward_refused_fields_total" {
			continue
		}
		for _, one := range f.GetMetric() {
			for _, l := range one.GetLabel() {
				if l.GetName() == "check" && one.GetCounter().GetValue() > 0 {
					kinds[l.GetValue()] = true
				}
			}
		}
	}
	assert.Len(t, kinds, choices.Len())
}
