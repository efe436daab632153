package tui

import (
	"strconv"
	"strings"

	tea "charm.land/bubbletea/v2"

	"trivet/mechanics/sheet"
	"trivet/tui/keys"
	"trivet/tui/layout"
)

// ownRow is the row of the sheet under the cursor, where the pane is its home.
func (m *Model) ownRow() (sheet.Ref, bool) {
	t, at := m.tables[m.focus], m.at[m.focus]
	switch {
	case at.Row >= len(t.Records):
		m.say("there is no row here", false)
	case m.focus == layout.Unknowns:
		m.say("the rows here follow from the force lines (f7 f) and the supports (f7 s): change them there", false)
	case t.Records[at.Row].Row.Table == "" || t.Records[at.Row].Row.Table == "units":
		m.say("this row has a fixed place", false)
	default:
		return t.Records[at.Row].Row, true
	}
	return sheet.Ref{}, false
}

// moveRow puts the row under the cursor before its neighbour above or behind the
// one below. The cursor goes with it.
func (m *Model) moveRow(i keys.Intent) tea.Cmd {
	ref, ok := m.ownRow()
	if !ok {
		return nil
	}
	rows := m.history.Current().Table(ref.Table).Rows
	at := 0
	for at < len(rows) && rows[at].Name != ref.Row {
		at++
	}
	after := ""
	switch {
	case i == keys.MoveUp && at == 0:
		m.say(ref.Row+" is the first of its table", false)
		return nil
	case i == keys.MoveDown && at >= len(rows)-1:
		m.say(ref.Row+" is the last of its table", false)
		return nil
	case i == keys.MoveDown:
		after = rows[at+1].Name
	case at > 1:
		after = rows[at-2].Name
	}
	return m.edited(ref, sheet.MoveRow{Table: ref.Table, Row: ref.Row, After: after})
}

// duplicateRow adds the row under the cursor once more under a free name, behind
// it, with the name open to be typed over.
func (m *Model) duplicateRow() tea.Cmd {
	ref, ok := m.ownRow()
	if !ok {
		return nil
	}
	as := freeName(m.history.Current(), ref.Row)
	cmd := m.edited(sheet.Ref{Table: ref.Table, Row: as}, sheet.DuplicateRow{Table: ref.Table, Row: ref.Row, As: as})
	if !m.note.Bad {
		m.say(as+" is "+ref.Row+" once more", false)
	}
	return cmd
}

// edited makes edits as one step and goes to a row.
func (m *Model) edited(to sheet.Ref, edits ...sheet.Edit) tea.Cmd {
	if err := m.history.Do(edits...); err != nil {
		m.say(err.Error(), true)
		return nil
	}
	cmd := m.changed()
	m.toRow(m.focus, to)
	return cmd
}

// toRow puts a pane's cursor on a row.
func (m *Model) toRow(p layout.Pane, to sheet.Ref) bool {
	for k, r := range m.tables[p].Records {
		if r.Row.Table == to.Table && r.Row.Row == to.Row {
			m.at[p].Row = k
			return true
		}
	}
	return false
}

// freeName counts a name up until nothing in the sheet has it: T1 gives T2, A
// gives A2.
func freeName(s *sheet.Sheet, name string) string {
	taken := map[string]bool{}
	for _, t := range s.Tables {
		for _, r := range t.Rows {
			taken[r.Name] = true
		}
	}
	return nextName(taken, name)
}

func nextName(taken map[string]bool, name string) string {
	stem := strings.TrimRight(name, "0123456789")
	n, err := strconv.Atoi(name[len(stem):])
	if err != nil || stem == "" {
		stem, n = name, 1
	}
	for {
		n++
		if next := stem + strconv.Itoa(n); !taken[next] {
			return next
		}
	}
}
