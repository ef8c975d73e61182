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
	"os"
	"path/filepath"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"google.golang.org/grpc/codes"
	"google.golang.org/grpc/status"

	"footward.example/footward/client"
)

// selfSigned writes a certificate that is its own authority, for both sides.
func selfSigned(t *testing.T, cert, key string) *tls.Config {
	t.Helper()
	private, err := ecdsa.GenerateKey(elliptic.P256(), rand.Reader)
	require.NoError(t, err)
	c := &x509.Certificate{
		SerialNumber: big.NewInt(1), Subject: pkix.Name{CommonName: "studio"}, DNSNames: []string{"localhost"},
		NotBefore: time.Now().Add(-time.Hour), NotAfter: time.Now().Add(time.Hour),
		IsCA: true, BasicConstraintsValid: true,
	}
	der, err := x509.CreateCertificate(rand.Reader, c, c, &private.PublicKey, private)
	require.NoError(t, err)
	text, err := x509.MarshalPKCS8PrivateKey(private)
	require.NoError(t, err)
	require.NoError(t, os.WriteFile(cert, pem.EncodeToMemory(&pem.Block{Type: "CERTIFICATE", Bytes: der}), 0o600))
	require.NoError(t, os.WriteFile(key, pem.EncodeToMemory(&pem.Block{Type: "PRIVATE KEY", Bytes: text}), 0o600))
	pair, err := tls.LoadX509KeyPair(cert, key)
	require.NoError(t, err)
	roots := x509.NewCertPool()
	roots.AddCert(pair.Leaf)
	return &tls.Config{MinVersion: tls.VersionTLS13, RootCAs: roots, ServerName: "localhost", Certificates: []tls.Certificate{pair}}
}

// TestProcessAsksForNameAndToken sets everything by which callers are told apart.
func TestProcessAsksForNameAndToken(t *testing.T) {
	const token = "birch-and-alder-1984"
	dir := t.TempDir()
	cert, key, tokens := filepath.Join(dir, "cert.pem"), filepath.Join(dir, "key.pem"), filepath.Join(dir, "tokens")
	config := selfSigned(t, cert, key)
	require.NoError(t, os.WriteFile(tokens, []byte("# studio\n"+token+"\n"), 0o600))
	for names, want := range map[string]codes.Code{"pipeline, studio": codes.OK, "pipeline": codes.PermissionDenied} {
		p := launch(t, "--tls-cert", cert, "--tls-key", key, "--tls-client-ca", cert, "--tls-client-names", names, "--token-file", tokens)
		c := p.dial(t, client.WithTLS(config), client.WithToken(func() (string, error) { return token, nil }))
		_, err := c.CheckBearing(t.Context(), item(-120).GetBearing())
		assert.Equal(t, want, status.Code(err), "%v", err)
		if want == codes.OK {
			_, err = p.dial(t, client.WithTLS(config)).CheckBearing(t.Context(), item(-120).GetBearing())
			assert.Equal(t, codes.Unauthenticated, status.Code(err))
		}
		_, err = p.dial(t).CheckBearing(t.Context(), item(-120).GetBearing())
		assert.Equal(t, codes.Unavailable, status.Code(err), "not in the clear")
		assert.NotContains(t, p.log.String(), token)
	}
}

func TestFilesThatCannotBeReadEndTheStart(t *testing.T) {
	for _, args := range [][]string{{"--tls-cert", "none", "--tls-key", "none"}, {"--token-file", "none"}} {
		args = append(args, "--grpc-address", "127.0.0.1:0", "--metrics-address", "")
		assert.Equal(t, failed, run(t.Context(), args, nil, io.Discard, io.Discard))
	}
}
