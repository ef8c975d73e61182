package guard

import (
	"net"
	"sync"
	"sync/atomic"
)

// LimitConnections closes every connection beyond most as soon as it is accepted.
// Left in the queue of the system it would seem open to its client, and time out.
func LimitConnections(l net.Listener, most int) net.Listener {
	return &limitedListener{Listener: l, most: int64(most)}
}

type limitedListener struct {
	net.Listener
	most int64
	now  atomic.Int64
}

func (l *limitedListener) Accept() (net.Conn, error) {
	for {
		c, err := l.Listener.Accept()
		if err != nil {
			return nil, err
		}
		if l.now.Add(1) <= l.most {
			return &countedConn{Conn: c, gone: sync.OnceFunc(func() { l.now.Add(-1) })}, nil
		}
		l.now.Add(-1)
		_ = c.Close()
	}
}

type countedConn struct {
	net.Conn
	gone func()
}

func (c *countedConn) Close() error {
	c.gone()
	return c.Conn.Close()
}
