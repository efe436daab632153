package call

import (
	"path/filepath"
	"slices"
	"strings"

	"trivet/mechanics/grade"
	"trivet/mechanics/report"
	"trivet/mechanics/sheet"
)

// markSheets marks the [answers] of sheets that students hand in. Nothing else of
// them is looked at: they are held against the instructor's solution.
func (c *Call) markSheets(class *grade.Class, key *grade.Key, files []string) {
	class.Questions = key.Asked()
	sheets := make([]*sheet.Sheet, len(files))
	faults := make([]string, len(files))
	for i, file := range files {
		var err error
		if file == standardIn {
			sheets[i], err = sheet.Read(c.Stdin)
		} else {
			sheets[i], _, err = sheet.Load(file)
		}
		if err != nil {
			faults[i] = report.FileFault(file, err).Error()
			continue
		}
		for _, row := range sheets[i].Table("answers").Rows {
			if q, err := key.Query(row.Name); err == nil && !slices.Contains(class.Questions, q.Name) {
				class.Questions = append(class.Questions, q.Name)
			}
		}
	}
	for i, file := range files {
		s := grade.Student{Name: student(file), Fault: faults[i]}
		if sheets[i] != nil {
			s.Marks, s.Notes = key.Mark(answersOf(key, sheets[i], class.Questions))
			for _, row := range sheets[i].Table("answers").Rows {
				if _, err := key.Query(row.Name); err != nil && row.Name != "source" {
					s.Notes = append(s.Notes, row.Name+": "+err.Error())
				}
			}
		}
		class.Students = append(class.Students, s)
	}
	c.noValues(class)
}

// student is who handed in a file: its name without ending.
func student(file string) string {
	if file == standardIn {
		return display(file)
	}
	return strings.TrimSuffix(filepath.Base(file), filepath.Ext(file))
}

// answersOf are the answers that a sheet holds to some questions.
func answersOf(key *grade.Key, s *sheet.Sheet, questions []string) []grade.Typed {
	out := make([]grade.Typed, len(questions))
	for i, name := range questions {
		out[i] = grade.Typed{Name: name}
	}
	for _, row := range s.Table("answers").Rows {
		q, err := key.Query(row.Name)
		i := slices.Index(questions, q.Name)
		if err != nil || i < 0 {
			continue
		}
		cell, bare := row.Cell("")
		if !bare {
			cell, _ = row.Cell("printed")
		}
		out[i].Text = cell.Text
	}
	return out
}
