package web

import (
	"net/http"

	"google.golang.org/grpc/codes"
	"google.golang.org/grpc/status"
)

// refusal is why a request does not become a call.
type refusal struct {
	http int
	code codes.Code
	text string
}

// write answers with a google.rpc.Status, as refused calls are answered.
func (f *refusal) write(w http.ResponseWriter) {
	body, err := marshal.Marshal(status.New(f.code, f.text).Proto())
	if err != nil {
		http.Error(w, "{}", http.StatusInternalServerError)
		return
	}
	w.Header().Set("Content-Type", "application/json")
	w.WriteHeader(f.http)
	_, _ = w.Write(body)
}

// retryAfter is when to try again what was turned away for want of room [s].
const retryAfter = "1"

// answer adds the headers that HTTP asks for beside a status.
type answer struct{ http.ResponseWriter }

// WriteHeader implements http.ResponseWriter.
func (a *answer) WriteHeader(code int) {
	a.Header().Del("Date") // gRPC leaves it empty; net/http then fills it in
	switch code {
	case http.StatusUnauthorized:
		a.add("WWW-Authenticate", "Bearer")
	case http.StatusTooManyRequests, http.StatusServiceUnavailable:
		a.add("Retry-After", retryAfter)
	}
	a.ResponseWriter.WriteHeader(code)
}

func (a *answer) add(name, value string) {
	if a.Header().Get(name) == "" {
		a.Header().Set(name, value)
	}
}

// Unwrap lets http.ResponseController reach the writer.
func (a *answer) Unwrap() http.ResponseWriter { return a.ResponseWriter }
