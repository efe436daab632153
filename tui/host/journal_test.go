package host

import (
	"bufio"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"trivet/tui/host/door"
	"trivet/tui/host/store"
)

// journals are those that a host keeps below its own folder.
func journals(t testing.TB, state string) []string {
	t.Helper()
	files, err := filepath.Glob(filepath.Join(state, journalFolder, "*"))
	if err != nil {
		t.Fatal(err)
	}
	return files
}

// mortal is a host in a process of its own, which presents the sheet.
func mortal(t *testing.T, sheet, presenters, state string) (*running, *exec.Cmd) {
	t.Helper()
	cmd := exec.Command(os.Args[0])
	cmd.Env = append(os.Environ(), loadEnv+"="+strings.Join([]string{sheet, "", presenters, state}, "|"))
	cmd.Stderr = os.Stderr
	out, err := cmd.StdoutPipe()
	if err != nil {
		t.Fatal(err)
	}
	if err := cmd.Start(); err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { _ = cmd.Process.Kill(); _ = cmd.Wait() })
	addr, err := bufio.NewReader(out).ReadString('\n')
	if err != nil {
		t.Fatal(err)
	}
	key, err := door.HostKey(state)
	if err != nil {
		t.Fatal(err)
	}
	return &running{Host: &Host{key: key}, t: t, addr: strings.TrimSpace(addr), file: sheet}, cmd
}

// A host that is killed outright while somebody types has lost nothing that was
// shown: whoever presents next is asked, and nobody else.
func TestAKilledHostLosesNothingThatWasShown(t *testing.T) {
	t.Parallel()
	k, state := key(t), t.TempDir()
	list := keys(t, k)
	file := write(t, filepath.Join(t.TempDir(), "lamp.toml"), lamp)
	kill := func(cmd *exec.Cmd) {
		t.Helper()
		if err := cmd.Process.Kill(); err != nil {
			t.Fatal(err)
		}
		_ = cmd.Wait()
	}
	r, cmd := mortal(t, file, list, state)
	p := r.visit(k, 120, 36)
	p.sees("live:")
	p.keys(down + right + "-3, 0\r")
	p.sees("45.0 T")
	p.keys(down + "\x1b[D" + "3, 41") // of the cell below, still being typed
	p.sees("3, 41")
	kill(cmd)

	// It is asked again until somebody answers: not before there is a presenter, and
	// killed once more with the question open.
	for range 2 {
		r, cmd = mortal(t, file, list, state)
		g := r.visit(nil, 120, 36)
		g.sees("nobody presents")
		g.keys("y\x1bi")
		g.sees("on your own")
		p = r.visit(k, 120, 36)
		p.sees("Unsaved work of", "2 cells differ. Take it over?")
		if s := g.screen(); strings.Contains(s, "Unsaved work") || strings.Contains(s, "Take it over") {
			t.Errorf("a watcher is asked:\n%s", s)
		}
		kill(cmd)
	}
	r, cmd = mortal(t, file, list, state)
	p = r.visit(k, 120, 36)
	p.sees("Take it over?")
	g := r.visit(nil, 120, 36)
	p.keys("s")
	p.sees("A: on disk -3, 4, left -3, 0", "B: on disk 3, 4, left 3, 41")
	p.keys("y")
	p.sees("recovered, not saved yet")
	g.sees("-3, 0", "3, 41")
	if text, err := os.ReadFile(file); err != nil || string(text) != lamp {
		t.Errorf("the file has changed unasked: %v\n%s", err, text)
	}
	kill(cmd) // what was taken over is not lost either
	r, cmd = mortal(t, file, list, state)
	p = r.visit(k, 120, 36)
	p.sees("Take it over?")
	p.keys("y")
	p.sees("recovered, not saved yet")
	p.keys(save)
	p.sees("saved to lamp.toml")
	p.keys(live + "ey")
	p.leaves()
	if err := cmd.Wait(); err != nil {
		t.Fatal(err)
	}
	text, err := os.ReadFile(file)
	if want := strings.NewReplacer(`"-3, 4"`, `"-3, 0"`, `"3, 4"`, `"3, 41"`).Replace(lamp); err != nil || string(text) != want {
		t.Errorf("%v\n%s", err, text)
	}
	if left := journals(t, state); len(left) > 0 {
		t.Errorf("left behind: %q", left)
	}
}

// An orderly end leaves no journal, whether the sheet is saved at it or was not
// to be saved; neither does the workbench's own quit where the host goes on.
func TestAnOrderlyEndLeavesNoJournal(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		name   string
		ends   func(r *running, p *guest)
		stands string
	}{
		{"told to end", func(r *running, p *guest) { r.end() }, `"-3, 0"`},
		{"by the presenter", func(r *running, p *guest) { p.keys(live + "ey") }, `"-3, 0"`},
		{"not saved", func(r *running, p *guest) {
			p.keys(quit)
			p.sees("has unsaved changes")
			p.keys("n")
			p.sees("end it for everybody?")
			p.keys("y")
		}, `"-3, 4"`},
	} {
		t.Run(c.name, func(t *testing.T) {
			k, state := key(t), t.TempDir()
			r := start(t, Settings{Presenters: keys(t, k), State: state}, nil)
			p := r.visit(k, 120, 30)
			p.sees("live:")
			p.keys(down + right + "-3, 0\r")
			p.sees("45.0 T")
			if n := len(journals(t, state)); n != 1 {
				t.Errorf("%d journals while it goes on", n)
			}
			c.ends(r, p)
			p.leaves()
			r.err <- <-r.err
			if text, err := os.ReadFile(r.file); err != nil || !strings.Contains(string(text), c.stands) {
				t.Errorf("%v\n%s", err, text)
			}
			if left := journals(t, state); len(left) > 0 {
				t.Errorf("left behind: %q", left)
			}
		})
	}
}

// The workbench's quit ends the journal of nobody who then goes on.
func TestTheJournalOutlivesAQuitThatIsNone(t *testing.T) {
	k, state := key(t), t.TempDir()
	list := keys(t, k)
	file := write(t, filepath.Join(t.TempDir(), "lamp.toml"), lamp)
	r, cmd := mortal(t, file, list, state)
	p := r.visit(k, 120, 30)
	p.sees("live:")
	p.keys(quit)
	p.sees("end it for everybody?")
	p.keys("n")
	p.sees("live:")
	p.keys(down + right + "-3, 0\r")
	p.sees("45.0 T")
	if err := cmd.Process.Kill(); err != nil {
		t.Fatal(err)
	}
	_ = cmd.Wait()
	r, _ = mortal(t, file, list, state)
	r.visit(k, 120, 30).sees("1 cell differs. Take it over?")
}

// Where the rescue finds no place at all the journal stays, and is offered.
func TestWhatCannotBeSavedAnywhereStaysInTheJournal(t *testing.T) {
	t.Parallel()
	k, state := key(t), t.TempDir()
	list := keys(t, k)
	r := start(t, Settings{Presenters: list, State: state}, nil)
	p := r.visit(k, 120, 30)
	p.sees("live:")
	p.keys(down + right + "-3, 0\r")
	p.sees("45.0 T")
	if err := os.Remove(r.file); err != nil {
		t.Fatal(err)
	}
	if err := os.Mkdir(r.file, 0o700); err != nil { // a name that cannot be written
		t.Fatal(err)
	}
	write(t, filepath.Join(state, store.RescuedFolder), "no folder")
	r.end()
	p.leaves()
	p.sees("the sheet could not be saved: this is not a file")
	r.err <- <-r.err
	if err := os.Remove(r.file); err != nil {
		t.Fatal(err)
	}
	r = start(t, Settings{Sheet: write(t, r.file, lamp), Presenters: list, State: state}, nil)
	p = r.visit(k, 120, 30)
	p.sees("1 cell differs. Take it over?")
	p.keys("y")
	p.sees("45.0 T")
}

// Two hosts on one sheet know of each other, and neither takes the other's work
// for left.
func TestTwoHostsOnOneSheet(t *testing.T) {
	k, state := key(t), t.TempDir()
	list := keys(t, k)
	a := start(t, Settings{Presenters: list, State: state}, nil)
	pa := a.visit(k, 120, 30)
	pa.sees("live:")
	pa.keys(down + right + "-3, 0\r")
	pa.sees("45.0 T")
	b := start(t, Settings{Sheet: a.file, Presenters: list, State: state}, nil)
	pb, g := b.visit(k, 120, 30), b.visit(nil, 120, 30)
	pb.sees("it is open in another workbench too (process")
	g.sees("following the presenter")
	if s := pb.screen() + g.screen(); strings.Contains(s, "Take it over") || strings.Contains(g.screen(), "another workbench") {
		t.Errorf("asked, or told to a watcher:\n%s", s)
	}
	pb.keys(down + right + "-3, 9\r" + save)
	pb.sees("saved to lamp.toml")
	pa.keys(save)
	pa.sees("Overwrite it?")
	if n := len(journals(t, state)); n != 2 {
		t.Errorf("%d journals", n)
	}
}

// Where no folder takes a journal the host says so and goes on.
func TestAHostWithoutAJournalSaysSo(t *testing.T) {
	k, state := key(t), t.TempDir()
	write(t, filepath.Join(state, journalFolder), "no folder")
	home := write(t, filepath.Join(t.TempDir(), "home"), "no folder")
	r := start(t, Settings{Presenters: keys(t, k), State: state, Env: []string{"HOME=" + home}}, nil)
	p, g := r.visit(k, 120, 30), r.visit(nil, 120, 30)
	p.sees("no journal is kept, so a crash would cost what is not saved: mkdir: not a directory")
	g.sees("following the presenter")
	if s := g.screen(); strings.Contains(s, "journal") || strings.Contains(p.screen()+s, state) || strings.Contains(p.screen()+s, home) {
		t.Errorf("told to a watcher, or a folder named:\n%s\n%s", p.screen(), s)
	}
	if text := r.log.String(); strings.Count(text, "no journal is kept") != 1 {
		t.Errorf("the log:\n%s", text)
	}
	p.keys(down + right + "-3, 0\r")
	g.sees("45.0 T")
}

// The journal is where the workbench on the same file looks for it, unless that
// takes none: then it is below the host's own folder.
func TestWhereTheJournalIs(t *testing.T) {
	home, state := t.TempDir(), t.TempDir()
	r := start(t, Settings{Presenters: keys(t, key(t)), State: state, Env: []string{"XDG_STATE_HOME=" + home}}, nil)
	waitFor(t, "a journal", func() bool {
		files, _ := filepath.Glob(filepath.Join(home, "trivet", "journal", "*.journal"))
		return len(files) == 1
	})
	if left := journals(t, state); len(left) > 0 {
		t.Errorf("and %q", left)
	}
	bare := t.TempDir()
	start(t, Settings{Sheet: r.file, Presenters: keys(t, key(t)), State: bare, Env: []string{"HOME=" + write(t, filepath.Join(home, "no"), "no folder")}}, nil)
	waitFor(t, "a journal of the host's own", func() bool { return len(journals(t, bare)) == 1 })
}

// A handed sheet is kept in the same journal.
func TestAHandOverKeepsTheJournal(t *testing.T) {
	a, b, state := key(t), key(t), t.TempDir()
	list := keys(t, a, b)
	file := write(t, filepath.Join(t.TempDir(), "lamp.toml"), lamp)
	r, cmd := mortal(t, file, list, state)
	pa, pb := r.visit(a, 120, 30), (*guest)(nil)
	pa.sees("live:")
	pb = r.visit(b, 120, 30)
	pb.sees("following the presenter")
	pa.keys(down + right + "-3, ")
	pa.sees("stale")
	pa.keys(live + "h1")
	pb.sees("live:")
	pb.keys("0")
	pb.sees("45.0 T")
	if err := cmd.Process.Kill(); err != nil {
		t.Fatal(err)
	}
	_ = cmd.Wait()
	r, _ = mortal(t, file, list, state)
	p := r.visit(b, 120, 30)
	p.sees("1 cell differs. Take it over?")
	p.keys("y")
	p.sees("-3, 0", "45.0 T")
}
