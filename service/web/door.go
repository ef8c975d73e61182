package web

import (
	"context"
	"net/http"

	"google.golang.org/grpc/status"
)

// Door is asked before a body is read; a *guard.Door is one. What it refuses with is
// a status of gRPC.
type Door interface {
	// Admit says whether the sender may call.
	Admit(r *http.Request) error
	// Arrive waits for room for so many bytes of a message; negative: as many as it may
	// have. done gives it back.
	Arrive(ctx context.Context, bytes int64) (done func(), err error)
}

// everybody is the door of a server that has none.
type everybody struct{}

func (everybody) Admit(*http.Request) error { return nil }

func (everybody) Arrive(context.Context, int64) (func(), error) { return func() {}, nil }

// turnAway answers with what a door refuses with.
func turnAway(w http.ResponseWriter, err error) {
	s := status.Convert(err)
	writeStatus(w, httpStatus(s.Code()), s)
}
