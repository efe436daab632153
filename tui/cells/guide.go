package cells

import (
	"strings"

	"trivet/mechanics/problem"
	"trivet/mechanics/sheet"
	"trivet/tui/layout"
)

// NextStep says what a sheet that has little in it yet needs next; empty once the
// rest says itself, or while a row is wrong.
func (b Builder) NextStep(focus layout.Pane) string {
	points, lines := b.read("points"), b.read("lines")
	for _, e := range b.Errs {
		row, _ := b.Typed.Table(e.Ref.Table).Row(e.Ref.Row)
		_, plain := row.Cell("")
		if e.Ref.Row != "" && (plain || e.Ref.Key != "" || len(lines) > 0) {
			return "" // more than a particle that nothing acts on yet
		}
	}
	others := len(b.read("joints")) + len(b.read("couples")) + len(b.read("distributed")) + len(b.read("bodies"))
	there := func(p layout.Pane, key, then string) string {
		if focus == p {
			return "next: " + then
		}
		return "next: " + key + ", then " + then
	}
	switch {
	case len(points) == 0:
		return there(layout.Points, "alt+p", "type a name for the point where the forces meet, such as P, and enter")
	case others > 0:
		return ""
	case len(points) == 1 && len(lines) == 0:
		return there(layout.Points, "alt+p", "ctrl+n for each point that a rope or strut runs to")
	case len(lines) == 0:
		return there(layout.Lines, "f7 f", "type a name for a rope or a force, such as T1, and enter")
	case !b.loaded() && b.unsized() != "":
		return there(layout.Lines, "f7 f", "type the magnitude of "+b.unsized()+", such as 2 kN, or ? to find it")
	case !b.loaded():
		return there(layout.Lines, "f7 f", "ctrl+n for the load: a name, the kind, weight or force, its point, its magnitude")
	}
	return ""
}

// loaded tells whether any force is known; until one is, every answer is nothing.
func (b Builder) loaded() bool {
	for _, row := range b.read("lines") {
		for _, key := range []string{"magnitude", "components", "stiffness"} {
			if c, ok := row.Cell(key); ok && strings.TrimSpace(c.Text) != "" && strings.TrimSpace(c.Text) != "?" {
				return true
			}
		}
		kind, _ := row.Cell("kind")
		if strings.TrimSpace(kind.Text) == problem.Weight.String() {
			return true // its own cells say what it lacks
		}
	}
	return false
}

// unsized names the first force whose size is still blank: it may be the load. One
// that says ? is meant to be found.
func (b Builder) unsized() string {
	for _, row := range b.read("lines") {
		kind, _ := row.Cell("kind")
		size, _ := row.Cell("magnitude")
		if strings.TrimSpace(kind.Text) == problem.Force.String() && strings.TrimSpace(size.Text) == "" {
			return row.Name
		}
	}
	return ""
}

// FirstPoint tells that a sheet has nothing cut free yet: the first point is the
// one whose forces balance.
func FirstPoint(s *sheet.Sheet) bool {
	return len(s.Table("points").Rows) == 0 && len(s.Table("bodies").Rows) == 0
}
