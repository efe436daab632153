package host

import (
	"bytes"
	"io"
	"net"
	"strings"
	"sync"
	"testing"
	"time"

	gossh "golang.org/x/crypto/ssh"

	"trivet/tui/host/door"
	"trivet/tui/host/line"
)

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
	t.Parallel()
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
	// On a slow machine the buffers are not full before it is missed by keepalives.
	if log := c.log.String(); !strings.Contains(log, "the terminal takes no more") && !strings.Contains(log, "the client did not answer") {
		t.Errorf("the log does not say why:\n%s", log)
	}
}

// A write that does not get on ends its visit, and is looked for without waiting
// for it.
func TestAWriteThatDoesNotGetOnEndsTheVisit(t *testing.T) {
	k := key(t)
	r := start(t, Settings{Presenters: keys(t, k)}, nil)
	p := r.visit(k, 80, 24)
	p.sees("live:")
	st := r.service.(*classroom)
	b := &blocked{open: make(chan struct{})}
	killed := make(chan struct{})
	v := newVisitor(door.Person{}, 99, r.Host.log, line.TerminalOf([]string{"TERM=xterm"}), 80, 24, b, func() { close(killed); close(b.open) })
	done := make(chan struct{})
	go func() { st.attend(v); v.sender.Close(); close(done) }()
	p.sees("live: 1 watches")
	waitFor(t, "it is being written to", func() bool { return v.sender.Stalled(time.Now().Add(time.Hour)) })
	st.watch(time.Now())
	if v.ended() {
		t.Error("it is ended at once")
	}
	p.keys(down + right + "-3, 0")
	p.sees("45.0 T", "live: 1 watches")
	p.keys(live + "q") // whose own write may be under way at any time
	p.leaves()
	st.watch(time.Now().Add(2 * line.StalledLimit))
	<-killed
	<-done
	if v.reason() != "the terminal takes no more" {
		t.Error(v.reason())
	}
	r.visit(k, 80, 24).sees("live: 0 watch")
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
