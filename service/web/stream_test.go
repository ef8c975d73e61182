package web_test

import (
	"context"
	"crypto/tls"
	"io"
	"net/http"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"google.golang.org/grpc"
	"google.golang.org/grpc/codes"
	"google.golang.org/grpc/status"
	"google.golang.org/protobuf/encoding/protojson"
	"google.golang.org/protobuf/proto"

	footwardv1 "footward.example/footward/proto/footward/v1"
	"footward.example/footward/service/guard"
	"footward.example/footward/service/server"
	"footward.example/footward/service/telemetry"
	"footward.example/footward/service/web"
)

const asLines = "application/x-ndjson"

const goodLine = `{"items": [{"bearing": {"basis": {"eurocode": {}}, "contact": {"size_x_mm": 500, "size_y_mm": 500}, "forces": {"n_kn": -120}, ` +
	`"support": {"given": {"pressure_kpa": 640, "source": "a test", "medium": "GIVEN_MEDIUM_OTHER"}}}}]}`

// TestLinesAreAnsweredWhileTheRequestGoesOn, over HTTP/1.1 and HTTP/2, as a stream
// over gRPC is.
func TestLinesAreAnsweredWhileTheRequestGoesOn(t *testing.T) {
	p := produce(t)
	s, err := server.New(server.Options{Web: true})
	require.NoError(t, err)
	t.Cleanup(s.Stop)
	second := serve(t, s.Web(), web.Options{TLS: &tls.Config{Certificates: []tls.Certificate{certificate(t, "service")}}})
	second.client.Transport = &http.Transport{ForceAttemptHTTP2: true, TLSClientConfig: &tls.Config{InsecureSkipVerify: true}}
	t.Cleanup(second.client.CloseIdleConnections)
	for version, s := range map[string]*served{"HTTP/1.1": p.served, "HTTP/2.0": second} {
		c := s.talk(t, t.Context())
		for i := range 3 {
			c.say(goodLine)
			m := c.outcomes()
			require.Len(t, m.GetOutcomes(), 1)
			assert.EqualValues(t, i, m.GetOutcomes()[0].GetIndex())
			assert.InDelta(t, 0.75, m.GetOutcomes()[0].GetResult().GetGoverningUtilization(), 1e-9)
			assert.Equal(t, i == 0, m.GetProvenance() != nil)
		}
		assert.Equal(t, version, c.Proto)
		assert.Equal(t, asLines, c.Header.Get("Content-Type"))
		require.NoError(t, c.body.Close())
		assert.Empty(t, c.line())
	}
	assert.Contains(t, p.scrape(), `grpc_server_handled_total{grpc_code="OK",grpc_method="StreamChecks",grpc_service="footward.v1.CheckService",grpc_type="bidi_stream"} 1`)
	assert.Contains(t, p.scrape(), `grpc_server_msg_sent_total{grpc_method="StreamChecks",grpc_service="footward.v1.CheckService",grpc_type="bidi_stream"} 3`)
}

func TestLinesAreAnsweredAsByGRPC(t *testing.T) {
	p := produce(t)
	stream, err := p.grpc.StreamChecks(t.Context())
	require.NoError(t, err)
	c := p.talk(t, t.Context())
	for _, i := range demo(t) {
		m := &footwardv1.StreamChecksRequest{Items: []*footwardv1.CheckItem{i, {}}}
		require.NoError(t, stream.Send(m))
		want, err := stream.Recv()
		require.NoError(t, err)
		text, err := protojson.Marshal(m)
		require.NoError(t, err)
		c.say(string(text))
		assert.True(t, proto.Equal(want, c.outcomes()))
	}
	require.NoError(t, stream.CloseSend())
}

// TestABadLineIsAnsweredInItsPlace: the stream goes on.
func TestABadLineIsAnsweredInItsPlace(t *testing.T) {
	p := produce(t)
	bad := map[string]string{ // field that is refused
		"{\"items\": [": "",
		"nonsense":      "",
		"\xff\xfe":      "",
		`{"itmes": []}`: "itmes",
		`{}`:            "items",
		`{"items": 3}`:  "items",
		`{"items": []}`: "items",
		`{"items": [` + strings.Repeat("{},", 1000) + `{}]}`: "items",
		`{"items": [{"labl": 1}]}`:                           "labl",
		`{"items": [{"weld": "x"}]}`:                         "weld",
	}
	c := p.talk(t, t.Context())
	next := uint32(0)
	for line, field := range bad {
		for _, line := range []string{goodLine, line, "", "  "} {
			if strings.TrimSpace(line) == "" {
				c.say(line) // says nothing, and is not answered
				continue
			}
			c.say(line)
			m := c.outcomes()
			require.Len(t, m.GetOutcomes(), 1, line)
			assert.Equal(t, next, m.GetOutcomes()[0].GetIndex())
			next++
			if line == goodLine {
				assert.NotNil(t, m.GetOutcomes()[0].GetResult())
				continue
			}
			violations := m.GetOutcomes()[0].GetRefusal().GetViolations()
			require.NotEmpty(t, violations, line)
			assert.Equal(t, field, violations[0].GetField(), line)
			if field == "" {
				assert.Regexp(t, "^the line is not ", violations[0].GetDescription())
			}
		}
	}
	require.NoError(t, c.body.Close())
	assert.Empty(t, c.line())
}

// TestTheLastLineNeedsNoEnd, and a body may be empty.
func TestTheLastLineNeedsNoEnd(t *testing.T) {
	p := produce(t)
	r := p.send(t, http.MethodPost, streamPath, strings.NewReader(goodLine+"\n"+goodLine), "Content-Type", asLines)
	assert.Equal(t, http.StatusOK, r.StatusCode)
	assert.Equal(t, 2, strings.Count(r.body, "\n"))
	assert.True(t, strings.HasSuffix(r.body, "}\n"))
	r = p.send(t, http.MethodPost, streamPath, strings.NewReader(""), "Content-Type", asLines)
	assert.Equal(t, http.StatusOK, r.StatusCode)
	assert.Equal(t, asLines, r.Header.Get("Content-Type"))
	assert.Empty(t, r.body)
}

func TestALineThatIsTooLongEndsTheStream(t *testing.T) {
	p := produce(t)
	long := strings.Repeat(" ", messageBytes) + goodLine
	r := p.send(t, http.MethodPost, streamPath, strings.NewReader(long), "Content-Type", asLines)
	assert.Equal(t, http.StatusRequestEntityTooLarge, r.StatusCode)
	assert.Equal(t, codes.ResourceExhausted, r.status(t).Code())
	r = p.send(t, http.MethodPost, streamPath, strings.NewReader(goodLine+"\n"+long+"\n"+goodLine), "Content-Type", asLines)
	assert.Equal(t, http.StatusOK, r.StatusCode)
	lines := strings.Split(strings.TrimSpace(r.body), "\n")
	require.Len(t, lines, 2)
	assert.Contains(t, lines[1], `{"error":{"code":8,"message":"a line is larger than 1048576 bytes`)
	counted := `grpc_server_handled_total{grpc_code="ResourceExhausted",grpc_method="StreamChecks",grpc_service="footward.v1.CheckService",grpc_type="bidi_stream"} 2`
	// gRPC answers before the handler learns of it.
	require.Eventually(t, func() bool { return strings.Contains(p.scrape(), counted) }, time.Minute, 5*time.Millisecond)
}

func TestAStreamThatIsNotLetInIsAStatus(t *testing.T) {
	s, err := server.New(server.Options{Web: true, Callers: guard.Callers{Names: []string{"nobody"}}})
	require.NoError(t, err)
	t.Cleanup(s.Stop)
	w := serve(t, s.Web(), web.Options{})
	for _, body := range []string{goodLine, "nonsense", ""} {
		r := w.send(t, http.MethodPost, streamPath, strings.NewReader(body), "Content-Type", asLines)
		assert.Equal(t, http.StatusForbidden, r.StatusCode, r.body)
		assert.Equal(t, codes.PermissionDenied, r.status(t).Code())
	}
}

// streaming is a service whose StreamChecks does what a test needs.
type streaming struct {
	footwardv1.UnimplementedCheckServiceServer
	checks func(grpc.BidiStreamingServer[footwardv1.StreamChecksRequest, footwardv1.StreamChecksResponse]) error
}

func (s streaming) StreamChecks(stream grpc.BidiStreamingServer[footwardv1.StreamChecksRequest, footwardv1.StreamChecksResponse]) error {
	return s.checks(stream)
}

func serveStream(t *testing.T, o web.Options, checks func(grpc.BidiStreamingServer[footwardv1.StreamChecksRequest, footwardv1.StreamChecksResponse]) error) *served {
	t.Helper()
	tally := (*telemetry.Metrics)(nil)
	g := grpc.NewServer(append(web.ServerOptions(messageBytes), grpc.ChainStreamInterceptor(o.Deadlines.Stream(tally)))...)
	footwardv1.RegisterCheckServiceServer(g, streaming{checks: checks})
	t.Cleanup(g.Stop)
	return serve(t, g, o)
}

type checks = grpc.BidiStreamingServer[footwardv1.StreamChecksRequest, footwardv1.StreamChecksResponse]

// echo answers each line.
func echo(stream checks) error {
	for {
		if _, err := stream.Recv(); err != nil {
			if err == io.EOF {
				return nil
			}
			return err
		}
		if err := stream.Send(&footwardv1.StreamChecksResponse{}); err != nil {
			return err
		}
	}
}

func TestAStreamEndsAtItsDeadline(t *testing.T) {
	for name, c := range map[string]struct {
		deadlines guard.Deadlines
		header    []string
	}{
		"of the caller":  {guard.Deadlines{}, []string{"Request-Timeout", "0.2"}},
		"of the service": {guard.Deadlines{Streams: 200 * time.Millisecond}, nil},
		"of idleness":    {guard.Deadlines{Streams: time.Hour, Idle: 200 * time.Millisecond}, nil},
	} {
		t.Run(name, func(t *testing.T) {
			s := serveStream(t, web.Options{Deadlines: c.deadlines}, echo)
			talk := s.talk(t, t.Context(), c.header...)
			answer := talk.line() // nothing was said
			assert.Equal(t, http.StatusGatewayTimeout, talk.StatusCode, answer)
			assert.Contains(t, answer, `"code":4,`)
		})
	}
}

func TestAStreamThatBreaksOffSaysWhy(t *testing.T) {
	s := serveStream(t, web.Options{}, func(stream checks) error {
		if _, err := stream.Recv(); err != nil {
			return err
		}
		if err := stream.Send(&footwardv1.StreamChecksResponse{}); err != nil {
			return err
		}
		return status.Error(codes.ResourceExhausted, "full")
	})
	c := s.talk(t, t.Context())
	c.say("{}")
	assert.Contains(t, c.line(), `"outcomes":[]`)
	assert.Equal(t, `{"error":{"code":8,"message":"full","details":[]}}`+"\n", c.line())
	assert.Empty(t, c.line())
}

// TestAStreamEndsWhenItsCallerLeaves, while a line is worked on.
func TestAStreamEndsWhenItsCallerLeaves(t *testing.T) {
	began, ended := make(chan bool), make(chan error, 1)
	s := serveStream(t, web.Options{}, func(stream checks) error {
		if _, err := stream.Recv(); err != nil {
			return err
		}
		close(began)
		<-stream.Context().Done()
		ended <- stream.Context().Err()
		return stream.Context().Err()
	})
	ctx, leave := context.WithCancel(t.Context())
	c := s.talk(t, ctx)
	c.say("{}")
	<-began
	leave()
	assert.ErrorIs(t, <-ended, context.Canceled)
	require.NoError(t, c.body.CloseWithError(ctx.Err())) // which the client waits for
	assert.Nil(t, <-c.answered)
}

// TestACallerWhoDoesNotReadIsNotReadFrom: of a body without end, no more is taken
// than what its answers have room for.
func TestACallerWhoDoesNotReadIsNotReadFrom(t *testing.T) {
	full := make(chan bool)
	s := serveStream(t, web.Options{AnswerTime: 500 * time.Millisecond}, func(stream checks) error {
		defer close(full)
		large := &footwardv1.StreamChecksResponse{Provenance: &footwardv1.Provenance{ServiceVersion: strings.Repeat("x", messageBytes/2)}}
		for {
			if _, err := stream.Recv(); err != nil {
				return err
			}
			if err := stream.Send(large); err != nil {
				return err
			}
		}
	})
	c := s.talk(t, t.Context())
	lines := 0
	for {
		if _, err := io.WriteString(c.body, "{}"+strings.Repeat(" ", 4000)+"\n"); err != nil {
			break // given up, since nobody read
		}
		lines++
	}
	<-full
	assert.Positive(t, lines)
	c.Response = <-c.answered
	require.NotNil(t, c.Response)
}
