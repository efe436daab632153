package host

import (
	"cmp"
	"context"
	"errors"
	"log/slog"
	"maps"
	"net"
	"net/netip"
	"os"
	"slices"
	"sync"
	"sync/atomic"
	"time"

	gossh "golang.org/x/crypto/ssh"
	"golang.org/x/time/rate"
)

// gate counts connections: by address, and those that have not yet said who
// they are.
type gate struct {
	inAll, byPlace int
	times          times
	refused        func(net.Conn, error) // told of one that is admitted and comes to no session; may be nil
	words          *rate.Limiter         // wrong class words of all addresses

	mu        sync.Mutex
	all       int
	strangers int
	places    map[netip.Prefix]*counts
}

// counts are one address's: connections, how fast they came, wrong class words, and
// what is logged of its visitors.
type counts struct {
	all              int
	strangers        []*connection // those that have not said who they are, the oldest first
	comes            *rate.Limiter
	words            *rate.Limiter
	visits, commands *boundedLog
}

func newCounts(byPlace int) *counts {
	return &counts{
		comes:    rate.NewLimiter(comesPerSecond, comesBurst*byPlace),
		words:    aMinute(max(byPlace, wordTries)),
		visits:   newBoundedLog(max(visitLinesBurst*byPlace, linesBurst)),
		commands: newBoundedLog(linesBurst),
	}
}

// aMinute limits to so many at once, and as many a minute after that.
func aMinute(n int) *rate.Limiter { return rate.NewLimiter(rate.Limit(n)/60, n) }

// idle tells whether nothing is lost by forgetting the address.
func (n *counts) idle() bool {
	return n.all == 0 && full(n.comes) && full(n.words) && n.visits.idle() && n.commands.idle()
}

// yields gives the stranger whose place a newcomer gets: the oldest that has sent
// nothing, or else the oldest if it has had its time. Nil where nobody has to go.
func (n *counts) yields(now time.Time, itsTime time.Duration) *connection {
	for _, s := range n.strangers {
		if !s.spoke.Load() {
			return s
		}
	}
	if len(n.strangers) > 0 && now.Sub(n.strangers[0].began) > itsTime {
		return n.strangers[0]
	}
	return nil
}

// drop forgets one that is a stranger no more, or not for long.
func (n *counts) drop(c *connection) {
	n.strangers = slices.DeleteFunc(n.strangers, func(s *connection) bool { return s == c })
}

// connection is counted until it is closed, and is what its sessions have in common.
type connection struct {
	net.Conn
	gate   *gate
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
	who      person
	opens    *rate.Limiter // sessions opened, and whatever was refused
	sessions atomic.Int32  // that are open
}

// Read takes bytes no faster than anybody types, or sends a sheet: what a client
// can make the host compute, with requests, new keys or noise, is bounded by that.
func (c *connection) Read(p []byte) (int, error) {
	n, err := c.Conn.Read(p)
	c.blame(err)
	if n > 0 {
		c.spoke.Store(true)
		if take(c.ctx, c.rate, n) != nil {
			return n, net.ErrClosed
		}
	}
	if errors.Is(err, net.ErrClosed) && context.Cause(c.ctx) == errYielded {
		err = errYielded // as the log says it
	}
	return n, err
}

// Write fails with the deadlines as Read does, and whichever is first says why.
func (c *connection) Write(p []byte) (int, error) {
	n, err := c.Conn.Write(p)
	c.blame(err)
	return n, err
}

// blame notes which of the times was over.
func (c *connection) blame(err error) {
	switch t := c.gate.times; {
	case !errors.Is(err, os.ErrDeadlineExceeded):
	case time.Since(c.began) >= t.visit:
		c.finish(errors.New("no visit is longer than " + t.visit.String()))
	default:
		c.finish(errors.New("nothing came for " + t.idle.String()))
	}
}

// cut ends a connection and keeps why; the first reason stands.
func (c *connection) cut(why string) {
	c.finish(errors.New(why))
	_ = c.Close()
}

// yield ends a connection for another's sake, unless its owner is admitted by now.
// Both are decided under one lock, so that nobody is admitted and cut off.
func (c *connection) yield() {
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
func (c *connection) attempt() time.Duration {
	return max(c.counts.words.Reserve().Delay(), c.gate.words.Reserve().Delay())
}

// forgive takes back what a limiter's own Cancel does not once the time has come.
func (c *connection) forgive() {
	c.counts.words.ReserveN(time.Now(), -1)
	c.gate.words.ReserveN(time.Now(), -1)
}

// reason is why the connection ended.
func (c *connection) reason() string {
	if why := context.Cause(c.ctx); why != nil && why != context.Canceled {
		return why.Error()
	}
	return "hung up"
}

// admit counts a new connection, or refuses it before anything is said. Where an
// address is full of those who have not said who they are, or these have all of
// their part of it, a newcomer may get the place of one of them: connections that
// are silent close an address to nobody who has a key.
func (g *gate) admit(c net.Conn) *connection {
	at, err := netip.ParseAddrPort(c.RemoteAddr().String())
	if err != nil {
		return nil
	}
	p := place(at.Addr())
	var yields *connection
	defer func() { // once the lock is free
		if yields != nil {
			yields.yield()
		}
	}()
	g.mu.Lock()
	defer g.mu.Unlock()
	n := g.at(p)
	if n == nil || g.all >= g.inAll || g.strangers >= strangersInAll {
		return nil
	}
	var stranger *connection
	full := n.all >= g.byPlace || len(n.strangers) >= max(g.byPlace/strangersPart, 1)
	if full {
		stranger = n.yields(time.Now(), g.times.handshake/2)
	}
	if full && stranger == nil || !n.comes.Allow() {
		return nil
	}
	if yields = stranger; yields != nil {
		n.drop(yields)
	}
	g.all++
	g.strangers++
	n.all++
	if t, ok := c.(*net.TCPConn); ok {
		_ = t.SetWriteBuffer(socketBytes) // what the system may hold for one who does not read
	}
	in := &connection{Conn: c, gate: g, place: p, counts: n, rate: rate.NewLimiter(wirePerSecond, wireBurst), opens: rate.NewLimiter(opensPerSecond, maxOpens), began: time.Now()}
	in.ctx, in.finish = context.WithCancelCause(context.Background())
	n.strangers = append(n.strangers, in)
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
		maps.DeleteFunc(g.places, func(_ netip.Prefix, n *counts) bool { return n.idle() })
	}
	if len(g.places) >= addressesKept {
		return nil
	}
	n := newCounts(g.byPlace)
	g.places[p] = n
	return n
}

// admit notes, with the first session, whose the connection is.
func (c *connection) admit(h *Host, conn *gossh.ServerConn) {
	c.once.Do(func() {
		c.known()
		c.who = h.doors.person(conn.Permissions)
		go c.keepAlive(h, conn)
	})
}

// SetDeadline leaves a deadline that is nearly the same as it is: the library moves
// it with every read and every write.
func (c *connection) SetDeadline(t time.Time) error {
	if moves := time.Duration(t.UnixNano() - c.deadline.Load()); moves >= 0 && moves < c.gate.times.idle/deadlineSteps {
		return nil
	}
	c.deadline.Store(t.UnixNano())
	return c.Conn.SetDeadline(t)
}

// known says that the connection's owner is admitted.
func (c *connection) known() {
	c.mu.Lock()
	defer c.mu.Unlock()
	if !c.closed && !c.inside {
		c.inside = true
		c.late.Stop()
		c.gate.count(c, 0, -1)
	}
}

func (c *connection) Close() error {
	c.mu.Lock()
	c.discount()
	c.mu.Unlock()
	return c.Conn.Close()
}

// discount gives a connection's place back, once; c.mu is held.
func (c *connection) discount() {
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
	c.gate.count(c, -1, stranger)
}

func (g *gate) count(c *connection, all, strangers int) {
	g.mu.Lock()
	defer g.mu.Unlock()
	g.all += all
	g.strangers += strangers
	c.counts.all += all
	c.counts.drop(c)
}

// report says of each address how many lines of the log were left out. It writes
// once the lock is free: a log may block, and nobody waits for it to come or go.
func (g *gate) report(log *slog.Logger, last bool) {
	g.mu.Lock()
	places := map[netip.Prefix]*counts{}
	for p, n := range g.places {
		if n.visits.out.Load() > 0 || n.commands.out.Load() > 0 {
			places[p] = n
		}
	}
	g.mu.Unlock()
	for p, n := range places {
		n.visits.report(log, last, "about", "visits", "from", p.String())
		n.commands.report(log, last, "about", "commands", "from", p.String())
	}
}

// keepAlive asks a client whether it is there, for as long as it is: a quiet
// watcher stays, one whose machine has gone does not, nor does a connection
// without a session.
func (c *connection) keepAlive(h *Host, client gossh.Conn) {
	t := c.gate.times
	tick := time.NewTicker(t.ask)
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
		if idle > int(t.idle/t.ask) {
			c.cut("no session was open for " + t.idle.String())
			h.ended("a connection ended", c, c.reason())
			return
		}
		late := time.AfterFunc(t.answer, func() { c.cut("the client did not answer for " + t.answer.String()) })
		_, _, err := client.SendRequest("keepalive@openssh.com", true, nil)
		late.Stop()
		if err != nil {
			return
		}
	}
}

// source is whose the commands of a connection are: a key's, or an address's.
func (c *connection) source() string { return cmp.Or(c.who.print, c.place.String()) }

// kill closes what is below: closing what is above would wait for bytes to go.
func (c *connection) kill() { _ = c.Close() }

// flooded ends a connection that asks for more than any client does.
func (c *connection) flooded() { c.cut("it asked for more than any client does") }
