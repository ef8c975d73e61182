// Package guard stands before the handlers: it lets in who may call and what can
// be answered in time, turns what a schema forbids into violations in a designer's
// words, puts all of them into one status, and keeps a fault in one call from
// ending the others.
package guard
