package tui

import (
	"fmt"
	"strings"

	tea "charm.land/bubbletea/v2"

	"trivet/mechanics/sheet"
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
	top, left, bottom, right = at.row, at.col, at.row, at.col
	if m.mark.on {
		top, bottom = min(at.row, m.mark.row), max(at.row, m.mark.row)
		left, right = min(at.col, m.mark.col), max(at.col, m.mark.col)
	}
	t := m.tables[m.focus]
	if left == 0 {
		right = len(t.columns) - 1
	}
	return max(top, 0), left, min(bottom, len(t.records)-1), right
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
		m.mark = mark{true, at.row, at.col}
	}
	switch i {
	case keys.MarkUp:
		at.row--
	case keys.MarkDown:
		at.row++
	case keys.MarkLeft:
		at.col--
	case keys.MarkRight:
		at.col++
	}
	m.fit()
	m.project()
}

// copyBlock puts the block on the clipboard, and tells how much it was.
func (m *Model) copyBlock() (cmd tea.Cmd, ok bool) {
	t := m.tables[m.focus]
	top, left, bottom, right := m.block()
	if top > bottom {
		m.say("there is no row here", false)
		return nil, false
	}
	var cells [][]string
	var rows []clipRow
	for _, r := range t.records[top : bottom+1] {
		var line []string
		for col := left; col <= right && col < len(r.slots); col++ {
			text := r.slots[col].text
			if r.slots[col].does != nothing {
				text = m.raw(r.slots[col])
			}
			line = append(line, text)
		}
		cells = append(cells, line)
		if row, ok := m.history.Current().Table(r.row.Table).Row(r.row.Row); ok && left == 0 && m.movable(r.row) {
			c := clipRow{table: r.row.Table, name: row.Name}
			for _, cell := range row.Cells {
				if cell.Readable {
					c.cells = append(c.cells, sheet.KeyText{Key: cell.Key, Text: cell.Text})
				}
			}
			rows = append(rows, c)
		}
	}
	m.clip = clip{text: sheet.TSV(cells), rows: rows}
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
		return count(n, "row")
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
	for _, r := range m.tables[m.focus].records[top : bottom+1] {
		if left == 0 && m.movable(r.row) {
			edits = append(edits, sheet.DeleteRow{Table: r.row.Table, Row: r.row.Row})
			continue
		}
		for col := left; col <= right && col < len(r.slots); col++ {
			if s := r.slots[col]; s.does == setCell && m.raw(s) != "" {
				edits = append(edits, change(m.history.Current(), s.ref, ""))
			}
		}
	}
	m.mark = mark{}
	if len(edits) == 0 {
		m.say("there is nothing here that could be cut; it is copied", false)
		return set
	}
	if err := m.history.DoAll(edits); err != nil {
		m.say(oneLine(err), true)
		return set
	}
	m.say("cut "+amount+"; ctrl+z brings it back", false)
	return tea.Batch(set, m.changed())
}

// pasteClip pastes what was copied last here; what others copied comes by the
// terminal's own paste.
func (m *Model) pasteClip() tea.Cmd {
	if m.clip.text == "" {
		m.say("nothing was copied here; the terminal's own paste brings what was copied elsewhere", false)
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
	cells, err := sheet.ParseTSV(text)
	if err != nil {
		m.say("not pasted: "+oneLine(err), true)
		return nil
	}
	top, left, _, _ := m.block()
	m.at[m.focus].row, m.at[m.focus].col = top, left
	var edits []sheet.Edit
	var says string
	switch {
	case len(m.clip.rows) > 0 && strings.TrimRight(text, "\r\n") == strings.TrimRight(m.clip.text, "\r\n"):
		edits, says = m.insertRows()
	default:
		edits, says = m.fillCells(cells)
	}
	m.mark = mark{}
	if len(edits) == 0 {
		if says == "" {
			says = "nothing was pasted: these cells follow from others"
		}
		m.say(says, false)
		return nil
	}
	if err := m.history.DoAll(edits); err != nil {
		m.say("not pasted: "+oneLine(err), true)
		return nil
	}
	m.say(says+"; ctrl+z takes it back", false)
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
	if t, at := m.tables[m.focus], m.at[m.focus]; at.row < len(t.records) && m.movable(t.records[at.row].row) {
		after[t.records[at.row].row.Table] = t.records[at.row].row.Row
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
func (m *Model) fillCells(cells [][]string) (edits []sheet.Edit, says string) {
	s, records, at := m.history.Current(), m.tables[m.focus].records, m.at[m.focus]
	taken := takenNames(s)
	first, adds := m.pattern()
	if adds {
		// The sheet's own settings stand behind the givens, and take none of it.
		n := len(s.Table(first.row.Table).Rows)
		if at.row >= n && at.col > 0 && at.row < len(records) {
			adds = false
		} else {
			records = records[:min(n, len(records))]
		}
	}
	filled, added := 0, 0
	for i, line := range cells {
		k := at.row + i
		if at.col == 0 && adds {
			k = rowNamed(records, line[0])
		}
		switch {
		case k >= 0 && k < len(records):
			for j, text := range line {
				if at.col+j >= len(records[k].slots) {
					break
				}
				// A name stays, and what follows from others does too.
				if sl := records[k].slots[at.col+j]; sl.does == setCell && text != m.raw(sl) {
					edits = append(edits, change(s, sl.ref, text))
					filled++
				}
			}
		case !adds:
			return nil, "there are not as many rows here, and none can be added by pasting"
		default:
			edits = append(edits, pastedRow(first, line, at.col, taken))
			added++
		}
	}
	if filled+added == 0 {
		return nil, ""
	}
	says = "pasted " + count(filled, "cell")
	if added > 0 {
		says += " and " + count(added, "new row")
	}
	return edits, says
}

func rowNamed(records []record, name string) int {
	for k, r := range records {
		if r.row.Row == strings.TrimSpace(name) {
			return k
		}
	}
	return -1
}

// pattern is a row as the pane has them, blank: what the columns of a new row are.
// Panes of several tables have none.
func (m Model) pattern() (first record, ok bool) {
	blank := builder{}
	blank.s, _ = sheet.Parse([]byte("[given]\nA = \"\"\n[points]\nA = \"\"\n[lines]\nA = { kind = \"\" }\n"))
	switch m.focus {
	case layout.Given:
		return blank.given().records[0], true
	case layout.Points:
		return blank.points().records[0], true
	case layout.Lines:
		return blank.lines().records[0], true
	}
	return record{}, false
}

// stems begin the names of rows that are pasted without one.
var stems = map[string]string{"points": "P0", "lines": "F0", "given": "v0"}

func pastedRow(first record, line []string, col int, taken map[string]bool) sheet.Edit {
	table := first.row.Table
	name := ""
	var list []sheet.KeyText
	for j, text := range line {
		if col+j >= len(first.slots) {
			break
		}
		text = strings.TrimSpace(text)
		switch s := first.slots[col+j]; {
		case s.does == setName:
			name = text
		case s.does == setCell && text != "":
			list = append(list, sheet.KeyText{Key: s.ref.Key, Text: text})
		}
	}
	if name == "" || taken[name] {
		name = nextName(taken, map[bool]string{true: stems[table], false: name}[name == ""])
	}
	taken[name] = true
	usual := map[string]string{"points": "at", "given": "value"}[table]
	for i := range list {
		if list[i].Key == "" && len(list) > 1 {
			list[i].Key = usual
		}
	}
	hasKind := false
	for _, c := range list {
		hasKind = hasKind || c.Key == "kind"
	}
	if table == "lines" && !hasKind {
		list = append([]sheet.KeyText{{Key: "kind", Text: "cable"}}, list...)
	}
	if len(list) == 0 {
		list = []sheet.KeyText{{Key: "", Text: ""}}
	}
	return sheet.AddRow{Table: table, Name: name, Cells: list}
}
