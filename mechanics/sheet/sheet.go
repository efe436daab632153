// Package sheet turns the text of a problem, TOML 1.0, into ordered rows of raw
// cells and back. Whatever is not edited survives byte for byte: order,
// comments, unknown keys and tables, line endings.
//
// The text is the truth: rows and cells carry the places where they stand in
// it, an edit splices the text there, and the result is parsed again.
package sheet

import (
	"iter"
	"strings"

	"trivet/mechanics/diag"
)

// Sheet is one text and the rows found in it. It is a value: an edit makes
// another one.
type Sheet struct {
	text     string
	Tables   []Table
	sections []section
	under    *Sheet // the sheet a preview was made of; nil for a parsed one
}

// Table is a TOML table of rows: [points], [lines]. The keys before the first
// header (title, plane, g ...) are the rows of the table named "".
type Table struct {
	Name   string
	Rows   []Row
	Listed bool      // written as [[name]]: kept, and what stands below it is no row
	at     diag.Span // the name where it is first written
	own    int       // the section headed [name]; -1 where there is none
	braces *braces   // the inline table it is written as, if it is
}

// Row is an entry of a table. A plain value (A = "4, 0, 0") is one cell with
// the key "". An entry that is a table (inline, with a header of its own, or
// by dotted keys) has a cell a key, in the order of the text.
type Row struct {
	Name   string
	Cells  []Cell
	form   form
	pieces []piece
	braces *braces // the inline table it is written as, if it is
}

// Cell is a raw cell. Text is the decoded string; a bare TOML number, boolean
// or anything else is its text as typed. Readable is false for what is
// neither a string nor a number nor a boolean (arrays, dates, tables within):
// kept, never edited.
type Cell struct {
	Key      string
	Text     string
	Readable bool
	at       diag.Span // the value in the file's text, quotes included
	keyAt    diag.Span
	whole    diag.Span // key to value
	inner    bool      // stands inside braces
}

// Ref names a cell: table, row and key ("" for a plain value).
type Ref struct{ Table, Row, Key string }

// form is how a row is written, which decides where a new cell of it goes.
type form int

const (
	formNone   form = iota // only seen in a preview, not in the text
	formBare               // A = "4, 0, 0"
	formInline             // A = { at = "4, 0, 0" }
	formHeader             // [points.A]
	formDotted             // A.at = "4, 0, 0"
	formKept               // an array of tables and the like: kept, not edited
)

// piece is one stretch of text that defines a row: most rows have one, dotted
// keys have one each.
type piece struct {
	name    diag.Span // the row's name in a key or a header
	whole   diag.Span // key to value, or header to the last entry below it
	braces  *braces
	section int
	header  bool
}

// braces is an inline table: its text from { to } and the entries in it.
type braces struct {
	at    diag.Span
	inner []diag.Span
}

// section is a header with the entries below it; the first one is the text
// before any header.
type section struct {
	head diag.Span // the header's text; empty for the first section
	end  int       // where its last entry ends, its header where it has none
	path []string
	list bool // [[...]]
}

// Cell gives a row's cell by key.
func (r Row) Cell(key string) (Cell, bool) {
	for _, c := range r.Cells {
		if c.Key == key {
			return c, true
		}
	}
	return Cell{}, false
}

// Text is what a row's cell holds but for blanks around it, "" where there is no such cell.
func (r Row) Text(key string) string {
	c, _ := r.Cell(key)
	return strings.TrimSpace(c.Text)
}

// Cells gives the cells in the order of the text, each with what names it. A row without
// cells stands as one with the key "".
func (s *Sheet) Cells() iter.Seq2[Ref, Cell] {
	return func(yield func(Ref, Cell) bool) {
		for _, t := range s.Tables {
			for _, r := range t.Rows {
				if len(r.Cells) == 0 && !yield(Ref{t.Name, r.Name, ""}, Cell{}) {
					return
				}
				for _, c := range r.Cells {
					if !yield(Ref{t.Name, r.Name, c.Key}, c) {
						return
					}
				}
			}
		}
	}
}

// Table gives a table by name; an empty one where the sheet has none.
func (s *Sheet) Table(name string) Table {
	if t := s.table(name); t != nil {
		return *t
	}
	return Table{Name: name, own: -1}
}

func (s *Sheet) table(name string) *Table {
	for i := range s.Tables {
		if s.Tables[i].Name == name {
			return &s.Tables[i]
		}
	}
	return nil
}

// Row gives a table's row by name.
func (t Table) Row(name string) (Row, bool) {
	if i := t.index(name); i >= 0 {
		return t.Rows[i], true
	}
	return Row{}, false
}

func (t *Table) index(name string) int {
	for i := range t.Rows {
		if t.Rows[i].Name == name {
			return i
		}
	}
	return -1
}

// Cell gives the cell that ref names.
func (s *Sheet) Cell(ref Ref) (Cell, bool) {
	_, r := s.row(ref)
	if r == nil {
		return Cell{}, false
	}
	return r.Cell(ref.Key)
}

// row gives the table and the row that ref names, nil where there is none.
func (s *Sheet) row(ref Ref) (*Table, *Row) {
	t := s.table(ref.Table)
	if t == nil {
		return nil, nil
	}
	if i := t.index(ref.Row); i >= 0 {
		return t, &t.Rows[i]
	}
	return t, nil
}

// Text is the sheet as it is saved.
func (s *Sheet) Text() string { return s.text }
