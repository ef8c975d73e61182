package main

import (
	"crypto/tls"
	"crypto/x509"
	"errors"
	"flag"
	"fmt"
	"os"
	"strings"
	"time"

	"footward.example/footward/client"
	"footward.example/footward/client/local"
)

// connection is where answers come from.
type connection struct {
	server, ca, cert, key, token string
	plaintext                    bool
	timeout                      time.Duration
}

func (c *connection) flags(f *flag.FlagSet) {
	f.StringVar(&c.server, "server", "", "ask the service at this `ADDRESS` (host:port); without it this program computes by itself")
	f.DurationVar(&c.timeout, "timeout", client.DefaultTimeout, "longest `TIME` to wait for one answer, such as 90s")
	f.StringVar(&c.ca, "ca", "", "trust the authorities in this `FILE` (PEM) in place of the system's")
	f.StringVar(&c.cert, "cert", "", "own certificate `FILE` (PEM), for a service that asks for one")
	f.StringVar(&c.key, "key", "", "key `FILE` (PEM) of the certificate")
	f.StringVar(&c.token, "token-file", "", "send the token in this `FILE`")
	f.BoolVar(&c.plaintext, "plaintext", false, "do not encrypt, although the service runs on another machine")
}

func (c *connection) open() (*client.Client, error) {
	options := []client.Option{client.WithTimeout(c.timeout), client.WithoutWaiting()}
	if c.server == "" {
		if c.ca+c.cert+c.key+c.token != "" || c.plaintext {
			return nil, errors.New("--ca, --cert, --key, --token-file and --plaintext go with --server")
		}
		return local.Start(options...)
	}
	if c.ca+c.cert+c.key != "" {
		config, err := c.tls()
		if err != nil {
			return nil, err
		}
		options = append(options, client.WithTLS(config))
	}
	if c.plaintext {
		options = append(options, client.WithPlaintext())
	}
	if c.token != "" {
		options = append(options, client.WithToken(func() (string, error) {
			text, err := os.ReadFile(c.token)
			return strings.TrimSpace(string(text)), err
		}))
	}
	return client.Dial(c.server, options...)
}

func (c *connection) tls() (*tls.Config, error) {
	config := &tls.Config{MinVersion: tls.VersionTLS12}
	if c.ca != "" {
		text, err := os.ReadFile(c.ca)
		if err != nil {
			return nil, err
		}
		config.RootCAs = x509.NewCertPool()
		if !config.RootCAs.AppendCertsFromPEM(text) {
			return nil, fmt.Errorf("%s holds no certificate", c.ca)
		}
	}
	if c.cert != "" || c.key != "" {
		pair, err := tls.LoadX509KeyPair(c.cert, c.key)
		if err != nil {
			return nil, err
		}
		config.Certificates = []tls.Certificate{pair}
	}
	return config, nil
}
