package door

import (
	"bytes"
	"context"
	"fmt"
	"io"
	"log/slog"
	"net"
	"net/netip"
	"runtime"
	"slices"
	"strings"
	"sync"
	"testing"
	"time"

	"golang.org/x/time/rate"

	"trivet/tui/host/pace"
)

// Wrong codes wait one behind another, at most a quarter of a minute however many
// places an address has; right ones take nothing.
func TestCodesWaitInProportionToThePlaces(t *testing.T) {
	for _, places := range []int{1, 3, 8, 40, 200, 2000} {
		g := Gate{inAll: places, byPlace: places, Times: usual(), words: rate.NewLimiter(1, 1e6)}
		c := g.Admit(fake{addr: net.TCPAddrFromAddrPort(netip.MustParseAddrPort("192.0.2.1:1"))})
		for range 3 * places {
			if d := c.attempt(); d > 0 {
				t.Fatalf("%d places: a right code waits %v", places, d)
			}
			c.forgive()
		}
		for range max(places, wordTries) {
			if d := c.attempt(); d > 0 {
				t.Fatalf("%d places: a class that mistypes once waits %v", places, d)
			}
		}
		var last time.Duration
		for range max(places/strangersPart, 1) { // as many as may be typing at a time
			last = c.attempt()
		}
		if last <= 0 || last > time.Minute/strangersPart {
			t.Errorf("%d places: the last waits %v", places, last)
		}
	}
}

// All addresses together have a pace too, and one who comes again has the old account.
func TestCodesOfAllAddressesWait(t *testing.T) {
	g := Gate{inAll: 10000, byPlace: 200, Times: usual(), words: pace.PerMinute(wordTriesInAll)}
	from := func(i int) *Connection {
		return g.Admit(fake{addr: net.TCPAddrFromAddrPort(netip.AddrPortFrom(netip.AddrFrom4([4]byte{10, 0, byte(i >> 8), byte(i)}), 1))})
	}
	wrong := 0
	for i := range 400 {
		c := from(i % 20)
		for range 100 {
			if c.attempt() == 0 {
				wrong++
			}
		}
		_ = c.Close()
	}
	if wrong < wordTriesInAll || wrong > wordTriesInAll+100 {
		t.Errorf("%d wrong codes did not wait", wrong)
	}
}

// wire is a connection whose bytes are there at once.
type wire struct {
	fake
	closed chan struct{}
	once   sync.Once
}

func (w *wire) Read(p []byte) (int, error) {
	select {
	case <-w.closed:
		return 0, io.EOF
	default:
		return len(p), nil
	}
}

func (w *wire) Close() error {
	w.once.Do(func() { close(w.closed) })
	return nil
}

// Bytes of any kind are taken at a pace, and one who waits for that ends with the
// connection.
func TestBytesOfAConnectionHaveAPace(t *testing.T) {
	g := Gate{inAll: 5, byPlace: 5, Times: usual()}
	w := &wire{fake: fake{addr: net.TCPAddrFromAddrPort(netip.MustParseAddrPort("192.0.2.1:1"))}, closed: make(chan struct{})}
	c := g.Admit(w)
	read := make(chan int, 1)
	go func() {
		n := 0
		for {
			m, err := c.Read(make([]byte, 256<<10))
			if n += m; err != nil {
				read <- n
				return
			}
		}
	}()
	for deadline := time.Now().Add(patience); c.rate.Tokens() >= 0; runtime.Gosched() {
		if time.Now().After(deadline) {
			t.Fatal("it never waits")
		}
	}
	_ = c.Close()
	select {
	case n := <-read:
		if n > wireBurst+int(patience/time.Second)*wirePerSecond {
			t.Errorf("%d bytes", n)
		}
	case <-time.After(patience):
		t.Fatal("it waits for ever")
	}
}

// An address that comes again and again is let in at a pace, and is forgotten.
func TestComingsOfAnAddressHaveAPace(t *testing.T) {
	g := Gate{inAll: 5, byPlace: 2, Times: usual()}
	at := func(i int) net.Conn {
		return fake{addr: net.TCPAddrFromAddrPort(netip.AddrPortFrom(netip.AddrFrom4([4]byte{10, 0, byte(i >> 8), byte(i)}), 1))}
	}
	in := 0
	for range 10 * comesBurst {
		if c := g.Admit(at(0)); c != nil {
			in++
			_ = c.Close()
		}
	}
	if in < 2*comesBurst || in >= 10*comesBurst {
		t.Errorf("%d were let in", in)
	}
	for i := range 3 * addressesKept {
		if c := g.Admit(at(i)); c != nil {
			_ = c.Close()
		}
	}
	if len(g.places) > addressesKept {
		t.Errorf("%d addresses are remembered", len(g.places))
	}
}

func TestPlaces(t *testing.T) {
	g := Gate{inAll: 5, byPlace: 3, Times: usual()}
	at := func(a string) net.Conn { return fake{addr: net.TCPAddrFromAddrPort(netip.MustParseAddrPort(a))} }
	var in []*Connection
	for i := range 3 {
		c := g.Admit(at(fmt.Sprintf("192.0.2.1:%d", i+1)))
		if c == nil {
			t.Fatal("refused")
		}
		c.known()
		in = append(in, c)
	}
	if g.Admit(at("192.0.2.1:9")) != nil || g.Admit(at("192.0.2.2:9")) == nil || g.Admit(at("[2001:db8::1]:9")) == nil || g.Admit(at("192.0.2.3:9")) != nil {
		t.Error("the limits are not kept")
	}
	_ = in[0].Close()
	_ = in[0].Close()
	if g.all != 4 || g.strangers != 2 || g.Admit(at("192.0.2.1:9")) == nil {
		t.Errorf("%d in all, %d strangers", g.all, g.strangers)
	}
}

type fake struct {
	net.Conn
	addr net.Addr
}

func (f fake) RemoteAddr() net.Addr { return f.addr }

func (f fake) Close() error { return nil }

// Who gives a place to a newcomer, of those that have not said who they are.
func TestWhoYields(t *testing.T) {
	const its = time.Minute
	now := time.Now()
	old, fresh := now.Add(-2*its), now
	for _, c := range []struct {
		name string
		at   []time.Time
		mute []bool
		want int // -1 for nobody
	}{
		{"nobody is there", nil, nil, -1},
		{"the oldest that is silent", []time.Time{old, fresh, fresh}, []bool{false, true, true}, 1},
		{"the oldest that has had its time", []time.Time{old, fresh}, []bool{false, false}, 0},
		{"all have just begun to speak", []time.Time{fresh, fresh}, []bool{false, false}, -1},
	} {
		var n counts
		for i := range c.at {
			s := &Connection{began: c.at[i]}
			s.spoke.Store(!c.mute[i])
			n.strangers = append(n.strangers, s)
		}
		if got := slices.Index(n.strangers, n.yields(now, its)); got != c.want {
			t.Errorf("%s: %d, want %d", c.name, got, c.want)
		}
	}
}

// held takes what is written once it is open.
type held struct {
	reached, open chan struct{}
	once          sync.Once
	got           bytes.Buffer
}

func (h *held) Write(p []byte) (int, error) {
	h.once.Do(func() { close(h.reached) })
	<-h.open
	return h.got.Write(p)
}

// A log that takes nothing for a while stops nobody from coming or going.
func TestALogThatBlocksKeepsTheDoorOpen(t *testing.T) {
	g := Gate{inAll: 5, byPlace: 3, Times: usual()}
	from := fake{addr: net.TCPAddrFromAddrPort(netip.MustParseAddrPort("192.0.2.1:1"))}
	c := g.Admit(from)
	quiet := slog.New(slog.DiscardHandler)
	for range pace.LinesBurst + 7 {
		c.counts.commands.Info(quiet, "a command refused")
	}
	log := &held{reached: make(chan struct{}), open: make(chan struct{})}
	reported := make(chan struct{})
	go func() {
		defer close(reported)
		g.Report(slog.New(slog.NewTextHandler(log, nil)), true)
	}()
	<-log.reached
	comeAndGone := make(chan struct{})
	go func() {
		defer close(comeAndGone)
		if g.Admit(from) == nil {
			t.Error("nobody comes in")
		}
		_ = c.Close()
	}()
	select {
	case <-comeAndGone:
	case <-time.After(patience):
		t.Error("who comes or goes waits for the log")
	}
	close(log.open)
	<-reported
	<-comeAndGone
	if got := log.got.String(); !strings.Contains(got, `msg="lines left out" about=commands from=192.0.2.1/32 lines=7`) {
		t.Errorf("the log says %q", got)
	}
}

// A connection whose owner is admitted at the moment at which it is to give way
// either stays or was never in.
func TestNobodyWhoIsInIsCutForAnother(t *testing.T) {
	from := fake{addr: net.TCPAddrFromAddrPort(netip.MustParseAddrPort("192.0.2.1:1"))}
	for range 20000 {
		g := Gate{inAll: 5, byPlace: 3, Times: usual()}
		c := g.Admit(from)
		var both sync.WaitGroup
		both.Go(c.known)
		both.Go(c.yield)
		both.Wait()
		if c.inside && (c.closed || context.Cause(c.ctx) != nil) {
			t.Fatalf("admitted, and cut: %s", c.Reason())
		}
		if !c.inside && (!c.closed || c.Reason() != errYielded.Error()) {
			t.Fatalf("neither admitted nor cut: %s", c.Reason())
		}
		if want := map[bool]int{true: 1}[c.inside]; g.all != want || g.strangers != 0 {
			t.Fatalf("%d in all, %d strangers", g.all, g.strangers)
		}
		_ = c.Close()
	}
}
