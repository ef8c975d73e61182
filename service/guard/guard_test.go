package guard_test

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"log/slog"
	"math"
	"regexp"
	"strings"
	"sync"
	"sync/atomic"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"google.golang.org/genproto/googleapis/rpc/errdetails"
	"google.golang.org/grpc"
	"google.golang.org/grpc/codes"
	"google.golang.org/grpc/status"
	"google.golang.org/protobuf/proto"
	"google.golang.org/protobuf/reflect/protoreflect"
	"google.golang.org/protobuf/reflect/protoregistry"

	footwardv1 "footward.example/footward/proto/footward/v1"
	"footward.example/footward/service/guard"
)

func validator(t testing.TB) *guard.Validator {
	t.Helper()
	v, err := guard.NewValidator()
	require.NoError(t, err)
	return v
}

func bearing() *footwardv1.CheckBearingRequest {
	return &footwardv1.CheckBearingRequest{
		Basis:   footwardv1.On(footwardv1.Basis_BASIS_EUROCODE),
		Contact: &footwardv1.SolidRectangle{SizeXMm: 500, SizeYMm: 500},
		Forces:  &footwardv1.ForcesAtFoot{NKn: -120},
		Support: &footwardv1.Support{Medium: &footwardv1.Support_Given{Given: &footwardv1.GivenPressure{
			PressureKpa: 640, Source: "a test", Medium: footwardv1.GivenMedium_GIVEN_MEDIUM_OTHER,
		}}},
	}
}

func TestViolationsSpeakADesignersWords(t *testing.T) {
	v := validator(t)
	assert.Nil(t, v.Violations(bearing()))
	for _, c := range []struct {
		change      func(*footwardv1.CheckBearingRequest)
		field, text string
		reason      footwardv1.FieldReason
	}{
		{func(m *footwardv1.CheckBearingRequest) { m.Contact.SizeXMm = -3 }, "contact.size_x_mm",
			"is -3 mm; must be greater than 0 and at most 5000 mm", footwardv1.FieldReason_FIELD_REASON_OUT_OF_RANGE},
		{func(m *footwardv1.CheckBearingRequest) { m.Contact.SizeXMm = math.NaN() }, "contact.size_x_mm",
			"is NaN mm; must be finite; must be greater than 0 and at most 5000 mm", footwardv1.FieldReason_FIELD_REASON_OUT_OF_RANGE},
		{func(m *footwardv1.CheckBearingRequest) { m.Contact = nil }, "contact", "is required",
			footwardv1.FieldReason_FIELD_REASON_MISSING},
		{func(m *footwardv1.CheckBearingRequest) { m.Support.Medium = nil }, "support.medium", "is required",
			footwardv1.FieldReason_FIELD_REASON_MISSING},
		{func(m *footwardv1.CheckBearingRequest) { m.Basis.Family = nil }, "basis.family", "is required",
			footwardv1.FieldReason_FIELD_REASON_MISSING},
		{func(m *footwardv1.CheckBearingRequest) { m.Support.GetGiven().Medium = 0 }, "support.given.medium",
			"must be stated: one of GIVEN_MEDIUM_GRANULAR_FILL, GIVEN_MEDIUM_OTHER", footwardv1.FieldReason_FIELD_REASON_MISSING},
		{func(m *footwardv1.CheckBearingRequest) { m.Support.GetGiven().Medium = 9 }, "support.given.medium",
			"must be one of GIVEN_MEDIUM_GRANULAR_FILL, GIVEN_MEDIUM_OTHER", footwardv1.FieldReason_FIELD_REASON_UNKNOWN_VALUE},
		{func(m *footwardv1.CheckBearingRequest) { m.Label = strings.Repeat("x", 201) }, "label",
			"is a text of 201 characters; must be at most 200 characters", footwardv1.FieldReason_FIELD_REASON_COUNT},
		{func(m *footwardv1.CheckBearingRequest) { m.Support.GetGiven().Source = "" }, "support.given.source",
			"is a text of 0 characters; must be at least 3 characters", footwardv1.FieldReason_FIELD_REASON_MISSING},
	} {
		m := bearing()
		c.change(m)
		got := v.Violations(m)
		if assert.Len(t, got, 1, c.field) {
			assert.Equal(t, c.field, got[0].GetField())
			assert.Equal(t, c.text, got[0].GetDescription(), c.field)
			assert.Equal(t, c.reason, got[0].GetReason(), c.field)
		}
	}
}

func TestEveryFieldIsNamedAtOnce(t *testing.T) {
	m := bearing()
	m.Contact.SizeXMm, m.Contact.SizeYMm, m.Forces.NKn, m.Detail = 0, math.Inf(1), 1e9, 77
	var fields []string
	for _, v := range validator(t).Violations(m) {
		fields = append(fields, v.GetField())
	}
	assert.ElementsMatch(t, []string{"contact.size_x_mm", "contact.size_y_mm", "forces.n_kn", "detail"}, fields)
}

func TestBatchIsCountedButItsItemsAreLeftToThemselves(t *testing.T) {
	v := validator(t)
	got := v.Violations(&footwardv1.CheckManyRequest{})
	require.Len(t, got, 1)
	assert.Equal(t, "items", got[0].GetField())
	assert.Equal(t, footwardv1.FieldReason_FIELD_REASON_COUNT, got[0].GetReason())
	assert.Nil(t, v.Violations(&footwardv1.CheckManyRequest{Items: []*footwardv1.CheckItem{{}}}))
}

func TestStatusCarriesFieldsAndReason(t *testing.T) {
	err := guard.InvalidArgument([]*footwardv1.FieldViolation{
		{Field: "weld.leg_mm", Description: "is -1 mm", Reason: footwardv1.FieldReason_FIELD_REASON_OUT_OF_RANGE},
		{Field: "run", Description: "is required", Reason: footwardv1.FieldReason_FIELD_REASON_MISSING},
	})
	s := status.Convert(err)
	assert.Equal(t, codes.InvalidArgument, s.Code())
	assert.Equal(t, "weld.leg_mm: is -1 mm (and 1 more field)", s.Message())
	require.Len(t, s.Details(), 2)
	bad := s.Details()[0].(*errdetails.BadRequest)
	assert.Equal(t, "FIELD_REASON_MISSING", bad.GetFieldViolations()[1].GetReason())
	info := s.Details()[1].(*errdetails.ErrorInfo)
	assert.Equal(t, "FIELDS_REFUSED", info.GetReason())
}

// TestStatusFitsIntoTheTrailers: clients give up on trailers above 8 KiB.
func TestStatusFitsIntoTheTrailers(t *testing.T) {
	for _, length := range []int{1, 100, 20000} {
		var many []*footwardv1.FieldViolation
		for i := range 800 {
			many = append(many, &footwardv1.FieldViolation{
				Field: fmt.Sprintf("group.segments[%d].x1_mm", i), Description: strings.Repeat("x", length),
				Reason: footwardv1.FieldReason_FIELD_REASON_OUT_OF_RANGE,
			})
		}
		s := status.Convert(guard.InvalidArgument(many))
		assert.Contains(t, s.Message(), "799 more fields")
		assert.NotEmpty(t, s.Details()[0].(*errdetails.BadRequest).GetFieldViolations())
		if length < 1000 {
			assert.Less(t, proto.Size(s.Proto())*4/3, 8<<10)
		}
	}
}

func TestPanicBecomesAnIDThatLeadsToTheStack(t *testing.T) {
	var out bytes.Buffer
	var counted tally
	log := slog.New(slog.NewTextHandler(&out, nil))
	_, err := guard.RecoverUnary(log, &counted)(context.Background(), nil, &grpc.UnaryServerInfo{FullMethod: "/a/Unary"},
		func(context.Context, any) (any, error) { panic("secret") })
	streamed := guard.RecoverStream(log, &counted)(nil, stream{}, &grpc.StreamServerInfo{FullMethod: "/a/Stream"},
		func(any, grpc.ServerStream) error { panic("secret") })
	for _, err := range []error{err, streamed} {
		assert.Equal(t, codes.Internal, status.Code(err))
		assert.NotContains(t, err.Error(), "secret")
		id := regexp.MustCompile(`id (\w{20,})`).FindStringSubmatch(err.Error())
		require.Len(t, id, 2)
		assert.Contains(t, out.String(), "id="+id[1])
	}
	assert.Contains(t, out.String(), "guard_test.go")
	assert.Contains(t, out.String(), "/a/Stream")

	_, err = guard.RecoverUnary(log, &counted)(context.Background(), nil, &grpc.UnaryServerInfo{},
		func(context.Context, any) (any, error) { return nil, errors.New("own") })
	assert.EqualError(t, err, "own")
	assert.Equal(t, int64(2), counted.panics.Load())
}

// tally counts in a test.
type tally struct {
	panics atomic.Int64
	mu     sync.Mutex
	away   map[footwardv1.CallReason]int
}

func (c *tally) Panicked() { c.panics.Add(1) }

func (c *tally) TurnedAway(reason footwardv1.CallReason) {
	c.mu.Lock()
	defer c.mu.Unlock()
	if c.away == nil {
		c.away = map[footwardv1.CallReason]int{}
	}
	c.away[reason]++
}

type stream struct{ grpc.ServerStream }

func (stream) Context() context.Context { return context.Background() }

func BenchmarkViolations(b *testing.B) {
	v, m := validator(b), bearing()
	b.ReportAllocs()
	for b.Loop() {
		if v.Violations(m) != nil {
			b.Fatal("refused")
		}
	}
}

// TestElementsOfListsAreDescribedToo: they have no field of their own.
func TestElementsOfListsAreDescribedToo(t *testing.T) {
	got := validator(t).Violations(&footwardv1.SizeColumnBaseRequest{
		Basis: bearing().GetBasis(), Base: nil,
		Offer: &footwardv1.SizeOffer{ThicknessMm: []float64{10, -3}, Rods: []*footwardv1.RodOffer{{Thread: ""}}, ThroatMm: []float64{math.NaN()}},
	})
	described := map[string]string{}
	for _, v := range got {
		described[v.GetField()] = v.GetDescription()
	}
	assert.Equal(t, "is -3 mm; must be greater than 0 and at most 300 mm", described["offer.thickness_mm[1]"])
	assert.Equal(t, "is a text of 0 characters; must be at least 1 characters", described["offer.rods[0].thread"])
	assert.Contains(t, described["offer.throat_mm[0]"], "must be finite")
	assert.Equal(t, "is required", described["loads"])
}

// TestEveryRequestOfTheContractCanBeHeldAgainstItsSchema walks the services.
func TestEveryRequestOfTheContractCanBeHeldAgainstItsSchema(t *testing.T) {
	v, methods := validator(t), 0
	protoregistry.GlobalFiles.RangeFilesByPackage("footward.v1", func(f protoreflect.FileDescriptor) bool {
		for i := range f.Services().Len() {
			if f.Services().Get(i).Name() == "CatalogService" {
				continue // its requests are empty and not looked at
			}
			all := f.Services().Get(i).Methods()
			for k := range all.Len() {
				of, err := protoregistry.GlobalTypes.FindMessageByName(all.Get(k).Input().FullName())
				require.NoError(t, err)
				for _, violation := range v.Violations(of.New().Interface()) {
					assert.NotEmpty(t, violation.GetField(), "%s: %s", all.Get(k).FullName(), violation.GetDescription())
				}
				methods++
			}
		}
		return true
	})
	assert.Greater(t, methods, 14)
}

// TestNothingOnTheWireIsATimeOfDay: deadlines travel as what is left, and no message
// holds a date, so clocks may differ.
func TestNothingOnTheWireIsATimeOfDay(t *testing.T) {
	fields := 0
	protoregistry.GlobalFiles.RangeFilesByPackage("footward.v1", func(f protoreflect.FileDescriptor) bool {
		for i := range f.Messages().Len() {
			all := f.Messages().Get(i).Fields()
			for k := range all.Len() {
				fields++
				if m := all.Get(k).Message(); m != nil {
					assert.NotContains(t, m.FullName(), "google.protobuf", all.Get(k).FullName())
				}
			}
		}
		return true
	})
	assert.Greater(t, fields, 400)
}
