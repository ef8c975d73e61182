// Package api answers the RPCs: it turns a request into the kernel's input and
// the kernel's result into a response. Units change here and nowhere else.
package api
