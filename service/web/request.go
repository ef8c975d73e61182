package web

import (
	"context"
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
	"time"

	"google.golang.org/grpc/codes"

	"footward.example/footward/service/spelling"
)

// Types of bodies: one message, and one a line.
const (
	asJSON  = "application/json"
	asLines = "application/x-ndjson"
)

// maxTimeout is the longest time that a caller may ask for [s].
const maxTimeout = 3600

// passed are the headers that a call keeps, as metadata of gRPC.
var passed = []string{"Authorization", "User-Agent", "X-Request-Id", "Traceparent", "Tracestate"}

// call is a request that becomes a call.
type call struct {
	w      http.ResponseWriter
	r      *http.Request
	header http.Header   // for gRPC
	within time.Duration // that its caller gives it; 0: not said
}

// call returns the call that a request asks for, or why it is none.
func (f *front) call(w http.ResponseWriter, r *http.Request, m method) (*call, *refusal) {
	kind := asJSON
	if m.streams {
		kind = asLines
	}
	switch {
	case r.Method != http.MethodPost:
		w.Header().Set("Allow", http.MethodPost)
		return nil, &refusal{http.StatusMethodNotAllowed, codes.Unimplemented, spelling.Cut(r.Method, longestText) + " is not taken here, only POST"}
	case r.URL.RawQuery != "":
		return nil, &refusal{http.StatusBadRequest, codes.InvalidArgument, "a query (?) is not read; the body holds the whole request"}
	}
	if text := contentFault(r.Header, kind); text != "" {
		return nil, &refusal{http.StatusUnsupportedMediaType, codes.InvalidArgument, text}
	}
	c := &call{w: w, r: r, header: http.Header{"Content-Type": {"application/grpc"}}}
	for _, name := range passed {
		if v := r.Header.Values(name); len(v) > 0 {
			c.header[name] = v
		}
	}
	return c, c.timeout(r.Header.Get("Request-Timeout"))
}

// contentFault says why a body cannot be read, by what its headers call it.
// A web page cannot send these types to another site without being let, and
// nobody lets it here.
func contentFault(h http.Header, want string) string {
	kind, parameters, err := mime.ParseMediaType(h.Get("Content-Type"))
	charset := parameters["charset"]
	switch {
	case err != nil || kind != want || charset != "" && !strings.EqualFold(charset, "utf-8"):
		text := fmt.Sprintf("Content-Type is %q; it must be %s, in UTF-8", spelling.Cut(h.Get("Content-Type"), longestText), want)
		if want == asLines {
			text += ": a request on each line, and an answer to each. CheckMany takes thousands of checks as " + asJSON
		}
		return text
	case !slices.Contains([]string{"", "identity"}, h.Get("Content-Encoding")):
		return fmt.Sprintf("Content-Encoding is %q; a body is taken without compression only", spelling.Cut(h.Get("Content-Encoding"), longestText))
	}
	return ""
}

// timeout reads the time that a caller gives the call.
func (c *call) timeout(text string) *refusal {
	if text == "" {
		return nil
	}
	seconds, err := strconv.ParseFloat(text, 64)
	if err != nil || !(seconds > 0) || seconds > maxTimeout {
		return &refusal{http.StatusBadRequest, codes.InvalidArgument,
			fmt.Sprintf("Request-Timeout is %q; it must be in seconds, over 0 to %d", spelling.Cut(text, longestText), maxTimeout)}
	}
	milliseconds := int64(math.Ceil(seconds * 1e3))
	c.within = time.Duration(milliseconds) * time.Millisecond
	c.header.Set("Grpc-Timeout", strconv.FormatInt(milliseconds, 10)+"m")
	return nil
}

// ask is the request that gRPC takes.
func (c *call) ask(ctx context.Context, messages io.ReadCloser) *http.Request {
	r := c.r.WithContext(ctx)
	r.URL = &url.URL{Path: c.r.URL.Path}
	r.Proto, r.ProtoMajor, r.ProtoMinor = "HTTP/2.0", 2, 0 // as gRPC will have it
	r.Header, r.Body, r.ContentLength, r.TransferEncoding = c.header, messages, -1, nil
	return r
}

// body returns the whole body. An empty one is a request without fields.
func (f *front) body(c *call) ([]byte, *refusal) {
	body, err := io.ReadAll(http.MaxBytesReader(c.w, c.r.Body, int64(f.messageBytes)))
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
