package edit

import (
	"fmt"
	"image"

	"trivet/mechanics/say"
	"trivet/mechanics/sheet"
	"trivet/tui/cells"
	"trivet/tui/layout"
)

// clip is what was copied last: its text, as it went to the clipboard, and the
// rows of the sheet, where whole rows were copied.
type clip struct {
	text string
	rows []sheet.AddRow
}

// Copied is the text of what was copied last.
func (e *Editor) Copied() string { return e.clip.text }

// Mark is where a block begins; it ends at the cursor.
type Mark struct {
	On       bool
	Row, Col int
}

// Block is the columns and rows that are marked in a pane, at least those under the
// cursor. The name of a row stands for all of it.
func (e *Editor) Block(p layout.Pane) image.Rectangle {
	at, t := e.At[p], e.Tables[p]
	from := at
	if e.Mark.On {
		from = cells.Place{Row: e.Mark.Row, Col: e.Mark.Col}
	}
	b := image.Rect(min(at.Col, from.Col), min(at.Row, from.Row), max(at.Col, from.Col)+1, max(at.Row, from.Row)+1)
	if b.Min.X == 0 {
		b.Max.X = len(t.Columns)
	}
	return b.Intersect(image.Rect(0, 0, len(t.Columns), len(t.Records)))
}

// Marked is that block, where one is marked.
func (e *Editor) Marked(p layout.Pane) image.Rectangle {
	if !e.Mark.On {
		return image.Rectangle{}
	}
	return e.Block(p)
}

// of gives the cells of a row that are in a block.
func of(b image.Rectangle, r cells.Record) []cells.Slot {
	return r.Slots[min(b.Min.X, len(r.Slots)):min(b.Max.X, len(r.Slots))]
}

// amount words a block: "3 rows", "2 by 3 cells".
func amount(b image.Rectangle) string {
	switch {
	case b.Min.X == 0:
		return say.Count(b.Dy(), "row")
	case b.Size() == image.Pt(1, 1):
		return "1 cell"
	default:
		return fmt.Sprintf("%d by %d cells", b.Dy(), b.Dx())
	}
}

// copy puts the block on the clipboard, and tells how much it was.
func (e *Editor) copy(w Where) Outcome {
	b := e.Block(w.Pane)
	if b.Empty() {
		return saying("there is no row here")
	}
	var block [][]string
	e.clip = clip{}
	for _, r := range e.Tables[w.Pane].Records[b.Min.Y:b.Max.Y] {
		var line []string
		for _, s := range of(b, r) {
			line = append(line, shown(w.Sheet, s))
		}
		block = append(block, line)
		if row, ok := w.Sheet.Table(r.Row.Table).Row(r.Row.Row); ok && b.Min.X == 0 && movable(w.Pane, r.Row) {
			add := sheet.AddRow{Table: r.Row.Table, Name: row.Name}
			for _, cell := range row.Cells {
				if cell.Readable {
					add.Cells = append(add.Cells, sheet.KeyText{Key: cell.Key, Text: cell.Text})
				}
			}
			e.clip.rows = append(e.clip.rows, add)
		}
	}
	e.clip.text = sheet.TSV(block)
	return Outcome{Says: "copied " + amount(b), Copied: e.clip.text}
}

// cut copies the block and takes it out, as one step.
func (e *Editor) cut(w Where) Outcome {
	o, b := e.copy(w), e.Block(w.Pane)
	if o.Copied == "" {
		return o
	}
	var edits []sheet.Edit
	for _, r := range e.Tables[w.Pane].Records[b.Min.Y:b.Max.Y] {
		if b.Min.X == 0 && movable(w.Pane, r.Row) {
			edits = append(edits, sheet.DeleteRow{Table: r.Row.Table, Row: r.Row.Row})
			continue
		}
		for _, s := range of(b, r) {
			if s.Does == cells.SetCell && Raw(w.Sheet, s) != "" {
				edits = append(edits, change(w.Sheet, s.Ref, ""))
			}
		}
	}
	e.Mark = Mark{}
	if len(edits) == 0 {
		o.Says = "nothing here can be cut; it was copied"
		return o
	}
	out := w.do(edits...)
	if out.Copied = o.Copied; out.Sheet != nil {
		out.Says = "cut " + amount(b) + "; ctrl+z brings it back"
	}
	return out
}
