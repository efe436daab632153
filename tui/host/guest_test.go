package host

import (
	"io"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/charmbracelet/x/vt"
	gossh "golang.org/x/crypto/ssh"
)

// guest is a visitor with an emulated terminal.
type guest struct {
	t       testing.TB
	client  *gossh.Client
	session *gossh.Session
	in      io.WriteCloser

	mu    sync.Mutex
	e     *vt.Emulator
	n     int                               // bytes that came
	reads func(bytes []byte, screen string) // each that comes, and what it makes of the screen; nil: nobody
	ended chan struct{}
}

func (g *guest) Write(p []byte) (int, error) {
	g.mu.Lock()
	defer g.mu.Unlock()
	g.n += len(p)
	n, err := g.e.Write(p)
	if g.reads != nil {
		g.reads(p, shown(g.e))
	}
	return n, err
}

func (r *running) visit(k gossh.Signer, w, h int, env ...string) *guest {
	r.t.Helper()
	client, err := r.dial(k, "")
	if err != nil {
		r.t.Fatal(err)
	}
	return r.sit(client, w, h, env...)
}

// visitWith comes by a code, on a terminal of a kind.
func (r *running) visitWith(kind, code string, w, h int) *guest {
	r.t.Helper()
	client, err := r.dial(nil, code)
	if err != nil {
		r.t.Fatal(err)
	}
	return r.sitAt(kind, client, w, h)
}

func (r *running) sit(client *gossh.Client, w, h int, env ...string) *guest {
	r.t.Helper()
	return r.sitAt("xterm-256color", client, w, h, env...)
}

func (r *running) sitAt(kind string, client *gossh.Client, w, h int, env ...string) *guest {
	r.t.Helper()
	s, err := client.NewSession()
	if err != nil {
		r.t.Fatal(err)
	}
	for _, e := range env {
		name, value, _ := strings.Cut(e, "=")
		_ = s.Setenv(name, value)
	}
	if err := s.RequestPty(kind, h, w, nil); err != nil {
		r.t.Fatal(err)
	}
	g := &guest{t: r.t, client: client, session: s, e: vt.NewEmulator(w, h), ended: make(chan struct{})}
	go io.Copy(io.Discard, g.e) // the emulator's replies; unread they block it
	s.Stdout = g
	if g.in, err = s.StdinPipe(); err != nil {
		r.t.Fatal(err)
	}
	if err := s.Shell(); err != nil {
		r.t.Fatal(err)
	}
	go func() {
		_ = s.Wait()
		hangUp(g.e)
		close(g.ended)
	}()
	r.t.Cleanup(func() { _ = client.Close() })
	return g
}

func (g *guest) keys(text string) {
	g.t.Helper()
	if _, err := io.WriteString(g.in, text); err != nil {
		g.t.Fatal(err)
	}
}

func (g *guest) resize(w, h int) {
	g.mu.Lock()
	g.e.Resize(w, h)
	g.mu.Unlock()
	if err := g.session.WindowChange(h, w); err != nil {
		g.t.Fatal(err)
	}
}

func (g *guest) screen() string {
	g.mu.Lock()
	defer g.mu.Unlock()
	return shown(g.e)
}

func (g *guest) sees(pieces ...string) {
	g.t.Helper()
	tick := time.NewTicker(5 * time.Millisecond)
	defer tick.Stop()
	deadline := time.After(patience)
	for _, p := range pieces {
		for !strings.Contains(g.screen(), p) {
			select {
			case <-deadline:
				g.t.Fatalf("the screen never held %q:\n%s", p, g.screen())
			case <-tick.C:
			}
		}
	}
}

func (g *guest) leaves() {
	g.t.Helper()
	select {
	case <-g.ended:
	case <-time.After(patience):
		g.t.Fatalf("the visit does not end:\n%s", g.screen())
	}
}

const (
	live   = "\x0c" // ctrl+l
	quit   = "\x11" // ctrl+q
	save   = "\x13" // ctrl+s
	down   = "\x1b[B"
	right  = "\x1b[C"
	escape = "\x1b"
)
