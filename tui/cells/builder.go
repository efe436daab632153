package cells

import (
	"trivet/mechanics/problem"
	"trivet/mechanics/sheet"
	"trivet/mechanics/statics"
	"trivet/tui/grid"
	"trivet/tui/session"
	"trivet/tui/theme"
)

// Fresh is a row that has no name yet.
type Fresh struct {
	Table string // "" for a result to be asked for
	After string // the row it follows
	At    int    // where it shows
}

// Builder makes the records of the panes from the sheet as it stands, what is
// being typed included, and from the result shown.
type Builder struct {
	session.Result
	Typed *sheet.Sheet
	Bare  bool // vectors are hidden
	fresh *Fresh

	// Where things are by name: a large sheet is built at every keystroke.
	bad                       map[sheet.Ref]bool
	pointAt, lineAt, resultAt map[string]int        // points and lines of the newest reading, lines of the result
	brings                    map[int][]string      // the unknowns of each joint of the newest reading
	jointAt                   map[string]int        // joints of the newest reading
	limits, jointLimits       map[int]statics.Check // of lines and joints of the result
}

func New(r session.Result, s *sheet.Sheet, f *Fresh) Builder {
	b := Builder{Result: r, Typed: s, fresh: f}
	for _, e := range b.Faults() {
		put(&b.bad, e.Ref, true)
	}
	if p := b.Latest; p != nil {
		b.pointAt = make(map[string]int, len(p.Points))
		for i := range p.Points {
			b.pointAt[p.Points[i].Name] = i
		}
		b.lineAt = index(p.Lines)
		for i := range p.Joints {
			put(&b.jointAt, p.Joints[i].Name, i)
		}
		for _, u := range p.Unknowns {
			if u.Joint >= 0 {
				put(&b.brings, u.Joint, append(b.brings[u.Joint], u.Name))
			}
		}
	}
	if b.Solution != nil {
		for _, c := range b.Solution.Checks {
			switch {
			case c.Kind != statics.CheckLimit:
			case c.Line >= 0:
				put(&b.limits, c.Line, c)
			default:
				put(&b.jointLimits, c.Joint, c)
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

// put puts a value into a map, which is made with its first one: most sheets need few of them.
func put[K comparable, V any](m *map[K]V, k K, v V) {
	if *m == nil {
		*m = map[K]V{}
	}
	(*m)[k] = v
}

func index(lines []problem.Line) map[string]int {
	at := make(map[string]int, len(lines))
	for i := range lines {
		at[lines[i].Name] = i
	}
	return at
}

// result is the look of what follows from the cells.
func (b Builder) result() grid.Style { return b.or(theme.Computed) }

// or is a look, unless the result is stale.
func (b Builder) or(look grid.Style) grid.Style {
	if b.Stale {
		return theme.Stale
	}
	return look
}

// name is the slot of a row's name. An error of the row as a whole shows there.
func (b Builder) name(table string, row sheet.Row) Slot {
	s := Slot{Text: row.Name, Does: SetName, Ref: sheet.Ref{Table: table, Row: row.Name}, look: theme.Name}
	if b.bad[s.Ref] {
		_, plain := row.Cell("")
		s.Bad = !plain
	}
	return s
}

// cell is the slot of the first of the keys that the row has, or of the last.
func (b Builder) cell(table string, row sheet.Row, names ...string) Slot {
	s := Slot{Does: SetCell}
	for _, key := range names {
		s.Ref = sheet.Ref{Table: table, Row: row.Name, Key: key}
		if c, ok := row.Cell(key); ok {
			s.Text = c.Text
			if !c.Readable {
				s.Does, s.look = Nothing, theme.Dim
			}
			break
		}
	}
	_, plain := row.Cell("")
	s.Bad = b.bad[s.Ref] && (s.Ref.Key != "" || plain)
	return s
}

// rare is the slot of a key that few rows have.
func (b Builder) rare(table string, row sheet.Row, names ...string) Slot {
	s := b.cell(table, row, names...)
	s.Rare = s.Text == ""
	return s
}

func (b Builder) computed(text string) Slot { return Slot{Text: text, look: b.result()} }

// rows gives a table's rows, with the one that has no name yet in its place.
func (b Builder) rows(table string) []sheet.Row {
	return b.Typed.Table(table).Rows
}

// read gives a table's rows that are read: all but the private ones.
func (b Builder) read(table string) []sheet.Row { return problem.Rows(b.Typed, table) }

// insert puts the row without a name behind the one it is to follow.
func (b Builder) insert(t *Table, name string) {
	if b.fresh == nil || b.fresh.Table != name {
		return
	}
	r := Record{Row: sheet.Ref{Table: name}, Slots: make([]Slot, len(t.Columns))}
	does := SetName
	if name == "" {
		does = SetAsked
	}
	r.Slots[0] = Slot{Does: does, Ref: r.Row, look: theme.Name}
	at := min(max(b.fresh.At, 0), len(t.Records))
	t.Records = append(t.Records[:at:at], append([]Record{r}, t.Records[at:]...)...)
}
