package report

import (
	"encoding/csv"
	"encoding/json"
	"strings"
	"testing"

	"trivet/mechanics/grade"
)

// A name that a spreadsheet would run is a text in the gradebook, and bytes that a
// terminal might obey are dots.
func TestMarksAreGuarded(t *testing.T) {
	names := []string{"=1+1", "+Ada", "-Ben", "@Cy", " =x", "\t=y", "Dee, E.", "Eva \"e\"", "a\x1b[31mb", "Flo"}
	want := []string{"'=1+1", "'+Ada", "'-Ben", "'@Cy", "' =x", "' =y", "Dee, E.", "Eva \"e\"", "a·[31mb", "Flo"}
	c := grade.Class{Questions: []string{"T1"}}
	for _, n := range names {
		c.Students = append(c.Students, grade.Student{Name: n, Fault: "=not marked"})
	}
	rows, err := csv.NewReader(strings.NewReader(Marks("csv", c))).ReadAll()
	if err != nil || len(rows) != len(names)+1 {
		t.Fatalf("%v, %d rows", err, len(rows))
	}
	for i, w := range want {
		if r := rows[i+1]; r[0] != w || r[len(r)-1] != "'=not marked" {
			t.Errorf("%q is written as %q", names[i], r)
		}
	}
	for _, format := range TableFormats {
		if text := Marks(format, c); strings.Contains(text, "\x1b") {
			t.Errorf("%s has an escape in it", format)
		}
	}
}

func TestMarksInJSON(t *testing.T) {
	c := grade.Class{Sheet: "mast.toml", Title: "Mast", Rule: grade.Rule{Within: 0.01}, Questions: []string{"T1"}, Students: []grade.Student{
		{Name: "Ada", Marks: []grade.Mark{{Name: "T1", Typed: "2.5", Verdict: grade.Right, Says: "right"}}},
		{Name: "Ben", Marks: []grade.Mark{{Name: "T1", Typed: "-2.5", Verdict: grade.Sign, Says: "sign reversed"}}},
		{Name: "Cy", Marks: []grade.Mark{{Name: "T1", Typed: "2.5 C", Verdict: grade.Sign, Says: "sign reversed: it is no compression"}}},
		{Name: "Dee", Fault: "there is no sheet"},
	}}
	type mark struct {
		Name, Written, Verdict, Says string
		OK                           bool
	}
	var got struct {
		Sheet, Right string
		Students     []struct {
			Right   int
			Answers []mark
			Error   string
		}
		Questions []grade.Question
	}
	if err := json.Unmarshal([]byte(Marks("json", c)), &got); err != nil {
		t.Fatal(err)
	}
	if got.Sheet != "mast.toml" || got.Right != "within 1 %" || len(got.Students) != 4 || got.Students[3].Error != "there is no sheet" ||
		got.Students[1].Answers[0] != (mark{"T1", "-2.5", "sign reversed", "sign reversed", false}) || got.Students[0].Right != 1 ||
		got.Questions[0] != (grade.Question{Name: "T1", Of: 3, Answered: 3, Right: 1, Often: "sign reversed", Times: 2}) {
		t.Errorf("%+v", got)
	}
}
