package tui

import (
	"trivet/mechanics/problem"
	"trivet/mechanics/sheet"
	"trivet/tui/results"
	"trivet/units"
)

// points is the pane of the points: where each is, and what it belongs to.
func (b builder) points() table {
	t := table{columns: []column{
		{head: "point", width: 7, limit: 10}, {head: "at", width: 17, grow: 3}, {head: "on", width: 9, grow: 1},
		{head: b.lengthHead(), width: 16, grow: 2},
	}}
	rows := b.rows("points")
	made := t.room(len(rows))
	for i, row := range rows {
		s := made(i)
		s[0], s[1], s[2], s[3] = b.name("points", row), b.value("points", row, "at"), b.cell("points", row, "on"), b.computed(b.coordinates(row.Name))
		t.records = append(t.records, record{row: sheet.Ref{Table: "points", Row: row.Name}, slots: s})
	}
	b.insert(&t, "points")
	return t
}

func (b builder) lengthHead() string {
	if b.Latest != nil && b.Latest.Planar {
		return b.unitHead("x, y")
	}
	return b.unitHead("x, y, z")
}

// unitHead is a column's head with the unit of length.
func (b builder) unitHead(s string) string {
	if b.Latest == nil || b.Latest.Units.Length.Symbol == "" {
		return s
	}
	return s + " (" + b.Latest.Units.Length.Symbol + ")"
}

// coordinates are a point's, where its cell reads.
func (b builder) coordinates(name string) string {
	if q, ok := b.point(name); ok {
		return results.Vector(b.Latest, q.At, units.Length)
	}
	return ""
}

func (b builder) point(name string) (problem.Point, bool) {
	i, ok := b.pointAt[name]
	if !ok || !b.Latest.Points[i].OK {
		return problem.Point{}, false
	}
	return b.Latest.Points[i], true
}
