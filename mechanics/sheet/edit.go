package sheet

import (
	"fmt"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"trivet/mechanics/diag"
)

// maxName is the most bytes a name typed into a sheet may have.
const maxName = 256

// Edit is a change of a sheet as a value: SetCell, DropCell, AddRow, DeleteRow,
// DeleteTable, RenameRow, MoveRow or DuplicateRow.
type Edit interface {
	edit(s *Sheet) ([]splice, error)
}

// SetCell gives a cell a text. A cell the row lacks is added: a plain value
// then becomes a table in which it has the table's usual key ("at" for a
// point, "printed" for an answer, else "value"). A row of the table "" that
// is not there is added.
type SetCell struct {
	Ref
	Text string
}

// DropCell takes a cell out of its row. Where there is none nothing happens.
type DropCell struct{ Ref }

// AddRow adds a row after the row named After, or at the end of the table,
// which is made where it is missing. One cell with the key "" is a plain
// value.
type AddRow struct {
	Table, Name, After string
	Cells              []KeyText
}

// KeyText is a cell of a row to be added.
type KeyText struct{ Key, Text string }

// DeleteRow takes a row out with the lines it stands on.
type DeleteRow struct{ Table, Row string }

// RenameRow gives a row another name. Cells that use the name are left alone.
type RenameRow struct{ Table, Row, To string }

// splice puts text in the place of a span.
type splice struct {
	at   diag.Span
	text string
}

// Patch is the change an edit made to the text: at byte At, Old became New.
type Patch struct {
	At       int
	Old, New string
}

// Inverse is the patch that undoes p.
func (p Patch) Inverse() Patch { return Patch{At: p.At, Old: p.New, New: p.Old} }

func (p Patch) empty() bool { return p.Old == p.New }

// on gives text with the patch in it.
func (p Patch) on(text string) string { return text[:p.At] + p.New + text[p.At+len(p.Old):] }

// Apply gives the sheet with an edit made, and the change of its text. An
// error is an *diag.Error; the sheet is as it was then.
func (s *Sheet) Apply(e Edit) (*Sheet, Patch, error) {
	if s.under != nil {
		s = s.under
	}
	if e == nil {
		return nil, Patch{}, diag.New("there is nothing to change", "")
	}
	splices, err := e.edit(s)
	if err != nil {
		return nil, Patch{}, err
	}
	if len(splices) == 0 {
		return s, Patch{}, nil
	}
	p := merge(s.text, splices)
	next, err := parse(p.on(s.text))
	if err != nil {
		wrong := diag.Of(err)
		wrong.Place = diag.Place{} // in a text that nobody has seen
		return nil, Patch{}, wrong
	}
	return next, p, nil
}

// merge makes one patch of splices that do not overlap.
func merge(text string, splices []splice) Patch {
	slices.SortFunc(splices, func(a, b splice) int { return a.at.Start - b.at.Start })
	at, end := splices[0].at.Start, splices[0].at.Start
	var sb strings.Builder
	for _, sp := range splices {
		start := max(end, sp.at.Start)
		sb.WriteString(text[end:start])
		sb.WriteString(sp.text)
		end = max(start, sp.at.End)
	}
	return Patch{At: at, Old: text[at:end], New: sb.String()}
}

// checkName refuses what cannot be a name.
func checkName(what, name string) error {
	switch {
	case strings.TrimSpace(name) == "":
		return diag.New(what+" is empty", "type a name")
	case len(name) > maxName:
		return diag.New(fmt.Sprintf("%s has %d bytes, but at most %d are allowed", what, len(name), maxName), "shorten it")
	case !utf8.ValidString(name):
		return diag.New(what+" is not text in UTF-8", "type it in UTF-8")
	}
	if i := strings.IndexFunc(name, unicode.IsControl); i >= 0 {
		r, _ := utf8.DecodeRuneInString(name[i:])
		return diag.New(fmt.Sprintf("%s contains the control character %U", what, r), "remove it")
	}
	return nil
}

// checkNew refuses a new name for a row that is none, or that is taken.
func checkNew(what string, t *Table, name string) error {
	if err := checkName(what, name); err != nil {
		return err
	}
	if t.index(name) >= 0 {
		return diag.New(fmt.Sprintf("the name %q is already used%s", name, inTable(t.Name)), "another name")
	}
	return nil
}

func checkCell(text string, limit int) error {
	switch {
	case len(text) > limit:
		return diag.New(fmt.Sprintf("this text has %d bytes, but at most %d are allowed", len(text), limit), "shorten it")
	case !utf8.ValidString(text):
		return diag.New("this is not text in UTF-8", "type it in UTF-8")
	}
	return nil
}

func limitOf(table string) int {
	if table == "" {
		return maxTop
	}
	return maxCell
}

// find gives a row that an edit is about.
func (s *Sheet) find(table, row string) (*Table, *Row, error) {
	t, r := s.row(Ref{Table: table, Row: row})
	switch {
	case r != nil:
		return t, r, nil
	case t == nil && table != "":
		return nil, nil, diag.New(fmt.Sprintf("there is no table [%s]", encodeName(table)), "add a row to it first")
	}
	return t, nil, diag.New(fmt.Sprintf("there is no row %q%s", row, inTable(table)), "add it first")
}

func inTable(table string) string {
	if table == "" {
		return " before the first header"
	}
	return " in [" + encodeName(table) + "]" // which shows control characters as escapes
}

// after gives the place of the row behind which another one goes, -1 where that is not
// said; t is nil where there is no such table yet.
func (s *Sheet) after(table, name string) (int, error) {
	if name == "" {
		return -1, nil
	}
	t, r, err := s.find(table, name)
	if r == nil {
		return -1, err
	}
	return t.index(name), nil
}

func errKept(row string) error {
	return diag.New(fmt.Sprintf("%q is written in a form that cannot be edited here", row), "change it in a text editor")
}
