package tui

import (
	"trivet/mechanics/problem"
	"trivet/mechanics/sheet"
	"trivet/mechanics/statics"
	"trivet/tui/grid"
	"trivet/tui/theme"
)

// builder makes the records of the panes from the sheet as it stands, what is
// being typed included, and from the result shown.
type builder struct {
	live
	s     *sheet.Sheet
	fresh *fresh

	// Where things are by name: a large sheet is built at every keystroke.
	bad                       map[sheet.Ref]bool
	pointAt, lineAt, resultAt map[string]int        // points and lines of the newest reading, lines of the result
	brings                    map[int][]string      // the unknowns of each joint of the newest reading
	jointAt                   map[string]int        // joints of the newest reading
	limits, jointLimits       map[int]statics.Check // of lines and joints of the result
}

func (m *Model) builder() builder {
	b := builder{live: m.live, s: m.live.Sheet, fresh: m.fresh}
	if b.s == nil {
		b.s = m.history.Current()
	}
	b.bad = map[sheet.Ref]bool{}
	for _, e := range b.Errs {
		b.bad[e.Ref] = true
	}
	b.brings, b.jointAt = map[int][]string{}, map[string]int{}
	if p := b.Latest; p != nil {
		b.pointAt = make(map[string]int, len(p.Points))
		for i := range p.Points {
			b.pointAt[p.Points[i].Name] = i
		}
		b.lineAt = index(p.Lines)
		for i := range p.Joints {
			b.jointAt[p.Joints[i].Name] = i
		}
		for _, u := range p.Unknowns {
			if u.Joint >= 0 {
				b.brings[u.Joint] = append(b.brings[u.Joint], u.Name)
			}
		}
	}
	b.limits, b.jointLimits = map[int]statics.Check{}, map[int]statics.Check{}
	if b.Solution != nil {
		for _, c := range b.Solution.Checks {
			switch c.Kind {
			case statics.CheckLimit:
				b.limits[c.Line] = c
			case statics.CheckJointLimit:
				b.jointLimits[c.Joint] = c
			}
		}
	}
	if b.Problem != nil {
		if b.resultAt = b.lineAt; b.Problem != b.Latest {
			b.resultAt = index(b.Problem.Lines)
		}
	}
	return b
}

func index(lines []problem.Line) map[string]int {
	at := make(map[string]int, len(lines))
	for i := range lines {
		at[lines[i].Name] = i
	}
	return at
}

// result is the look of what follows from the cells.
func (b builder) result() grid.Style {
	if b.Stale {
		return theme.Stale
	}
	return theme.Computed
}

// name is the slot of a row's name. An error of the row as a whole shows there.
func (b builder) name(table string, row sheet.Row) slot {
	s := slot{text: row.Name, does: setName, ref: sheet.Ref{Table: table, Row: row.Name}, look: theme.Name}
	if b.bad[s.ref] {
		_, plain := row.Cell("")
		s.bad = !plain
	}
	return s
}

// cell is the slot of the first of the keys that the row has, or of the last.
func (b builder) cell(table string, row sheet.Row, names ...string) slot {
	s := slot{does: setCell}
	for _, key := range names {
		s.ref = sheet.Ref{Table: table, Row: row.Name, Key: key}
		if c, ok := row.Cell(key); ok {
			s.text = c.Text
			if !c.Readable {
				s.does, s.look = nothing, theme.Dim
			}
			break
		}
	}
	_, plain := row.Cell("")
	s.bad = b.bad[s.ref] && (s.ref.Key != "" || plain)
	return s
}

func (b builder) computed(text string) slot { return slot{text: text, look: b.result()} }

// rows gives a table's rows, with the one that has no name yet in its place.
func (b builder) rows(table string) []sheet.Row {
	return b.s.Table(table).Rows
}

// read gives a table's rows that are read: all but the private ones.
func (b builder) read(table string) []sheet.Row { return problem.Rows(b.s, table) }

// insert puts the row without a name behind the one it is to follow.
func (b builder) insert(t *table, name string) {
	if b.fresh == nil || b.fresh.table != name {
		return
	}
	r := record{row: sheet.Ref{Table: name}, slots: make([]slot, len(t.columns))}
	does := setName
	if name == "" {
		does = setAsked
	}
	r.slots[0] = slot{does: does, ref: r.row, look: theme.Name}
	at := min(max(b.fresh.at, 0), len(t.records))
	t.records = append(t.records[:at:at], append([]record{r}, t.records[at:]...)...)
}
