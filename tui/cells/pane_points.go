package cells

import (
	"strings"

	"trivet/mechanics/problem"
	"trivet/mechanics/sheet"
	"trivet/tui/results"
	"trivet/units"
)

// Points is the pane of the points: where each is, and what it belongs to.
func (b Builder) Points() Table {
	heads := b.lengthHeads()
	t := Table{Columns: []Column{
		{Head: "point", Width: 7, Limit: 10}, {Head: "at", Width: 17, Grow: 3, Comes: 3}, {Head: "on", Width: 9, Grow: 1},
		{Head: strings.Join(heads, ", "), Grow: 1, right: true, parts: heads},
	}}
	rows := b.rows("points")
	made := t.room(len(rows))
	for i, row := range rows {
		s := made(i)
		s[0], s[1], s[2], s[3] = b.name("points", row), b.value("points", row, "at"), b.cell("points", row, "on"), b.placed(row.Name)
		t.Records = append(t.Records, Record{Row: sheet.Ref{Table: "points", Row: row.Name}, Slots: s})
	}
	b.insert(&t, "points")
	t.align()
	return t
}

// lengthHeads are the heads over a point's coordinates, the last with the unit.
func (b Builder) lengthHeads() []string {
	if b.planar() {
		return []string{"x", b.unitHead("y")}
	}
	return []string{"x", "y", b.unitHead("z")}
}

// placed is the slot of a point's coordinates, where its cell reads.
func (b Builder) placed(name string) Slot {
	q, ok := b.point(name)
	if !ok {
		return b.computed("")
	}
	parts := results.Components(b.Latest, q.At, units.Length)
	s := b.computed(results.Tuple(parts))
	s.parts = parts
	return s
}

// unitHead is a column's head with the unit of length.
func (b Builder) unitHead(s string) string {
	if b.Latest == nil || b.Latest.Units.Length.Symbol == "" {
		return s
	}
	return s + " (" + b.Latest.Units.Length.Symbol + ")"
}

func (b Builder) point(name string) (problem.Point, bool) {
	i, ok := b.pointAt[name]
	if !ok || !b.Latest.Points[i].OK {
		return problem.Point{}, false
	}
	return b.Latest.Points[i], true
}
