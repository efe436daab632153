package cells

import (
	"math"

	"trivet/mechanics/problem"
	"trivet/mechanics/sheet"
	"trivet/mechanics/statics"
	"trivet/tui/results"
	"trivet/tui/theme"
	"trivet/units"
)

// Unknowns is the pane of the magnitudes to be found: each member with its
// value, sense and use, then other unknowns, then the results asked for.
func (b Builder) Unknowns() Table {
	t := Table{Columns: []Column{
		{Head: "unknown", Width: 8, Limit: 14}, {Head: "typed", Width: 5, Grow: 1, Late: true}, {Head: b.forceHead(), Width: max(len(b.forceHead()), 9), right: true}, {Head: "sense", Width: 5},
		{Head: "limit", Width: 6, Grow: 1}, {Head: "used", Width: 5, right: true}, {Head: "yours", Width: 8, Grow: 1}, {Head: "ok", Width: 2},
	}}
	rows := b.read("lines")
	made := t.room(len(rows))
	shown := make(map[string]bool, len(rows))
	for i, row := range rows {
		if b.isUnknown(row) {
			for k, name := range problem.LinesOf(row) {
				s := made(i)
				if k > 0 {
					s = make([]Slot, len(t.Columns))
				}
				shown[name] = true
				t.Records = append(t.Records, b.member(row, name, s))
			}
		}
	}
	if b.Problem != nil {
		for i, u := range b.Problem.Unknowns {
			if !shown[u.Name] {
				shown[u.Name] = true
				t.Records = append(t.Records, b.other(i))
			}
			if r, ok := b.resultant(i); ok {
				t.Records = append(t.Records, r)
			}
		}
	}
	asked, _ := b.Typed.Cell(sheet.Ref{Row: "asked"})
	for i, word := range problem.ResultNames(asked.Text) {
		if !shown[word.Text] {
			t.Records = append(t.Records, b.Asks(word.Text, i))
		}
	}
	b.insert(&t, "")
	t.align()
	return t
}

// forceHead is the head over the magnitudes, with the unit of those that are forces.
func (b Builder) forceHead() string {
	if b.Problem == nil || b.Problem.Units.Force.Symbol == "" {
		return "value"
	}
	return "value (" + b.Problem.Units.Force.Symbol + ")"
}

// isUnknown tells whether a line has its row here: what holds, and each force
// whose magnitude is asked for.
func (b Builder) isUnknown(row sheet.Row) bool {
	if k, known := LineNamed(row.Text("kind")); known && (k.Path || k.Sense == problem.PressOnly) {
		return true
	}
	size := row.Text("magnitude")
	_, parts := row.Cell("components")
	return row.Text("kind") != "" && !parts && (size == "?" || size == "")
}

// member is the row of a line, in the cells made for it: that of its row, or a part of its belt.
func (b Builder) member(row sheet.Row, line string, s []Slot) Record {
	size := b.cell("lines", row, "magnitude")
	if _, sprung := row.Cell("stiffness"); size.Text == "" && !sprung {
		size.Text, size.look = "?", theme.Dim
	}
	name := Slot{Text: line, Does: SetName, Ref: b.named(line), look: theme.Name}
	value, sense, use := Slot{look: b.result()}, Slot{look: b.result()}, Slot{look: b.result()}
	if b.Solution != nil {
		if i, ok := b.resultAt[line]; ok && b.Problem.Lines[i].OK {
			value.Text = b.magnitude(i)
			sense = b.sense(i)
			use = b.use(b.limits[i])
		}
	}
	s[0], s[1], s[2], s[3], s[4], s[5] = name, size, value, sense, b.cell("lines", row, "limit"), use
	s[6], s[7] = b.answer(line)
	return Record{Row: sheet.Ref{Table: "lines", Row: row.Name}, Slots: s}
}

// other is the row of an unknown that is no line's own magnitude.
func (b Builder) other(i int) Record {
	u := b.Problem.Unknowns[i]
	value := Slot{look: b.result()}
	if b.Solution != nil && i < len(b.Solution.X) {
		value.Text, value.Bad = b.found(i), b.Solution.X[i].Broken
	}
	r := Record{Slots: []Slot{{Text: u.Name, look: theme.Name}, fixed("tied"), value, {look: b.result()}, {}, {}, {}, {}}}
	switch {
	case u.Joint >= 0 && u.Joint < len(b.Problem.Joints):
		b.ofJoint(&r, i)
	case u.Dim == units.Moment:
		r.Slots[1] = fixed("couple")
	}
	r.Slots[0].Does, r.Slots[0].Ref = SetName, b.named(u.Name)
	if r.Row.Table == "" && r.Slots[0].Ref.Table != "" {
		r.Row = r.Slots[0].Ref
	}
	r.Slots[6], r.Slots[7] = b.answer(u.Name)
	return r
}

// named is what an unknown's name belongs to: a line, a couple, or, without a
// table, itself.
func (b Builder) named(unknown string) sheet.Ref {
	for _, table := range []string{"lines", "couples"} {
		if _, ok := b.Typed.Table(table).Row(unknown); ok {
			return sheet.Ref{Table: table, Row: unknown}
		}
	}
	return sheet.Ref{Row: unknown}
}

// resultant is the row of a joint's resultant, behind the last of its unknowns: its limit is that of
// no component. A joint with one component has none, and neither has one without a limit.
func (b Builder) resultant(i int) (r Record, ok bool) {
	joint := b.Problem.Unknowns[i].Joint
	if last := i+1 == len(b.Problem.Unknowns) || b.Problem.Unknowns[i+1].Joint != joint; joint < 0 || !last || b.components(joint) < 2 {
		return r, false
	}
	j := &b.Problem.Joints[joint]
	row, _ := b.Typed.Table("joints").Row(j.Name)
	limit := b.cell("joints", row, "limit")
	if limit.Text == "" {
		return r, false
	}
	value := Slot{look: b.result()}
	c := b.jointLimits[joint]
	if c.Bound > 0 && results.Finite(c.Value) && !c.Open {
		value.Text = b.worth(math.Abs(c.Value), units.Force)
	}
	return Record{Row: j.Ref, Slots: []Slot{{Text: j.Name, look: theme.Name}, fixed(j.Kind.String()), value, {look: b.result()}, limit, b.use(c), {}, {}}}, true
}

// components counts the forces among a joint's unknowns.
func (b Builder) components(joint int) (n int) {
	for _, u := range b.Problem.Unknowns {
		if u.Joint == joint && u.Dim == units.Force {
			n++
		}
	}
	return n
}

// ofJoint fills in the row of a joint's unknown. The limit of a joint with one component is that
// component's.
func (b Builder) ofJoint(r *Record, i int) {
	j := &b.Problem.Joints[b.Problem.Unknowns[i].Joint]
	r.Row = j.Ref
	r.Slots[1] = fixed(j.Kind.String())
	first := i == 0 || b.Problem.Unknowns[i-1].Joint != b.Problem.Unknowns[i].Joint
	if row, ok := b.Typed.Table("joints").Row(j.Name); ok && first && b.components(b.Problem.Unknowns[i].Joint) < 2 {
		r.Slots[4] = b.cell("joints", row, "limit")
	}
	if b.Solution == nil {
		return
	}
	if first && b.components(b.Problem.Unknowns[i].Joint) < 2 {
		r.Slots[5] = b.use(b.jointLimits[b.Problem.Unknowns[i].Joint])
	}
	if x := b.Solution.X[i]; j.Kind.Info().PushOnly && first && x.Fixed && x.Value != 0 {
		r.Slots[3].Text = map[bool]string{true: "push", false: "pull"}[x.Value > 0]
		r.Slots[3].Bad = x.Broken
	}
}

// Asks is the row of a result that the sheet asks for.
func (b Builder) Asks(name string, word int) Record {
	n := Slot{Text: name, Does: SetAsked, Word: word, Ref: sheet.Ref{Table: "", Row: "asked"}, look: theme.Name}
	value := Slot{look: b.result()}
	if p := b.Latest; p != nil {
		if _, err := problem.ParseQuery(p, name); err != nil && len(b.Errs) > 0 {
			n.Bad = true
		}
	}
	if p := b.Problem; p != nil && b.Solution != nil && b.Solution.Verdict != statics.Unreadable {
		if q, err := problem.ParseQuery(p, name); err == nil {
			if v, err := b.Solution.Evaluate(q); err != nil {
				value.Text = "none"
			} else {
				value.Text = b.worth(v, q.Dim)
			}
		}
	}
	answer, met := b.answer(name)
	return Record{Row: sheet.Ref{Table: "", Row: "asked"}, Slots: []Slot{n, {}, value, {}, {}, {}, answer, met}}
}
