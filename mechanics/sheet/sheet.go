// Package sheet turns the text of a problem, TOML 1.0, into ordered rows of raw
// cells and back. Whatever is not edited survives byte for byte: order,
// comments, unknown keys and tables, line endings.
//
// The text is the truth: rows and cells carry the places where they stand in
// it, an edit splices the text there, and the result is parsed again.
package sheet

import (
	"iter"
	"slices"
	"strings"

	"trivet/mechanics/diag"
)

// Sheet is one text and the rows found in it. It is a value: an edit makes
// another one.
type Sheet struct {
	text     string
	Tables   []Table
	sections []*group // the first one is the text before any header
	under    *Sheet   // the sheet a preview was made of; nil for a parsed one
}

// Table is a TOML table of rows: [points], [lines]. The keys before the first
// header (title, plane, g ...) are the rows of the table named "".
type Table struct {
	Name   string
	Rows   []Row
	Listed bool      // written as [[name]]: kept, and what stands below it is no row
	at     diag.Span // the name where it is first written
	group  *group    // what is headed [name], or the inline table it is written as
}

// Row is an entry of a table. A plain value (A = "4, 0, 0") is one cell with
// the key "". An entry that is a table (inline, with a header of its own, or
// by dotted keys) has a cell a key, in the order of the text.
type Row struct {
	Name   string
	Cells  []Cell
	pieces []entry // most rows have one, dotted keys one each; a row of a preview none
	group  *group  // what is headed [table.row], or the inline table it is written as
}

// Cell is a raw cell. Text is the decoded string; a bare TOML number, boolean
// or anything else is its text as typed. Readable is false for what is
// neither a string nor a number nor a boolean (arrays, dates, tables within):
// kept, never edited.
type Cell struct {
	Key      string
	Text     string
	Readable bool
	entry
}

// Ref names a cell: table, row and key ("" for a plain value).
type Ref struct{ Table, Row, Key string }

// entry is a stretch of text that defines a row or a cell: a key and its value, or
// a header with what stands below it.
type entry struct {
	name   diag.Span // the name of the row or the cell in it
	value  diag.Span // quotes included
	whole  diag.Span // key to value, or the header
	in     *group
	header bool
}

// group is what entries stand in: a header and the lines below it, or an inline table.
type group struct {
	at      diag.Span // the header, empty before the first one; or from { to }
	path    []part    // what the header names, or the table or row in braces
	kept    bool      // below a [[header]]: survives, but no rows are known
	list    bool      // [[...]]
	braces  bool
	entries []entry
}

// span is a piece of a row with all that stands below it.
func (e entry) span() diag.Span {
	if e.header {
		return diag.Between(e.whole.Start, e.in.last().whole.End)
	}
	return e.whole
}

// last is the last entry of a group, its header where it has none.
func (g *group) last() entry {
	if n := len(g.entries); n > 0 {
		return g.entries[n-1]
	}
	return entry{whole: g.at, in: g, header: true}
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

// plain tells that a row is a single value, or is kept as one.
func (r *Row) plain() bool { return len(r.Cells) == 1 && r.Cells[0].Key == "" }

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
	if i := slices.IndexFunc(s.Tables, func(t Table) bool { return t.Name == name }); i >= 0 {
		return s.Tables[i]
	}
	return Table{Name: name}
}

// Row gives a table's row by name.
func (t Table) Row(name string) (Row, bool) {
	if i := t.index(name); i >= 0 {
		return t.Rows[i], true
	}
	return Row{}, false
}

func (t *Table) index(name string) int {
	return slices.IndexFunc(t.Rows, func(r Row) bool { return r.Name == name })
}

// Cell gives the cell that ref names.
func (s *Sheet) Cell(ref Ref) (Cell, bool) {
	r, _ := s.Table(ref.Table).Row(ref.Row)
	return r.Cell(ref.Key)
}

// Text is the sheet as it is saved.
func (s *Sheet) Text() string { return s.text }
