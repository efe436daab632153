// Package doc holds what is said as data: sentences, formulas, tables and checks,
// whose numbers know where they come from. Printers show it; none of them computes.
package doc

// Origin says where a number comes from: the points, cells and lines that it was
// made of, with their numbers put in. It is made where the number is, and read
// when somebody asks.
type Origin interface {
	Says() string
}

// Block is a sentence or a formula. Exactly one of its fields is set.
type Block struct {
	Text    []Inline // a sentence; symbols in it are formulas
	Formula *Math    // set on a line of its own
	Aligned []Math   // equations under each other, aligned at their relation
	Table   *Table
	Boxed   *Math  // an answer
	OK      *bool  // with Text: a check and whether it holds
	Risk    bool   // with OK: it holds as typed, and not all over the ± of the inputs
	From    Origin // with OK: where its numbers come from
}

// Inline is a piece of a sentence: words, or a formula among them.
type Inline struct {
	Words string
	Math  *Math
}

// Table is a small table; the first row is its head. Cells are formulas or words.
type Table struct {
	Head []string
	Rows [][]Inline
}

// Add puts a row behind the others.
func (t *Table) Add(cells ...Inline) { t.Rows = append(t.Rows, cells) }
