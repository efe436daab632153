package cells

import (
	"strconv"

	"trivet/mechanics/problem"
	"trivet/mechanics/sheet"
	"trivet/tui/results"
	"trivet/tui/theme"
	"trivet/units"
)

// What the sheet says of itself, in the order of the pane. The value shown where
// it is left out stands in the last column.
var sheetRows = []string{"title", "statement", "plane", "up", "g", "figures", "asked", "lesson"}

var unitRows = []string{"length", "force", "angle", "mass"}

// Given is the pane of the named values.
func (b Builder) Given() Table {
	t := Table{empty: "empty: ctrl+n adds a given", Columns: []Column{{Head: "name", Width: 9, Limit: 12}, {Head: "value", Width: 13, Grow: 3}, {Head: "is", Width: 8, Grow: 1}, {Head: "range", Width: 8, Grow: 1}}}
	rows := b.rows("given")
	made := t.room(len(rows))
	for i, row := range rows {
		s := made(i)
		s[0], s[1], s[2], s[3] = b.name("given", row), b.value("given", row, "value"), b.computed(b.givenValue(row.Name)), b.rare("given", row, "range")
		t.Records = append(t.Records, Record{Row: sheet.Ref{Table: "given", Row: row.Name}, Slots: s})
	}
	b.insert(&t, "given")
	return t
}

// Sheet is the pane of what the sheet says of itself and of its units.
func (b Builder) Sheet() Table {
	t := Table{Columns: []Column{{Head: "name", Width: 9, Limit: 12}, {Head: "value", Width: 13, Grow: 3}, {Head: "is", Width: 12, Grow: 1}}}
	made := t.room(len(sheetRows) + len(unitRows))
	set := func(table, name, label string) {
		row, ok := b.Typed.Table(table).Row(name)
		if !ok {
			row = sheet.Row{Name: name}
		}
		s := made(len(t.Records))
		s[0], s[1], s[2] = Slot{Text: label, look: theme.Dim}, b.cell(table, row, ""), b.computed(b.settingValue(name))
		t.Records = append(t.Records, Record{Row: sheet.Ref{Table: table, Row: name}, Slots: s})
	}
	for _, name := range sheetRows {
		set("", name, name)
	}
	for _, name := range unitRows {
		set("units", name, name+" in")
	}
	return t
}

// value is the slot of a row's plain value, or of its usual key.
func (b Builder) value(table string, row sheet.Row, usual string) Slot {
	if _, ok := row.Cell(usual); ok {
		return b.cell(table, row, usual)
	}
	return b.cell(table, row, "")
}

func (b Builder) givenValue(name string) string {
	if b.Latest == nil {
		return ""
	}
	for _, g := range b.Latest.Givens {
		if g.Name == name && g.Value.N == 1 && g.Value.Finite() {
			if g.Value.Dim == units.Number {
				return units.Figures(g.Value.V[0], b.Latest.Figures)
			}
			return results.Format(b.Latest, g.Value.V[0], g.Value.Dim)
		}
	}
	return ""
}

// settingValue is what is taken, written or not.
func (b Builder) settingValue(name string) string {
	p := b.Latest
	if p == nil {
		return ""
	}
	switch name {
	case "plane":
		if p.Planar {
			return "in the plane"
		}
		return "in space"
	case "up":
		return problem.Axis(p.Up)
	case "g":
		return results.Format(p, p.G, units.Acceleration)
	case "figures":
		return strconv.Itoa(p.Figures)
	case "length":
		return p.Units.Length.Name
	case "force":
		return p.Units.Force.Name
	case "angle":
		return p.Units.Angle.Name
	case "mass":
		return p.Units.Mass.Name
	}
	return ""
}
