package guard

import (
	"context"
	"crypto/sha256"
	"net"

	"google.golang.org/grpc/credentials"
	"google.golang.org/grpc/metadata"
	"google.golang.org/grpc/peer"
)

// who tells apart the callers among whom work is shared: by token, else by the name in
// the certificate, else by address. Only what was verified counts: a caller could make
// up any number of tokens where none is asked for.
func (c Callers) who(ctx context.Context) string {
	if c.Tokens != nil {
		if sent := metadata.ValueFromIncomingContext(ctx, "authorization"); len(sent) == 1 {
			d := sha256.Sum256([]byte(sent[0]))
			return "token " + string(d[:])
		}
	}
	p, ok := peer.FromContext(ctx)
	if !ok || p.Addr == nil {
		return ""
	}
	if info, ok := p.AuthInfo.(credentials.TLSInfo); ok && len(info.State.VerifiedChains) > 0 {
		if names := namesOf(info.State.VerifiedChains[0][0]); len(names) > 0 {
			return "name " + names[0]
		}
	}
	if host, _, err := net.SplitHostPort(p.Addr.String()); err == nil {
		return host
	}
	return p.Addr.String()
}
