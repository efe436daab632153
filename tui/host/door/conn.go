package door

import (
	"cmp"
	"context"
	"errors"
	"net"
	"net/netip"
	"os"
	"sync"
	"sync/atomic"
	"time"

	gossh "golang.org/x/crypto/ssh"
	"golang.org/x/time/rate"

	"trivet/tui/host/pace"
)

// Connection is counted until it is closed, and is what its sessions have in common.
type Connection struct {
	net.Conn
	gate   *Gate
	place  netip.Prefix
	counts *counts         // of the place
	rate   *rate.Limiter   // of the bytes that come, whatever they are
	ctx    context.Context // until it is closed, and why
	finish context.CancelCauseFunc

	began          time.Time
	spoke          atomic.Bool // a byte has come
	mu             sync.Mutex
	closed, inside bool
	late           *time.Timer // closes one that comes to no session
	deadline       atomic.Int64

	once     sync.Once // with the first session
	Who      Person
	asked    *rate.Limiter // sessions opened, and whatever was refused
	sessions atomic.Int32  // that are open
}

// Read takes bytes no faster than anybody types, or sends a sheet: what a client
// can make the host compute, with requests, new keys or noise, is bounded by that.
func (c *Connection) Read(p []byte) (int, error) {
	n, err := c.Conn.Read(p)
	c.blame(err)
	if n > 0 {
		c.spoke.Store(true)
		if pace.Take(c.ctx, c.rate, n) != nil {
			return n, net.ErrClosed
		}
	}
	if errors.Is(err, net.ErrClosed) && context.Cause(c.ctx) == errYielded {
		err = errYielded // as the log says it
	}
	return n, err
}

// Write fails with the deadlines as Read does, and whichever is first says why.
func (c *Connection) Write(p []byte) (int, error) {
	n, err := c.Conn.Write(p)
	c.blame(err)
	return n, err
}

// blame notes which of the times was over.
func (c *Connection) blame(err error) {
	switch t := c.gate.Times; {
	case !errors.Is(err, os.ErrDeadlineExceeded):
	case time.Since(c.began) >= t.Visit:
		c.finish(errors.New("no visit is longer than " + t.Visit.String()))
	default:
		c.finish(errors.New("nothing came for " + t.Idle.String()))
	}
}

// cut ends a connection and keeps why; the first reason stands.
func (c *Connection) cut(why string) {
	c.finish(errors.New(why))
	_ = c.Close()
}

// yield ends a connection for another's sake, unless its owner is admitted by now.
// Both are decided under one lock, so that nobody is admitted and cut off.
func (c *Connection) yield() {
	c.mu.Lock()
	if c.inside {
		c.mu.Unlock()
		return
	}
	c.finish(errYielded)
	c.discount()
	c.mu.Unlock()
	_ = c.Conn.Close()
}

// errYielded is why a connection ended that gave its place to a newcomer.
var errYielded = errors.New("it did not say who it is, and another of its address came")

// attempt counts a class word that is typed, and gives how long it waits until it is
// checked. Wrong ones of many connections wait one behind another: as strangers
// have a part of an address's places alone, and the rate is as many a minute as
// there are places, that is at most a part of a minute. A right one waits as long,
// or the time would tell which it is, and is taken back by forgive.
func (c *Connection) attempt() time.Duration {
	return max(c.counts.words.Reserve().Delay(), c.gate.words.Reserve().Delay())
}

// forgive takes back what a limiter's own Cancel does not once the time has come.
func (c *Connection) forgive() {
	c.counts.words.ReserveN(time.Now(), -1)
	c.gate.words.ReserveN(time.Now(), -1)
}

// Reason is why the connection ended.
func (c *Connection) Reason() string {
	if why := context.Cause(c.ctx); why != nil && why != context.Canceled {
		return why.Error()
	}
	return "hung up"
}

// Admit notes, with the first session, whose the connection is. ended is told of one
// that ends for want of a session.
func (c *Connection) Admit(by *Admission, conn *gossh.ServerConn, ended func(why string)) {
	c.once.Do(func() {
		c.known()
		c.Who = by.person(conn.Permissions)
		go c.keepAlive(conn, ended)
	})
}

// SetDeadline leaves a deadline that is nearly the same as it is: the library moves
// it with every read and every write.
func (c *Connection) SetDeadline(t time.Time) error {
	if moves := time.Duration(t.UnixNano() - c.deadline.Load()); moves >= 0 && moves < c.gate.Times.Idle/deadlineSteps {
		return nil
	}
	c.deadline.Store(t.UnixNano())
	return c.Conn.SetDeadline(t)
}

// known says that the connection's owner is admitted.
func (c *Connection) known() {
	c.mu.Lock()
	defer c.mu.Unlock()
	if !c.closed && !c.inside {
		c.inside = true
		c.late.Stop()
		c.gate.adds(c, 0, -1)
	}
}

// Close gives the place back.
func (c *Connection) Close() error {
	c.mu.Lock()
	c.discount()
	c.mu.Unlock()
	return c.Conn.Close()
}

// discount gives a connection's place back, once; c.mu is held.
func (c *Connection) discount() {
	if c.closed {
		return
	}
	c.closed = true
	c.finish(nil)
	c.late.Stop()
	stranger := -1
	if c.inside {
		stranger = 0
	}
	c.gate.adds(c, -1, stranger)
}

// keepAlive asks a client whether it is there, for as long as it is: a quiet
// watcher stays, one whose machine has gone does not, nor does a connection
// without a session.
func (c *Connection) keepAlive(client gossh.Conn, ended func(why string)) {
	t := c.gate.Times
	tick := time.NewTicker(t.Ask)
	defer tick.Stop()
	for idle := 0; ; {
		select {
		case <-c.ctx.Done():
			return
		case <-tick.C:
		}
		if idle++; c.sessions.Load() > 0 {
			idle = 0
		}
		if idle > int(t.Idle/t.Ask) {
			c.cut("no session was open for " + t.Idle.String())
			ended(c.Reason())
			return
		}
		late := time.AfterFunc(t.Answer, func() { c.cut("the client did not answer for " + t.Answer.String()) })
		_, _, err := client.SendRequest("keepalive@openssh.com", true, nil)
		late.Stop()
		if err != nil {
			return
		}
	}
}

// Source is whose the commands of a connection are: a key's, or an address's.
func (c *Connection) Source() string { return cmp.Or(c.Who.Print, c.place.String()) }

// Kill closes what is below: closing what is above would wait for bytes to go.
func (c *Connection) Kill() { _ = c.Close() }

// Flooded ends a connection that asks for more than any client does.
func (c *Connection) Flooded() { c.cut("it asked for more than any client does") }

// Asks counts a session that is opened, or what is refused; too many of them end the
// connection.
func (c *Connection) Asks() bool {
	if !c.asked.Allow() {
		c.Flooded()
		return false
	}
	return true
}

// Opens counts a session in, unless there are as many as there may be.
func (c *Connection) Opens() bool {
	if c.sessions.Add(1) > MaxSessions {
		c.Closes()
		return false
	}
	return true
}

// Closes counts a session out.
func (c *Connection) Closes() { c.sessions.Add(-1) }

// Visits and Commands are the logs of those of the connection's address.
func (c *Connection) Visits() *pace.Log   { return c.counts.visits }
func (c *Connection) Commands() *pace.Log { return c.counts.commands }
