package tui

import (
	"trivet/mechanics/report"
	"trivet/mechanics/sheet"
	"trivet/mechanics/statics"
	"trivet/mechanics/uncertainty"
)

// pageEndings are the formats of a page.
const pageEndings = ".md .tex .html .pdf .svg .png"

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
