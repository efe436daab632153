package report

import (
	"fmt"
	"slices"
	"strings"

	"trivet/mechanics/diag"
	"trivet/mechanics/printable"
	"trivet/mechanics/statics"
	"trivet/mechanics/uncertainty"
	"trivet/mechanics/working"
)

// Formats are the forms that results are written in.
func Formats() []string { return []string{"text", "json", "markdown", "latex", "html"} }

// FormatWords lists the forms in a sentence.
func FormatWords() string { return oneOf(Formats()) }

// noWorking is the form that holds results alone.
const noWorking = "json"

func oneOf(all []string) string {
	return strings.Join(all[:len(all)-1], ", ") + " or " + all[len(all)-1]
}

// CheckFormat says what is wrong with a call for so many sheets in a form.
func CheckFormat(format string, steps bool, sheets int) error {
	switch {
	case !slices.Contains(Formats(), format):
		return fmt.Errorf("there is no format %q: write %s", format, FormatWords())
	case steps && format == noWorking:
		others := slices.DeleteFunc(Formats(), func(f string) bool { return f == noWorking })
		return fmt.Errorf("%s holds no working: write --format %s with --working", format, oneOf(others))
	case format == "latex" && sheets > 1:
		return fmt.Errorf("a LaTeX document holds one sheet, and here are %d: name one", sheets)
	case format == "html" && sheets > 1:
		return fmt.Errorf("an HTML page holds one sheet, and here are %d: name one", sheets)
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
	case "markdown":
		return Markdown(working.Build(s), Parts{Trust: t})
	case "latex":
		return string(texPage(s, PageOptions{Trust: t}))
	case "html":
		return string(htmlPage(pageOf(s, PageOptions{Trust: t})))
	}
	text := Text(s, t)
	if steps {
		text += "\n" + TextWorking(working.Build(s))
	}
	if source := sourceLine(s.Problem); source != "" {
		text += "\n" + hung("", source)
	}
	return text
}
