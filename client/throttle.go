package client

import "sync"

// A throttle counts failures against successes: it lets hundreds of calls that
// failed at once be repeated, yet holds repeats to a tenth of the calls when
// failures go on. That of the retry policy works by the same numbers.
const (
	throttleTokens = 1000
	throttleRatio  = 0.1
)

// throttle has spent nothing in the beginning.
type throttle struct {
	mu    sync.Mutex
	spent float64 // tokens
}

// count counts the end of a call and returns whether there is room for repeats.
func (t *throttle) count(failed bool) (room bool) {
	t.mu.Lock()
	defer t.mu.Unlock()
	if failed {
		t.spent = min(t.spent+1, throttleTokens)
	} else {
		t.spent = max(t.spent-throttleRatio, 0)
	}
	return t.spent < throttleTokens/2
}
