package cost_test

import (
	"context"
	"flag"
	"maps"
	"math"
	"os"
	"path/filepath"
	"slices"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"google.golang.org/protobuf/proto"
	"google.golang.org/protobuf/reflect/protoreflect"

	"footward.example/footward/client/footward/proof"
	"footward.example/footward/client/footward/reading"
	footwardv1 "footward.example/footward/proto/footward/v1"
	"footward.example/footward/service/api"
	"footward.example/footward/service/cost"
	"footward.example/footward/service/guard"
	"footward.example/footward/testdata/published"
)

// checks returns the checks of the demo and of the published figures, by kind and in
// each detail.
func checks(t testing.TB) map[string][]*footwardv1.CheckItem {
	t.Helper()
	out := map[string][]*footwardv1.CheckItem{}
	add := func(i *footwardv1.CheckItem) {
		m := i.ProtoReflect()
		kind := m.WhichOneof(m.Descriptor().Oneofs().Get(0))
		for _, d := range []footwardv1.Detail{
			footwardv1.Detail_DETAIL_GOVERNING, footwardv1.Detail_DETAIL_LIMIT_STATES, footwardv1.Detail_DETAIL_DERIVATION,
		} {
			one := proto.Clone(i).(*footwardv1.CheckItem)
			in := one.ProtoReflect().Mutable(kind).Message()
			in.Set(in.Descriptor().Fields().ByName("detail"), protoreflect.ValueOfEnum(d.Number()))
			key := string(kind.Name()) + " " + d.String()
			out[key] = append(out[key], one)
		}
	}
	for _, path := range []string{"demo/1-bearing", "demo/2-plate", "demo/3-weld", "demo/4-rods", "demo/5-base", "demo/6-pins",
		"demo-more/anchorage", "demo-more/footing", "demo-more/ring-stack", "demo-more/settlement"} {
		f, err := os.Open(filepath.Join("../../testdata", path+".yaml"))
		require.NoError(t, err)
		items, err := reading.Read(f)
		require.NoError(t, err)
		require.NoError(t, f.Close())
		for _, i := range items {
			add(i.Check)
		}
	}
	all, err := proof.Read(published.Files)
	require.NoError(t, err)
	for _, s := range all {
		for _, f := range s.Figures {
			i, err := f.Item()
			require.NoError(t, err)
			add(i)
		}
	}
	return out
}

// reference takes about 50 us where the figures were found.
func reference() (sum float64) {
	seen := map[int]float64{}
	for i := range 1200 {
		sum += math.Sqrt(float64(i)) * math.Atan2(float64(i), 3)
		seen[i%97] += sum
	}
	return sum + seen[3]
}

const referenceTakes = 50 * time.Microsecond

// beside returns the time of some work as a multiple of the reference, each at its
// least of several runs in turns.
func beside(runs int, work func()) float64 {
	best, unit := time.Duration(math.MaxInt64), time.Duration(math.MaxInt64)
	for range runs {
		began := time.Now()
		kept += reference()
		between := time.Now()
		work()
		unit, best = min(unit, between.Sub(began)), min(best, time.Since(between))
	}
	return float64(best) / float64(unit)
}

// kept has the compiler do the work of the reference.
var kept float64

var each = flag.Bool("cost.each", false, "hold every kind of check to its estimate by a factor of three; needs a quiet machine")

// TestEstimatesAreNearTheWork holds what checks take beside a reference to what is
// estimated beside what the reference took, so that a slow or busy machine is so for
// both: by a factor of three in the middle of all kinds, and coarsely each kind.
func TestEstimatesAreNearTheWork(t *testing.T) {
	if testing.Short() {
		t.Skip("the race detector slows some work more than other")
	}
	validator, err := guard.NewValidator()
	require.NoError(t, err)
	service := api.NewCheck(validator, nil, math.MaxInt32)
	bound := 8.0
	if *each {
		bound = 3
	}
	all := checks(t)
	var middles []float64
	for _, kind := range slices.Sorted(maps.Keys(all)) {
		var ratios []float64
		for _, i := range all[kind] {
			m := &footwardv1.CheckManyRequest{Items: []*footwardv1.CheckItem{i}}
			estimate := cost.Of(m).Usual
			require.Positive(t, estimate)
			if estimate > 2*time.Millisecond && !*each {
				continue // too long for others to let it alone
			}
			took := beside(6, func() {
				_, err := service.CheckMany(context.Background(), m)
				require.NoError(t, err)
			})
			ratios = append(ratios, took*float64(referenceTakes)/float64(estimate))
		}
		slices.Sort(ratios)
		middle := ratios[len(ratios)/2]
		middles = append(middles, middle)
		t.Logf("%-33s %3d checks: time over estimate %.2f to %.2f, in the middle %.2f", kind, len(ratios), ratios[0], ratios[len(ratios)-1], middle)
		assert.True(t, middle > 1/bound && middle < bound, "%s: %g", kind, middle)
	}
	slices.Sort(middles)
	middle := middles[len(middles)/2]
	assert.True(t, middle > 1./3 && middle < 3, "of all kinds: %g", middle)
}
