package guard

import (
	"net"
	"net/netip"
	"sync"
	"time"
)

// Connections bound what a listener takes.
type Connections struct {
	Most int // at once
	// Each is the most of one address; 0: any number.
	Each int
	// Silence is how long a connection may go without a call before a caller was let
	// in on it; 0: any time.
	Silence time.Duration
	Tally   ConnectionTally // nil: none
}

// ConnectionTally counts connections, such as *telemetry.Connections.
type ConnectionTally interface {
	Accepted()
	Closed()
	// Full counts one turned away beyond the most, OfAddress beyond the most of its
	// address, Silent one that was closed since it went without a call.
	Full()
	OfAddress()
	Silent()
}

type noTally struct{}

func (noTally) Accepted()  {}
func (noTally) Closed()    {}
func (noTally) Full()      {}
func (noTally) OfAddress() {}
func (noTally) Silent()    {}

// LimitConnections closes every connection beyond the bounds as soon as it is
// accepted. Left in the queue of the system it would seem open to its client, and
// time out.
func LimitConnections(l net.Listener, c Connections) net.Listener {
	if c.Tally == nil {
		c.Tally = noTally{}
	}
	return &limitedListener{Listener: l, bounds: c, from: map[netip.Prefix]*address{}}
}

type limitedListener struct {
	net.Listener
	bounds Connections
	mu     sync.Mutex
	now    int
	from   map[netip.Prefix]*address // that have connections
}

// Accept implements net.Listener.
func (l *limitedListener) Accept() (net.Conn, error) {
	for {
		c, err := l.Listener.Accept()
		if err != nil {
			return nil, err
		}
		if taken := l.take(c); taken != nil {
			taken.watch(l.bounds.Silence, l.bounds.Tally.Silent)
			return taken, nil
		}
		_ = c.Close()
	}
}

// take returns nil when there is no place.
func (l *limitedListener) take(c net.Conn) *limitedConn {
	at, known := network(c.RemoteAddr())
	l.mu.Lock()
	defer l.mu.Unlock()
	from := l.from[at]
	switch {
	case l.now >= l.bounds.Most:
		l.bounds.Tally.Full()
		return nil
	case known && l.bounds.Each > 0 && from != nil && from.connections >= l.bounds.Each:
		l.bounds.Tally.OfAddress()
		return nil
	}
	if from == nil {
		from = &address{}
		if known {
			l.from[at] = from
		}
	}
	l.now++
	from.connections++
	l.bounds.Tally.Accepted()
	out := &limitedConn{Conn: c, from: from}
	out.origin = &origin{c.RemoteAddr(), out}
	out.gone = sync.OnceFunc(func() { l.gone(at, from) })
	return out
}

func (l *limitedListener) gone(at netip.Prefix, from *address) {
	l.mu.Lock()
	defer l.mu.Unlock()
	l.now--
	l.bounds.Tally.Closed()
	if from.connections--; from.connections == 0 && l.from[at] == from {
		delete(l.from, at)
	}
}
