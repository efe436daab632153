package report

import (
	"slices"
	"strconv"
	"strings"

	"trivet/mechanics/doc"
	"trivet/mechanics/grade"
)

// The object of `trivet mark --format json`.
type (
	jsonClass struct {
		Sheet     string           `json:"sheet"`
		Title     string           `json:"title"`
		Right     string           `json:"right"` // when an answer is
		Students  []jsonStudent    `json:"students"`
		Questions []grade.Question `json:"questions"`
	}
	jsonStudent struct {
		Name    string     `json:"name"`
		Sheet   string     `json:"sheet,omitempty"`
		Right   int        `json:"right"`
		Asked   int        `json:"asked"`
		Answers []jsonMark `json:"answers"`
		Remarks []string   `json:"remarks"`
		Error   string     `json:"error,omitempty"`
	}
	jsonMark struct {
		Name    string `json:"name"`
		Written string `json:"written"`
		Verdict string `json:"verdict"`
		Says    string `json:"says"`
		OK      bool   `json:"ok"`
	}
)

func marksJSON(c grade.Class) string {
	mark := func(m grade.Mark) jsonMark {
		return jsonMark{m.Name, m.Typed, m.Verdict.String(), m.Says, m.Verdict.OK()}
	}
	student := func(s grade.Student) jsonStudent {
		return jsonStudent{s.Name, s.Sheet, s.Right(), s.Asked(), each(s.Marks, mark), s.Remarks(), s.Fault}
	}
	return string(marshal(jsonClass{c.Sheet, c.Title, rule(c), each(c.Students, student), c.ByQuestion()}))
}

// marksCSV is a row for each student; the questions stand in the last rows of the
// other forms only, so that this one stays a table to sort.
func marksCSV(c grade.Class) string {
	rows := [][]string{slices.Concat([]string{"name", "sheet", "right", "asked"}, c.Questions, []string{"remarks"})}
	for _, s := range c.Students {
		verdicts := make([]string, len(c.Questions))
		for i, m := range s.Marks[:min(len(s.Marks), len(verdicts))] {
			verdicts[i] = m.Verdict.String()
		}
		of := []string{s.Name, s.Sheet, strconv.Itoa(s.Right()), strconv.Itoa(s.Asked())}
		rows = append(rows, slices.Concat(of, verdicts, []string{strings.Join(s.Remarks(), "; ")}))
	}
	if !hasSheets(c) {
		for i, row := range rows {
			rows[i] = slices.Delete(row, 1, 2)
		}
	}
	return csvText(rows, guarded)
}

// guarded puts a ' before a text that a spreadsheet would run as a formula.
func guarded(text string) string {
	text = doc.Printed(text)
	if t := strings.TrimLeft(text, " "); t != "" && strings.ContainsRune("=+-@", rune(t[0])) {
		return "'" + text
	}
	return text
}
