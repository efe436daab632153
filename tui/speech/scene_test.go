package speech

import (
	"slices"
	"testing"

	"trivet/mechanics/sheet"
	"trivet/tui/cells"
	"trivet/tui/keys"
	"trivet/tui/layout"
)

// A text is named as it begins; then the lines read on to are said, however they were reached.
func TestWhatIsReadOnToIsSaid(t *testing.T) {
	lines := []string{"one", "two", "three"}
	at := func(n int) Scene {
		return Scene{Mode: keys.OnResult, Of: "checks", Text: Text{Name: "checks", Lines: lines, At: n}}
	}
	whole := Scene{Mode: keys.OnBoard, Of: 1, Text: Text{Lines: lines, Whole: true}}
	next := whole
	next.Of = 2
	aside := at(1)
	aside.Text.Beside, aside.Text.Aside = 1, "T1 is the second unknown"
	unwritten := Scene{Mode: keys.OnResult, Of: "checks", Text: Text{Name: "checks"}}
	for _, c := range []struct {
		was, now Scene
		jumped   bool
		want     []string
	}{
		{Scene{}, at(1), false, []string{"checks, line 2 of 3: two"}},
		{at(0), at(2), false, []string{"two", "three"}},
		{at(2), at(0), false, []string{"one", "two"}},
		{at(0), at(2), true, []string{"three"}},
		{at(1), at(1), false, nil},
		{at(1), aside, false, []string{"T1 is the second unknown"}},
		{Scene{}, unwritten, false, []string{"checks, line 1 of 1: nothing yet"}},
		{unwritten, at(0), false, []string{"checks, line 1 of 3: one"}},
		{at(0), whole, false, lines},
		{whole, whole, false, nil},
		{whole, next, false, lines},
	} {
		if got := c.now.since(c.was, c.jumped); !slices.Equal(got, c.want) {
			t.Errorf("from %+v to %+v it says %q, want %q", c.was.Text, c.now.Text, got, c.want)
		}
	}
}

// Of a place of the cells only what differs from the last one is said.
func TestOfAPlaceOnlyWhatDiffersIsSaid(t *testing.T) {
	a := sheet.Ref{Table: "points", Row: "A"}
	here := PlaceOf(layout.Points, "points", cells.Table{
		Columns: []cells.Column{{}, {Head: "at"}},
		Records: []cells.Record{{Row: a, Slots: []cells.Slot{{Text: "A"}, {Text: "-3, 4"}}}, {}, {}},
	}, cells.Place{Col: 1})
	here.Follows = []cells.Fact{{Value: "(-3.00, 4.00) m"}}
	otherCell, otherRow := here.At, here.At
	otherCell.Col, otherRow.N, otherRow.Row = 0, 2, sheet.Ref{Table: "points", Row: "C"}
	for _, c := range []struct {
		was  Where
		want string
	}{
		{Where{}, "points, row A, 1 of 3, at: -3, 4; reads (-3.00, 4.00) m"},
		{otherRow, "row A, 1 of 3, at: -3, 4; reads (-3.00, 4.00) m"},
		{otherCell, "at: -3, 4"},
	} {
		if got := here.since(c.was); got[0] != c.want {
			t.Errorf("from %+v it says %q, want %q", c.was, got[0], c.want)
		}
	}
	if got := (Place{Pane: "points"}).since(Where{}); got[0] != "points: empty: ctrl+n adds a row" {
		t.Errorf("of no row it says %q", got)
	}
}
