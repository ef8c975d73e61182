package telemetry

import (
	"context"
	"crypto/rand"
	"strings"

	"google.golang.org/grpc/metadata"
)

// RequestIDKey is the metadata by which a caller names its request, and by which
// the answer says under which name the log has it.
const RequestIDKey = "x-request-id"

// traceParentKey is the header of W3C Trace Context.
const traceParentKey = "traceparent"

// identity is what the log calls a call by.
type identity struct {
	request string
	given   bool // by the caller
	trace   Trace
}

// Trace is the trace that a call belongs to; the zero value is none.
type Trace struct {
	ID string // 32 digits of lower-case hexadecimal; empty: none
	// Sampled says that the trace is kept, so that its id leads somewhere.
	Sampled bool
}

type identityKey struct{}

// identityOf returns nil outside of calls.
func identityOf(ctx context.Context) *identity {
	who, _ := ctx.Value(identityKey{}).(*identity)
	return who
}

// requestID is the caller's own when it is fit for a log, else a new one.
func requestID(ctx context.Context) (id string, given bool) {
	if sent := metadata.ValueFromIncomingContext(ctx, RequestIDKey); len(sent) == 1 && fit(sent[0]) {
		return sent[0], true
	}
	return rand.Text(), false
}

// LongestID leaves room for several ids in a row, as proxies write them.
const LongestID = 128

// fit reports whether an id is short and holds nothing but letters, digits and
// the signs that ids are written with: no blank, quote or control character that
// could make one line of a log look like another.
func fit(id string) bool {
	if len(id) == 0 || len(id) > LongestID {
		return false
	}
	for _, c := range []byte(id) {
		letter := 'a' <= c && c <= 'z' || 'A' <= c && c <= 'Z' || '0' <= c && c <= '9'
		if !letter && strings.IndexByte("-_.:;+/=", c) < 0 {
			return false
		}
	}
	return true
}

// callersTrace reads the trace that the caller says it is in.
func callersTrace(ctx context.Context) Trace {
	if sent := metadata.ValueFromIncomingContext(ctx, traceParentKey); len(sent) == 1 {
		return parseTraceParent(sent[0])
	}
	return Trace{}
}

// Places in a traceparent: version-trace-parent-flags, as 00-32-16-2 digits.
const (
	traceFrom, traceTo   = 3, 35
	parentFrom, parentTo = 36, 52
	flagsFrom, flagsTo   = 53, 55
)

// parseTraceParent returns no trace when the text breaks the form. Versions after
// 00 may add to the end.
//
// Source: W3C Trace Context, Level 1, 3.2.
func parseTraceParent(text string) Trace {
	if len(text) < flagsTo || text[2] != '-' || text[traceTo] != '-' || text[parentTo] != '-' {
		return Trace{}
	}
	version, id := text[:2], text[traceFrom:traceTo]
	parent, flags := text[parentFrom:parentTo], text[flagsFrom:flagsTo]
	switch {
	case !hex(version) || !hex(id) || !hex(parent) || !hex(flags), version == "ff":
		return Trace{}
	case version == "00" && len(text) > flagsTo, len(text) > flagsTo && text[flagsTo] != '-':
		return Trace{}
	case strings.Trim(id, "0") == "", strings.Trim(parent, "0") == "":
		return Trace{}
	}
	// The last bit of the flags; odd digits of hexadecimal.
	return Trace{ID: id, Sampled: strings.IndexByte("13579bdf", flags[1]) >= 0}
}

func hex(text string) bool {
	for _, c := range []byte(text) {
		if (c < '0' || c > '9') && (c < 'a' || c > 'f') {
			return false
		}
	}
	return true
}
