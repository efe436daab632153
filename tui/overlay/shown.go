package overlay

import (
	"fmt"
	"slices"

	"trivet/tui/grid"
	"trivet/tui/theme"
)

// Shown is a list as it shows: the same rows are drawn and said.
type Shown struct {
	List
	Title   string // over the rows
	Intro   string // where one listens, said as the list opens
	Noun    string // of a row, where it is said
	None    string // in place of rows
	Columns []Column
	Rows    []Row
}

// Draw shows the rows, or that there are none.
func (s Shown) Draw(c grid.Canvas, mark rune) {
	if len(s.Rows) == 0 {
		c.Text(s.Columns[0].At, 0, theme.Dim, grid.Fit(s.None, c.W()-s.Columns[0].At-1))
		return
	}
	s.List.Draw(c, mark, s.Columns, s.Rows)
}

// Says tells which row is picked, in words.
func (s Shown) Says() string {
	if s.Pick >= len(s.Rows) {
		return s.None
	}
	r := s.Rows[s.Pick]
	where := fmt.Sprintf("%s%d of %d", s.Noun, s.Pick+1, len(s.Rows))
	if r.Family != "" {
		where += ", " + r.Family
	}
	return where + ": " + r.Says
}

// Same tells that two lists say the same: as many rows, and the same of them picked.
func (s Shown) Same(as Shown) bool {
	picked := func(s Shown) []string {
		if s.Pick >= len(s.Rows) {
			return nil
		}
		return s.Rows[s.Pick].Cells
	}
	return s.Pick == as.Pick && len(s.Rows) == len(as.Rows) && slices.Equal(picked(s), picked(as))
}
