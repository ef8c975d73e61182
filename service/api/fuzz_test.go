package api_test

import (
	"context"
	"math"
	"sync"
	"testing"

	"buf.build/go/protovalidate"
	"github.com/stretchr/testify/require"
	"google.golang.org/grpc/codes"
	"google.golang.org/grpc/status"
	"google.golang.org/protobuf/proto"
	"google.golang.org/protobuf/reflect/protoreflect"

	"footward.example/footward/client"
	"footward.example/footward/internal/derive"
	footwardv1 "footward.example/footward/proto/footward/v1"
	"footward.example/footward/service/api"
	"footward.example/footward/service/guard"
)

// service returns the handlers without a network between.
func service(t testing.TB) *api.Check {
	t.Helper()
	return api.NewCheck(rules(), nil, 64<<20)
}

// requests returns those of all published figures.
func requests(t testing.TB) []*footwardv1.CheckItem {
	t.Helper()
	var out []*footwardv1.CheckItem
	for _, s := range sources(t) {
		for i := range s.Figures {
			out = append(out, item(t, &s.Figures[i]))
		}
	}
	return out
}

// requestOf returns the request in an item.
func requestOf(i *footwardv1.CheckItem) proto.Message {
	m := i.ProtoReflect()
	f := m.WhichOneof(m.Descriptor().Oneofs().ByName("check"))
	if f == nil {
		return nil
	}
	return m.Mutable(f).Message().Interface()
}

// call sends a request to the method that takes it.
func call(s *api.Check, m proto.Message) (*footwardv1.CheckResult, error) {
	ctx := context.Background()
	switch m := m.(type) {
	case *footwardv1.CheckBearingRequest:
		r, err := s.CheckBearing(ctx, m)
		return r.GetResult(), err
	case *footwardv1.CheckPlateBendingRequest:
		r, err := s.CheckPlateBending(ctx, m)
		return r.GetResult(), err
	case *footwardv1.CheckWeldRequest:
		r, err := s.CheckWeld(ctx, m)
		return r.GetResult(), err
	case *footwardv1.CheckAnchorRodsRequest:
		r, err := s.CheckAnchorRods(ctx, m)
		return r.GetResult(), err
	case *footwardv1.CheckAnchorageRequest:
		r, err := s.CheckAnchorage(ctx, m)
		return r.GetResult(), err
	case *footwardv1.CheckPinRequest:
		r, err := s.CheckPin(ctx, m)
		return r.GetResult(), err
	case *footwardv1.CheckSettlementRequest:
		r, err := s.CheckSettlement(ctx, m)
		return r.GetResult(), err
	case *footwardv1.CheckFootingRequest:
		r, err := s.CheckFooting(ctx, m)
		return r.GetResult(), err
	case *footwardv1.CheckRingStackRequest:
		r, err := s.CheckRingStack(ctx, m)
		return r.GetResult(), err
	case *footwardv1.CheckColumnBaseRequest:
		r, err := s.CheckColumnBase(ctx, m)
		return r.GetResult(), err
	}
	return nil, status.Error(codes.Unimplemented, "no such request")
}

// kinds are the requests of the checks, in the order of CheckItem.
var kinds = []func() proto.Message{
	func() proto.Message { return &footwardv1.CheckBearingRequest{} },
	func() proto.Message { return &footwardv1.CheckPlateBendingRequest{} },
	func() proto.Message { return &footwardv1.CheckWeldRequest{} },
	func() proto.Message { return &footwardv1.CheckAnchorRodsRequest{} },
	func() proto.Message { return &footwardv1.CheckColumnBaseRequest{} },
	func() proto.Message { return &footwardv1.CheckAnchorageRequest{} },
	func() proto.Message { return &footwardv1.CheckPinRequest{} },
	func() proto.Message { return &footwardv1.CheckSettlementRequest{} },
	func() proto.Message { return &footwardv1.CheckFootingRequest{} },
	func() proto.Message { return &footwardv1.CheckRingStackRequest{} },
}

// FuzzRequests sends the bytes of a message to every check: there is an answer
// whose numbers are all finite and whose derivation can be computed, or a refusal that
// names its fields.
func FuzzRequests(f *testing.F) {
	s := service(f)
	whole := &footwardv1.CheckItem{Check: &footwardv1.CheckItem_ColumnBase{ColumnBase: demoBase(f)}}
	whole.GetColumnBase().Detail = footwardv1.Detail_DETAIL_DERIVATION
	for _, i := range append(requests(f), whole) {
		wire, err := proto.Marshal(requestOf(i))
		require.NoError(f, err)
		for kind := range kinds {
			f.Add(uint8(kind), wire)
		}
	}
	f.Fuzz(func(t *testing.T, kind uint8, wire []byte) {
		m := kinds[int(kind)%len(kinds)]()
		if proto.Unmarshal(wire, m) != nil {
			return // the server refuses it before the handler
		}
		agrees(t, m)
		r, err := call(s, m)
		if err != nil {
			refused(t, err)
			return
		}
		sound(t, r)
	})
}

// agrees demands that a request is refused by the service's own rules exactly
// when its schema forbids it.
func agrees(t *testing.T, m proto.Message) {
	t.Helper()
	require.Equal(t, protovalidate.Validate(m) == nil, rules().Violations(m) == nil)
}

var rules = sync.OnceValue(func() *guard.Validator {
	v, err := guard.NewValidator()
	if err != nil {
		panic(err)
	}
	return v
})

// FuzzBatches sends the bytes of a batch to CheckMany and StreamChecks: as many
// outcomes as items, in order, each the same as of the item alone.
func FuzzBatches(f *testing.F) {
	s := service(f)
	all := requests(f)
	for i := range all {
		wire, err := proto.Marshal(&footwardv1.CheckManyRequest{Items: []*footwardv1.CheckItem{all[i], {}, all[(i+7)%len(all)]}})
		require.NoError(f, err)
		f.Add(wire)
	}
	f.Fuzz(func(t *testing.T, wire []byte) {
		var m footwardv1.CheckManyRequest
		if proto.Unmarshal(wire, &m) != nil {
			return
		}
		r, err := s.CheckMany(context.Background(), &m)
		if err != nil {
			refused(t, err)
			return
		}
		require.Len(t, r.GetOutcomes(), len(m.GetItems()))
		p := &pipe{send: []*footwardv1.StreamChecksRequest{{Items: m.GetItems()}}}
		if err := s.StreamChecks(p); err != nil {
			refused(t, err) // a message of a stream holds fewer items
		} else {
			require.True(t, bitwise(t, &footwardv1.CheckManyResponse{Outcomes: r.GetOutcomes()}, &footwardv1.CheckManyResponse{Outcomes: p.got}))
		}
		for i, o := range r.GetOutcomes() {
			require.Equal(t, uint32(i), o.GetIndex())
			if o.GetRefusal() != nil {
				require.NotEmpty(t, o.GetRefusal().GetViolations())
				continue
			}
			sound(t, o.GetResult())
			alone, err := call(s, requestOf(m.GetItems()[i]))
			require.NoError(t, err)
			require.True(t, bitwise(t, alone, o.GetResult()))
		}
	})
}

func refused(t *testing.T, err error) {
	t.Helper()
	require.Equal(t, codes.InvalidArgument, status.Code(err), "%v", err)
	violations := client.Violations(err)
	require.NotEmpty(t, violations)
	for _, v := range violations {
		require.NotEmpty(t, v.GetField(), "%v", violations)
		require.NotEmpty(t, v.GetDescription())
		require.NotZero(t, v.GetReason(), "%v", v)
	}
}

// sound demands that every number of an answer is finite, that it has a verdict
// and a reason where it needs one, and that every name of its derivation has a
// value. That the values are right is held on the published figures: six printed
// digits may cancel out in a request of absurd proportions.
func sound(t *testing.T, r *footwardv1.CheckResult) {
	t.Helper()
	require.NotNil(t, r)
	finite(t, r.ProtoReflect())
	require.NotZero(t, r.GetVerdict())
	switch r.GetVerdict() {
	case footwardv1.Verdict_VERDICT_OUT_OF_SCOPE, footwardv1.Verdict_VERDICT_NOT_APPLICABLE:
		require.NotEmpty(t, r.GetReason())
	}
	for _, s := range r.GetLimitStates() {
		require.NotZero(t, s.GetVerdict(), s.GetId())
		require.NotEmpty(t, s.GetClause(), s.GetId())
		if s.Utilization == nil && s.GetVerdict() != footwardv1.Verdict_VERDICT_PASS {
			require.NotEmpty(t, s.GetReason(), s.GetId())
		}
	}
	for _, step := range r.GetDerivation() {
		if step.GetExpression() != "" {
			_, err := derive.Evaluate(step.GetNumbers())
			require.NoError(t, err, step.GetSymbol())
		}
	}
}

func finite(t *testing.T, m protoreflect.Message) {
	t.Helper()
	m.Range(func(d protoreflect.FieldDescriptor, v protoreflect.Value) bool {
		switch {
		case d.Kind() == protoreflect.DoubleKind && d.IsList():
			for i := range v.List().Len() {
				v := v.List().Get(i).Float()
				require.False(t, math.IsNaN(v) || math.IsInf(v, 0), "%s[%d]", d.FullName(), i)
			}
		case d.Kind() == protoreflect.DoubleKind:
			require.False(t, math.IsNaN(v.Float()) || math.IsInf(v.Float(), 0), "%s in %v", d.FullName(), m.Interface())
		case d.Message() != nil && d.IsList():
			for i := range v.List().Len() {
				finite(t, v.List().Get(i).Message())
			}
		case d.Message() != nil:
			finite(t, v.Message())
		}
		return true
	})
}

// bitwise reports whether two messages are the same, bit by bit.
func bitwise(t testing.TB, a, b proto.Message) bool {
	t.Helper()
	deterministic := proto.MarshalOptions{Deterministic: true}
	x, err := deterministic.Marshal(a)
	require.NoError(t, err)
	y, err := deterministic.Marshal(b)
	require.NoError(t, err)
	return string(x) == string(y)
}
