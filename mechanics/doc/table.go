package doc

import (
	"cmp"
	"fmt"
	"slices"
	"strings"
)

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

// tableForm is how a format writes tables.
type tableForm struct {
	form       string    // round its columns, its head and its rows
	columns    [2]string // how those of words and those of numbers are announced
	wide       string    // the same of a last column that has long words
	heads, row string
	head       string    // a cell of the head
	cells      [2]string // one of words, one of numbers
	between    string    // two cells
	rows       int       // how many a page has before the table goes on in another; 0 for all

	alwaysHeads, bareNumbers bool // an empty head too; numbers without mathematics
}

// longWords is from how many characters on the words of a last column are long.
const longWords = 60

// tabled writes a table.
func (f *markup) tabled(t *Table) (out string) {
	form, n := &f.table, len(t.Columns)
	if n == 0 || len(t.Rows) == 0 {
		return ""
	}
	kinds, columns, heads := make([]int, n), make([]string, n), make([]string, n)
	for k, right := range t.Rights() {
		kinds[k] = map[bool]int{true: 1}[right]
		columns[k], heads[k] = form.columns[kinds[k]], fmt.Sprintf(form.head, f.text(t.Columns[k].Head))
	}
	var rows []string
	for _, r := range t.Rows {
		cells := make([]string, n)
		for k := range cells {
			cell := Cell(r, k)
			if form.bareNumbers && cell.Math != nil && isNumber(*cell.Math) {
				cell = Inline{Words: TextMath(*cell.Math)}
			}
			text := f.sentence([]Inline{cell})
			if k == n-1 && form.wide != "" && len(text) > longWords {
				columns[k] = form.wide
			}
			cells[k] = fmt.Sprintf(form.cells[kinds[k]], text)
		}
		rows = append(rows, fmt.Sprintf(form.row, strings.Join(cells, form.between)))
	}
	head := ""
	if form.alwaysHeads || t.Headed() {
		head = fmt.Sprintf(form.heads, strings.Join(heads, form.between))
	}
	for part := range slices.Chunk(rows, cmp.Or(form.rows, len(rows))) {
		out += fmt.Sprintf(form.form, strings.Join(columns, ""), head, strings.Join(part, ""))
	}
	return out
}
