package guard

import (
	"container/list"
	"context"
	"sync"

	"google.golang.org/grpc/status"
)

// rooms are memory that messages share [bytes], the largest and those that are far
// smaller apart, so that these need not wait for those. What is small enough to be of
// no account passes by.
type rooms struct {
	small, middling int // up to which a message is
	largest, lesser *room
}

// Of the room for the largest messages, one that is middling has at most a share, and
// all of those together have a room of their own of another share.
const (
	middlingShare = 32
	lesserShare   = 4
)

func newRooms(most, small, queue int) *rooms {
	return &rooms{
		small: small, middling: max(small, most/middlingShare),
		largest: newRoom(most, queue), lesser: newRoom(max(small, most/lesserShare), queue),
	}
}

// of is the room for n bytes; nil: they need none.
func (r *rooms) of(n int) *room {
	switch {
	case n <= r.small:
		return nil
	case n <= r.middling:
		return r.lesser
	}
	return r.largest
}

// most is all that one message can have.
func (r *rooms) most() int { return r.largest.most }

// load is how much is in use.
func (r *rooms) load() int { return r.largest.load() + r.lesser.load() }

// take waits for n bytes. It returns how many to give back. full tells that too many
// wait already.
func (r *rooms) take(ctx context.Context, n int) (taken int, full bool, err error) {
	in := r.of(n)
	if in == nil {
		return 0, false, nil
	}
	return in.take(ctx, n)
}

// give returns what take has taken.
func (r *rooms) give(n int) {
	if in := r.of(n); in != nil {
		in.give(n)
	}
}

// room is where messages wait for bytes, first come first served.
type room struct {
	most  int
	queue int // the most that wait

	mu      sync.Mutex
	held    int
	waiting list.List // of *waiter
}

// waiter is a message that waits; let is closed when there is room for it.
type waiter struct {
	bytes int
	let   chan struct{}
}

func newRoom(most, queue int) *room { return &room{most: most, queue: queue} }

// load is how much of the room is in use.
func (r *room) load() int {
	r.mu.Lock()
	defer r.mu.Unlock()
	return r.held
}

func (r *room) take(ctx context.Context, n int) (taken int, full bool, err error) {
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

func (r *room) give(n int) {
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
