package web

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"math"
	"mime"
	"net/http"
	"net/url"
	"os"
	"slices"
	"strconv"
	"strings"
	"sync/atomic"
	"time"

	"google.golang.org/grpc/codes"

	"footward.example/footward/proto/schema"
)

// services begins the names of the services that are answered here.
const services = "footward.v1."

// maxTimeout is the longest time that a caller may ask for [s].
const maxTimeout = 3600

// passed are the headers that a call keeps, as metadata of gRPC.
var passed = []string{"Authorization", "User-Agent", "X-Request-Id", "Traceparent", "Tracestate"}

// front stands before the transcoder: it lets through whole requests in JSON to
// methods that exist, and answers everything else itself.
type front struct {
	methods      map[string]method // by path
	index        string
	messageBytes int
	requestTime  time.Duration
	calls        http.Handler
	leaving      atomic.Bool // each answer is the last on its connection
}

type method struct{ streams bool }

func newFront(calls Calls, o Options) (*front, error) {
	f := &front{methods: map[string]method{}, messageBytes: o.MessageBytes, requestTime: o.RequestTime}
	for name, service := range calls.GetServiceInfo() {
		if !strings.HasPrefix(name, services) {
			continue
		}
		for _, m := range service.Methods {
			f.methods["/"+name+"/"+m.Name] = method{streams: m.IsClientStream || m.IsServerStream}
		}
	}
	f.index = index(f.methods)
	var err error
	f.calls, err = transcoder(calls, f.methods)
	return f, err
}

// ServeHTTP implements http.Handler.
func (f *front) ServeHTTP(w http.ResponseWriter, r *http.Request) {
	w.Header().Set("X-Content-Type-Options", "nosniff")
	if f.leaving.Load() {
		w.Header().Set("Connection", "close")
	}
	if r.URL.Path == "/" && (r.Method == http.MethodGet || r.Method == http.MethodHead) {
		w.Header().Set("Content-Type", "text/plain; charset=utf-8")
		_, _ = io.WriteString(w, f.index)
		return
	}
	if r.URL.Path == "/openapi.json" && (r.Method == http.MethodGet || r.Method == http.MethodHead) {
		schema.ServeHTTP(w, r)
		return
	}
	call, refused := f.call(w, r)
	if refused != nil {
		refused.write(w)
		return
	}
	f.calls.ServeHTTP(&answer{ResponseWriter: w}, call)
}

// call returns the request that the transcoder gets, or why it gets none.
func (f *front) call(w http.ResponseWriter, r *http.Request) (*http.Request, *refusal) {
	m, known := f.methods[r.URL.Path]
	switch {
	case !known:
		return nil, &refusal{http.StatusNotFound, codes.NotFound, "there is nothing at this path; GET / lists what there is"}
	case r.Method != http.MethodPost:
		w.Header().Set("Allow", http.MethodPost)
		return nil, &refusal{http.StatusMethodNotAllowed, codes.Unimplemented, r.Method + " is not taken here, only POST"}
	case m.streams:
		return nil, &refusal{http.StatusNotImplemented, codes.Unimplemented,
			"streams are answered over gRPC only; CheckMany takes thousands of checks in one call"}
	case r.URL.RawQuery != "":
		return nil, &refusal{http.StatusBadRequest, codes.InvalidArgument, "a query (?) is not read; the body holds the whole request"}
	}
	if text := contentFault(r.Header); text != "" {
		return nil, &refusal{http.StatusUnsupportedMediaType, codes.InvalidArgument, text}
	}
	header, refused := headers(r.Header)
	if refused != nil {
		return nil, refused
	}
	body, refused := f.body(w, r)
	if refused != nil {
		return nil, refused
	}
	call := r.WithContext(r.Context())
	call.URL = &url.URL{Path: r.URL.Path}
	call.Header = header
	call.Body, call.ContentLength, call.TransferEncoding = io.NopCloser(bytes.NewReader(body)), int64(len(body)), nil
	return call, nil
}

// contentFault says why a body cannot be read, by what its headers call it.
// A web page cannot send this type to another site without being let, and
// nobody lets it here.
func contentFault(h http.Header) string {
	kind, parameters, err := mime.ParseMediaType(h.Get("Content-Type"))
	charset := parameters["charset"]
	switch {
	case err != nil || kind != "application/json" || charset != "" && !strings.EqualFold(charset, "utf-8"):
		return fmt.Sprintf("Content-Type is %q; it must be application/json, in UTF-8", h.Get("Content-Type"))
	case !slices.Contains([]string{"", "identity"}, h.Get("Content-Encoding")):
		return fmt.Sprintf("Content-Encoding is %q; a body is taken without compression only", h.Get("Content-Encoding"))
	}
	return ""
}

// headers returns those that go with the call. Answers are not compressed.
func headers(h http.Header) (http.Header, *refusal) {
	out := http.Header{"Content-Type": {"application/json"}}
	for _, name := range passed {
		if v := h.Values(name); len(v) > 0 {
			out[name] = v
		}
	}
	if text := h.Get("Request-Timeout"); text != "" {
		seconds, err := strconv.ParseFloat(text, 64)
		if err != nil || !(seconds > 0) || seconds > maxTimeout {
			return nil, &refusal{http.StatusBadRequest, codes.InvalidArgument,
				fmt.Sprintf("Request-Timeout is %q; it must be in seconds, over 0 to %d", text, maxTimeout)}
		}
		milliseconds := math.Ceil(seconds * 1e3)
		out.Set("X-Server-Timeout", strconv.FormatFloat(milliseconds/1e3, 'f', 3, 64))
	}
	return out, nil
}

// body returns the whole body. An empty one is a request without fields.
func (f *front) body(w http.ResponseWriter, r *http.Request) ([]byte, *refusal) {
	body, err := io.ReadAll(http.MaxBytesReader(w, r.Body, int64(f.messageBytes)))
	var large *http.MaxBytesError
	switch {
	case errors.As(err, &large):
		return nil, &refusal{http.StatusRequestEntityTooLarge, codes.ResourceExhausted,
			fmt.Sprintf("the body is larger than %d bytes; divide it into several calls", f.messageBytes)}
	case errors.Is(err, os.ErrDeadlineExceeded):
		return nil, &refusal{http.StatusRequestTimeout, codes.DeadlineExceeded,
			fmt.Sprintf("the body did not arrive within %v", f.requestTime)}
	case err != nil:
		return nil, &refusal{http.StatusBadRequest, codes.InvalidArgument, "the body broke off"}
	case len(body) == 0:
		return []byte("{}"), nil
	}
	return body, nil
}

// index is the text at the root.
func index(methods map[string]method) string {
	var paths []string
	for path, m := range methods {
		if !m.streams {
			paths = append(paths, "  POST "+path+"\n")
		}
	}
	slices.Sort(paths)
	return "Footward: structural checks of column bases, as JSON over HTTP.\n\n" +
		"A path takes its request as application/json in protobuf's JSON form, and answers\n" +
		"in it. GET /openapi.json says what every field means. Headers:\n" +
		"Request-Timeout in seconds, X-Request-Id.\n\n" + strings.Join(paths, "") +
		"\nEvery result is a design aid. A licensed engineer must check it.\n"
}
