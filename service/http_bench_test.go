package main

import (
	"bytes"
	"context"
	"fmt"
	"io"
	"net/http"
	"runtime/debug"
	"testing"

	"github.com/prometheus/client_golang/prometheus"
	"github.com/stretchr/testify/require"
	"google.golang.org/grpc"
	"google.golang.org/protobuf/encoding/protojson"
	"google.golang.org/protobuf/proto"

	footwardv1 "footward.example/footward/proto/footward/v1"
	"footward.example/footward/service/server"
	"footward.example/footward/service/telemetry"
	"footward.example/footward/service/web"
)

// BenchmarkHTTP compares each check as JSON over HTTP with the same over gRPC, in
// one run. Both clients send and take bytes that are ready.
func BenchmarkHTTP(b *testing.B) {
	defer debug.SetGCPercent(debug.SetGCPercent(collectAt)) // for both, as main has it
	m, err := telemetry.New(prometheus.NewRegistry())
	require.NoError(b, err)
	s, err := server.New(server.Options{Metrics: m, Web: true})
	require.NoError(b, err)
	w, err := web.New(s.Web(), web.Options{MessageBytes: server.DefaultMessageBytes})
	require.NoError(b, err)
	native, url := connect(b, listen(b, s.Serve, s.Stop)), "http://"+listen(b, w.Serve, w.Stop)
	const most = 64
	transport := &http.Transport{MaxIdleConnsPerHost: most}
	defer transport.CloseIdleConnections()
	browser := &http.Client{Transport: transport}
	post := func(path string, body []byte) error {
		r, err := browser.Post(url+path, "application/json", bytes.NewReader(body))
		if err != nil {
			return err
		}
		defer func() { _ = r.Body.Close() }()
		text, err := io.ReadAll(r.Body)
		if err == nil && r.StatusCode != http.StatusOK {
			err = fmt.Errorf("%s: %s", r.Status, text)
		}
		return err
	}
	ctx := context.Background()
	checks := demo(b, footwardv1.Detail_DETAIL_LIMIT_STATES)
	for _, kind := range []string{"bearing", "plate_bending", "weld", "anchor_rods"} {
		path, request, _ := methodOf(checks[kind])
		wire, err := proto.Marshal(request)
		require.NoError(b, err)
		body, err := protojson.Marshal(request)
		require.NoError(b, err)
		for _, callers := range []int{1, most} {
			b.Run(fmt.Sprintf("grpc/of=%s/callers=%d", kind, callers), func(b *testing.B) {
				calls(b, callers, func() error {
					var got []byte
					return native.Invoke(ctx, path, wire, &got, grpc.ForceCodecV2(raw{}))
				})
			})
			b.Run(fmt.Sprintf("http/of=%s/callers=%d", kind, callers), func(b *testing.B) {
				calls(b, callers, func() error { return post(path, body) })
			})
		}
	}
	many := &footwardv1.CheckManyRequest{}
	for i := range 1000 {
		many.Items = append(many.Items, checks[[]string{"bearing", "plate_bending", "weld", "anchor_rods"}[i%4]])
	}
	body, err := protojson.Marshal(many)
	require.NoError(b, err)
	b.Run("http/CheckMany", func(b *testing.B) {
		calls(b, 2, func() error { return post(footwardv1.CheckService_CheckMany_FullMethodName, body) })
		b.ReportMetric(float64(b.Elapsed().Nanoseconds())/float64(b.N)/float64(len(many.GetItems())), "ns/check")
	})
}
