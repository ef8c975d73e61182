package local_test

import (
	"context"
	"sync"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"google.golang.org/grpc/codes"
	"google.golang.org/grpc/status"

	"footward.example/footward/client"
	"footward.example/footward/client/local"
	footwardv1 "footward.example/footward/proto/footward/v1"
)

func bearing(kilonewtons float64) *footwardv1.CheckBearingRequest {
	return &footwardv1.CheckBearingRequest{
		Basis:   footwardv1.On(footwardv1.Basis_BASIS_EUROCODE),
		Contact: &footwardv1.SolidRectangle{SizeXMm: 500, SizeYMm: 500},
		Forces:  &footwardv1.ForcesAtFoot{NKn: kilonewtons},
		Support: &footwardv1.Support{Medium: &footwardv1.Support_Given{Given: &footwardv1.GivenPressure{
			PressureKpa: 640, Source: "invented for the test", Medium: footwardv1.GivenMedium_GIVEN_MEDIUM_GRANULAR_FILL,
		}}},
	}
}

func TestAnswersAndRefusesAsTheService(t *testing.T) {
	c, err := local.Start()
	require.NoError(t, err)
	defer func() { assert.NoError(t, c.Close()) }()

	r, err := c.CheckBearing(t.Context(), bearing(-120))
	require.NoError(t, err)
	assert.Equal(t, footwardv1.Verdict_VERDICT_PASS, r.GetResult().GetVerdict())
	assert.InDelta(t, 0.75, r.GetResult().GetGoverningUtilization(), 1e-9)
	assert.NotEmpty(t, r.GetProvenance().GetCaution())

	bad := bearing(-120)
	bad.Contact.SizeXMm = -1
	_, err = c.CheckBearing(t.Context(), bad)
	assert.Equal(t, codes.InvalidArgument, status.Code(err))
	violations := client.Violations(err)
	require.Len(t, violations, 1)
	assert.Equal(t, "contact.size_x_mm", violations[0].GetField())
	assert.Equal(t, footwardv1.FieldReason_FIELD_REASON_OUT_OF_RANGE, violations[0].GetReason())

	steels, err := c.ListSteels(t.Context(), &footwardv1.ListSteelsRequest{})
	require.NoError(t, err)
	assert.NotEmpty(t, steels.GetSteels())
}

func TestSeveralServicesLiveSideBySide(t *testing.T) {
	var all sync.WaitGroup
	for range 4 {
		all.Go(func() {
			c, err := local.Start()
			if !assert.NoError(t, err) {
				return
			}
			_, err = c.CheckBearing(context.Background(), bearing(-120))
			assert.NoError(t, err)
			assert.NoError(t, c.Close())
			_, err = c.CheckBearing(context.Background(), bearing(-120))
			assert.Error(t, err, "it is closed")
		})
	}
	all.Wait()
}
