package host

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

// newGate lets in so many in all, and so many of one address.
func newGate(inAll, byPlace int) *gate {
	return &gate{inAll: inAll + strangersInAll, byPlace: byPlace, times: usual(), words: pace.PerMinute(wordTriesInAll)}
}

// counts are one address's: connections, how fast they came, wrong class words, and
// what is logged of its visitors.
type counts struct {
	all              int
	strangers        []*connection // those that have not said who they are, the oldest first
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
