package doc

import "slices"

// Table is rows in columns. Cells are formulas or words.
type Table struct {
	Columns []Col
	Rows    [][]Inline
	Whole   bool // it takes the width that it needs, and is never broken
}

// Col is a column of a table.
type Col struct {
	Head  string
	Align Align
}

// Align is how the cells of a column stand.
type Align int

// The alignments. Auto is Right where a column holds numbers alone.
const (
	Auto Align = iota
	Left
	Right
	Point // numbers, their decimal points below each other where the format can
)

// NewTable makes a table with these heads; where all are empty it has no head.
func NewTable(heads ...string) *Table {
	t := &Table{}
	for _, h := range heads {
		t.Columns = append(t.Columns, Col{Head: h})
	}
	return t
}

// Add puts a row behind the others.
func (t *Table) Add(cells ...Inline) { t.Rows = append(t.Rows, cells) }

// Cell is column k of a row, empty where the row is shorter.
func Cell(row []Inline, k int) Inline {
	if k < len(row) {
		return row[k]
	}
	return Inline{}
}

// Headed tells that a column has a head.
func (t *Table) Headed() bool {
	return slices.ContainsFunc(t.Columns, func(c Col) bool { return c.Head != "" })
}

// Rights tells the columns that stand to the right: those of numbers.
func (t *Table) Rights() []bool {
	out := make([]bool, len(t.Columns))
	for k, c := range t.Columns {
		other := func(r []Inline) bool { m := Cell(r, k).Math; return m == nil || !isNumber(*m) }
		out[k] = c.Align >= Right || c.Align == Auto && len(t.Rows) > 0 && !slices.ContainsFunc(t.Rows, other)
	}
	return out
}

func isNumber(m Math) bool { return m.Op == Number || m.Op == Neg && isNumber(m.Of[0]) }

// wrapsIn tells a cell that may take several lines: words, or a list of formulas.
func wrapsIn(c Inline) bool { return c.Math == nil || c.Math.Op == Row }
