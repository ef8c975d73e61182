package telemetry_test

import (
	"context"
	"log/slog"
	"strings"
	"testing"
	"time"

	"github.com/prometheus/client_golang/prometheus/testutil"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"google.golang.org/grpc"
	"google.golang.org/grpc/codes"
	"google.golang.org/grpc/mem"
	"google.golang.org/grpc/metadata"
	"google.golang.org/grpc/status"
	"google.golang.org/protobuf/types/known/wrapperspb"

	"footward.example/footward/service/telemetry"
)

func TestAnswersCarryTheIDThatTheLogHas(t *testing.T) {
	w := watch(t, slog.LevelInfo, outcome)
	const key = telemetry.RequestIDKey

	header, trailer, err := w.call(t, "fine", key, "job-7/part=3")
	require.NoError(t, err)
	assert.Equal(t, []string{"job-7/part=3"}, header.Get(key))
	assert.Equal(t, []string{"job-7/part=3"}, trailer.Get(key))
	assert.Empty(t, w.log.take(), "a call that was answered is no news")

	header, trailer, err = w.call(t, "refuse", key, "job-8")
	require.Equal(t, codes.InvalidArgument, status.Code(err))
	assert.Equal(t, []string{"job-8"}, trailer.Get(key))
	assert.Empty(t, header.Get(key), "a header keeps clients from asking again")
	assert.Contains(t, w.log.take(), "request_id=job-8")

	for _, bad := range [][]string{nil, {key, "a b"}, {key, strings.Repeat("x", 200)}, {key, "one", key, "two"}} {
		_, trailer, err = w.call(t, "refuse", bad...)
		require.Equal(t, codes.InvalidArgument, status.Code(err))
		require.Len(t, trailer.Get(key), 1, "%v", bad)
		made := trailer.Get(key)[0]
		assert.Len(t, made, 26)
		line := w.log.take()
		assert.Contains(t, line, "request_id="+made)
		if len(bad) > 0 {
			assert.NotContains(t, line, bad[1])
		}
	}

	header, trailer, err = w.call(t, "fine")
	require.NoError(t, err)
	assert.Empty(t, append(header.Get(key), trailer.Get(key)...), "there is no line to be found by it")
}

func TestEveryCallIsLoggedUnderItsIDWhenAsked(t *testing.T) {
	w := watch(t, slog.LevelDebug, outcome)
	_, trailer, err := w.call(t, "fine", "traceparent", sampled)
	require.NoError(t, err)
	line := w.log.take()
	require.Len(t, trailer.Get(telemetry.RequestIDKey), 1)
	assert.Contains(t, line, "level=DEBUG msg=call method="+doMethod+" code=OK")
	assert.Contains(t, line, "request_id="+trailer.Get(telemetry.RequestIDKey)[0])
	assert.Contains(t, line, "trace_id="+traceID)
	assert.NotContains(t, line, "fine")
}

func TestLogLevelFollowsTheFault(t *testing.T) {
	for text, want := range map[string]struct {
		level string
		code  codes.Code
	}{
		"fine": {"DEBUG", codes.OK}, "refuse": {"INFO", codes.InvalidArgument}, "late": {"INFO", codes.DeadlineExceeded},
		"full":  {"DEBUG", codes.ResourceExhausted},
		"fault": {"ERROR", codes.Internal}, "panic": {"ERROR", codes.Internal},
	} {
		w := watch(t, slog.LevelDebug, outcome)
		_, _, err := w.call(t, text)
		assert.Equal(t, want.code, status.Code(err), text)
		log := w.log.take()
		assert.Contains(t, log, "level="+want.level+" msg=call", text)
		assert.Contains(t, log, "code="+want.code.String(), text)
		if text != "panic" { // whose line says what it was
			assert.NotContains(t, log, "private")
		}
		assert.Equal(t, 1.0, w.value(t, "grpc_server_handled_total", "Do", want.code.String()))
		assert.Equal(t, 1.0, w.value(t, "grpc_server_handling_seconds", "Do"))
	}
}

func TestPanicsAreCountedAndLoggedUnderTheCallsID(t *testing.T) {
	w := watch(t, slog.LevelInfo, outcome)
	_, _, err := w.call(t, "panic", telemetry.RequestIDKey, "job-9", "traceparent", sampled)
	require.Equal(t, codes.Internal, status.Code(err))
	assert.NotContains(t, err.Error(), "private")
	assert.Equal(t, 1.0, w.value(t, "footward_panics_total"))
	for _, line := range strings.Split(strings.TrimSpace(w.log.take()), "\n") {
		assert.Contains(t, line, "request_id=job-9 trace_id="+traceID)
	}
}

// TestCallsThatAreGivenUpAtTheirDeadlineAreTimeouts: the caller's word that it has
// given up mostly comes before the service's own timer fires.
func TestCallsThatAreGivenUpAtTheirDeadlineAreTimeouts(t *testing.T) {
	w := watch(t, slog.LevelDebug, func(ctx context.Context, text string) (string, error) {
		if deadline, has := ctx.Deadline(); has && text == "late" {
			time.Sleep(time.Until(deadline) - 2*time.Millisecond)
		}
		return "", context.Canceled
	})
	counted := func(code codes.Code) float64 {
		return w.value(t, "grpc_server_handled_total", "Do", code.String())
	}
	ended := func() bool { return w.value(t, "footward_calls_in_flight", "Do") == 0 }
	ask := func(text string, within time.Duration) {
		ctx, cancel := context.WithTimeout(t.Context(), within)
		defer cancel()
		require.Error(t, w.Invoke(ctx, doMethod, wrapperspb.String(text), &wrapperspb.StringValue{}))
		require.Eventually(t, ended, soon, time.Millisecond)
	}
	_, _, err := w.call(t, "left")
	require.Equal(t, codes.Canceled, status.Code(err))
	ask("left", time.Hour)
	assert.Equal(t, 2.0, counted(codes.Canceled), "given up of its own will")
	w.log.take()

	ask("late", 300*time.Millisecond)
	assert.Equal(t, 1.0, counted(codes.DeadlineExceeded))
	assert.Equal(t, 2.0, counted(codes.Canceled))
	assert.Contains(t, w.log.take(), "code=DeadlineExceeded")
}

// TestTheLongestCallsHaveABucket: a call may take 5 minutes.
func TestTheLongestCallsHaveABucket(t *testing.T) {
	w := watch(t, slog.LevelInfo, outcome)
	var bounds []float64
	for _, b := range w.series(t, "grpc_server_handling_seconds", "Do").GetHistogram().GetBucket() {
		bounds = append(bounds, b.GetUpperBound())
	}
	assert.Subset(t, bounds, []float64{30, 60, 120, 300})
}

// bytesCodec sends bytes that are no message.
type bytesCodec struct{}

func (bytesCodec) Name() string { return "proto" }
func (bytesCodec) Marshal(any) (mem.BufferSlice, error) {
	return mem.BufferSlice{mem.SliceBuffer("\xff\xff\xff")}, nil
}
func (bytesCodec) Unmarshal(mem.BufferSlice, any) error { return nil }

// TestCallsThatNeverReachAHandlerAreCounted: gRPC refuses these before it comes to
// interceptors.
func TestCallsThatNeverReachAHandlerAreCounted(t *testing.T) {
	w := watch(t, slog.LevelInfo, outcome)
	_, _, err := w.call(t, strings.Repeat("x", most))
	require.Equal(t, codes.ResourceExhausted, status.Code(err))
	// gRPC answers before the call ends here.
	ended := func(method, code string) {
		t.Helper()
		require.Eventually(t, func() bool { return w.value(t, "grpc_server_handled_total", method, code) == 1 }, 5*time.Second, time.Millisecond)
	}
	ended("Do", "ResourceExhausted")
	assert.Contains(t, w.log.take(), "level=INFO msg=call method="+doMethod+" code=ResourceExhausted")

	err = w.Invoke(t.Context(), doMethod, wrapperspb.String("x"), &wrapperspb.StringValue{}, grpc.ForceCodecV2(bytesCodec{}))
	require.Equal(t, codes.Internal, status.Code(err))
	ended("Do", "InvalidArgument")
	assert.Contains(t, w.log.take(), "level=INFO msg=call method="+doMethod+" code=InvalidArgument", "the caller's fault")

	stream, err := w.NewStream(t.Context(), &grpc.StreamDesc{ClientStreams: true, ServerStreams: true}, streamMethod, grpc.ForceCodecV2(bytesCodec{}))
	require.NoError(t, err)
	require.NoError(t, stream.SendMsg(wrapperspb.String("x")))
	require.Equal(t, codes.Internal, status.Code(stream.RecvMsg(&wrapperspb.StringValue{})))
	ended("Talk", "InvalidArgument")
	assert.Contains(t, w.log.take(), "level=INFO msg=call method="+streamMethod+" code=InvalidArgument", "on a stream too")
}

// TestCallersThatLeaveAreNoNews: one that opens calls by the hundred and goes away
// must not fill the log.
func TestCallersThatLeaveAreNoNews(t *testing.T) {
	w := watch(t, slog.LevelInfo, outcome)
	ctx, leave := context.WithCancel(t.Context())
	_, err := w.NewStream(ctx, &grpc.StreamDesc{ClientStreams: true}, doMethod) // sends nothing
	require.NoError(t, err)
	require.Eventually(t, func() bool { return w.value(t, "grpc_server_started_total", "Do") == 1 }, soon, time.Millisecond)
	leave()
	require.Eventually(t, func() bool { return w.value(t, "grpc_server_handled_total", "Do", "Canceled") == 1 }, soon, time.Millisecond)
	assert.Equal(t, 0.0, w.value(t, "footward_calls_in_flight", "Do"))
	assert.Empty(t, w.log.take())
}

const (
	traceID = "4bf92f3577b34da6a3ce929d0e0e4736"
	sampled = "00-" + traceID + "-00f067aa0ba902b7-01"
	dropped = "00-" + traceID + "-00f067aa0ba902b7-00"
)

func TestExemplarsLeadToTracesThatAreKept(t *testing.T) {
	w := watch(t, slog.LevelInfo, outcome)
	exemplars := func() (out []string) {
		for _, b := range w.series(t, "grpc_server_handling_seconds", "Do").GetHistogram().GetBucket() {
			for _, l := range b.GetExemplar().GetLabel() {
				out = append(out, l.GetName()+"="+l.GetValue())
			}
		}
		return out
	}
	_, _, err := w.call(t, "fine")
	require.NoError(t, err)
	_, _, err = w.call(t, "fine", "traceparent", dropped)
	require.NoError(t, err)
	assert.Empty(t, exemplars())
	_, _, err = w.call(t, "fine", "traceparent", sampled)
	require.NoError(t, err)
	assert.Equal(t, []string{"trace_id=" + traceID}, exemplars())
}

func TestStreamsAreWatchedToTheirEnd(t *testing.T) {
	w := watch(t, slog.LevelDebug, outcome)
	ctx, cancel := context.WithCancel(metadata.AppendToOutgoingContext(t.Context(), telemetry.RequestIDKey, "job-10"))
	defer cancel()
	stream, err := w.NewStream(ctx, &grpc.StreamDesc{ClientStreams: true, ServerStreams: true}, streamMethod)
	require.NoError(t, err)
	for range 3 {
		require.NoError(t, stream.SendMsg(wrapperspb.String("fine")))
		require.NoError(t, stream.RecvMsg(&wrapperspb.StringValue{}))
	}
	header, err := stream.Header()
	require.NoError(t, err)
	assert.Equal(t, []string{"job-10"}, header.Get(telemetry.RequestIDKey))
	assert.Equal(t, 1.0, w.value(t, "footward_calls_in_flight", "Talk"))
	assert.Equal(t, 1.0, w.value(t, "grpc_server_started_total", "Talk"))

	require.NoError(t, stream.SendMsg(wrapperspb.String("refuse")))
	require.Equal(t, codes.InvalidArgument, status.Code(stream.RecvMsg(&wrapperspb.StringValue{})))
	assert.Equal(t, []string{"job-10"}, stream.Trailer().Get(telemetry.RequestIDKey))
	assert.Equal(t, 0.0, w.value(t, "footward_calls_in_flight", "Talk"))
	assert.Equal(t, 1.0, w.value(t, "grpc_server_handled_total", "Talk", "InvalidArgument"))
	assert.Equal(t, 4.0, w.value(t, "grpc_server_msg_received_total", "Talk"))
	assert.Equal(t, 3.0, w.value(t, "grpc_server_msg_sent_total", "Talk"))
	assert.Contains(t, w.log.take(), "method="+streamMethod+" code=InvalidArgument")
}

// TestFailedCallsMayBeRepeated: a client asks again only while no header came.
func TestFailedCallsMayBeRepeated(t *testing.T) {
	tries := 0
	w := watch(t, slog.LevelDebug, func(context.Context, string) (string, error) {
		if tries++; tries == 1 {
			return "", status.Error(codes.Unavailable, "not now")
		}
		return "now", nil
	}, grpc.WithDefaultServiceConfig(`{"methodConfig": [{"name": [{}], "retryPolicy": {"maxAttempts": 2,
		"initialBackoff": "0.01s", "maxBackoff": "0.01s", "backoffMultiplier": 1, "retryableStatusCodes": ["UNAVAILABLE"]}}]}`))
	_, _, err := w.call(t, "again", telemetry.RequestIDKey, "job-11")
	require.NoError(t, err)
	assert.Equal(t, 2, tries)
}

// TestSeriesOfCallsAreBounded: all exist from the start, and no call makes another.
func TestSeriesOfCallsAreBounded(t *testing.T) {
	w := watch(t, slog.LevelInfo, outcome)
	count := func() int {
		n, err := testutil.GatherAndCount(w.registry, "grpc_server_started_total", "grpc_server_handled_total",
			"grpc_server_handling_seconds", "grpc_server_msg_received_total", "grpc_server_msg_sent_total", "footward_calls_in_flight")
		require.NoError(t, err)
		return n
	}
	const methods, streams, statusCodes = 2 + 1, 1, 17 // and one for what there is not
	want := methods*(statusCodes+3) + streams*2
	require.Equal(t, want, count())
	for _, text := range []string{"fine", "refuse", "panic", "late", "fault"} {
		_, _, _ = w.call(t, text)
	}
	w.log.take()
	for _, name := range []string{"/test.Thing/Other", "/made.up/Name"} {
		err := w.Invoke(t.Context(), name, wrapperspb.String(""), &wrapperspb.StringValue{})
		require.Equal(t, codes.Unimplemented, status.Code(err))
		line := w.log.take()
		assert.Contains(t, line, "method=unknown code=Unimplemented")
		assert.NotContains(t, line, name)
	}
	assert.Equal(t, 2.0, w.value(t, "grpc_server_handled_total", "unknown", "Unimplemented"))
	assert.Equal(t, want, count())

	problems, err := testutil.GatherAndLint(w.registry)
	require.NoError(t, err)
	assert.Empty(t, problems)
}
