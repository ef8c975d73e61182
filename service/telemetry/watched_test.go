package telemetry_test

import (
	"bytes"
	"context"
	"io"
	"log/slog"
	"net"
	"slices"
	"sync"
	"testing"
	"time"

	"github.com/prometheus/client_golang/prometheus"
	dto "github.com/prometheus/client_model/go"
	"github.com/stretchr/testify/require"
	"go.uber.org/goleak"
	"google.golang.org/grpc"
	"google.golang.org/grpc/codes"
	"google.golang.org/grpc/credentials/insecure"
	"google.golang.org/grpc/metadata"
	"google.golang.org/grpc/status"
	"google.golang.org/grpc/test/bufconn"
	"google.golang.org/protobuf/types/known/wrapperspb"

	"footward.example/footward/service/guard"
	"footward.example/footward/service/telemetry"
)

func TestMain(m *testing.M) { goleak.VerifyTestMain(m) }

// watched is a server with one unary and one streaming method, under the watch.
type watched struct {
	*grpc.ClientConn
	registry *prometheus.Registry
	log      *lines
}

// lines is a log that may be read while it is written.
type lines struct {
	mu  sync.Mutex
	out bytes.Buffer
}

func (l *lines) Write(b []byte) (int, error) {
	l.mu.Lock()
	defer l.mu.Unlock()
	return l.out.Write(b)
}

// take returns what was written since it was last asked.
func (l *lines) take() string {
	l.mu.Lock()
	defer l.mu.Unlock()
	defer l.out.Reset()
	return l.out.String()
}

const (
	doMethod     = "/test.Thing/Do"
	streamMethod = "/test.Thing/Talk"
	most         = 1000 // bytes of a message
	soon         = 10 * time.Second
)

func watch(t *testing.T, level slog.Level, do func(context.Context, string) (string, error), options ...grpc.DialOption) *watched {
	t.Helper()
	w := &watched{registry: prometheus.NewRegistry(), log: &lines{}}
	metrics, err := telemetry.New(w.registry)
	require.NoError(t, err)
	log := telemetry.Logger(slog.New(slog.NewTextHandler(w.log, &slog.HandlerOptions{Level: level})))
	calls := telemetry.NewCalls(log, metrics, nil)
	s := grpc.NewServer(telemetry.Unknown(), grpc.MaxRecvMsgSize(most), grpc.ChainUnaryInterceptor(guard.RecoverUnary(log, metrics)),
		grpc.ChainStreamInterceptor(calls.Stream(), guard.RecoverStream(log, metrics)))
	calls.Watch(s).RegisterService(&grpc.ServiceDesc{
		ServiceName: "test.Thing", HandlerType: (*any)(nil),
		Methods: []grpc.MethodDesc{{MethodName: "Do", Handler: func(server any, ctx context.Context, decode func(any) error, interceptor grpc.UnaryServerInterceptor) (any, error) {
			m := &wrapperspb.StringValue{}
			if err := decode(m); err != nil {
				return nil, err
			}
			return interceptor(ctx, m, &grpc.UnaryServerInfo{Server: server, FullMethod: doMethod}, func(ctx context.Context, m any) (any, error) {
				answer, err := do(ctx, m.(*wrapperspb.StringValue).GetValue())
				return wrapperspb.String(answer), err
			})
		}}},
		Streams: []grpc.StreamDesc{{StreamName: "Talk", ClientStreams: true, ServerStreams: true, Handler: func(_ any, stream grpc.ServerStream) error {
			for {
				m := &wrapperspb.StringValue{}
				if err := stream.RecvMsg(m); err != nil {
					if err == io.EOF {
						return nil
					}
					return err
				}
				answer, err := do(stream.Context(), m.GetValue())
				if err != nil {
					return err
				}
				if err := stream.SendMsg(wrapperspb.String(answer)); err != nil {
					return err
				}
			}
		}}},
	}, nil)
	pipe := bufconn.Listen(1 << 16)
	go func() { _ = s.Serve(pipe) }()
	t.Cleanup(s.Stop)
	w.ClientConn, err = grpc.NewClient("passthrough:///test", append(options, grpc.WithTransportCredentials(insecure.NewCredentials()),
		grpc.WithContextDialer(func(ctx context.Context, _ string) (net.Conn, error) { return pipe.DialContext(ctx) }))...)
	require.NoError(t, err)
	t.Cleanup(func() { _ = w.Close() })
	return w
}

// call calls Do with metadata, and returns what came back beside the answer.
func (w *watched) call(t *testing.T, text string, sent ...string) (header, trailer metadata.MD, err error) {
	t.Helper()
	ctx := metadata.AppendToOutgoingContext(t.Context(), sent...)
	err = w.Invoke(ctx, doMethod, wrapperspb.String(text), &wrapperspb.StringValue{}, grpc.Header(&header), grpc.Trailer(&trailer))
	return header, trailer, err
}

// value is that of the only series of a metric that has all these label values.
func (w *watched) value(t *testing.T, name string, labels ...string) float64 {
	t.Helper()
	m := w.series(t, name, labels...)
	return m.GetCounter().GetValue() + m.GetGauge().GetValue() + float64(m.GetHistogram().GetSampleCount())
}

func (w *watched) series(t *testing.T, name string, labels ...string) *dto.Metric {
	t.Helper()
	families, err := w.registry.Gather()
	require.NoError(t, err)
	for _, f := range families {
		if f.GetName() != name {
			continue
		}
		for _, m := range f.GetMetric() {
			if !slices.ContainsFunc(labels, func(want string) bool {
				return !slices.ContainsFunc(m.GetLabel(), func(l *dto.LabelPair) bool { return l.GetValue() == want })
			}) {
				return m
			}
		}
	}
	require.Fail(t, "no such series", "%s %v", name, labels)
	return nil
}

// outcome is a handler that ends as its request says.
func outcome(_ context.Context, text string) (string, error) {
	switch text {
	case "panic":
		panic("private")
	case "fault":
		return "", status.Error(codes.Internal, "private")
	case "refuse":
		return "", status.Error(codes.InvalidArgument, "private")
	case "full":
		return "", status.Error(codes.ResourceExhausted, "private")
	case "late":
		return "", context.DeadlineExceeded
	}
	return "answer", nil
}
