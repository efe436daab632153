package sheet

import (
	"fmt"
	"strings"
	"unicode"
	"unicode/utf8"

	"trivet/mechanics/diag"
)

// Edit is a change of a sheet as a value: SetCell, DropCell, AddRow, DeleteRow,
// DeleteTable, RenameRow, MoveRow or DuplicateRow.
type Edit interface {
	edit(s *Sheet) ([]splice, error)
}

// Apply gives the sheet with edits made one after the other. An error is an
// *diag.Error of the first edit that was refused; the sheet is as it was then.
func (s *Sheet) Apply(edits ...Edit) (*Sheet, error) {
	if s.under != nil {
		s = s.under
	}
	for len(edits) > 0 {
		splices, n, refused := s.together(edits)
		if len(splices) > 0 {
			next, err := parse(spliced(s.text, splices))
			if err != nil {
				wrong := diag.Of(err)
				wrong.Place = diag.Place{} // in a text that nobody has seen
				return nil, wrong
			}
			s = next
		}
		if refused != nil {
			return nil, refused
		}
		edits = edits[n:]
	}
	return s, nil
}

// together gives the splices of the first edit, and of those behind it that put a text
// in the place of another cell's: a name used in a thousand cells costs one reading. n
// is how many edits these are.
func (s *Sheet) together(edits []Edit) (out []splice, n int, err error) {
	taken := map[diag.Span]bool{}
	for _, e := range edits {
		if e == nil {
			return out, n, diag.New("there is nothing to change", "")
		}
		set, _ := e.(SetCell)
		c, _ := s.Cell(set.Ref)
		if n > 0 && (!c.Readable || taken[c.value]) {
			return out, n, nil
		}
		splices, err := e.edit(s)
		if err != nil {
			return out, n, err
		}
		out, taken[c.value] = append(out, splices...), true
		if n++; !c.Readable {
			return out, n, nil
		}
	}
	return out, n, nil
}

// maxName is the most bytes a name typed into a sheet may have.
const maxName = 256

// checkName refuses what cannot be a name.
func checkName(what, name string) error {
	switch {
	case strings.TrimSpace(name) == "":
		return diag.New(what+" is empty", "type a name")
	case len(name) > maxName:
		return diag.New(fmt.Sprintf("%s has %d bytes, but at most %d are allowed", what, len(name), maxName), "shorten it")
	}
	if i := strings.IndexFunc(name, unicode.IsControl); i >= 0 {
		r, _ := utf8.DecodeRuneInString(name[i:])
		return diag.New(fmt.Sprintf("%s contains the control character %U", what, r), "remove it")
	}
	return checkText(what, name)
}

// checkNew refuses a new name for a row that is none, or that is taken.
func checkNew(what string, t Table, name string) error {
	if err := checkName(what, name); err != nil {
		return err
	}
	if t.index(name) >= 0 {
		return diag.New(fmt.Sprintf("the name %q is already used%s", name, inTable(t.Name)), "another name")
	}
	return nil
}

// checkText refuses what would be written as another text. A cell that is too long is
// refused when it is read.
func checkText(what, text string) error {
	if !utf8.ValidString(text) {
		return diag.New(what+" is not text in UTF-8", "type it in UTF-8")
	}
	return nil
}

// find gives a row that an edit is about.
func (s *Sheet) find(table, row string) (Table, Row, error) {
	t := s.Table(table)
	r, ok := t.Row(row)
	switch {
	case ok:
		return t, r, nil
	case t.at.End == 0 && table != "":
		return t, r, diag.New(fmt.Sprintf("there is no table [%s]", EncodeName(table)), "add a row to it first")
	}
	return t, r, diag.New(fmt.Sprintf("there is no row %q%s", row, inTable(table)), "add it first")
}

func inTable(table string) string {
	if table == "" {
		return " before the first header"
	}
	return " in [" + EncodeName(table) + "]" // which shows control characters as escapes
}

func errKept(row string) error {
	return diag.New(fmt.Sprintf("%q is written in a form that cannot be edited here", row), "change it in a text editor")
}
