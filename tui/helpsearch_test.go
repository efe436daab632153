package tui

import (
	"strings"
	"testing"
)

// What is looked for in the help is found on any page, and once more behind it.
func TestTheHelpIsSearched(t *testing.T) {
	for _, key := range []string{"/", "ctrl+f"} {
		r := newRig(t, crane, 80, 24)
		r.keys("?", key)
		r.keys(strings.Split("Friction", "")...)
		found := func() { // in the line that is typed, and above it
			t.Helper()
			if s := r.screen(); strings.Count(strings.ToLower(s), "friction") < 2 {
				t.Fatalf("it is not to be seen:\n%s", s)
			}
		}
		r.sees("find: Friction", "Help: ")
		found()
		first := r.m.help.At
		if first == 0 {
			t.Errorf("%s: found on the page of the keys", key)
		}
		seen := map[int]bool{}
		for range 40 {
			seen[r.m.help.At] = true
			r.keys("enter")
			found()
		}
		if len(seen) < 2 {
			t.Errorf("%s: it is found on %d pages", key, len(seen))
		}
		r.keys("ctrl+u")
		r.keys(strings.Split("zzz", "")...)
		r.sees("no page of the help contains zzz")
		r.keys("esc")
		if r.m.help == nil {
			t.Errorf("%s: esc leaves the help as well", key)
		}
		r.keys("esc")
		r.sees("Points")
	}
}
