package host

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"
)

func rowsOf(n int) string {
	var b strings.Builder
	b.WriteString("[points]\n")
	for i := range n {
		fmt.Fprintf(&b, "P%d = \"%d, 0\"\n", i, i)
	}
	return b.String()
}

// A private sheet grows to its bounds and no further; nothing is lost by that.
func TestAPrivateSheetStaysWithinItsBounds(t *testing.T) {
	folder := t.TempDir()
	write(t, filepath.Join(folder, "full.toml"), rowsOf(mostRows))
	write(t, filepath.Join(folder, "large.toml"), rowsOf(mostRows+1))
	r := start(t, Settings{Private: folder}, nil)
	g := r.visit(key(t), 120, 30)
	g.sees("Your sheets", "full", "large")
	g.keys(down + "\r")
	g.sees("the sheet has 501 rows, and a visitor's may have 500")
	g.keys("\x1b[A\r")
	g.sees("your own copy", "P1")
	g.keys(down + "\x1b[200~Q1\t9, 9\nQ2\t8, 8\n\x1b[201~")
	g.sees(tooLarge[:40])
	g.keys(right)
	g.sees("your own copy")
	if strings.Contains(g.screen(), "Q2") {
		t.Errorf("a row too many:\n%s", g.screen())
	}
	g.keys("7, 7\r" + save) // goes on
	g.sees("saved to full.toml")
}

// One key may have two sessions: each is asked before it writes over the other's.
func TestTwoSessionsOfOneKey(t *testing.T) {
	folder, _ := shelf(t)
	k := key(t)
	r := start(t, Settings{Private: folder}, nil)
	a, b := r.visit(k, 120, 30), r.visit(k, 120, 30)
	for _, g := range []*guest{a, b} {
		g.sees("Your sheets")
		g.keys("\r")
		g.sees("37.5 N")
	}
	a.keys(down + right + "-3, 0\r" + save)
	a.sees("saved to lamp.toml")
	b.keys(down + right + "-3, 1\r" + save)
	b.sees("Overwrite it?")
	b.keys("n")
	b.sees("not saved")
	// Cut off, what it has lies beside the other's.
	_ = b.client.Close()
	waitFor(t, "it is saved", func() bool { return strings.Contains(r.log.String(), "a sheet is saved at the end") })
	a.keys(quit)
	a.sees("Your sheets", "lamp-20")
}

// All visitors together have a quota too; what ends is saved beyond it, and what a
// crash left half written is gone.
func TestAllVisitorsTogetherKeepSoMuch(t *testing.T) {
	folder, _ := shelf(t)
	state := t.TempDir()
	old := filepath.Join(state, visitorsFolder, "a")
	if err := os.MkdirAll(old, folderMode); err != nil {
		t.Fatal(err)
	}
	write(t, filepath.Join(old, "lamp.toml"), lamp)
	half := write(t, filepath.Join(old, ".lamp.toml.1"), lamp)
	long := time.Now().Add(-2 * time.Hour)
	if err := os.Chtimes(half, long, long); err != nil {
		t.Fatal(err)
	}
	r := start(t, Settings{Private: folder, State: state}, nil)
	l := r.venue.(*library)
	if n := l.kept.Load(); n != int64(len(lamp)) {
		t.Errorf("%d bytes are kept", n)
	}
	if _, err := os.Stat(half); err == nil {
		t.Error("what was half written is there")
	}
	g := r.visit(key(t), 120, 30)
	g.sees("Your sheets")
	g.keys("\r")
	g.sees("37.5 N")
	if n := l.kept.Load(); n != 2*int64(len(lamp)) {
		t.Errorf("%d bytes are kept", n)
	}
	l.kept.Store(mostKept)
	g.keys(down + right + "-3, 456789\r" + save)
	g.sees("not saved: lamp.toml: the host keeps as much as it can")
	r.end()
	g.leaves()
	g.sees("what was not saved is in lamp.toml")
}
