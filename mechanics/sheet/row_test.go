package sheet

import (
	"math/rand/v2"
	"strings"
	"testing"

	"trivet/mechanics/diag"
)

func TestMoveRow(t *testing.T) {
	const plain = "[points]\n# a note\nA = \"1\" # first\n\nB = \"2\"\nC = \"3\"\n\n[lines]\n"
	for _, c := range []struct{ name, text, row, after, want string }{
		{"down", plain, "A", "C", "[points]\n# a note\n\nB = \"2\"\nC = \"3\"\nA = \"1\" # first\n\n[lines]\n"},
		{"up", plain, "C", "A", "[points]\n# a note\nA = \"1\" # first\nC = \"3\"\n\nB = \"2\"\n\n[lines]\n"},
		{"to the top", plain, "C", "", "[points]\n# a note\nC = \"3\"\nA = \"1\" # first\n\nB = \"2\"\n\n[lines]\n"},
		{"where it is", plain, "B", "A", plain},
		{"first where it is", plain, "A", "", plain},
		{"no line end", "[points]\nA = 1\nB = 2", "A", "B", "[points]\nB = 2\nA = 1"},
		{"no line end, up", "[points]\nA = 1\nB = 2", "B", "", "[points]\nB = 2\nA = 1\n"},
		{"CR LF", "[points]\r\nA = 1\r\nB = 2\r\n", "B", "", "[points]\r\nB = 2\r\nA = 1\r\n"},
		{"in braces", "points = { A = 1, B = 2, C = 3 }\n", "C", "", "points = { C = 3, A = 1, B = 2 }\n"},
		{"in braces, down", "points = { A = 1, B = 2, C = 3 }\n", "A", "C", "points = { B = 2, C = 3, A = 1 }\n"},
		{"headers", "[points.A]\nat = 1\n\n[points.B]\nat = 2\n\n[points.C]\nat = 3\n", "A", "B", "[points.B]\nat = 2\n\n[points.A]\nat = 1\n\n[points.C]\nat = 3\n"},
		{"headers, to the end", "[points.A]\nat = 1\n\n[points.B]\nat = 2\n", "A", "B", "[points.B]\nat = 2\n\n[points.A]\nat = 1\n"},
		{"headers, to the top", "[points.A]\nat = 1\n\n[points.B]\nat = 2\n", "B", "", "[points.B]\nat = 2\n\n[points.A]\nat = 1\n"},
		{"over lines", "[points]\nA = { at = \"\"\"1\n2\"\"\" }\nB = 2\n", "A", "B", "[points]\nB = 2\nA = { at = \"\"\"1\n2\"\"\" }\n"},
	} {
		t.Run(c.name, func(t *testing.T) {
			s := mustParse(t, c.text)
			next, err := s.Apply(MoveRow{"points", c.row, c.after})
			if err != nil {
				t.Fatal(err)
			}
			if next.Text() != c.want {
				t.Errorf("got\n%s\nwant\n%s", next.Text(), c.want)
			}
		})
	}
}

func TestDuplicateRow(t *testing.T) {
	for _, c := range []struct{ name, text, row, as, want string }{
		{"a line", "[points]\nA = { at = \"1\", on = 'b' } # note\nB = 2\n", "A", "C", "[points]\nA = { at = \"1\", on = 'b' } # note\nC = { at = \"1\", on = 'b' }\nB = 2\n"},
		{"set in", "[points]\n  A = 1", "A", "C", "[points]\n  A = 1\n  C = 1"},
		{"quoted", "[points]\nA = 1\n", "A", "C.x", "[points]\nA = 1\n\"C.x\" = 1\n"},
		{"in braces", "points = { A = 1, B = 2 }\n", "A", "C", "points = { A = 1, C = 1, B = 2 }\n"},
		{"a header", "[points.A]\nat = 1\non = 2\n\n[lines]\n", "A", "C", "[points.A]\nat = 1\non = 2\n\n[points.C]\nat = 1\non = 2\n\n[lines]\n"},
		{"dotted", "[points]\nA.at = 1\nA.on = 2\n", "A", "C", "[points]\nA.at = 1\nA.on = 2\nC.at = 1\nC.on = 2\n"},
		{"dotted at the top", "points.A = 1\n", "A", "C", "points.A = 1\npoints.C = 1\n"},
	} {
		t.Run(c.name, func(t *testing.T) {
			s := mustParse(t, c.text)
			next, err := s.Apply(DuplicateRow{"points", c.row, c.as})
			if err != nil {
				t.Fatal(err)
			}
			if next.Text() != c.want {
				t.Errorf("got\n%s\nwant\n%s", next.Text(), c.want)
			}
		})
	}
}

func TestOrderRefuses(t *testing.T) {
	for _, c := range []struct {
		text string
		e    Edit
		want string
	}{
		{"[points]\nA = 1\n", MoveRow{"points", "X", ""}, `there is no row "X" in [points]`},
		{"[points]\nA = 1\n", MoveRow{"points", "A", "X"}, `there is no row "X" in [points]`},
		{"[points]\nA.at = 1\nA.on = 2\nB = 2\n", MoveRow{"points", "A", "B"}, `"A" is written in several places`},
		{"[points.A]\nat = 1\n[points]\nB = 2\n", MoveRow{"points", "A", "B"}, `"A" and "B" are written in different places`},
		{"[[points.A]]\nat = 1\n[points.B]\nat = 2\n", MoveRow{"points", "A", "B"}, `"A" is written in a form that cannot be edited here`},
		{"[points]\nA = 1\nB = 2\n", DuplicateRow{"points", "A", "B"}, `the name "B" is already used in [points]`},
		{"[points]\nA = 1\n", DuplicateRow{"points", "A", " "}, "the new name is empty"},
		{"[points]\nA = 1\n", DuplicateRow{"points", "X", "B"}, `there is no row "X" in [points]`},
	} {
		if _, err := mustParse(t, c.text).Apply(c.e); err == nil || diag.Of(err).Msg != c.want {
			t.Errorf("%#v: %v, want %s", c.e, err, c.want)
		}
	}
}

func TestDoSeveral(t *testing.T) {
	const text = "title = 'x'\n[points]\nA = 1 # one\nB = \"A\"\n[lines]\nT = { kind = \"cable\", path = \"A B\" }\n"
	h := NewHistory(mustParse(t, text))
	cell := func(table, row, key, text string) Edit { return SetCell{Ref{table, row, key}, text} }
	err := h.Do(
		cell("points", "B", "", "Q"), cell("lines", "T", "path", "Q B"), RenameRow{"points", "A", "Q"},
		cell("points", "Q", "", "7"), cell("points", "Q", "", "8"), RenameRow{"points", "B", "A"}, RenameRow{"points", "A", "R"},
		DuplicateRow{"points", "Q", "S"}, cell("", "title", "", "y"),
	)
	if err != nil {
		t.Fatal(err)
	}
	const want = "title = 'y'\n[points]\nQ = 8 # one\nS = 8\nR = \"Q\"\n[lines]\nT = { kind = \"cable\", path = \"Q B\" }\n"
	if got := h.Current().Text(); got != want {
		t.Fatalf("got\n%s\nwant\n%s", got, want)
	}
	if !h.Undo() || h.Current().Text() != text || h.Undo() {
		t.Fatal("one step does not take all edits back")
	}
	if !h.Redo() || h.Current().Text() != want {
		t.Fatal("one step does not make all edits again")
	}
	before := h.Current()
	err = h.Do(cell("", "title", "", "z"), DeleteRow{"points", "none"})
	if err == nil || diag.Of(err).Msg != `there is no row "none" in [points]` || h.Current() != before {
		t.Fatalf("a refused edit left something behind: %v", err)
	}
	if err := h.Do(); err != nil || h.Current() != before {
		t.Fatalf("nothing to do did something: %v", err)
	}
}

// TestApplyIsOneByOne: many edits at once give what the same edits give one
// after the other, refusals included.
func TestApplyIsOneByOne(t *testing.T) {
	const text = "[points]\nA = 1\nB = 'A'\nC = { at = \"B\", on = \"x\" }\nD.at = 1\nD.on = 2\n[lines]\nA = { kind = \"cable\" }\n"
	rng := rand.New(rand.NewPCG(7, 7))
	names := strings.Fields("A B C D E F")
	name := func() string { return names[rng.IntN(len(names))] }
	table := func() string { return []string{"points", "lines"}[rng.IntN(2)] }
	for range 1000 {
		s := mustParse(t, text)
		var edits []Edit
		for range rng.IntN(6) {
			edits = append(edits, []Edit{
				SetCell{Ref{table(), name(), []string{"", "at", "on"}[rng.IntN(3)]}, name()},
				RenameRow{table(), name(), name()}, MoveRow{table(), name(), name()}, DuplicateRow{table(), name(), name()},
				DeleteRow{table(), name()}, DropCell{Ref{table(), name(), "on"}},
			}[rng.IntN(6)])
		}
		one, oneErr := s, error(nil)
		for _, e := range edits {
			next, err := one.Apply(e)
			if oneErr = err; err != nil {
				break
			}
			one = next
		}
		all, err := s.Apply(edits...)
		if (err == nil) != (oneErr == nil) || err != nil && err.Error() != oneErr.Error() {
			t.Fatalf("%#v: %v, one by one %v", edits, err, oneErr)
		}
		if err == nil && all.Text() != one.Text() {
			t.Fatalf("%#v:\n%s\none by one\n%s", edits, all.Text(), one.Text())
		}
	}
}
