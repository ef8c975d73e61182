package guard_test

import (
	"context"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"google.golang.org/grpc/codes"
	"google.golang.org/grpc/status"
	"google.golang.org/protobuf/proto"

	footwardv1 "footward.example/footward/proto/footward/v1"
	"footward.example/footward/service/guard"
)

func fault(field string) *footwardv1.FieldViolation {
	return &footwardv1.FieldViolation{Field: field, Description: "is wrong", Reason: footwardv1.FieldReason_FIELD_REASON_UNKNOWN_VALUE}
}

func TestWhatCouldNotBeReadGoesWithTheMessage(t *testing.T) {
	m := &footwardv1.Plate{SizeXMm: 3}
	assert.Nil(t, guard.Unread(m))
	require.NoError(t, guard.MarkUnread(m, []*footwardv1.FieldViolation{fault("a"), fault("b")}))
	wire, err := proto.Marshal(m)
	require.NoError(t, err)
	again := &footwardv1.Plate{}
	require.NoError(t, proto.Unmarshal(wire, again))
	got := guard.Unread(again)
	require.Len(t, got, 2)
	assert.True(t, proto.Equal(fault("a"), got[0]))
	assert.True(t, proto.Equal(fault("b"), got[1]))
}

// TestFieldsOfALaterContractAreNotTakenForFaults: what a newer caller sends beside
// is no text that could not be read.
func TestFieldsOfALaterContractAreNotTakenForFaults(t *testing.T) {
	m := &footwardv1.Plate{}
	m.ProtoReflect().SetUnknown([]byte{0x98, 0x3f, 1, 0xa2, 0x3f, 1, 'x'}) // fields 1011 and 1012
	assert.Nil(t, guard.Unread(m))
}

// TestSchemaIsToldBesideWhatCouldNotBeRead, but not of the same fields.
func TestSchemaIsToldBesideWhatCouldNotBeRead(t *testing.T) {
	v, err := guard.NewValidator()
	require.NoError(t, err)
	fields := func(m proto.Message) (out []string) {
		for _, f := range v.Violations(m) {
			out = append(out, f.GetField())
		}
		return out
	}
	m := &footwardv1.CheckBearingRequest{Contact: &footwardv1.SolidRectangle{}, Forces: &footwardv1.ForcesAtFoot{}}
	assert.Equal(t, []string{"basis", "contact.size_x_mm", "contact.size_y_mm", "support"}, fields(m))
	require.NoError(t, guard.MarkUnread(m, []*footwardv1.FieldViolation{fault("contact"), fault("suport"), fault("basis.eurocode")}))
	assert.Equal(t, []string{"contact", "suport", "basis.eurocode", "support"}, fields(m))

	whole := &footwardv1.CheckBearingRequest{}
	require.NoError(t, guard.MarkUnread(whole, []*footwardv1.FieldViolation{fault("")}))
	assert.Equal(t, []string{""}, fields(whole))
	assert.EqualError(t, guard.InvalidArgument(v.Violations(whole)), "rpc error: code = InvalidArgument desc = is wrong")
}

func TestNoHandlerAnswersWhatWasReadInPart(t *testing.T) {
	handler := func(context.Context, any) (any, error) { return "answer", nil }
	m := &footwardv1.ListSteelsRequest{}
	answer, err := guard.RefuseUnread(t.Context(), m, nil, handler)
	require.NoError(t, err)
	assert.Equal(t, "answer", answer)
	require.NoError(t, guard.MarkUnread(m, []*footwardv1.FieldViolation{fault("luck")}))
	answer, err = guard.RefuseUnread(t.Context(), m, nil, handler)
	assert.Nil(t, answer)
	assert.Equal(t, codes.InvalidArgument, status.Code(err))
	assert.ErrorContains(t, err, "luck: is wrong")
}
