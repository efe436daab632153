package tui

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"trivet/mechanics/sheet"
	"trivet/tui/session"
)

// saved opens a sheet from a file of its own.
func onDisk(t *testing.T, text string) (*rig, string) {
	t.Helper()
	path := filepath.Join(t.TempDir(), "lamp.toml")
	if err := os.WriteFile(path, []byte(text), 0o644); err != nil {
		t.Fatal(err)
	}
	s, stamp, err := sheet.Load(path)
	if err != nil {
		t.Fatal(err)
	}
	return rigOf(t, Options{Sheet: s, Path: path, Stamp: stamp, Page: session.PagesBy("v1.2.3"), Width: 160, Height: 36}), path
}

func fileIs(t *testing.T, path, want string) {
	t.Helper()
	got, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	if string(got) != want {
		t.Errorf("the file holds\n%s\nwant\n%s", got, want)
	}
}

// moved is the sheet with A moved, as typing does it.
var moved = strings.Replace(hanging, `"-3, 4"`, `"-3, 5"`, 1)

func moveA(r *rig) {
	r.keys("down", "right")
	r.text("-3, 5")
}

func TestSaveKeepsTheCellAndSaysWhere(t *testing.T) {
	r, path := onDisk(t, hanging)
	moveA(r)
	r.keys("ctrl+s")
	fileIs(t, path, moved)
	r.sees("saved to ")
	if r.m.history.Modified() || strings.Contains(r.screen(), "unsaved") {
		t.Error("still unsaved")
	}
	r.keys("ctrl+q")
	if !r.quit {
		t.Error("a saved sheet cannot be left without a question")
	}
}

func TestAFileChangedUnderneath(t *testing.T) {
	r, path := onDisk(t, hanging)
	moveA(r)
	if err := os.WriteFile(path, []byte("title = \"another\"\n"), 0o644); err != nil {
		t.Fatal(err)
	}
	r.keys("ctrl+s")
	r.sees("Overwrite it?")
	r.keys("n")
	fileIs(t, path, "title = \"another\"\n")
	r.sees("not saved", "unsaved")
	r.keys("ctrl+s", "x", "y")
	fileIs(t, path, moved)
	r.sees("saved to ")
}

func TestUntitledAsksForAName(t *testing.T) {
	s, err := sheet.Parse([]byte(hanging))
	if err != nil {
		t.Fatal(err)
	}
	path := filepath.Join(t.TempDir(), "new.toml")
	r := rigOf(t, Options{Sheet: s, Width: 200, Height: 40})
	r.sees("untitled")
	r.keys("ctrl+s")
	r.sees("save as:")
	r.keys("enter")
	r.sees("type a name")
	r.text(path)
	r.keys("enter")
	fileIs(t, path, hanging)
	r.sees("new.toml", "saved to")
	// Another name that is taken is not overwritten unasked.
	other := filepath.Join(filepath.Dir(path), "other.toml")
	if err := os.WriteFile(other, []byte("mine"), 0o644); err != nil {
		t.Fatal(err)
	}
	r.keys("ctrl+o", "ctrl+u")
	r.text(other)
	r.keys("enter")
	r.sees("Overwrite it?")
	r.keys("esc")
	fileIs(t, other, "mine")
	r.keys("ctrl+o", "esc")
	if r.m.file.Path != path {
		t.Errorf("the sheet is %s now", r.m.file.Path)
	}
}

func TestSaveThatFailsLosesNothing(t *testing.T) {
	r, path := onDisk(t, hanging)
	moveA(r)
	r.keys("enter", "ctrl+o", "ctrl+u")
	r.text(filepath.Join(filepath.Dir(path), "no", "such.toml"))
	r.keys("enter")
	r.sees("not saved:")
	if !r.m.history.Modified() || r.m.file.Path != path {
		t.Error("a failed save changes the session")
	}
	r.keys("ctrl+s")
	fileIs(t, path, moved)
}

func TestQuitAsksOnlyWhereSomethingIsUnsaved(t *testing.T) {
	r, _ := onDisk(t, hanging)
	if r.keys("ctrl+q"); !r.quit {
		t.Error("an untouched sheet asks")
	}
	r, path := onDisk(t, hanging)
	moveA(r)
	r.keys("ctrl+c")
	r.sees("unsaved changes. Save them before leaving?", "y: yes", "n: no")
	if r.keys("esc"); r.quit || r.m.ask != nil {
		t.Error("esc does not go back")
	}
	if r.keys("ctrl+q", "n"); !r.quit {
		t.Error("n does not leave")
	}
	fileIs(t, path, hanging)
	r, path = onDisk(t, hanging)
	moveA(r)
	if r.keys("ctrl+q", "y"); !r.quit {
		t.Error("y does not leave")
	}
	fileIs(t, path, moved)
}

func TestWhatIsTypedDuringASaveStaysUnsaved(t *testing.T) {
	r, _ := onDisk(t, hanging)
	moveA(r)
	r.keys("enter")
	next, cmd := r.m.Update(press("ctrl+s"))
	r.m = next.(Model)
	r.keys("down", "left", "delete") // B's place, cleared before the reply comes
	r.do(cmd)
	if !r.m.history.Modified() {
		t.Error("a change made during the save counts as saved")
	}
}

func TestLeavingAnUntitledSheetThroughItsName(t *testing.T) {
	s, err := sheet.Parse([]byte(hanging))
	if err != nil {
		t.Fatal(err)
	}
	path := filepath.Join(t.TempDir(), "new.toml")
	r := rigOf(t, Options{Sheet: s, Width: 80, Height: 24})
	moveA(r)
	r.keys("ctrl+q", "y")
	r.text(path)
	if r.keys("enter"); !r.quit {
		t.Error("saved, and still here")
	}
	fileIs(t, path, moved)
}
