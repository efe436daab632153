package tui

import (
	"fmt"
	"strings"
	"unicode/utf8"

	"trivet/mechanics/problem"
	"trivet/mechanics/sheet"
	"trivet/tui/cells"
	"trivet/tui/layout"
)

// paneName is a pane's heading within a sentence.
func (m Model) paneName(p layout.Pane) string {
	return strings.ToLower(headings[p].long[:1]) + headings[p].long[1:]
}

// columnName is what the cell under the cursor is.
func (m Model) columnName() string {
	name := m.tables[m.focus].Head(m.at[m.focus].Row, m.at[m.focus].Col)
	if s, ok := m.slot(); ok && s.Does == cells.SetName {
		return "name"
	}
	return name
}

// rowLabel is the name of a row of the pane.
func (m Model) rowLabel(row int) string {
	r := m.tables[m.focus].Records[row]
	if len(r.Slots) > 0 && strings.TrimSpace(r.Slots[0].Text) != "" {
		return r.Slots[0].Text
	}
	return "without a name"
}

// whereabouts are a place of the cells.
type whereabouts struct {
	on   bool // there is one; else what is said names all of it
	pane layout.Pane
	row  sheet.Ref
	n    int // which row of the pane it is
	col  int
	mark mark
}

func (m Model) here() whereabouts {
	t, at := m.tables[m.focus], m.at[m.focus]
	s := whereabouts{on: true, pane: m.focus, n: at.Row, col: at.Col, mark: m.mark}
	if at.Row < len(t.Records) {
		s.row = t.Records[at.Row].Row
	}
	return s
}

// place says where the cursor of the cells has come to, as far as it differs
// from where it was: pane, row, column, what is there and what follows from it.
func (m Model) place(was whereabouts) []string {
	t, at := m.tables[m.focus], m.at[m.focus]
	if at.Row >= len(t.Records) {
		return []string{m.paneName(m.focus) + ": " + t.None()}
	}
	here := m.here()
	samePane := was.on && was.pane == here.pane
	sameRow := samePane && was.row == here.row && was.n == here.n
	var parts []string
	if !samePane {
		parts = append(parts, m.paneName(m.focus))
	}
	if !sameRow {
		parts = append(parts, fmt.Sprintf("row %s, %d of %d", m.rowLabel(at.Row), at.Row+1, len(t.Records)))
	}
	if sameRow || m.columnName() != "name" {
		parts = append(parts, m.cellWords())
	}
	line := strings.Join(parts, ", ")
	if len(m.follows) > 0 && !sameRow {
		line += "; " + cells.SaidFacts(m.follows)
	}
	if m.mark.on {
		top, left, bottom, right := m.block()
		line += fmt.Sprintf("; marked: %s, %s", count(bottom-top+1, "row"), count(right-left+1, "column"))
	}
	return append([]string{line}, m.badWords()...)
}

// cellWords is the column and what the cell holds.
func (m Model) cellWords() string {
	s, ok := m.slot()
	if !ok {
		return ""
	}
	text := strings.TrimSpace(s.Text)
	if text == "" {
		text = "blank"
		if s.Need {
			text = "blank, needed"
		}
	}
	if m.columnName() == "" {
		return "a row of this kind has no such cell"
	}
	return m.columnName() + ": " + text
}

// badWords says what is wrong with the cell under the cursor.
func (m Model) badWords() []string {
	s, ok := m.slot()
	if !ok || !s.Bad {
		return nil
	}
	e, own := m.live.ErrorOf(s.Ref)
	if !own {
		return nil
	}
	return []string{m.wrong(e)}
}

// wrong says an error with its place in words: "D at does not read, at character
// 5: ...".
func (m Model) wrong(e problem.Error) string {
	where := strings.TrimSpace(label(cells.Slot{Ref: e.Ref, Does: cells.SetCell}))
	c, _ := m.history.Current().Cell(e.Ref)
	at := ""
	if start := bound(e.Span.Start, c.Text); c.Text != "" && (start > 0 || e.Span.End < len(c.Text)) {
		at = fmt.Sprintf(", at character %d", utf8.RuneCountInString(c.Text[:start])+1)
	}
	if strings.TrimSpace(c.Text) == "" {
		return e.Text()
	}
	return where + " does not read" + at + ": " + e.Text()
}
