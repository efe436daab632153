package tui

import (
	"trivet/mechanics/report"
	"trivet/mechanics/sheet"
	"trivet/mechanics/statics"
	"trivet/mechanics/uncertainty"
)

// pageEndings are the formats of a page.
const pageEndings = ".md .tex .html .pdf .svg .png"

// WritePage writes a page to the file of that name, whole or not at all.
func WritePage(p Page, file, name string, s *statics.Solution, of *sheet.Sheet, force bool) error {
	format, err := report.PageFormat(file, 1)
	if err != nil {
		return err
	}
	page, err := report.Page(format, s, report.PageOptions{
		Field: p == FieldPage, Task: p == TaskPage, Sheet: of, File: name, Trust: uncertainty.Of(of, s),
	})
	if err != nil {
		return err
	}
	return sheet.Write(file, page, force)
}
