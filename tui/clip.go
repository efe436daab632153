package tui

import (
	"fmt"

	tea "charm.land/bubbletea/v2"

	"trivet/mechanics/say"
	"trivet/mechanics/sheet"
	"trivet/tui/cells"
	"trivet/tui/keys"
	"trivet/tui/layout"
)

// clip is what was copied last: its text, as it went to the clipboard, and the
// rows of the sheet, where whole rows were copied.
type clip struct {
	text string
	rows []clipRow
}

type clipRow struct {
	table, name string
	cells       []sheet.KeyText
}

// mark is where a block begins; it ends at the cursor.
type mark struct {
	on       bool
	row, col int
}

// block gives the rows and columns that are marked, at least those under the
// cursor. The name of a row stands for all of it.
func (m Model) block() (top, left, bottom, right int) {
	at := m.at[m.focus]
	top, left, bottom, right = at.Row, at.Col, at.Row, at.Col
	if m.mark.on {
		top, bottom = min(at.Row, m.mark.row), max(at.Row, m.mark.row)
		left, right = min(at.Col, m.mark.col), max(at.Col, m.mark.col)
	}
	t := m.tables[m.focus]
	if left == 0 {
		right = len(t.Columns) - 1
	}
	return max(top, 0), left, min(bottom, len(t.Records)-1), right
}

// marked tells whether a cell of the pane with the keys is in a marked block.
func (m Model) marked(row, col int) bool {
	if !m.mark.on {
		return false
	}
	top, left, bottom, right := m.block()
	return row >= top && row <= bottom && col >= left && col <= right
}

// extend marks from the cursor on, a row or a column further.
func (m *Model) extend(i keys.Intent) {
	at := &m.at[m.focus]
	if !m.mark.on {
		m.mark = mark{true, at.Row, at.Col}
	}
	switch i {
	case keys.MarkUp:
		at.Row--
	case keys.MarkDown:
		at.Row++
	case keys.MarkLeft:
		at.Col--
	case keys.MarkRight:
		at.Col++
	}
}

// copyBlock puts the block on the clipboard, and tells how much it was.
func (m *Model) copyBlock() (cmd tea.Cmd, ok bool) {
	t := m.tables[m.focus]
	top, left, bottom, right := m.block()
	if top > bottom {
		m.say("there is no row here", false)
		return nil, false
	}
	var block [][]string
	var rows []clipRow
	for _, r := range t.Records[top : bottom+1] {
		var line []string
		for col := left; col <= right && col < len(r.Slots); col++ {
			text := r.Slots[col].Text
			if r.Slots[col].Does != cells.Nothing {
				text = m.raw(r.Slots[col])
			}
			line = append(line, text)
		}
		block = append(block, line)
		if row, ok := m.history.Current().Table(r.Row.Table).Row(r.Row.Row); ok && left == 0 && m.movable(r.Row) {
			c := clipRow{table: r.Row.Table, name: row.Name}
			for _, cell := range row.Cells {
				if cell.Readable {
					c.cells = append(c.cells, sheet.KeyText{Key: cell.Key, Text: cell.Text})
				}
			}
			rows = append(rows, c)
		}
	}
	m.clip = clip{text: sheet.TSV(block), rows: rows}
	m.say("copied "+m.amount(), false)
	return tea.SetClipboard(m.clip.text), true
}

func (m Model) movable(ref sheet.Ref) bool {
	return m.focus != layout.Unknowns && ref.Table != "" && ref.Table != "units"
}

// amount words a block: "3 rows", "2 by 3 cells".
func (m Model) amount() string {
	top, left, bottom, right := m.block()
	switch n := bottom - top + 1; {
	case left == 0:
		return say.Count(n, "row")
	case n == 1 && left == right:
		return "1 cell"
	default:
		return fmt.Sprintf("%d by %d cells", n, right-left+1)
	}
}

// cutBlock copies the block and takes it out, as one step.
func (m *Model) cutBlock() tea.Cmd {
	set, ok := m.copyBlock()
	if !ok {
		return nil
	}
	top, left, bottom, right := m.block()
	amount := m.amount()
	var edits []sheet.Edit
	for _, r := range m.tables[m.focus].Records[top : bottom+1] {
		if left == 0 && m.movable(r.Row) {
			edits = append(edits, sheet.DeleteRow{Table: r.Row.Table, Row: r.Row.Row})
			continue
		}
		for col := left; col <= right && col < len(r.Slots); col++ {
			if s := r.Slots[col]; s.Does == cells.SetCell && m.raw(s) != "" {
				edits = append(edits, change(m.history.Current(), s.Ref, ""))
			}
		}
	}
	m.mark = mark{}
	if len(edits) == 0 {
		m.say("nothing here can be cut; it was copied", false)
		return set
	}
	if err := m.history.Do(edits...); err != nil {
		m.say(err.Error(), true)
		return set
	}
	m.say("cut "+amount+"; ctrl+z brings it back", false)
	return tea.Batch(set, m.changed())
}
