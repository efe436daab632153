package host

import (
	"cmp"
	"errors"
	"maps"
	"net"
	"net/netip"
	"os"
	"sync"
	"time"
)

// gate counts connections: by address, and those that have not yet said who
// they are.
type gate struct {
	inAll, byPlace int
	times          times
	refused        func(net.Conn, error) // told of one that is admitted and comes to no session; may be nil

	mu        sync.Mutex
	all       int
	strangers int
	places    map[netip.Prefix]*counts
}

// counts are one address's: connections, and how fast they came.
type counts struct {
	all   int
	comes *bucket
}

// guarded is a connection that is counted until it is closed.
type guarded struct {
	net.Conn
	gate  *gate
	place netip.Prefix
	rate  *bucket       // of the bytes that come, whatever they are
	over  chan struct{} // closed with it

	began          time.Time
	mu             sync.Mutex
	closed, inside bool
	late           *time.Timer // closes one that comes to no session
	why            string      // the host has ended it
}

// Read takes bytes no faster than anybody types, or sends a sheet: what a client
// can make the host compute, with requests, new keys or noise, is bounded by that.
func (c *guarded) Read(p []byte) (int, error) {
	n, err := c.Conn.Read(p)
	c.blame(err)
	if n > 0 {
		if rest(c.rate.take(n), c.over, nil) != nil {
			return n, net.ErrClosed
		}
	}
	return n, err
}

// Write fails with the deadlines as Read does, and whichever is first says why.
func (c *guarded) Write(p []byte) (int, error) {
	n, err := c.Conn.Write(p)
	c.blame(err)
	return n, err
}

// blame notes which of the times was over.
func (c *guarded) blame(err error) {
	if !errors.Is(err, os.ErrDeadlineExceeded) {
		return
	}
	c.mu.Lock()
	defer c.mu.Unlock()
	switch t := c.gate.times; {
	case c.why != "":
	case time.Since(c.began) >= t.visit:
		c.why = "no visit is longer than " + t.visit.String()
	default:
		c.why = "nothing came for " + t.idle.String()
	}
}

// cut ends a connection and keeps why; the first reason stands.
func (c *guarded) cut(why string) {
	c.mu.Lock()
	c.why = cmp.Or(c.why, why)
	c.mu.Unlock()
	_ = c.Close()
}

// reason is why the connection ended.
func (c *guarded) reason() string {
	c.mu.Lock()
	defer c.mu.Unlock()
	return cmp.Or(c.why, "hung up")
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
	n := g.at(p)
	if n == nil || g.all >= g.inAll || n.all >= g.byPlace || g.strangers >= strangersInAll || !n.comes.spare(1) {
		return nil
	}
	g.all++
	g.strangers++
	n.all++
	if t, ok := c.(*net.TCPConn); ok {
		_ = t.SetWriteBuffer(socketBytes) // what the system may hold for one who does not read
	}
	in := &guarded{Conn: c, gate: g, place: p, rate: newBucket(wireBurst, wirePerSecond), over: make(chan struct{}), began: time.Now()}
	in.mu.Lock() // the timer reads it
	defer in.mu.Unlock()
	in.late = time.AfterFunc(2*g.times.handshake, func() {
		in.cut("it came to no session within " + (2 * g.times.handshake).String())
		if g.refused != nil {
			g.refused(in, errors.New(in.reason()))
		}
	})
	return in
}

// at gives the counts of an address. Those that nobody needs any more are
// forgotten where there are many; nil where there are too many all the same.
func (g *gate) at(p netip.Prefix) *counts {
	if g.places == nil {
		g.places = map[netip.Prefix]*counts{}
	}
	if n := g.places[p]; n != nil {
		return n
	}
	if len(g.places) >= addressesKept {
		maps.DeleteFunc(g.places, func(_ netip.Prefix, n *counts) bool { return n.all == 0 && n.comes.full() })
	}
	if len(g.places) >= addressesKept {
		return nil
	}
	n := &counts{comes: newBucket(comesBurst*float64(g.byPlace), comesPerSecond)}
	g.places[p] = n
	return n
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
		close(c.over)
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
	g.places[p].all += all
}

// keepAlive asks a client whether it is there, for as long as it is: a quiet
// watcher stays, one whose machine has gone does not, nor does a connection
// without a session.
func (c *connection) keepAlive(h *Host, stop <-chan struct{}) {
	t := h.gate.times
	tick := time.NewTicker(t.ask)
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
		if idle > int(t.idle/t.ask) {
			c.below.cut("no session was open for " + t.idle.String())
			h.ended("a connection ended", c.below, c.below.reason())
			return
		}
		late := time.AfterFunc(t.answer, func() { c.below.cut("the client did not answer for " + t.answer.String()) })
		_, _, err := c.conn.SendRequest("keepalive@openssh.com", true, nil)
		late.Stop()
		if err != nil {
			return
		}
	}
}
