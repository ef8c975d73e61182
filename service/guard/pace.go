package guard

import (
	"context"
	"runtime"
	"time"
)

// slice is how long a call computes before others of its lane have their turn.
const slice = 20 * time.Millisecond

// politeAfter is how long a call computes before it lets whatever is short go before.
const politeAfter = 500 * time.Microsecond

// join takes a call in that has begun elsewhere, whatever room there is, and waits
// until it is its turn to compute.
func (l *lane) join(ctx context.Context, t *turn) {
	l.mu.Lock()
	t.account = l.of(t.who)
	l.begin(t)
	l.next()
	l.mu.Unlock()
	l.wait(ctx, t)
}

// wait waits until it is the turn of a call that has begun; one whose caller leaves
// ends instead.
func (l *lane) wait(ctx context.Context, t *turn) {
	select {
	case <-t.on:
		return
	case <-ctx.Done():
	}
	l.mu.Lock()
	defer l.mu.Unlock()
	if t.state == ready {
		t.account.ready = drop(t.account.ready, t)
		t.state = leaving
	}
}

// charge books what a call has computed.
func (l *lane) charge(t *turn) {
	now := time.Now()
	t.account.spent += now.Sub(t.since)
	t.since = now
}

// pause lets others go before a call that has computed for a while; ctx is that of
// the call.
func (l *lane) pause(ctx context.Context, t *turn) {
	now := time.Now()
	if now.Sub(t.looked) < politeAfter {
		return
	}
	t.looked = now
	if l.turns == 0 || now.Sub(t.since) < slice {
		runtime.Gosched()
		return
	}
	l.mu.Lock()
	if t.state != computing {
		l.mu.Unlock()
		return
	}
	l.charge(t)
	l.computing--
	t.state = ready
	t.account.ready = append(t.account.ready, t)
	l.next()
	l.mu.Unlock()
	l.wait(ctx, t)
}
