package problem_test

import (
	"os"
	"regexp"
	"strings"
	"testing"

	"trivet/mechanics/problem"
	"trivet/mechanics/sheet"
)

// Every name of a result that the help lists is read, in the plane or in space.
func TestNamesOfTheHelp(t *testing.T) {
	help, err := os.ReadFile("../../fixtures/help/results.md")
	if err != nil {
		t.Fatal(err)
	}
	const rest = "[points]\nA = { at = \"A0\", on = \"beam\" }\nB = { at = \"B0\", on = \"beam\" }\nP = { at = \"P0\", on = \"particle\" }\nQ = \"Q0\"\n" +
		"[lines]\nT1 = { kind = \"cable\", path = \"P Q\" }\nT2 = { kind = \"cable\", path = \"P B\" }\nK = { kind = \"spring\", path = \"P A\", stiffness = \"2 N/m\", natural = \"1 m\" }\n" +
		"F = { kind = \"force\", at = \"P\", along = \"-y\", magnitude = \"5 N\" }\n[joints]\nC = { kind = \"fixed\", at = \"A\" }\n[couples]\nM0 = { on = \"beam\", about = \"+z\", magnitude = \"2 N m\" }\n" +
		"[distributed]\nq = { path = \"A B\", along = \"-y\", magnitude = \"3 N/m\" }\n"
	plane, errs := problem.Read(parse(t, "plane = \"xy\"\n"+strings.NewReplacer("A0", "0, 0", "B0", "4, 0", "P0", "4, 3", "Q0", "4, 9").Replace(rest)))
	if len(errs) > 0 {
		t.Fatal(errs)
	}
	space, errs := problem.Read(parse(t, strings.NewReplacer("A0", "0, 0, 0", "B0", "4, 0, 0", "P0", "4, 3, 0", "Q0", "4, 9, 1").Replace(rest)))
	if len(errs) > 0 {
		t.Fatal(errs)
	}
	read := 0
	for line := range strings.Lines(string(help)) {
		names, _, isRow := strings.Cut(strings.TrimPrefix(line, "|"), " | ")
		if !isRow {
			continue
		}
		for _, m := range regexp.MustCompile("`([^`]+)`").FindAllStringSubmatch(names, -1) {
			name := strings.ReplaceAll(m[1], `\|`, "|")
			_, inPlane := problem.ParseQuery(plane, name)
			_, inSpace := problem.ParseQuery(space, name)
			if read++; inPlane != nil && inSpace != nil {
				t.Errorf("%s: %v", name, inPlane)
			}
		}
	}
	if read < 20 {
		t.Errorf("the help lists %d names", read)
	}
}

func parse(t testing.TB, text string) *sheet.Sheet {
	t.Helper()
	s, err := sheet.Parse([]byte(text))
	if err != nil {
		t.Fatal(err)
	}
	return s
}
