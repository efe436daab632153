package tui

import (
	"slices"
	"strings"
	"testing"

	tea "charm.land/bubbletea/v2"
)

// later presses keys while what they ask for is still under way, and gives what is.
func later(r *rig, names ...string) (under []tea.Cmd) {
	for _, n := range names {
		next, cmd := r.m.Update(press(n))
		r.m = next.(Model)
		if cmd != nil {
			under = append(under, cmd)
		}
	}
	return under
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
		{[]string{"f5", "3", "esc"}, "1 Sheet and givens"},
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
	arrives(slow, later(slow, "alt+9", "end"))
	quick.keys("alt+9", "end")
	if got, want := slow.screen(), quick.screen(); got != want {
		t.Errorf("the working:\n%s\nwant\n%s", got, want)
	}
}

func TestNoMoreKeysWaitThanAnybodyTypes(t *testing.T) {
	r := newRig(t, hanging, 120, 36)
	under := later(r, append([]string{"f5"}, slices.Repeat([]string{"space"}, 3*mostAhead)...)...)
	if len(r.m.ahead) != mostAhead {
		t.Errorf("%d keys wait", len(r.m.ahead))
	}
	arrives(r, under)
	if r.m.ahead != nil {
		t.Errorf("%d keys still wait", len(r.m.ahead))
	}
	r.sees("step ")
}
