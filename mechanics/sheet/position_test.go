package sheet

import "testing"

func TestPosition(t *testing.T) {
	const text = "\ufefftitle = \"°x\"\r\n" +
		"[points]\r\n" +
		"A = \"4, 0, 0\"\r\n" +
		"Bé = { at = '1 m', on = \"\\u00b0b\\tc\" }\r\n" +
		"C = 2.5\r\n" +
		"D = \"\"\"\r\none\\\r\n  two\"\"\"\r\n" +
		"[points.E]\r\nat = \"1\"\r\n"
	text2 := "[points]\nA = \"1\"\n\"Bé\" = { at = '1 m', on = \"\\u00b0b\\tc\" }\nC = 2.5\nD = \"\"\"\none\\\n  two\"\"\"\n[points.E]\nat = \"1\"\n"
	if _, err := Parse([]byte(text)); err == nil {
		t.Error("a bare name with é was read")
	}
	s := mustParse(t, text2)
	for _, c := range []struct {
		ref          Ref
		offset       int
		line, column int
	}{
		{Ref{"points", "A", ""}, 0, 2, 6},
		{Ref{"points", "A", ""}, -5, 2, 6},
		{Ref{"points", "A", ""}, 99, 2, 7},
		{Ref{"points", "A", "on"}, 0, 2, 1},
		{Ref{"points", "Bé", "at"}, 2, 3, 18},
		{Ref{"points", "Bé", "on"}, 0, 3, 28},
		{Ref{"points", "Bé", "on"}, 1, 3, 28}, // within the character
		{Ref{"points", "Bé", "on"}, 2, 3, 34}, // b
		{Ref{"points", "Bé", "on"}, 3, 3, 35}, // the tab
		{Ref{"points", "Bé", "on"}, 4, 3, 37}, // c
		{Ref{"points", "Bé", "on"}, 5, 3, 38}, // the closing quote
		{Ref{"points", "C", ""}, 2, 4, 7},
		{Ref{"points", "D", ""}, 2, 6, 3},
		{Ref{"points", "D", ""}, 3, 7, 3}, // after the line end that is left out
		{Ref{"points", "D", ""}, 6, 7, 6},
		{Ref{"points", "E", "at"}, 0, 9, 7},
		{Ref{"points", "E", "on"}, 0, 8, 9},
		{Ref{"points", "Z", ""}, 0, 1, 2},
		{Ref{"lines", "Z", ""}, 0, 1, 1},
	} {
		if line, column := s.Position(c.ref, c.offset); line != c.line || column != c.column {
			t.Errorf("%v, %d: got %d:%d, want %d:%d", c.ref, c.offset, line, column, c.line, c.column)
		}
	}
	for n, want := range map[int]string{-1: "", 0: "", 1: "[points]", 4: "C = 2.5", 9: `at = "1"`, 10: "", 99: ""} {
		if got := s.Line(n); got != want {
			t.Errorf("line %d: got %q, want %q", n, got, want)
		}
	}
	marked := mustParse(t, "\ufeffA = \"1\"\r\nB = \"2\"")
	if line, column := marked.Position(Ref{"", "A", ""}, 0); line != 1 || column != 6 {
		t.Errorf("after an order mark: got %d:%d", line, column)
	}
	if got := marked.Line(1); got != `A = "1"` {
		t.Errorf("line 1: got %q", got)
	}
}
