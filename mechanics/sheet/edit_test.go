package sheet

import (
	"errors"
	"strings"
	"testing"

	"trivet/mechanics/diag"
)

func mustParse(t testing.TB, text string) *Sheet {
	t.Helper()
	s, err := parse(text)
	if err != nil {
		t.Fatalf("%v in\n%s", err, text)
	}
	return s
}

func TestEdits(t *testing.T) {
	point := func(key, text string) SetCell { return SetCell{Ref{"points", "A", key}, text} }
	for _, c := range []struct {
		name, text string
		edit       Edit
		want       string
	}{
		{"same text", "[points]\nA = '1'", point("", "1"), "[points]\nA = '1'"},
		{"bare", "[points]\nA = \"1\" # one\n", point("", "2"), "[points]\nA = \"2\" # one\n"},
		{"bare by its usual key", "[points]\nA = \"1\"", point("at", "2"), "[points]\nA = \"2\""},
		{"bare gains a key", "[points]\nA = '1' # one\n", point("on", "b"), "[points]\nA = { at = '1', on = \"b\" } # one\n"},
		{"given gains a range", "[given]\nW = 3", SetCell{Ref{"given", "W", "range"}, "1 .. 2"}, "[given]\nW = { value = 3, range = \"1 .. 2\" }"},
		{"answer gains a note", "[answers]\n\"C.x\" = \"1 N\"", SetCell{Ref{"answers", "C.x", "note"}, "n"}, "[answers]\n\"C.x\" = { printed = \"1 N\", note = \"n\" }"},
		{"inline", "[points]\nA = { at = \"1\", on = \"b\" }", point("on", "c"), "[points]\nA = { at = \"1\", on = \"c\" }"},
		{"inline by no key", "[points]\nA = { at = \"1\" }", point("", "2"), "[points]\nA = { at = \"2\" }"},
		{"inline gains a key", "[points]\nA = {at=\"1\"}", point("on", "c"), "[points]\nA = {at=\"1\", on = \"c\"}"},
		{"empty inline gains a key", "[points]\nA = {}", point("on", "c"), "[points]\nA = { on = \"c\" }"},
		{"inline over lines gains a key", "[points]\nA = {\n  at = \"1\", # here\n}", point("on", "c"), "[points]\nA = {\n  at = \"1\", on = \"c\", # here\n}"},
		{"header gains a key", "[points.A]\n  at = \"1\" # x\n\n[lines]\n", point("on", "c"), "[points.A]\n  at = \"1\" # x\n  on = \"c\"\n\n[lines]\n"},
		{"empty header gains a key", "[points.A]", point("on", "c"), "[points.A]\non = \"c\""},
		{"dotted gains a key", "[points]\r\nA.at = \"1\"\r\nB.at = \"2\"\r\n", point("on", "c"), "[points]\r\nA.at = \"1\"\r\nA.on = \"c\"\r\nB.at = \"2\"\r\n"},
		{"dotted at the top gains a key", "points.A.at   = \"1\"\ntitle = \"x\"", point("on", "c"), "points.A.at   = \"1\"\npoints.A.on   = \"c\"\ntitle = \"x\""},
		{"dotted in braces gains a key", "points = { A.at = \"1\", B = \"2\" }", point("on", "c"), "points = { A.at = \"1\", A.on = \"c\", B = \"2\" }"},
		{"number stays bare", "[given]\nW = 3", SetCell{Ref{"given", "W", ""}, "4.5e3"}, "[given]\nW = 4.5e3"},
		{"number becomes text", "[given]\nW = 3", SetCell{Ref{"given", "W", ""}, "4 N"}, "[given]\nW = \"4 N\""},
		{"too large for a number", "[given]\nW = 3", SetCell{Ref{"given", "W", ""}, "99999999999999999999"}, "[given]\nW = \"99999999999999999999\""},
		{"true stays bare", "x = true", SetCell{Ref{"", "x", ""}, "false"}, "x = false"},
		{"quotes inside", "[points]\nA = \"1\"", point("", `5'-6"`), "[points]\nA = \"5'-6\\\"\""},
		{"double quote inside", "[points]\nA = \"1\"", point("", `6"`), "[points]\nA = '6\"'"},
		{"literal stays", "[points]\nA = '1'", point("", `2`), "[points]\nA = '2'"},
		{"multi-line stays", "statement = \"\"\"\nOne.\n\"\"\"\n", SetCell{Ref{"", "statement", ""}, "Two \"\"\" \\ and\nthree\""}, "statement = \"\"\"\nTwo \\\"\\\"\" \\\\ and\nthree\\\"\"\"\"\n"},
		{"line end in one line", "title = \"x\"", SetCell{Ref{"", "title", ""}, "a\nb"}, "title = \"a\\nb\""},
		{"what acts becomes an escape", "title = \"x\"", SetCell{Ref{"", "title", ""}, "a\u202e\u2028\u200b\ufeff\u009b\u200d"}, `title = "a\u202E\u2028\u200B\uFEFF\u009B` + "\u200d\""},
		{"what acts in a literal", "title = 'x'", SetCell{Ref{"", "title", ""}, "a\u2066"}, `title = "a\u2066"`},
		{"what acts in lines", "statement = \"\"\"\nOne.\"\"\"", SetCell{Ref{"", "statement", ""}, "Two\u202e\n\u2029"}, "statement = \"\"\"\nTwo\\u202E\n\\u2029\"\"\""},
		{"what acts in a name", "[points]\n\"A\\u202E\" = \"1\"", RenameRow{"points", "A\u202e", "B\u2067"}, `[points]` + "\n" + `"B\u2067" = "1"`},

		{"drop from inline, first", "[points]\nA = { at = \"1\", on = \"b\" }", DropCell{Ref{"points", "A", "at"}}, "[points]\nA = { on = \"b\" }"},
		{"drop from inline, last", "[points]\nA = { at = \"1\", on = \"b\" }", DropCell{Ref{"points", "A", "on"}}, "[points]\nA = { at = \"1\" }"},
		{"drop from inline, only", "[points]\nA = { at = \"1\" }", DropCell{Ref{"points", "A", ""}}, "[points]\nA = {}"},
		{"drop from header", "[points.A]\nat = \"1\"\non = \"b\" # x\n", DropCell{Ref{"points", "A", "on"}}, "[points.A]\nat = \"1\"\n"},
		{"drop from dotted", "[points]\nA.at = \"1\"\nA.on = \"b\"", DropCell{Ref{"points", "A", "at"}}, "[points]\nA.on = \"b\""},
		{"drop the last dotted", "[points]\nA.at = \"1\" # x", DropCell{Ref{"points", "A", "at"}}, "[points]\nA = {} # x"},
		{"drop from the top", "title = \"x\"\nplane = \"xy\"\n", DropCell{Ref{"", "plane", ""}}, "title = \"x\"\n"},
		{"drop what is not there", "[points]\nA = {}", DropCell{Ref{"points", "A", "on"}}, "[points]\nA = {}"},

		{"table", "[given]\nh = 1\n\n# by hand\n# two\n[answers] # own\nT = 2 # x\n\n[lines]\n", DeleteTable{"answers"}, "[given]\nh = 1\n\n[lines]\n"},
		{"table at the end", "[given]\nh = 1\n# kept\n\n[answers]\nT = 2\n", DeleteTable{"answers"}, "[given]\nh = 1\n# kept\n"},
		{"table alone", "# own\n[answers]", DeleteTable{"answers"}, ""},
		{"table in braces", "answers = { T = 2 }\ntitle = \"x\"\n", DeleteTable{"answers"}, "title = \"x\"\n"},
		{"table of dotted names", "answers.T = 2\ntitle = \"x\"\nanswers.U = 3", DeleteTable{"answers"}, "title = \"x\"\n"},
		{"table of headers", "[answers.T]\nprinted = 2\r\n\r\n[[answers.U]]\n", DeleteTable{"answers"}, ""},
		{"table that is not there", "x = 1\n", DeleteTable{"answers"}, "x = 1\n"},

		{"row at the end", "[points]\nA = \"1\"\n\n[lines]\n", AddRow{Table: "points", Name: "B", Cells: []KeyText{{"", "2"}}}, "[points]\nA = \"1\"\nB = \"2\"\n\n[lines]\n"},
		{"row after", "[points]\nA  = \"1\"\nB  = \"2\"\n", AddRow{Table: "points", Name: "A2", After: "A", Cells: []KeyText{{"at", "3"}, {"on", "b"}}}, "[points]\nA  = \"1\"\nA2 = { at = \"3\", on = \"b\" }\nB  = \"2\"\n"},
		{"row in an empty table", "[points]\r\n\r\n[lines]", AddRow{Table: "points", Name: "x y"}, "[points]\r\n\"x y\" = {}\r\n\r\n[lines]"},
		{"row without a last line end", "[points]\nA = \"1\"", AddRow{Table: "points", Name: "B", Cells: []KeyText{{"", "2"}}}, "[points]\nA = \"1\"\nB = \"2\""},
		{"row in braces", "points = { A = \"1\" }", AddRow{Table: "points", Name: "B", Cells: []KeyText{{"", "2"}}}, "points = { A = \"1\", B = \"2\" }"},
		{"row after in braces", "points = { A = \"1\", C = \"3\" }", AddRow{Table: "points", Name: "B", After: "A", Cells: []KeyText{{"", "2"}}}, "points = { A = \"1\", B = \"2\", C = \"3\" }"},
		{"row by dots at the top", "points.A = \"1\"\ntitle = \"x\"", AddRow{Table: "points", Name: "B", Cells: []KeyText{{"", "2"}}}, "points.A = \"1\"\npoints.B = \"2\"\ntitle = \"x\""},
		{"row beside headers", "[points.A]\nat = \"1\"\n", AddRow{Table: "points", Name: "B", Cells: []KeyText{{"", "2"}}}, "[points.A]\nat = \"1\"\n\n[points]\nB = \"2\"\n"},
		{"row in a new table", "title = \"x\"\n\n[given]\nh = \"1\"\n# guys\n[lines]\n", AddRow{Table: "points", Name: "B", Cells: []KeyText{{"", "2"}}}, "title = \"x\"\n\n[given]\nh = \"1\"\n\n[points]\nB = \"2\"\n\n# guys\n[lines]\n"},
		{"row in a new table of no usual name", "title = \"x\"", AddRow{Table: "my own", Name: "B", Cells: []KeyText{{"", "2"}}}, "title = \"x\"\n\n[\"my own\"]\nB = \"2\"\n"},
		{"row in an empty sheet", "", AddRow{Table: "points", Name: "B", Cells: []KeyText{{"", "2"}}}, "[points]\nB = \"2\"\n"},
		{"top row where it belongs", "title = \"x\"\nfigures = 3\n", SetCell{Ref{"", "plane", ""}, "xy"}, "title = \"x\"\nplane = \"xy\"\nfigures = 3\n"},
		{"title comes first", "figures = 3\n", SetCell{Ref{"", "title", ""}, "x"}, "title   = \"x\"\nfigures = 3\n"},
		{"top row in a sheet without", "\ufeff# file\n\n# points\n[points]\n", SetCell{Ref{"", "title", ""}, "x"}, "\ufeff# file\n\ntitle = \"x\"\n\n# points\n[points]\n"},

		{"delete", "[points]\n# a\nA = \"1\" # x\n# b\nB = \"2\"\n", DeleteRow{"points", "A"}, "[points]\n# a\n# b\nB = \"2\"\n"},
		{"delete dotted", "[points]\nA.at = \"1\"\nB = \"2\"\nA.on = \"b\"\n", DeleteRow{"points", "A"}, "[points]\nB = \"2\"\n"},
		{"delete header", "[points.A]\nat = \"1\"\n\n[points.B]\nat = \"2\"\n", DeleteRow{"points", "B"}, "[points.A]\nat = \"1\"\n"},
		{"delete in braces", "points = { A.at = \"1\", B = \"2\", A.on = \"b\" }", DeleteRow{"points", "A"}, "points = { B = \"2\" }"},
		{"delete all in braces", "points = { A = \"1\" }", DeleteRow{"points", "A"}, "points = {}"},
		{"delete multi-line", "a = \"\"\"\nx\n\"\"\" # y\nb = 1", DeleteRow{"", "a"}, "b = 1"},

		{"rename", "[points]\nA = \"1\"", RenameRow{"points", "A", "B"}, "[points]\nB = \"1\""},
		{"rename dotted", "[points]\nA.at = \"1\"\n'A'.on = \"1\"", RenameRow{"points", "A", "B C"}, "[points]\n\"B C\".at = \"1\"\n\"B C\".on = \"1\""},
		{"rename header", "[points.A]\nat = \"1\"\n", RenameRow{"points", "A", "B"}, "[points.B]\nat = \"1\"\n"},
	} {
		t.Run(c.name, func(t *testing.T) {
			s := mustParse(t, c.text)
			next, err := s.Apply(c.edit)
			if err != nil {
				t.Fatal(err)
			}
			if next.Text() != c.want {
				t.Errorf("got\n%q\nwant\n%q", next.Text(), c.want)
			}
			h := NewHistory(s)
			if err := h.Do(c.edit); err != nil {
				t.Fatal(err)
			}
			if h.Undo(); h.Current().Text() != c.text {
				t.Errorf("undone\n%q\nwant\n%q", h.Current().Text(), c.text)
			}
		})
	}
}

func TestRefusedEdits(t *testing.T) {
	const text = "title = \"x\"\nlist = [1]\n[points]\nA = \"1\"\nB = \"2\"\nC = { at = [1] }\nD = [1]\n[[views]]\nx = 1\n[[points.E]]\nx = 1\n[points.F.g]\nx = 1\n"
	for _, c := range []struct {
		edit       Edit
		want, hint string
	}{
		{nil, "there is nothing to change", ""},
		{SetCell{Ref{"lines", "A", ""}, "1"}, "there is no table [lines]", "add a row to it first"},
		{SetCell{Ref{"points", "Z", ""}, "1"}, `there is no row "Z" in [points]`, "add it first"},
		{SetCell{Ref{"", "title", "x"}, "1"}, `"title" is a single value`, "set it without a key"},
		{SetCell{Ref{"points", "A", " "}, "1"}, "the key is empty", "type a name"},
		{SetCell{Ref{"points", "A", ""}, "\xff"}, "this is not text in UTF-8", "type it in UTF-8"},
		{SetCell{Ref{"points", "A", ""}, strings.Repeat("x", 5000)}, "this text has 5000 bytes, but at most 4096 are allowed", "shorten it"},
		{SetCell{Ref{"points", "C", "at"}, "1"}, `"C" is written in a form that cannot be edited here`, "change it in a text editor"},
		{SetCell{Ref{"points", "D", "on"}, "1"}, `"D" is written in a form that cannot be edited here`, "change it in a text editor"},
		{SetCell{Ref{"points", "E", "on"}, "1"}, `"E" is written in a form that cannot be edited here`, "change it in a text editor"},
		{SetCell{Ref{"points", "F", "on"}, "1"}, `"F" is written in a form that cannot be edited here`, "change it in a text editor"},
		{SetCell{Ref{"", "list", ""}, "1"}, `"list" is written in a form that cannot be edited here`, "change it in a text editor"},
		{SetCell{Ref{"", "points", ""}, "1"}, "this name has a value already, so it cannot be a table", "rename one of them"},
		{DropCell{Ref{"points", "A", ""}}, `this is the only cell of "A"`, "delete the row"},
		{DropCell{Ref{"points", "C", "at"}}, `"C" is written in a form that cannot be edited here`, "change it in a text editor"},
		{DropCell{Ref{"points", "Z", ""}}, `there is no row "Z" in [points]`, "add it first"},
		{AddRow{Table: "points", Name: "A"}, `the name "A" is already used in [points]`, "another name"},
		{AddRow{Table: "points", Name: ""}, "the name is empty", "type a name"},
		{AddRow{Table: "points", Name: "a\tb"}, "the name contains the control character U+0009", "remove it"},
		{AddRow{Table: "points", Name: strings.Repeat("x", 300)}, "the name has 300 bytes, but at most 256 are allowed", "shorten it"},
		{AddRow{Table: "points", Name: "\xff"}, "the name is not text in UTF-8", "type it in UTF-8"},
		{AddRow{Table: "points", Name: "N", After: "Z"}, `there is no row "Z" in [points]`, "add it first"},
		{AddRow{Table: "points", Name: "N", Cells: []KeyText{{"at", "1"}, {"at", "2"}}}, `"at" is used twice in the row "N"`, "remove one of them"},
		{AddRow{Table: "views", Name: "N"}, `"views" is written in a form that cannot be edited here`, "change it in a text editor"},
		{AddRow{Table: "", Name: "N"}, `"N" is a single value`, "one cell without a key"},
		{DeleteRow{"points", "Z"}, `there is no row "Z" in [points]`, "add it first"},
		{RenameRow{"points", "A", "B"}, `the name "B" is already used in [points]`, "another name"},
		{RenameRow{"points", "A", ""}, "the new name is empty", "type a name"},
		{RenameRow{"", "nothing", "B"}, `there is no row "nothing" before the first header`, "add it first"},
	} {
		s := mustParse(t, text)
		next, err := s.Apply(c.edit)
		var e *diag.Error
		if next != nil || !errors.As(err, &e) {
			t.Errorf("%#v: got %v, %v", c.edit, next, err)
			continue
		}
		if e.Msg != c.want || e.Hint != c.hint {
			t.Errorf("%#v: got\n%s\n%s\nwant\n%s\n%s", c.edit, e.Msg, e.Hint, c.want, c.hint)
		}
	}
}

func TestTooManyRowsByEdit(t *testing.T) {
	s := mustParse(t, numbered("[points]\n", "P%d = \"1\"\n", maxRows))
	_, err := s.Apply(AddRow{Table: "points", Name: "Q"})
	if err == nil || err.Error() != "a sheet has at most 6144 rows. Try: split the problem into several sheets" {
		t.Errorf("got %v", err)
	}
}

// The only entry above the tables goes and comes back, and leaves no blank line
// behind.
func TestTheOnlyEntryAboveTheTables(t *testing.T) {
	for _, c := range []struct{ text, without string }{
		{"title = \"x\"\n\n[points]\nA = \"1\"\n", "[points]\nA = \"1\"\n"},
		{"title = \"x\"\r\n\r\n\r\n[points]\r\nA = \"1\"\r\n", "[points]\r\nA = \"1\"\r\n"},
		{"\ufefftitle = \"x\"\n\n[points]\n", "\ufeff[points]\n"},
		{"title = \"x\"\n", ""},
		{"# of ours\n\ntitle = \"x\"\n\n[points]\n", "# of ours\n\n[points]\n"},
	} {
		s, err := mustParse(t, c.text).Apply(DeleteRow{Table: "", Row: "title"})
		if err != nil || s.Text() != c.without {
			t.Errorf("%q without its title is %q, %v", c.text, s.Text(), err)
			continue
		}
		s, err = s.Apply(AddRow{Table: "", Name: "title", Cells: []KeyText{{"", "x"}}})
		if want := strings.Replace(c.text, "\r\n\r\n\r\n", "\r\n\r\n", 1); err != nil || s.Text() != want {
			t.Errorf("%q with its title again is %q, %v", c.text, s.Text(), err)
		}
	}
	// A file that begins with a blank line has it behind the entry.
	s, err := mustParse(t, "\n[points]\nA = \"1\"\n").Apply(SetCell{Ref{"", "title", ""}, "x"})
	if want := "title = \"x\"\n\n[points]\nA = \"1\"\n"; err != nil || s.Text() != want {
		t.Errorf("before a blank line: %q, %v", s.Text(), err)
	}
}
