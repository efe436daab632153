package host

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	gossh "golang.org/x/crypto/ssh"

	"trivet/tui/host/store"
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
	write(t, filepath.Join(folder, "full.toml"), rowsOf(store.MaxRows))
	write(t, filepath.Join(folder, "large.toml"), rowsOf(store.MaxRows+1))
	r := start(t, Settings{Private: folder}, nil)
	g := r.visit(key(t), 120, 30)
	g.sees("Your sheets", "full", "large")
	g.keys(down + "\r")
	g.sees("the sheet has 501 rows, but a visitor's sheet may have 500")
	g.keys("\x1b[A\r")
	g.sees("your own copy", "P1")
	g.keys(down + "\x1b[200~Q1\t9, 9\nQ2\t8, 8\n\x1b[201~")
	g.sees(store.TooLarge[:40])
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
		g.sees("37.5 T")
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

// All visitors together have a quota too; the last of it is for what is saved where
// a session ends, and what a crash left half written is gone.
func TestAllVisitorsTogetherKeepSoMuch(t *testing.T) {
	folder, _ := shelf(t)
	state := t.TempDir()
	old := filepath.Join(state, visitorsFolder, "a")
	if err := os.MkdirAll(old, store.FolderMode); err != nil {
		t.Fatal(err)
	}
	write(t, filepath.Join(old, "lamp.toml"), lamp)
	half := write(t, filepath.Join(old, ".lamp.toml.1"), lamp)
	long := time.Now().Add(-2 * time.Hour)
	if err := os.Chtimes(half, long, long); err != nil {
		t.Fatal(err)
	}
	r := start(t, Settings{Private: folder, State: state}, nil)
	l := r.service.(*library)
	if n := l.kept.Load(); n != int64(len(lamp)) {
		t.Errorf("%d bytes are kept", n)
	}
	if _, err := os.Stat(half); err == nil {
		t.Error("what was half written is there")
	}
	g := r.visit(key(t), 120, 30)
	g.sees("Your sheets")
	g.keys("\r")
	g.sees("37.5 T")
	if n := l.kept.Load(); n != 2*int64(len(lamp)) {
		t.Errorf("%d bytes are kept", n)
	}
	l.kept.Store(store.MaxKept - store.LastBytes)
	g.keys(down + right + "-3, 456789\r" + save)
	g.sees("not saved: lamp.toml: the host's storage is full")
	_ = g.client.Close()
	waitFor(t, "it is saved", func() bool { return strings.Contains(r.log.String(), "a sheet is saved at the end") })
	if n := l.kept.Load(); n != store.MaxKept-store.LastBytes+int64(len("456789")-len("4")) {
		t.Errorf("%d bytes are kept", n)
	}
}

// What is saved where sessions end is counted, and does not pass the quota either.
func TestRescuedSheetsStayWithinTheQuota(t *testing.T) {
	folder, _ := shelf(t)
	r := start(t, Settings{Private: folder}, nil)
	l := r.service.(*library)
	g := r.visit(key(t), 120, 30)
	g.sees("Your sheets")
	g.keys("\r")
	g.sees("37.5 T")
	g.keys(down + right + "-3, 456789\r")
	g.sees("-3, 456789")
	l.kept.Store(store.MaxKept)
	r.end()
	g.leaves()
	g.sees("the sheet could not be saved: the host's storage is full")
	if n := l.kept.Load(); n != store.MaxKept {
		t.Errorf("%d bytes are kept, %d more than may be", n, n-store.MaxKept)
	}
}

// A key has a folder from its first sheet on, and as long as there is one in it.
func TestAKeyHasAFolderForItsSheetsAlone(t *testing.T) {
	folder, _ := shelf(t)
	state := t.TempDir()
	old := filepath.Join(state, visitorsFolder, "old")
	if err := os.MkdirAll(old, store.FolderMode); err != nil {
		t.Fatal(err)
	}
	folders := func() []string {
		all, err := filepath.Glob(filepath.Join(state, visitorsFolder, "*"))
		if err != nil {
			t.Fatal(err)
		}
		return all
	}
	r := start(t, Settings{Private: folder, State: state}, nil)
	if all := folders(); len(all) != 0 {
		t.Errorf("an empty folder of before is there: %q", all)
	}
	k := key(t)
	visit := func() *guest {
		g := r.visit(k, 120, 30)
		g.sees("Your sheets", "lamp")
		return g
	}
	leave := func(g *guest) {
		g.keys("q")
		g.leaves()
		waitFor(t, "the visit is over", func() bool { l := r.service.(*library); l.mu.Lock(); defer l.mu.Unlock(); return len(l.rooms) == 0 })
	}
	leave(visit())
	if all := folders(); len(all) != 0 {
		t.Errorf("who opened no sheet has a folder: %q", all)
	}
	g := visit()
	g.keys("\r")
	g.sees("37.5 T")
	all := folders()
	if len(all) != 1 {
		t.Fatalf("%q", all)
	}
	if err := os.Remove(filepath.Join(all[0], "lamp.toml")); err != nil {
		t.Fatal(err)
	}
	g.keys(quit)
	g.sees("Your sheets")
	leave(g)
	if all := folders(); len(all) != 0 {
		t.Errorf("an empty folder is kept: %q", all)
	}
}

// Where as many keys keep sheets as may, a new one is refused at the door, before
// anything is typed. Whoever is in keeps a place, saved or not.
func TestNoRoomForAnotherKeyIsSaidAtTheDoor(t *testing.T) {
	t.Parallel()
	folder, _ := shelf(t)
	state := t.TempDir()
	r := start(t, Settings{Private: folder, State: state}, nil)
	for i := range maxFolders - 1 {
		if err := os.Mkdir(filepath.Join(state, visitorsFolder, fmt.Sprint(i)), store.FolderMode); err != nil {
			t.Fatal(err)
		}
	}
	enter := func(k gossh.Signer) *guest {
		g := r.visit(k, 120, 30)
		g.sees("Your sheets", "lamp")
		return g
	}
	refused := func() {
		t.Helper()
		g := r.visit(key(t), 120, 30)
		g.leaves()
		g.sees("trivet: the host has no room for the sheets of more visitors")
	}
	visitors := func(n int) {
		t.Helper()
		waitFor(t, fmt.Sprint(n, " are in"), func() bool { l := r.service.(*library); l.mu.Lock(); defer l.mu.Unlock(); return len(l.rooms) == n })
	}
	brief := enter(key(t)) // keeps nothing, so the place is free again
	refused()
	brief.keys("q")
	brief.leaves()
	visitors(0)
	last := key(t)
	g, twice := enter(last), enter(last)
	refused()
	twice.keys("q")
	twice.leaves()
	visitors(1)
	refused()
	g.keys("\r")
	g.sees("37.5 T")
	g.keys(down + right + "-3, 0\r" + save)
	g.sees("saved to lamp.toml")
	g.keys("-3, 1\r")
	g.sees("-3, 1")
	_ = g.client.Close() // what was not saved is
	visitors(0)
	r.says("a sheet is saved at the end")
	refused()
	enter(last)
}
