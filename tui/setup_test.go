package tui

import (
	"errors"
	"os"
	"path/filepath"
	"strings"
	"testing"

	tea "charm.land/bubbletea/v2"

	"trivet/mechanics/sheet"
	"trivet/tui/settings"
	"trivet/tui/theme"
)

// settled is a session with settings of its own in a fresh folder, and their file.
func settled(t *testing.T, text string, opt Options) (*rig, string) {
	t.Helper()
	folder := t.TempDir()
	opt.Env = append(opt.Env, "HOME="+folder)
	path, err := settings.Path(opt.Env)
	if err != nil {
		t.Fatal(err)
	}
	if text != "" {
		if err := os.MkdirAll(filepath.Dir(path), 0o700); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(path, []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	if opt.Width == 0 {
		opt.Width, opt.Height = 80, 24
	}
	opt.settle()
	return rigOf(t, opt), path
}

func TestSettingsAreListedAndChangedFromTheKeyboard(t *testing.T) {
	const text = "# mine\ntheme = 'auto' # as it comes\nfuture = [1, 2]\n\n[units]\nforce = \"lb\" # pounds\n"
	s, err := sheet.Parse([]byte(hanging))
	if err != nil {
		t.Fatal(err)
	}
	r, path := settled(t, text, Options{Sheet: s})
	r.keys("ctrl+k")
	r.text("the settings")
	r.keys("enter")
	for _, k := range settings.Keys() {
		r.sees(k.Name, k.Says)
	}
	r.sees("theme: auto")
	golden(t, "80x24-settings", r.screen())
	holds := func(want string) {
		t.Helper()
		if got, err := os.ReadFile(path); err != nil || string(got) != want {
			t.Errorf("the file holds\n%s\nwant\n%s (%v)", got, want, err)
		}
	}
	r.keys("right")
	holds(strings.Replace(text, "'auto'", "'light'", 1))
	if r.m.theme.Scheme != theme.Light {
		t.Error("the theme does not change at once")
	}
	r.keys("left", "down", "right")
	for _, c := range r.screen() {
		if c >= 0x80 {
			t.Fatalf("%q is not ASCII in\n%s", c, r.screen())
		}
	}
	r.keys("down", "down")
	r.text("13")
	r.keys("enter")
	r.sees("figures is a whole number from 1 to 12, not \"13\". Try: 3", "figures: 13")
	r.keys("backspace", "backspace", "4", "down")
	r.sees("up: +z")
	r.keys("end", "up", "up")
	r.sees("units.force: lbf")
	r.keys("enter", "ctrl+u")
	r.text("kN")
	r.keys("esc")
	r.sees("units.force: lbf")
	r.keys("delete")
	r.sees("units.force: usual")
	holds("# mine\nfigures = \"4\"\ntheme = 'auto' # as it comes\nfuture = [1, 2]\nascii  = \"true\"\n\n[units]\nforce = \"\" # pounds\n")
	r.keys("esc", "up")
	r.sees("point: D")
}

func TestSettingsThatCannotBeKeptHoldForTheSession(t *testing.T) {
	for _, c := range []struct {
		name, text, says string
		spoil            func(path string) error
	}{
		{"no folder", "", "~/.config/trivet/settings.toml: part of the path is a file, not a folder", func(path string) error {
			return os.WriteFile(filepath.Dir(path), nil, 0o600)
		}},
		{"a link to nowhere", "", "the settings folder cannot be made", func(path string) error {
			return os.Symlink("nowhere/at/all", filepath.Dir(path))
		}},
		{"no TOML", "theme = dark\n", "this value is not in quotes", nil},
		{"more than one value", "theme = [\"dark\"]\n", "theme has more than one value in the settings file", nil},
	} {
		r, path := settled(t, c.text, Options{Start: true, Width: 200, Height: 60})
		if c.spoil != nil {
			if err := os.RemoveAll(filepath.Dir(path)); err != nil {
				t.Fatal(err)
			}
			if err := os.MkdirAll(filepath.Dir(filepath.Dir(path)), 0o700); err != nil {
				t.Fatal(err)
			}
			if err := c.spoil(path); err != nil {
				t.Fatal(err)
			}
		}
		r.keys("f9", "right", "right")
		r.sees("for this session only: ", c.says, "theme")
		if r.m.theme.Scheme != theme.Dark {
			t.Errorf("%s: the change does not hold", c.name)
		}
		if got, _ := os.ReadFile(path); string(got) != c.text {
			t.Errorf("%s: the file became %q", c.name, got)
		}
	}
}

func TestAHostedSessionKeepsNoSettings(t *testing.T) {
	r := newRig(t, hanging, 80, 24)
	r.keys("alt+s")
	r.sees("Settings, for this session")
	r.keys("down", "right")
	r.sees("for this session only: settings are not saved here")
	if r.m.theme.Set != theme.Seven {
		t.Error("the change does not hold")
	}
	r.keys("down", "right")
	r.sees("a session over SSH always uses the full screen", "screen: full")
	look := r.m.Look()
	if other := look.On(80, 24, theme.Unicode).String(); strings.Contains(other, "Settings") || !strings.Contains(other, "Points") {
		t.Error("others see the presenter's settings")
	}
	if m := r.m.Fitted(90, 30, theme.Unicode); m.theme.Set != theme.Seven {
		t.Error("another size of the terminal loses the change")
	}
}

func TestSettingsAreKeptOneAfterTheOther(t *testing.T) {
	var kept []string
	like := settings.Defaults()
	fails := true
	opt := Options{Settings: &like, Width: 80, Height: 24, Keep: func(was, set settings.Settings) error {
		if fails {
			return errors.New("no room")
		}
		kept = append(kept, was.Theme+" "+set.Theme)
		return nil
	}}
	m := New(opt)
	step := func(msg tea.Msg) tea.Cmd {
		next, cmd := m.Update(msg)
		m = next.(Model)
		return cmd
	}
	step(press("alt+s"))
	writing := step(press("right")) // light
	if again := step(press("right")); again != nil {
		t.Error("two writes run at a time")
	}
	if quit := step(press("ctrl+q")); quit != nil {
		t.Error("it leaves while settings are being kept")
	}
	writing = step(writing()) // fails; dark is tried at once
	if writing == nil || m.note.Text != "for this session only: the file of settings: no room" {
		t.Fatalf("%q", m.note.Text)
	}
	fails = false
	quit := step(writing())
	if quit == nil {
		t.Fatal("it does not leave")
	}
	if _, ok := quit().(tea.QuitMsg); !ok || strings.Join(kept, ", ") != "auto dark" {
		t.Errorf("kept %q", kept)
	}
}
