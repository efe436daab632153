package host

import (
	"net/netip"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	gossh "golang.org/x/crypto/ssh"
)

func TestSettingsThatOpenNoDoorUnasked(t *testing.T) {
	for _, c := range []struct {
		o    Settings
		want string
	}{
		{Settings{Listen: ":2222"}, ":2222 is reached from other machines, and nothing says who may come in: give --watchers FILE, --code or --presenters FILE; --open for anybody at all"},
		{Settings{Listen: "0.0.0.0:2222"}, "0.0.0.0:2222 is reached from other machines, and nothing says who may come in: give --watchers FILE, --code or --presenters FILE; --open for anybody at all"},
		{Settings{Listen: "board.example:2222"}, "board.example:2222 is reached from other machines, and nothing says who may come in: give --watchers FILE, --code or --presenters FILE; --open for anybody at all"},
		{Settings{Listen: "2222"}, `the address "2222" does not read: write it as 127.0.0.1:2222, or :2222 for every address of this machine`},
		{Settings{Listen: ":2222", Code: true}, ""},
		{Settings{Listen: ":2222", Open: true}, ""},
		{Settings{Listen: ":2222", Presenters: "f"}, ""},
		{Settings{Listen: "127.0.0.1:2222"}, ""},
		{Settings{Listen: "[::1]:2222"}, ""},
		{Settings{Listen: "localhost:2222"}, ""},
		{Settings{Listen: ":2222", Open: true, Code: true}, "--open lets anybody in, so --code and --watchers mean nothing beside it: leave one of them out"},
		{Settings{Listen: defaultListen, Private: "x"}, "name one sheet to present, or a folder with --private: try `trivet host mast.toml`"},
	} {
		c.o.Sheet, c.o.Most, c.o.ByPlace = "lamp.toml", 1, 1
		if got := says(c.o.check()); got != c.want {
			t.Errorf("%+v:\n%s\nwant\n%s", c.o, got, c.want)
		}
	}
}

func TestListsOfKeysSayWhereTheyDoNotRead(t *testing.T) {
	good := strings.TrimSpace(string(gossh.MarshalAuthorizedKey(key(t).PublicKey())))
	for _, c := range []struct{ text, want string }{
		{"# staff\n\n" + good + " ann\n", ""},
		{good + "\nnonsense\n", "keys:2: this is no public key: write one a line, as in id_ed25519.pub"},
		{"command=\"x\" " + good + "\n", "keys:1: options before a key mean nothing here: write the key alone"},
		{"# none\n", "keys: there is no key in it: write one a line, as in id_ed25519.pub"},
	} {
		file := write(t, filepath.Join(t.TempDir(), "keys"), c.text)
		_, err := readRoster(file)
		if got := strings.ReplaceAll(says(err), file, "keys"); got != c.want {
			t.Errorf("%q: %s, want %s", c.text, got, c.want)
		}
	}
}

func TestTheHostKeyIsMadeOnceAndKept(t *testing.T) {
	state := t.TempDir()
	a, err := hostKey(state)
	if err != nil {
		t.Fatal(err)
	}
	b, err := hostKey(state)
	if err != nil || gossh.FingerprintSHA256(a.PublicKey()) != gossh.FingerprintSHA256(b.PublicKey()) {
		t.Errorf("another key at the second start, %v", err)
	}
	file := filepath.Join(state, keyFolder, keyFile)
	info, err := os.Stat(file)
	if err != nil || info.Mode().Perm() != keyMode || a.PublicKey().Type() != gossh.KeyAlgoED25519 {
		t.Errorf("%v, %v, %s", info.Mode(), err, a.PublicKey().Type())
	}
	if err := os.Chmod(file, 0o644); err != nil {
		t.Fatal(err)
	}
	if _, err := hostKey(state); !strings.Contains(says(err), "can be read by others: chmod 600 it") {
		t.Errorf("%v", err)
	}
	write(t, file, "no key")
	_ = os.Chmod(file, 0o600)
	if _, err := hostKey(state); !strings.Contains(says(err), "does not read") {
		t.Errorf("%v", err)
	}
}

func TestWhoComesInAsWhat(t *testing.T) {
	staff, crew, stranger := key(t), key(t), key(t)
	r := start(t, Settings{Presenters: keys(t, staff), Watchers: keys(t, crew), Code: true}, nil)
	code := r.doors.code
	if len(code) != codeDigits+1 || code == start(t, Settings{Presenters: keys(t, staff), Code: true}, nil).doors.code {
		t.Errorf("the code %q is not a new one", code)
	}
	for _, c := range []struct {
		key  gossh.Signer
		code string
		role string // empty for not admitted
	}{
		{staff, "", "presenter"}, {crew, "", "watcher"}, {stranger, code, "watcher"}, {nil, code, "watcher"},
		{nil, strings.ReplaceAll(code, " ", "-"), "watcher"}, {nil, "", ""}, {stranger, "0000 0000x", ""},
	} {
		client, err := r.dial(c.key, c.code)
		if (err == nil) != (c.role != "") {
			t.Errorf("code %q: %v, want %q", c.code, err, c.role)
		}
		if err != nil {
			continue
		}
		g := r.sit(client, 80, 24)
		g.sees(map[string]string{"presenter": "live:", "watcher": "ctrl+q leave"}[c.role])
		_ = client.Close()
	}
}

// A key that is offered and not held gives nothing, also where another is proved
// on the same connection.
func TestAKeyOfferedButNotHeld(t *testing.T) {
	staff, own := key(t), key(t)
	r := start(t, Settings{Presenters: keys(t, staff), Watchers: keys(t, own)}, nil)
	c := &gossh.ClientConfig{User: "staff", HostKeyCallback: gossh.InsecureIgnoreHostKey(), Timeout: patience,
		Auth: []gossh.AuthMethod{gossh.PublicKeys(forged{staff.PublicKey(), own}, own)}}
	client, err := gossh.Dial("tcp", r.addr, c)
	if err != nil {
		c.Auth = []gossh.AuthMethod{gossh.PublicKeys(own, forged{staff.PublicKey(), own})}
		if client, err = gossh.Dial("tcp", r.addr, c); err != nil {
			t.Fatal(err)
		}
	}
	g := r.sit(client, 80, 24)
	g.sees("nobody presents")
	g.keys(live + "x")
	g.sees("nobody presents")
}

// forged shows one key and signs with another.
type forged struct {
	shown gossh.PublicKey
	gossh.Signer
}

func (f forged) PublicKey() gossh.PublicKey { return f.shown }

func TestWrongCodesAreLimitedByAddress(t *testing.T) {
	var g guesses
	now := time.Now()
	a, b := netip.MustParseAddr("192.0.2.1"), netip.MustParseAddr("2001:db8::1")
	for range codeTries {
		if !g.may(a, now) {
			t.Fatal("limited too soon")
		}
		if g.judge(a, false, now) || g.judge(b, false, now) {
			t.Fatal("a wrong code is right")
		}
	}
	if g.judge(a, true, now) || g.may(a, now) || g.may(netip.MustParseAddr("2001:db8::ffff"), now) || !g.may(netip.MustParseAddr("192.0.2.2"), now) {
		t.Error("the limit is not by address")
	}
	if !g.may(a, now.Add(codeSpan+time.Second)) {
		t.Error("the limit stays for ever")
	}
	for i := range 3 * addressesKept {
		g.missed(place(netip.AddrFrom4([4]byte{10, byte(i >> 16), byte(i >> 8), byte(i)})), now.Add(time.Duration(i)))
	}
	c := netip.MustParseAddr("192.0.2.9")
	if g.judge(c, true, now) || !g.judge(c, true, now.Add(codeSpan+time.Second)) {
		t.Error("the limit of all addresses together is not kept")
	}
	if len(g.wrong) > addressesKept {
		t.Errorf("%d addresses are remembered", len(g.wrong))
	}
}

func TestWrongCodesOverTheWire(t *testing.T) {
	staff := key(t)
	r := start(t, Settings{Presenters: keys(t, staff), Code: true}, nil)
	for range codeTries {
		if _, err := r.dial(nil, "1"); err == nil {
			t.Fatal("a wrong code is taken")
		}
	}
	if _, err := r.dial(nil, r.doors.code); err == nil {
		t.Error("after many wrong codes the right one still counts")
	}
	p := r.visit(staff, 80, 24) // keys are not touched by it
	p.sees("live:")
}

func TestPrivateVisitorsProveAKeyAndKnowTheCode(t *testing.T) {
	folder, _ := shelf(t)
	r := start(t, Settings{Private: folder, Code: true}, nil)
	k := key(t)
	if _, err := r.dial(nil, r.doors.code); err == nil {
		t.Error("a code alone opens a private workbench")
	}
	if _, err := r.dial(k, "1"); err == nil {
		t.Error("a wrong code is taken")
	}
	client, err := r.dial(k, r.doors.code)
	if err != nil {
		t.Fatal(err)
	}
	r.sit(client, 80, 24).sees("Your sheets")
}

// Only what is current is spoken: an old client is refused.
func TestOldAlgorithmsAreRefused(t *testing.T) {
	r := start(t, Settings{Presenters: keys(t, key(t))}, nil)
	for name, c := range map[string]gossh.Config{
		"kex": {KeyExchanges: []string{gossh.InsecureKeyExchangeDH14SHA1, gossh.KeyExchangeDH14SHA256}},
		"cbc": {Ciphers: []string{gossh.InsecureCipherAES128CBC, gossh.CipherAES128CTR}, MACs: []string{gossh.HMACSHA1}},
	} {
		_, err := gossh.Dial("tcp", r.addr, &gossh.ClientConfig{Config: c, HostKeyCallback: gossh.InsecureIgnoreHostKey(), Timeout: patience})
		if err == nil || !strings.Contains(err.Error(), "no common algorithm") {
			t.Errorf("%s: %v", name, err)
		}
	}
}

func TestNothingButSessions(t *testing.T) {
	r := start(t, Settings{Presenters: keys(t, key(t))}, nil)
	client, err := r.dial(nil, "")
	if err != nil {
		t.Fatal(err)
	}
	if c, err := client.Dial("tcp", "127.0.0.1:1"); err == nil {
		_ = c.Close()
		t.Error("a connection is forwarded")
	}
	if l, err := client.Listen("tcp", "127.0.0.1:0"); err == nil {
		_ = l.Close()
		t.Error("a port is forwarded")
	}
	s, err := client.NewSession()
	if err != nil {
		t.Fatal(err)
	}
	for _, req := range []string{"auth-agent-req@openssh.com", "x11-req", "subsystem", "signal", "break", "env"} {
		if ok, err := s.SendRequest(req, true, gossh.Marshal(struct{ S, V string }{"sftp", "x"})); ok || err != nil {
			t.Errorf("%s: %v, %v", req, ok, err)
		}
	}
}

// Who came by the code with a key of no list is known again while the door is
// closed; who has none, another, or only the right key and no code, is not.
func TestWhoWasInComesBackThroughAClosedDoor(t *testing.T) {
	staff, own, other := key(t), key(t), key(t)
	r := start(t, Settings{Presenters: keys(t, staff), Code: true}, nil)
	code := r.doors.code
	p := r.visit(staff, 100, 30)
	p.sees("live: 0 watch")
	by := func(k gossh.Signer) *guest {
		t.Helper()
		client, err := r.dial(k, code)
		if err != nil {
			t.Fatal(err)
		}
		return r.sit(client, 80, 24)
	}
	g := by(own)
	g.sees("following the presenter")
	p.sees("live: 1 watches")
	p.keys(live + "l")
	p.sees("live: 1 watches, join code "+code, "locked")
	_ = g.client.Close()
	p.sees("live: 0 watch")
	by(own).sees("following the presenter")
	p.sees("live: 1 watches")
	for _, k := range []gossh.Signer{nil, other} {
		late := by(k)
		late.leaves()
		late.sees("the presenter has closed the door to late-comers")
	}
	if _, err := r.dial(own, "0000 0000x"); err == nil {
		t.Error("a key that is known replaces the code")
	}
}

// A presenter whose agent shows a key of no list first is a presenter all the same.
func TestAListedKeyBehindAnother(t *testing.T) {
	staff, own := key(t), key(t)
	r := start(t, Settings{Presenters: keys(t, staff), Code: true}, nil)
	c := &gossh.ClientConfig{User: "any", HostKeyCallback: gossh.FixedHostKey(r.key.PublicKey()), Timeout: patience,
		Auth: []gossh.AuthMethod{gossh.PublicKeys(own, staff)}}
	client, err := gossh.Dial("tcp", r.addr, c)
	if err != nil {
		t.Fatal(err)
	}
	r.sit(client, 80, 24).sees("live:")
}
