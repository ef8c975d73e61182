package web_test

import (
	"bufio"
	"context"
	"crypto/ecdsa"
	"crypto/elliptic"
	"crypto/rand"
	"crypto/tls"
	"crypto/x509"
	"crypto/x509/pkix"
	"fmt"
	"io"
	"log/slog"
	"math/big"
	"net"
	"net/http"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"google.golang.org/grpc/codes"
	"google.golang.org/grpc/credentials"
	"google.golang.org/grpc/peer"

	"footward.example/footward/service/web"
)

func logTo(w io.Writer) *slog.Logger { return slog.New(slog.NewTextHandler(w, nil)) }

func TestDeadlineEndsTheCall(t *testing.T) {
	var left time.Duration
	s := serveFake(t, web.Options{}, func(ctx context.Context) error {
		at, _ := ctx.Deadline()
		left = time.Until(at)
		<-ctx.Done()
		return ctx.Err()
	})
	r := s.post(t, bearingPath, "{}", "Request-Timeout", "0.05")
	assert.Equal(t, http.StatusGatewayTimeout, r.StatusCode, r.body)
	assert.Equal(t, codes.DeadlineExceeded, r.status(t).Code())
	assert.Greater(t, left, time.Duration(0))
	assert.LessOrEqual(t, left, 50*time.Millisecond)
}

// TestACallMayTakeLongerThanItsRequest: what bounds how long a request may come
// and an answer may go does not end the work between them.
func TestACallMayTakeLongerThanItsRequest(t *testing.T) {
	const arrival = time.Second
	s := serveFake(t, web.Options{RequestTime: arrival, AnswerTime: time.Millisecond}, func(ctx context.Context) error {
		select {
		case <-time.After(arrival * 5 / 4):
		case <-ctx.Done():
		}
		return ctx.Err()
	})
	for _, timeout := range []string{"", "200"} {
		r := s.post(t, bearingPath, "{}", "Request-Timeout", timeout)
		assert.Equal(t, http.StatusOK, r.StatusCode, r.body)
	}
}

func TestACallEndsWhenItsCallerLeaves(t *testing.T) {
	began, ended := make(chan bool), make(chan error)
	s := serveFake(t, web.Options{}, func(ctx context.Context) error {
		close(began)
		<-ctx.Done()
		ended <- ctx.Err()
		return ctx.Err()
	})
	ctx, leave := context.WithCancel(t.Context())
	r, err := http.NewRequestWithContext(ctx, http.MethodPost, s.url+bearingPath, strings.NewReader("{}"))
	require.NoError(t, err)
	r.Header.Set("Content-Type", "application/json")
	go func() {
		<-began
		leave()
	}()
	_, err = s.client.Do(r)
	assert.ErrorIs(t, err, context.Canceled)
	assert.ErrorIs(t, <-ended, context.Canceled)
}

// raw sends text on a connection and returns the answer to it.
func raw(t *testing.T, s *served, text string) *http.Response {
	t.Helper()
	c, err := net.Dial("tcp", strings.TrimPrefix(s.url, "http://"))
	require.NoError(t, err)
	t.Cleanup(func() { _ = c.Close() })
	_, err = io.WriteString(c, text)
	require.NoError(t, err)
	r, err := http.ReadResponse(bufio.NewReader(c), nil)
	require.NoError(t, err)
	return r
}

func TestSlowBodyIsGivenUp(t *testing.T) {
	s := serveFake(t, web.Options{RequestTime: 100 * time.Millisecond}, func(context.Context) error { return nil })
	r := raw(t, s, "POST "+bearingPath+" HTTP/1.1\r\nHost: x\r\nContent-Type: application/json\r\nContent-Length: 9\r\n\r\n{")
	body, err := io.ReadAll(r.Body)
	require.NoError(t, err)
	assert.Equal(t, http.StatusRequestTimeout, r.StatusCode)
	assert.Equal(t, codes.DeadlineExceeded, reply{r, string(body)}.status(t).Code())
	assert.Contains(t, string(body), "100ms")
	assert.Equal(t, http.StatusOK, s.post(t, bearingPath, "{}").StatusCode, "others are unharmed")
}

func TestNoHTTPIsRefused(t *testing.T) {
	s := serveFake(t, web.Options{}, func(context.Context) error { return nil })
	assert.Equal(t, http.StatusBadRequest, raw(t, s, "hello\r\n\r\n").StatusCode)
	assert.Equal(t, http.StatusOK, s.post(t, bearingPath, "{}").StatusCode)
}

func TestDrainAnswersCallsUnderWay(t *testing.T) {
	began, finish := make(chan bool), make(chan bool)
	s := serveFake(t, web.Options{}, func(context.Context) error {
		began <- true
		<-finish
		return nil
	})
	answered := make(chan int)
	go func() { answered <- s.post(t, bearingPath, "{}").StatusCode }()
	<-began
	drained := make(chan error)
	go func() { drained <- s.Drain(t.Context(), 0) }()
	require.NoError(t, <-s.ended, "it listens no more")
	_, err := net.Dial("tcp", strings.TrimPrefix(s.url, "http://"))
	assert.Error(t, err)
	close(finish)
	assert.Equal(t, http.StatusOK, <-answered)
	assert.NoError(t, <-drained)
}

func TestDrainTakesCallsDuringItsDelay(t *testing.T) {
	s := serveFake(t, web.Options{}, func(context.Context) error { return nil })
	assert.False(t, s.post(t, bearingPath, "{}").Close)
	drained := make(chan error)
	go func() { drained <- s.Drain(t.Context(), time.Second) }()
	for last := false; !last; {
		r := s.post(t, bearingPath, "{}")
		require.Equal(t, http.StatusOK, r.StatusCode)
		last = r.Close // on its connection, as the answer says
	}
	assert.NoError(t, <-drained)
}

func TestDrainCutsOffWhatDoesNotEnd(t *testing.T) {
	began := make(chan bool)
	s := serveFake(t, web.Options{}, func(ctx context.Context) error {
		close(began)
		<-ctx.Done()
		return ctx.Err()
	})
	failed := make(chan error)
	go func() {
		_, err := s.client.Post(s.url+bearingPath, "application/json", strings.NewReader("{}"))
		failed <- err
	}()
	<-began
	limit, cancel := context.WithTimeout(t.Context(), 50*time.Millisecond)
	defer cancel()
	assert.ErrorIs(t, s.Drain(limit, 0), context.DeadlineExceeded)
	assert.Error(t, <-failed)
}

// TestCertificateOfTheCallerReachesTheCall: who may call is decided by the
// interceptors, so they must see it. HTTP/1.1 and HTTP/2 both.
func TestCertificateOfTheCallerReachesTheCall(t *testing.T) {
	mine, theirs := certificate(t, "service"), certificate(t, "studio")
	known := x509.NewCertPool()
	known.AddCert(theirs.Leaf)
	var name string
	s := serveFake(t, web.Options{TLS: &tls.Config{
		Certificates: []tls.Certificate{mine}, ClientCAs: known, ClientAuth: tls.RequireAndVerifyClientCert,
	}}, func(ctx context.Context) error {
		p, _ := peer.FromContext(ctx)
		if info, ok := p.AuthInfo.(credentials.TLSInfo); ok {
			name = info.State.VerifiedChains[0][0].Subject.CommonName
		}
		return nil
	})
	_, err := s.client.Post(s.url+bearingPath, "application/json", strings.NewReader("{}"))
	require.Error(t, err, "without a certificate")
	for version, second := range map[string]bool{"HTTP/1.1": false, "HTTP/2.0": true} {
		name = ""
		transport := &http.Transport{ForceAttemptHTTP2: second, TLSClientConfig: &tls.Config{
			InsecureSkipVerify: true, Certificates: []tls.Certificate{theirs},
		}}
		s.client.Transport = transport
		r := s.post(t, bearingPath, "{}")
		transport.CloseIdleConnections()
		assert.Equal(t, http.StatusOK, r.StatusCode)
		assert.Equal(t, version, r.Proto)
		assert.Equal(t, "studio", name)
	}
}

func certificate(t *testing.T, name string) tls.Certificate {
	t.Helper()
	key, err := ecdsa.GenerateKey(elliptic.P256(), rand.Reader)
	require.NoError(t, err)
	from := &x509.Certificate{
		SerialNumber: big.NewInt(1), Subject: pkix.Name{CommonName: name}, NotAfter: time.Now().Add(time.Hour),
		IsCA: true, BasicConstraintsValid: true, KeyUsage: x509.KeyUsageDigitalSignature | x509.KeyUsageCertSign,
		ExtKeyUsage: []x509.ExtKeyUsage{x509.ExtKeyUsageClientAuth, x509.ExtKeyUsageServerAuth},
	}
	der, err := x509.CreateCertificate(rand.Reader, from, from, &key.PublicKey, key)
	require.NoError(t, err)
	leaf, err := x509.ParseCertificate(der)
	require.NoError(t, err)
	return tls.Certificate{Certificate: [][]byte{der}, PrivateKey: key, Leaf: leaf}
}

func TestTheRootListsThePaths(t *testing.T) {
	s := serveFake(t, web.Options{}, func(context.Context) error { return nil })
	r := s.send(t, http.MethodGet, "/", nil)
	assert.Equal(t, http.StatusOK, r.StatusCode)
	assert.Equal(t, "text/plain; charset=utf-8", r.Header.Get("Content-Type"))
	assert.Contains(t, r.body, fmt.Sprintf("POST %s\n", bearingPath))
	assert.Contains(t, r.body, "StreamChecks  (application/x-ndjson")
	assert.Contains(t, r.body, "GET  /healthz\n")
}
