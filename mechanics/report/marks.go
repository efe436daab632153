package report

import (
	"fmt"
	"slices"
	"strings"

	"trivet/mechanics/doc"
	"trivet/mechanics/grade"
	"trivet/mechanics/say"
	"trivet/units"
)

// Marks writes the marks of a class in a form: a row for each student, what was not
// right, and how each question went.
func Marks(format string, c grade.Class) string {
	return write(format, func() *doc.Doc { return marksDoc(c) }, func() [][]string { return gradebook(c) }, func() object { return marksObject(c) })
}

// marksDoc is the marks of a class as a document.
func marksDoc(c grade.Class) *doc.Doc {
	d := &doc.Doc{Title: oneLine(c.Title)}
	d.Add(doc.Section{Blocks: []doc.Block{doc.Say(say.Count(len(c.Students), "student") + "; right: " + rule(c) + ".")}})
	head := []string{"student", "right"}
	if hasSheets(c) {
		head = []string{"student", "sheet", "right"}
	}
	table := doc.NewTable(append(head, c.Questions...)...)
	remarks := &doc.List{}
	for _, s := range c.Students {
		table.Add(each(marksRow(c, s), words)...)
		if r := s.Remarks(); len(r) > 0 {
			remarks.Items = append(remarks.Items, doc.Plain(s.Name+": "+strings.Join(r, "; ")))
		}
	}
	d.Add(section(doc.Other, "Students", table))
	if len(remarks.Items) > 0 {
		d.Add(part(doc.Other, "Remarks", remarks))
	}
	questions := &doc.List{Items: each(c.ByQuestion(), func(q grade.Question) []doc.Inline { return doc.Plain(questionWords(q)) })}
	d.Add(part(doc.Other, "By question", questions))
	return d
}

// rule says when an answer is right.
func rule(c grade.Class) string {
	if c.Rule.Within > 0 {
		return "within " + units.Compact(100*c.Rule.Within) + " %"
	}
	return fmt.Sprintf("to the precision written or to %d significant figures", grade.Figures)
}

// hasSheets tells that students had different sheets.
func hasSheets(c grade.Class) bool {
	return slices.ContainsFunc(c.Students, func(s grade.Student) bool { return s.Sheet != "" })
}

// marksRow is a student's row: marks out of asked, and a word for each answer.
func marksRow(c grade.Class, s grade.Student) []string {
	out := []string{s.Name}
	if hasSheets(c) {
		out = append(out, s.Sheet)
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

// questionWords says how many had a question right, and the commonest mistake.
func questionWords(q grade.Question) string {
	s := fmt.Sprintf("%s: %d of %d right", q.Name, q.Right, q.Of)
	if n := q.Of - q.Answered; n > 0 {
		s += fmt.Sprintf(", %d missing", n)
	}
	if q.Times > 0 {
		s += fmt.Sprintf("; commonest mistake: %s (%d)", q.Often, q.Times)
	}
	return s
}
