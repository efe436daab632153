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
}

func (s *sheetOfLines) setter(look Look) cellSetter {
	return cellSetter{ascii: s.ASCII, look: look}
}

// Lines sets blocks below each other.
func (l Layout) Lines(blocks []Block) []LaidLine {
	s := &sheetOfLines{Layout: l}
	for i := 0; i < len(blocks); i++ {
		s.gap()
		s.block = i
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
			for _, line := range CodeLines(b.Text) {
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
	wide, first := 0, s.block
	for _, c := range of {
		wide = max(wide, len(c.State.String()))
	}
	for i, c := range of {
		if i > 0 {
			s.gap()
		}
		s.block = first + i
		word := c.State.String()
		mark := []Span{{Text: word, Look: [...]Look{GoodLook, RiskLook, BadLook}[c.State]}, {Text: strings.Repeat(" ", wide-len(word)+2)}}
		s.sentence(mark, c.Text, PlainLook, s.In)
	}
}

// formulas sets equations under each other.
func (s *sheetOfLines) formulas(of []*Formula) {
	var all [][]Piece[cells]
	var blocks []int
	setter := s.setter(FormulaLook)
	for i, b := range of {
		for _, m := range b.Of {
			all, blocks = append(all, Pieces[cells](setter, m)), append(blocks, s.block+i)
		}
	}
	if len(all) == 0 {
		return
	}
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
	const gap, narrow = 2, 1
	room := float64(s.Width - s.FormulaIn)
	set := SetTable[cells](s.setter(PlainLook), s.setter(HeadLook), t, points(t), gap, leastColumn, room)
	between := gap
	switch {
	case set.Fits:
	case t.Whole:
		between = narrow
	default:
		for _, r := range t.Rows {
			s.sentence(nil, rowSentence(t, r), PlainLook, s.FormulaIn)
		}
		return
	}
	rights := t.Rights()
	for i, row := range set.Rows {
		for n := range set.lines(i) {
			var line []Span
			for k, lines := range row {
				var c cells
				behind := 0.0
				if n < len(lines) {
					c, behind = lines[n], set.pad(i, k)
				}
				before := max(set.Widths[k]-float64(c.width)-behind, 0) // a name wider than its column is cut
				if !rights[k] {
					before, behind = 0, before
				}
				if k > 0 {
					before += float64(between)
				}
				line = appendSpan(line, Span{Text: strings.Repeat(" ", int(before))})
				if len(c.rows) > 0 {
					for _, x := range c.rows[0] {
						line = appendSpan(line, x)
					}
				}
				line = appendSpan(line, Span{Text: strings.Repeat(" ", int(behind))})
			}
			s.put(s.FormulaIn, line)
		}
	}
}

// points gives how far behind its number a cell reaches, so that the decimal points of
// the columns that want it stand below each other.
func points(t *Table) func(row, column int) float64 {
	places := make([]int, len(t.Columns))
	for k := range t.Columns {
		for _, r := range t.Rows {
			if n, ok := decimals(Cell(r, k)); ok {
				places[k] = max(places[k], n)
			}
		}
	}
	return func(i, k int) float64 {
		n, ok := decimals(Cell(t.Rows[i], k))
		if !ok || t.Columns[k].Align != Point {
			return 0
		}
		return float64(places[k] - n)
	}
}

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
