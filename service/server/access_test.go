package server

import (
	"crypto/ecdsa"
	"crypto/elliptic"
	"crypto/rand"
	"crypto/tls"
	"crypto/x509"
	"crypto/x509/pkix"
	"encoding/pem"
	"log/slog"
	"math/big"
	"os"
	"path/filepath"
	"strings"
	"sync/atomic"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"google.golang.org/grpc/codes"
	"google.golang.org/grpc/health/grpc_health_v1"
	"google.golang.org/grpc/status"

	"footward.example/footward/client"
	"footward.example/footward/service/guard"
)

// authority signs certificates.
type authority struct {
	cert *x509.Certificate
	key  *ecdsa.PrivateKey
}

var serials atomic.Int64

func newAuthority(t *testing.T) *authority {
	t.Helper()
	a := &authority{}
	a.cert, a.key = sign(t, &x509.Certificate{
		Subject: pkix.Name{CommonName: "an authority"}, IsCA: true, BasicConstraintsValid: true, KeyUsage: x509.KeyUsageCertSign,
	}, nil)
	return a
}

func sign(t *testing.T, c *x509.Certificate, by *authority) (*x509.Certificate, *ecdsa.PrivateKey) {
	t.Helper()
	key, err := ecdsa.GenerateKey(elliptic.P256(), rand.Reader)
	require.NoError(t, err)
	c.SerialNumber = big.NewInt(serials.Add(1))
	c.NotBefore, c.NotAfter = time.Now().Add(-time.Hour), time.Now().Add(time.Hour)
	parent, signer := c, key
	if by != nil {
		parent, signer = by.cert, by.key
	}
	der, err := x509.CreateCertificate(rand.Reader, c, parent, &key.PublicKey, signer)
	require.NoError(t, err)
	made, err := x509.ParseCertificate(der)
	require.NoError(t, err)
	return made, key
}

// leaf signs a certificate for this machine, or for a client of that name.
func (a *authority) leaf(t *testing.T, name string) tls.Certificate {
	t.Helper()
	c, key := sign(t, &x509.Certificate{
		Subject: pkix.Name{CommonName: name}, DNSNames: []string{"localhost"},
		ExtKeyUsage: []x509.ExtKeyUsage{x509.ExtKeyUsageServerAuth, x509.ExtKeyUsageClientAuth},
	}, a)
	return tls.Certificate{Certificate: [][]byte{c.Raw}, PrivateKey: key, Leaf: c}
}

func (a *authority) pool() *x509.CertPool {
	p := x509.NewCertPool()
	p.AddCert(a.cert)
	return p
}

// trust is a client's side: it trusts a, and shows the certificates.
func (a *authority) trust(own ...tls.Certificate) *tls.Config {
	return &tls.Config{MinVersion: tls.VersionTLS12, RootCAs: a.pool(), ServerName: "localhost", Certificates: own}
}

// put replaces a file in one step.
func put(t *testing.T, path string, text []byte) {
	t.Helper()
	require.NoError(t, os.WriteFile(path+".new", text, 0o600))
	require.NoError(t, os.Rename(path+".new", path))
}

func write(t *testing.T, dir string, c tls.Certificate) {
	t.Helper()
	der, err := x509.MarshalECPrivateKey(c.PrivateKey.(*ecdsa.PrivateKey))
	require.NoError(t, err)
	put(t, filepath.Join(dir, "cert.pem"), pem.EncodeToMemory(&pem.Block{Type: "CERTIFICATE", Bytes: c.Certificate[0]}))
	put(t, filepath.Join(dir, "key.pem"), pem.EncodeToMemory(&pem.Block{Type: "EC PRIVATE KEY", Bytes: der}))
}

const look = 10 * time.Millisecond

// encrypted serves with a certificate of a in dir, and asks for one of clients
// when authorities of theirs are given.
func encrypted(t *testing.T, dir string, a, clients *authority, log *slog.Logger, o Options) *house {
	t.Helper()
	write(t, dir, a.leaf(t, "server"))
	files := guard.CertificateFiles{Cert: filepath.Join(dir, "cert.pem"), Key: filepath.Join(dir, "key.pem"), LookEvery: look}
	if clients != nil {
		files.ClientCA = filepath.Join(dir, "ca.pem")
		put(t, files.ClientCA, pem.EncodeToMemory(&pem.Block{Type: "CERTIFICATE", Bytes: clients.cert.Raw}))
	}
	var err error
	o.TLS, err = files.TLS(log)
	require.NoError(t, err)
	return start(t, o)
}

// serial is that of the certificate which a new connection is shown.
func (h *house) serial(t *testing.T, config *tls.Config) int64 {
	t.Helper()
	config = config.Clone()
	config.NextProtos = []string{"h2"}
	c, err := tls.Dial("tcp", h.at, config)
	require.NoError(t, err)
	defer func() { _ = c.Close() }()
	return c.ConnectionState().PeerCertificates[0].SerialNumber.Int64()
}

func TestCertificateIsReplacedUnderLoad(t *testing.T) {
	dir, a, log := t.TempDir(), newAuthority(t), &lines{}
	h := encrypted(t, dir, a, nil, slog.New(slog.NewTextHandler(log, nil)), production())
	stands := keepCalling(t, h.dial(t, client.WithTLS(a.trust())))
	fresh, calls := make(chan struct{}), make(chan int)
	go func() { // a new connection for every call
		n := 0
		for ; ; n++ {
			select {
			case <-fresh:
				calls <- n
				return
			default:
			}
			c, err := client.Dial(h.at, client.WithTLS(a.trust()), client.WithoutWaiting())
			if assert.NoError(t, err) {
				_, err = c.CheckBearing(t.Context(), bearing())
				assert.NoError(t, err)
				assert.NoError(t, c.Close())
			}
		}
	}()

	var slowest time.Duration
	for range 5 {
		next := a.leaf(t, "server")
		write(t, dir, next)
		began := time.Now()
		require.Eventually(t, func() bool { return h.serial(t, a.trust()) == next.Leaf.SerialNumber.Int64() }, enough, time.Millisecond)
		slowest = max(slowest, time.Since(began))
	}
	last := h.serial(t, a.trust())
	log.mu.Lock()
	log.text.Reset() // a certificate beside the key before may have been seen
	log.mu.Unlock()
	put(t, filepath.Join(dir, "cert.pem"), []byte("-----BEGIN CERTIFICATE-----\nbroken"))
	require.Eventually(t, func() bool {
		assert.Equal(t, last, h.serial(t, a.trust()), "the old one stays")
		return strings.Contains(log.String(), "cannot be used")
	}, enough, time.Millisecond)
	for until := time.Now().Add(10 * look); time.Now().Before(until); {
		require.Equal(t, last, h.serial(t, a.trust()))
	}
	assert.Equal(t, 1, strings.Count(log.String(), "cannot be used"), "told once")
	close(fresh)
	t.Logf("0 of %d calls failed, %d on connections of their own; a new certificate was shown after %v at most, looked for every %v",
		stands(), <-calls, slowest, look)
}

func TestBrokenFilesAreRefusedAtTheStart(t *testing.T) {
	dir := t.TempDir()
	log := slog.New(slog.DiscardHandler)
	write(t, dir, newAuthority(t).leaf(t, "server"))
	files := guard.CertificateFiles{Cert: filepath.Join(dir, "cert.pem"), Key: filepath.Join(dir, "none.pem")}
	_, err := files.TLS(log)
	assert.Error(t, err)
	files.Key, files.ClientCA = filepath.Join(dir, "key.pem"), filepath.Join(dir, "key.pem")
	_, err = files.TLS(log)
	assert.ErrorContains(t, err, "holds no certificate")
	for text, wrong := range map[string]string{"": "holds none", "# only\n": "holds none", "short\n": "line 1", "a token with blanks in it": "line 1"} {
		path := filepath.Join(dir, "tokens")
		put(t, path, []byte(text))
		_, err := guard.ReadTokens(path, 0, log)
		assert.ErrorContains(t, err, wrong)
		assert.NotContains(t, err.Error(), "short")
	}
}

func TestClientsShowACertificateWithAListedName(t *testing.T) {
	servers, clients := newAuthority(t), newAuthority(t)
	o := production()
	o.Callers.Names = []string{"studio", "pipeline"}
	h := encrypted(t, t.TempDir(), servers, clients, slog.New(slog.DiscardHandler), o)
	old := servers.trust(clients.leaf(t, "studio"))
	old.MaxVersion = tls.VersionTLS12
	for _, c := range []struct {
		name   string
		config *tls.Config
		want   codes.Code
		health codes.Code
	}{
		{"none", servers.trust(), codes.Unavailable, codes.Unavailable},
		{"other authority", servers.trust(servers.leaf(t, "studio")), codes.Unavailable, codes.Unavailable},
		{"TLS 1.2", old, codes.Unavailable, codes.Unavailable},
		{"name not listed", servers.trust(clients.leaf(t, "stranger")), codes.PermissionDenied, codes.OK},
		{"listed", servers.trust(clients.leaf(t, "studio")), codes.OK, codes.OK},
	} {
		t.Run(c.name, func(t *testing.T) {
			conn := h.dial(t, client.WithTLS(c.config))
			_, err := grpc_health_v1.NewHealthClient(conn.Conn()).Check(t.Context(), &grpc_health_v1.HealthCheckRequest{})
			assert.Equal(t, c.health, status.Code(err), "%v", err)
			_, err = conn.CheckBearing(t.Context(), bearing())
			assert.Equal(t, c.want, status.Code(err), "%v", err)
			if c.want == codes.PermissionDenied {
				assert.Equal(t, "NAME_NOT_ALLOWED", reason(err))
				stream, err := conn.StreamChecks(t.Context())
				require.NoError(t, err)
				_, err = stream.Recv()
				assert.Equal(t, c.want, status.Code(err), "%v", err)
			}
		})
	}
	assert.Equal(t, 2.0, h.value(t, "footward_calls_turned_away_total"))
}

// TestTokens go with the Go client's own options over TLS.
func TestTokens(t *testing.T) {
	const first, second = "oak-and-larch-4711", "spruce-and-pine-0815"
	dir, a, log := t.TempDir(), newAuthority(t), &lines{}
	path := filepath.Join(dir, "tokens")
	put(t, path, []byte("# of the studio\n\n"+first+"\nanother-token-besides\n"))
	o := production()
	var err error
	o.Callers.Tokens, err = guard.ReadTokens(path, look, slog.New(slog.NewTextHandler(log, nil)))
	require.NoError(t, err)
	h := encrypted(t, dir, a, nil, slog.New(slog.DiscardHandler), o)
	ask := func(token string) error {
		c := h.dial(t, client.WithTLS(a.trust()), client.WithToken(func() (string, error) { return token, nil }))
		_, err := c.CheckBearing(t.Context(), bearing())
		return err
	}

	bare := h.dial(t, client.WithTLS(a.trust()))
	_, err = bare.CheckBearing(t.Context(), bearing())
	assert.Equal(t, codes.Unauthenticated, status.Code(err))
	assert.Equal(t, "TOKEN_REFUSED", reason(err))
	stream, err := bare.StreamChecks(t.Context())
	require.NoError(t, err)
	_, err = stream.Recv()
	assert.Equal(t, codes.Unauthenticated, status.Code(err))
	_, err = grpc_health_v1.NewHealthClient(bare.Conn()).Check(t.Context(), &grpc_health_v1.HealthCheckRequest{})
	assert.NoError(t, err, "health is open")
	for _, wrong := range []string{"", first + "x", first[:16], "# of the studio", second} {
		assert.Equal(t, codes.Unauthenticated, status.Code(ask(wrong)), wrong)
	}
	assert.NoError(t, ask(first))
	assert.NoError(t, ask("another-token-besides"))

	put(t, path, []byte(second+"\n"))
	require.Eventually(t, func() bool { return ask(second) == nil }, enough, time.Millisecond)
	assert.Equal(t, codes.Unauthenticated, status.Code(ask(first)), "rotated out")
	put(t, path, []byte("broken\n"))
	require.Eventually(t, func() bool {
		assert.NoError(t, ask(second), "the old file stays")
		return strings.Contains(log.String(), "cannot be used")
	}, enough, time.Millisecond)
	for _, secret := range []string{first, second, "broken", "Bearer"} {
		assert.NotContains(t, log.String(), secret)
		assert.NotContains(t, h.log.String(), secret)
	}
}
