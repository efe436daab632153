package tui

import (
	"slices"
	"strings"
	"testing"

	tea "charm.land/bubbletea/v2"

	"trivet/tui/layout"
	"trivet/tui/overlay"
	"trivet/tui/results"
	"trivet/tui/session"
)

// later presses keys while what they ask for is still under way, and gives what is.
func later(r *rig, names ...string) (under []tea.Cmd) {
	for _, n := range names {
		if cmd := r.later(press(n)); cmd != nil {
			under = append(under, cmd)
		}
	}
	return under
}

// later sends a message whose answer is still under way.
func (r *rig) later(msg tea.Msg) tea.Cmd {
	next, cmd := r.m.Update(msg)
	r.m = next.(Model)
	return cmd
}

func arrives(r *rig, under []tea.Cmd) {
	for _, cmd := range under {
		r.do(cmd)
	}
}

// What is typed for steps that are still being laid out is done once they are there.
func TestKeysTypedAheadWaitForTheSteps(t *testing.T) {
	for _, c := range []struct {
		typed []string
		sees  string
	}{
		{[]string{"f5", "3", "space"}, "step 4 of"},
		{[]string{"f5", "end"}, "Caution"},
		{[]string{"f5", "3", "esc"}, "Givens"},
		{[]string{"f5", "3", "esc", "f5"}, "step 1 of"},
	} {
		r := newRig(t, hanging, 120, 36)
		arrives(r, later(r, c.typed...))
		if c.sees == "Caution" { // the last step, whatever its number
			all := newRig(t, hanging, 120, 36)
			all.keys(c.typed...)
			if got, want := r.screen(), all.screen(); got != want {
				t.Errorf("after %v:\n%s\nwant\n%s", c.typed, got, want)
			}
			continue
		}
		r.sees(c.sees)
		if strings.Contains(r.screen(), "there are 0 steps") {
			t.Errorf("after %v:\n%s", c.typed, r.screen())
		}
	}
	// The pane of the working, to its end.
	slow, quick := newRig(t, hanging, 120, 36), newRig(t, hanging, 120, 36)
	arrives(slow, later(slow, "f7", "w", "end"))
	quick.keys("f7 w", "end")
	if got, want := slow.screen(), quick.screen(); got != want {
		t.Errorf("the working:\n%s\nwant\n%s", got, want)
	}
}

func TestNoMoreKeysWaitThanAnybodyTypes(t *testing.T) {
	r := newRig(t, hanging, 120, 36)
	under := later(r, append([]string{"f5"}, slices.Repeat([]string{"space"}, 3*session.MaxAhead)...)...)
	if len(r.m.ahead) != session.MaxAhead {
		t.Errorf("%d keys wait", len(r.m.ahead))
	}
	arrives(r, under)
	if r.m.ahead != nil {
		t.Errorf("%d keys still wait", len(r.m.ahead))
	}
	r.sees("step ")
}

// What waits is for the steps alone: whoever has gone elsewhere meanwhile, or is asked
// something, has typed it for nothing else.
func TestKeysThatWaitAreDoneNowhereElse(t *testing.T) {
	for _, c := range []struct {
		name      string
		meanwhile func(r *rig) tea.Cmd
	}{
		{"a click in a cell", func(r *rig) tea.Cmd {
			at := r.m.screen().Panes[layout.Points].Min
			return r.later(tea.MouseClickMsg{X: at.X + 3, Y: at.Y + 2, Button: tea.MouseLeft})
		}},
		{"a click on another result", func(r *rig) tea.Cmd {
			at := r.m.screen().Panes[layout.Picture].Min
			return r.later(tea.MouseClickMsg{X: at.X + 3, Y: at.Y + 2, Button: tea.MouseLeft})
		}},
		{"a question", func(r *rig) tea.Cmd {
			r.m.ask = &question{
				Question: overlay.Question{Text: "Overwrite it?"},
				yes:      func(m *Model) tea.Cmd { t.Error("it was answered with yes"); return nil },
				no:       func(m *Model) tea.Cmd { t.Error("it was answered with no"); return nil },
			}
			return nil
		}},
		{"a fault", func(r *rig) tea.Cmd {
			return r.later(results.Laid{Of: r.m.live.Solution, Fault: "ink"})
		}},
		{"a sheet without a result", func(r *rig) tea.Cmd {
			r.m.live.Solution = nil
			return nil
		}},
	} {
		t.Run(c.name, func(t *testing.T) {
			r := newRig(t, hanging, 120, 36)
			sheet := r.m.history.Current().Text()
			under := later(r, "f7", "w", "x", "end", "y", "n")
			if len(r.m.ahead) != 4 {
				t.Fatalf("%d keys wait", len(r.m.ahead))
			}
			under = append(under, c.meanwhile(r))
			if c.name == "a fault" {
				r.sees("the working could not be written (fault: ink)")
			}
			arrives(r, under)
			if r.m.ahead != nil {
				t.Errorf("%d keys still wait", len(r.m.ahead))
			}
			if got := r.m.history.Current().Text(); r.m.cells.Cell != nil || got != sheet {
				t.Errorf("they were typed into the sheet:\n%s\n%s", got, r.screen())
			}
		})
	}
}
