package host

import (
	"io"
	"net"
	"strings"
	"sync/atomic"
	"testing"
	"time"

	gossh "golang.org/x/crypto/ssh"

	"trivet/tui/host/door"
	"trivet/tui/host/pace"
)

// hasty starts a host with one place for all, and with other times than usual.
func hasty(t *testing.T, places int, code bool, change func(*door.Times)) *running {
	t.Helper()
	return startWith(t, Settings{Presenters: keys(t, key(t)), ByPlace: places, Word: code}, nil, func(h *Host) { change(&h.gate.Times) })
}

// says waits until the log holds all of it.
func (r *running) says(pieces ...string) {
	r.t.Helper()
	for _, p := range pieces {
		waitFor(r.t, "the log says "+p+":\n"+r.log.String(), func() bool { return strings.Contains(r.log.String(), p) })
	}
}

// empty waits until every connection is counted out, and the place is another's.
func (r *running) empty() {
	r.t.Helper()
	waitFor(r.t, "its place is given back", func() bool {
		all, strangers := r.gate.Count()
		return all == 0 && strangers == 0
	})
	waitFor(r.t, "another comes in", func() bool {
		client, err := r.dial(nil, r.doors.Word)
		if err == nil {
			_ = client.Close()
		}
		return err == nil
	})
}

// One who says nothing, or stops in the middle of saying who he is, loses the place.
func TestSilentBeforeTheyAreKnown(t *testing.T) {
	t.Parallel()
	for name, come := range map[string]func(net.Conn, chan struct{}){
		"silent":           func(net.Conn, chan struct{}) {},
		"after the banner": func(c net.Conn, _ chan struct{}) { _, _ = io.WriteString(c, "SSH-2.0-x\r\n") },
		"at the code": func(c net.Conn, closed chan struct{}) {
			asked := make(chan struct{}, 1)
			go func() {
				_, _, _, _ = gossh.NewClientConn(c, "", &gossh.ClientConfig{
					HostKeyCallback: gossh.InsecureIgnoreHostKey(),
					Auth: []gossh.AuthMethod{gossh.KeyboardInteractive(func(string, string, []string, []bool) ([]string, error) {
						pace.Nudge(asked)
						<-closed
						return nil, io.EOF
					})},
				})
			}()
			<-asked
		},
	} {
		t.Run(name, func(t *testing.T) {
			r := hasty(t, 1, true, func(by *door.Times) { by.Handshake = time.Second })
			conn, err := net.Dial("tcp", r.addr)
			if err != nil {
				t.Fatal(err)
			}
			closed := make(chan struct{})
			come(conn, closed)
			if name != "at the code" { // where the client reads itself
				_, _ = io.Copy(io.Discard, conn)
			}
			r.says("not admitted", "it did not say who it is within 1s", "from="+conn.LocalAddr().String())
			r.empty()
			close(closed)
			_ = conn.Close()
		})
	}
}

// One who is admitted and opens no session loses the place too.
func TestAdmittedWithoutASession(t *testing.T) {
	t.Parallel()
	r := hasty(t, 1, false, func(by *door.Times) { by.Handshake = time.Second })
	var client *gossh.Client
	waitFor(t, "it comes in", func() (in bool) {
		var err error
		client, err = r.dial(nil, "")
		return err == nil
	})
	_ = client.Wait()
	r.says("it came to no session within 2s")
	r.empty()
}

// One whose session is over and who opens no other loses it after a while.
func TestAConnectionThatIsLeftOpen(t *testing.T) {
	t.Parallel()
	r := hasty(t, 1, false, func(by *door.Times) { by.Ask, by.Idle = 100*time.Millisecond, 500*time.Millisecond })
	client, err := r.dial(nil, "")
	if err != nil {
		t.Fatal(err)
	}
	g := r.sit(client, 80, 24)
	g.sees("nobody presents")
	g.keys(quit)
	g.leaves()
	_ = client.Wait()
	r.says("a connection ended", "no session was open for 500ms")
	r.empty()
}

// asked connects as a client that counts the keepalives, and answers those that it
// may.
func (r *running) asked(answers bool) (*gossh.Client, *atomic.Int64) {
	r.t.Helper()
	conn, err := net.Dial("tcp", r.addr)
	if err != nil {
		r.t.Fatal(err)
	}
	r.t.Cleanup(func() { _ = conn.Close() })
	c, chans, requests, err := gossh.NewClientConn(conn, r.addr, &gossh.ClientConfig{
		HostKeyCallback: gossh.InsecureIgnoreHostKey(),
		Auth:            []gossh.AuthMethod{gossh.KeyboardInteractive(func(string, string, []string, []bool) ([]string, error) { return nil, nil })},
	})
	if err != nil {
		r.t.Fatal(err)
	}
	var n atomic.Int64
	passed := make(chan *gossh.Request)
	go gossh.DiscardRequests(passed)
	go func() {
		defer close(passed)
		for q := range requests {
			if q.Type == "keepalive@openssh.com" {
				n.Add(1)
			}
			if answers {
				passed <- q
			}
		}
	}()
	none := make(chan *gossh.Request)
	close(none)
	return gossh.NewClient(c, chans, none), &n
}

// A watcher who types nothing stays for as long as the terminal answers, many
// times the idle time; one that does not answer goes.
func TestAQuietWatcherStaysWhileTheTerminalAnswers(t *testing.T) {
	t.Parallel()
	const ask, idle = 250 * time.Millisecond, time.Second
	r := hasty(t, 10, false, func(by *door.Times) { by.Ask, by.Idle, by.Answer = ask, idle, patience })
	client, n := r.asked(true)
	g := r.sit(client, 80, 24)
	g.sees("nobody presents")
	waitFor(t, "it is asked beyond the idle time, again and again", func() bool { return n.Load() > 3*int64(idle/ask) })
	g.keys("?")
	g.sees("help")
	if log := r.log.String(); strings.Contains(log, "msg=left") {
		t.Errorf("it is ended:\n%s", log)
	}
}

func TestATerminalThatDoesNotAnswerIsEnded(t *testing.T) {
	r := hasty(t, 1, false, func(by *door.Times) { by.Ask, by.Answer = 50*time.Millisecond, 100*time.Millisecond })
	client, _ := r.asked(false)
	g := r.sit(client, 80, 24)
	g.leaves()
	r.says("msg=left", `why="the client did not answer for 100ms"`)
	r.empty()
}

// A connection that is quite silent, without keepalives even, ends by itself.
func TestALineWithoutASignOfLifeIsEnded(t *testing.T) {
	t.Parallel()
	r := hasty(t, 1, false, func(by *door.Times) { by.Idle = 500 * time.Millisecond }) // and is asked later than that
	r.comes("nothing came for 500ms")
	r.empty()
}

// No visit is for ever.
func TestAVisitHasAnEnd(t *testing.T) {
	t.Parallel()
	r := hasty(t, 1, false, func(by *door.Times) { by.Visit = time.Second })
	r.comes("no visit is longer than 1s")
	r.empty()
}

// comes visits until the time is over in the middle of a visit, and not before
// it, as on a slow machine it may be.
func (r *running) comes(why string) {
	r.t.Helper()
	waitFor(r.t, "a visit ends and the log says: "+why, func() bool {
		client, err := r.dial(nil, "")
		if err != nil {
			return false
		}
		defer client.Close()
		s, err := client.NewSession()
		if err != nil {
			return false
		}
		if _, err := s.StdinPipe(); err != nil { // none would be an end at once
			return false
		}
		if s.RequestPty("xterm", 24, 80, nil) != nil || s.Shell() != nil {
			return false
		}
		_ = client.Wait()
		return strings.Contains(r.log.String(), why)
	})
	r.says("msg=left", `why="`+why+`"`)
}
