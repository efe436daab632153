package doc

import (
	"strings"

	"github.com/charmbracelet/x/ansi"
)

// Layout sets blocks in lines of cells, for a terminal, a file or a pane.
type Layout struct {
	Width     int
	In        int  // how far sentences stand in
	FormulaIn int  // and formulas and tables
	Air       int  // blank lines between blocks
	Mark      int  // how wide the marks before checks are at least
	ASCII     bool // no sign beyond it
	Cut       bool // what is too wide and has no place to break is cut
}

// LaidLine is a line of cells, and the block that it is of.
type LaidLine struct {
	Spans []Span
	Block int
}

// sheetOfLines is one layout being set.
type sheetOfLines struct {
	Layout
	lines []LaidLine
	block int
	count *int // of the numbers of the block
}

// setter sets cells of the block at hand.
func (s *sheetOfLines) setter(look Look) cellSetter {
	return cellSetter{ascii: s.ASCII, look: look, count: s.count}
}

// begin begins a block.
func (s *sheetOfLines) begin(block int) { s.block, s.count = block, new(int) }

// Lines sets blocks below each other.
func (l Layout) Lines(blocks []Block) []LaidLine {
	s := &sheetOfLines{Layout: l}
	for i := 0; i < len(blocks); i++ {
		s.gap()
		s.begin(i)
		switch b := blocks[i].(type) {
		case *Paragraph:
			look := PlainLook
			if b.Note {
				look = NoteLook
			}
			s.sentence(nil, b.Text, look, s.In)
		case *Formula:
			run := Run[*Formula](blocks[i:])
			s.formulas(run)
			i += len(run) - 1
		case *Boxed:
			s.boxed(b.Math)
		case *Check:
			run := Run[*Check](blocks[i:])
			s.checks(run)
			i += len(run) - 1
		case *Table:
			s.table(b)
		case *List:
			for _, item := range b.Items {
				s.sentence([]Span{{Text: "- "}}, item, PlainLook, s.In)
			}
		case *Code:
			for _, line := range CodeLines(b) {
				s.put(s.FormulaIn, []Span{{Text: line}})
			}
		case *Figure: // a page has it
		default:
			Stray(b)
		}
	}
	return s.lines
}

func (s *sheetOfLines) gap() {
	for range s.Air {
		if len(s.lines) > 0 {
			s.lines = append(s.lines, LaidLine{Block: s.block})
		}
	}
}

// put adds a line, so far in and without blanks at its end.
func (s *sheetOfLines) put(in int, line []Span) {
	for len(line) > 0 {
		last := &line[len(line)-1]
		if last.Text = strings.TrimRight(last.Text, " "); last.Text != "" {
			break
		}
		line = line[:len(line)-1]
	}
	if len(line) > 0 && in > 0 {
		line = append([]Span{{Text: strings.Repeat(" ", in)}}, line...)
	}
	if !s.Cut {
		s.lines = append(s.lines, LaidLine{line, s.block})
		return
	}
	for _, part := range cut(line, s.Width) {
		s.lines = append(s.lines, LaidLine{part, s.block})
	}
}

// cut cuts a line that is too wide wherever that is.
func cut(line []Span, width int) (parts [][]Span) {
	var part []Span
	room := width
	for _, x := range line {
		for {
			head := ansi.Truncate(x.Text, room, "")
			if head == "" && len(part) == 0 {
				head = x.Text[:firstCharacter(x.Text)]
			}
			if head != "" {
				piece := x
				piece.Text = head
				part, room = append(part, piece), room-ansi.StringWidth(head)
			}
			if x.Text = x.Text[len(head):]; x.Text == "" {
				break
			}
			parts = append(parts, part)
			part, room = nil, width
		}
	}
	return append(parts, part)
}

// sentence sets prose within the width, the lines behind the first as far in as its mark
// is wide.
func (s *sheetOfLines) sentence(mark []Span, text []Inline, look Look, in int) {
	setter := s.setter(look)
	wide := ansi.StringWidth(joined(mark))
	room := float64(max(s.Width-in-wide, 1))
	for k, line := range Wrap[cells](setter, text, room, room) {
		for i, row := range line.rows {
			before := mark
			if k > 0 || i > 0 {
				before = []Span{{Text: strings.Repeat(" ", wide)}}
			}
			s.put(in, append(append([]Span{}, before...), row...))
		}
	}
}

// checks sets a list of checks behind their marks.
func (s *sheetOfLines) checks(of []*Check) {
	wide, first := s.Mark, s.block
	for _, c := range of {
		wide = max(wide, len(c.State.String()))
	}
	for i, c := range of {
		if i > 0 {
			s.gap()
		}
		s.begin(first + i)
		word := c.State.String()
		mark := []Span{{Text: word, Look: [...]Look{GoodLook, RiskLook, BadLook}[c.State]}, {Text: strings.Repeat(" ", wide-len(word)+2)}}
		s.sentence(mark, c.Text, PlainLook, s.In)
	}
}

// formulas sets equations under each other.
func (s *sheetOfLines) formulas(of []*Formula) {
	var all [][]Piece[cells]
	var blocks []int
	for i, b := range of {
		s.count = new(int)
		setter := s.setter(FormulaLook)
		for _, m := range b.Of {
			all, blocks = append(all, Pieces[cells](setter, m)), append(blocks, s.block+i)
		}
	}
	if len(all) == 0 {
		return
	}
	setter := s.setter(FormulaLook)
	for i, line := range Arrange[cells](setter, all, float64(s.Width-s.FormulaIn)) {
		if i > 0 && line.From == 0 {
			s.gap()
		}
		s.block = blocks[line.Of]
		for _, row := range Line[cells](setter, all[line.Of][line.From:line.To]).rows {
			s.put(s.FormulaIn, append([]Span{{Text: strings.Repeat(" ", int(line.X))}}, row...))
		}
	}
}

// boxed frames an answer.
func (s *sheetOfLines) boxed(m Math) {
	setter := s.setter(AnswerLook)
	box := Set[cells](setter, m)
	if box.width+s.FormulaIn+4 > s.Width || len(box.rows) > 1 {
		s.count = new(int)
		s.formulas([]*Formula{{Of: []Math{m}}})
		return
	}
	corner := [...]string{"┌", "┐", "│", "└", "┘", "─"}
	if s.ASCII {
		corner = [...]string{"+", "+", "|", "+", "+", "-"}
	}
	rule := strings.Repeat(corner[5], box.width+2)
	s.put(s.FormulaIn, setter.text(corner[0] + rule + corner[1]).rows[0])
	s.put(s.FormulaIn, setter.Join(setter.text(corner[2]+" "), box, setter.text(" "+corner[2])).rows[0])
	s.put(s.FormulaIn, setter.text(corner[3] + rule + corner[4]).rows[0])
}

// leastColumn is how narrow a column gets whose cells wrap.
const leastColumn = 16

// table sets a table in columns. Where it is too wide its rows stand as lists of heads
// and cells.
func (s *sheetOfLines) table(t *Table) {
	gap, room := 2, s.Width-s.FormulaIn
	setter := s.setter(PlainLook)
	boxes, counts := s.tableCells(t, setter)
	widths, wraps := make([]float64, len(t.Columns)), make([]bool, len(t.Columns))
	total := gap * (len(t.Columns) - 1)
	for k, c := range t.Columns {
		widths[k] = float64(ansi.StringWidth(Printed(c.Head)))
		for i := range boxes {
			widths[k] = max(widths[k], float64(boxes[i][k].width))
			wraps[k] = wraps[k] || Wraps(Cell(t.Rows[i], k)) && boxes[i][k].width > leastColumn
		}
		total += int(widths[k])
	}
	if !t.Whole {
		var fits bool
		if widths, fits = FitColumns(widths, wraps, float64(gap), leastColumn, float64(room)); !fits {
			s.count = new(int)
			s.listed(t)
			return
		}
	} else if total > room {
		gap = 1
	}
	rights := t.Rights()
	line := func(lines [][]cells, look Look) {
		for n := 0; ; n++ {
			var row []Span
			some := false
			for k := range lines {
				var cell []Span
				wide := 0
				if n < len(lines[k]) {
					cell, wide, some = lines[k][n].rows[0], lines[k][n].width, true
				}
				if k > 0 {
					row = append(row, Span{Text: strings.Repeat(" ", gap), Look: look})
				}
				pad := Span{Text: strings.Repeat(" ", max(int(widths[k])-wide, 0)), Look: look}
				if rights[k] {
					row = append(append(row, pad), cell...)
				} else {
					row = append(append(row, cell...), pad)
				}
			}
			if !some {
				return
			}
			var merged []Span
			for _, x := range row {
				merged = appendSpan(merged, x)
			}
			s.put(s.FormulaIn, merged)
		}
	}
	if t.Headed() {
		head := s.setter(HeadLook)
		var heads [][]cells
		for k, c := range t.Columns {
			heads = append(heads, Wrap[cells](head, Plain(c.Head), widths[k], widths[k]))
		}
		line(heads, HeadLook)
	}
	for i, r := range t.Rows {
		var lines [][]cells
		for k := range t.Columns {
			if cell := Cell(r, k); float64(boxes[i][k].width) > widths[k] {
				*setter.count = counts[i][k]
				lines = append(lines, Wrap[cells](setter, []Inline{cell}, widths[k], widths[k]))
			} else {
				lines = append(lines, []cells{boxes[i][k]})
			}
		}
		line(lines, PlainLook)
	}
}

// tableCells sets the cells of a table, each in one line, and gives how many numbers
// stand before each; the numbers of a column by the point are padded behind it.
func (s *sheetOfLines) tableCells(t *Table, setter cellSetter) (out [][]cells, counts [][]int) {
	out, counts = make([][]cells, len(t.Rows)), make([][]int, len(t.Rows))
	places := make([]int, len(t.Columns))
	for i, r := range t.Rows {
		for k := range t.Columns {
			box := setter.text("")
			counts[i] = append(counts[i], *setter.count)
			if lines := Wrap[cells](setter, []Inline{Cell(r, k)}, wideEnough, wideEnough); len(lines) > 0 {
				box = lines[0]
			}
			out[i] = append(out[i], box)
			if behind, ok := decimals(Cell(r, k)); ok {
				places[k] = max(places[k], behind)
			}
		}
	}
	for i, r := range t.Rows {
		for k, c := range t.Columns {
			if behind, ok := decimals(Cell(r, k)); ok && c.Align == Point {
				out[i][k] = setter.Join(out[i][k], setter.text(strings.Repeat(" ", places[k]-behind)))
			}
		}
	}
	return out, counts
}

// wideEnough is a room in which nothing breaks.
const wideEnough = 1 << 20

// decimals is how many characters of a number stand behind its whole part; a power of
// ten has no such place.
func decimals(c Inline) (n int, ok bool) {
	if c.Math == nil || !isNumber(*c.Math) {
		return 0, false
	}
	m := *c.Math
	for m.Op == Neg {
		m = m.Of[0]
	}
	at := strings.IndexAny(m.Text, ".e")
	switch {
	case at < 0:
		return 0, true
	case m.Text[at] == 'e' || strings.Contains(m.Text[at:], "e"):
		return 0, false
	}
	return len(m.Text) - at, true
}

// listed sets the rows of a table as lists: head and cell, head and cell.
func (s *sheetOfLines) listed(t *Table) {
	for _, r := range t.Rows {
		s.sentence([]Span{{Text: ""}}, rowSentence(t, r), PlainLook, s.FormulaIn)
	}
}

// rowSentence says a row of a table: each head with its cell.
func rowSentence(t *Table, row []Inline) (out []Inline) {
	for k, c := range t.Columns {
		cell := Cell(row, k)
		if cell.Math == nil && cell.Words == "" && cell.Blank == 0 {
			continue
		}
		between := ""
		if len(out) > 0 {
			between = "; "
		}
		if c.Head != "" {
			between += c.Head + " "
		}
		if between != "" {
			out = append(out, Inline{Words: between})
		}
		out = append(out, cell)
	}
	return out
}
