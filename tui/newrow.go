package tui

import (
	tea "charm.land/bubbletea/v2"

	"trivet/mechanics/sheet"
	"trivet/tui/keys"
	"trivet/tui/layout"
)

// fresh is a row that has no name yet.
type fresh struct {
	table string // "" for a result to be asked for
	after string // the row it follows
	at    int    // where it shows
}

// newRow begins a row behind the one under the cursor; among the supports it
// asks first which kind it is to be.
func (m *Model) newRow() tea.Cmd {
	if m.focus == layout.Supports {
		m.choosing = true
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
	f := &fresh{table: table}
	records, at := m.tables[m.focus].records, m.at[m.focus].row
	same := at < len(records) && records[at].row.Table == f.table
	for i, r := range records {
		if r.row.Table == f.table && (!same || i <= at) {
			f.at, f.after = i+1, r.row.Row
		}
	}
	if f.table == "" || f.after == "" && f.at == 0 {
		f.at = len(records)
	}
	m.fresh = f
	m.rebuild()
	does := setName
	if f.table == "" {
		does = setAsked
	}
	m.at[m.focus].row, m.at[m.focus].col = f.at, 0
	m.edit = &edit{slot: slot{does: does, ref: sheet.Ref{Table: f.table}}, pick: unpicked}
	m.fit()
}

// onward goes to the next cell that the row cannot do without, else to the row
// below.
func (m *Model) onward() {
	t, at := m.tables[m.focus], &m.at[m.focus]
	if at.row < len(t.records) {
		for col := at.col + 1; col < len(t.records[at.row].slots); col++ {
			if s := t.records[at.row].slots[col]; s.need && s.does == setCell && m.raw(s) == "" {
				at.col = col
				return
			}
		}
	}
	if !m.follow() {
		at.row++
	}
}

// firstCell goes to a row, and to the first of its cells behind the name that can
// be typed in.
func (m *Model) firstCell(ref sheet.Ref) {
	t, at := m.tables[m.focus], &m.at[m.focus]
	for i, r := range t.records {
		if r.row != ref {
			continue
		}
		at.row, at.col = i, 1
		for at.col < len(t.columns)-1 && r.slots[at.col].does == nothing {
			at.col++
		}
	}
}
