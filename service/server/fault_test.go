package server

import (
	"context"
	"regexp"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"google.golang.org/grpc"
	"google.golang.org/grpc/codes"
	"google.golang.org/grpc/status"

	footwardv1 "footward.example/footward/proto/footward/v1"
	"footward.example/footward/service/api"
)

// TestPanicIsAnsweredByAnID has the contract's own handlers under another name
// and without their rules, so that whatever the quick rules do not pass panics.
func TestPanicIsAnsweredByAnID(t *testing.T) {
	const name = "panicking.CheckService"
	h := start(t, production(), func(s *grpc.Server) {
		d := footwardv1.CheckService_ServiceDesc
		d.ServiceName = name
		s.RegisterService(&d, api.NewCheck(nil, nil, 1<<20))
	})
	c := h.dial(t)
	bad := bearing()
	bad.Contact.SizeXMm = -4711
	items := append(batch(t, 100).GetItems(), &footwardv1.CheckItem{Check: &footwardv1.CheckItem_Bearing{Bearing: bad}})
	ask := map[string]func() error{
		"CheckBearing": func() error {
			return c.Conn().Invoke(t.Context(), "/"+name+"/CheckBearing", bad, &footwardv1.CheckBearingResponse{})
		},
		"CheckMany": func() error {
			return c.Conn().Invoke(t.Context(), "/"+name+"/CheckMany", &footwardv1.CheckManyRequest{Items: items}, &footwardv1.CheckManyResponse{})
		},
		"StreamChecks": func() error {
			ctx, cancel := context.WithCancel(t.Context())
			defer cancel()
			s, err := c.Conn().NewStream(ctx, &grpc.StreamDesc{ClientStreams: true, ServerStreams: true}, "/"+name+"/StreamChecks")
			require.NoError(t, err)
			require.NoError(t, s.SendMsg(&footwardv1.StreamChecksRequest{Items: items}))
			return s.RecvMsg(&footwardv1.StreamChecksResponse{})
		},
	}
	before := h.value(t, "footward_panics_total")
	for method, call := range ask {
		err := call()
		assert.Equal(t, codes.Internal, status.Code(err), method)
		assert.NotContains(t, err.Error(), ".go", "no stack")
		id := regexp.MustCompile(`id (\w{20,})`).FindStringSubmatch(err.Error())
		require.Len(t, id, 2, method)
		assert.Contains(t, h.log.String(), id[1])
		assert.Contains(t, h.log.String(), "/"+method)
		_, err = c.CheckBearing(t.Context(), bearing())
		assert.NoError(t, err, "the next call is fine")
	}
	assert.Equal(t, before+3, h.value(t, "footward_panics_total"))
	assert.Contains(t, h.log.String(), "validate.go", "the stack is in the log")
	assert.NotContains(t, h.log.String(), "4711", "what was sent is not")
	assert.Zero(t, h.value(t, "footward_calls_under_way"))
}
