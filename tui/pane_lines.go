package tui

import (
	"slices"
	"strings"

	"trivet/mechanics/problem"
	"trivet/mechanics/sheet"
	"trivet/tui/results"
	"trivet/tui/theme"
	"trivet/units"
)

// lines is the pane of the force lines: what each is, where it runs or acts, and
// how large it is.
func (b builder) lines() table {
	t := table{columns: []column{
		{head: "line", width: 5, limit: 9}, {head: "kind", width: 7}, {head: "through", width: 10, grow: 2}, {head: "direction", width: 10, grow: 2},
		{head: "magnitude", width: 9, grow: 1}, {head: b.unitHead("|r|"), width: 8, right: true}, {head: "u", width: 24, grow: 1},
		{head: "stiffness", width: 9}, {head: "natural", width: 8}, {head: "on", width: 8},
	}}
	rows := b.rows("lines")
	belts := slices.ContainsFunc(rows, func(row sheet.Row) bool { return len(problem.LinesOf(row)) > 1 })
	if belts {
		t.columns = append(t.columns, column{head: "wrap", width: 8}, column{head: "friction", width: 8}, column{head: "tight", width: 6})
	}
	made := t.room(len(rows))
	for i, row := range rows {
		size := b.cell("lines", row, "magnitude")
		if size.text == "" {
			size.text, size.look = "?", theme.Dim
			if _, sprung := row.Cell("stiffness"); sprung {
				size.text = ""
			}
			if _, parts := row.Cell("components"); parts {
				size.text = ""
			}
		}
		size.need = !takesPath(row)
		r, u := b.course(row.Name)
		s := made(i)
		s[0], s[1], s[2], s[3] = b.name("lines", row), b.cell("lines", row, "kind"), b.through(row), b.direction(row)
		s[4], s[5], s[6] = size, b.computed(r), b.computed(u)
		s[7], s[8], s[9] = b.cell("lines", row, "stiffness"), b.cell("lines", row, "natural"), b.cell("lines", row, "on")
		if belts {
			s[10], s[11], s[12] = b.cell("lines", row, "wrap"), b.cell("lines", row, "friction"), b.cell("lines", row, "tight")
		}
		t.records = append(t.records, record{row: sheet.Ref{Table: "lines", Row: row.Name}, slots: s})
	}
	b.insert(&t, "lines")
	return t
}

// through is the slot of a line's path, or of the point it acts at. A row that
// has neither yet gets the one its kind takes.
func (b builder) through(row sheet.Row) slot {
	key := "path"
	path, _ := row.Cell("path")
	if at, ok := row.Cell("at"); path.Text == "" && (ok && at.Text != "" || !takesPath(row)) {
		key = "at"
	}
	s := b.cell("lines", row, key)
	s.need = true
	return s
}

// direction is the slot of a line's components, or of its direction: without a
// path it has one of them, and a weight has its own.
func (b builder) direction(row sheet.Row) slot {
	s := b.cell("lines", row, "components", "along")
	kind, _ := row.Cell("kind")
	s.need = !takesPath(row) && strings.TrimSpace(kind.Text) != problem.Weight.String()
	return s
}

// takesPath tells the kinds that run through points; what is no kind yet counts
// as one of them.
func takesPath(row sheet.Row) bool {
	kind, _ := row.Cell("kind")
	for _, k := range problem.Kinds() {
		if k.Name == strings.TrimSpace(kind.Text) {
			return k.Path
		}
	}
	return true
}

// course gives |r| and u of a line, where there is one of each.
func (b builder) course(name string) (r, u string) {
	p := b.Latest
	i, ok := b.lineAt[name]
	if !ok || !p.Lines[i].OK || len(p.Lines[i].Legs) == 0 {
		return "", ""
	}
	l := p.Lines[i]
	length := 0.0
	for _, segment := range l.Legs {
		length += segment.Length
	}
	if length > 0 {
		r = results.Bare(p, length, units.Length)
	}
	if len(l.Legs) == 1 {
		u = results.Unit(p, l.Legs[0].U)
	}
	return r, u
}
