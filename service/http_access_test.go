package main

import (
	"crypto/ecdsa"
	"crypto/elliptic"
	"crypto/rand"
	"crypto/tls"
	"crypto/x509"
	"crypto/x509/pkix"
	"encoding/pem"
	"io"
	"math/big"
	"net/http"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"sync/atomic"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"google.golang.org/protobuf/encoding/protojson"

	footwardv1 "footward.example/footward/proto/footward/v1"
)

// identity writes a certificate that signs itself, and its key, to files.
func identity(t *testing.T, name string) (cert, key string) {
	t.Helper()
	private, err := ecdsa.GenerateKey(elliptic.P256(), rand.Reader)
	require.NoError(t, err)
	from := &x509.Certificate{
		SerialNumber: big.NewInt(1), Subject: pkix.Name{CommonName: name}, DNSNames: []string{name}, NotAfter: time.Now().Add(time.Hour),
		IsCA: true, BasicConstraintsValid: true, KeyUsage: x509.KeyUsageDigitalSignature | x509.KeyUsageCertSign,
		ExtKeyUsage: []x509.ExtKeyUsage{x509.ExtKeyUsageClientAuth, x509.ExtKeyUsageServerAuth},
	}
	der, err := x509.CreateCertificate(rand.Reader, from, from, &private.PublicKey, private)
	require.NoError(t, err)
	pkcs8, err := x509.MarshalPKCS8PrivateKey(private)
	require.NoError(t, err)
	cert, key = filepath.Join(t.TempDir(), "cert.pem"), filepath.Join(t.TempDir(), "key.pem")
	require.NoError(t, os.WriteFile(cert, pem.EncodeToMemory(&pem.Block{Type: "CERTIFICATE", Bytes: der}), 0o600))
	require.NoError(t, os.WriteFile(key, pem.EncodeToMemory(&pem.Block{Type: "PRIVATE KEY", Bytes: pkcs8}), 0o600))
	return cert, key
}

// TestHTTPAsksForTheSameCertificateAndToken: what guards gRPC guards HTTP.
func TestHTTPAsksForTheSameCertificateAndToken(t *testing.T) {
	cert, key := identity(t, "service")
	studio, studioKey := identity(t, "studio")
	other, otherKey := identity(t, "other")
	both := filepath.Join(t.TempDir(), "authorities.pem")
	var pems []byte
	for _, f := range []string{studio, other} {
		text, err := os.ReadFile(f)
		require.NoError(t, err)
		pems = append(pems, text...)
	}
	require.NoError(t, os.WriteFile(both, pems, 0o600))
	tokens := filepath.Join(t.TempDir(), "tokens")
	require.NoError(t, os.WriteFile(tokens, []byte("0123456789abcdef\n"), 0o600))
	s := start(t, "--http-address", "127.0.0.1:0", "--tls-cert", cert, "--tls-key", key,
		"--tls-client-ca", both, "--tls-client-names", "studio", "--token-file", tokens)

	ask := func(cert, key, token string) (*http.Response, error) {
		c := &tls.Config{InsecureSkipVerify: true}
		if cert != "" {
			pair, err := tls.LoadX509KeyPair(cert, key)
			require.NoError(t, err)
			c.Certificates = []tls.Certificate{pair}
		}
		transport := &http.Transport{TLSClientConfig: c}
		defer transport.CloseIdleConnections()
		body, err := protojson.Marshal(item(-120).GetBearing())
		require.NoError(t, err)
		r, err := http.NewRequestWithContext(t.Context(), http.MethodPost,
			"https://"+s.at.http+footwardv1.CheckService_CheckBearing_FullMethodName, strings.NewReader(string(body)))
		require.NoError(t, err)
		r.Header.Set("Content-Type", "application/json")
		if token != "" {
			r.Header.Set("Authorization", "Bearer "+token)
		}
		answer, err := transport.RoundTrip(r)
		if err == nil {
			err = answer.Body.Close()
		}
		return answer, err
	}
	_, err := ask("", "", "0123456789abcdef")
	require.Error(t, err, "no certificate")
	for _, c := range []struct {
		cert, key, token string
		want             int
	}{
		{studio, studioKey, "0123456789abcdef", http.StatusOK},
		{studio, studioKey, "fedcba9876543210", http.StatusUnauthorized},
		{studio, studioKey, "", http.StatusUnauthorized},
		{other, otherKey, "0123456789abcdef", http.StatusForbidden},
	} {
		r, err := ask(c.cert, c.key, c.token)
		require.NoError(t, err)
		assert.Equal(t, c.want, r.StatusCode)
		assert.Equal(t, c.want == http.StatusUnauthorized, r.Header.Get("WWW-Authenticate") == "Bearer")
	}
}

func TestHTTPTurnsAwayWhatIsTooMuch(t *testing.T) {
	s := start(t, "--http-address", "127.0.0.1:0", "--calls-at-once", "1", "--calls-waiting", "0")
	many := &footwardv1.CheckManyRequest{}
	for range 2000 {
		many.Items = append(many.Items, item(-120))
	}
	body, err := protojson.Marshal(many)
	require.NoError(t, err)
	var answered, refused atomic.Int64
	var all sync.WaitGroup
	for range 16 {
		all.Go(func() {
			code, text := postJSON(t, "http://"+s.at.http+footwardv1.CheckService_CheckMany_FullMethodName, string(body))
			switch code {
			case http.StatusOK:
				answered.Add(1)
			case http.StatusTooManyRequests:
				refused.Add(1)
				assert.Contains(t, text, `"reason":"OVERLOADED"`)
			default:
				assert.Fail(t, "unexpected", "%d %s", code, text)
			}
		})
	}
	all.Wait()
	assert.Positive(t, answered.Load())
	assert.Positive(t, refused.Load())
}

// TestHTTPHostsAreAskedForWhereNothingElseKeepsPagesOut: on this machine alone and
// without a certificate.
func TestHTTPHostsAreAskedForWhereNothingElseKeepsPagesOut(t *testing.T) {
	cert := []string{"--tls-cert", "c", "--tls-key", "k"}
	for _, c := range []struct {
		args []string
		want []string
	}{
		{[]string{"--http-address", "127.0.0.1:1"}, []string{"127.0.0.1"}},
		{[]string{"--http-address", "localhost:1"}, []string{"localhost"}},
		{append(cert, "--http-address", "127.0.0.1:1"), nil},
		{append(cert, "--http-address", "0.0.0.0:1"), nil},
		{[]string{"--http-address", "10.0.0.7:1", "--plaintext-to-other-machines"}, nil},
		{[]string{"--http-address", "127.0.0.1:1", "--http-hosts", "a.example, b.example"}, []string{"a.example", "b.example", "127.0.0.1"}},
		{[]string{"--http-address", "127.0.0.1:1", "--http-hosts", "*"}, nil},
		{append(cert, "--http-address", "0.0.0.0:1", "--http-hosts", "a.example"), []string{"a.example", "0.0.0.0"}},
	} {
		s, err := readSettings(c.args, nil, io.Discard)
		require.NoError(t, err)
		assert.Equal(t, c.want, s.hosts(), c.args)
	}
	for _, args := range [][]string{{"--http-hosts", "a.example"}, {"--http-address", "127.0.0.1:1", "--http-hosts", "https://a.example"}} {
		_, err := readSettings(args, nil, io.Discard)
		assert.ErrorContains(t, err, "http-hosts: ")
	}
}

func TestHTTPOnThisMachineRefusesOtherNames(t *testing.T) {
	s := start(t, "--http-address", "127.0.0.1:0", "--http-hosts", "checks.example.org")
	for host, want := range map[string]int{"": http.StatusOK, "checks.example.org": http.StatusOK, "evil.example": http.StatusForbidden} {
		r, err := http.NewRequestWithContext(t.Context(), http.MethodGet, "http://"+s.at.http+"/healthz", nil)
		require.NoError(t, err)
		r.Host = host
		transport := &http.Transport{}
		answer, err := transport.RoundTrip(r)
		require.NoError(t, err)
		require.NoError(t, answer.Body.Close())
		transport.CloseIdleConnections()
		assert.Equal(t, want, answer.StatusCode, host)
	}
}
