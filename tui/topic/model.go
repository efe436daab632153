package topic

// The document model of mechanics/doc, as far as a topic needs it, under the names that
// it has there.

// Doc is a document.
type Doc struct {
	Title    string
	Sections []Section
}

// Section is a heading with what stands under it; the first may have none.
type Section struct {
	Title  string
	Blocks []Block
}

// Block stands by itself in a section.
type Block interface{ block() }

// Paragraph is a sentence, or several.
type Paragraph struct{ Text []Inline }

// List is items with a mark before each.
type List struct{ Items [][]Inline }

// Code is text as it is typed.
type Code struct{ Text string }

// Table is rows in columns.
type Table struct {
	Columns []Col
	Rows    [][]Inline
}

// Col is a column of a table.
type Col struct{ Head string }

func (*Paragraph) block() {}
func (*List) block()      {}
func (*Code) block()      {}
func (*Table) block()     {}

// Inline is a piece of a sentence.
type Inline struct {
	Words string
	Style Style
}

// Style is how words of a sentence are set.
type Style int

// The styles of words.
const (
	Upright Style = iota
	Emphasis
	Mono // code
)
