package cells

import (
	"slices"

	"trivet/mechanics/problem"
	"trivet/mechanics/sheet"
	"trivet/tui/results"
	"trivet/tui/theme"
	"trivet/units"
)

// Lines is the pane of the force lines: what each is, where it runs or acts, and
// how large it is.
func (b Builder) Lines() Table {
	t := Table{Columns: []Column{
		{Head: "line", Width: 5, Limit: 9}, {Head: "kind", Width: 7}, {Head: "through", Width: 10, Grow: 2}, {Head: "direction", Width: 10, Grow: 2},
		{Head: "magnitude", Width: 9, Grow: 1}, {Head: b.unitHead("|r|"), Width: 8, right: true}, {Head: "u", Width: 24, Grow: 1},
		{Head: "stiffness", Width: 9}, {Head: "natural", Width: 8}, {Head: "on", Width: 8},
	}}
	rows := b.rows("lines")
	belts := slices.ContainsFunc(rows, func(row sheet.Row) bool { return len(problem.LinesOf(row)) > 1 })
	if belts {
		t.Columns = append(t.Columns, Column{Head: "wrap", Width: 8}, Column{Head: "friction", Width: 8}, Column{Head: "tight", Width: 6})
	}
	made := t.room(len(rows))
	for i, row := range rows {
		size := b.cell("lines", row, "magnitude")
		if size.Text == "" {
			size.Text, size.look = "?", theme.Dim
			if _, sprung := row.Cell("stiffness"); sprung {
				size.Text = ""
			}
			if _, parts := row.Cell("components"); parts {
				size.Text = ""
			}
		}
		size.Need = !takesPath(row)
		size.Rare = size.Text == ""
		r, u := b.course(row.Name)
		s := made(i)
		s[0], s[1], s[2], s[3] = b.name("lines", row), b.cell("lines", row, "kind"), b.through(row), b.direction(row)
		s[4], s[5], s[6] = size, b.computed(r), b.computed(u)
		spring, belt := row.Text("kind") == problem.SpringKind.String(), row.Text("kind") == problem.BeltKind.String()
		s[7], s[8], s[9] = b.rare("lines", row, "stiffness"), b.rare("lines", row, "natural"), b.rare("lines", row, "on")
		s[7].Rare, s[8].Rare = s[7].Rare && !spring, s[8].Rare && !spring
		if belts {
			s[10], s[11], s[12] = b.rare("lines", row, "wrap"), b.rare("lines", row, "friction"), b.rare("lines", row, "tight")
			s[11].Rare = s[11].Rare && !belt
		}
		t.Records = append(t.Records, Record{Row: sheet.Ref{Table: "lines", Row: row.Name}, Slots: s})
	}
	b.insert(&t, "lines")
	t.align()
	return t
}

// through is the slot of a line's path, or of the point it acts at. A row that
// has neither yet gets the one its kind takes.
func (b Builder) through(row sheet.Row) Slot {
	key := "path"
	if row.Text("path") == "" && (row.Text("at") != "" || !takesPath(row)) {
		key = "at"
	}
	s := b.cell("lines", row, key)
	s.Need = true
	return s
}

// direction is the slot of a line's components, or of its direction: without a
// path it has one of them, and a weight has its own.
func (b Builder) direction(row sheet.Row) Slot {
	s := b.rare("lines", row, "components", "along")
	s.Need = !takesPath(row) && row.Text("kind") != problem.Weight.String()
	s.Rare = s.Rare && !s.Need
	return s
}

// LineNamed finds a kind of line by its name.
func LineNamed(name string) (problem.KindInfo, bool) {
	for _, k := range problem.Kinds() {
		if k.Name == name {
			return k, true
		}
	}
	return problem.KindInfo{}, false
}

// takesPath tells the kinds that run through points; what is no kind yet counts
// as one of them.
func takesPath(row sheet.Row) bool {
	k, known := LineNamed(row.Text("kind"))
	return k.Path || !known
}

// course gives |r| and u of a line, where there is one of each.
func (b Builder) course(name string) (r, u string) {
	p := b.Latest
	i, ok := b.lineAt[name]
	if b.Bare || !ok || !p.Lines[i].OK || len(p.Lines[i].Legs) == 0 {
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
