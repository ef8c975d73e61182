package api_test

import (
	"context"
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"google.golang.org/genproto/googleapis/rpc/errdetails"
	"google.golang.org/grpc/codes"
	"google.golang.org/grpc/status"
	"google.golang.org/protobuf/proto"

	footwardv1 "footward.example/footward/proto/footward/v1"
	"footward.example/footward/service/api"
)

func batch(n int) *footwardv1.CheckManyRequest {
	m := &footwardv1.CheckManyRequest{}
	for range n {
		m.Items = append(m.Items, &footwardv1.CheckItem{Check: &footwardv1.CheckItem_AnchorRods{AnchorRods: rods(10)}})
	}
	return m
}

// TestAnswersTooLargeForAMessageAreRefusedWithAHint tries limits round the size
// of a real answer.
func TestAnswersTooLargeForAMessageAreRefusedWithAHint(t *testing.T) {
	const items = 500
	m := batch(items)
	whole, err := service(t).CheckMany(context.Background(), m)
	require.NoError(t, err)
	size := 0
	for _, o := range whole.GetOutcomes() {
		size += proto.Size(o)
	}
	for _, c := range []struct {
		limit int
		want  codes.Code
	}{{size, codes.OK}, {size - 1, codes.OutOfRange}, {size / 10, codes.OutOfRange}, {1, codes.OutOfRange}} {
		_, err := api.NewCheck(rules(), nil, c.limit).CheckMany(context.Background(), m)
		assert.Equal(t, c.want, status.Code(err), "%d of %d", c.limit, size)
		if err != nil {
			assert.Contains(t, err.Error(), "send fewer items")
			why := status.Convert(err).Details()[0].(*errdetails.ErrorInfo)
			assert.Equal(t, "ANSWER_TOO_LARGE", why.GetReason())
			at, err := strconv.Atoi(why.GetMetadata()["item"])
			require.NoError(t, err)
			assert.Less(t, at, items)
			// What comes before that item fits.
			_, err = api.NewCheck(rules(), nil, c.limit).CheckMany(context.Background(), batch(at))
			assert.True(t, at == 0 || err == nil, "%v", err)
		}
	}
}

func TestBatchEndsAtItsDeadline(t *testing.T) {
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	_, err := service(t).CheckMany(ctx, batch(2))
	assert.Equal(t, codes.Canceled, status.Code(err))
}

func TestBatchOfTooManyItemsIsRefusedWhole(t *testing.T) {
	_, err := service(t).CheckMany(context.Background(), batch(10001))
	assert.Equal(t, codes.InvalidArgument, status.Code(err))
	refused(t, err)
}

// TestBadItemFailsAlone: in place, with the fields named from the item.
func TestBadItemFailsAlone(t *testing.T) {
	m := batch(3)
	m.Items[1].GetAnchorRods().Plate.ThicknessMm = -1
	m.Items = append(m.Items, &footwardv1.CheckItem{})
	r, err := service(t).CheckMany(context.Background(), m)
	require.NoError(t, err)
	require.Len(t, r.GetOutcomes(), 4)
	for _, i := range []int{0, 2} {
		assert.NotNil(t, r.GetOutcomes()[i].GetResult())
	}
	bad := r.GetOutcomes()[1].GetRefusal().GetViolations()
	require.Len(t, bad, 1)
	assert.Equal(t, "anchor_rods.plate.thickness_mm", bad[0].GetField())
	assert.Equal(t, "check", r.GetOutcomes()[3].GetRefusal().GetViolations()[0].GetField())
	assert.Len(t, r.GetProvenance().GetBases(), 1)
}
