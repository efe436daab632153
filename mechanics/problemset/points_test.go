package problemset

import (
	"errors"
	"fmt"
	"testing"
	"time"

	"trivet/mechanics/problem"
	"trivet/mechanics/statics"
	"trivet/mechanics/variant"
)

func TestPoints(t *testing.T) {
	closes := time.Date(2026, 12, 8, 23, 59, 0, 0, time.UTC)
	set := func(late Late) *Set { return &Set{Closes: closes, Rules: Rules{Late: late}} }
	p := Problem{Points: 4}
	for _, c := range []struct {
		says string
		set  *Set
		r    Result
		want float64
	}{
		{"not done", set(LateFull), Result{Hints: 1}, 0},
		{"done", set(LateNo), Result{Done: closes.Add(-time.Hour)}, 4},
		{"at the last moment", set(LateNo), Result{Done: closes}, 4},
		{"three hints", set(LateNo), Result{Done: closes, Hints: 3}, 2.8},
		{"ten hints", set(LateNo), Result{Done: closes, Hints: 10}, 0},
		{"more hints than points", set(LateFull), Result{Done: closes, Hints: 12}, 0},
		{"the solution was shown", set(LateFull), Result{Done: closes, Shown: true}, 0},
		{"late, which counts nothing", set(LateNo), Result{Done: closes.Add(time.Second)}, 0},
		{"late, which counts half", set(LateHalf), Result{Done: closes.Add(time.Hour), Hints: 5}, 1},
		{"late, which costs nothing", set(LateFull), Result{Done: closes.Add(time.Hour), Hints: 5}, 2},
		{"never late", &Set{Rules: Rules{Late: LateNo}}, Result{Done: closes.AddDate(9, 0, 0)}, 4},
	} {
		if got := c.set.Points(p, c.r); got != c.want {
			t.Errorf("%s: %g points, want %g", c.says, got, c.want)
		}
	}
}

func TestOpen(t *testing.T) {
	set := read(t, week)
	for _, c := range []struct {
		now            time.Time
		opened, closed bool
	}{
		{set.Opens.Add(-time.Second), false, false}, {set.Opens, true, false}, {set.Closes, true, false}, {set.Closes.Add(time.Second), true, true},
	} {
		if set.Opened(c.now) != c.opened || set.Closed(c.now) != c.closed {
			t.Errorf("at %v opened %v, closed %v", c.now, set.Opened(c.now), set.Closed(c.now))
		}
	}
	for show, want := range map[Show]string{ShowAnswered: "false true false true", ShowClosed: "false false true true", ShowNever: "false false false false"} {
		set.Rules.Show = show
		before, after := set.Closes, set.Closes.Add(time.Second)
		if got := fmt.Sprint(set.Shows(before, false), set.Shows(before, true), set.Shows(after, false), set.Shows(after, true)); got != want {
			t.Errorf("%s: shows %s, want %s", show, got, want)
		}
	}
}

const lamp = `title = "A lamp of 20 N"
plane = "xy"
[given]
W = { value = "20 N", range = "10 N .. %s N", step = "1 N" }
[points]
P = { at = "0, 0", on = "particle" }
A = "0, 1"
[lines]
T = { kind = "cable", path = "P A", limit = "30 N" }
W = { kind = "weight", at = "P", magnitude = "W" }
`

func source(t *testing.T, most string) *variant.Source {
	t.Helper()
	s := parse(t, fmt.Sprintf(lamp, most))
	p, errs := problem.Read(s)
	for _, e := range errs {
		t.Fatal(e)
	}
	src, err := variant.NewSource(s, statics.Solve(p))
	if err != nil {
		t.Fatal(err)
	}
	return src
}

// The same person has the same values of a problem each time, whatever the title of the
// set and the folder it lies in; others mostly have others.
func TestPersonal(t *testing.T) {
	set := read(t, week)
	moved := *set
	moved.Path, moved.Title = "elsewhere/week4.toml", "Another title"
	src := source(t, "30")
	seen := map[string]bool{}
	for i := range 40 {
		person := fmt.Sprintf("person %d", i)
		v, err := set.Personal(set.Problems[1], person, src)
		if err != nil {
			t.Fatal(err)
		}
		again, err := moved.Personal(set.Problems[1], person, source(t, "30"))
		if err != nil || v.Sheet.Text() != again.Sheet.Text() {
			t.Errorf("%s has other values the second time (%v)", person, err)
		}
		if text := v.Sheet.Text(); text == src.Sheet.Text() {
			t.Errorf("%s has the values of the sheet", person)
		}
		seen[v.Sheet.Text()] = true
	}
	if fewest := 10; len(seen) < fewest { // of 20 values, for 40 persons
		t.Errorf("40 persons have %d different sheets", len(seen))
	}
	if set.Seed(set.Problems[0], "a") == set.Seed(set.Problems[1], "a") {
		t.Error("two problems are drawn by the same seed")
	}
	if a, b := (&Set{Path: "ab.toml"}), (&Set{Path: "a.toml"}); a.Seed(Problem{Name: "c"}, "d") == b.Seed(Problem{Name: "bc"}, "d") {
		t.Error("names that read the same together give the same seed")
	}
	// drawn once and kept here: a person's values must not change with the program
	const kept uint64 = 9749954918905063019
	if got := set.Seed(set.Problems[1], "Ada"); got != kept {
		t.Errorf("the seed is %d, want %d", got, kept)
	}
}

func TestPersonalNone(t *testing.T) {
	set := read(t, week)
	src := source(t, "40")
	src.Tries = 1
	var few *variant.TooFew
	for i := range 200 {
		if _, err := set.Personal(set.Problems[1], fmt.Sprint(i), src); errors.As(err, &few) {
			return
		}
	}
	t.Error("a variant above the limit was given to all")
}
