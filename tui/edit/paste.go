package edit

import (
	"strconv"
	"strings"

	"trivet/mechanics/say"
	"trivet/mechanics/sheet"
	"trivet/tui/cells"
	"trivet/tui/layout"
)

// IsBlock tells a block of cells from a text for one cell.
func IsBlock(text string) bool {
	return strings.ContainsAny(strings.TrimRight(text, "\r\n"), "\t\n\r")
}

// MakesWay drops the blank row that is open where a block is pasted in its place.
func (e *Editor) MakesWay(text string) bool {
	if !e.blank() || !IsBlock(text) {
		return false
	}
	e.Drop()
	e.Newest = sheet.Ref{}
	return true
}

// pasteClip pastes what was copied last here; what others copied comes by the
// terminal's own paste.
func (e *Editor) pasteClip(w Where) Outcome {
	if e.Copied() == "" {
		return saying("nothing has been copied here; the terminal's own paste inserts text copied elsewhere")
	}
	return e.Paste(w, e.Copied())
}

// Paste fills cells from the cursor on and adds the rows that are missing, as
// one step.
func (e *Editor) Paste(w Where, text string) Outcome {
	block, err := sheet.ParseTSV(text)
	if err != nil {
		return Outcome{Says: "not pasted: " + err.Error(), Bad: true}
	}
	b, at := e.Block(w.Pane), &e.At[w.Pane]
	at.Row, at.Col = b.Min.Y, b.Min.X
	e.Mark = Mark{}
	var edits []sheet.Edit
	var says string
	if len(e.clip.rows) > 0 && strings.TrimRight(text, "\r\n") == strings.TrimRight(e.clip.text, "\r\n") {
		edits, says = e.insertRows(w)
	} else {
		var ok bool
		if edits, says, ok = pasteList(w, text); !ok {
			edits, says = e.fillCells(w, block)
		}
	}
	if len(edits) == 0 {
		if says == "" {
			says = "nothing was pasted: these cells are derived"
		}
		return Outcome{Says: says}
	}
	o := w.do(edits...)
	if o.Says = "not pasted: " + o.Says; o.Sheet != nil {
		o.Says = says + "; ctrl+z undoes it"
	}
	return o
}

// used are the names that are in use.
type used map[string]bool

func taken(s *sheet.Sheet) used {
	names := used{}
	for _, t := range s.Tables {
		for _, r := range t.Rows {
			names[r.Name] = true
		}
	}
	return names
}

// next counts a name up until nothing has it: T1 gives T2, A gives A2.
func (u used) next(name string) string {
	stem := strings.TrimRight(name, "0123456789")
	n, err := strconv.Atoi(name[len(stem):])
	if err != nil || stem == "" {
		stem, n = name, 1
	}
	for {
		n++
		if next := stem + strconv.Itoa(n); !u[next] {
			return next
		}
	}
}

// free is a name, or the next one where it is in use; it is from now on.
func (u used) free(name string) string {
	if u[name] {
		name = u.next(name)
	}
	u[name] = true
	return name
}

// insertRows adds the rows copied behind the row under the cursor, each under its
// name, or the next that is free.
func (e *Editor) insertRows(w Where) (edits []sheet.Edit, says string) {
	inUse, after := taken(w.Sheet), map[string]string{}
	if r, ok := e.record(w.Pane); ok && movable(w.Pane, r.Row) {
		after[r.Row.Table] = r.Row.Row
	}
	var names []string
	for _, r := range e.clip.rows {
		r.Name, r.After = inUse.free(r.Name), after[r.Table]
		if r.After != "" {
			after[r.Table] = r.Name
		}
		edits, names = append(edits, r), append(names, r.Name)
	}
	return edits, "pasted " + say.AndMore(names, maxNamed)
}

// fillCells gives the cells from the cursor on the texts of a block. A block that
// begins at the names goes to the rows of these names, wherever they stand; other
// names, and what goes on behind the last row, make new rows.
func (e *Editor) fillCells(w Where, block [][]string) (edits []sheet.Edit, says string) {
	records, at := e.Tables[w.Pane].Records, e.At[w.Pane]
	p := paster{e, w, taken(w.Sheet), w.Sheet}
	filled, added := 0, 0
	for i, line := range block {
		k := at.Row + i
		if at.Col == 0 && w.Pane != layout.Sheet {
			k = rowOf(w.Pane, records, line)
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
			if sl := records[k].Slots[at.Col+j]; sl.Does == cells.SetCell && text != Raw(w.Sheet, sl) {
				edits = append(edits, change(w.Sheet, sl.Ref, text))
				filled++
			}
		}
	}
	if c, _ := p.asking.Cell(askedFor); p.asking != w.Sheet {
		edits = append(edits, sheet.SetCell{Ref: askedFor, Text: c.Text})
	}
	var parts []string
	if filled > 0 {
		parts = append(parts, say.Count(filled, "cell"))
	}
	if added > 0 {
		parts = append(parts, say.Count(added, "new row"))
	}
	if len(parts) == 0 {
		return nil, ""
	}
	return edits, "pasted " + say.And(parts...)
}

// rowOf gives the row that a line of a block is for, by its name: among the
// supports that of the table that its kind is of, where there is one.
func rowOf(p layout.Pane, records []cells.Record, line []string) int {
	name, table, known := strings.TrimSpace(line[0]), "", false
	if p == layout.Supports && len(line) > cells.ColKind {
		table, known = supportTable(line[cells.ColKind])
	}
	for k, r := range records {
		own := r.Row.Row
		if p == layout.Unknowns {
			own = r.Slots[0].Text
		}
		if own == name && (!known || r.Row.Table == table) {
			return k
		}
	}
	return -1
}
