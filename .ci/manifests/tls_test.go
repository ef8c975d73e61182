package manifests

import (
	"crypto/ecdsa"
	"crypto/elliptic"
	"crypto/rand"
	"crypto/tls"
	"crypto/x509"
	"crypto/x509/pkix"
	"encoding/pem"
	"math/big"
	"os"
	"path/filepath"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"google.golang.org/grpc/credentials"
	core "k8s.io/api/core/v1"
)

// secret returns a folder with the files of a Secret of kind TLS, and the
// credentials of a client that the server is to let in.
func secret(t *testing.T) (folder string, encryption credentials.TransportCredentials) {
	t.Helper()
	key, err := ecdsa.GenerateKey(elliptic.P256(), rand.Reader)
	require.NoError(t, err)
	// One certificate is authority, server and client at once.
	about := &x509.Certificate{
		SerialNumber: big.NewInt(1), Subject: pkix.Name{CommonName: "footward"}, DNSNames: []string{"footward"},
		NotBefore: time.Now().Add(-time.Hour), NotAfter: time.Now().Add(time.Hour),
		IsCA: true, BasicConstraintsValid: true, KeyUsage: x509.KeyUsageDigitalSignature | x509.KeyUsageCertSign,
		ExtKeyUsage: []x509.ExtKeyUsage{x509.ExtKeyUsageServerAuth, x509.ExtKeyUsageClientAuth},
	}
	raw, err := x509.CreateCertificate(rand.Reader, about, about, key.Public(), key)
	require.NoError(t, err)
	plain, err := x509.MarshalPKCS8PrivateKey(key)
	require.NoError(t, err)
	folder = t.TempDir()
	certificate := pem.EncodeToMemory(&pem.Block{Type: "CERTIFICATE", Bytes: raw})
	for name, text := range map[string][]byte{
		"tls.crt": certificate, "ca.crt": certificate,
		"tls.key": pem.EncodeToMemory(&pem.Block{Type: "PRIVATE KEY", Bytes: plain}),
	} {
		require.NoError(t, os.WriteFile(filepath.Join(folder, name), text, 0o600))
	}
	trusted := x509.NewCertPool()
	require.True(t, trusted.AppendCertsFromPEM(certificate))
	return folder, credentials.NewTLS(&tls.Config{
		ServerName: "footward", RootCAs: trusted, MinVersion: tls.VersionTLS13,
		Certificates: []tls.Certificate{{Certificate: [][]byte{raw}, PrivateKey: key}},
	})
}

// TestSecretReachesTheServer holds the volume of the Secret to the settings.
func TestSecretReachesTheServer(t *testing.T) {
	c := kustomize(t, "mutual-tls")
	pod, at := c.deployment.Spec.Template.Spec, c.pod(t)
	require.Len(t, pod.Volumes, 1)
	require.NotNil(t, pod.Volumes[0].Secret)
	assert.Equal(t, int32(0o440), *pod.Volumes[0].Secret.DefaultMode)
	assert.Equal(t, *pod.SecurityContext.RunAsGroup, *pod.SecurityContext.FSGroup, "whose group the files have")
	assert.Equal(t, []core.VolumeMount{{Name: pod.Volumes[0].Name, MountPath: "/etc/footward/tls", ReadOnly: true}}, at.VolumeMounts,
		"as a folder, so that renewed files arrive")
	given := c.environment(t)
	for setting, file := range map[string]string{"tls-cert": "tls.crt", "tls-key": "tls.key", "tls-client-ca": "ca.crt"} {
		assert.Equal(t, filepath.Join("/etc/footward/tls", file), given[variable(setting)])
	}
	for _, p := range c.service.Spec.Ports {
		assert.Nil(t, p.AppProtocol, "h2c is HTTP/2 in the clear")
	}
}
