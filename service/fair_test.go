package main

import (
	"context"
	"fmt"
	"os"
	"path/filepath"
	"sync"
	"sync/atomic"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"google.golang.org/grpc/metadata"
	"google.golang.org/protobuf/proto"

	"footward.example/footward/client"
	"footward.example/footward/client/footward/reading"
	footwardv1 "footward.example/footward/proto/footward/v1"
)

// one reads a request of the demo.
func one[M proto.Message](t *testing.T, path string, m M) M {
	t.Helper()
	f, err := os.Open("../testdata/" + path)
	require.NoError(t, err)
	defer func() { _ = f.Close() }()
	faults, err := reading.One(f, m)
	require.NoError(t, err)
	require.Empty(t, faults)
	return m
}

// manyCases are as many combinations as a base may have, each a little other.
func manyCases() *footwardv1.LoadCases {
	var out footwardv1.LoadCases
	for i := range 2000 {
		x := float64(i % 50)
		out.Cases = append(out.Cases, &footwardv1.LoadCase{Name: fmt.Sprint("case ", i),
			Forces: &footwardv1.ForcesAtFoot{NKn: -60 - x, VXKn: 1 + x/20, VYKn: 2, MXKnm: 1, MYKnm: 2 + x/25}})
	}
	return &out
}

// manyActions make some 15 000 combinations.
func manyActions() *footwardv1.ActionSet {
	out := &footwardv1.ActionSet{}
	add := func(kind footwardv1.ActionKind, group string, n float64) {
		out.Actions = append(out.Actions, &footwardv1.Action{Name: fmt.Sprint("action ", len(out.Actions)), Kind: kind, ExclusiveGroup: group,
			Forces: &footwardv1.ForcesAtFoot{NKn: n, VXKn: 1, MYKnm: 1 + n/100}})
	}
	for range 2 {
		add(footwardv1.ActionKind_ACTION_KIND_PERMANENT, "", -15)
	}
	for range 4 {
		add(footwardv1.ActionKind_ACTION_KIND_TEMPERATURE, "", -2)
	}
	for range 5 {
		add(footwardv1.ActionKind_ACTION_KIND_WIND, "side", 3)
	}
	for range 3 {
		add(footwardv1.ActionKind_ACTION_KIND_IMPOSED_ROOF, "", -4)
	}
	return out
}

// dear are the dearest kinds of work in requests of a few KB to some hundred: searches,
// comparisons, batches of settlements, and bases under very many combinations.
func dear(t *testing.T) []func(context.Context, *client.Client) error {
	t.Helper()
	search := one(t, "demo-more/sizes.yaml", &footwardv1.SizeColumnBaseRequest{})
	search.Loads = &footwardv1.SizeColumnBaseRequest_LoadCases{LoadCases: manyCases()}
	search.Offer = &footwardv1.SizeOffer{}
	for i := range 50 {
		search.Offer.ThicknessMm = append(search.Offer.ThicknessMm, 6+float64(i)/10)
		search.Offer.ThroatMm = append(search.Offer.ThroatMm, 3+float64(i)/20)
	}
	compare := one(t, "demo-more/compare.yaml", &footwardv1.CompareFootingsRequest{})
	settlements := &footwardv1.CheckManyRequest{}
	for range 100 {
		settlements.Items = append(settlements.Items, deepSettlement(t))
	}
	base := demoBase(t)
	base.Loads = &footwardv1.CheckColumnBaseRequest_ActionSet{ActionSet: manyActions()}
	return []func(context.Context, *client.Client) error{
		func(ctx context.Context, c *client.Client) error { _, err := c.SizeColumnBase(ctx, search); return err },
		func(ctx context.Context, c *client.Client) error {
			_, err := c.CompareFootings(ctx, compare)
			return err
		},
		func(ctx context.Context, c *client.Client) error { _, err := c.CheckMany(ctx, settlements); return err },
		func(ctx context.Context, c *client.Client) error { _, err := c.CheckColumnBase(ctx, base); return err },
	}
}

// deepSettlement has as many layers, stages and neighbours as one may have.
func deepSettlement(t *testing.T) *footwardv1.CheckItem {
	t.Helper()
	m := demoItem(t, "demo-more/settlement.yaml").GetSettlement()
	m.Layers, m.Stages = nil, nil
	for range 50 {
		m.Layers = append(m.Layers, &footwardv1.GroundLayer{ThicknessMm: 300, ModulusMpa: 8, Poisson: 0.3, UnitWeightKnM3: 18,
			Oedometer: &footwardv1.Oedometer{CompressionIndex: 0.2, RecompressionIndex: 0.04, VoidRatio: 0.9, PreconsolidationKpa: 60}})
	}
	for i := range 100 {
		m.Stages = append(m.Stages, &footwardv1.SettlementStage{Name: fmt.Sprint("stage ", i), Load: &footwardv1.SettlementStage_CompressionKn{CompressionKn: 50 + float64(i)}, MYKnm: 2})
	}
	for i := range 50 {
		m.Neighbours = append(m.Neighbours, &footwardv1.SettlementNeighbour{DistanceMm: 4000 + 10*float64(i), SettlementMm: 5})
	}
	return &footwardv1.CheckItem{Check: &footwardv1.CheckItem_Settlement{Settlement: m}}
}

func demoBase(t *testing.T) *footwardv1.CheckColumnBaseRequest {
	t.Helper()
	return demoItem(t, "demo/5-base.yaml").GetColumnBase()
}

func demoItem(t *testing.T, path string) *footwardv1.CheckItem {
	t.Helper()
	f, err := os.Open("../testdata/" + path)
	require.NoError(t, err)
	defer func() { _ = f.Close() }()
	items, err := reading.Read(f)
	require.NoError(t, err)
	return items[0].Check
}

// TestSmallChecksAreAnsweredBesideTheDearestCalls: whoever asks for little has its
// answers whatever another caller asks for. How soon is reported, not asserted.
func TestSmallChecksAreAnsweredBesideTheDearestCalls(t *testing.T) {
	if testing.Short() {
		t.Skip("keeps both processors busy for seconds")
	}
	const patience = 25 * time.Second
	kinds := dear(t)
	p := launch(t)
	small, heavy := p.dial(t), p.dial(t)
	ask := func(a *answered, d time.Duration) {
		for began := time.Now(); time.Since(began) < d; {
			ctx, cancel := context.WithTimeout(context.Background(), patience)
			from := time.Now()
			_, err := small.CheckBearing(ctx, item(-120).GetBearing())
			a.add(err, time.Since(from))
			cancel()
		}
	}
	var alone, searches, mixed answered
	ask(&alone, time.Second)
	beside := func(a *answered, kinds ...func(context.Context, *client.Client) error) (ended int64) {
		ctx, cancel := context.WithCancel(context.Background())
		var n atomic.Int64
		var all sync.WaitGroup
		for i := range 8 {
			all.Go(func() {
				for ctx.Err() == nil {
					if err := kinds[i%len(kinds)](ctx, heavy); ctx.Err() == nil && assert.NoError(t, err) {
						n.Add(1)
					}
				}
			})
		}
		time.Sleep(500 * time.Millisecond) // they have begun
		ask(a, 3*time.Second)
		cancel()
		all.Wait()
		return n.Load()
	}
	beside(&searches, kinds[0])
	ended := beside(&mixed, kinds...)
	for _, a := range []*answered{&alone, &searches, &mixed} {
		require.Empty(t, a.failed)
		require.NotEmpty(t, a.took)
	}
	t.Logf("checks answered, half within, 99 of 100 within: alone %d, %v, %v; beside 8 searches %d, %v, %v; beside 8 calls of four kinds, of which %d ended, %d, %v, %v",
		len(alone.took), alone.within(50), alone.within(99), len(searches.took), searches.within(50), searches.within(99),
		ended, len(mixed.took), mixed.within(50), mixed.within(99))
}

// TestLongCallsOfOthersAreAnsweredToo: a caller with a token of its own does not wait
// until the searches of another are done.
func TestLongCallsOfOthersAreAnsweredToo(t *testing.T) {
	if testing.Short() {
		t.Skip("keeps both processors busy for seconds")
	}
	tokens := filepath.Join(t.TempDir(), "tokens")
	require.NoError(t, os.WriteFile(tokens, []byte("the-token-of-the-one\nthe-token-of-the-other\n"), 0o600))
	p := launch(t, "--token-file", tokens)
	as := func(ctx context.Context, token string) context.Context {
		return metadata.AppendToOutgoingContext(ctx, "authorization", "Bearer "+token)
	}
	c, kinds := p.dial(t), dear(t)
	endless, cancel := context.WithCancel(as(context.Background(), "the-token-of-the-one"))
	var all sync.WaitGroup
	for range 8 {
		all.Go(func() {
			for endless.Err() == nil {
				err := kinds[0](endless, c)
				assert.True(t, endless.Err() != nil || err == nil, "%v", err)
			}
		})
	}
	time.Sleep(500 * time.Millisecond) // they have begun
	ctx, stop := context.WithTimeout(as(context.Background(), "the-token-of-the-other"), 25*time.Second)
	defer stop()
	began := time.Now()
	assert.NoError(t, kinds[1](ctx, c))
	t.Logf("a comparison is answered in %v beside 8 searches of another caller", time.Since(began).Round(time.Millisecond))
	cancel()
	all.Wait()
}
