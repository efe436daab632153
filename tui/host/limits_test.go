package host

import (
	"errors"
	"fmt"
	"io"
	"net"
	"strings"
	"testing"

	gossh "golang.org/x/crypto/ssh"

	"trivet/tui/host/pace"
)

// Where the host is full there is room for presenters alone.
func TestVisitorsInAll(t *testing.T) {
	k := key(t)
	r := start(t, Settings{Presenters: keys(t, k), Most: 2}, nil)
	client, err := r.dial(nil, "")
	if err != nil {
		t.Fatal(err)
	}
	a, b := r.sit(client, 80, 24), r.sit(client, 80, 24)
	a.sees("nobody presents")
	b.sees("nobody presents")
	late, err := r.dial(nil, "")
	if err != nil {
		t.Fatal(err)
	}
	if got := r.runs(late, "solve -", strings.NewReader(lamp)); got != (ran{"", "trivet: the host is full: try again later\r\n", 1}) {
		t.Errorf("%+v", got)
	}
	p := r.visit(k, 80, 24)
	p.sees("live: 2 watch")
	a.keys(quit)
	a.leaves()
	b.keys(quit)
	b.leaves()
	p.sees("live: 0 watch")
	r.sit(late, 80, 24).sees("following")
}

// A stranger chooses neither how long the log's lines are, nor how many there are,
// nor where they end.
func TestTheLogOfThoseNotAdmitted(t *testing.T) {
	r := start(t, Settings{Presenters: keys(t, key(t)), Word: true}, nil)
	from, _ := net.Pipe()
	for range pace.LinesBurst + 50 {
		r.refused(from, errors.New("x\nlevel=ERROR msg=\"\x1b]0;"+strings.Repeat("y", 100000)))
	}
	text := r.log.String()
	if n := strings.Count(text, "\n"); n < pace.LinesBurst || n > pace.LinesBurst+5 {
		t.Errorf("%d lines", n)
	}
	for l := range strings.Lines(text) {
		if len(l) > 2*longestWhy+200 || strings.Contains(l, "\x1b") || !strings.HasPrefix(l, "time=") {
			t.Fatalf("a line: %q", l)
		}
	}
}

// A certificate is no key, whose ever it is.
func TestCertificatesAreNotTaken(t *testing.T) {
	ca, own := key(t), key(t)
	cert := &gossh.Certificate{Key: own.PublicKey(), CertType: gossh.UserCert, ValidBefore: gossh.CertTimeInfinity}
	if err := cert.SignCert(strings.NewReader(strings.Repeat("r", 1000)), ca); err != nil {
		t.Fatal(err)
	}
	r := start(t, Settings{Presenters: keys(t, own), Word: true}, nil)
	signer, err := gossh.NewCertSigner(cert, own)
	if err != nil {
		t.Fatal(err)
	}
	if _, err := r.dial(signer, "1"); err == nil {
		t.Error("a certificate is taken")
	}
}

// However many silent connections an address has, a key comes in from it, and they
// have a quarter of its places.
func TestSilentConnectionsCloseNoAddress(t *testing.T) {
	const places = 40
	k := key(t)
	r := start(t, Settings{Presenters: keys(t, k), Word: true, ByPlace: places}, nil)
	closed := make(chan struct{}, 2*places)
	for range 2 * places {
		conn, err := net.Dial("tcp", r.addr)
		if err != nil {
			t.Fatal(err)
		}
		t.Cleanup(func() { _ = conn.Close() })
		go func() {
			_, _ = io.Copy(io.Discard, conn)
			closed <- struct{}{}
		}()
	}
	for range places { // all have come, and the others are there for a minute
		<-closed
	}
	r.visit(k, 80, 24).sees("live: 0 watch")
	for range places - places/4 {
		<-closed
	}
	client, err := r.dial(nil, r.doors.Word)
	if err != nil {
		t.Fatal(err)
	}
	r.sit(client, 80, 24).sees("following")
	r.says("it did not say who it is, and another of its address came")
}

// What an admitted visitor has refused is logged at a pace, and how many lines were
// left out is said, at the latest at the end.
func TestTheLogOfRefusedCommands(t *testing.T) {
	const each, times = 50, 6
	k := key(t)
	r := start(t, Settings{Watchers: keys(t, k)}, nil)
	for range times {
		client, err := r.dial(k, "")
		if err != nil {
			t.Fatal(err)
		}
		for range each {
			if got := r.runs(client, "sh", strings.NewReader("")); got.code != cannotDo {
				t.Fatalf("%+v", got)
			}
		}
		_ = client.Close()
	}
	r.end()
	count := func() (lines, said int) {
		for l := range strings.Lines(r.log.String()) {
			switch {
			case strings.Contains(l, `msg="a command refused"`):
				lines++
			case strings.Contains(l, `msg="lines left out" about=commands from=127.0.0.1/32`):
				var n int
				if _, err := fmt.Sscanf(l[strings.Index(l, "lines="):], "lines=%d", &n); err != nil {
					t.Fatal(err)
				}
				said += n
			}
		}
		return lines, said
	}
	waitFor(t, "every refusal is logged or counted", func() bool { lines, said := count(); return lines+said == each*times })
	if lines, _ := count(); lines < pace.LinesBurst || lines >= each*times {
		t.Errorf("%d lines", lines)
	}
}
