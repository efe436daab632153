package tui

import (
	"image/color"
	"os"
	"path/filepath"
	"strings"
	"testing"

	tea "charm.land/bubbletea/v2"

	"trivet/mechanics/sheet"
	"trivet/tui/settings"
	"trivet/tui/theme"
)

func TestTheThemeFollowsTheBackgroundWhereItIsToBeFound(t *testing.T) {
	for _, c := range []struct {
		name string
		dark bool
		want theme.Scheme
	}{{"auto", true, theme.Dark}, {"auto", false, theme.Light}, {"light", true, theme.Light}, {"dark", false, theme.Dark}, {"plain", true, theme.Bare}} {
		likes := settings.Defaults()
		likes.Theme = c.name
		r := rigOf(t, Options{Settings: &likes, Width: 80, Height: 24})
		back := color.Gray{Y: 250}
		if c.dark {
			back = color.Gray{Y: 5}
		}
		r.send(tea.BackgroundColorMsg{Color: back})
		if got, want := r.m.theme.Styles[theme.Force], theme.Of(theme.Unicode, c.want, theme.True).Styles[theme.Force]; got != want {
			t.Errorf("%s on dark %v: a force looks %q, want %q", c.name, c.dark, got, want)
		}
	}
}

func TestSettingsOfNewSheetsAndPlainCharacters(t *testing.T) {
	likes := settings.Defaults()
	likes.Force, likes.Up, likes.Figures, likes.ASCII = "kN", "+y", 4, true
	r := rigOf(t, Options{Start: true, Settings: &likes, Width: 80, Height: 24})
	r.keys("esc")
	r.holds(sheet.Ref{Table: "units", Row: "force"}, "kN")
	r.holds(sheet.Ref{Row: "up"}, "+y")
	r.holds(sheet.Ref{Row: "figures"}, "4")
	if r.m.history.Modified() {
		t.Error("a new sheet counts as changed")
	}
	for _, c := range r.screen() {
		if c >= 0x80 {
			t.Fatalf("%q is not ASCII in\n%s", c, r.screen())
		}
	}
}

func TestSheetsOpenedAndSavedAreRecorded(t *testing.T) {
	folder := t.TempDir()
	one, two := filepath.Join(folder, "one.toml"), filepath.Join(folder, "two.toml")
	if err := os.WriteFile(one, []byte(hanging), 0o600); err != nil {
		t.Fatal(err)
	}
	var got []string
	record := func(path string) error { got = append(got, path); return nil }
	r := rigOf(t, Options{Start: true, Recent: []string{one}, Opened: record, Width: 80, Height: 24})
	r.keys("enter", "ctrl+o", "ctrl+u")
	r.text(two)
	r.keys("enter")
	if want := one + " " + two; strings.Join(got, " ") != want {
		t.Errorf("recorded %q, want %q", got, want)
	}
	s, stamp, err := sheet.Load(two)
	if err != nil {
		t.Fatal(err)
	}
	got = nil
	rigOf(t, Options{Path: two, Sheet: s, Stamp: stamp, Opened: record, Width: 80, Height: 24})
	if strings.Join(got, " ") != two {
		t.Errorf("recorded %q, want %q", got, two)
	}
}

func TestSettingsThatDoNotReadAreSaidAndPassedOver(t *testing.T) {
	folder := t.TempDir()
	env := []string{"HOME=" + folder, "XDG_CONFIG_HOME=" + folder, "XDG_STATE_HOME=" + folder}
	path, err := settings.Path(env)
	if err != nil {
		t.Fatal(err)
	}
	if err := os.MkdirAll(filepath.Dir(path), 0o700); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(path, []byte("theme = \"pink\"\nascii = \"true\"\n"), 0o600); err != nil {
		t.Fatal(err)
	}
	opt := Options{Env: env, Start: true, Width: 200, Height: 60}
	opt.settle()
	r := rigOf(t, opt)
	r.sees("theme cannot be \"pink\"")
	if r.m.theme.Set != theme.Seven {
		t.Error("a setting behind one that does not read is passed over")
	}
	r.keys("down")
	if strings.Contains(r.screen(), "pink") {
		t.Error("it is said again")
	}
	if err := opt.Opened(path); err != nil {
		t.Error(err)
	}
	if got := settings.Recent(env); len(got) != 1 || got[0] != path {
		t.Errorf("opened last: %q", got)
	}
}
