package host

import (
	"bytes"
	"context"
	"crypto/ed25519"
	"crypto/rand"
	"fmt"
	"net"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"testing"
	"time"

	gossh "golang.org/x/crypto/ssh"

	"trivet/tui/grid"
)

// lamp is 60 N on two cables of (∓3, 4): 60 / (2 * 0.8) = 37.5 N each.
const lamp = `title = "Lamp on two cables"
plane = "xy"
asked = "T1 T2"

[given]
W = "60 N"

[points]
D = { at = "0, 0", on = "particle" }
A = "-3, 4"
B = "3, 4"

[lines]
T1 = { kind = "cable", path = "D A", limit = "50 N" }
T2 = { kind = "cable", path = "D B" }
F = { kind = "force", at = "D", along = "-y", magnitude = "W" }
`

// patience is how long a loaded machine may take; it is not a measure.
const patience = time.Minute

func waitFor(t testing.TB, what string, ok func() bool) {
	t.Helper()
	tick := time.NewTicker(5 * time.Millisecond)
	defer tick.Stop()
	for deadline := time.After(patience); !ok(); {
		select {
		case <-deadline:
			t.Fatalf("never: %s", what)
		case <-tick.C:
		}
	}
}

// key makes a key of one's own.
func key(t testing.TB) gossh.Signer {
	t.Helper()
	s, _ := rawKey(t)
	return s
}

func rawKey(t testing.TB) (gossh.Signer, ed25519.PrivateKey) {
	t.Helper()
	_, k, err := ed25519.GenerateKey(rand.Reader)
	if err != nil {
		t.Fatal(err)
	}
	s, err := gossh.NewSignerFromKey(k)
	if err != nil {
		t.Fatal(err)
	}
	return s, k
}

// keys writes a list of keys.
func keys(t testing.TB, all ...gossh.Signer) string {
	t.Helper()
	var b bytes.Buffer
	for i, k := range all {
		fmt.Fprintf(&b, "%s key%d\n", strings.TrimSpace(string(gossh.MarshalAuthorizedKey(k.PublicKey()))), i+1)
	}
	return write(t, filepath.Join(t.TempDir(), "keys"), b.String())
}

func write(t testing.TB, file, text string) string {
	t.Helper()
	if err := os.WriteFile(file, []byte(text), 0o600); err != nil {
		t.Fatal(err)
	}
	return file
}

// page is a frame with a text at its top.
func page(w, h int, text string) grid.Frame {
	g := grid.New(w, h)
	g.All().Text(0, 0, 0, text)
	return grid.Frame{Grid: g, Styles: make([]grid.Sequences, 1)}
}

// running is a host on the loopback address.
type running struct {
	*Host
	t    testing.TB
	addr string
	file string // the sheet presented
	log  *logged
	ill  bool // the test makes faults itself
	end  context.CancelFunc
	err  chan error
}

// logged keeps a log that several write to.
type logged struct {
	mu sync.Mutex
	b  bytes.Buffer
}

func (l *logged) Write(p []byte) (int, error) {
	l.mu.Lock()
	defer l.mu.Unlock()
	return l.b.Write(p)
}

func (l *logged) String() string {
	l.mu.Lock()
	defer l.mu.Unlock()
	return l.b.String()
}

// start runs a host: on the lamp where the settings name nothing else. verbs is
// what it does without a terminal.
func start(t testing.TB, o Settings, verbs Run) *running {
	t.Helper()
	return startWith(t, o, verbs, func(*Host) {})
}

// startWith changes the host before it takes anybody.
func startWith(t testing.TB, o Settings, verbs Run, change func(*Host)) *running {
	t.Helper()
	r := &running{t: t, log: &logged{}, err: make(chan error, 1)}
	if o.Sheet == "" && !o.private() {
		o.Sheet = write(t, filepath.Join(t.TempDir(), "lamp.toml"), lamp)
	}
	r.file = o.Sheet
	if o.State == "" {
		o.State = t.TempDir()
	}
	if o.Listen == "" {
		o.Listen = "127.0.0.1:0"
	}
	if o.Most == 0 {
		o.Most = 2000
	}
	if o.ByPlace == 0 {
		o.ByPlace = 2000
	}
	h, err := New(o, verbs, r.log)
	if err != nil {
		t.Fatal(err)
	}
	change(h)
	l, err := net.Listen("tcp", o.Listen)
	if err != nil {
		t.Fatal(err)
	}
	r.Host, r.addr = h, l.Addr().String()
	ctx, cancel := context.WithCancel(context.Background())
	r.end = cancel
	go func() { r.err <- h.Serve(ctx, l) }()
	t.Cleanup(func() {
		cancel()
		select {
		case err := <-r.err:
			if err != nil {
				t.Errorf("the host ended with %v", err)
			}
		case <-time.After(patience):
			t.Error("the host does not end")
		}
		if !r.ill && strings.Contains(r.log.String(), "fault=") {
			t.Errorf("a fault in the log:\n%s", r.log)
		}
	})
	return r
}

// dial connects with a key, a code, or nothing.
func (r *running) dial(k gossh.Signer, code string) (*gossh.Client, error) {
	c := &gossh.ClientConfig{User: "any", HostKeyCallback: gossh.FixedHostKey(r.key.PublicKey()), Timeout: patience}
	if k != nil {
		c.Auth = append(c.Auth, gossh.PublicKeys(k))
	}
	c.Auth = append(c.Auth, gossh.KeyboardInteractive(func(_, _ string, questions []string, _ []bool) ([]string, error) {
		if len(questions) == 0 {
			return nil, nil
		}
		return []string{code}, nil
	}))
	return gossh.Dial("tcp", r.addr, c)
}
