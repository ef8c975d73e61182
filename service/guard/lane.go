package guard

import (
	"context"
	"runtime"
	"sync"
	"time"
)

// lane lets calls begin while there is room, those of the caller first that has had
// least, and where turns is set it has only so many of them compute at once, by turns.
type lane struct {
	name  string
	room  int // weight that may have begun
	share int // of one caller
	most  int // places of those that may wait
	turns int // that compute at once; 0: all that have begun

	mu        sync.Mutex
	accounts  []*account
	now       time.Duration // what the last had spent whose turn it was
	begun     int
	held      int
	computing int
}

// turn is a call in a lane.
type turn struct {
	who     string
	weight  int // once it has begun
	places  int // while it waits
	cost    time.Duration
	least   time.Duration
	patient bool // never turned away
	account *account
	state   state
	on      chan struct{} // has one when it may go on, or is turned away
	since   time.Time     // when it was last its turn to compute
	looked  time.Time     // when it last let others go before
}

type state uint8

const (
	outside   state = iota
	waiting         // to begin
	away            // turned away while it waited
	ready           // begun, waits to compute
	computing       // or free to, where all may
	leaving         // its caller is gone
)

// slip lets a call of weight 1 begin at once if none waits and there is room.
func (l *lane) slip() bool {
	l.mu.Lock()
	defer l.mu.Unlock()
	if l.begun >= l.room || l.anyWaiting() {
		return false
	}
	l.begun++
	return true
}

// done ends what slip let in.
func (l *lane) done() {
	l.mu.Lock()
	defer l.mu.Unlock()
	l.begun--
	l.next()
}

// enter waits until a call may begin. It reports what stops it: that too much waits,
// or the end of ctx.
func (l *lane) enter(ctx context.Context, t *turn) (shut bool, err error) {
	t.on = make(chan struct{}, 1)
	l.mu.Lock()
	t.account = l.of(t.who)
	if !t.patient && !(l.held == 0 && l.fits(t)) {
		l.makeRoom(t)
		if l.held+t.places > l.most || l.late(ctx, t) {
			l.tidy()
			l.mu.Unlock()
			return true, nil
		}
	}
	if !t.patient {
		l.held += t.places
	}
	t.state = waiting
	t.account.waiting = append(t.account.waiting, t)
	l.next()
	l.mu.Unlock()
	select {
	case <-t.on:
		return t.state == away, nil
	case <-ctx.Done():
		l.leave(t)
		return false, ctx.Err()
	}
}

// hopeless is how many times the time that is left a call must need, at the least, to
// be refused for that: estimates are no better.
const hopeless = 3

// late reports whether what a caller has waiting before a call is too much for it to
// end in time.
func (l *lane) late(ctx context.Context, t *turn) bool {
	deadline, has := ctx.Deadline()
	if !has {
		return false
	}
	need := t.least
	for _, before := range t.account.waiting {
		need += before.least
	}
	return need/time.Duration(hopeless*l.processors()) > time.Until(deadline)
}

// processors are those that the lane may have.
func (l *lane) processors() int {
	if l.turns > 0 {
		return l.turns
	}
	return runtime.GOMAXPROCS(0)
}

// anyWaiting reports whether even a patient call waits.
func (l *lane) anyWaiting() bool {
	for _, a := range l.accounts {
		if len(a.waiting) > 0 {
			return true
		}
	}
	return false
}

// fits reports whether a call may begin as far as room goes. The first call of a
// caller may begin beyond it, so that none holds up all others by calls that last.
func (l *lane) fits(t *turn) bool {
	a := t.account
	if l.turns > 0 && a.begun == 0 {
		return l.begun+t.weight <= 2*l.room
	}
	return l.begun+t.weight <= l.room && (a.begun == 0 || a.begun+t.weight <= l.share)
}

// makeRoom turns away calls of whoever has more waiting than the caller of t, the
// newest first.
func (l *lane) makeRoom(t *turn) {
	for l.held+t.places > l.most {
		a := l.longest()
		if a == nil || a == t.account || a.held() <= t.account.held()+t.places {
			return
		}
		victim := a.newest()
		a.waiting = drop(a.waiting, victim)
		l.held -= victim.places
		victim.state = away
		victim.on <- struct{}{}
	}
}

// full reports whether another call of a caller would be turned away.
func (l *lane) full(who func() string) bool {
	l.mu.Lock()
	defer l.mu.Unlock()
	if l.held < l.most || !l.anyWaiting() && l.begun < l.room {
		return false
	}
	defer l.tidy()
	own := l.of(who()).held()
	a := l.longest()
	return a == nil || a.held() <= own+1
}

// next lets begin what may, and compute whose turn it is.
func (l *lane) next() {
	for {
		a := l.poorest(func(a *account) bool {
			return len(a.waiting) > 0 && (a.begun == 0 || a.begun+a.waiting[0].weight <= l.share)
		})
		if a == nil || !l.fits(a.waiting[0]) {
			break
		}
		t := a.waiting[0]
		a.waiting = drop(a.waiting, t)
		if !t.patient {
			l.held -= t.places
		}
		l.begin(t)
	}
	for l.turns > 0 && l.computing < l.turns {
		a := l.poorest(func(a *account) bool { return len(a.ready) > 0 })
		if a == nil {
			break
		}
		l.compute(a.ready[0])
	}
	l.tidy()
}

func (l *lane) begin(t *turn) {
	l.begun += t.weight
	t.account.begun += t.weight
	if l.turns > 0 {
		t.state = ready
		t.account.ready = append(t.account.ready, t)
		return
	}
	t.account.spent += t.cost
	t.state = computing
	t.on <- struct{}{}
}

func (l *lane) compute(t *turn) {
	t.account.ready = drop(t.account.ready, t)
	l.computing++
	t.state, t.since = computing, time.Now()
	t.on <- struct{}{}
}

// leave ends a call, wherever it is.
func (l *lane) leave(t *turn) {
	l.mu.Lock()
	defer l.mu.Unlock()
	switch t.state {
	case waiting:
		t.account.waiting = drop(t.account.waiting, t)
		if !t.patient {
			l.held -= t.places
		}
	case away, outside:
	default:
		l.begun -= t.weight
		if t.account != nil {
			t.account.begun -= t.weight
			t.account.ready = drop(t.account.ready, t)
		}
		if l.turns > 0 && t.state == computing {
			l.charge(t)
			l.computing--
		}
	}
	t.state = outside
	l.next()
}

// load returns the weight that has begun, and the places of what waits.
func (l *lane) load() (busy, waits int) {
	l.mu.Lock()
	defer l.mu.Unlock()
	for _, a := range l.accounts {
		for _, t := range a.waiting {
			waits += t.places
		}
	}
	return l.begun, waits
}
