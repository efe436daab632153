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

// Formats are the forms that results are written in.
func Formats() []string { return []string{"text", "json", "markdown", "latex", "html"} }

// FormatWords lists the forms in a sentence.
func FormatWords() string { return say.Or(Formats()...) }

// noWorking is the form that holds results alone.
const noWorking = "json"

// CheckFormat says what is wrong with a call for so many sheets in a form.
func CheckFormat(format string, steps bool, sheets int) error {
	switch {
	case !slices.Contains(Formats(), format):
		return diag.New(fmt.Sprintf("unknown format %q", format), FormatWords())
	case steps && format == noWorking:
		others := slices.DeleteFunc(Formats(), func(f string) bool { return f == noWorking })
		return diag.New("the format "+format+" contains no working", "--format "+say.Or(others...)+" with --working")
	case format == "latex" && sheets > 1:
		return diag.New(fmt.Sprintf("a LaTeX document contains one sheet, but %d are named", sheets), "one of them")
	case format == "html" && sheets > 1:
		return diag.New(fmt.Sprintf("an HTML page contains one sheet, but %d are named", sheets), "one of them")
	}
	return nil
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
			d.Sections = append(d.Sections, workingSections(working.Build(s))...)
		}
		d.Add(lessonSection(s.Problem))
		return doc.Text(d)
	}
	return printers[format](pageOf(s, PageOptions{Uncertainty: t, unfigured: format == "markdown"}))
}
