package tui

import (
	"strings"

	"trivet/mechanics/problem"
	"trivet/mechanics/sheet"
	"trivet/mechanics/statics"
	"trivet/tui/theme"
)

// unknowns is the pane of the magnitudes to be found: each member with its
// value, sense and use, then other unknowns, then the results asked for.
func (b builder) unknowns() table {
	t := table{columns: []column{
		{head: "unknown", width: 8, most: 14}, {head: "size", width: 5, grow: 1}, {head: "value", width: 9, grow: 1, right: true}, {head: "sense", width: 5},
		{head: "limit", width: 6, grow: 1}, {head: "use", width: 5, right: true}, {head: "own answer", width: 10, grow: 1}, {head: "met", width: 4},
	}}
	shown := map[string]bool{}
	for _, row := range b.rows("lines") {
		if b.isUnknown(row) {
			shown[row.Name] = true
			t.records = append(t.records, b.member(row))
		}
	}
	if b.problem != nil {
		for i, u := range b.problem.Unknowns {
			if !shown[u.Name] {
				shown[u.Name] = true
				t.records = append(t.records, b.other(i))
			}
		}
	}
	asked := b.asked()
	for i, word := range asked {
		if !shown[word.text] {
			t.records = append(t.records, b.asks(word.text, i))
		}
	}
	b.insert(&t, "")
	return t
}

// isUnknown tells whether a line has its row here: what holds, and each force
// whose magnitude is asked for.
func (b builder) isUnknown(row sheet.Row) bool {
	kind, _ := row.Cell("kind")
	for _, k := range problem.Kinds() {
		if k.Name == kind.Text && (k.Path || k.Sense == problem.PressOnly) {
			return true
		}
	}
	size, ok := row.Cell("magnitude")
	_, parts := row.Cell("components")
	return kind.Text != "" && !parts && (!ok || strings.TrimSpace(size.Text) == "?" || strings.TrimSpace(size.Text) == "")
}

// member is the row of a line.
func (b builder) member(row sheet.Row) record {
	size := b.cell("lines", row, "magnitude")
	if _, sprung := row.Cell("stiffness"); size.text == "" && !sprung {
		size.text, size.look = "?", theme.Dim
	}
	name := slot{text: row.Name, look: theme.Name}
	value, sense, use := slot{look: b.result()}, slot{look: b.result()}, slot{look: b.result()}
	if b.solution != nil {
		if i, ok := b.resultAt[row.Name]; ok && b.problem.Lines[i].OK {
			value.text = b.magnitude(i)
			sense = b.sense(i)
			use = b.use(i)
		}
	}
	answer, met := b.answer(row.Name)
	return record{row: sheet.Ref{Table: "lines", Row: row.Name}, slots: []slot{name, size, value, sense, b.cell("lines", row, "limit"), use, answer, met}}
}

// other is the row of an unknown that is no line's own magnitude.
func (b builder) other(i int) record {
	u := b.problem.Unknowns[i]
	value := slot{look: b.result()}
	if b.solution != nil && i < len(b.solution.X) {
		value.text, value.bad = b.found(i), b.solution.X[i].Broken
	}
	of, row := "tied", sheet.Ref{}
	if u.Joint >= 0 && u.Joint < len(b.problem.Joints) {
		of, row = "joint", b.problem.Joints[u.Joint].Ref
	}
	answer, met := b.answer(u.Name)
	return record{row: row, slots: []slot{{text: u.Name, look: theme.Name}, {text: of, look: theme.Dim}, value, {}, {}, {}, answer, met}}
}

// asks is the row of a result that the sheet asks for.
func (b builder) asks(name string, word int) record {
	n := slot{text: name, does: setAsked, word: word, ref: sheet.Ref{Table: "", Row: "asked"}, look: theme.Name}
	value := slot{look: b.result()}
	if p := b.latest; p != nil {
		if _, err := problem.ParseQuery(p, name); err != nil && len(b.errs) > 0 {
			n.bad = true
		}
	}
	if p := b.problem; p != nil && b.solution != nil && b.solution.Verdict != statics.Unreadable {
		if q, err := problem.ParseQuery(p, name); err == nil {
			if v, err := b.solution.Evaluate(q); err != nil {
				value.text = "none"
			} else {
				value.text = format(p, v, q.Dim)
			}
		}
	}
	answer, met := b.answer(name)
	return record{row: sheet.Ref{Table: "", Row: "asked"}, slots: []slot{n, {}, value, {}, {}, {}, answer, met}}
}
