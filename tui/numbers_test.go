package tui

import (
	"strings"
	"testing"

	"trivet/mechanics/problem"
	"trivet/mechanics/statics"
)

// New numbers are one step: undo gives the sheet back byte for byte, and each
// press gives a variant of what is there, with the verdict kept.
func TestNewNumbers(t *testing.T) {
	r := newRig(t, crane, 120, 36)
	was := r.m.history.Current().Text()
	seen := map[string]bool{was: true}
	for range 5 {
		before := r.m.history.Current().Text()
		r.keys("alt+n")
		s := r.m.history.Current()
		p, errs := problem.Read(s)
		if len(errs) > 0 || statics.Solve(p).Verdict != statics.Determinate || s.Text() == before {
			t.Fatalf("%v\n%s", errs, s.Text())
		}
		if v := p.Givens[0].Value.V[0]; v < 100 || v > 500 || p.Title != "Wall crane" || len(p.Answers) > 0 {
			t.Errorf("load = %v, title %q, %d answers", v, p.Title, len(p.Answers))
		}
		seen[s.Text()] = true
		r.keys("ctrl+z")
		if r.m.history.Current().Text() != before {
			t.Error("undo does not give back what was there")
		}
		r.keys("ctrl+y")
	}
	if len(seen) < 3 {
		t.Errorf("five presses gave %d sheets", len(seen))
	}
}

// Where there are none it says why, and nothing changes.
func TestNoNewNumbers(t *testing.T) {
	two := strings.Replace(hanging, `W = "60 N"`, `W = { value = "60 N", range = "60 N .. 90 N", step = "30 N" }`, 1)
	for text, says := range map[string]string{
		hanging: `no given has a range. Try: W = { value = "400 N", range = "300 N .. 500 N", step = "50 N" }`,
		two:     "none of 1 combination tried has the same verdict; the most frequent reason: T1 exceeds its limit of 50.0 N",
		strings.Replace(two, `90 N", step`, `61 N", step`, 1): "the ranges contain no other values",
		strings.Replace(two, `"3, 4"`, `"3, k"`, 1):           "no new numbers while the sheet has errors: ",
	} {
		r := newRig(t, text, 120, 36)
		r.keys("alt+n")
		if !strings.HasPrefix(r.m.note.Text, says) || r.m.history.Current().Text() != text {
			t.Errorf("%q, want %q", r.m.note.Text, says)
		}
	}
}

// A given that is changed takes the words and the old reference answers along, where that
// is wanted: one step, which undo takes back.
func TestWordsFollowAGiven(t *testing.T) {
	withStatement := strings.Replace(crane, `title = "Wall crane"`, "title = \"Wall crane\"\nstatement = \"A load of 300 N hangs from D, 2 m out from the wall.\"", 1)
	r := newRig(t, withStatement, 120, 36)
	r.keys("f7 g", "home", "right")
	r.text("400 N")
	r.keys("enter")
	r.sees("the words state 300 N; alt+w updates them, removes old reference answers")
	changed := r.m.history.Current().Text()
	r.keys("alt+w")
	r.sees("the words follow the givens and the old reference answers were removed")
	p, errs := problem.Read(r.m.history.Current())
	if len(errs) > 0 || p.Statement != "A load of 400 N hangs from D, 2 m out from the wall." || len(p.Answers) > 0 {
		t.Errorf("%v, %q, %d answers", errs, p.Statement, len(p.Answers))
	}
	r.keys("ctrl+z")
	if r.m.history.Current().Text() != changed {
		t.Errorf("undo does not give back what was there:\n%s", r.m.history.Current().Text())
	}
	// Where the given is as it was there is nothing to follow.
	r.keys("ctrl+z", "alt+w")
	r.sees("no given was changed")
}
