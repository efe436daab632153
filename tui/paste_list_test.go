package tui

import (
	"testing"

	tea "charm.land/bubbletea/v2"

	"trivet/mechanics/sheet"
)

// Lists of a spreadsheet make rows: by tabs or by commas, with a head or without.
func TestAPastedListMakesRows(t *testing.T) {
	for _, c := range []struct {
		paste, says string
		table, row  string
		key, want   string
	}{
		{"P\t1\t2\t3\nQ\t4\t5\t6\n", "pasted 2 points", "points", "Q", "", "4, 5, 6"},
		{"name,x,y,z\nP,1,2,3\n", "pasted 1 point", "points", "P", "", "1, 2, 3"},
		{"joint\tx (mm)\ty\tz\nP\t100\t0\t-5 m\n", "pasted 1 point", "points", "P", "at", "100 mm, 0 mm, -5 m"},
		{"P, 1, 2, 3, rod\nQ, 1, 2, 4, rod\n", "pasted 2 points", "points", "P", "on", "rod"},
		{"W\t5 kN\nh\t3\n", "pasted 2 given values", "given", "W", "", "5 kN"},
		{"what,value\nh,3 m\nk,2\n", "pasted 2 given values", "given", "h", "", "3 m"},
		{"P,0,0,0\nQ,1,0,0\n\nbar,from,to\nPQ,P,Q\n", "pasted 2 points and 1 bar; the points that they join are particles", "lines", "PQ", "path", "P Q"},
		{"P,0,0,0\nQ,1,0,0\nP,Q\n", "pasted 2 points and 1 bar", "points", "Q", "on", "particle"},
	} {
		r := startRig(t, 120, 36)
		r.keys("esc")
		before := r.m.history.Current().Text()
		r.send(tea.PasteMsg{Content: c.paste})
		r.sees(c.says)
		r.holds(sheet.Ref{Table: c.table, Row: c.row, Key: c.key}, c.want)
		r.keys("ctrl+z")
		if got := r.m.history.Current().Text(); got != before {
			t.Errorf("%q: one undo leaves\n%s", c.paste, got)
		}
	}
}

// A point that is there already moves; a name that cannot be one is refused, and nothing is pasted.
func TestAPastedListOverRows(t *testing.T) {
	r := newRig(t, hanging, 120, 36)
	r.send(tea.PasteMsg{Content: "A\t-4\t3\nE\t0\t9\n"})
	r.holds(pointA, "-4, 3")
	r.holds(sheet.Ref{Table: "points", Row: "E"}, "0, 9")
	before := r.m.history.Current().Text()
	r.send(tea.PasteMsg{Content: "a b\t1\t2\nF\t1\t2\n"})
	r.sees("not pasted")
	if got := r.m.history.Current().Text(); got != before {
		t.Errorf("a list that is refused leaves\n%s", got)
	}
}
