package edit

import (
	"strings"

	"trivet/mechanics/problem"
	"trivet/mechanics/say"
	"trivet/mechanics/sheet"
	"trivet/tui/cells"
	"trivet/tui/layout"
	"trivet/units"
)

// component is a force that a support exerts along an axis, or along its normal.
type component struct{ name, along string }

// reaction gives the support whose unknown is under the cursor, and what it exerts, where forces
// can take its place: it stands on the ground, and exerts neither moment nor friction.
func (e *Editor) reaction(w Where) (row sheet.Row, of []component, ok bool) {
	r, there := e.record(w.Pane)
	p := e.Made.Latest
	if !there || p == nil || w.Pane != layout.Unknowns || r.Row.Table != "joints" {
		return row, nil, false
	}
	if row, ok = w.Sheet.Table("joints").Row(r.Row.Row); !ok {
		return row, nil, false
	}
	for _, j := range p.Joints {
		if j.Name != row.Name {
			continue
		}
		if j.Second != problem.Ground || j.HasFriction || j.HasFace || len(j.Held) > 1 && row.Text("limit") != "" {
			return row, nil, false
		}
		for _, h := range j.Held {
			c := component{j.Name + h.Suffix, row.Text("normal")}
			if c.along == "" {
				c.along = problem.Axis(h.D)
			}
			if h.Moment || c.along == "" || row.Text("normal") != "" && len(j.Held) > 1 {
				return row, nil, false
			}
			of = append(of, c)
		}
	}
	return row, of, len(of) > 0
}

// openReaction offers that the reaction under the cursor is known.
func (e *Editor) openReaction(w Where) bool {
	_, of, ok := e.reaction(w)
	if !ok {
		return false
	}
	known := "known: the force " + of[0].name + " replaces the support"
	if len(of) > 1 {
		known = "known: forces " + say.And(namesOf(of)...) + " replace the support"
	}
	slot, _ := e.Slot(w.Pane)
	r, _ := e.record(w.Pane)
	slot.Does, slot.Ref = cells.SetReaction, sheet.Ref{Table: r.Row.Table, Row: r.Slots[0].Text}
	e.Cell = e.Made.OpenReaction(slot, known)
	return true
}

func namesOf(of []component) (names []string) {
	for _, c := range of {
		names = append(names, c.name)
	}
	return names
}

// writeReaction puts forces in the place of a support, of which one has the magnitude that is known.
func (e *Editor) writeReaction(w Where, text string) Outcome {
	row, of, ok := e.reaction(w)
	if text = strings.TrimSpace(text); !ok || text == "" || text == Unknown {
		return Outcome{Sheet: w.Sheet}
	}
	if _, err := units.Parse(text); err != nil {
		return Outcome{Says: err.Error(), Bad: true}
	}
	at := row.Text("at")
	if at == "" {
		at = row.Name
	}
	edits := []sheet.Edit{sheet.DeleteRow{Table: "joints", Row: row.Name}}
	for _, c := range of {
		texts := []sheet.KeyText{{Key: "kind", Text: problem.Force.String()}, {Key: "at", Text: at}, {Key: "along", Text: c.along}, {Key: "magnitude", Text: Unknown}}
		if c.name == e.Cell.Slot.Ref.Row {
			texts[3].Text = text
		}
		for _, key := range []string{"on", "limit"} {
			if own := row.Text(key); own != "" {
				texts = append(texts, sheet.KeyText{Key: key, Text: own})
			}
		}
		edits = append(edits, sheet.AddRow{Table: "lines", Name: c.name, Cells: texts})
	}
	o := w.do(edits...)
	if o.Sheet != nil {
		o.Says = "in place of the support " + row.Name + ": " + say.And(namesOf(of)...) + ", among the force lines (f7 f); ctrl+z undoes it"
	}
	return o
}
