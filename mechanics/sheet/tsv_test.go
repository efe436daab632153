package sheet

import (
	"reflect"
	"strings"
	"testing"

	"trivet/mechanics/diag"
)

func TestParseTSV(t *testing.T) {
	for _, c := range []struct {
		name, text string
		want       [][]string
	}{
		{"nothing", "", nil},
		{"one cell", "A", [][]string{{"A"}}},
		{"one empty cell", "\n", [][]string{{""}}},
		{"two rows", "A\t1\nB\t2\n", [][]string{{"A", "1"}, {"B", "2"}}},
		{"CR LF", "A\t1\r\nB\t2\r\n", [][]string{{"A", "1"}, {"B", "2"}}},
		{"CR", "A\rB", [][]string{{"A"}, {"B"}}},
		{"empty cells", "\t\n\tx", [][]string{{"", ""}, {"", "x"}}},
		{"tab at the end", "A\t", [][]string{{"A", ""}}},
		{"blank row", "A\n\nB", [][]string{{"A"}, {""}, {"B"}}},
		{"quoted", "\"a\tb\"\t\"c\r\nd\"\n", [][]string{{"a\tb", "c\r\nd"}}},
		{"quotes within", `"say ""x"""` + "\n", [][]string{{`say "x"`}}},
		{"inch marks", "5'-6 1/2\"\t3\"\n", [][]string{{"5'-6 1/2\"", `3"`}}},
		{"a lone quote", "\"\tA", [][]string{{`"`, "A"}}},
		{"no closing quote", "\"a\tb\nc", [][]string{{`"a`, "b"}, {"c"}}},
		{"text behind the quote", "\"a\"b\tc", [][]string{{`"a"b`, "c"}}},
		{"empty quotes", "\"\"\tA", [][]string{{"", "A"}}},
		{"order mark", "\ufeffA\tB", [][]string{{"A", "B"}}},
		{"ragged", "A\nB\tC", [][]string{{"A"}, {"B", "C"}}},
	} {
		t.Run(c.name, func(t *testing.T) {
			got, err := ParseTSV(c.text)
			if err != nil || !reflect.DeepEqual(got, c.want) {
				t.Errorf("%q gives %q, %v; want %q", c.text, got, err, c.want)
			}
		})
	}
}

func TestParseTSVRefuses(t *testing.T) {
	for _, c := range []struct{ name, text, want string }{
		{"too long", strings.Repeat("x", MaxBytes+1), "the block is larger than 1 MiB"},
		{"no text", "a\xff", "this is not text in UTF-8"},
		{"too many rows", strings.Repeat("\n", maxRows+1), "the block has more than 6144 rows"},
		{"too many cells", "A\n" + strings.Repeat("\t", maxCells), "row 2 of the block has more than 256 cells"},
		{"many quotes", strings.Repeat("\"x\n", maxRows+1), "the block has more than 6144 rows"},
	} {
		t.Run(c.name, func(t *testing.T) {
			if got, err := ParseTSV(c.text); got != nil || err == nil || diag.Of(err).Msg != c.want {
				t.Errorf("got %d rows, %v; want %s", len(got), err, c.want)
			}
		})
	}
}

func FuzzTSV(f *testing.F) {
	for _, s := range []string{"", "A\t1\r\nB\t2\r\n", "\"a\tb\"\t\"c\nd\"", "5'-6 1/2\"\t\"\"\"", "\"\"\"\n\"", "\t\t\n\n"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, text string) {
		cells, err := ParseTSV(text)
		if (err != nil) && cells != nil {
			t.Fatalf("%v beside %v", cells, err)
		}
		for _, row := range cells {
			if len(row) == 0 {
				t.Fatal("a row without cells")
			}
		}
		again, err := ParseTSV(TSV(cells))
		if len(TSV(cells)) <= MaxBytes && (err != nil || !reflect.DeepEqual(again, cells)) {
			t.Fatalf("%q became %q, %v", cells, again, err)
		}
	})
}
