package main

import (
	"bytes"
	"io"
	"net"
	"net/http"
	"net/http/httptrace"
	"os"
	"regexp"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"google.golang.org/protobuf/encoding/protojson"

	"footward.example/footward/client"
	footwardv1 "footward.example/footward/proto/footward/v1"
)

// postJSON posts a body and returns the answer's status and text.
func postJSON(t *testing.T, url, body string) (int, string) {
	t.Helper()
	transport := &http.Transport{}
	defer transport.CloseIdleConnections()
	r, err := (&http.Client{Transport: transport}).Post(url, "application/json", strings.NewReader(body))
	require.NoError(t, err)
	defer func() { _ = r.Body.Close() }()
	text, err := io.ReadAll(r.Body)
	require.NoError(t, err)
	return r.StatusCode, string(text)
}

// TestReadmeCallsOverHTTP makes the call of the README.
func TestReadmeCallsOverHTTP(t *testing.T) {
	text, err := os.ReadFile("../README.md")
	require.NoError(t, err)
	found := regexp.MustCompile(`(?s)curl http://127\.0\.0\.1:8061(/\S+) .*?-d '(.*?)'`).FindSubmatch(text)
	require.Len(t, found, 3)
	s := start(t, "--http-address", "127.0.0.1:0")
	code, answer := postJSON(t, "http://"+s.at.http+string(found[1]), string(found[2]))
	assert.Equal(t, http.StatusOK, code, answer)
	var m footwardv1.CheckBearingResponse
	require.NoError(t, protojson.Unmarshal([]byte(answer), &m))
	for _, promised := range []string{`"verdict":"VERDICT_PASS"`, `"governing_utilization":0.75`} {
		assert.Contains(t, string(text), promised)
		assert.Contains(t, answer, promised)
	}
}

// TestDrainAnswersWhatIsUnderWayOverHTTP holds a call open, by a body that comes
// in two parts, across the signal to stop, and a stream of gRPC beside it.
func TestDrainAnswersWhatIsUnderWayOverHTTP(t *testing.T) {
	r := start(t, "--http-address", "127.0.0.1:0")
	c, err := client.Dial(r.at.grpc.String(), client.WithoutWaiting())
	require.NoError(t, err)
	defer func() { _ = c.Close() }()
	stream, err := c.StreamChecks(t.Context())
	require.NoError(t, err)
	require.NoError(t, stream.Send(&footwardv1.StreamChecksRequest{Items: []*footwardv1.CheckItem{item(-1)}}))
	_, err = stream.Recv()
	require.NoError(t, err)

	body, err := protojson.Marshal(item(-120).GetBearing())
	require.NoError(t, err)
	reader, writer := io.Pipe()
	transport := &http.Transport{ExpectContinueTimeout: time.Minute}
	defer transport.CloseIdleConnections()
	reading := make(chan bool)
	ctx := httptrace.WithClientTrace(t.Context(), &httptrace.ClientTrace{Got100Continue: func() { close(reading) }})
	request, err := http.NewRequestWithContext(ctx, http.MethodPost, "http://"+r.at.http+footwardv1.CheckService_CheckBearing_FullMethodName, reader)
	require.NoError(t, err)
	request.Header.Set("Content-Type", "application/json")
	request.Header.Set("Expect", "100-continue")
	type answer struct {
		code int
		err  error
	}
	answered := make(chan answer, 1)
	go func() {
		got, err := transport.RoundTrip(request)
		if err != nil {
			answered <- answer{err: err}
			return
		}
		answered <- answer{code: got.StatusCode, err: got.Body.Close()}
	}()
	<-reading
	_, err = writer.Write(body[:10])
	require.NoError(t, err)

	r.stop()
	require.Eventually(t, func() bool { return refuses(r.at.http) }, time.Minute, 5*time.Millisecond, "it takes no new call")
	_, err = writer.Write(body[10:])
	require.NoError(t, err)
	require.NoError(t, writer.Close())
	assert.Equal(t, answer{code: http.StatusOK}, <-answered)
	assert.Contains(t, scrape(t, r), `grpc_server_handled_total{grpc_code="OK",grpc_method="CheckBearing"`, "metrics outlast the calls")
	require.NoError(t, stream.CloseSend())
	_, err = stream.Recv()
	require.ErrorIs(t, err, io.EOF)
	require.NoError(t, <-r.end)
	assert.Contains(t, r.log.String(), "cut_off=false")
}

func refuses(address string) bool {
	c, err := net.Dial("tcp", address)
	if err == nil {
		_ = c.Close()
	}
	return err != nil
}

func TestHTTPAddressInUseFails(t *testing.T) {
	s := start(t, "--http-address", "127.0.0.1:0")
	var stderr bytes.Buffer
	args := []string{"--grpc-address", "127.0.0.1:0", "--metrics-address", "", "--http-address", s.at.http}
	assert.Equal(t, failed, run(t.Context(), args, nil, io.Discard, &stderr))
	assert.Contains(t, stderr.String(), "in use")
}
