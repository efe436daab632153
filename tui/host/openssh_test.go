package host

import (
	"bytes"
	"context"
	"encoding/pem"
	"fmt"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"time"

	gossh "golang.org/x/crypto/ssh"

	"trivet/tui/host/line"
)

// panes drives OpenSSH's own client in tmux: a server and windows of its own.
type panes struct {
	t      *testing.T
	r      *running
	socket string
	folder string
}

func newPanes(t *testing.T, r *running) *panes {
	t.Helper()
	for _, tool := range []string{"ssh", "tmux"} {
		if _, err := exec.LookPath(tool); err != nil {
			t.Skip(tool + " is not here")
		}
	}
	p := &panes{t: t, r: r, folder: t.TempDir()}
	p.socket = filepath.Join(p.folder, "s")
	host, port, _ := strings.Cut(r.addr, ":")
	known := fmt.Sprintf("[%s]:%s %s", host, port, gossh.MarshalAuthorizedKey(r.key.PublicKey()))
	write(t, filepath.Join(p.folder, "known"), known)
	t.Cleanup(func() { _ = exec.Command("tmux", "-S", p.socket, "kill-server").Run() })
	return p
}

// identity writes a key for ssh.
func (p *panes) identity(name string, k any) string {
	p.t.Helper()
	block, err := gossh.MarshalPrivateKey(k, name)
	if err != nil {
		p.t.Fatal(err)
	}
	return write(p.t, filepath.Join(p.folder, name), string(pem.EncodeToMemory(block)))
}

// args are those of ssh, with no other configuration or key than the test's.
func (p *panes) args(identity string, more ...string) []string {
	host, port, _ := strings.Cut(p.r.addr, ":")
	a := []string{"-F", "none", "-p", port, "-o", "UserKnownHostsFile=" + filepath.Join(p.folder, "known"), "-o", "StrictHostKeyChecking=yes",
		"-o", "IdentityAgent=none", "-o", "IdentitiesOnly=yes", "-o", "User=any"}
	if identity != "" {
		a = append(a, "-i", identity)
	} else {
		a = append(a, "-o", "PubkeyAuthentication=no")
	}
	return append(append(a, more...), host)
}

// pane opens ssh in a window of a size.
func (p *panes) pane(name, identity string, w, h int) {
	p.t.Helper()
	// tmux does not always read all of a program's last words, so that another
	// has to stay behind it.
	visit := "ssh " + strings.Join(p.args(identity), " ") + "; exec cat"
	cmd := exec.Command("tmux", "-S", p.socket, "-f", "/dev/null", "new-session", "-d", "-s", name, "-x", fmt.Sprint(w), "-y", fmt.Sprint(h), visit)
	cmd.Env = append(os.Environ(), "LANG=C.UTF-8", "LC_ALL=C.UTF-8")
	if out, err := cmd.CombinedOutput(); err != nil {
		p.t.Fatalf("%v: %s", err, out)
	}
	p.tmux("set-option", "-t", name, "status", "off")
	p.tmux("set-option", "-t", name, "escape-time", "0")
	p.size(name, w, h)
}

func (p *panes) size(name string, w, h int) {
	p.tmux("resize-window", "-t", name, "-x", fmt.Sprint(w), "-y", fmt.Sprint(h))
}

func (p *panes) tmux(args ...string) string {
	out, _ := exec.Command("tmux", append([]string{"-S", p.socket}, args...)...).CombinedOutput()
	return string(out)
}

func (p *panes) keys(name string, keys ...string) {
	p.tmux(append([]string{"send-keys", "-t", name}, keys...)...)
}

func (p *panes) screen(name string) string {
	var b strings.Builder
	for _, l := range strings.Split(strings.TrimSuffix(p.tmux("capture-pane", "-p", "-t", name), "\n"), "\n") {
		b.WriteString(strings.TrimRight(l, " ") + "\n")
	}
	return b.String()
}

func (p *panes) sees(name string, pieces ...string) {
	p.t.Helper()
	for _, piece := range pieces {
		var s string
		ok := false
		defer func() {
			if !ok {
				p.t.Logf("%s:\n%s", name, s)
			}
		}()
		waitFor(p.t, name+" sees "+piece, func() bool { s = p.screen(name); return strings.Contains(s, piece) })
		ok = true
	}
}

func TestOpenSSHPresenterAndWatchers(t *testing.T) {
	t.Parallel()
	k, private := rawKey(t)
	r := start(t, Settings{Presenters: keys(t, k), Word: true}, nil)
	p := newPanes(t, r)
	p.pane("presenter", p.identity("id", private), 120, 36)
	p.sees("presenter", "live: 0 watch", "class word "+r.doors.Word)
	sizes := map[string][2]int{"small": {80, 24}, "same": {120, 36}, "large": {200, 60}}
	for name, s := range sizes {
		p.pane(name, "", s[0], s[1])
		p.sees(name, "Class word:")
		p.keys(name, r.doors.Word, "Enter")
		p.sees(name, "following the presenter")
	}
	p.sees("presenter", "live: 3 watch")
	p.keys("presenter", "Down", "Right")
	p.keys("presenter", "-l", "--", "-3, 0")
	// What a terminal shows is what an emulator shows, and what the classroom drew.
	same := func(name string, w, h int) {
		t.Helper()
		waitFor(t, name+" shows what the classroom draws", func() bool {
			return p.screen(name) == plain(r.service.(*classroom).follow(shape{w, h, line.TerminalOf([]string{"TERM=screen"})}).String())
		})
	}
	for name, s := range sizes {
		p.sees(name, "45.0 T", "-3, 0")
		same(name, s[0], s[1])
	}
	emulated := r.visitWith("screen-256color", r.doors.Word, 80, 24)
	emulated.sees("45.0 T")
	waitFor(t, "the emulator shows the same", func() bool { return emulated.screen() == p.screen("small") })
	p.size("small", 100, 30)
	same("small", 100, 30)
	// Cut off and back again.
	p.tmux("kill-session", "-t", "same")
	p.sees("presenter", "live: 3 watch") // two, and the emulator
	p.pane("same", "", 120, 36)
	p.sees("same", "Class word:")
	p.keys("same", r.doors.Word, "Enter")
	same("same", 120, 36)
	p.keys("same", "M-i")
	p.sees("same", "on your own")
	p.keys("same", "C-l")
	same("same", 120, 36)
	p.keys("presenter", "Escape")
	p.sees("large", "37.5 T")
	p.keys("presenter", "C-l")
	p.sees("presenter", "e: end for all")
	p.keys("presenter", "e", "y")
	for name := range sizes {
		p.sees(name, "trivet: the presenter has ended it")
	}
}

func TestOpenSSHPrivateAndCommands(t *testing.T) {
	t.Parallel()
	folder, _ := shelf(t)
	_, a := rawKey(t)
	_, b := rawKey(t)
	verbs := func(_ context.Context, args []string, in io.Reader, out, _ io.Writer) int {
		text, _ := io.ReadAll(in)
		fmt.Fprintf(out, "%s: %d bytes\n", args[0], len(text))
		return 0
	}
	r := start(t, Settings{Private: folder}, verbs)
	p := newPanes(t, r)
	ia, ib := p.identity("a", a), p.identity("b", b)
	p.pane("a", ia, 80, 24)
	p.pane("b", ib, 100, 40)
	for _, name := range []string{"a", "b"} {
		p.sees(name, "Your sheets", "lamp")
		p.keys(name, "Enter")
		p.sees(name, "37.5 T", "your own copy")
	}
	p.keys("a", "Down", "Right")
	p.keys("a", "-l", "--", "-3, 0")
	p.keys("a", "Enter", "C-s")
	p.sees("a", "45.0 T", "saved to lamp.toml")
	if s := p.screen("b"); !strings.Contains(s, "37.5 T") || strings.Contains(s, "45.0 T") {
		t.Errorf("b sees a's sheet:\n%s", s)
	}
	p.keys("a", "C-q")
	p.sees("a", "Your sheets")
	p.keys("a", "q")
	p.sees("a", "trivet: good-bye; your sheets stay with the host")
	for _, c := range []struct{ command, want, errs string }{
		{"solve -", fmt.Sprintf("solve: %d bytes\n", len(lamp)), ""},
		{"check -", fmt.Sprintf("check: %d bytes\n", len(lamp)), ""},
		{"schema", "schema: 0 bytes\n", ""},
		{"solve /etc/passwd", "", "trivet: sheets are read from standard input only. Try: `solve - < sheet.toml` instead of /etc/passwd\n"},
		{"sh", "", "trivet: the verbs here are solve, check, sweep, page, new and schema. Try: `solve - < sheet.toml`\n"},
	} {
		cmd := exec.Command("ssh", append(p.args(ia, "-T", "-o", "LogLevel=ERROR"), c.command)...)
		cmd.Stdin = strings.NewReader(lamp)
		var errs bytes.Buffer
		cmd.Stderr = &errs
		out, err := cmd.Output()
		if string(out) != c.want || errs.String() != c.errs || (err == nil) != (c.errs == "") {
			t.Errorf("%s: %q, %q, %v", c.command, out, &errs, err)
		}
	}
}

// OpenSSH shows what the host says to one who has no key, and to one whose code waits.
func TestOpenSSHShowsWhatTheHostSays(t *testing.T) {
	t.Parallel()
	folder, _ := shelf(t)
	p := newPanes(t, start(t, Settings{Private: folder}, nil))
	p.pane("keyless", "", 80, 24)
	const needed = "A private workbench needs an SSH key, and your ssh showed none.\nTry: `ssh-keygen -t ed25519`, then come again.\n"
	p.sees("keyless", needed, "Permission denied (publickey,keyboard-interactive).")
	if n := strings.Count(p.screen("keyless"), needed); n != 1 {
		t.Errorf("it is said %d times", n)
	}
	r := startWith(t, Settings{Presenters: keys(t, key(t)), Word: true, ByPlace: 40}, nil, func(h *Host) {
		h.doors.Wait = func(time.Duration, <-chan struct{}) error { return nil }
	})
	for range 100 {
		_, _ = r.told("1")
	}
	r.strangersLeave()
	p = newPanes(t, r)
	p.pane("late", "", 80, 24)
	p.sees("late", "Class word:")
	p.keys("late", "1", "Enter")
	p.sees("late", "Many wrong class words were typed, so yours is checked in ", "That is not the class word; each start of the host has a new one.")
	p.keys("late", r.doors.Word, "Enter")
	p.sees("late", "nobody presents now")
}
