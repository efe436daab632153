package sheet

import (
	"fmt"
	"strings"
	"testing"
)

// rowsOf writes the rows of a sheet one a line, for comparing.
func rowsOf(s *Sheet) string {
	var sb strings.Builder
	for _, t := range s.Tables {
		for _, r := range t.Rows {
			fmt.Fprintf(&sb, "[%s] %s:", t.Name, r.Name)
			for _, c := range r.Cells {
				if c.Readable {
					fmt.Fprintf(&sb, " %s=%q", c.Key, c.Text)
				} else {
					fmt.Fprintf(&sb, " %s kept", c.Key)
				}
			}
			sb.WriteByte('\n')
		}
		if len(t.Rows) == 0 {
			fmt.Fprintf(&sb, "[%s]\n", t.Name)
		}
	}
	return sb.String()
}

func TestRows(t *testing.T) {
	for _, c := range []struct{ name, text, want string }{
		{"empty", "", ""},
		{"only a comment", "# nothing\n", ""},
		{"top level", "title = \"Mast\"\nfigures = 3\nasked = true", "[] title: =\"Mast\"\n[] figures: =\"3\"\n[] asked: =\"true\"\n"},
		{"bare", "[points]\nA = \"4, 0, 0\"\n", "[points] A: =\"4, 0, 0\"\n"},
		{"inline", "[points]\nA = { at = \"1, 2\", on = 'b' }", "[points] A: at=\"1, 2\" on=\"b\"\n"},
		{"empty inline", "[points]\nA = {}", "[points] A:\n"},
		{"header", "[points.A]\nat = \"1\"\non = \"b\"\n[points]\nB = 2.50", "[points] A: at=\"1\" on=\"b\"\n[points] B: =\"2.50\"\n"},
		{"dotted", "[points]\nA.at = \"1\"\nA . on = \"b\"", "[points] A: at=\"1\" on=\"b\"\n"},
		{"dotted top", "points.A = \"1\"\npoints.B.at = \"2\"\ntitle = \"x\"", "[] title: =\"x\"\n[points] A: =\"1\"\n[points] B: at=\"2\"\n"},
		{"table in braces", "points = { A = \"1\", B = { at = \"2\" }, C.at = \"3\" }", "[points] A: =\"1\"\n[points] B: at=\"2\"\n[points] C: at=\"3\"\n"},
		{"empty tables", "[points]\n[lines]\n", "[points]\n[lines]\n"},
		{"escapes", `a = "\u00b0 \"x\" \\ \t"`, "[] a: =\"° \\\"x\\\" \\\\ \\t\"\n"},
		{"multi-line", "a = \"\"\"\none \\\n   two\"\"\"\nb = '''\nx\n'''", "[] a: =\"one two\"\n[] b: =\"x\\n\"\n"},
		{"quoted names", "[answers]\n\"C.x\" = \"1 N\"", "[answers] C.x: =\"1 N\"\n"},
		{"kept values", "[points]\nA = [1, 2]\nB = 2026-01-02\nC = { at = [1], on = {x = 1}, d.e = 1, d.f = 2 }", "[points] A:  kept\n[points] B:  kept\n[points] C: at kept on kept d kept\n"},
		{"kept deep header", "[points.A.x]\ny = 1\n[points.A]\nat = \"1\"", "[points] A: x kept at=\"1\"\n"},
		{"list of tables", "[[views]]\nname = \"x\"\n[[views]]\nname = \"y\"\n[views.z]\nq = 1\n[points]\nA = \"1\"", "[views]\n[points] A: =\"1\"\n"},
		{"list as a row", "[[points.A]]\nx = 1\n[[points.A]]\nx = 2", "[points] A:  kept\n"},
		{"no name", "\"\" = \"x\"\n[points]\n\"\" = 1\nA = { \"\" = 1, at = \"2\" }", "[points] A: at=\"2\"\n"},
		{"order mark and CRLF", "\ufefftitle = \"x\"\r\n[points]\r\nA = \"1\"\r\n", "[] title: =\"x\"\n[points] A: =\"1\"\n"},
	} {
		t.Run(c.name, func(t *testing.T) {
			s, err := Parse([]byte(c.text))
			if err != nil {
				t.Fatal(err)
			}
			if got := rowsOf(s); got != c.want {
				t.Errorf("got\n%s\nwant\n%s", got, c.want)
			}
			if s.Text() != c.text {
				t.Errorf("the text changed: %q", s.Text())
			}
		})
	}
}
