package api_test

import (
	"context"
	"fmt"
	"testing"
	"time"

	"github.com/stretchr/testify/require"
	"google.golang.org/grpc/codes"
	"google.golang.org/grpc/status"
	"google.golang.org/protobuf/proto"

	footwardv1 "footward.example/footward/proto/footward/v1"
	"footward.example/footward/service/api"
)

// equal are 16 actions without any factor in frequent combinations: of their half
// a million combinations a stage all are equal, so that no bound on combinations
// ends them.
func equal() *footwardv1.ActionSet {
	m := &footwardv1.ActionSet{Kinds: []footwardv1.CombinationKind{footwardv1.CombinationKind_COMBINATION_KIND_FREQUENT}}
	for i := range 20 {
		m.Stages = append(m.Stages, &footwardv1.Stage{Name: fmt.Sprint(i)})
	}
	for i := range 16 {
		m.Actions = append(m.Actions, &footwardv1.Action{
			Name: fmt.Sprint(i), Kind: footwardv1.ActionKind_ACTION_KIND_SNOW, Psi: &footwardv1.PsiFactors{},
			Forces: &footwardv1.ForcesAtFoot{NKn: -1},
		})
	}
	return m
}

// TestWorkEndsWithItsCall: whatever takes long stops soon after its context ends.
func TestWorkEndsWithItsCall(t *testing.T) {
	s, loads := service(t), api.NewLoad(rules())
	base := demoBase(t)
	cases := &footwardv1.LoadCases{}
	for k := range 2000 {
		cases.Cases = append(cases.Cases, &footwardv1.LoadCase{
			Name: fmt.Sprint(k), Forces: &footwardv1.ForcesAtFoot{NKn: -20, MXKnm: 1 + float64(k%7)},
		})
	}
	base.Loads = &footwardv1.CheckColumnBaseRequest_LoadCases{LoadCases: cases}
	many := &footwardv1.CheckManyRequest{}
	for range 1000 {
		many.Items = append(many.Items, &footwardv1.CheckItem{Check: &footwardv1.CheckItem_ColumnBase{ColumnBase: base}})
	}
	combined := proto.CloneOf(base)
	combined.Loads = &footwardv1.CheckColumnBaseRequest_ActionSet{ActionSet: equal()}
	sizing := &footwardv1.SizeColumnBaseRequest{
		Basis: base.GetBasis(), Exposure: base.GetExposure(), Base: base.GetBase(), Offer: &footwardv1.SizeOffer{},
		Loads: &footwardv1.SizeColumnBaseRequest_LoadCases{LoadCases: cases},
	}
	for i := range 100 {
		sizing.Offer.ThicknessMm = append(sizing.Offer.ThicknessMm, 1+float64(i)/100)
		sizing.Offer.Plans = append(sizing.Offer.Plans, &footwardv1.PlatePlan{SizeXMm: 1000 + float64(i), SizeYMm: 1000})
	}
	for name, call := range map[string]func(context.Context) error{
		"CheckMany": func(ctx context.Context) error { _, err := s.CheckMany(ctx, many); return err },
		"CheckColumnBase, equal combinations": func(ctx context.Context) error {
			_, err := s.CheckColumnBase(ctx, combined)
			return err
		},
		"SizeColumnBase": func(ctx context.Context) error { _, err := s.SizeColumnBase(ctx, sizing); return err },
		"CombineActions": func(ctx context.Context) error {
			_, err := loads.CombineActions(ctx, &footwardv1.CombineActionsRequest{Basis: base.GetBasis(), ActionSet: equal()})
			return err
		},
	} {
		t.Run(name, func(t *testing.T) {
			ctx, cancel := context.WithCancel(t.Context())
			done := make(chan error, 1)
			go func() { done <- call(ctx) }()
			select {
			case err := <-done:
				require.Fail(t, "it took no time", "%v", err)
			case <-time.After(100 * time.Millisecond):
			}
			cancel()
			began := time.Now()
			require.Equal(t, codes.Canceled, status.Code(<-done))
			t.Logf("ended %v after its call", time.Since(began))
		})
	}
}
