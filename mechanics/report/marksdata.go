package report

import (
	"slices"
	"strconv"
	"strings"

	"trivet/mechanics/grade"
	"trivet/mechanics/say"
)

// marksObject is the object of `trivet mark --format json`; right says when an answer is.
func marksObject(c grade.Class) object {
	mark := func(m grade.Mark) object {
		return object{{"name", m.Name}, {"written", m.Typed}, {"verdict", m.Verdict.String()}, {"says", m.Says}, {"ok", m.Verdict.OK()}}
	}
	student := func(s grade.Student) object {
		return object{{"name", s.Name}, {"sheet,omitempty", s.Sheet}, {"right", s.Right()}, {"asked", s.Asked()},
			{"answers", say.Each(s.Marks, mark)}, {"remarks", s.Remarks()}, {"error,omitempty", s.Fault}}
	}
	return object{{"sheet", c.Sheet}, {"title", c.Title}, {"right", rule(c)},
		{"students", say.Each(c.Students, student)}, {"questions", c.ByQuestion()}}
}

// gradebook has a row for each student; the questions stand in the last rows of the
// other forms only, so that this one stays a table to sort.
func gradebook(c grade.Class) [][]string {
	rows := [][]string{slices.Concat(columns(c, "name", "sheet"), []string{"right", "asked"}, c.Questions, []string{"remarks"})}
	for _, s := range c.Students {
		verdicts := make([]string, len(c.Questions))
		for i, m := range s.Marks[:min(len(s.Marks), len(verdicts))] {
			verdicts[i] = m.Verdict.String()
		}
		of := append(columns(c, s.Name, s.Sheet), strconv.Itoa(s.Right()), strconv.Itoa(s.Asked()))
		rows = append(rows, slices.Concat(of, verdicts, []string{strings.Join(s.Remarks(), "; ")}))
	}
	return rows
}
