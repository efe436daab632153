package tui

import (
	tea "charm.land/bubbletea/v2"

	"trivet/mechanics/sheet"
	"trivet/tui/cells"
	"trivet/tui/keys"
	"trivet/tui/layout"
)

// newRow begins a row behind the one under the cursor; among the supports it
// asks first which kind it is to be.
func (m *Model) newRow() tea.Cmd {
	switch m.focus {
	case layout.Supports:
		m.choosing = true
		return nil
	case layout.Sheet:
		m.say("the rows of the sheet are fixed. Try: f7 g, for a given", false)
		return nil
	}
	m.beginRow([...]string{layout.Given: "given", layout.Points: "points", layout.Lines: "lines", layout.Unknowns: ""}[m.focus])
	return nil
}

// chosen takes the answer to which kind of row to make.
func (m *Model) chosen(i keys.Intent) bool {
	table, ok := map[keys.Intent]string{keys.NewJoint: "joints", keys.NewBody: "bodies", keys.NewCouple: "couples", keys.NewLoad: "distributed"}[i]
	if !ok && i != keys.Cancel {
		return false
	}
	m.choosing = false
	if ok {
		m.beginRow(table)
	}
	return true
}

// beginRow begins a row of a table with its name: behind the row under the
// cursor, or behind the table's last where that is of another table.
func (m *Model) beginRow(table string) {
	f := &cells.Fresh{Table: table}
	records, at := m.tables[m.focus].Records, m.at[m.focus].Row
	same := at < len(records) && records[at].Row.Table == f.Table
	for i, r := range records {
		if r.Row.Table == f.Table && (!same || i <= at) {
			f.At, f.After = i+1, r.Row.Row
		}
	}
	if f.Table == "" || f.After == "" && f.At == 0 {
		f.At = len(records)
	}
	m.fresh = f
	does := cells.SetName
	if f.Table == "" {
		does = cells.SetAsked
	}
	m.at[m.focus].Row, m.at[m.focus].Col = f.At, 0
	m.edit = &cells.Edit{Slot: cells.Slot{Does: does, Ref: sheet.Ref{Table: f.Table}}, Pick: cells.Unpicked}
}

// onward goes to the next cell of the row; behind its last, to the first of the row below, and
// behind the last row to a new one. Where rows have a fixed place (the unknowns, the sheet's own
// settings) it goes down the column. The cells of a row that is being made open by themselves.
func (m *Model) onward() {
	t, at := m.tables[m.focus], &m.at[m.focus]
	if at.Row >= len(t.Records) {
		return
	}
	r := t.Records[at.Row]
	if m.focus == layout.Unknowns || r.Row.Table == "" || r.Row.Table == "units" {
		at.Row++
		return
	}
	if col, ok := r.Next(at.Col); ok {
		at.Col = col
		if r.Row == m.newest {
			m.openNext()
		}
		return
	}
	if last := at.Row == len(t.Records)-1 || t.Records[at.Row+1].Row.Table == ""; last || r.Row == m.newest {
		m.newest = r.Row
		m.beginRow(r.Row.Table)
		return
	}
	at.Row, at.Col = at.Row+1, 0
}

// openNext opens the cell come to in a row that is being made: a list shows, and what is typed
// replaces what stands there.
func (m *Model) openNext() {
	if s, ok := m.slot(); ok && s.Does == cells.SetCell {
		m.edit = m.made.Open(s, m.raw(s), true)
	}
}

// firstCell goes to a row, and to the first of its cells behind the name.
func (m *Model) firstCell(ref sheet.Ref) {
	t, at := m.tables[m.focus], &m.at[m.focus]
	for i, r := range t.Records {
		if r.Row == ref {
			at.Row = i
			at.Col, _ = r.Next(0)
		}
	}
}

// typedRow begins a row with a text where a pane of points or lines has none.
func (m *Model) typedRow(text string) bool {
	if m.focus != layout.Points && m.focus != layout.Lines || len(m.tables[m.focus].Records) > 0 {
		return false
	}
	m.newRow()
	m.edit.Insert(text)
	return true
}

// dropBlank leaves the row that began by itself, while it is blank, for a key that
// means something on the cells alone.
func (m *Model) dropBlank(key string) {
	if m.fresh == nil || m.edit == nil || m.edit.Text != "" || m.newest == (sheet.Ref{}) || m.newest.Table != m.fresh.Table {
		return
	}
	if _, typing := keys.Find(m.mode(), key); typing {
		return
	}
	if _, ok := keys.Find(keys.OnCells, key); !ok {
		return
	}
	m.edit, m.fresh, m.newest = nil, nil, sheet.Ref{}
	m.settle()
}
