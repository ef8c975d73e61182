package web

import (
	"encoding/json"
	"fmt"
	"io"
	"maps"
	"net/http"
	"slices"
	"strings"

	"google.golang.org/grpc/codes"
	"google.golang.org/grpc/status"

	"footward.example/footward/internal/basis"
	"footward.example/footward/proto/schema"
	"footward.example/footward/service/spelling"
	"footward.example/footward/service/version"
)

// noAnswer is the status of a call that ended well and had no answer.
var noAnswer = status.New(codes.Internal, "the call had no answer")

// addDocuments makes the table of what is served by GET.
func (f *front) addDocuments(more map[string]http.Handler) error {
	f.documents["/healthz"] = http.HandlerFunc(f.health)
	f.documents["/version"] = text(asJSON, versions())
	f.documents["/openapi.json"] = http.HandlerFunc(schema.ServeHTTP)
	for path, d := range more {
		if _, taken := f.documents[path]; taken || path == "/" || !strings.HasPrefix(path, "/") {
			return fmt.Errorf("JSON over HTTP: %q is no path for a further document", path)
		}
		f.documents[path] = d
	}
	f.documents["/"] = text("text/plain; charset=utf-8", f.index())
	return nil
}

// document answers GET and HEAD; they need neither token nor name, as health over
// gRPC does not.
func (f *front) document(w http.ResponseWriter, r *http.Request, d http.Handler) {
	if r.Method != http.MethodGet && r.Method != http.MethodHead {
		w.Header().Set("Allow", "GET, HEAD")
		refuse(w, &refusal{http.StatusMethodNotAllowed, codes.Unimplemented, spelling.Cut(r.Method, longestText) + " is not taken here, only GET"})
		return
	}
	d.ServeHTTP(w, r)
}

// health tells whether new calls are welcome, in the words of gRPC's health.
func (f *front) health(w http.ResponseWriter, _ *http.Request) {
	code, state := http.StatusOK, "SERVING"
	if f.leaving.Load() {
		code, state = http.StatusServiceUnavailable, "NOT_SERVING"
	}
	w.Header().Set("Content-Type", asJSON)
	w.Header().Set("Cache-Control", "no-store")
	w.WriteHeader(code)
	_, _ = io.WriteString(w, `{"status":"`+state+"\"}\n")
}

// versions names the build, as the provenance of every answer does.
func versions() string {
	t, _ := json.Marshal(struct { // cannot fail: two texts
		Service string `json:"service_version"`
		Kernel  int    `json:"kernel_revision"`
	}{version.String(), basis.Revision})
	return string(t) + "\n"
}

// text is a document that is always the same.
func text(kind, content string) http.Handler {
	return http.HandlerFunc(func(w http.ResponseWriter, _ *http.Request) {
		w.Header().Set("Content-Type", kind)
		_, _ = io.WriteString(w, content)
	})
}

// index is the text at the root.
func (f *front) index() string {
	var paths []string
	for path, m := range f.methods {
		if m.streams {
			path += "  (" + asLines + ": a request a line)"
		}
		paths = append(paths, "  POST "+path+"\n")
	}
	slices.Sort(paths)
	for _, path := range slices.Sorted(maps.Keys(f.documents)) {
		paths = append(paths, "  GET  "+path+"\n")
	}
	return "Footward: structural checks of column bases, as JSON over HTTP.\n\n" +
		"A path takes its request as application/json in protobuf's JSON form, and answers\n" +
		"in it. GET /openapi.json says what every field means. Headers:\n" +
		"Request-Timeout in seconds, X-Request-Id.\n\n" + strings.Join(paths, "") +
		"\nEvery result is a design aid. A licensed engineer must check it.\n"
}
