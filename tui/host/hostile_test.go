package host

import (
	"bytes"
	"fmt"
	"io"
	"math/rand/v2"
	"net"
	"runtime"
	"strings"
	"sync"
	"testing"
	"time"

	gossh "golang.org/x/crypto/ssh"
)

// class is a presenter and a watcher who must notice nothing.
type class struct {
	*running
	p, w *guest
	step int
}

func newClass(t *testing.T) *class {
	k := key(t)
	r := start(t, Settings{Presenters: keys(t, k), ByPlace: classByPlace}, nil)
	c := &class{running: r, p: r.visit(k, 100, 30), w: r.visit(nil, 80, 24)}
	c.p.sees("live: 1 watches")
	c.p.keys(down + right)
	return c
}

// classByPlace is how many may come from the one address that there is here.
const classByPlace = 30

// works types a value and waits until the watcher sees it.
func (c *class) works() {
	c.t.Helper()
	c.step++
	c.p.keys(fmt.Sprintf("\x15-3, %d", 50+c.step%40)) // the cell anew
	c.w.sees(fmt.Sprintf("-3, %d", 50+c.step%40))
	c.p.keys(escape)
	c.w.sees("-3, 4")
	c.p.sees("enter edit") // the escape is read as one
}

// heap is what is in use once all that can go is gone.
func heap() uint64 {
	var m runtime.MemStats
	runtime.GC()
	runtime.GC()
	runtime.ReadMemStats(&m)
	return m.HeapAlloc
}

// within tells that a thing takes no more memory than that.
func (c *class) within(bytes uint64, f func()) {
	c.t.Helper()
	before := heap()
	f()
	waitFor(c.t, "the memory is given back", func() bool { return heap() < before+bytes })
}

// pour writes until the other side has had enough or all is written.
func pour(w io.Writer, all []byte) {
	for len(all) > 0 {
		n, err := w.Write(all[:min(len(all), 32<<10)])
		if err != nil {
			return
		}
		all = all[n:]
	}
}

func TestMalformedInputEndsOneVisit(t *testing.T) {
	const size = 10_000_000
	seed := rand.New(rand.NewPCG(6, 2))
	noise := make([]byte, size)
	for i := range noise {
		noise[i] = byte(seed.UintN(256))
	}
	pieces := []string{"\x1b[", "\x1b]", "\x1bP", "\x1b_", "\x1b[<", "\x1b[M", ";", ":", "9999999999999", "\x1b[200~", "\x1b[27;5;", "u", "~", "\x9b", "\x1bO", "\xf0\x9f", "\x1b[0;0;0;1;0;1_", "\x1b[I", "\x1b[?1;2c", "R", "m"}
	var sequences bytes.Buffer
	for sequences.Len() < size {
		sequences.WriteString(pieces[seed.IntN(len(pieces))])
	}
	for name, input := range map[string][]byte{
		"random":    noise,
		"sequences": sequences.Bytes(),
		"paste":     append([]byte("\x1b[200~"), bytes.Repeat([]byte("x"), size)...),
		"string":    append([]byte("\x1b]0;"), bytes.Repeat([]byte("x"), size)...),
		"escapes":   bytes.Repeat([]byte("\x1b"), size),
	} {
		t.Run(name, func(t *testing.T) {
			c := newClass(t)
			c.within(6<<20, func() {
				g := c.visit(nil, 80, 24)
				g.sees("following")
				go pour(g.in, input)
				c.works()
				c.works()
				if name == "random" || name == "paste" {
					g.leaves() // the others are read, at the pace of a very fast hand
				}
				_ = g.client.Close()
				c.p.sees("live: 1 watches")
			})
		})
	}
}

func TestHugeAndFlappingSizes(t *testing.T) {
	c := newClass(t)
	c.within(16<<20, func() {
		client, err := c.dial(nil, "")
		if err != nil {
			t.Fatal(err)
		}
		s, err := client.NewSession()
		if err != nil {
			t.Fatal(err)
		}
		if err := s.RequestPty("xterm", 1<<30, 1<<31-1, nil); err != nil {
			t.Fatal(err)
		}
		s.Stdout = io.Discard
		if _, err := s.StdinPipe(); err != nil { // none would be an end at once
			t.Fatal(err)
		}
		if err := s.Shell(); err != nil {
			t.Fatal(err)
		}
		for i := range asksBurst / 2 {
			if err := s.WindowChange(i%7*100000, (i%11)<<20); err != nil {
				t.Fatal(err)
			}
		}
		c.works()
		_ = s.WindowChange(24, 80)
		c.works()
		c.p.sees("live: 2 watch")
		// More than anybody's window does ends it.
		for i := range 20 * asksBurst {
			if err := s.WindowChange(i%7*100000, (i%11)<<20); err != nil {
				break
			}
		}
		c.works()
		c.p.sees("live: 1 watches")
		_ = client.Close()
	})
}

// raw connects as a client whose connection can be stalled.
func (c *class) raw() (*gossh.Client, *stall) {
	c.t.Helper()
	tcp, err := net.Dial("tcp", c.addr)
	if err != nil {
		c.t.Fatal(err)
	}
	_ = tcp.(*net.TCPConn).SetReadBuffer(4096)
	s := &stall{Conn: tcp, gate: make(chan struct{})}
	close(s.gate)
	conn, chans, reqs, err := gossh.NewClientConn(s, c.addr, &gossh.ClientConfig{
		HostKeyCallback: gossh.InsecureIgnoreHostKey(),
		Auth:            []gossh.AuthMethod{gossh.KeyboardInteractive(func(string, string, []string, []bool) ([]string, error) { return nil, nil })},
	})
	if err != nil {
		c.t.Fatal(err)
	}
	c.t.Cleanup(func() { _ = tcp.Close() })
	return gossh.NewClient(conn, chans, reqs), s
}

// stall is a connection that may stop reading.
type stall struct {
	net.Conn
	mu   sync.Mutex
	gate chan struct{}
}

func (s *stall) stop() {
	s.mu.Lock()
	defer s.mu.Unlock()
	s.gate = make(chan struct{})
}

func (s *stall) Read(p []byte) (int, error) {
	s.mu.Lock()
	gate := s.gate
	s.mu.Unlock()
	<-gate
	return s.Conn.Read(p)
}

func TestAStalledReaderIsDroppedAndSlowsNobody(t *testing.T) {
	c := newClass(t)
	client, conn := c.raw()
	s, err := client.NewSession()
	if err != nil {
		t.Fatal(err)
	}
	if err := s.RequestPty("xterm", 100, 300, nil); err != nil {
		t.Fatal(err)
	}
	s.Stdout = io.Discard
	if _, err := s.StdinPipe(); err != nil {
		t.Fatal(err)
	}
	if err := s.Shell(); err != nil {
		t.Fatal(err)
	}
	c.p.sees("live: 2 watch")
	conn.stop()
	// The presenter goes on; what the host's buffers do not take is dropped, and
	// after a while so is the reader.
	deadline := time.Now().Add(3 * patience)
	for !strings.Contains(c.p.screen(), "live: 1 watches") {
		c.works()
		c.p.keys("\x1bb")
		c.w.sees("step")
		c.p.keys("b")
		c.w.sees("Points")
		if time.Now().After(deadline) {
			t.Fatal("the reader stays")
		}
	}
	if !strings.Contains(c.log.String(), "the terminal takes no more") {
		t.Errorf("the log does not say why:\n%s", c.log)
	}
}

// blocked is a terminal that takes bytes only when it is told to.
type blocked struct {
	mu   sync.Mutex
	got  bytes.Buffer
	open chan struct{}
}

func (b *blocked) Write(p []byte) (int, error) {
	<-b.open
	b.mu.Lock()
	defer b.mu.Unlock()
	return b.got.Write(p)
}

func TestTheQueueDropsFramesAndSendsAWholeOne(t *testing.T) {
	text := "first"
	var mu sync.Mutex
	s := newScreen(nil, 40, 10, terminalOf([]string{"TERM=xterm"}), pace{}, func() string {
		mu.Lock()
		defer mu.Unlock()
		return text
	}).begin(nil)
	defer s.close()
	b := &blocked{open: make(chan struct{})}
	f := newFeed(b)
	f.show(s)
	waitFor(t, "the terminal is being written to", func() bool { return f.since.Load() != 0 })
	for i := range 3 * queued {
		mu.Lock()
		text = fmt.Sprintf("frame %d", i)
		mu.Unlock()
		s.paint()
	}
	waitFor(t, "frames are dropped", func() bool { return f.dropped() > 0 })
	close(b.open)
	e := newEmulator(40, 10)
	waitFor(t, "the last frame is there", func() bool {
		b.mu.Lock()
		defer b.mu.Unlock()
		_, _ = e.Write(b.got.Bytes())
		b.got.Reset()
		return strings.HasPrefix(e.screen(), fmt.Sprintf("frame %d\n", 3*queued-1))
	})
	f.close()
}

func TestSilentConnectionsAreFew(t *testing.T) {
	c := newClass(t)
	var all []net.Conn
	closed := make(chan struct{}, 1000)
	for range 100 {
		conn, err := net.Dial("tcp", c.addr)
		if err != nil {
			t.Fatal(err)
		}
		all = append(all, conn)
		go func() {
			_, _ = io.Copy(io.Discard, conn)
			closed <- struct{}{}
		}()
	}
	for range 100 - (classByPlace - 2) {
		<-closed
	}
	c.works()
	for _, conn := range all {
		_ = conn.Close()
	}
	waitFor(t, "there is room again", func() bool {
		client, err := c.dial(nil, "")
		if err == nil {
			_ = client.Close()
		}
		return err == nil
	})
}

// opens opens a channel and closes it; refused is well. The client's library waits
// for ever where the connection ends just then.
func opens(cl *gossh.Client, kind string) error {
	done := make(chan error, 2)
	go func() { _ = cl.Wait(); done <- io.EOF }()
	go func() {
		ch, reqs, err := cl.OpenChannel(kind, nil)
		if err == nil {
			go gossh.DiscardRequests(reqs)
			_ = ch.Close()
		}
		if _, refused := err.(*gossh.OpenChannelError); refused {
			err = nil
		}
		done <- err
	}()
	return <-done
}

func TestFloodsOfChannelsAndRequests(t *testing.T) {
	for name, flood := range map[string]func(*gossh.Client) error{
		"sessions": func(cl *gossh.Client) error { return opens(cl, "session") },
		"others":   func(cl *gossh.Client) error { return opens(cl, "direct-tcpip") },
		"global": func(cl *gossh.Client) error {
			_, _, err := cl.SendRequest("tcpip-forward", true, make([]byte, 100))
			return err
		},
	} {
		t.Run(name, func(t *testing.T) {
			c := newClass(t)
			client, err := c.dial(nil, "")
			if err != nil {
				t.Fatal(err)
			}
			g := c.sit(client, 80, 24) // a request without a session has no owner yet
			g.sees("following")
			over := false
			for range 100 * maxOpens {
				if flood(client) != nil {
					over = true
					break
				}
			}
			if !over {
				t.Error("the flood is borne for ever")
			}
			c.works()
			c.p.sees("live: 1 watches")
		})
	}
}

func TestSessionsAtOnceAreFew(t *testing.T) {
	c := newClass(t)
	client, err := c.dial(nil, "")
	if err != nil {
		t.Fatal(err)
	}
	for range maxSessions {
		c.sit(client, 80, 24).sees("following")
	}
	if _, err := client.NewSession(); err == nil || !strings.Contains(err.Error(), "one connection has at most 4 sessions") {
		t.Errorf("%v", err)
	}
	c.works()
}

func TestHalfClosedChannels(t *testing.T) {
	c := newClass(t)
	c.works() // the first key makes a reader of keys
	before := runtime.NumGoroutine()
	client, err := c.dial(nil, "")
	if err != nil {
		t.Fatal(err)
	}
	g := c.sit(client, 80, 24)
	g.sees("following")
	_ = g.in.Close() // no more input: the visit is over
	g.leaves()
	// A channel that is closed while its connection stays.
	g = c.sit(client, 80, 24)
	g.sees("following")
	_ = g.session.Close()
	c.p.sees("live: 1 watches")
	c.works()
	_ = client.Close()
	waitFor(t, "nothing goes on", func() bool { return runtime.NumGoroutine() <= before })
}

func TestFloodsOfVariables(t *testing.T) {
	c := newClass(t)
	c.within(4<<20, func() {
		client, err := c.dial(nil, "")
		if err != nil {
			t.Fatal(err)
		}
		s, err := client.NewSession()
		if err != nil {
			t.Fatal(err)
		}
		for i := range 10 * maxOpens {
			if _, err := s.SendRequest("env", false, gossh.Marshal(struct{ N, V string }{"LANG", fmt.Sprint(i, strings.Repeat("x", 20000))})); err != nil {
				break
			}
		}
		waitFor(t, "the connection is closed", func() bool { _, _, err := client.SendRequest("keepalive@openssh.com", true, nil); return err != nil })
	})
	c.works()
	// What is allowed arrives, what is not does not.
	g := c.visit(nil, 80, 24, "LANG=C", "LD_PRELOAD=x", "COLORTERM=truecolor", "NO_COLOR=1")
	g.sees("following")
	if s := g.screen(); strings.ContainsFunc(s, func(r rune) bool { return r > 0x7e }) {
		t.Errorf("LANG=C is not heard:\n%s", s)
	}
}

func TestAFaultInAFrameOrAKeyEndsNobody(t *testing.T) {
	log := &logged{}
	h := testLog(log)
	broken := true
	var mu sync.Mutex
	s := newScreen(h, 20, 4, terminalOf([]string{"TERM=xterm"}), pace{}, func() string {
		mu.Lock()
		defer mu.Unlock()
		if broken {
			panic("drawn badly")
		}
		return "well"
	}).begin(nil)
	defer s.close()
	e := newEmulator(20, 4)
	f := newFeed(e)
	f.show(s)
	waitFor(t, "the fault is logged", func() bool { return strings.Contains(log.String(), "drawn badly") })
	mu.Lock()
	broken = false
	mu.Unlock()
	s.touch()
	waitFor(t, "it goes on", func() bool { return strings.HasPrefix(e.screen(), "well") })
	f.close()
}
