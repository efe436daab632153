package sheet

import (
	"errors"
	"math/rand/v2"
	"testing"
	"unicode/utf8"

	"trivet/mechanics/diag"
)

func FuzzSheet(f *testing.F) {
	for seed := range uint64(20) {
		f.Add((&maker{Rand: rand.New(rand.NewPCG(seed, 3))}).sheet(), "x\"'\\\n")
	}
	for _, text := range []string{threeByThree, "", bom, "a", "[", "a = \"\\", "a = '''", "[[a]]\n[a.b]", "a = { b = { c = 1 } }", "a.b.c = {}\n[a.b.d]", "\"\" = {}", "a = \"\"\"\\\r\n x\"\"\""} {
		f.Add(text, "°")
	}
	f.Fuzz(func(t *testing.T, text, typed string) {
		s, err := Parse([]byte(text))
		if err != nil {
			checkError(t, s, err)
			return
		}
		if s.Text() != text {
			t.Fatal("the text changed")
		}
		rows := rowsOf(s)
		for _, tab := range s.Tables {
			for _, r := range tab.Rows {
				for _, p := range r.pieces {
					checkSpan(t, text, p.name)
					checkSpan(t, text, p.span())
				}
				for _, c := range r.Cells {
					checkSpan(t, text, c.value)
					checkSpan(t, text, c.name)
					checkSpan(t, text, c.whole)
					checkCellEdits(t, s, rows, Ref{tab.Name, r.Name, c.Key}, c, typed)
				}
				checkEdit(t, s, DeleteRow{tab.Name, r.Name})
				checkEdit(t, s, RenameRow{tab.Name, r.Name, typed})
				checkEdit(t, s, SetCell{Ref{tab.Name, r.Name, "new"}, typed})
				checkEdit(t, s, AddRow{Table: tab.Name, Name: typed, After: r.Name, Cells: []KeyText{{"", typed}}})
			}
			checkEdit(t, s, AddRow{Table: tab.Name, Name: typed, Cells: []KeyText{{"at", typed}, {"on", ""}}})
		}
		checkEdit(t, s, AddRow{Table: typed, Name: typed})
		checkEdit(t, s, SetCell{Ref{"", "title", ""}, typed})
	})
}

func checkError(t *testing.T, s *Sheet, err error) {
	t.Helper()
	var e *diag.Error
	if s != nil || !errors.As(err, &e) || e.Line < 1 || e.Column < 1 || e.Msg == "" {
		t.Fatalf("got %v, %#v", s, err)
	}
}

func checkSpan(t *testing.T, text string, at diag.Span) {
	t.Helper()
	if at.Start < 0 || at.End < at.Start || at.End > len(text) {
		t.Fatalf("%v is outside of the %d bytes", at, len(text))
	}
}

// checkCellEdits sets a cell to its own text, to another one and back.
func checkCellEdits(t *testing.T, s *Sheet, rows string, ref Ref, c Cell, typed string) {
	t.Helper()
	var last diag.Place
	for i := 0; i <= len(c.Text) && i < 50; i++ {
		p := s.Place(ref, diag.Between(i, i))
		if p.Line < last.Line || p.Line == last.Line && p.Column < last.Column {
			t.Fatalf("%v: place %+v comes after %+v", ref, p, last)
		}
		last = p
	}
	if n := utf8.RuneCountInString(last.Source); last.Column > n+1 {
		t.Fatalf("%v: column %d in a line of %d", ref, last.Column, n)
	}
	if !c.Readable {
		return
	}
	if next := checkEdit(t, s, SetCell{ref, c.Text}); next.Text() != s.Text() {
		t.Fatalf("%v: setting the same text changed the sheet", ref)
	}
	next := checkEdit(t, s, SetCell{ref, typed})
	checkEdit(t, next, SetCell{ref, c.Text})
	if back := checkEdit(t, next, SetCell{ref, c.Text}); next != s && rowsOf(back) != rows {
		t.Fatalf("%v: there and back gives\n%s\nfrom\n%s", ref, rowsOf(back), rows)
	}
	checkEdit(t, s, DropCell{ref})
}
