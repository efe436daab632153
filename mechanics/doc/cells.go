package doc

import (
	"strings"

	"github.com/charmbracelet/x/ansi"

	"trivet/mechanics/printable"
)

// Span is a stretch of a line in one look; From says where a number comes from.
type Span struct {
	Text string
	Look Look
	From Origin
}

// Look says what a span is, for a screen that shows it in its own way.
type Look int

// The looks of spans.
const (
	PlainLook Look = iota
	FormulaLook
	AnswerLook // a boxed answer
	HeadLook   // of a table
	NoteLook
	GoodLook // of a check
	RiskLook
	BadLook
)

// cells is a piece of a formula or a sentence in cells of a terminal: its rows, all of
// one width, and the index of the row that stands beside its neighbours.
type cells struct {
	rows  [][]Span
	base  int
	width int
}

// cellSetter sets cells: in ASCII alone, in a subscript, or for reading aloud.
type cellSetter struct {
	ascii, small, spoken bool
	look                 Look
}

// Printed is a user's text on one line, without what acts on a terminal; line ends and
// tabs are blanks.
func Printed(text string) string { return printable.Line(spaced(text)) }

// blanks are the characters at which a line of prose may break.
const blanks = " \t\r\n"

// spaced is a text whose blanks are all spaces.
func spaced(text string) string {
	return strings.Map(func(r rune) rune {
		if strings.ContainsRune(blanks, r) {
			return ' '
		}
		return r
	}, text)
}

func (s cellSetter) text(text string) cells {
	if text == "" {
		return cells{rows: [][]Span{nil}}
	}
	own := new(struct { // a row of one span: every word of a sentence is one
		row  [1]Span
		rows [1][]Span
	})
	own.row[0] = Span{Text: text, Look: s.look}
	own.rows[0] = own.row[:]
	return cells{rows: own.rows[:], width: ansi.StringWidth(text)}
}

func (s cellSetter) Traits() Traits          { return Traits{Flat: true, Linear: true, Small: s.small} }
func (s cellSetter) Inline() Setter[cells]   { return s }
func (s cellSetter) Width(c cells) float64   { return float64(c.width) }
func (s cellSetter) Words(text string) cells { return s.text(Printed(text)) }
func (s cellSetter) Small() Setter[cells]    { s.small = true; return s }
func (s cellSetter) Prose(text string) cells { return s.text(Printed(text)) }

func (s cellSetter) Letter(m Math) cells {
	if m.Op == Symbol && m.Name != "" {
		return s.text(Printed(m.Name))
	}
	return s.text(Printed(m.Text))
}

func (s cellSetter) Number(digits string, m Math) cells {
	out := s.text(Printed(digits))
	if len(out.rows[0]) > 0 {
		out.rows[0][0].From = m.From
	}
	return out
}

// asciiSigns are the signs that ASCII has not.
var asciiSigns = map[string]string{"·": "*", "×": "x", "√": "sqrt", "²": "^2", "³": "^3"}

func (s cellSetter) Sign(text string) cells {
	if instead, ok := asciiSigns[text]; ok && s.ascii {
		text = instead
	}
	return s.text(Printed(text))
}

func (s cellSetter) Space(g Gap) cells {
	switch g {
	case None, SumOf, Seam:
		return s.text("")
	case Indent:
		return s.text("    ")
	}
	return s.text(" ")
}

// Join sets boxes side by side with their bases level.
func (s cellSetter) Join(of ...cells) cells {
	up, down, width := 0, 0, 0
	for _, c := range of {
		up, down, width = max(up, c.base), max(down, len(c.rows)-1-c.base), width+c.width
	}
	out := cells{rows: make([][]Span, up+1+down), base: up, width: width}
	var row []Span
	for k := range out.rows {
		row = row[:0]
		for _, c := range of {
			if i := k - up + c.base; i >= 0 && i < len(c.rows) {
				row = append(row, c.rows[i]...)
			} else if c.width > 0 {
				row = append(row, Span{Text: strings.Repeat(" ", c.width), Look: s.look})
			}
		}
		out.rows[k] = merged(row)
	}
	return out
}

// merged are spans with text of the same look put together, and all else by itself.
func merged(row []Span) (out []Span) {
	for from, to := 0, 0; from < len(row); from = to {
		first := row[from]
		for to = from + 1; to < len(row) && first.From == nil && row[to].From == nil && row[to].Look == first.Look; to++ {
		}
		if to-from > 1 {
			first.Text = joined(row[from:to])
		}
		out = append(out, first)
	}
	return out
}

// Sub sets a subscript behind a mark; a name that a user typed has it in it.
func (s cellSetter) Sub(m Math, base, sub cells) cells {
	switch {
	case m.Op == Symbol && m.Name != "":
		return base
	case s.small:
		return s.Join(base, sub)
	}
	return s.Join(base, s.text("_"), sub)
}

func (s cellSetter) Power(base, up cells, exponent Math) cells {
	if sign, ok := map[float64]string{2: "²", 3: "³"}[exponent.Num]; ok && exponent.Op == Number {
		return s.Join(base, s.Sign(sign))
	}
	if exponent.Op == Product {
		up = s.Fence(Paren, up)
	}
	return s.Join(base, s.text("^"), up)
}

func (s cellSetter) Fraction(over, under cells) cells { return s.Join(over, s.Sign("/"), under) }
func (s cellSetter) Root(in cells) cells              { return s.Join(s.Sign("√"), in) }

func (s cellSetter) Fence(op Op, in cells) cells {
	if op == Size {
		return s.Join(s.text("|"), in, s.text("|"))
	}
	return s.Join(s.text("("), in, s.text(")"))
}

// Grid sets a matrix in brackets, a determinate between bars, numbers to the right; read
// aloud it is tuples in one line.
func (s cellSetter) Grid(op Op, rows [][]cells, columns []float64) cells {
	switch {
	case s.spoken:
		return s.tuples(op, rows)
	case len(rows) == 0:
		return s.text("[]")
	}
	out := cells{base: (len(rows) - 1) / 2}
	for i, r := range rows {
		open, shut := brackets(op, i, len(rows))
		line := []cells{s.text(open)}
		for k, c := range r {
			blanks := int(columns[k]) - c.width
			if k > 0 {
				blanks += 2
			}
			line = append(line, s.text(strings.Repeat(" ", blanks)), c)
		}
		row := s.Join(append(line, s.text(shut))...)
		out.rows, out.width = append(out.rows, row.rows[row.base]), row.width
	}
	return out
}

// tuples is a column as (a, b), a matrix as a tuple of its rows.
func (s cellSetter) tuples(op Op, rows [][]cells) cells {
	list := func(of []cells) cells {
		parts := []cells{s.text("(")}
		for k, c := range of {
			if k > 0 {
				parts = append(parts, s.text(", "))
			}
			parts = append(parts, c)
		}
		return s.Join(append(parts, s.text(")"))...)
	}
	var of []cells
	for _, r := range rows {
		if op == Column {
			of = append(of, r...)
		} else {
			of = append(of, list(r))
		}
	}
	name := map[Op]string{Column: "", Grid: "matrix ", Det: "determinant of "}[op]
	return s.Join(s.text(name), list(of))
}

func brackets(op Op, i, n int) (string, string) {
	switch {
	case op == Det:
		return "│", "│"
	case n == 1:
		return "[", "]"
	case i == 0:
		return "⎡", "⎤"
	case i == n-1:
		return "⎣", "⎦"
	}
	return "⎢", "⎥"
}

// joined is the text of spans.
func joined(line []Span) string {
	var b strings.Builder
	for _, x := range line {
		b.WriteString(x.Text)
	}
	return b.String()
}

// TextMath writes a formula in one line of Unicode; a matrix takes its rows in brackets.
func TextMath(m Math) string {
	var rows []string
	for _, r := range Set[cells](cellSetter{}, m).rows {
		rows = append(rows, joined(r))
	}
	return strings.Join(rows, "\n")
}

// LineMath writes a formula in one line that can be read aloud: a column is a
// tuple (a, b, c), a matrix its rows one after the other.
func LineMath(m Math) string { return joined(Set[cells](cellSetter{spoken: true}, m).rows[0]) }
