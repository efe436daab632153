package host

import (
	"fmt"
	"io"
	"net"
	"runtime"
	"strings"
	"sync"
	"testing"

	gossh "golang.org/x/crypto/ssh"

	"trivet/tui/grid"
	"trivet/tui/host/door"
	"trivet/tui/host/line"
	"trivet/tui/host/pace"
)

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
	for range 100 - classByPlace/4 {
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

// burst is more than any client opens at once.
const burst = 64

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
			for range 100 * burst {
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
	for range door.MaxSessions {
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
		for i := range 10 * burst {
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
	s := line.NewScreen(h, 20, 4, line.TerminalOf([]string{"TERM=xterm"}), line.AtOnce, func() grid.Frame {
		mu.Lock()
		defer mu.Unlock()
		if broken {
			panic("drawn badly")
		}
		return page(20, 4, "well")
	}).Begin(pace.AtOnce{}, pace.AtOnce{})
	defer s.Close()
	e := newEmulator(t, 20, 4)
	f := line.NewSender(e)
	f.Show(s)
	waitFor(t, "the fault is logged", func() bool { return strings.Contains(log.String(), "drawn badly") })
	mu.Lock()
	broken = false
	mu.Unlock()
	s.Touch()
	waitFor(t, "it goes on", func() bool { return strings.HasPrefix(e.screen(), "well") })
	f.Close()
}
