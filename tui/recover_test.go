package tui

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	tea "charm.land/bubbletea/v2"

	"trivet/mechanics/sheet"
	"trivet/tui/overlay"
)

// kept is a session with a journal, on a file of its own.
func kept(t *testing.T, path, home string) *rig {
	t.Helper()
	s, stamp, err := sheet.Load(path)
	if err != nil {
		t.Fatal(err)
	}
	return rigOf(t, Options{Sheet: s, Stamp: stamp, Path: path, Width: 120, Height: 36, Journal: true, Env: []string{"XDG_STATE_HOME=" + home}})
}

func lampFile(t *testing.T) string {
	t.Helper()
	path := filepath.Join(t.TempDir(), "lamp.toml")
	if err := os.WriteFile(path, []byte(hanging), 0o644); err != nil {
		t.Fatal(err)
	}
	return path
}

func journals(t testing.TB, home string) (files []string) {
	t.Helper()
	files, err := filepath.Glob(filepath.Join(home, "trivet", "journal", "*"))
	if err != nil {
		t.Fatal(err)
	}
	return files
}

// dies leaves a session's journal as a killed process leaves it.
func (r *rig) dies(home string) {
	r.t.Helper()
	files := journals(r.t, home)
	if len(files) != 1 {
		r.t.Fatalf("there are %d journals", len(files))
	}
	text, err := os.ReadFile(files[0])
	if err != nil {
		r.t.Fatal(err)
	}
	r.m.file.Close()
	if err := os.WriteFile(files[0], text, 0o600); err != nil {
		r.t.Fatal(err)
	}
}

func TestWorkLeftIsOfferedAndTakenOver(t *testing.T) {
	path, home := lampFile(t), t.TempDir()
	r := kept(t, path, home)
	r.keys("down", "right")
	r.text("-3, 5")
	r.keys("enter", "down", "left")
	r.text("3, 6") // B, still being typed
	r.dies(home)

	r = kept(t, path, home)
	r.sees("Unsaved work of", "2 cells differ. Take it over?")
	r.keys("s")
	r.sees("What differs", "A: on disk -3, 4, left -3, 5", "B: on disk 3, 4, left 3, 6")
	r.keys("esc") // later
	r.holds(pointA, "-3, 4")
	r.keys("ctrl+q")
	if !r.quit {
		t.Fatal("nothing is unsaved, and yet it asks")
	}
	r = kept(t, path, home)
	r.keys("y")
	r.holds(pointA, "-3, 5")
	r.holds(sheet.Ref{Table: "points", Row: "B"}, "3, 6")
	r.sees("recovered, not saved yet", "unsaved")
	r.keys("ctrl+z")
	r.holds(pointA, "-3, 4")
	r.keys("ctrl+y")
	r.dies(home) // what was taken over is not lost either

	r = kept(t, path, home)
	r.sees("Take it over?")
	r.keys("n")
	r.holds(pointA, "-3, 4")
	r.keys("ctrl+q")
	if files := journals(t, home); !r.quit || len(files) != 0 {
		t.Errorf("an orderly end leaves %v", files)
	}
}

func TestNamesBeingTypedHurtNoCell(t *testing.T) {
	path, home := lampFile(t), t.TempDir()
	r := kept(t, path, home)
	r.keys("down")
	r.text("wall")
	r.dies(home)
	r = kept(t, path, home)
	r.keys("y")
	r.holds(pointA, "-3, 4")
	r.keys("ctrl+n")
	r.text("Q")
	r.dies(home)
	r = kept(t, path, home)
	r.keys("y")
	if got := r.m.history.Current().Text(); got != hanging {
		t.Errorf("a name being typed leaves\n%s", got)
	}
	r.keys("alt+m", "ctrl+n")
	r.text("T1.x")
	r.dies(home)
	r = kept(t, path, home)
	r.keys("y")
	r.holds(sheet.Ref{Row: "asked"}, "T1 T2 T1.x")
}

func TestASaveNeedsNoRecovery(t *testing.T) {
	path, home := lampFile(t), t.TempDir()
	r := kept(t, path, home)
	r.keys("down", "right")
	r.text("-3, 5")
	r.keys("enter", "ctrl+s")
	r.sees("saved to")
	// Undo goes back across the save, and what it changes is kept again.
	r.keys("ctrl+z")
	r.holds(pointA, "-3, 4")
	r.sees("unsaved")
	r.keys("ctrl+y")
	r.dies(home)
	r = kept(t, path, home)
	if r.m.ask != nil {
		t.Errorf("asked %q", r.m.ask.Text)
	}
	r.holds(pointA, "-3, 5")
}

func TestAnotherWorkbenchIsToldOf(t *testing.T) {
	path, home := lampFile(t), t.TempDir()
	first := kept(t, path, home)
	second := kept(t, path, home)
	second.sees("it is open in another workbench too (process")
	first.send(tick{})
	first.sees("it is open in another workbench too (process")
	first.keys("up")
	first.send(tick{})
	if strings.Contains(first.screen(), "another workbench") {
		t.Error("it is said twice")
	}
	second.keys("ctrl+q")
	first.keys("ctrl+q")
}

func TestAFileChangedOnDiskIsNoticed(t *testing.T) {
	path, home := lampFile(t), t.TempDir()
	r := kept(t, path, home)
	write := func(text string) {
		t.Helper()
		if err := os.WriteFile(path, []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	write(strings.Replace(hanging, "60 N", "120 N", 1))
	r.keys("down", "f2")
	r.send(tea.FocusMsg{})
	if r.m.ask != nil {
		t.Error("asked while something is typed")
	}
	r.keys("esc")
	r.send(tea.FocusMsg{})
	r.sees("lamp.toml was changed on disk: 1 cell differs. Read it anew?", "s: see")
	r.keys("s")
	r.sees("W: here 60 N, on disk 120 N")
	r.keys("y")
	r.holds(sheet.Ref{Table: "given", Row: "W"}, "120 N")
	if r.m.history.Modified() {
		t.Error("what was read anew is unsaved")
	}
	r.keys("ctrl+z")
	r.holds(sheet.Ref{Table: "given", Row: "W"}, "60 N")
	r.sees("unsaved")

	write(strings.Replace(hanging, "60 N", "1200 N", 1))
	r.send(tick{})
	r.sees("changed on disk and here: 1 cell differs")
	r.keys("n")
	r.send(tick{})
	if r.m.ask != nil {
		t.Error("asked twice of the same")
	}
	r.keys("ctrl+s")
	r.sees("was changed by someone else")
	r.keys("s")
	r.sees("W: here 60 N, on disk 1200 N")
	r.keys("y")
	r.sees("saved to")

	write("[points\n")
	r.send(tick{})
	r.sees("does not read now")
	if err := os.Remove(path); err != nil {
		t.Fatal(err)
	}
	r.send(tick{})
	r.sees("is gone from the disk")
	r.keys("ctrl+q")
}

func TestWithoutAStateFolderItIsSaidOnce(t *testing.T) {
	r := rigOf(t, Options{Width: 120, Height: 36, Journal: true, Env: []string{"TERM=xterm"}})
	r.sees("no journal is kept")
	r.keys("ctrl+n")
	r.text("A")
	if strings.Contains(r.screen(), "no journal is kept") {
		t.Error("it is said twice")
	}
	r.keys("enter", "esc", "ctrl+q", "n")
	if !r.quit {
		t.Error("it is not left")
	}
}

// The start screen offers what was left of a sheet that had no file yet.
func TestWorkWithoutAFileIsOfferedAtTheStart(t *testing.T) {
	home := t.TempDir()
	o := Options{Start: true, Width: 120, Height: 36, Journal: true, Env: []string{"XDG_STATE_HOME=" + home}}
	r := rigOf(t, o)
	r.keys("esc", "ctrl+n")
	r.text("A")
	r.keys("enter")
	r.text("1, 2, 3")
	r.dies(home)
	r = rigOf(t, o)
	r.sees("Unsaved work of")
	r.keys("y")
	r.holds(sheet.Ref{Table: "points", Row: "A", Key: "at"}, "1, 2, 3")
	r.keys("ctrl+q", "n")
	if files := journals(t, home); !r.quit || len(files) != 0 {
		t.Errorf("an orderly end leaves %v", files)
	}
}

// What differs scrolls, to its last line and to the end of a long one.
func TestWhatDiffersScrolls(t *testing.T) {
	r := newRig(t, hanging, 80, 24)
	var list []sheet.Change
	for i := range 50 {
		list = append(list, sheet.Change{Ref: sheet.Ref{Table: "points", Row: fmt.Sprintf("P%d", i)}, New: "0, 0" + strings.Repeat(" + (1, 0)", 20) + " end", Is: true})
	}
	r.m.ask = &question{Question: overlay.Question{Text: overlay.Differ(list) + ". Take it over?", More: overlay.Changes(list, "on disk", "left")},
		yes: func(*Model) tea.Cmd { return nil }, no: func(*Model) tea.Cmd { return nil }}
	r.keys("down")
	r.sees("50 cells differ. Take it over?", "s shows what differs")
	r.keys("s")
	r.sees("What differs: 1 to 19 of 50", "P0: 0, 0", "P18: 0, 0")
	r.keys("down")
	r.sees("What differs: 2 to 20 of 50", "P19: 0, 0")
	r.keys("pgdown", "end")
	r.sees("What differs: 32 to 50 of 50", "P49: 0, 0")
	checkFrame(t, r.m)
	for range 30 {
		r.keys("right")
	}
	r.sees("end   only left")
	r.m.resize(120, 60)
	r.sees("What differs")
	checkFrame(t, r.m)
	r.keys("home", "up")
	r.sees("P0: 0, 0", "P49: 0, 0")
	r.keys("s", "y")
	if r.m.ask != nil {
		t.Error("y does not answer")
	}
}

// What only looks at a session writes nothing into its journal, and a step that
// is taken back is none there either.
func TestTheJournalIsTheSessionsOwn(t *testing.T) {
	path, home := lampFile(t), t.TempDir()
	r := kept(t, path, home)
	content := func() string {
		t.Helper()
		text, err := os.ReadFile(journals(t, home)[0])
		if err != nil {
			t.Fatal(err)
		}
		return string(text)
	}
	r.keys("down", "right")
	r.text("-3, 5")
	was := content()
	if _, s, _, any := r.m.Unsaved(); !any || !strings.Contains(s.Text(), "-3, 5") {
		t.Errorf("unsaved: %t\n%s", any, s.Text())
	}
	v := r.m.Look().Reader(120, 36, r.m.theme.Set)
	for _, key := range []string{"alt+i", "left", "enter", "ctrl+z", "ctrl+q"} {
		v, _ = v.Key(press(key))
	}
	v.Take(r.m.Look()).Frame()
	if now := content(); now != was {
		t.Errorf("written by who only looks:\n%s", strings.TrimPrefix(now, was))
	}
	before := r.m.Apart()
	r.keys("enter")
	r.text("9, 9")
	r.m = before // a fault of ours
	r.m.Renote()
	r.dies(home)
	r = kept(t, path, home)
	r.sees("1 cell differs. Take it over?")
	r.keys("y")
	r.holds(pointA, "-3, 5")
}
