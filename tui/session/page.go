package session

import (
	"fmt"
	"path/filepath"
	"strings"

	tea "charm.land/bubbletea/v2"

	"trivet/mechanics/report"
	"trivet/mechanics/sheet"
	"trivet/mechanics/statics"
	"trivet/mechanics/uncertainty"
	"trivet/mechanics/variant"
)

// Page is a kind of page; 0 stands for the sheet itself.
type Page int

// The pages: the working with all results; one for the file of a job; one to hand
// out, with the task and no result.
const (
	NoPage Page = iota
	WorkingPage
	FieldPage
	TaskPage
)

// pages are what asks for a page's file, and what stands behind a sheet's name, so that one page
// does not take the place of another.
var pages = [...]struct{ asks, behind string }{
	NoPage: {"save as", ""}, WorkingPage: {"page as", ""}, FieldPage: {"field page as", "-field"}, TaskPage: {"page to hand out as", "-task"},
}

// endings are the formats of a page.
const endings = ".md .tex .html .pdf .svg .png"

// Prompt asks for a page's file; a long one says what its name may end in.
func (p Page) Prompt(long bool) string {
	if long && p != NoPage {
		return pages[p].asks + " (" + endings + "): "
	}
	return pages[p].asks + ": "
}

// Name is how the name of a page's file begins, beside that of its sheet.
func (p Page) Name(path string) string {
	name := "page"
	if path != "" {
		name = strings.TrimSuffix(path, filepath.Ext(path))
	}
	return name + pages[p].behind + "."
}

// PageWriter writes a page of a solution to a file, in the format that the file's
// name ends with; name is the sheet's. A file that is there already is a *sheet.ChangedError unless
// forced.
type PageWriter func(p Page, file, name string, s *statics.Solution, of *sheet.Sheet, force bool) error

// Paged is what became of a page.
type Paged struct {
	Page  Page
	File  string
	Err   error
	Doubt string // what its words say against its numbers
}

// Cmd writes the page of a result in a command.
func (write PageWriter) Cmd(p Page, file, name string, r *Result, force bool) tea.Cmd {
	s, of := r.Solution, r.Sheet
	return func() (msg tea.Msg) {
		// A fault of ours in here must not cost what was typed and not saved.
		defer func() {
			if r := recover(); r != nil {
				msg = Paged{Page: p, File: file, Err: fmt.Errorf("this page could not be laid out (fault: %v)", r)}
			}
		}()
		out := Paged{Page: p, File: file, Err: write(p, file, name, s, of, force)}
		if of != nil {
			for _, c := range variant.Contradictions(of, s.Problem) {
				out.Doubt = "; " + c.Text()
			}
		}
		return out
	}
}

// PagesBy gives what writes a page to the file of that name, whole or not at all; a field
// page names the version of the program.
func PagesBy(version string) PageWriter {
	return func(p Page, file, name string, s *statics.Solution, of *sheet.Sheet, force bool) error {
		format, err := report.PageFormat(file, 1)
		if err != nil {
			return err
		}
		return report.WritePage(file, format, s, report.PageOptions{
			Field: p == FieldPage, Task: p == TaskPage, Sheet: of, File: name, Version: version, Uncertainty: uncertainty.Of(of, s),
		}, force)
	}
}
