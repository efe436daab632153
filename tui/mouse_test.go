package tui

import (
	"image"
	"math/rand/v2"
	"strings"
	"testing"

	tea "charm.land/bubbletea/v2"

	"trivet/fixtures/long"
	"trivet/mechanics/sheet"
	"trivet/tui/keys"
	"trivet/tui/layout"
	"trivet/tui/picture"
)

func (r *rig) click(x, y int) {
	r.send(tea.MouseClickMsg{X: x, Y: y, Button: tea.MouseLeft})
	r.send(tea.MouseReleaseMsg{X: x, Y: y, Button: tea.MouseLeft})
}

// find gives where a text stands on screen, from a column on.
func (r *rig) find(text string, from int) (x, y int) {
	r.t.Helper()
	for y, line := range strings.Split(r.screen(), "\n") {
		all := []rune(line)
		if from < len(all) {
			if i := strings.Index(string(all[from:]), text); i >= 0 {
				return from + len([]rune(string(all[from:])[:i])), y
			}
		}
	}
	r.t.Fatalf("no %q from column %d on\n%s", text, from, r.screen())
	return 0, 0
}

func TestAClickGoesToACell(t *testing.T) {
	for _, size := range [][2]int{{80, 24}, {120, 36}, {200, 60}} {
		r := newRig(t, crane, size[0], size[1])
		x, y := r.find("-1", 0)
		r.click(x, y)
		if s, _ := r.m.slot(); s.Ref != (sheet.Ref{Table: "points", Row: "B"}) {
			t.Errorf("%v: a click on B's place is on %v", size, s.Ref)
		}
		r.keys("9")
		x, y = r.find("cable", 0)
		r.click(x, y) // keeps what was typed
		r.holds(sheet.Ref{Table: "points", Row: "B"}, "9")
		if s, _ := r.m.slot(); s.Ref != (sheet.Ref{Table: "lines", Row: "TA", Key: "kind"}) {
			t.Errorf("%v: a click on TA's kind is on %v", size, s.Ref)
		}
		r.keys("ctrl+t")
		if size[0] > 80 {
			r.keys("alt+y")
		}
		x, y = r.find("System", 0)
		r.click(x, y)
		if r.m.Focus != layout.System {
			t.Errorf("%v: a click on the system goes to pane %d", size, r.m.Focus)
		}
	}
}

func TestTheMouseInThePicture(t *testing.T) {
	r := newRig(t, crane, 120, 36)
	r.keys("alt+i")
	pane := r.m.screen().Panes[layout.Picture]
	x, y := r.find("D", pane.Min.X+8)
	r.click(x, y) // its name; the point itself is found by Hit
	if got := r.m.selected(); got != (sheet.Ref{Table: "points", Row: "D"}) {
		t.Errorf("a click on D picks %v", got)
	}
	r.sees("D is picked")
	x, y = r.find("load1", pane.Min.X)
	hit := false
	for dy := range 6 { // the label stands below the arrow's tip
		for dx := range 12 {
			r.click(x-3+dx, y-1-dy)
			hit = hit || r.m.selected() == (sheet.Ref{Table: "lines", Row: "load1"})
		}
	}
	if !hit {
		t.Error("a click on the arrow does not pick its line")
	}
	was := r.m.cam
	mid := pane.Min.Add(pane.Size().Div(2))
	r.send(tea.MouseClickMsg{X: mid.X, Y: mid.Y, Button: tea.MouseLeft})
	r.send(tea.MouseMotionMsg{X: mid.X + 6, Y: mid.Y + 3, Button: tea.MouseLeft})
	r.send(tea.MouseReleaseMsg{X: mid.X + 6, Y: mid.Y + 3, Button: tea.MouseLeft})
	if r.m.cam.Turn >= was.Turn || r.m.cam.Tilt <= was.Tilt || r.m.drag != nil {
		t.Errorf("dragged from %v to %v", was, r.m.cam)
	}
	r.send(tea.MouseWheelMsg{X: mid.X, Y: mid.Y, Button: tea.MouseWheelUp})
	if r.m.cam.Zoom != picture.ZoomStep {
		t.Errorf("a notch of the wheel zooms to %v", r.m.cam.Zoom)
	}
	r.send(tea.MouseWheelMsg{X: mid.X, Y: mid.Y, Button: tea.MouseWheelDown})
	flat := newRig(t, hanging, 120, 36)
	before := flat.m.cam
	flat.send(tea.MouseClickMsg{X: mid.X, Y: mid.Y, Button: tea.MouseLeft})
	flat.send(tea.MouseMotionMsg{X: mid.X + 6, Y: mid.Y, Button: tea.MouseLeft})
	if flat.m.cam != before {
		t.Error("a picture in a plane turns")
	}
}

func TestKeysPickWhatTheMousePicks(t *testing.T) {
	r := newRig(t, crane, 120, 36)
	r.keys("alt+i")
	for _, want := range []string{"A", "B", "C", "TA", "TB", "S", "load1", "D"} {
		r.keys("n")
		if got := r.m.selected().Row; got != want {
			t.Errorf("n picks %s, want %s", got, want)
		}
	}
	r.keys("p")
	if got := r.m.selected().Row; got != "load1" || r.m.Focus != layout.Picture {
		t.Errorf("p picks %s in pane %d", got, r.m.Focus)
	}
	r.keys("esc") // to the row picked
	if r.m.Focus != layout.Lines {
		t.Errorf("esc leads to pane %d", r.m.Focus)
	}
}

func TestTheWheelScrolls(t *testing.T) {
	r := newRig(t, crane, 120, 36)
	at := r.m.screen().Panes[layout.System].Min.Add(image.Pt(3, 3))
	r.send(tea.MouseWheelMsg{X: at.X, Y: at.Y, Button: tea.MouseWheelDown})
	if r.m.read[layout.System].Scroll.Y != rollLines || r.m.Focus != layout.Points {
		t.Errorf("scrolled to %d in pane %d", r.m.read[layout.System].Scroll.Y, r.m.Focus)
	}
	r.keys("?")
	r.send(tea.MouseWheelMsg{X: at.X, Y: at.Y, Button: tea.MouseWheelDown})
	if r.m.help.Y != rollLines {
		t.Errorf("the help is scrolled to %d", r.m.help.Y)
	}
}

func TestTheMouseOnTheStartScreen(t *testing.T) {
	r := startRig(t, 120, 36)
	x, y := r.find("Mast top", 0)
	r.click(x, y)
	r.sees("A load cell under a 12 m mast")
	x, y = r.find("▸Mast top", 0)
	r.click(x, y)
	if r.m.mode() == keys.OnStart {
		t.Error("a second click does not open the sheet")
	}
	r.sees("Mast top")
}

func TestTheMouseAnywhereBreaksNothing(t *testing.T) {
	rnd := rand.New(rand.NewPCG(5, 3))
	for _, r := range []*rig{newRig(t, crane, 120, 36), newRig(t, beam, 80, 24), startRig(t, 80, 24)} {
		for range long.Of(2000, 2000) {
			mouse := tea.Mouse{X: rnd.IntN(130) - 2, Y: rnd.IntN(40) - 2, Button: tea.MouseButton(rnd.IntN(7))}
			switch rnd.IntN(5) {
			case 0:
				r.send(tea.MouseReleaseMsg(mouse))
			case 1:
				r.send(tea.MouseMotionMsg(mouse))
			case 2:
				r.send(tea.MouseWheelMsg(mouse))
			case 3:
				r.keys([]string{"1", "esc", "?", "alt+i", "f5", "ctrl+n", "tab"}[rnd.IntN(7)])
			default:
				r.send(tea.MouseClickMsg(mouse))
			}
			checkFrame(t, r.m)
		}
	}
}
