package tui

import (
	"strings"

	tea "charm.land/bubbletea/v2"

	"trivet/mechanics/say"
	"trivet/mechanics/sheet"
	"trivet/tui/cells"
	"trivet/tui/layout"
)

// pasteClip pastes what was copied last here; what others copied comes by the
// terminal's own paste.
func (m *Model) pasteClip() tea.Cmd {
	if m.clip.text == "" {
		m.say("nothing has been copied here; the terminal's own paste inserts text copied elsewhere", false)
		return nil
	}
	return m.pasteBlock(m.clip.text)
}

// isBlock tells a block of cells from a text for one cell.
func isBlock(text string) bool {
	return strings.ContainsAny(strings.TrimRight(text, "\r\n"), "\t\n\r")
}

// pasteBlock fills cells from the cursor on and adds the rows that are missing, as
// one step.
func (m *Model) pasteBlock(text string) tea.Cmd {
	block, err := sheet.ParseTSV(text)
	if err != nil {
		m.say("not pasted: "+err.Error(), true)
		return nil
	}
	top, left, _, _ := m.block()
	m.at[m.focus].Row, m.at[m.focus].Col = top, left
	var edits []sheet.Edit
	var says string
	switch {
	case len(m.clip.rows) > 0 && strings.TrimRight(text, "\r\n") == strings.TrimRight(m.clip.text, "\r\n"):
		edits, says = m.insertRows()
	default:
		var ok bool
		if edits, says, ok = m.pasteList(text); !ok {
			edits, says = m.fillCells(block)
		}
	}
	m.mark = mark{}
	if len(edits) == 0 {
		if says == "" {
			says = "nothing was pasted: these cells are derived"
		}
		m.say(says, false)
		return nil
	}
	if err := m.history.Do(edits...); err != nil {
		m.say("not pasted: "+err.Error(), true)
		return nil
	}
	m.say(says+"; ctrl+z undoes it", false)
	return m.changed()
}

func takenNames(s *sheet.Sheet) map[string]bool {
	taken := map[string]bool{}
	for _, t := range s.Tables {
		for _, r := range t.Rows {
			taken[r.Name] = true
		}
	}
	return taken
}

// insertRows adds the rows copied behind the row under the cursor, each under its
// name, or the next that is free.
func (m *Model) insertRows() (edits []sheet.Edit, says string) {
	s := m.history.Current()
	taken := takenNames(s)
	after := map[string]string{}
	if t, at := m.tables[m.focus], m.at[m.focus]; at.Row < len(t.Records) && m.movable(t.Records[at.Row].Row) {
		after[t.Records[at.Row].Row.Table] = t.Records[at.Row].Row.Row
	}
	var names []string
	for _, r := range m.clip.rows {
		name := r.name
		if taken[name] {
			name = nextName(taken, name)
		}
		taken[name] = true
		edits = append(edits, sheet.AddRow{Table: r.table, Name: name, After: after[r.table], Cells: r.cells})
		if _, ok := after[r.table]; ok {
			after[r.table] = name
		}
		names = append(names, name)
	}
	return edits, "pasted " + enumerate(names)
}

// fillCells gives the cells from the cursor on the texts of a block. A block that
// begins at the names goes to the rows of these names, wherever they stand; other
// names, and what goes on behind the last row, make new rows.
func (m *Model) fillCells(block [][]string) (edits []sheet.Edit, says string) {
	s, records, at := m.history.Current(), m.tables[m.focus].Records, m.at[m.focus]
	p := m.paster()
	p.adds = p.adds && m.focus != layout.Sheet
	filled, added := 0, 0
	for i, line := range block {
		k := at.Row + i
		if at.Col == 0 && p.adds {
			k = m.rowOf(records, line)
		}
		if k < 0 || k >= len(records) {
			edit, why := p.row(line, at.Col)
			if why != "" {
				return nil, why
			}
			edits = append(edits, edit...)
			added++
			continue
		}
		for j, text := range line {
			if at.Col+j >= len(records[k].Slots) {
				break
			}
			// A name stays, and what follows from others does too.
			if sl := records[k].Slots[at.Col+j]; sl.Does == cells.SetCell && text != m.raw(sl) {
				edits = append(edits, change(s, sl.Ref, text))
				filled++
			}
		}
	}
	edits = append(edits, p.asking()...)
	if filled+added == 0 {
		return nil, ""
	}
	var parts []string
	if filled > 0 {
		parts = append(parts, say.Count(filled, "cell"))
	}
	if added > 0 {
		parts = append(parts, say.Count(added, "new row"))
	}
	return edits, "pasted " + strings.Join(parts, " and ")
}

// rowOf gives the row that a line of a block is for, by its name: among the
// supports that of the table that its kind is of, where there is one.
func (m *Model) rowOf(records []cells.Record, line []string) int {
	name, table, known := strings.TrimSpace(line[0]), "", false
	if m.focus == layout.Supports && len(line) > cells.ColKind {
		table, known = supportTable(line[cells.ColKind])
	}
	for k, r := range records {
		own := r.Row.Row
		if m.focus == layout.Unknowns {
			own = r.Slots[0].Text
		}
		if own == name && (!known || r.Row.Table == table) {
			return k
		}
	}
	return -1
}
