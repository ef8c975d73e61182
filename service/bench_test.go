package main

import (
	"context"
	"fmt"
	"io"
	"log/slog"
	"net"
	"os"
	"path/filepath"
	"runtime/debug"
	"sync"
	"sync/atomic"
	"testing"

	"github.com/prometheus/client_golang/prometheus"
	"github.com/stretchr/testify/require"
	"google.golang.org/grpc"
	"google.golang.org/grpc/credentials/insecure"
	"google.golang.org/protobuf/proto"
	"google.golang.org/protobuf/types/known/wrapperspb"

	"footward.example/footward/client/footward/reading"
	footwardv1 "footward.example/footward/proto/footward/v1"
	"footward.example/footward/service/server"
	"footward.example/footward/service/telemetry"
)

// demoItems returns the checks of the demo.
func demoItems(t testing.TB) (out []*footwardv1.CheckItem) {
	t.Helper()
	files, err := filepath.Glob("../testdata/demo/*.yaml")
	require.NoError(t, err)
	for _, path := range files {
		f, err := os.Open(path)
		require.NoError(t, err)
		items, err := reading.Read(f)
		require.NoError(t, err)
		require.NoError(t, f.Close())
		out = append(out, items[0].Check)
	}
	return out
}

// demo returns the four requests of single parts by kind, at a detail.
func demo(b *testing.B, detail footwardv1.Detail) map[string]*footwardv1.CheckItem {
	b.Helper()
	out := map[string]*footwardv1.CheckItem{}
	for _, i := range demoItems(b) {
		switch c := i.GetCheck().(type) {
		case *footwardv1.CheckItem_Bearing:
			c.Bearing.Detail = detail
			out["bearing"] = i
		case *footwardv1.CheckItem_PlateBending:
			c.PlateBending.Detail = detail
			out["plate_bending"] = i
		case *footwardv1.CheckItem_Weld:
			c.Weld.Detail = detail
			out["weld"] = i
		case *footwardv1.CheckItem_AnchorRods:
			c.AnchorRods.Detail = detail
			out["anchor_rods"] = i
		}
	}
	require.Len(b, out, 4)
	return out
}

// echo serves a bare gRPC method that takes bytes and answers with as many as
// it was told, with nothing before the handler.
func echo(b *testing.B) (address string, answer *atomic.Pointer[wrapperspb.BytesValue]) {
	b.Helper()
	answer = &atomic.Pointer[wrapperspb.BytesValue]{}
	method := func(_ any, _ context.Context, decode func(any) error, _ grpc.UnaryServerInterceptor) (any, error) {
		var m wrapperspb.BytesValue
		if err := decode(&m); err != nil {
			return nil, err
		}
		return answer.Load(), nil
	}
	s := grpc.NewServer()
	s.RegisterService(&grpc.ServiceDesc{
		ServiceName: "echo", HandlerType: (*any)(nil),
		Methods: []grpc.MethodDesc{{MethodName: "Echo", Handler: method}},
	}, nil)
	return listen(b, s.Serve, s.Stop), answer
}

func listen(b *testing.B, serve func(net.Listener) error, stop func()) string {
	b.Helper()
	l, err := net.Listen("tcp", "127.0.0.1:0")
	require.NoError(b, err)
	done := make(chan struct{})
	go func() {
		defer close(done)
		_ = serve(l)
	}()
	b.Cleanup(func() {
		stop()
		<-done
	})
	return l.Addr().String()
}

// production serves the checks with everything that stands before them.
func production(b *testing.B) string {
	b.Helper()
	m, err := telemetry.New(prometheus.NewRegistry())
	require.NoError(b, err)
	usual, err := readSettings(nil, nil, io.Discard)
	require.NoError(b, err)
	o := server.Options{Metrics: m, Log: slog.New(slog.DiscardHandler)}
	usual.bounds.put(&o)
	s, err := server.New(o)
	require.NoError(b, err)
	return listen(b, s.Serve, s.Stop)
}

func connect(b *testing.B, address string) *grpc.ClientConn {
	b.Helper()
	c, err := grpc.NewClient(address, grpc.WithTransportCredentials(insecure.NewCredentials()))
	require.NoError(b, err)
	b.Cleanup(func() { _ = c.Close() })
	return c
}

// calls has callers share b.N calls.
func calls(b *testing.B, callers int, one func() error) {
	var left atomic.Int64
	left.Store(int64(b.N))
	b.ReportAllocs()
	b.ResetTimer()
	var all sync.WaitGroup
	for range callers {
		all.Go(func() {
			for left.Add(-1) >= 0 {
				if err := one(); err != nil {
					b.Error(err)
					return
				}
			}
		})
	}
	all.Wait()
}

// methodOf is the method, the request and an empty response of a check.
func methodOf(i *footwardv1.CheckItem) (string, proto.Message, func() proto.Message) {
	switch c := i.GetCheck().(type) {
	case *footwardv1.CheckItem_Bearing:
		return footwardv1.CheckService_CheckBearing_FullMethodName, c.Bearing, func() proto.Message { return &footwardv1.CheckBearingResponse{} }
	case *footwardv1.CheckItem_PlateBending:
		return footwardv1.CheckService_CheckPlateBending_FullMethodName, c.PlateBending, func() proto.Message { return &footwardv1.CheckPlateBendingResponse{} }
	case *footwardv1.CheckItem_Weld:
		return footwardv1.CheckService_CheckWeld_FullMethodName, c.Weld, func() proto.Message { return &footwardv1.CheckWeldResponse{} }
	default:
		return footwardv1.CheckService_CheckAnchorRods_FullMethodName, i.GetAnchorRods(), func() proto.Message { return &footwardv1.CheckAnchorRodsResponse{} }
	}
}

// BenchmarkUnary compares each check with an echo of as many bytes both ways, in
// one run. The client of both sends and takes raw bytes, so that only the service
// differs.
func BenchmarkUnary(b *testing.B) {
	defer debug.SetGCPercent(debug.SetGCPercent(collectAt)) // for both, as main has it
	echoAt, answer := echo(b)
	bare, checks := connect(b, echoAt), connect(b, production(b))
	ctx := context.Background()
	for _, kind := range []string{"bearing", "plate_bending", "weld", "anchor_rods"} {
		method, request, response := methodOf(demo(b, footwardv1.Detail_DETAIL_LIMIT_STATES)[kind])
		wire, err := proto.Marshal(request)
		require.NoError(b, err)
		full := response()
		require.NoError(b, checks.Invoke(ctx, method, request, full))
		answer.Store(&wrapperspb.BytesValue{Value: make([]byte, proto.Size(full))})
		for _, callers := range []int{1, 64} {
			b.Run(fmt.Sprintf("echo/as=%s/callers=%d", kind, callers), func(b *testing.B) {
				send, err := proto.Marshal(&wrapperspb.BytesValue{Value: wire})
				require.NoError(b, err)
				calls(b, callers, func() error {
					var got []byte
					return bare.Invoke(ctx, "/echo/Echo", send, &got, grpc.ForceCodecV2(raw{}))
				})
			})
			b.Run(fmt.Sprintf("check/of=%s/callers=%d", kind, callers), func(b *testing.B) {
				calls(b, callers, func() error {
					var got []byte
					return checks.Invoke(ctx, method, wire, &got, grpc.ForceCodecV2(raw{}))
				})
			})
		}
	}
}

// stream sends a message n times on a stream of its own, and takes the answers.
func stream(b *testing.B, c footwardv1.CheckServiceClient, m []byte, n int) {
	s, err := c.StreamChecks(b.Context(), grpc.ForceCodecV2(raw{}))
	if err != nil {
		b.Error(err)
		return
	}
	go func() {
		for range n {
			if s.SendMsg(m) != nil {
				return
			}
		}
		_ = s.CloseSend()
	}()
	for range n {
		var got []byte
		if err := s.RecvMsg(&got); err != nil {
			b.Error(err)
			return
		}
	}
}

// BenchmarkBatch measures one check in a batch and in a stream, against one in a
// call of its own: 64 callers for calls, 2 for batches and streams.
func BenchmarkBatch(b *testing.B) {
	defer debug.SetGCPercent(debug.SetGCPercent(collectAt)) // as main has it
	const size = 1000
	checks := connect(b, production(b))
	c := footwardv1.NewCheckServiceClient(checks)
	for _, detail := range []footwardv1.Detail{footwardv1.Detail_DETAIL_GOVERNING, footwardv1.Detail_DETAIL_LIMIT_STATES} {
		var items []*footwardv1.CheckItem
		var mixed []*footwardv1.CheckItem
		for _, i := range demo(b, detail) {
			mixed = append(mixed, i)
		}
		for i := range size {
			items = append(items, mixed[i%len(mixed)])
		}
		many, err := proto.Marshal(&footwardv1.CheckManyRequest{Items: items})
		require.NoError(b, err)
		piece, err := proto.Marshal(&footwardv1.StreamChecksRequest{Items: items[:100]})
		require.NoError(b, err)
		name := detail.String()[len("DETAIL_"):]
		b.Run("unary/"+name, func(b *testing.B) {
			type ready struct {
				method string
				wire   []byte
			}
			var four []ready
			for _, i := range mixed {
				method, request, _ := methodOf(i)
				wire, err := proto.Marshal(request)
				require.NoError(b, err)
				four = append(four, ready{method, wire})
			}
			var n atomic.Int64
			calls(b, 64, func() error {
				r := four[n.Add(1)%4]
				var got []byte
				return checks.Invoke(context.Background(), r.method, r.wire, &got, grpc.ForceCodecV2(raw{}))
			})
		})
		b.Run("CheckMany/"+name, func(b *testing.B) {
			calls(b, 2, func() error {
				var got []byte
				return checks.Invoke(context.Background(), footwardv1.CheckService_CheckMany_FullMethodName, many, &got, grpc.ForceCodecV2(raw{}))
			})
			b.ReportMetric(float64(b.Elapsed().Nanoseconds())/float64(b.N)/size, "ns/check")
		})
		b.Run("StreamChecks/"+name, func(b *testing.B) {
			b.ReportAllocs()
			b.ResetTimer()
			var both sync.WaitGroup
			for half := range 2 {
				both.Go(func() { stream(b, c, piece, (b.N+half)/2) })
			}
			both.Wait()
			b.ReportMetric(float64(b.Elapsed().Nanoseconds())/float64(b.N)/100, "ns/check")
		})
	}
}
