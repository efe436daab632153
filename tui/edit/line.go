package edit

import (
	"slices"
	"strings"

	"trivet/tui/cells"
	"trivet/tui/grid"
	"trivet/tui/text"
	"trivet/tui/theme"
)

// Line shows the cell under the cursor, not typed in: what stands in it, or what is taken where it
// is left out, and what follows from its row, unless that has no room.
func (e *Editor) Line(w Where, follows []cells.Fact, width int) (line []text.Span, facts string) {
	s, ok := e.Slot(w.Pane)
	if !ok {
		return nil, ""
	}
	name, shown := e.Tables[w.Pane].Head(e.At[w.Pane].Row, e.At[w.Pane].Col), text.Span{Text: s.Text}
	switch {
	case s.Does == cells.SetCell:
		name = s.Label()
		if s.Text != "" && Raw(w.Sheet, s) == "" {
			shown = text.Span{Text: s.Text + " (left out)", Look: theme.Dim}
		}
	case name == "":
		name = e.Selected(w.Pane).Row // which has no such cell
	}
	line = []text.Span{{Text: name + ": ", Look: theme.Name}, shown}
	if s.Does == cells.Nothing && s.Text != "" && slices.ContainsFunc(follows, func(f cells.Fact) bool { return f.Value == s.Text }) {
		return line, "" // it is what follows
	}
	facts = cells.ShownFacts(follows)
	if s.Text == "" {
		facts = strings.TrimLeft(facts, " ")
	}
	if grid.Width(name)+2+grid.Width(shown.Text)+grid.Width(facts) > width {
		return line, facts
	}
	return append(line, text.Span{Text: facts, Look: theme.Computed}), ""
}
