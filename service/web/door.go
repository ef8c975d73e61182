package web

import (
	"context"
	"net/http"

	"google.golang.org/grpc/codes"
	"google.golang.org/grpc/status"
)

// Door is asked before a body is read; a *guard.Door is one. What it refuses with is
// a status of gRPC.
type Door interface {
	// Admit says whether the sender may call.
	Admit(r *http.Request) error
	// Arrive waits for room for a body of so many bytes; negative: that is not known.
	Arrive(ctx context.Context, bytes int64) (done func(), err error)
}

// doored is the front behind a door; nil: none.
type doored struct {
	*front
	door Door
}

// ServeHTTP implements http.Handler. What is no call, the front refuses unread.
func (d doored) ServeHTTP(w http.ResponseWriter, r *http.Request) {
	m, called := d.methods[r.URL.Path]
	if d.door == nil || !called || r.Method != http.MethodPost {
		d.front.ServeHTTP(w, r)
		return
	}
	if err := d.door.Admit(r); err != nil {
		refuseBy(w, err)
		return
	}
	if !m.streams { // whose body never ends
		done, err := d.door.Arrive(r.Context(), r.ContentLength)
		if err != nil {
			refuseBy(w, err)
			return
		}
		defer done()
	}
	d.front.ServeHTTP(w, r)
}

// refuseBy answers with the status of a refusal, its details included.
func refuseBy(w http.ResponseWriter, err error) {
	s := status.Convert(err)
	body, err := marshal.Marshal(s.Proto())
	if err != nil {
		http.Error(w, "{}", http.StatusInternalServerError)
		return
	}
	h := w.Header()
	h.Set("Content-Type", "application/json")
	h.Set("X-Content-Type-Options", "nosniff")
	code := http.StatusInternalServerError
	switch s.Code() {
	case codes.Unauthenticated:
		code = http.StatusUnauthorized
		h.Set("WWW-Authenticate", "Bearer")
	case codes.PermissionDenied:
		code = http.StatusForbidden
	case codes.ResourceExhausted:
		code = http.StatusTooManyRequests
		h.Set("Retry-After", retryAfter)
	case codes.DeadlineExceeded:
		code = http.StatusGatewayTimeout
	}
	w.WriteHeader(code)
	_, _ = w.Write(body)
}
