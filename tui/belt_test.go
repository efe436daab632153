package tui

import (
	"slices"
	"testing"

	"trivet/tui/cells"
	"trivet/tui/layout"
)

const capstan = `title = "Capstan"
plane = "xy"
[points]
A = { at = "-2, -3", on = "particle" }
C = "0, 0"
B = { at = "2, -3", on = "particle" }
[lines]
R = { kind = "belt", path = "A C B", wrap = "200 deg", friction = "0.3", limit = "300 N" }
F = { kind = "force", at = "A", along = "dir(C, A)", magnitude = "100" }
G = { kind = "force", at = "B", along = "dir(C, B)", magnitude = "210" }
`

// Both tensions of a belt stand among the unknowns, and what they follow from in its row.
func TestABeltInThePanes(t *testing.T) {
	r := newRig(t, capstan, 160, 50)
	var unknowns [][]string
	for _, rec := range r.m.cells.Tables[layout.Unknowns].Records {
		row := []string{}
		for _, s := range rec.Slots[:6] {
			row = append(row, s.Text)
		}
		unknowns = append(unknowns, row)
	}
	want := [][]string{{"R1", "?", "100", "T", "300 N", ""}, {"R2", "?", "210", "T", "300 N", "70.0%"}}
	if !slices.EqualFunc(unknowns, want, slices.Equal) {
		t.Errorf("the unknowns are %q, want %q", unknowns, want)
	}
	lines := &r.m.cells.Tables[layout.Lines]
	for k, head := range []string{"wrap", "friction", "tight"} {
		col := slices.IndexFunc(lines.Columns, func(c cells.Column) bool { return c.Head == head })
		if want := []string{"200 deg", "0.3", ""}[k]; col < 0 || lines.Records[0].Slots[col].Text != want {
			t.Errorf("the lines have no %s of %q", head, want)
		}
	}
}
