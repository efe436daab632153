// Package sheet turns the text of a problem, TOML 1.0, into ordered rows of raw
// cells and back. Whatever is not edited survives byte for byte: order,
// comments, unknown keys and tables, line endings.
package sheet

// Sheet is one text and the rows found in it. It is a value: an edit makes
// another one.
type Sheet struct {
	text   string
	Tables []Table
}

// Table is a TOML table of rows: [points], [lines]. The keys before the first
// header (title, plane, g ...) are the rows of the table named "".
type Table struct {
	Name string
	Rows []Row
}

// Row is an entry of a table. A plain value (A = "4, 0, 0") is one cell with
// the key "". An entry that is a table (inline, with a header of its own, or
// by dotted keys) has a cell a key, in the order of the text.
type Row struct {
	Name  string
	Cells []Cell
	form  form
	at    Span // the whole entry, for deleting and for pointing at it
}

// Cell is a raw cell. Text is the decoded string; a bare TOML number, boolean
// or anything else is its text as typed. Readable is false for what is
// neither a string nor a number (arrays, dates, tables within): kept, never edited.
type Cell struct {
	Key      string
	Text     string
	Readable bool
	at       Span // the value in the file's text, quotes included
	keyAt    Span
}

// Span is a piece of the file's text, as byte offsets [Start, End).
type Span struct{ Start, End int }

// Ref names a cell: table, row and key ("" for a plain value).
type Ref struct{ Table, Row, Key string }

type form int

// Cell gives a row's cell by key.
func (r Row) Cell(key string) (Cell, bool) {
	for _, c := range r.Cells {
		if c.Key == key {
			return c, true
		}
	}
	return Cell{}, false
}

// Table gives a table by name; an empty one where the sheet has none.
func (s *Sheet) Table(name string) Table {
	for _, t := range s.Tables {
		if t.Name == name {
			return t
		}
	}
	return Table{Name: name}
}

// Row gives a table's row by name.
func (t Table) Row(name string) (Row, bool) {
	for _, r := range t.Rows {
		if r.Name == name {
			return r, true
		}
	}
	return Row{}, false
}

// Text is the sheet as it is saved.
func (s *Sheet) Text() string { return s.text }
