// Package server puts the service together: handlers, what stands before them,
// health and reflection. The program in package main above serves it on the
// network; package client/local serves it inside a process.
package server
