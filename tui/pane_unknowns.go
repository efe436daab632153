package tui

import (
	"strings"

	"trivet/mechanics/problem"
	"trivet/mechanics/sheet"
	"trivet/mechanics/statics"
	"trivet/tui/results"
	"trivet/tui/theme"
	"trivet/units"
)

// unknowns is the pane of the magnitudes to be found: each member with its
// value, sense and use, then other unknowns, then the results asked for.
func (b builder) unknowns() table {
	t := table{columns: []column{
		{head: "unknown", width: 8, limit: 14}, {head: "typed", width: 5, grow: 1}, {head: "value", width: 9, grow: 1, right: true}, {head: "sense", width: 5},
		{head: "limit", width: 6, grow: 1}, {head: "used", width: 5, right: true}, {head: "your answer", width: 11, grow: 1}, {head: "right", width: 5},
	}}
	rows := b.read("lines")
	made := t.room(len(rows))
	shown := make(map[string]bool, len(rows))
	for i, row := range rows {
		if b.isUnknown(row) {
			for k, name := range problem.LinesOf(row) {
				s := made(i)
				if k > 0 {
					s = make([]slot, len(t.columns))
				}
				shown[name] = true
				t.records = append(t.records, b.member(row, name, s))
			}
		}
	}
	if b.Problem != nil {
		for i, u := range b.Problem.Unknowns {
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

// member is the row of a line, in the cells made for it: that of its row, or a part of its belt.
func (b builder) member(row sheet.Row, line string, s []slot) record {
	size := b.cell("lines", row, "magnitude")
	if _, sprung := row.Cell("stiffness"); size.text == "" && !sprung {
		size.text, size.look = "?", theme.Dim
	}
	name := slot{text: line, does: setName, ref: b.named(line), look: theme.Name}
	value, sense, use := slot{look: b.result()}, slot{look: b.result()}, slot{look: b.result()}
	if b.Solution != nil {
		if i, ok := b.resultAt[line]; ok && b.Problem.Lines[i].OK {
			value.text = b.magnitude(i)
			sense = b.sense(i)
			use = b.use(b.limits[i])
		}
	}
	s[0], s[1], s[2], s[3], s[4], s[5] = name, size, value, sense, b.cell("lines", row, "limit"), use
	s[6], s[7] = b.answer(line)
	return record{row: sheet.Ref{Table: "lines", Row: row.Name}, slots: s}
}

// other is the row of an unknown that is no line's own magnitude.
func (b builder) other(i int) record {
	u := b.Problem.Unknowns[i]
	value := slot{look: b.result()}
	if b.Solution != nil && i < len(b.Solution.X) {
		value.text, value.bad = results.Found(&b.Result, i), b.Solution.X[i].Broken
	}
	r := record{slots: []slot{{text: u.Name, look: theme.Name}, fixed("tied"), value, {look: b.result()}, {}, {}, {}, {}}}
	switch {
	case u.Joint >= 0 && u.Joint < len(b.Problem.Joints):
		b.ofJoint(&r, i)
	case u.Dim == units.Moment:
		r.slots[1] = fixed("couple")
	}
	r.slots[0].does, r.slots[0].ref = setName, b.named(u.Name)
	if r.row.Table == "" && r.slots[0].ref.Table != "" {
		r.row = r.slots[0].ref
	}
	r.slots[6], r.slots[7] = b.answer(u.Name)
	return r
}

// named is what an unknown's name belongs to: a line, a couple, or, without a
// table, itself.
func (b builder) named(unknown string) sheet.Ref {
	for _, table := range []string{"lines", "couples"} {
		if _, ok := b.s.Table(table).Row(unknown); ok {
			return sheet.Ref{Table: table, Row: unknown}
		}
	}
	return sheet.Ref{Row: unknown}
}

// ofJoint fills in the row of a joint's unknown. What belongs to the whole joint,
// its limit, stands with its first.
func (b builder) ofJoint(r *record, i int) {
	j := &b.Problem.Joints[b.Problem.Unknowns[i].Joint]
	r.row = j.Ref
	r.slots[1] = fixed(j.Kind.String())
	first := i == 0 || b.Problem.Unknowns[i-1].Joint != b.Problem.Unknowns[i].Joint
	if row, ok := b.s.Table("joints").Row(j.Name); ok && first {
		r.slots[4] = b.cell("joints", row, "limit")
	}
	if b.Solution == nil {
		return
	}
	if first {
		r.slots[5] = b.use(b.jointLimits[b.Problem.Unknowns[i].Joint])
	}
	if x := b.Solution.X[i]; j.Kind.Info().PushOnly && first && x.Fixed && x.Value != 0 {
		r.slots[3].text = map[bool]string{true: "push", false: "pull"}[x.Value > 0]
		r.slots[3].bad = x.Broken
	}
}

// asks is the row of a result that the sheet asks for.
func (b builder) asks(name string, word int) record {
	n := slot{text: name, does: setAsked, word: word, ref: sheet.Ref{Table: "", Row: "asked"}, look: theme.Name}
	value := slot{look: b.result()}
	if p := b.Latest; p != nil {
		if _, err := problem.ParseQuery(p, name); err != nil && len(b.Errs) > 0 {
			n.bad = true
		}
	}
	if p := b.Problem; p != nil && b.Solution != nil && b.Solution.Verdict != statics.Unreadable {
		if q, err := problem.ParseQuery(p, name); err == nil {
			if v, err := b.Solution.Evaluate(q); err != nil {
				value.text = "none"
			} else {
				value.text = results.Format(p, v, q.Dim)
			}
		}
	}
	answer, met := b.answer(name)
	return record{row: sheet.Ref{Table: "", Row: "asked"}, slots: []slot{n, {}, value, {}, {}, {}, answer, met}}
}
