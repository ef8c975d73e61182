package client

import (
	"crypto/tls"
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestLoopback(t *testing.T) {
	for target, want := range map[string]bool{
		"127.0.0.1:8080":                     true,
		"localhost:8080":                     true,
		"LOCALHOST":                          true,
		"[::1]:8080":                         true,
		"::1":                                true,
		"127.8.9.10":                         true,
		"dns:///localhost:8080":              true,
		"dns:localhost:8080":                 true,
		"passthrough:///127.0.0.1:1":         true,
		"unix:///run/footward.sock":          true,
		"unix:relative.sock":                 true,
		"10.0.0.1:8080":                      false,
		"checks.example.org:443":             false,
		"dns:///checks.example.org":          false,
		"dns://127.0.0.1/checks.example.org": false,
		"localhost.example.org:80":           false,
		"0.0.0.0:80":                         false,
		"dns://localhost":                    false,
		"":                                   false,
	} {
		assert.Equal(t, want, loopback(target), "%q", target)
	}
}

func TestEncryptionAndPlaintextExcludeEachOther(t *testing.T) {
	_, err := Dial("checks.example.org:443", WithTLS(&tls.Config{MinVersion: tls.VersionTLS13}), WithPlaintext())
	assert.Error(t, err)
}
