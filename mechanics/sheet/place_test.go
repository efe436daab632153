package sheet

import (
	"testing"

	"trivet/mechanics/diag"
)

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
		if p := s.Place(c.ref, diag.Between(c.offset, c.offset)); p.Line != c.line || p.Column != c.column {
			t.Errorf("%v, %d: got %d:%d, want %d:%d", c.ref, c.offset, p.Line, p.Column, c.line, c.column)
		}
	}
	marked := mustParse(t, "\ufeffA = \"1\"\r\nB = \"2\"")
	if p := marked.Place(Ref{"", "A", ""}, diag.Span{}); p != (diag.Place{Line: 1, Column: 6, Source: `A = "1"`}) {
		t.Errorf("after an order mark: %+v", p)
	}
	if p := s.Place(Ref{"points", "D", ""}, diag.Between(0, 5)); p != (diag.Place{Line: 6, Column: 1, Source: `one\`}) {
		t.Errorf("over two lines: %+v", p)
	}
	if p := s.Place(Ref{"points", "Bé", "at"}, diag.Between(0, 3)); p.Width != 3 {
		t.Errorf("three characters: %+v", p)
	}
}

func TestNamePlace(t *testing.T) {
	s := mustParse(t, "foo = 1\n[points]\nA = \"1\"\n\"Bé\" = { at = '1 m', \"ön\" = \"b\" }\nC.at = \"2\"\n[ loads . F ]\nkind = \"x\"\n[[lists]]\nA = 1\n")
	for _, c := range []struct {
		ref                 Ref
		line, column, width int
	}{
		{Ref{"", "foo", ""}, 1, 1, 3},
		{Ref{"points", "", ""}, 2, 2, 6},
		{Ref{"points", "A", ""}, 3, 1, 1},
		{Ref{"points", "Bé", ""}, 4, 1, 4},
		{Ref{"points", "Bé", "ön"}, 4, 22, 4},
		{Ref{"points", "C", "at"}, 5, 3, 2},
		{Ref{"points", "C", "on"}, 5, 1, 1}, // the row's, where there is no such cell
		{Ref{"points", "Z", ""}, 2, 2, 6},   // the table's, where there is no such row
		{Ref{"loads", "", ""}, 6, 3, 5},
		{Ref{"loads", "F", ""}, 6, 11, 1},
		{Ref{"lists", "", ""}, 8, 3, 5},
		{Ref{"none", "", ""}, 1, 1, 0},
	} {
		if p := s.NamePlace(c.ref); p.Line != c.line || p.Column != c.column || p.Width != c.width {
			t.Errorf("%v: %+v, want %d:%d, %d wide", c.ref, p, c.line, c.column, c.width)
		}
	}
	if t1, t2 := s.Table("lists"), s.Table("points"); !t1.Listed || t2.Listed {
		t.Errorf("[[lists]] is listed %v, [points] %v", t1.Listed, t2.Listed)
	}
}
