package guard

import (
	"context"
	"net/http"

	"google.golang.org/grpc/credentials"
	"google.golang.org/grpc/metadata"
	"google.golang.org/grpc/peer"
)

// Admit says why the sender of a request over HTTP may not call, before anything of
// its body is read; nil: it may.
func (d *Door) Admit(r *http.Request) error {
	ctx := metadata.NewIncomingContext(r.Context(), metadata.MD{"authorization": r.Header.Values("Authorization")})
	p := &peer.Peer{}
	if r.TLS != nil {
		p.AuthInfo = credentials.TLSInfo{State: *r.TLS}
	}
	return d.o.Callers.check(peer.NewContext(ctx, p), "", d.o.Tally)
}

// Arrive waits for room for a body of n bytes, or of the largest when n is negative.
// done gives it back.
func (d *Door) Arrive(ctx context.Context, n int64) (done func(), err error) {
	if n < 0 || n > int64(d.o.MessageBytes) {
		n = int64(d.o.MessageBytes)
	}
	taken, full, err := d.arriving.take(ctx, int(n))
	switch {
	case full:
		return nil, d.full()
	case err != nil:
		return nil, err
	}
	return func() { d.arriving.give(taken) }, nil
}
