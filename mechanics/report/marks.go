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
	table := doc.NewTable(slices.Concat(columns(c, "student", "sheet"), []string{"right"}, c.Questions)...)
	remarks := &doc.List{}
	for _, s := range c.Students {
		row := append(columns(c, s.Name, s.Sheet), fmt.Sprintf("%d of %d", s.Right(), s.Asked()))
		if s.Fault != "" {
			row = append(columns(c, s.Name, s.Sheet), "not marked")
		}
		row = append(row, say.Each(s.Marks, func(m grade.Mark) string { return m.Verdict.Short() })...)
		table.Add(say.Each(row, words)...)
		if r := s.Remarks(); len(r) > 0 {
			remarks.Items = append(remarks.Items, doc.Plain(s.Name+": "+strings.Join(r, "; ")))
		}
	}
	d.Add(section(doc.Other, "Students", table))
	if len(remarks.Items) > 0 {
		d.Add(part(doc.Other, "Remarks", remarks))
	}
	questions := &doc.List{Items: say.Each(c.ByQuestion(), func(q grade.Question) []doc.Inline { return doc.Plain(questionWords(q)) })}
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

// columns are the first of a table of marks: the sheet among them where students had
// different ones.
func columns(c grade.Class, student, sheet string) []string {
	if slices.ContainsFunc(c.Students, func(s grade.Student) bool { return s.Sheet != "" }) {
		return []string{student, sheet}
	}
	return []string{student}
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
