// Package internal is the calculation kernel. It knows nothing of the wire: no
// protobuf, no RPC, no input or output, no clock, no global state that changes.
// It counts in N, mm, MPa and rad. The test beside this file holds it to that.
package internal
