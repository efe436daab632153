package tui

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"trivet/fixtures"
	"trivet/mechanics/sheet"
	"trivet/tui/keys"
	"trivet/tui/start"
)

func startRig(t testing.TB, w, h int, recent ...string) *rig {
	return rigOf(t, Options{Start: true, Recent: recent, Width: w, Height: h})
}

func TestStartScreens(t *testing.T) {
	for _, c := range []struct {
		name string
		w, h int
		keys []string
	}{
		{"80x24-start", 80, 24, []string{"m", "a", "s", "t"}},
		{"120x36-start", 120, 36, []string{"down", "down"}},
		{"200x60-start", 200, 60, []string{"pgdown"}},
	} {
		r := startRig(t, c.w, c.h)
		r.keys(c.keys...)
		golden(t, c.name, r.screen())
	}
}

func TestTheStartScreenFillsEverySize(t *testing.T) {
	r := startRig(t, 1, 1)
	for w := 1; w < 230; w += 9 {
		for h := 1; h < 70; h += 5 {
			r.m.resize(w, h)
			for _, k := range []string{"down", "pgdown", "end", "home", "?", "backspace"} {
				r.keys(k)
				checkFrame(t, r.m)
			}
		}
	}
}

func TestEveryStartingSheetOpensFromTheStartScreen(t *testing.T) {
	for _, s := range fixtures.Starts() {
		r := startRig(t, 120, 36)
		r.text(s.Title)
		r.sees(s.Family)
		r.keys("enter")
		if r.m.opening != nil || r.m.history.Current().Text() != s.Text {
			t.Errorf("%s did not open", s.Name)
		}
		if r.m.file.Path != "" || r.m.history.Modified() {
			t.Errorf("%s: path %q, modified %v", s.Name, r.m.file.Path, r.m.history.Modified())
		}
	}
}

func TestTheStartScreenLooksForWhatIsTyped(t *testing.T) {
	r := startRig(t, 120, 36)
	r.text("friction")
	r.sees("search: friction", "Ladder on a rough floor")
	r.text("zz")
	r.sees("no sheet matches")
	r.keys("enter") // opens nothing
	if r.m.mode() != keys.OnStart {
		t.Error("enter left the start screen without a sheet")
	}
	r.keys("backspace", "backspace", "down")
	r.sees("search: friction")
	r.keys("ctrl+u")
	r.sees("type to search", "Blank sheet in space")
	r.keys("ctrl+s")
	r.sees("no sheet is open yet")
	r.keys("ctrl+q")
	if !r.quit {
		t.Error("ctrl+q does not leave the start screen")
	}
}

func TestBlankSheets(t *testing.T) {
	for _, k := range []string{"esc", "ctrl+n"} {
		r := startRig(t, 120, 36)
		r.keys(k)
		if p := r.m.live.Latest; r.m.opening != nil || p == nil || p.Planar {
			t.Errorf("%s does not open a blank sheet in space", k)
		}
	}
	r := startRig(t, 120, 36)
	r.keys("home", "down", "enter")
	if p := r.m.live.Latest; p == nil || !p.Planar {
		t.Error("the second sheet is not a blank one in the plane")
	}
}

func TestSheetsOpenedLastComeFirst(t *testing.T) {
	folder := t.TempDir()
	good, bad := filepath.Join(folder, "lamp.toml"), filepath.Join(folder, "broken.toml")
	for file, text := range map[string]string{good: hanging, bad: "a = = b\n"} {
		if err := os.WriteFile(file, []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	r := startRig(t, 120, 36, bad, good, filepath.Join(folder, "gone.toml"))
	r.sees("Opened last", "broken.toml", "lamp.toml", "this value is not in quotes")
	r.keys("enter")
	if r.m.opening == nil {
		t.Fatal("a file that does not read was opened")
	}
	r.keys("down")
	r.sees("Lamp on two cables")
	r.keys("down", "enter")
	r.sees("there is no such file")
	r.keys("up", "enter")
	if r.m.file.Path != good || r.m.file.Stamp == (sheet.Stamp{}) {
		t.Errorf("opened %q with %v", r.m.file.Path, r.m.file.Stamp)
	}
	r.sees("37.5 N")
	r.keys("right")
	r.text("1, 0")
	r.keys("enter", "ctrl+s") // saves over the file that was read, without a question
	text, err := os.ReadFile(good)
	if err != nil || !strings.Contains(string(text), `at = "1, 0"`) {
		t.Errorf("saved %v:\n%s", err, text)
	}
}

// fetched is the sheet picked, read for its picture.
func fetched(r *rig) start.Fetched {
	of, _ := r.m.opening.Picked()
	return of.Fetch(false, nil)
}

func TestAPictureThatComesLateIsDropped(t *testing.T) {
	r := startRig(t, 120, 36)
	r.text("mast")
	late := fetched(r)
	r.keys("ctrl+u", "end", "esc")
	r.send(late)
	if r.m.opening != nil {
		t.Error("a picture brought the start screen back")
	}
}

func TestAPictureOfAnEarlierPickReplacesNone(t *testing.T) {
	r := startRig(t, 120, 36)
	early := fetched(r)
	r.text("mast")
	r.sees("wire = ")
	r.send(early)
	r.sees("wire = ")
}

// Another sheet is opened from within: esc leaves things as they were, and what is unsaved is asked
// for first.
func TestAnotherSheetFromWithin(t *testing.T) {
	r := newRig(t, hanging, 120, 36)
	r.keys("alt+z")
	r.sees("Blank", "Blank sheet in the plane")
	r.keys("esc")
	r.sees("37.5 N")
	r.keys("f7 g", "home", "right")
	r.text("80 N")
	r.keys("enter", "esc", "f8", "down", "enter")
	r.sees("unsaved changes. Save them first?")
	r.keys("esc", "esc")
	r.sees("unsaved", "80 N")
	r.keys("f8", "down", "enter", "n")
	r.sees("untitled", "in the plane", "next: ")
	if r.m.history.Modified() || r.m.file.Path != "" {
		t.Error("the new sheet begins as changed, or under the name of the other")
	}
}
