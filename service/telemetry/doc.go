// Package telemetry counts and logs what the service does. Every series exists
// from the start at zero, and labels take their values from the contract only.
// Of what a caller sent, the log holds the id of the request and that of its
// trace, if their characters are those of ids, and nothing else.
package telemetry
