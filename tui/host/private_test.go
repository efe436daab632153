package host

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"trivet/tui/record"
)

// shelf is a folder with the lamp, and with things that are not to be had.
func shelf(t *testing.T) (folder, secret string) {
	t.Helper()
	folder = t.TempDir()
	write(t, filepath.Join(folder, "lamp.toml"), lamp)
	write(t, filepath.Join(folder, "other.toml"), "title = \"Another\"\n")
	secret = write(t, filepath.Join(t.TempDir(), "secret.toml"), "title = \"secret\"\n")
	if err := os.Symlink(secret, filepath.Join(folder, "link.toml")); err != nil {
		t.Fatal(err)
	}
	return folder, secret
}

func TestEachVisitorHasCopiesAndFindsThemAgain(t *testing.T) {
	folder, _ := shelf(t)
	state := t.TempDir()
	a, b := key(t), key(t)
	r := start(t, Settings{Private: folder, State: state}, nil)
	ga, gb := r.visit(a, 80, 24), r.visit(b, 120, 36)
	ga.sees("Your sheets", "lamp", "other", "up/down: choose, enter: open, q: leave")
	if strings.Contains(ga.screen(), "link") {
		t.Errorf("a link is listed:\n%s", ga.screen())
	}
	ga.keys("\r")
	ga.sees("37.5 T", "your own copy")
	gb.keys("\r")
	gb.sees("37.5 T")
	ga.keys(down + right + "-3, 0\r" + save)
	ga.sees("saved to lamp.toml")
	gb.keys(down + right + "-3, 1")
	gb.sees("-3, 1")
	if strings.Contains(gb.screen(), "-3, 0") {
		t.Error("one visitor's cell is in the other's sheet")
	}
	ga.resize(100, 30)
	ga.sees("45.0 T", "your own copy")
	// Back to the list, and to another sheet.
	ga.keys(quit)
	ga.sees("Your sheets")
	ga.keys(down + "\r")
	ga.sees("Another")
	ga.keys(quit)
	ga.sees("Your sheets")
	ga.keys("q")
	ga.leaves()
	ga.sees("trivet: good-bye; your sheets stay with the host")
	// One is cut off in the middle of a cell: it is kept all the same.
	_ = gb.client.Close()
	waitFor(t, "the cell is saved", func() bool { return strings.Contains(r.log.String(), "a sheet is saved at the end") })
	r.end()

	again := start(t, Settings{Private: folder, State: state}, nil)
	ga, gb = again.visit(a, 80, 24), again.visit(b, 80, 24)
	ga.sees("Your sheets")
	ga.keys("\x1b[A\x1b[A\r")
	ga.sees("45.0 T", "-3, 0")
	gb.sees("Your sheets")
	gb.keys("\r")
	gb.sees("-3, 1")
	if text, err := os.ReadFile(filepath.Join(folder, "lamp.toml")); err != nil || string(text) != lamp {
		t.Errorf("the folder's own sheet has changed: %v", err)
	}
}

// A private workbench practises as at a desk, with the record in the host's state, by key.
func TestAPrivateWorkbenchPractises(t *testing.T) {
	folder, _ := shelf(t)
	state, a := t.TempDir(), key(t)
	r := start(t, Settings{Private: folder, State: state}, nil)
	g := r.visit(a, 80, 24)
	g.sees("Your sheets")
	g.keys("\r")
	g.sees("37.5 T")
	g.keys("\x1bq")
	g.sees("practice: 0 of 2 independent equations")
	g.keys("T1 = 36 N\r")
	g.sees("!  T1 = 36 N")
	g.keys(quit)
	g.sees("Your sheets")
	g.keys("\r")
	g.sees("37.5 T")
	g.keys("\x1bq")
	g.sees("!  T1 = 36 N")
	_ = g.client.Close()
	r.end()
	store, _, err := record.Open(record.File(state))
	if err != nil {
		t.Fatal(err)
	}
	defer store.Close()
	known, err := store.Persons()
	if err != nil || len(known) != 1 {
		t.Fatalf("%q, %v", known, err)
	}
	if events, err := store.Events(known[0]); err != nil || len(events) != 1 || events[0].Text != "T1 = 36 N" {
		t.Errorf("the record has %+v, %v", events, err)
	}
}

func TestNoNameLeadsOutside(t *testing.T) {
	folder, secret := shelf(t)
	k := key(t)
	r := start(t, Settings{Private: folder}, nil)
	g := r.visit(k, 120, 30)
	g.sees("Your sheets")
	g.keys("\r")
	g.sees("37.5 T")
	for _, name := range []string{"/x.toml", "../x.toml", "..", "a/../../x.toml", secret, "x", ".hidden.toml", "-rf.toml", `c:\x.toml`, "a\u202eb.toml", strings.Repeat("a", 90) + ".toml"} {
		g.keys("\x0f\x15" + name) // save as
		g.sees("save as:")
		g.keys("\r")
		g.sees("not saved:")
		g.keys(down) // the note goes
		waitFor(t, "the note is gone", func() bool { return !strings.Contains(g.screen(), "not saved:") })
	}
	kept := r.service.(*library).folder.Name()
	visitors, err := os.ReadDir(kept)
	if err != nil || len(visitors) != 1 {
		t.Fatalf("%v in the folder of all visitors, %v", visitors, err)
	}
	entries, err := os.ReadDir(filepath.Join(kept, visitors[0].Name()))
	if err != nil || len(entries) != 1 {
		t.Errorf("%v in the visitor's folder, %v", entries, err)
	}
}

func says(err error) string {
	if err == nil {
		return ""
	}
	return err.Error()
}

// Whoever leaves is told of sheets that stay only where there are some.
func TestTheFarewellSpeaksOfSheetsThatThereAre(t *testing.T) {
	folder, _ := shelf(t)
	r := start(t, Settings{Private: folder}, nil)
	looks := r.visit(key(t), 80, 24)
	looks.sees("Your sheets")
	looks.keys("q")
	looks.leaves()
	looks.sees("trivet: good-bye")
	if strings.Contains(looks.screen(), "your sheets stay") {
		t.Errorf("a visitor without a sheet is told that it stays:\n%s", looks.screen())
	}
	keeps := r.visit(key(t), 80, 24)
	keeps.sees("Your sheets")
	keeps.keys("\r")
	keeps.sees("37.5 T")
	keeps.keys(quit)
	keeps.sees("Your sheets")
	keeps.keys("q")
	keeps.leaves()
	keeps.sees("trivet: good-bye; your sheets stay with the host")
}
