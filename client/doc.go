// Package client calls a Footward service.
//
//	c, err := client.Dial("checks.example.org:443")
//	if err != nil {
//		return err
//	}
//	defer c.Close()
//	answer, err := c.CheckWeld(ctx, request)
//
// A part that does not hold is an answer, not an error: look at the verdict of
// its result. An error means that there is no answer; [Violations] tells which
// fields of the request were refused, if that is why.
//
// What a Client does without being asked: it spreads calls over every address
// that the target's name resolves to, leaves out those that are shutting down,
// calls again when a server cannot be reached or is lost in the middle of its
// answer (no method has side effects), and ends a call after [DefaultTimeout] when
// the context has no deadline. A call that a server with too much to do turns away
// is made once more after the delay that the server asks for, up to twice that so
// that callers do not come back together, if the deadline leaves room; when more
// than a tenth of the calls are turned away for long, repeats cease.
//
// A stream (StreamChecks) has no default deadline, since it may be meant to last;
// give its context one. A stream that is turned away before its first answer is
// opened once more like a call, unless more than a MiB was sent on it. One that
// breaks later is not taken up again: send what was not answered on a new one.
//
// Package local, below this one, answers the same calls inside the process.
package client
