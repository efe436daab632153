package tui

import (
	"strings"

	"trivet/mechanics/problem"
	"trivet/mechanics/sheet"
	"trivet/tui/keys"
	"trivet/tui/layout"
)

// nextStep says what a sheet that has little in it yet needs next; empty once the
// rest says itself, or while a row is wrong.
func (b builder) nextStep(focus layout.Pane) string {
	points, lines := b.read("points"), b.read("lines")
	for _, e := range b.Errs {
		row, _ := b.s.Table(e.Ref.Table).Row(e.Ref.Row)
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
		return there(layout.Points, "alt+2", "type a name for the point where the forces meet, such as P, and enter")
	case others > 0:
		return ""
	case len(points) == 1 && len(lines) == 0:
		return there(layout.Points, "alt+2", "ctrl+n for each point that a rope or strut runs to")
	case len(lines) == 0:
		return there(layout.Lines, "alt+3", "type a name for a rope or a force, such as T1, and enter")
	case !b.loaded() && b.unsized() != "":
		return there(layout.Lines, "alt+3", "type the magnitude of "+b.unsized()+", such as 2 kN, or ? to find it")
	case !b.loaded():
		return there(layout.Lines, "alt+3", "ctrl+n for the load: a name, the kind, weight or force, its point, its magnitude")
	}
	return ""
}

// loaded tells whether any force is known; until one is, every answer is nothing.
func (b builder) loaded() bool {
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
func (b builder) unsized() string {
	for _, row := range b.read("lines") {
		kind, _ := row.Cell("kind")
		size, _ := row.Cell("magnitude")
		if strings.TrimSpace(kind.Text) == problem.Force.String() && strings.TrimSpace(size.Text) == "" {
			return row.Name
		}
	}
	return ""
}

// firstPoint tells that a sheet has nothing cut free yet: the first point is the
// one whose forces balance.
func firstPoint(s *sheet.Sheet) bool {
	return len(s.Table("points").Rows) == 0 && len(s.Table("bodies").Rows) == 0
}

// typedRow begins a row with a text where a pane of points or lines has none.
func (m *Model) typedRow(text string) bool {
	if m.focus != layout.Points && m.focus != layout.Lines || len(m.tables[m.focus].records) > 0 {
		return false
	}
	m.newRow()
	m.edit.Insert(text)
	return true
}

// follow begins another row once the one just made is whole, so that a list is
// typed without a key between its rows; enter on a blank name ends it.
func (m *Model) follow() bool {
	t, at := m.tables[m.focus], m.at[m.focus]
	if m.newest == (sheet.Ref{}) || at.row >= len(t.records) || t.records[at.row].row != m.newest {
		return false
	}
	m.beginRow(m.newest.Table)
	return true
}

// dropBlank leaves the row that began by itself, while it is blank, for a key that
// means something on the cells alone.
func (m *Model) dropBlank(key string) {
	if m.fresh == nil || m.edit == nil || m.edit.Text != "" || m.newest == (sheet.Ref{}) || m.newest.Table != m.fresh.table {
		return
	}
	if _, typing := keys.Find(m.mode(), key); typing {
		return
	}
	if _, ok := keys.Find(keys.OnCells, key); !ok {
		return
	}
	m.edit, m.fresh, m.newest = nil, nil, sheet.Ref{}
	m.rebuild()
}
