package guard

import (
	"crypto/tls"
	"crypto/x509"
	"fmt"
	"log/slog"
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
	config, _, err := c.TLSAndLook(log)
	return config, err
}

// TLSAndLook also returns what has the files looked at now, whether it is time or not.
func (c CertificateFiles) TLSAndLook(log *slog.Logger) (config *tls.Config, look func(), err error) {
	f := &fromFiles[*tls.Config]{what: "certificate", paths: []string{c.Cert, c.Key}, log: log, every: c.LookEvery, read: func() (*tls.Config, error) {
		warnOfOthers(log, c.Key, secret)
		warnOfOthers(log, c.Cert, public)
		if c.ClientCA != "" {
			warnOfOthers(log, c.ClientCA, public)
		}
		return c.config()
	}}
	if c.ClientCA != "" {
		f.paths = append(f.paths, c.ClientCA)
	}
	if f.every == 0 {
		f.every = LookEvery
	}
	if err := f.load(); err != nil {
		return nil, nil, err
	}
	first := f.get().Clone()
	first.GetConfigForClient = func(*tls.ClientHelloInfo) (*tls.Config, error) { return f.get(), nil }
	return first, f.look, nil
}

func (c CertificateFiles) config() (*tls.Config, error) {
	pair, err := c.pair()
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
	text, err := readSecret(c.ClientCA)
	if err != nil {
		return nil, fmt.Errorf("authorities of clients: %w", err)
	}
	config.ClientAuth, config.ClientCAs = tls.RequireAndVerifyClientCert, x509.NewCertPool()
	if !config.ClientCAs.AppendCertsFromPEM(text) {
		return nil, fmt.Errorf("authorities of clients: %s holds no certificate", c.ClientCA)
	}
	return config, nil
}

func (c CertificateFiles) pair() (tls.Certificate, error) {
	cert, err := readSecret(c.Cert)
	if err != nil {
		return tls.Certificate{}, err
	}
	key, err := readSecret(c.Key)
	if err != nil {
		return tls.Certificate{}, err
	}
	return tls.X509KeyPair(cert, key)
}
