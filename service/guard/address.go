package guard

import (
	"context"
	"net"
	"net/netip"
	"sync"
	"sync/atomic"
	"time"

	"google.golang.org/grpc/peer"
)

// address is what one address of callers has under way.
type address struct {
	connections int // guarded by limitedListener
	calls       atomic.Int64
	health      atomic.Int64 // calls for it
	watches     atomic.Int64 // of them
}

// network is the part of an address that tells callers apart: all of it, and of
// IPv6 the 64 bits that a network is given, since one caller has the others for the
// taking.
func network(a net.Addr) (netip.Prefix, bool) {
	const given = 64
	at, err := netip.ParseAddrPort(a.String())
	if err != nil {
		return netip.Prefix{}, false
	}
	ip := at.Addr().Unmap().WithZone("")
	bits := ip.BitLen()
	if ip.Is6() {
		bits = given
	}
	p, err := ip.Prefix(bits)
	return p, err == nil
}

// origin is the address of a connection that leads back to it: gRPC hands it to
// calls as that of their peer.
type origin struct {
	net.Addr
	conn *limitedConn
}

// connectionOf returns the connection of a call; nil: it is not known, as over HTTP.
func connectionOf(ctx context.Context) *limitedConn {
	p, ok := peer.FromContext(ctx)
	if !ok {
		return nil
	}
	o, _ := p.Addr.(*origin)
	if o == nil {
		return nil
	}
	return o.conn
}

// limitedConn is a connection that counts.
type limitedConn struct {
	net.Conn
	origin *origin
	from   *address
	gone   func()

	closed atomic.Bool
	// One on which nobody was let in yet is closed when it has no call for a while.
	trusted atomic.Bool
	mu      sync.Mutex
	calls   int
	since   time.Time // without a call
	silence *time.Timer
}

// RemoteAddr implements net.Conn.
func (c *limitedConn) RemoteAddr() net.Addr { return c.origin }

// Close implements net.Conn.
func (c *limitedConn) Close() error {
	c.closed.Store(true)
	c.gone()
	if c.silence != nil {
		c.silence.Stop()
	}
	return c.Conn.Close()
}

// watch closes the connection when it has been silent for that long.
func (c *limitedConn) watch(most time.Duration, silent func()) {
	if most <= 0 {
		return
	}
	c.mu.Lock()
	defer c.mu.Unlock()
	c.since = time.Now()
	c.silence = time.AfterFunc(most, func() {
		c.mu.Lock()
		defer c.mu.Unlock()
		switch left := most - time.Since(c.since); {
		case c.trusted.Load() || c.closed.Load():
		case c.calls > 0:
			c.silence.Reset(most)
		case left > 0:
			c.silence.Reset(left)
		default:
			silent()
			_ = c.Close()
		}
	})
}

// begin tells that a call has come.
func (c *limitedConn) begin() {
	if !c.trusted.Load() {
		c.mu.Lock()
		defer c.mu.Unlock()
		c.calls++
	}
}

// end tells that a call which begin was told of before trust is over. It may be
// told of more ends than beginnings.
func (c *limitedConn) end() {
	if !c.trusted.Load() {
		c.mu.Lock()
		defer c.mu.Unlock()
		c.calls--
		c.since = time.Now()
	}
}

// trust tells that a caller was let in: the connection may be silent from now on.
func (c *limitedConn) trust() {
	if !c.trusted.Load() {
		c.trusted.Store(true)
	}
}

// TakeWatch takes one of the watches that there are in all and for each address. A
// bound of 0 is none.
func TakeWatch(ctx context.Context, all *atomic.Int64, most, mostEach int) (leave func(), ok bool) {
	var each *atomic.Int64
	if c := connectionOf(ctx); c != nil {
		each = &c.from.watches
	}
	if !take(all, each, most, mostEach) {
		return nil, false
	}
	return func() { giveBack(all, each) }, true
}
