package sheet

import (
	"testing"

	"trivet/mechanics/diag"
)

func TestWith(t *testing.T) {
	const text = "[points]\nA = \"1\"\nB = { at = \"2\" }\n[given]\nW = 3\n"
	for _, c := range []struct {
		ref  Ref
		want string
	}{
		{Ref{"points", "A", ""}, "[points] A: =\"x\"\n[points] B: at=\"2\"\n[given] W: =\"3\"\n"},
		{Ref{"points", "A", "at"}, "[points] A: =\"x\"\n[points] B: at=\"2\"\n[given] W: =\"3\"\n"},
		{Ref{"points", "A", "on"}, "[points] A: at=\"1\" on=\"x\"\n[points] B: at=\"2\"\n[given] W: =\"3\"\n"},
		{Ref{"points", "B", "on"}, "[points] A: =\"1\"\n[points] B: at=\"2\" on=\"x\"\n[given] W: =\"3\"\n"},
		{Ref{"points", "B", ""}, "[points] A: =\"1\"\n[points] B: at=\"x\"\n[given] W: =\"3\"\n"},
		{Ref{"points", "C", ""}, "[points] A: =\"1\"\n[points] B: at=\"2\"\n[points] C: =\"x\"\n[given] W: =\"3\"\n"},
		{Ref{"", "title", ""}, "[points] A: =\"1\"\n[points] B: at=\"2\"\n[given] W: =\"3\"\n[] title: =\"x\"\n"},
	} {
		s := mustParse(t, text)
		before := rowsOf(s)
		p := s.With(c.ref, "x")
		if got := rowsOf(p); got != c.want {
			t.Errorf("%v: got\n%swant\n%s", c.ref, got, c.want)
		}
		if rowsOf(s) != before || p.Text() != text {
			t.Errorf("%v: the sheet under the preview changed", c.ref)
		}
	}
}

func TestPreviewsStackAndStandAside(t *testing.T) {
	s := mustParse(t, "[points]\nA = \"1\"\nB = \"2\"\n")
	p := s.With(Ref{"points", "A", "on"}, "b").With(Ref{"points", "A", "at"}, "9").With(Ref{"points", "C", ""}, "5")
	if got, want := rowsOf(p), "[points] A: at=\"9\" on=\"b\"\n[points] B: =\"2\"\n[points] C: =\"5\"\n"; got != want {
		t.Errorf("got\n%swant\n%s", got, want)
	}
	for ref, want := range map[Ref][2]int{
		{"points", "B", ""}:   {3, 6}, // another cell
		{"points", "A", "on"}: {2, 1}, // not in the text: its row
		{"points", "C", ""}:   {1, 2}, // nor its row: the table
	} {
		if at := p.Place(ref, diag.Span{}); at.Line != want[0] || at.Column != want[1] {
			t.Errorf("%v: got %d:%d, want %v", ref, at.Line, at.Column, want)
		}
	}
	next, err := p.Apply(SetCell{Ref{"points", "A", ""}, "7"})
	if err != nil {
		t.Fatal(err)
	}
	if want := "[points]\nA = \"7\"\nB = \"2\"\n"; next.Text() != want {
		t.Errorf("an edit of a preview gave %q, want %q", next.Text(), want)
	}
}

const threeByThree = `title = "Load on three cables"
plane = ""
g     = "9.81 m/s^2"

[units]
length = "m"
force  = "N"

[points]
A = "-2, 0, 6"
B = "2, 3, 6"
C = "1, -4, 6"
P = { at = "0, 0, 0", on = "particle" }

[lines]
T1 = { kind = "cable", path = "P A" }
T2 = { kind = "cable", path = "P B" }
T3 = { kind = "cable", path = "P C" }
W  = { kind = "weight", at = "P", magnitude = "100 kg" }
`

func BenchmarkParse(b *testing.B) {
	text := []byte(threeByThree)
	b.ReportAllocs()
	for b.Loop() {
		if _, err := Parse(text); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkWith(b *testing.B) {
	s := mustParse(b, threeByThree)
	ref := Ref{"lines", "T1", "path"}
	b.ReportAllocs()
	for b.Loop() {
		if s.With(ref, "P B") == nil {
			b.Fatal("no preview")
		}
	}
}
