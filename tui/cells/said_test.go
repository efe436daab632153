package cells

import (
	"testing"

	"trivet/mechanics/names"
	"trivet/mechanics/problem"
	"trivet/mechanics/sheet"
)

// What is wrong is said with the keys of the file for one who types a file, and with the heads of the
// columns for one who types in a pane.
func TestKeysAreSaidAsTheReaderSeesThem(t *testing.T) {
	for _, c := range []struct{ line, file, pane string }{
		{`T = { kind = "cable" }`, "the line T has no point of application. Try: path T A, or at T and along +x",
			"line T: the line T has no point of application. Try: through T A, or through T and direction +x"},
		{`T = { kind = "cable", at = "P" }`, "the line T has no direction. Try: along +x, (3, 0, -4) or dir(A, B)",
			"line T: the line T has no direction. Try: direction +x, (3, 0, -4) or dir(A, B)"},
		{`T = { kind = "cable", path = "P" }`, `"path" needs at least two points. Try: the form T A`,
			`line T through: "through" needs at least two points. Try: the form T A`},
		{`T = { kind = "cable", path = "P A", along = "+x" }`, `the line T has both "path" and "along". Try: remove one of them`,
			`line T direction: the line T has both "through" and "direction". Try: remove one of them`},
		{`T = { kind = "cable", at = "P A" }`, "the line T acts at one point, but P A is two. Try: path P A",
			"line T through: the line T acts at one point, but P A is two. Try: through P A"},
		{`T = { kind = "force", path = "P A P", magnitude = "2 N" }`, "a force is straight, so its path has two points, not three. Try: path P A",
			"line T through: a force is straight, so its path has two points, not three. Try: through P A"},
		{`T = { kind = "spring", at = "P", along = "+x", stiffness = "5 N/m", natural = "1 m" }`, "the length of the spring T follows from its two ends. Try: path C D instead of along",
			"line T: the length of the spring T follows from its two ends. Try: through C D instead of direction"},
		{`T = { kind = "belt", path = "A P", friction = "0.3" }`, `"path" of a belt has three points, and this one has 2. Try: path A C B, from one end round the drum at C to the other end`,
			`line T through: "through" of a belt has three points, and this one has 2. Try: through A C B, from one end round the drum at C to the other end`},
		{`T = { kind = "belt", friction = "0.3" }`, `the belt T has no "path". Try: path A C B, from one end round the drum at C to the other end`,
			`line T: the belt T has no "through". Try: through A C B, from one end round the drum at C to the other end`},
	} {
		s, err := sheet.Parse([]byte("[points]\nP = { at = \"0, 0, 0\", on = \"particle\" }\nA = \"0, 0, 3\"\n[lines]\nW = { kind = \"weight\", at = \"P\", magnitude = \"9 N\" }\n" + c.line + "\n"))
		if err != nil {
			t.Fatal(err)
		}
		_, errs := names.Read(problem.NewReader(), s)
		if len(errs) != 1 || errs[0].Text() != c.file || Located(errs[0]) != c.pane {
			t.Errorf("%s", c.line)
			for _, e := range errs {
				t.Errorf("%s\n%s", e.Text(), Located(e))
			}
		}
	}
}
