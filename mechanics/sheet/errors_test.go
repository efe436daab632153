package sheet

import (
	"fmt"
	"strings"
	"testing"
)

func TestErrors(t *testing.T) {
	for _, c := range []struct{ text, want, hint string }{
		{"A", "1:1: an = is missing after the name", `name = "value"`},
		{"A = ", "1:4: the value is missing", `name = "value"`},
		{"A = \n", "1:5: the value is missing", `name = "value"`},
		{"A = 4, 0, 0", "1:6: unexpected ',' after the value", "the whole value in quotes, or a new line"},
		{"A = abc", "1:5: this value is not in quotes", `"..."`},
		{"A = six", "1:5: this value is not in quotes", `"..."`},
		{"A = true story", "1:10: unexpected 's' after the value", "the whole value in quotes, or a new line"},
		{"A = tree", "1:5: this value is not in quotes", `"..."`},
		{"A = 20kg", "1:7: this value is not in quotes", `"..."`},
		{"A = 20 kg", "1:8: unexpected 'k' after the value", "the whole value in quotes, or a new line"},
		{"A = 007", "1:5: a number cannot start with 0", "remove the zero, or put the value in quotes"},
		{"A = 1.", "1:6: digits are missing after the decimal point", "add one, or put the value in quotes"},
		{"A = 99999999999999999999", "1:5: this number is too large", "put the value in quotes"},
		{"A = 1e999", "1:5: this number is too large", "put the value in quotes"},
		{"A = 2026-13-40", "1:10: this is not a date", "put the value in quotes"},
		{"A = \"x", "1:6: the closing quote is missing", `end the value with "`},
		{"A = \"x\nB = 1", "1:7: the closing quote is missing", `end the value with " on its line`},
		{"A = 'x", "1:6: the closing quote is missing", "end the value with '"},
		{"A = \"\"\"x", "1:8: the closing \"\"\" is missing", `end the text with """`},
		{"A = '''x", "1:8: the closing ''' is missing", "end the text with '''"},
		{`A = "\q"`, "1:6: unknown escape sequence", `\\ for a backslash, or the value in '...'`},
		{`A = "\u12"`, "1:6: this escape sequence is not a character", `four hexadecimal digits after \u`},
		{`A = "\ud800"`, "1:6: this escape sequence is not a character", `four hexadecimal digits after \u`},
		{"[points\nA = 1", "1:8: the ] of the header is missing", "[name]"},
		{"[[points]\nA = 1", "1:9: the ]] of the header is missing", "[[name]]"},
		{"[]", "1:2: the name is missing", "[name]"},
		{"A = [1 2]", "1:8: a comma is missing in the list", "commas between its values"},
		{"A = [1", "1:6: the ] of the list is missing", "close it with ]"},
		{"A = { at = 1 on = 2 }", "1:14: a comma is missing between two cells", `{ at = "...", on = "..." }`},
		{"A = { at = 1", "1:12: the } is missing", "close the row with }"},
		{"A = { , }", "1:7: there is one comma too many", "remove it"},
		{"= 1", "1:1: the name is missing", `name = "value"`},
		{"é = 1", "1:1: a name cannot start with 'é'", "put the name in quotes"},
		{"[points]\nA = 1\nA = 2", `3:1: the name "A" is used twice in [points]`, "rename one of them"},
		{"A = 1\nA = 2", `2:1: the name "A" is used twice before the first header`, "rename one of them"},
		{"[points]\nA = { at = 1, at = 2 }", `2:15: "at" is used twice in the row "A"`, "remove one of them"},
		{"[points]\nA = 1\nA.at = 2", `3:1: the name "A" is used twice in [points]`, "rename one of them"},
		{"[points]\nA = 1\n[points.A]\nat = 1", `3:9: the name "A" is used twice in [points]`, "rename one of them"},
		{"[points]\n[points]", "2:2: this table occurs twice", "put the rows of both under one header"},
		{"[points.A]\n[points.A]", "2:2: this table occurs twice", "put the rows of both under one header"},
		{"points = 1\n[points]", "2:2: this name has a value already, so it cannot be a table", "rename one of them"},
		{"points = {}\n[points]", "2:2: this name has a value already, so it cannot be a table", "rename one of them"},
		{"points.A = 1\n[points]", "2:2: this table already has entries with dotted names", "put its entries in one place"},
		{"[[a]]\n[a]", "2:2: this table occurs twice", "put the rows of both under one header"},
		{"[a]\n[[a]]", "2:3: this table occurs twice", "put the rows of both under one header"},
		{"A = \"x\x00\"", "1:7: the control character 0x00 is not allowed", "remove it"},
		{"A = \"x\xff\"", "1:7: byte 0xff is not text in UTF-8", "save the file as UTF-8"},
		{"\xff\xfeA\x00", "1:1: the text is in UTF-16", "save it as UTF-8"},
		{"A = \"°\x1b\"", "1:7: the control character 0x1b is not allowed", "remove it"},
		{"A = 1\rB = 2", "1:6: a carriage return must be followed by a line feed", "end each line with LF or with CR LF"},
		{"A = [[[[[[[[[1]]]]]]]]]", "1:1: arrays and tables are nested more than 8 deep", "fewer levels; a problem needs two"},
		{"[points\n" + strings.Repeat("[", 100000), "1:8: the ] of the header is missing", "[name]"},
		{strings.Repeat("[", 100000), "1:3: a name cannot start with '['", "put the name in quotes"},
		{"a = " + strings.Repeat("{a=", 100000), "1:30005: arrays and tables are nested more than 8 deep", "fewer levels; a problem needs two"},
		{"a.b.c.d.e.f.g.h.i = 1", "1:17: this name has more than 8 parts", "a shorter one; a problem needs two"},
		{"[a.b.c.d.e.f.g.h.i]", "1:18: this name has more than 8 parts", "a shorter one; a problem needs two"},
		{strings.Repeat("#", MaxBytes+1), "1:1: the sheet is larger than 1 MiB", "check that this is the intended file"},
		{"[points]\nA = \"" + strings.Repeat("x", maxCell+1) + "\"", "2:5: this text has 4097 bytes, but at most 4096 are allowed", "shorten it"},
		{"title = \"" + strings.Repeat("x", maxTop+1) + "\"", "1:9: this text has 65537 bytes, but at most 65536 are allowed", "shorten it"},
		{numbered("[points]\n", "P%d = \"1\"\n", maxRows+1), "6146:1: a sheet has at most 6144 rows", "split the problem into several sheets"},
		{"[points]\nA = {" + numbered("", "k%d = 1, ", maxCells) + "z = 1 }", `2:2456: the row "A" has more than 256 cells`, "check that this is the intended file"},
		{numbered("", "[[a]]\nx.y = { a = 1 } #%d\n", maxValues), "13654:9: a sheet has at most 20480 entries", "check that this is the intended file"},
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
			if want := c.want + ". Try: " + c.hint; err == nil || err.Error() != want {
				t.Errorf("got\n%v\nwant\n%s", err, want)
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
