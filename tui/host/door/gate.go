package door

import (
	"context"
	"errors"
	"log/slog"
	"maps"
	"net"
	"net/netip"
	"slices"
	"sync"
	"time"

	"golang.org/x/time/rate"

	"trivet/tui/host/pace"
)

// Gate counts connections: by address, and those that have not yet said who
// they are.
type Gate struct {
	inAll, byPlace int
	Times          Times
	Refused        func(net.Conn, error) // told of one that is admitted and comes to no session; may be nil
	words          *rate.Limiter         // wrong class words of all addresses

	mu        sync.Mutex
	all       int
	strangers int
	places    map[netip.Prefix]*counts
}

// NewGate lets in so many in all, and so many of one address.
func NewGate(inAll, byPlace int) *Gate {
	return &Gate{inAll: inAll + strangersInAll, byPlace: byPlace, Times: usual(), words: pace.PerMinute(wordTriesInAll)}
}

// counts are one address's: connections, how fast they came, wrong class words, and
// what is logged of its visitors.
type counts struct {
	all              int
	strangers        []*Connection // those that have not said who they are, the oldest first
	comes            *rate.Limiter
	words            *rate.Limiter
	visits, commands *pace.Log
}

func newCounts(byPlace int) *counts {
	return &counts{
		comes:    rate.NewLimiter(comesPerSecond, comesBurst*byPlace),
		words:    pace.PerMinute(max(byPlace, wordTries)),
		visits:   pace.NewLog(max(visitLinesBurst*byPlace, pace.LinesBurst)),
		commands: pace.NewLog(pace.LinesBurst),
	}
}

// idle tells whether nothing is lost by forgetting the address.
func (n *counts) idle() bool {
	return n.all == 0 && pace.Full(n.comes) && pace.Full(n.words) && n.visits.Idle() && n.commands.Idle()
}

// yields gives the stranger whose place a newcomer gets: the oldest that has sent
// nothing, or else the oldest if it has had its time. Nil where nobody has to go.
func (n *counts) yields(now time.Time, itsTime time.Duration) *Connection {
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
func (n *counts) drop(c *Connection) {
	n.strangers = slices.DeleteFunc(n.strangers, func(s *Connection) bool { return s == c })
}

// Admit counts a new connection, or refuses it before anything is said. Where an
// address is full of those who have not said who they are, or these have all of
// their part of it, a newcomer may get the place of one of them: connections that
// are silent close an address to nobody who has a key.
func (g *Gate) Admit(c net.Conn) *Connection {
	at, err := netip.ParseAddrPort(c.RemoteAddr().String())
	if err != nil {
		return nil
	}
	p := place(at.Addr())
	var yields *Connection
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
	var stranger *Connection
	full := n.all >= g.byPlace || len(n.strangers) >= max(g.byPlace/strangersPart, 1)
	if full {
		stranger = n.yields(time.Now(), g.Times.Handshake/2)
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
	in := &Connection{Conn: c, gate: g, place: p, counts: n, rate: rate.NewLimiter(wirePerSecond, wireBurst), asked: rate.NewLimiter(opensPerSecond, maxOpens), began: time.Now()}
	in.ctx, in.finish = context.WithCancelCause(context.Background())
	n.strangers = append(n.strangers, in)
	in.mu.Lock() // the timer reads it
	defer in.mu.Unlock()
	in.late = time.AfterFunc(2*g.Times.Handshake, func() {
		in.cut("it came to no session within " + (2 * g.Times.Handshake).String())
		if g.Refused != nil {
			g.Refused(in, errors.New(in.Reason()))
		}
	})
	return in
}

// at gives the counts of an address. Those that nobody needs any more are
// forgotten where there are many; nil where there are too many all the same.
func (g *Gate) at(p netip.Prefix) *counts {
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

func (g *Gate) adds(c *Connection, all, strangers int) {
	g.mu.Lock()
	defer g.mu.Unlock()
	g.all += all
	g.strangers += strangers
	c.counts.all += all
	c.counts.drop(c)
}

// Report says of each address how many lines of the log were left out. It writes
// once the lock is free: a log may block, and nobody waits for it to come or go.
func (g *Gate) Report(log *slog.Logger, last bool) {
	g.mu.Lock()
	places := map[netip.Prefix]*counts{}
	for p, n := range g.places {
		if n.visits.Owes() || n.commands.Owes() {
			places[p] = n
		}
	}
	g.mu.Unlock()
	for p, n := range places {
		n.visits.Report(log, last, "about", "visits", "from", p.String())
		n.commands.Report(log, last, "about", "commands", "from", p.String())
	}
}

// Count is how many connections there are, and how many of them have not said yet who they are.
func (g *Gate) Count() (all, strangers int) {
	g.mu.Lock()
	defer g.mu.Unlock()
	return g.all, g.strangers
}
