package sheet

import (
	"fmt"
	"strings"
	"testing"
)

func TestDiff(t *testing.T) {
	const text = "title = \"x\"\n[points]\nA = \"1\"\nB = { at = \"2\", on = \"b\" }\nC = {}\n"
	for _, c := range []struct{ name, now, want string }{
		{"same", text, ""},
		{"comments and order", "# c\ntitle = 'x'\n[points]\nB = { on = \"b\", at = \"2\" }\nC = {}\nA = \"1\" # d\n", ""},
		{"a cell", strings.Replace(text, `A = "1"`, `A = "7"`, 1), `points.A: "1" -> "7"`},
		{"a cell of several", strings.Replace(text, `"2"`, `"3"`, 1), `points.B.at: "2" -> "3"`},
		{"before the first header", strings.Replace(text, `"x"`, `"y"`, 1), `title: "x" -> "y"`},
		{"a cell more and one less", strings.Replace(text, `on = "b"`, `of = "b"`, 1), `points.B.of: new, "b"; points.B.on: gone, was "b"`},
		{"a row more", text + "D = 4\n", `points.D: new, "4"`},
		{"rows gone", "title = \"x\"\n", `points.A: gone, was "1"; points.B.at: gone, was "2"; points.B.on: gone, was "b"; points.C: gone, was ""`},
	} {
		var got []string
		for _, d := range Diff(mustParse(t, text), mustParse(t, c.now)) {
			got = append(got, said(d))
		}
		if strings.Join(got, "; ") != c.want {
			t.Errorf("%s: %s, want %s", c.name, strings.Join(got, "; "), c.want)
		}
	}
}

// said writes a change as points.A.at: "4, 0, 0" -> "4, 0, 1".
func said(c Change) string {
	name := strings.Trim(c.Table+"."+c.Row+"."+c.Key, ".")
	switch {
	case !c.Was && c.Is:
		return fmt.Sprintf("%s: new, %q", name, c.New)
	case c.Was && !c.Is:
		return fmt.Sprintf("%s: gone, was %q", name, c.Old)
	}
	return fmt.Sprintf("%s: %q -> %q", name, c.Old, c.New)
}
