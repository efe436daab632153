package sheet

import (
	"errors"
	"fmt"
	"strings"
	"testing"
)

func TestErrors(t *testing.T) {
	for _, c := range []struct{ text, want, hint string }{
		{"A", "1:1: an = is missing after the name", `write it as name = "value"`},
		{"A = ", "1:4: the value is missing", `write it as name = "value"`},
		{"A = \n", "1:5: the value is missing", `write it as name = "value"`},
		{"A = 4, 0, 0", "1:6: ',' is left over after the value", "put the whole value in quotes, or start a new line"},
		{"A = abc", "1:5: this value is not in quotes", `put it in quotes: "..."`},
		{"A = six", "1:5: this value is not in quotes", `put it in quotes: "..."`},
		{"A = true story", "1:10: 's' is left over after the value", "put the whole value in quotes, or start a new line"},
		{"A = tree", "1:5: this value is not in quotes", `put it in quotes: "..."`},
		{"A = 20kg", "1:7: this value is not in quotes", `put it in quotes: "..."`},
		{"A = 20 kg", "1:8: 'k' is left over after the value", "put the whole value in quotes, or start a new line"},
		{"A = 007", "1:5: a number cannot start with 0", "take the zero away, or put the value in quotes"},
		{"A = 1.", "1:6: digits are missing after the decimal point", "add one, or put the value in quotes"},
		{"A = 99999999999999999999", "1:5: this number is too large", "put the value in quotes"},
		{"A = 1e999", "1:5: this number is too large", "put the value in quotes"},
		{"A = 2026-13-40", "1:10: this is no date", "put the value in quotes"},
		{"A = \"x", "1:6: the closing quote is missing", `end the value with "`},
		{"A = \"x\nB = 1", "1:7: the closing quote is missing", `end the value with " on its line`},
		{"A = 'x", "1:6: the closing quote is missing", "end the value with '"},
		{"A = \"\"\"x", "1:8: the text is not closed", `close it with """`},
		{"A = '''x", "1:8: the text is not closed", "close it with '''"},
		{`A = "\q"`, "1:6: this is no escape", `write \\ for a backslash, or put the value in '...'`},
		{`A = "\u12"`, "1:6: this escape is no character", `write four hexadecimal digits after \u`},
		{`A = "\ud800"`, "1:6: this escape is no character", `write four hexadecimal digits after \u`},
		{"[points\nA = 1", "1:8: the ] of the header is missing", "write it as [name]"},
		{"[[points]\nA = 1", "1:9: the ]] of the header is missing", "write it as [[name]]"},
		{"[]", "1:2: the name is missing", "write it as [name]"},
		{"A = [1 2]", "1:8: a comma is missing in the list", "put commas between its values"},
		{"A = [1", "1:6: the ] of the list is missing", "close it with ]"},
		{"A = { at = 1 on = 2 }", "1:14: a comma is missing between two cells", `write { at = "...", on = "..." }`},
		{"A = { at = 1", "1:12: the } is missing", "close the row with }"},
		{"A = { , }", "1:7: there is a comma too many", "take it away"},
		{"= 1", "1:1: the name is missing", `write it as name = "value"`},
		{"é = 1", "1:1: a name cannot start with 'é'", "put the name in quotes"},
		{"[points]\nA = 1\nA = 2", `3:1: the name "A" is used twice in [points]`, "rename one of them"},
		{"A = 1\nA = 2", `2:1: the name "A" is used twice before the first header`, "rename one of them"},
		{"[points]\nA = { at = 1, at = 2 }", `2:15: "at" is used twice in the row "A"`, "take one of them away"},
		{"[points]\nA = 1\nA.at = 2", `3:1: the name "A" is used twice in [points]`, "rename one of them"},
		{"[points]\nA = 1\n[points.A]\nat = 1", `3:9: the name "A" is used twice in [points]`, "rename one of them"},
		{"[points]\n[points]", "2:1: the table [points] is there twice", "put the rows of both under one header"},
		{"[points.A]\n[points.A]", "2:1: the table [points.A] is there twice", "put the rows of both under one header"},
		{"points = 1\n[points]", "2:2: this name has a value already and cannot be a table too", "rename one of them"},
		{"points = {}\n[points]", "2:2: this name has a value already and cannot be a table too", "rename one of them"},
		{"points.A = 1\n[points]", "2:2: this table is written with dotted names already", "put its entries in one place"},
		{"[[a]]\n[a]", "2:2: this table is there already", "put the rows of both under one header"},
		{"[a]\n[[a]]", "2:3: this table is there already", "put the rows of both under one header"},
		{"A = \"x\x00\"", "1:7: this is not text", "byte 0x00 stands here"},
		{"A = \"x\xff\"", "1:7: this is not text", "a sheet is UTF-8, and byte 0xff stands here"},
		{"\xff\xfeA\x00", "1:1: this text is UTF-16", "save it as UTF-8"},
		{"A = \"°\x1b\"", "1:7: this is not text", "byte 0x1b stands here"},
		{"A = 1\rB = 2", "1:6: a carriage return stands alone here", "end each line with LF or with CR LF"},
		{"A = [[[[[[[[[1]]]]]]]]]", "1:13: arrays and tables stand more than 8 deep here", "a problem needs 2; take some away"},
		{"[points\n" + strings.Repeat("[", 100000), "1:8: the ] of the header is missing", "write it as [name]"},
		{strings.Repeat("[", 100000), "1:3: a name cannot start with '['", "put the name in quotes"},
		{"a = " + strings.Repeat("{a=", 100000), "1:29: arrays and tables stand more than 8 deep here", "a problem needs 2; take some away"},
		{"a.b.c.d.e.f.g.h.i = 1", "1:17: this name has more than 8 parts", "a problem needs 2; shorten it"},
		{"[a.b.c.d.e.f.g.h.i]", "1:1: the name of this table has more than 8 parts", "a problem needs 2; shorten it"},
		{strings.Repeat("#", MaxBytes+1), "1:1: the sheet is over 1 MiB, more than any problem needs", "check that this is the file you meant"},
		{"[points]\nA = \"" + strings.Repeat("x", MaxCell+1) + "\"", "2:5: this text is 4097 bytes long, and 4096 is the most that fits here", "shorten it"},
		{"title = \"" + strings.Repeat("x", MaxTop+1) + "\"", "1:9: this text is 65537 bytes long, and 65536 is the most that fits here", "shorten it"},
		{numbered("[points]\n", "P%d = \"1\"\n", MaxRows+1), "6146:1: this is row 6145, and a sheet holds 6144", "split the problem into several sheets"},
		{"[points]\nA = {" + numbered("", "k%d = 1, ", MaxCells) + "z = 1 }", `2:2456: the row "A" has more than 256 cells`, "no row needs so many; check that this is the file you meant"},
		{numbered("", "[[a]]\nx.y = { a = 1 } #%d\n", MaxValues), "10241:1: this is entry 20481, more than any problem needs", "check that this is the file you meant"},
	} {
		name := c.text
		if len(name) > 40 {
			name = name[:40]
		}
		t.Run(name, func(t *testing.T) {
			s, err := Parse([]byte(c.text))
			if s != nil {
				t.Error("a sheet came back with the error")
			}
			var e *Error
			if !errors.As(err, &e) {
				t.Fatalf("got %v", err)
			}
			if e.Error() != c.want || e.Hint != c.hint {
				t.Errorf("got\n%s\n%s\nwant\n%s\n%s", e, e.Hint, c.want, c.hint)
			}
		})
	}
}

// numbered repeats a line with its number.
func numbered(head, line string, n int) string {
	var sb strings.Builder
	sb.WriteString(head)
	for i := range n {
		fmt.Fprintf(&sb, line, i)
	}
	return sb.String()
}
