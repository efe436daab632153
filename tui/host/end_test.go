package host

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"trivet/tui/host/store"
)

// The workbench's own key to leave is not everybody's end before that is asked.
func TestThePresentersQuitIsAskedFirst(t *testing.T) {
	k := key(t)
	r := start(t, Settings{Presenters: keys(t, k)}, nil)
	p, g := r.visit(k, 100, 30), r.visit(nil, 80, 24)
	p.sees("live: 1 watches")
	p.keys(quit)
	p.sees("end it for everybody?")
	p.keys("n")
	p.sees("live: 1 watches")
	p.keys(down + right + "-3, 0\r")
	g.sees("45.0 T")
	p.keys(quit)
	p.sees("has unsaved changes")
	p.keys("n")
	p.sees("end it for everybody?")
	p.keys("y")
	p.leaves()
	g.leaves()
	g.sees("trivet: the presenter has ended it")
	if text, err := os.ReadFile(r.file); err != nil || string(text) != lamp {
		t.Errorf("what was not to be saved is: %v\n%s", err, text)
	}
}

// Who refuses to save and then goes on has it saved at the end all the same.
func TestWhatIsTypedAfterARefusalIsSaved(t *testing.T) {
	k := key(t)
	r := start(t, Settings{Presenters: keys(t, k)}, nil)
	p := r.visit(k, 100, 30)
	p.sees("live:")
	p.keys(down + right + "-3, 0\r" + quit)
	p.sees("has unsaved changes")
	p.keys("n")
	p.sees("end it for everybody?")
	p.keys("n")
	p.sees("live:")
	p.keys("-3, 9\r")
	waitFor(t, "the cell is kept", func() bool {
		return strings.Contains(r.service.(*classroom).workbench.look.Load().Own().String(), "-3, 9")
	})
	r.end()
	p.leaves()
	if text, err := os.ReadFile(r.file); err != nil || !strings.Contains(string(text), `"-3, 9"`) {
		t.Errorf("not saved: %v\n%s", err, text)
	}
}

// A presenter whose line is dead, which the host learns late, comes again with the
// same key and goes on in the same cell.
func TestThePresenterComesBackOnASecondLine(t *testing.T) {
	k := key(t)
	r := start(t, Settings{Presenters: keys(t, k)}, nil)
	dead := r.visit(k, 100, 30)
	dead.sees("live:")
	dead.keys(down + right + "-3, ")
	dead.sees("stale")
	p := r.visit(k, 90, 28)
	p.sees("following the presenter")
	p.keys("9") // not yet
	p.keys(live)
	p.sees("live: 1 watches")
	p.keys("0")
	p.sees("45.0 T")
	dead.sees("following the presenter", "45.0 T")
}

// A sheet that its folder does not take at the end is kept by the host.
func TestASheetThatCannotBeSavedIsKeptElsewhere(t *testing.T) {
	k, state := key(t), t.TempDir()
	r := start(t, Settings{Presenters: keys(t, k), State: state}, nil)
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
	r.end()
	p.leaves()
	p.sees("the sheet could not be saved: this is not a file; it is kept in the host's")
	kept, err := filepath.Glob(filepath.Join(state, store.RescuedFolder, "lamp-*.toml"))
	if err != nil || len(kept) != 1 {
		t.Fatalf("%q, %v", kept, err)
	}
	if text, err := os.ReadFile(kept[0]); err != nil || !strings.Contains(string(text), `"-3, 0"`) {
		t.Errorf("%v\n%s", err, text)
	}
}

// At the host's end what private visitors are typing is saved, all of it.
func TestAtTheEndPrivateSheetsAreSaved(t *testing.T) {
	t.Parallel()
	folder, _ := shelf(t)
	state := t.TempDir()
	r := start(t, Settings{Private: folder, State: state}, nil)
	var all []*guest
	for i := range 8 {
		g := r.visit(key(t), 120, 30)
		g.sees("Your sheets")
		g.keys("\r")
		g.sees("37.5 T")
		g.keys(down + right + fmt.Sprintf("-3, %d1", i))
		g.sees(fmt.Sprintf("-3, %d1", i))
		all = append(all, g)
	}
	r.end()
	for _, g := range all {
		g.leaves()
		g.sees("the host is going down; your sheets are kept; what was not saved is in lamp.toml")
	}
	kept, err := filepath.Glob(filepath.Join(state, visitorsFolder, "*", "lamp.toml"))
	if err != nil || len(kept) != len(all) {
		t.Fatalf("%q, %v", kept, err)
	}
	for _, f := range kept {
		if text, err := os.ReadFile(f); err != nil || string(text) == lamp {
			t.Errorf("%s is as it was, %v", f, err)
		}
	}
}

// The presented sheet keeps its mode, may have any name, and may be a link's.
func TestThePresentedFileStaysWhatItIs(t *testing.T) {
	folder := t.TempDir()
	file := write(t, filepath.Join(folder, "Lamp (2nd) & more"), lamp)
	if err := os.Chmod(file, 0o640); err != nil {
		t.Fatal(err)
	}
	link := filepath.Join(t.TempDir(), "link.toml")
	if err := os.Symlink(file, link); err != nil {
		t.Fatal(err)
	}
	k := key(t)
	r := start(t, Settings{Sheet: link, Presenters: keys(t, k)}, nil)
	p := r.visit(k, 100, 30)
	p.sees("live:")
	p.keys(down + right + "-3, 0\r" + save)
	p.sees("saved to Lamp (2nd) & more")
	info, err := os.Stat(file)
	if err != nil || info.Mode().Perm() != 0o640 {
		t.Errorf("%v, %v", info.Mode(), err)
	}
	if text, _ := os.ReadFile(file); !strings.Contains(string(text), `"-3, 0"`) {
		t.Errorf("not saved:\n%s", text)
	}
	if err := os.Chmod(file, 0o440); err != nil {
		t.Fatal(err)
	}
	p.keys("-3, 1\r" + save)
	p.sees("the file is read-only")
}
