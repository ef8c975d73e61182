// Package telemetry counts and logs what the service does. Every series exists
// from the start at zero, labels take their values from the contract's enums
// only, and nothing that a caller sent is ever a label or a line of the log.
package telemetry
