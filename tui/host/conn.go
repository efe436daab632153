package host

import (
	"net"
	"net/netip"
	"sync"
	"time"
)

// gate counts connections: by address, and those that have not yet said who
// they are.
type gate struct {
	inAll, byPlace int

	mu        sync.Mutex
	all       int
	strangers int
	places    map[netip.Prefix]*counts
}

type counts struct{ all int }

// guarded is a connection that is counted until it is closed.
type guarded struct {
	net.Conn
	gate  *gate
	place netip.Prefix

	mu             sync.Mutex
	closed, inside bool
	late           *time.Timer // closes one that comes to no session
}

// admit counts a new connection, or refuses it before anything is said.
func (g *gate) admit(c net.Conn) *guarded {
	at, err := netip.ParseAddrPort(c.RemoteAddr().String())
	if err != nil {
		return nil
	}
	p := place(at.Addr())
	g.mu.Lock()
	defer g.mu.Unlock()
	if g.places == nil {
		g.places = map[netip.Prefix]*counts{}
	}
	n := g.places[p]
	if n == nil {
		n = &counts{}
	}
	if g.all >= g.inAll || n.all >= g.byPlace || g.strangers >= strangersInAll {
		return nil
	}
	g.places[p] = n
	g.all++
	g.strangers++
	n.all++
	if t, ok := c.(*net.TCPConn); ok {
		_ = t.SetWriteBuffer(socketBytes) // what the system may hold for one who does not read
	}
	in := &guarded{Conn: c, gate: g, place: p}
	in.late = time.AfterFunc(2*handshakeLimit, func() { _ = in.Close() })
	return in
}

// known says that the connection's owner is admitted.
func (c *guarded) known() {
	c.mu.Lock()
	defer c.mu.Unlock()
	if !c.closed && !c.inside {
		c.inside = true
		c.late.Stop()
		c.gate.count(c.place, 0, -1)
	}
}

func (c *guarded) Close() error {
	c.mu.Lock()
	if !c.closed {
		c.closed = true
		c.late.Stop()
		stranger := -1
		if c.inside {
			stranger = 0
		}
		c.gate.count(c.place, -1, stranger)
	}
	c.mu.Unlock()
	return c.Conn.Close()
}

func (g *gate) count(p netip.Prefix, all, strangers int) {
	g.mu.Lock()
	defer g.mu.Unlock()
	g.all += all
	g.strangers += strangers
	n := g.places[p]
	n.all += all
	if n.all == 0 {
		delete(g.places, p)
	}
}

// keepAlive asks a client whether it is there, for as long as it is: a quiet
// watcher stays, one whose machine has gone does not, nor does a connection
// without a session.
func (c *connection) keepAlive(stop <-chan struct{}) {
	tick := time.NewTicker(keepaliveEvery)
	defer tick.Stop()
	for idle := 0; ; {
		select {
		case <-stop:
			return
		case <-tick.C:
		}
		if idle++; c.count.Load() > 0 {
			idle = 0
		}
		if idle > int(idleLimit/keepaliveEvery) {
			c.kill()
			return
		}
		late := time.AfterFunc(keepaliveLimit, c.kill)
		_, _, err := c.conn.SendRequest("keepalive@openssh.com", true, nil)
		late.Stop()
		if err != nil {
			return
		}
	}
}
