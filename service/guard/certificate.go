package guard

import (
	"crypto/tls"
	"crypto/x509"
	"fmt"
	"log/slog"
	"os"
	"time"
)

// CertificateFiles are what a server shows its clients and asks of them, in PEM.
type CertificateFiles struct {
	Cert, Key string
	ClientCA  string        // authorities of the clients' certificates; empty: none is asked for
	LookEvery time.Duration // 0: LookEvery
}

// TLS returns how a server encrypts: TLS 1.3 at least, by files that are read
// again when they change. New connections take the new files; those that stand
// stay as they are. It fails when the files cannot be used.
func (c CertificateFiles) TLS(log *slog.Logger) (*tls.Config, error) {
	f := &fromFiles[*tls.Config]{what: "certificate", paths: []string{c.Cert, c.Key}, read: c.config, log: log, every: c.LookEvery}
	if c.ClientCA != "" {
		f.paths = append(f.paths, c.ClientCA)
	}
	if f.every == 0 {
		f.every = LookEvery
	}
	if err := f.load(); err != nil {
		return nil, err
	}
	first := f.get().Clone()
	first.GetConfigForClient = func(*tls.ClientHelloInfo) (*tls.Config, error) { return f.get(), nil }
	return first, nil
}

func (c CertificateFiles) config() (*tls.Config, error) {
	pair, err := tls.LoadX509KeyPair(c.Cert, c.Key)
	if err != nil {
		return nil, fmt.Errorf("certificate %s, key %s: %w", c.Cert, c.Key, err)
	}
	config := &tls.Config{
		MinVersion: tls.VersionTLS13, Certificates: []tls.Certificate{pair}, NextProtos: []string{"h2"},
		// A session that is taken up again would not be held to new authorities.
		SessionTicketsDisabled: true,
	}
	if c.ClientCA == "" {
		return config, nil
	}
	text, err := os.ReadFile(c.ClientCA)
	if err != nil {
		return nil, fmt.Errorf("authorities of clients: %w", err)
	}
	config.ClientAuth, config.ClientCAs = tls.RequireAndVerifyClientCert, x509.NewCertPool()
	if !config.ClientCAs.AppendCertsFromPEM(text) {
		return nil, fmt.Errorf("authorities of clients: %s holds no certificate", c.ClientCA)
	}
	return config, nil
}
