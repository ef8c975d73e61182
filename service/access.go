package main

import (
	"context"
	"errors"
	"flag"
	"fmt"
	"log/slog"
	"net"
	"strings"

	"footward.example/footward/service/guard"
	"footward.example/footward/service/server"
)

// access are the settings of who may call, and how that is encrypted.
type access struct {
	cert, key, clientCA string
	clientNames, tokens string
}

func (a *access) flags(f *flag.FlagSet) {
	f.StringVar(&a.cert, "tls-cert", "", "encrypt with the certificate in this `FILE` (PEM, TLS 1.3); read again when it changes, as are the other files")
	f.StringVar(&a.key, "tls-key", "", "`FILE` of the certificate's key (PEM)")
	f.StringVar(&a.clientCA, "tls-client-ca", "", "take only clients with a certificate signed by an authority in this `FILE` (PEM)")
	f.StringVar(&a.clientNames, "tls-client-names", "", "take only clients whose certificate has one of these `NAMES` (DNS, URI or common name), with commas between; empty: any")
	f.StringVar(&a.tokens, "token-file", "", "take only calls with a bearer token out of this `FILE`: one a line, at least 16 characters, # begins a comment")
}

// names are the client names that are allowed.
func (a *access) names() []string { return names(a.clientNames) }

// names are those of a list with commas between.
func names(list string) []string {
	var out []string
	for _, n := range strings.Split(list, ",") {
		if n = strings.TrimSpace(n); n != "" {
			out = append(out, n)
		}
	}
	return out
}

func (a *access) check(addresses ...string) (wrong []error) {
	if (a.cert == "") != (a.key == "") {
		wrong = append(wrong, errors.New("tls-cert: goes with --tls-key, and that with it"))
	}
	if a.clientCA != "" && a.cert == "" {
		wrong = append(wrong, errors.New("tls-client-ca: needs --tls-cert"))
	}
	if a.clientNames != "" && (a.clientCA == "" || len(a.names()) == 0) {
		wrong = append(wrong, errors.New("tls-client-names: needs --tls-client-ca, and at least one name"))
	}
	for _, address := range addresses {
		if host, _, err := net.SplitHostPort(address); a.tokens != "" && a.cert == "" && err == nil && !loopback(host) {
			wrong = append(wrong, fmt.Errorf("token-file: tokens would travel in the clear: needs --tls-cert, or another address than %s, on this machine alone", address))
		}
	}
	return wrong
}

// read returns what puts into the options what the files hold, and what has them looked
// at anew. Reading ends with ctx, for a pipe may keep silent.
func (a *access) read(ctx context.Context, log *slog.Logger) (put func(*server.Options), look func(), err error) {
	type held struct {
		o    server.Options
		look []func()
		err  error
	}
	done := make(chan held, 1)
	go func() {
		var h held
		h.look, h.err = a.into(&h.o, log)
		done <- h
	}()
	select {
	case h := <-done:
		return func(o *server.Options) { o.TLS, o.Callers = h.o.TLS, h.o.Callers }, func() {
			for _, look := range h.look {
				look()
			}
		}, h.err
	case <-ctx.Done():
		return nil, nil, ctx.Err()
	}
}

func (a *access) into(o *server.Options, log *slog.Logger) (looks []func(), err error) {
	if a.cert != "" {
		var look func()
		files := guard.CertificateFiles{Cert: a.cert, Key: a.key, ClientCA: a.clientCA}
		if o.TLS, look, err = files.TLSAndLook(log); err != nil {
			return nil, err
		}
		looks = append(looks, look)
	}
	o.Callers.Names = a.names()
	if a.tokens != "" {
		if o.Callers.Tokens, err = guard.ReadTokens(a.tokens, 0, log); err != nil {
			return nil, err
		}
		looks = append(looks, o.Callers.Tokens.Look)
	}
	return looks, nil
}

// LogValue implements slog.LogValuer.
func (a access) LogValue() slog.Value {
	return slog.GroupValue(
		slog.String("tls_cert", a.cert), slog.String("tls_client_ca", a.clientCA),
		slog.Any("tls_client_names", a.names()), slog.String("token_file", a.tokens))
}
