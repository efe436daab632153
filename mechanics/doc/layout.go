package doc

import (
	"slices"
	"strings"
	"unicode/utf8"

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
			s.sentence(cells{}, b.Text, look, s.In)
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
				s.sentence(s.setter(PlainLook).text("- "), item, PlainLook, s.In)
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

// put adds lines, so far in and without blanks at their ends.
func (s *sheetOfLines) put(in int, lines ...[]Span) {
	for _, line := range lines {
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
		parts := [][]Span{line}
		if s.Cut {
			parts = cut(line, s.Width)
		}
		for _, part := range parts {
			s.lines = append(s.lines, LaidLine{part, s.block})
		}
	}
}

// cut cuts a line that is too wide wherever that is.
func cut(line []Span, width int) (parts [][]Span) {
	var part []Span
	room := width
	for _, x := range line {
		for x.Text != "" {
			head := ansi.Truncate(x.Text, room, "")
			if head == "" && len(part) > 0 {
				parts = append(parts, part)
				part, room = nil, width
				continue
			}
			piece := x
			_, first := utf8.DecodeRuneInString(x.Text)
			piece.Text = x.Text[:max(len(head), first)]
			part, room = append(part, piece), room-ansi.StringWidth(piece.Text)
			x.Text = x.Text[len(piece.Text):]
		}
	}
	return append(parts, part)
}

// sentence sets prose within the width, the lines behind the first as far in as its mark
// is wide.
func (s *sheetOfLines) sentence(mark cells, text []Inline, look Look, in int) {
	setter := s.setter(look)
	room := float64(max(s.Width-in-mark.width, 1))
	for _, line := range Wrap[cells](setter, text, room, room) {
		s.put(in, setter.Join(mark, line).rows...)
		mark = setter.text(strings.Repeat(" ", mark.width))
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
		mark := s.setter([...]Look{GoodLook, RiskLook, BadLook}[c.State]).text(c.State.String())
		plain := s.setter(PlainLook)
		s.sentence(plain.Join(mark, plain.text(strings.Repeat(" ", wide-mark.width+2))), c.Text, PlainLook, s.In)
	}
}

// formulas sets equations under each other.
func (s *sheetOfLines) formulas(of []*Formula) {
	var blocks []int
	setter := s.setter(FormulaLook)
	for i, b := range of {
		blocks = append(blocks, slices.Repeat([]int{s.block + i}, len(b.Of))...)
	}
	for i, line := range Arrange[cells](setter, Equations(of), float64(s.Width-s.FormulaIn)) {
		if i > 0 && line.From == 0 {
			s.gap()
		}
		s.block = blocks[line.Of]
		before := s.setter(PlainLook).text(strings.Repeat(" ", int(line.X)))
		s.put(s.FormulaIn, setter.Join(before, line.Box).rows...)
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
	plain := s.setter(PlainLook)
	set := SetTable[cells](plain, s.setter(HeadLook), pointed(t), gap, leastColumn, float64(s.Width-s.FormulaIn))
	between := plain.text(strings.Repeat(" ", gap))
	switch {
	case set.Fits:
	case t.Whole:
		between = plain.text(strings.Repeat(" ", narrow))
	default:
		for _, r := range t.Rows {
			s.sentence(cells{}, rowSentence(t, r), PlainLook, s.FormulaIn)
		}
		return
	}
	rights := t.Rights()
	for _, row := range set.Rows {
		var line []cells
		for k, lines := range row {
			column := cells{width: int(set.Widths[k])}
			for _, c := range lines {
				pair := []cells{c, plain.text(strings.Repeat(" ", max(column.width-c.width, 0)))} // a name wider than its column is cut
				if rights[k] {
					slices.Reverse(pair)
				}
				column.rows = append(column.rows, plain.Join(pair...).rows...)
			}
			if k > 0 {
				line = append(line, between)
			}
			line = append(line, column)
		}
		s.put(s.FormulaIn, plain.Join(line...).rows...)
	}
}

// pointed is a table with blanks behind the numbers of the columns that want it, so that
// their decimal points stand below each other.
func pointed(t *Table) *Table {
	out := *t
	out.Rows = slices.Clone(t.Rows)
	for k, c := range t.Columns {
		places := 0
		for _, r := range t.Rows {
			n, _ := decimals(Cell(r, k))
			places = max(places, n)
		}
		for i, r := range out.Rows {
			if n, ok := decimals(Cell(r, k)); ok && c.Align == Point {
				padded := Math{Op: Row, Of: []Math{*r[k].Math, {Op: Words, Text: strings.Repeat(" ", places-n)}}}
				out.Rows[i] = slices.Clone(r)
				out.Rows[i][k] = Inline{Math: &padded}
			}
		}
	}
	return &out
}

// decimals is how many characters of a number stand behind its whole part; a power of
// ten has no such place.
func decimals(c Inline) (n int, ok bool) {
	if c.Math == nil || !isNumber(*c.Math) {
		return 0, false
	}
	digits := TextMath(*c.Math)
	if strings.Contains(digits, "e") {
		return 0, false
	}
	whole, _, _ := strings.Cut(digits, ".")
	return len(digits) - len(whole), true
}

// rowSentence says a row of a table: each head with its cell.
func rowSentence(t *Table, row []Inline) (out []Inline) {
	for k, c := range t.Columns {
		cell := Cell(row, k)
		if cell == (Inline{}) {
			continue
		}
		between := ""
		if len(out) > 0 {
			between = "; "
		}
		if c.Head != "" {
			between += c.Head + " "
		}
		out = append(out, Inline{Words: between}, cell)
	}
	return out
}
