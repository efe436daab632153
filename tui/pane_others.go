package tui

import (
	"slices"

	"trivet/mechanics/problem"
	"trivet/mechanics/sheet"
	"trivet/tui/theme"
)

// otherTable is a table whose rows stand below the force lines, with the keys
// that go into the same columns.
type otherTable struct {
	table, word              string // the word stands for the kind where the rows have none
	through, direction, size []string
}

var others = []otherTable{
	{"joints", "", []string{"on"}, nil, []string{"friction"}},
	{"couples", "couple", []string{"on"}, []string{"components", "about"}, []string{"magnitude"}},
	{"distributed", "load", []string{"path"}, []string{"along"}, []string{"magnitude"}},
	{"bodies", "body", []string{"centre"}, []string{"about"}, []string{"weight"}},
}

func (b builder) otherLoad(o otherTable, row sheet.Row, columns int) record {
	r := record{row: sheet.Ref{Table: o.table, Row: row.Name}, slots: make([]slot, columns)}
	kind := slot{text: o.word, look: theme.Dim}
	direction := o.direction
	if o.word == "" {
		kind = b.cell(o.table, row, "kind")
		direction = []string{"axis", b.needs(kind.text)}
	}
	copy(r.slots, []slot{b.name(o.table, row), kind, b.cell(o.table, row, o.through...), b.cell(o.table, row, direction...), b.cell(o.table, row, o.size...)})
	return r
}

// needs is the direction that a kind of joint has to be given.
func (b builder) needs(kind string) string {
	for _, j := range problem.Joints() {
		if j.Name != kind && !slices.Contains(j.Aliases, kind) {
			continue
		}
		holds := j.Space
		if b.latest != nil && b.latest.Planar {
			holds = j.Plane
		}
		if holds.Needs != "" {
			return holds.Needs
		}
	}
	return "normal"
}
