// Package guard stands before the handlers: it turns what a schema forbids into
// violations in a designer's words, puts all of them into one status, and keeps
// a fault in one call from ending the others.
package guard
