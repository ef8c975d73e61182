package client_test

import (
	"context"
	"errors"
	"fmt"
	"io"
	"strings"
	"sync/atomic"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"google.golang.org/genproto/googleapis/rpc/errdetails"
	"google.golang.org/grpc"
	"google.golang.org/grpc/codes"
	"google.golang.org/grpc/status"
	"google.golang.org/protobuf/types/known/durationpb"

	"footward.example/footward/client"
	footwardv1 "footward.example/footward/proto/footward/v1"
)

// full is how a service answers that has too much to do.
func full(t *testing.T, delay time.Duration) error {
	t.Helper()
	s, err := status.New(codes.ResourceExhausted, "overloaded").WithDetails(&errdetails.RetryInfo{RetryDelay: durationpb.New(delay)})
	require.NoError(t, err)
	return s.Err()
}

func TestTurnedAwayCallIsAnsweredTheSecondTime(t *testing.T) {
	away := full(t, 10*time.Millisecond)
	f := &fake{answer: func(_ context.Context, call int64) error {
		if call%2 == 1 {
			return away
		}
		return nil
	}}
	_, address := serve(t, f, "127.0.0.1:0")
	_, err := dial(t, address).CheckWeld(t.Context(), &footwardv1.CheckWeldRequest{})
	require.NoError(t, err)
	assert.EqualValues(t, 2, f.calls.Load())

	_, err = dial(t, address, client.WithoutAskingLater()).CheckWeld(t.Context(), &footwardv1.CheckWeldRequest{})
	assert.EqualValues(t, 3, f.calls.Load())
	delay, asked := client.RetryDelay(fmt.Errorf("shoe: %w", err))
	assert.True(t, asked)
	assert.Equal(t, 10*time.Millisecond, delay, "the caller is told")
}

func TestRetryDelayIsThatOfACallTurnedAway(t *testing.T) {
	for _, err := range []error{nil, errors.New("no"), status.Error(codes.ResourceExhausted, "too large")} {
		_, asked := client.RetryDelay(err)
		assert.False(t, asked, "%v", err)
	}
}

type checks = grpc.BidiStreamingServer[footwardv1.StreamChecksRequest, footwardv1.StreamChecksResponse]

// streams is a service that ends its first streams by err, each after it has read
// and answered some messages, and answers the others to their end.
type streams struct {
	footwardv1.UnimplementedCheckServiceServer
	away, read, answered int
	err                  error
	opened               atomic.Int64
}

func (s *streams) StreamChecks(stream checks) error {
	turn := s.opened.Add(1) <= int64(s.away)
	for n := 0; ; n++ {
		if turn && n >= s.read {
			return s.err
		}
		m, err := stream.Recv()
		if errors.Is(err, io.EOF) && !turn {
			return nil
		}
		if err != nil {
			return err
		}
		if turn && n >= s.answered {
			continue
		}
		if err := stream.Send(&footwardv1.StreamChecksResponse{Outcomes: []*footwardv1.CheckOutcome{{
			Outcome: &footwardv1.CheckOutcome_Result{Result: &footwardv1.CheckResult{Label: label(m)}},
		}}}); err != nil {
			return err
		}
	}
}

func label(m *footwardv1.StreamChecksRequest) string { return m.GetItems()[0].GetWeld().GetLabel() }

// labelled is a message of a stream with one check.
func labelled(l string) *footwardv1.StreamChecksRequest {
	return &footwardv1.StreamChecksRequest{Items: []*footwardv1.CheckItem{
		{Check: &footwardv1.CheckItem_Weld{Weld: &footwardv1.CheckWeldRequest{Label: l}}},
	}}
}

func TestTurnedAwayStreamIsOpenedOnceMoreBeforeItsFirstAnswer(t *testing.T) {
	const messages = 40
	away := full(t, 20*time.Millisecond)
	for _, c := range []struct {
		name                 string
		away, read, answered int
		err                  error
		pad                  int // bytes that each message has more
		options              []client.Option
		opened               int64
		answers              int
		want                 codes.Code
	}{
		{"never", 0, 0, 0, nil, 0, nil, 1, messages, codes.OK},
		{"at once", 1, 0, 0, away, 0, nil, 2, messages, codes.OK},
		{"after some were read", 1, 5, 0, away, 0, nil, 2, messages, codes.OK},
		{"with much sent", 1, 10, 0, away, 20 << 10, nil, 2, messages, codes.OK},
		{"twice", 2, 0, 0, away, 0, nil, 2, 0, codes.ResourceExhausted},
		{"after an answer", 1, 5, 1, away, 0, nil, 1, 1, codes.ResourceExhausted},
		{"with more sent than is kept", 1, 10, 0, away, 200 << 10, nil, 1, 0, codes.ResourceExhausted},
		{"not asked to", 1, 0, 0, status.Error(codes.ResourceExhausted, "too large"), 0, nil, 1, 0, codes.ResourceExhausted},
		{"left out", 1, 0, 0, away, 0, []client.Option{client.WithoutAskingLater()}, 1, 0, codes.ResourceExhausted},
	} {
		pad := strings.Repeat("x", c.pad)
		send := func(stream footwardv1.CheckService_StreamChecksClient) {
			for i := range messages {
				if err := stream.Send(labelled(fmt.Sprint(i, pad))); err != nil {
					assert.ErrorIs(t, err, io.EOF)
					return
				}
			}
			assert.NoError(t, stream.CloseSend())
		}
		receive := func(t *testing.T, stream footwardv1.CheckService_StreamChecksClient) (n int, err error) {
			t.Helper()
			for ; ; n++ {
				m, err := stream.Recv()
				if errors.Is(err, io.EOF) {
					return n, nil
				}
				if err != nil {
					return n, err
				}
				require.Equal(t, fmt.Sprint(n, pad), m.GetOutcomes()[0].GetResult().GetLabel(), "each once, in order")
			}
		}
		for way, together := range map[string]bool{"sent first": false, "sent meanwhile": true} {
			if c.pad > 0 && !together && c.want == codes.OK {
				continue // nobody receives, so sending ends where flow control holds it
			}
			t.Run(c.name+", "+way, func(t *testing.T) {
				service := &streams{away: c.away, read: c.read, answered: c.answered, err: c.err}
				_, address := serve(t, service, "127.0.0.1:0")
				stream, err := dial(t, address, c.options...).StreamChecks(t.Context())
				require.NoError(t, err)
				sent := make(chan struct{})
				go func() { defer close(sent); send(stream) }()
				if !together {
					<-sent
				}
				n, err := receive(t, stream)
				assert.Equal(t, c.want, status.Code(err), "%v", err)
				assert.Equal(t, c.answers, n)
				assert.Equal(t, c.opened, service.opened.Load())
				<-sent
			})
		}
	}
}

func TestStreamThatWaitsEndsWhenTheCallerGivesUp(t *testing.T) {
	service := &streams{away: 1, err: full(t, 30*time.Second)}
	_, address := serve(t, service, "127.0.0.1:0")
	ctx, cancel := context.WithCancel(t.Context())
	stream, err := dial(t, address).StreamChecks(ctx)
	require.NoError(t, err)
	sent := make(chan struct{})
	go func() {
		defer close(sent)
		for stream.Send(labelled("")) == nil {
			time.Sleep(time.Millisecond)
		}
	}()
	go func() {
		for service.opened.Load() == 0 {
			time.Sleep(time.Millisecond)
		}
		time.Sleep(50 * time.Millisecond) // it is turned away, most likely
		cancel()
	}()
	_, err = stream.Recv()
	assert.Equal(t, codes.Canceled, status.Code(err), "%v", err)
	<-sent
	assert.EqualValues(t, 1, service.opened.Load())
}
