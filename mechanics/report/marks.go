package report

import (
	"fmt"
	"strings"

	"trivet/mechanics/grade"
	"trivet/units"
)

// MarkFormats are the forms that marks are written in.
func MarkFormats() []string { return []string{"text", "csv", "json", "markdown"} }

// Marks writes the marks of a class in a form: a row for each student, what was not
// right, and how each question went.
func Marks(format string, c grade.Class) string {
	switch format {
	case "json":
		return marksJSON(c)
	case "csv":
		return marksCSV(c)
	case "markdown":
		return marksMarkdown(c)
	}
	var b strings.Builder
	if c.Title != "" {
		b.WriteString(hung("", printed(c.Title)))
	}
	b.WriteString(hung("", marksHead(c)))
	rows := [][]string{append([]string{""}, marksColumns(c)...)}
	for _, s := range c.Students {
		rows = append(rows, append([]string{printed(s.Name)}, marksRow(c, s)...))
	}
	left := make([]int, len(rows[0]))
	for i := range left {
		left[i] = i
	}
	section(&b, "students", rows, left...)
	if lines := remarkLines(c); len(lines) > 0 {
		b.WriteString("\nremarks\n")
		for _, l := range lines {
			b.WriteString(hung("  "+l[0]+": ", l[1]))
		}
	}
	b.WriteString("\nby question\n")
	for _, q := range c.ByQuestion() {
		b.WriteString(hung("  ", questionWords(q)))
	}
	return b.String()
}

// marksHead says when an answer was right.
func marksHead(c grade.Class) string {
	if c.Rule.Within > 0 {
		return plural(len(c.Students), "student") + "; right: within " + units.Compact(100*c.Rule.Within) + " %"
	}
	return fmt.Sprintf("%s; right: to the precision written or to %d significant figures", plural(len(c.Students), "student"), grade.Figures)
}

// hasSheets tells that students had different sheets.
func hasSheets(c grade.Class) bool {
	for _, s := range c.Students {
		if s.Sheet != "" {
			return true
		}
	}
	return false
}

func marksColumns(c grade.Class) []string {
	out := []string{"right"}
	if hasSheets(c) {
		out = []string{"sheet", "right"}
	}
	return append(out, c.Questions...)
}

// marksRow is a student's row behind the name: marks out of asked, and a word for
// each answer.
func marksRow(c grade.Class, s grade.Student) []string {
	var out []string
	if hasSheets(c) {
		out = append(out, printed(s.Sheet))
	}
	if s.Fault != "" {
		return append(out, "not marked")
	}
	out = append(out, fmt.Sprintf("%d of %d", s.Right(), s.Asked()))
	for _, m := range s.Marks {
		out = append(out, m.Verdict.Short())
	}
	return out
}

// remarkLines are who, and what is said to them.
func remarkLines(c grade.Class) [][2]string {
	var out [][2]string
	for _, s := range c.Students {
		if r := s.Remarks(); len(r) > 0 {
			out = append(out, [2]string{printed(s.Name), printed(strings.Join(r, "; "))})
		}
	}
	return out
}

// questionWords says how many had a question right, and the commonest mistake.
func questionWords(q grade.Question) string {
	s := fmt.Sprintf("%s: %d of %d right", q.Name, q.Right, q.Of)
	if n := q.Of - q.Answered; n > 0 {
		s += fmt.Sprintf(", %d missing", n)
	}
	if q.Times > 0 {
		s += fmt.Sprintf("; commonest mistake: %s (%d)", printed(q.Often), q.Times)
	}
	return s
}

func marksMarkdown(c grade.Class) string {
	var b strings.Builder
	if c.Title != "" {
		b.WriteString("# " + markdownText(c.Title) + "\n\n")
	}
	b.WriteString(markdownText(marksHead(c)) + ".\n\n")
	escaped := func(cells []string) []string {
		out := make([]string, len(cells))
		for i, cell := range cells {
			out[i] = markdownText(cell)
		}
		return out
	}
	head := escaped(append([]string{"student"}, marksColumns(c)...))
	var rows [][]string
	for _, s := range c.Students {
		row := escaped(append([]string{s.Name}, marksRow(c, s)...))
		for len(row) < len(head) {
			row = append(row, "")
		}
		rows = append(rows, row)
	}
	b.WriteString(markdownTable(head, rows))
	if lines := remarkLines(c); len(lines) > 0 {
		b.WriteString("\n## Remarks\n\n")
		for _, l := range lines {
			b.WriteString("- " + markdownText(l[0]) + ": " + markdownText(l[1]) + "\n")
		}
	}
	b.WriteString("\n## By question\n\n")
	for _, q := range c.ByQuestion() {
		b.WriteString("- " + markdownText(questionWords(q)) + "\n")
	}
	return b.String()
}
