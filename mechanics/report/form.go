package report

import (
	"fmt"
	"slices"
	"strings"

	"trivet/mechanics/diag"
	"trivet/mechanics/doc"
	"trivet/mechanics/printable"
	"trivet/mechanics/say"
	"trivet/mechanics/statics"
	"trivet/mechanics/uncertainty"
	"trivet/mechanics/working"
)

// The forms that results are written in, keys of classes, and marks and sweeps.
var (
	Formats      = []string{"text", "json", "markdown", "latex", "html"}
	KeyFormats   = []string{"csv", "markdown", "csv,markdown"}
	TableFormats = []string{"text", "csv", "json", "markdown"}
)

// KnownFormat says that a form, of a key or a sweep, is none of the known ones.
func KnownFormat(format, of string, known []string) error {
	if slices.Contains(known, format) {
		return nil
	}
	return diag.New(fmt.Sprintf("unknown format %q", format)+of, say.Or(known...))
}

// noWorking is the form that holds results alone.
const noWorking = "json"

// single are the forms of which one holds one sheet.
var single = map[string]string{"latex": "a LaTeX document", "html": "an HTML page"}

// CheckFormat says what is wrong with a call for so many sheets in a form.
func CheckFormat(format string, steps bool, sheets int) error {
	switch {
	case steps && format == noWorking:
		others := slices.DeleteFunc(slices.Clone(Formats), func(f string) bool { return f == noWorking })
		return diag.New("the format "+format+" contains no working", "--format "+say.Or(others...)+" with --working")
	case sheets > 1 && single[format] != "":
		return diag.New(fmt.Sprintf("%s contains one sheet, but %d are named", single[format], sheets), "one of them")
	}
	return KnownFormat(format, "", Formats)
}

// Between is what stands before the i-th of several sheets, by its name.
func Between(format, name string, i, sheets int) string {
	switch {
	case sheets > 1 && format == "text":
		return strings.Repeat("\n", min(i, 1)) + printable.Line(name) + ":\n"
	case i > 0 && format == "markdown":
		return "\n"
	}
	return ""
}

// write writes in one of the forms what is there as a document, as rows and as an object.
func write(format string, d func() *doc.Doc, rows func() [][]string, o func() object) string {
	switch format {
	case "json":
		return string(marshal(o()))
	case "csv":
		return CSV(rows())
	}
	return printers[format](d())
}

// Results writes a solved sheet in a form. Text has the results, and the working
// behind them where steps are asked for; Markdown, LaTeX and HTML always have both,
// the last two the figure too. t is what the ± of the inputs does, nil where none has
// one; warnings are what JSON says of the sheet besides, the others by its words.
func Results(format, sheet string, s *statics.Solution, t *uncertainty.Effect, steps bool, warnings []*diag.Error) string {
	switch format {
	case "json":
		return string(JSON(sheet, s, t, warnings...))
	case "text":
		d := summary(s, t)
		if steps {
			addWorking(d, working.Build(s))
		}
		d.Add(lessonSection(s.Problem))
		return doc.Text(d)
	}
	return printers[format](pageOf(s, PageOptions{Uncertainty: t, unfigured: format == "markdown"}))
}
