package report

import (
	"fmt"
	"strings"

	"github.com/charmbracelet/x/ansi"

	"trivet/mechanics/printable"
	"trivet/mechanics/statics"
	"trivet/mechanics/uncertainty"
)

// width is how wide a line of prose gets; tables take what they need.
const width = 80

// Text writes a solved sheet for reading in a terminal or a file; t may be nil.
func Text(s *statics.Solution, t *uncertainty.Effect) string {
	var b strings.Builder
	p := s.Problem
	if p.Title != "" {
		b.WriteString(hung("", printed(p.Title)) + "\n")
	}
	for _, line := range s.VerdictWords() { // the warnings stand on standard error
		b.WriteString(hung("", line))
	}
	for _, says := range atRisk(t) {
		b.WriteString(hung(AtRisk+": ", says))
	}
	section(&b, "unknowns", unknownRows(s, t))
	section(&b, "asked", askedRows(s))
	trustText(&b, t)
	section(&b, "lines of action: r from the first point to the second, u = r/|r|", lineRows(p))
	title, rows, words := "equations of equilibrium: coefficients of the unknowns = minus known forces", systemRows(s), []int(nil)
	if len(s.X) > mostColumns {
		words = []int{1} // the sums, which may begin with a number
	}
	section(&b, title, rows, words...)
	list(&b, "checks", checkItems(s, t))
	if c, ok := s.Governing(); ok {
		b.WriteString("\n" + hung("governing: ", governingWords(s, t, c)))
	}
	list(&b, "reference answers", answerItems(s))
	b.WriteString("\n" + hung("", "Caution: "+Caution+"."))
	return b.String()
}

// hung sets prose in lines of the width, all but the first indented by its mark.
func hung(mark, text string) string {
	indent := ansi.StringWidth(mark)
	lines := strings.Split(ansi.Wordwrap(printable.Text(text), width-indent, ""), "\n")
	return mark + strings.Join(lines, "\n"+strings.Repeat(" ", indent)) + "\n"
}

// item is a line of a list: whether it holds, if only as typed, and what it says.
type item struct {
	ok, risk bool
	says     string
}

func list(b *strings.Builder, title string, items []item) {
	if len(items) == 0 {
		return
	}
	fmt.Fprintf(b, "\n%s\n", title)
	wide := 0
	for _, it := range items {
		wide = max(wide, len(it.mark()))
	}
	for _, it := range items {
		b.WriteString(hung(fmt.Sprintf("  %-*s  ", wide, it.mark()), it.says))
	}
}

func (it item) mark() string {
	switch {
	case !it.ok:
		return "FAILS"
	case it.risk:
		return AtRisk
	}
	return "ok"
}

func section(b *strings.Builder, title string, rows [][]string, left ...int) {
	if len(rows) == 0 {
		return
	}
	fmt.Fprintf(b, "\n%s\n%s", title, columns(rows, left...))
}

// checkItems are the checks; those of unit vectors that hold take one line.
func checkItems(s *statics.Solution, t *uncertainty.Effect) []item {
	var items []item
	var lines []string
	off := 0.0
	for _, c := range s.Checks {
		if c.Kind == statics.CheckUnit && c.OK {
			lines, off = append(lines, c.Subject), max(off, c.Value)
		}
	}
	if len(lines) > 0 {
		all := statics.Check{Kind: statics.CheckUnit, Subject: strings.Join(lines, ", "), Value: off, OK: true}
		items = append(items, item{ok: true, says: all.Says(s.Problem)})
	}
	for k, c := range s.Checks {
		if c.Kind != statics.CheckUnit || !c.OK {
			items = append(items, item{c.OK, t.CheckAtRisk(k), c.Says(s.Problem)})
		}
	}
	return items
}

func answerItems(s *statics.Solution) []item {
	var items []item
	for _, a := range s.Answers {
		says := a.Says(s.Problem)
		if a.Why != "" {
			says += " (" + a.Why + ")"
		}
		items = append(items, item{ok: a.OK, says: says})
	}
	return items
}
