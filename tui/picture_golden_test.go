package tui

import (
	"fmt"
	"strings"
	"testing"

	"github.com/charmbracelet/x/ansi"

	"trivet/fixtures"
	"trivet/mechanics/sheet"
	"trivet/tui/layout"
	"trivet/tui/theme"
)

// pane is what stands in a pane of the screen.
func (r *rig) pane(p layout.Pane) string {
	at := r.m.screen().Panes[p]
	lines := strings.Split(r.screen(), "\n")[at.Min.Y:at.Max.Y]
	for i, l := range lines {
		lines[i] = string([]rune(l)[at.Min.X:at.Max.X])
	}
	return strings.Join(lines, "\n")
}

func fixture(t *testing.T, name string) string {
	t.Helper()
	s, ok := fixtures.Get(name)
	if !ok {
		t.Fatalf("no sheet %q", name)
	}
	return s.Text
}

// modes are the ways in which the picture shows a sheet, each at every size.
func modes(t *testing.T) []struct {
	name, sheet string
	keys        []string
} {
	truss := fixture(t, "space-truss")
	return []struct {
		name, sheet string
		keys        []string
	}{
		{"front", truss, []string{"f"}},
		{"side", truss, []string{"s"}},
		{"top", truss, []string{"t"}},
		{"space", truss, nil},
		{"space-plain", truss, []string{"a"}},
		{"turned", truss, []string{"left", "left", "left", "up", "+"}},
		{"lit", truss, []string{"n", "n", "n", "n", "n"}},
		{"lit-plain", truss, []string{"a", "n", "n", "n", "n", "n"}},
		{"polygon", crane, []string{"g"}},
		{"polygon-plain", crane, []string{"g", "a"}},
		{"dimensions", crane, []string{"d"}},
		{"to-scale", beam, []string{"x"}},
		{"equal", beam, []string{"x", "x"}},
		{"beam-plain", beam, []string{"a"}},
		{"crowded", fixture(t, "road-sign-truss"), nil},
		{"crowded-plain", fixture(t, "road-sign-truss"), []string{"a"}},
	}
}

func TestPictureScreens(t *testing.T) {
	for _, size := range [][2]int{{80, 24}, {120, 36}, {200, 60}} {
		for _, c := range modes(t) {
			r := newRig(t, c.sheet, size[0], size[1])
			r.keys("alt+i")
			r.keys(c.keys...)
			name := fmt.Sprintf("picture/%s-%dx%d", c.name, size[0], size[1])
			golden(t, name, r.pane(layout.Picture))
			screen := r.screen()
			for scheme, of := range []theme.Theme{theme.Of(theme.Unicode, theme.Light, theme.True), theme.Of(theme.Unicode, theme.Dark, theme.True), theme.Of(theme.Unicode, theme.Bare, theme.True)} {
				r.m.theme = of
				if got := ansi.Strip(r.m.frame()); got != screen {
					t.Errorf("%s: other characters in scheme %d:\n%s", name, scheme, got)
				}
			}
		}
	}
}

// What the keys pick in the picture is the selected row, and shows without colour.
func TestWhatIsPickedShowsWithoutColour(t *testing.T) {
	for _, plain := range []bool{false, true} {
		r := newRig(t, fixture(t, "space-truss"), 120, 36)
		r.m.theme = theme.Of(theme.Unicode, theme.Bare, theme.True)
		r.keys("alt+i")
		if plain {
			r.keys("a")
		}
		var rows []string
		for range 24 {
			r.keys("n")
			on := r.m.selected()
			rows = append(rows, on.Table+"."+on.Row)
			labelled := false
			for _, l := range r.m.drawing.Things {
				labelled = labelled || l.Label.Runs != nil && (l.Ref == on || on.Table == "joints" && l.Ref == (sheet.Ref{Table: "points", Row: on.Row}))
			}
			if got := strings.Contains(r.pane(layout.Picture), "["+on.Row); got != labelled {
				t.Errorf("%s is selected, and the picture marks it: %v, want %v\n%s", on.Row, got, labelled, r.pane(layout.Picture))
			}
		}
		for range 24 {
			on := r.m.selected()
			if last := rows[len(rows)-1]; on.Table+"."+on.Row != last {
				t.Fatalf("p picks %v, n picked %s", on, last)
			}
			rows = rows[:len(rows)-1]
			r.keys("p")
		}
	}
}

// A click on a label selects its row, as one on the thing itself does.
func TestAClickOnALabel(t *testing.T) {
	r := newRig(t, fixture(t, "space-truss"), 120, 36)
	r.keys("alt+i")
	at := r.m.screen().Panes[layout.Picture]
	for y, line := range strings.Split(r.pane(layout.Picture), "\n") {
		i := strings.Index(line, "BD (C)")
		if i < 0 {
			continue
		}
		x := len([]rune(line[:i]))
		r.click(at.Min.X+x+1, at.Min.Y+y)
		if on := r.m.selected(); on.Table != "lines" || on.Row != "BD" {
			t.Errorf("the click selects %v", on)
		}
		r.sees("[BD (C)]")
		return
	}
	t.Errorf("no label BD (C) in\n%s", r.screen())
}
