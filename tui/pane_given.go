package tui

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

// given is the pane of the named values and of the sheet's own settings.
func (b builder) given() table {
	t := table{columns: []column{{head: "name", width: 9, limit: 12}, {head: "value", width: 13, grow: 3}, {head: "is", width: 8, grow: 1}, {head: "range", width: 8, grow: 1}}}
	for _, row := range b.rows("given") {
		t.records = append(t.records, record{
			row:   sheet.Ref{Table: "given", Row: row.Name},
			slots: []slot{b.name("given", row), b.value("given", row, "value"), b.computed(b.givenValue(row.Name)), b.cell("given", row, "range")},
		})
	}
	b.insert(&t, "given")
	for _, name := range sheetRows {
		row, ok := b.s.Table("").Row(name)
		if !ok {
			row = sheet.Row{Name: name}
		}
		t.records = append(t.records, b.setting("", name, "", row))
	}
	for _, name := range unitRows {
		row, ok := b.s.Table("units").Row(name)
		if !ok {
			row = sheet.Row{Name: name}
		}
		t.records = append(t.records, b.setting("units", name, name+" in", row))
	}
	return t
}

// value is the slot of a row's plain value, or of its usual key.
func (b builder) value(table string, row sheet.Row, usual string) slot {
	if _, ok := row.Cell(usual); ok {
		return b.cell(table, row, usual)
	}
	return b.cell(table, row, "")
}

// setting is a row whose name is fixed.
func (b builder) setting(table, name, label string, row sheet.Row) record {
	if label == "" {
		label = name
	}
	return record{
		row: sheet.Ref{Table: table, Row: name},
		slots: []slot{
			{text: label, look: theme.Dim},
			b.cell(table, row, ""),
			b.computed(b.settingValue(name)),
			{},
		},
	}
}

func (b builder) givenValue(name string) string {
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
func (b builder) settingValue(name string) string {
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
