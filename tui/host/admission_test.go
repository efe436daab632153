package host

import (
	"crypto/rand"
	"crypto/rsa"
	"slices"
	"strings"
	"sync/atomic"
	"testing"
	"time"

	gossh "golang.org/x/crypto/ssh"
)

func TestSettingsThatOpenNoDoorUnasked(t *testing.T) {
	for _, c := range []struct {
		o    Settings
		want string
	}{
		{Settings{Listen: ":2222"}, ":2222 is reached from other machines, but nobody is admitted. Try: --watchers FILE, --word or --presenters FILE, or --open for anybody"},
		{Settings{Listen: "0.0.0.0:2222"}, "0.0.0.0:2222 is reached from other machines, but nobody is admitted. Try: --watchers FILE, --word or --presenters FILE, or --open for anybody"},
		{Settings{Listen: "board.example:2222"}, "board.example:2222 is reached from other machines, but nobody is admitted. Try: --watchers FILE, --word or --presenters FILE, or --open for anybody"},
		{Settings{Listen: "2222"}, `"2222" is not an address to listen on. Try: 127.0.0.1:2222, or :2222 for every address of this machine`},
		{Settings{Listen: ":2222", Word: true}, ""},
		{Settings{Listen: ":2222", Open: true}, ""},
		{Settings{Listen: ":2222", Presenters: "f"}, ""},
		{Settings{Listen: "127.0.0.1:2222"}, ""},
		{Settings{Listen: "[::1]:2222"}, ""},
		{Settings{Listen: "localhost:2222"}, ""},
		{Settings{Listen: ":2222", Open: true, Word: true}, "--open lets anybody in, so --word and --watchers have no effect. Try: leave one of them out"},
		{Settings{Listen: defaultListen, Private: "x"}, "a host presents a sheet, or offers a folder with --private, or a set with --set. Try: one of them"},
	} {
		c.o.Sheet, c.o.Most, c.o.ByPlace = "lamp.toml", 1, 1
		if got := says(c.o.check()); got != c.want {
			t.Errorf("%+v:\n%s\nwant\n%s", c.o, got, c.want)
		}
	}
}

func TestWhoComesInAsWhat(t *testing.T) {
	staff, crew, stranger, other := key(t), key(t), key(t), key(t)
	r := start(t, Settings{Presenters: keys(t, staff), Watchers: keys(t, crew), Word: true}, nil)
	code := r.doors.Word
	if code == start(t, Settings{Presenters: keys(t, staff), Word: true}, nil).doors.Word {
		t.Errorf("the class word %q is not a new one", code)
	}
	for _, c := range []struct {
		key  gossh.Signer
		code string
		role string // empty for not admitted
	}{
		{staff, "", "presenter"}, {crew, "", "watcher"}, {stranger, code, "watcher"}, {nil, code, "watcher"},
		{nil, strings.ToUpper(strings.ReplaceAll(code, " ", "-")), "watcher"}, {nil, "", ""}, {other, "beam beam beam beamx", ""},
	} {
		client, err := r.dial(c.key, c.code)
		if (err == nil) != (c.role != "") {
			t.Errorf("code %q: %v, want %q", c.code, err, c.role)
		}
		if err != nil {
			continue
		}
		g := r.sit(client, 80, 24)
		g.sees(map[string]string{"presenter": "live:", "watcher": "ctrl+q: leave"}[c.role])
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

// told dials as one who types a code, and gives what was said besides.
func (r *running) told(code string, auth ...gossh.AuthMethod) (says []string, err error) {
	c := &gossh.ClientConfig{User: "any", HostKeyCallback: gossh.FixedHostKey(r.key.PublicKey()), Timeout: patience}
	c.Auth = append(auth, gossh.KeyboardInteractive(func(_, instruction string, questions []string, _ []bool) (answers []string, _ error) {
		if instruction != "" {
			says = append(says, instruction)
		}
		for range questions {
			answers = append(answers, code)
		}
		return answers, nil
	}))
	client, err := gossh.Dial("tcp", r.addr, c)
	if err == nil {
		_ = client.Close()
	}
	return says, err
}

// After many wrong codes from an address the right one comes in all the same, later,
// and is told so; keys do not wait.
func TestWrongCodesOverTheWire(t *testing.T) {
	t.Parallel()
	staff := key(t)
	var waits atomic.Int64
	r := startWith(t, Settings{Presenters: keys(t, staff), Word: true, ByPlace: 40}, nil, func(h *Host) {
		h.doors.Wait = func(d time.Duration, _ <-chan struct{}) error { waits.Add(int64(d)); return nil }
	})
	for range 100 { // 60 more than wait for nobody
		if _, err := r.told("1"); err == nil {
			t.Fatal("a wrong code is taken")
		}
	}
	r.strangersLeave()
	was := waits.Load()
	says, err := r.told(r.doors.Word)
	if err != nil {
		t.Fatalf("after many wrong codes the right one is refused: %v", err)
	}
	if now := waits.Load(); now == was {
		t.Error("it did not wait, so the time tells which is right")
	}
	if len(says) != 1 || !strings.HasPrefix(says[0], "Many wrong class words were typed, so yours is checked in ") {
		t.Errorf("%q", says)
	}
	was = waits.Load()
	r.visit(staff, 80, 24).sees("live:")
	if waits.Load() != was {
		t.Error("a presenter's key waits for others' codes")
	}
}

func (r *running) strangersLeave() {
	r.t.Helper()
	waitFor(r.t, "nobody is at the door", func() bool {
		_, strangers := r.gate.Count()
		return strangers == 0
	})
}

// The code is asked once of a key, also where a private visitor needs both.
func TestAKeyThatWasInIsNotAskedAgain(t *testing.T) {
	folder, _ := shelf(t)
	for name, o := range map[string]Settings{
		"presented": {Presenters: keys(t, key(t)), Word: true},
		"private":   {Private: folder, Word: true},
	} {
		r := start(t, o, nil)
		own, other := key(t), key(t)
		if _, err := r.told("1", gossh.PublicKeys(own)); err == nil {
			t.Errorf("%s: a wrong code is taken", name)
		}
		for _, code := range []string{r.doors.Word, "not asked"} {
			if _, err := r.told(code, gossh.PublicKeys(own)); err != nil {
				t.Errorf("%s: %v", name, err)
			}
		}
		if _, err := r.told("not asked", gossh.PublicKeys(other, own)); err != nil { // an agent shows several
			t.Errorf("%s: behind another key: %v", name, err)
		}
		if _, err := r.told("1", gossh.PublicKeys(other)); err == nil {
			t.Errorf("%s: a key that was never in needs no code", name)
		}
		if _, err := r.told("1", gossh.PublicKeys(forged{own.PublicKey(), other})); err == nil {
			t.Errorf("%s: a key that is not held needs no code", name)
		}
	}
}

// Who has no key, or one that is not taken, is told what is needed.
func TestWhoNeedsAKeyIsToldSo(t *testing.T) {
	folder, _ := shelf(t)
	crew, other := key(t), key(t)
	weak, err := rsa.GenerateKey(rand.Reader, 1024)
	if err != nil {
		t.Fatal(err)
	}
	small, err := gossh.NewSignerFromKey(weak)
	if err != nil {
		t.Fatal(err)
	}
	none := []gossh.AuthMethod{}
	for name, c := range map[string]struct {
		o    Settings
		auth []gossh.AuthMethod
		want string
		log  string
	}{
		"private": {Settings{Private: folder}, none,
			"A private workbench needs an SSH key, and your ssh showed none.\nTry: `ssh-keygen -t ed25519`, then come again.",
			"no key where one is needed"},
		"private, with a code": {Settings{Private: folder, Word: true}, none,
			"A private workbench needs an SSH key, and your ssh showed none.\nTry: `ssh-keygen -t ed25519`, then come again.",
			"no key where one is needed"},
		"private, with a list": {Settings{Private: folder, Watchers: keys(t, crew)}, none,
			"A private workbench needs an SSH key, and your ssh showed none.\nTry: `ssh-keygen -t ed25519`, then give the .pub file to whoever runs this host.",
			"no key where one is needed"},
		"private, in no list": {Settings{Private: folder, Watchers: keys(t, crew)}, []gossh.AuthMethod{gossh.PublicKeys(other)},
			"The key that your ssh showed is not in this host's list.\nTry: give the .pub file to whoever runs this host.",
			"a key that is not listed"},
		"private, too weak": {Settings{Private: folder}, []gossh.AuthMethod{gossh.PublicKeys(small)},
			"The key that your ssh showed is of a kind that is not accepted here.\nTry: `ssh-keygen -t ed25519`, then come again.",
			"a key of a kind that is not accepted"},
		"presented, with a list": {Settings{Watchers: keys(t, crew)}, none,
			"This host needs an SSH key, and your ssh showed none.\nTry: `ssh-keygen -t ed25519`, then give the .pub file to whoever runs this host.",
			"no key where one is needed"},
	} {
		t.Run(name, func(t *testing.T) {
			r := start(t, c.o, nil)
			says, err := r.told("1", c.auth...)
			if err == nil || !slices.Equal(says, []string{c.want}) {
				t.Errorf("%v, %q, want\n%s", err, says, c.want)
			}
			r.says(c.log)
		})
	}
}

func TestPrivateVisitorsProveAKeyAndKnowTheCode(t *testing.T) {
	folder, _ := shelf(t)
	r := start(t, Settings{Private: folder, Word: true}, nil)
	k := key(t)
	if _, err := r.dial(nil, r.doors.Word); err == nil {
		t.Error("a code alone opens a private workbench")
	}
	if _, err := r.dial(k, "1"); err == nil {
		t.Error("a wrong code is taken")
	}
	client, err := r.dial(k, r.doors.Word)
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
	t.Parallel()
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
	t.Parallel()
	staff, own, other := key(t), key(t), key(t)
	r := start(t, Settings{Presenters: keys(t, staff), Word: true}, nil)
	code := r.doors.Word
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
	p.keys(live + "d")
	p.sees("live: 1 watches, class word "+code, "door closed")
	_ = g.client.Close()
	p.sees("live: 0 watch")
	by(own).sees("following the presenter")
	p.sees("live: 1 watches")
	for _, k := range []gossh.Signer{nil, other} {
		late := by(k)
		late.leaves()
		late.sees("the presenter has closed the door to late-comers")
	}
	if _, err := r.dial(other, "beam beam beam beamx"); err != nil {
		t.Errorf("a key that knew the code is asked again: %v", err)
	}
}

// A presenter whose agent shows a key of no list first is a presenter all the same.
func TestAListedKeyBehindAnother(t *testing.T) {
	staff, own := key(t), key(t)
	r := start(t, Settings{Presenters: keys(t, staff), Word: true}, nil)
	c := &gossh.ClientConfig{User: "any", HostKeyCallback: gossh.FixedHostKey(r.key.PublicKey()), Timeout: patience,
		Auth: []gossh.AuthMethod{gossh.PublicKeys(own, staff)}}
	client, err := gossh.Dial("tcp", r.addr, c)
	if err != nil {
		t.Fatal(err)
	}
	r.sit(client, 80, 24).sees("live:")
}
