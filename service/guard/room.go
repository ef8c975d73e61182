package guard

import (
	"container/list"
	"context"
	"sync"

	"google.golang.org/grpc/status"
)

// room is memory that messages share [bytes]. Who finds none waits, first come first
// served; what is small enough to be of no account passes by.
type room struct {
	most, small int
	queue       int // the most that wait

	mu      sync.Mutex
	held    int
	waiting list.List // of *waiter
}

// waiter is a message that waits; let is closed when there is room for it.
type waiter struct {
	bytes int
	let   chan struct{}
}

func newRoom(most, small, queue int) *room { return &room{most: most, small: small, queue: queue} }

// load is how much of the room is in use.
func (r *room) load() int {
	r.mu.Lock()
	defer r.mu.Unlock()
	return r.held
}

// take waits for n bytes, which are at most those of the room. It returns how many
// to give back. full tells that too many wait already.
func (r *room) take(ctx context.Context, n int) (taken int, full bool, err error) {
	if n <= r.small {
		return 0, false, nil
	}
	n = min(n, r.most)
	r.mu.Lock()
	if r.waiting.Len() == 0 && r.held+n <= r.most {
		r.held += n
		r.mu.Unlock()
		return n, false, nil
	}
	if r.waiting.Len() >= r.queue {
		r.mu.Unlock()
		return 0, true, nil
	}
	w := &waiter{bytes: n, let: make(chan struct{})}
	at := r.waiting.PushBack(w)
	r.mu.Unlock()
	select {
	case <-w.let:
		return n, false, nil
	case <-ctx.Done():
	}
	r.mu.Lock()
	defer r.mu.Unlock()
	select {
	case <-w.let: // both at once: give the turn on
		r.held -= n
	default:
		r.waiting.Remove(at)
	}
	r.next()
	return 0, false, status.FromContextError(ctx.Err()).Err()
}

// give returns what take has taken.
func (r *room) give(n int) {
	if n == 0 {
		return
	}
	r.mu.Lock()
	defer r.mu.Unlock()
	r.held -= n
	r.next()
}

func (r *room) next() {
	for at := r.waiting.Front(); at != nil; at = r.waiting.Front() {
		w := at.Value.(*waiter)
		if r.held+w.bytes > r.most {
			return
		}
		r.waiting.Remove(at)
		r.held += w.bytes
		close(w.let)
	}
}
