package grid

import (
	"image"
	"strings"
	"testing"

	"github.com/charmbracelet/x/ansi"
)

var marked = []Sequences{{}, {"<", ">"}}

func TestTextIsCutAtItsRectangle(t *testing.T) {
	for _, c := range []struct {
		name, text string
		x          int
		want       string
	}{
		{"fits", "abc", 1, ".<abc>."},
		{"too long", "abcdefg", 1, ".<abc>."},
		{"starts before", "abcde", 0, ".<bcd>."},
		{"wide whole", "a世", 1, ".<a世>."},
		{"wide cut whole", "ab世", 1, ".<ab>_."},
		{"combining stays with its letter", "e\u0301x", 1, ".<e\u0301x>_."},
		{"escape is a dot", "\x1b[2", 1, ".<·[2>."},
		{"direction marks are dots", "\u202eab", 1, ".<·ab>."},
	} {
		g := New(5, 1)
		g.All().Fill('.', 0)
		in := g.All().In(image.Rect(1, 0, 4, 1))
		in.Fill('_', 0)
		in.Text(c.x-1, 0, 1, c.text)
		if got := g.Render(marked); got != c.want {
			t.Errorf("%s: %q, want %q", c.name, got, c.want)
		}
	}
}

func TestHalfAWideCharacterDoesNotStay(t *testing.T) {
	g := New(4, 1)
	g.All().Text(0, 0, 0, "世界")
	g.All().Set(1, 0, 'x', 0)
	g.All().Set(2, 0, 'y', 0)
	if got := g.Render(nil); got != " xy " {
		t.Errorf("%q", got)
	}
}

func TestEveryLineHasTheWidth(t *testing.T) {
	g := New(10, 3)
	c := g.All()
	c.Text(0, 0, 1, "áé 世界 ünder the line")
	c.Text(3, 1, 1, "T1 ≈ 5 N")
	c.Paint(-2, 1, 30, 1)
	c.Text(0, 9, 1, "outside")
	c.In(image.Rect(-5, -5, 99, 99)).Text(9, 2, 0, "世")
	for _, line := range strings.Split(g.Render(nil), "\n") {
		if w := ansi.StringWidth(line); w != 10 {
			t.Errorf("%q has %d columns", line, w)
		}
	}
}

func TestClean(t *testing.T) {
	if got := Clean("a\x1b]0;b\a\u202e é"); got != "a·]0;b·· é" {
		t.Errorf("%q", got)
	}
}

func TestSevenKeepsTheWidths(t *testing.T) {
	g := New(9, 1)
	g.All().Text(0, 0, 0, "ΣF 世…e\u0301°")
	g.Seven()
	if got := g.Render(nil); got != "SF ??~eo " {
		t.Errorf("%q", got)
	}
}

func TestFit(t *testing.T) {
	for _, c := range []struct{ got, want string }{
		{Fit("abc", 5), "abc  "}, {Fit("abcdef", 4), "abc…"}, {Fit("世界", 3), "世…"}, {Fit("世界", 2), "… "},
		{FitRight("7", 3), "  7"}, {FitRight("12345", 3), "12…"}, {Fit("x", 0), ""}, {Fit("", 2), "  "},
	} {
		if c.got != c.want {
			t.Errorf("%q, want %q", c.got, c.want)
		}
	}
}

func TestWindowScrollsUnderTheCursor(t *testing.T) {
	for _, c := range []struct {
		s     string
		at, w int
		want  string
		skip  int
	}{
		{"abc", 1, 5, "abc", 0}, {"abcdefgh", 8, 5, "efgh", 4}, {"abcdefgh", 4, 5, "abcde", 0}, {"ab", 1, 0, "", 0},
	} {
		if got, skip := Window(c.s, c.at, c.w); got != c.want || skip != c.skip {
			t.Errorf("Window(%q, %d, %d) = %q, %d", c.s, c.at, c.w, got, skip)
		}
	}
}

func BenchmarkRender(b *testing.B) {
	for b.Loop() {
		g := New(120, 36)
		for y := range 36 {
			g.All().Text(0, y, Style(y%2), "points A 4, 0, 0 and some more words here")
		}
		g.Render(marked)
	}
}

// Characters of whose width terminals disagree show as what they agree on.
func TestTerminalsAgreeOnEveryWidth(t *testing.T) {
	for _, c := range []struct {
		text, want string
		w          int
	}{
		{"起重", "起重", 4}, {"e\u0301x", "e\u0301x", 2}, {"👍", "👍", 2},
		{"👩\u200d👩\u200d👧", "👩", 2}, {"👍\U0001F3FD", "👍", 2},
		{"\U0001F1E9\U0001F1EA", "\U0001F1E9\U0001F1EA", 2}, {"a\u00adb", "ab", 2}, {"x\u200by", "x·y", 3}, {"x\u200cy", "x\u200cy", 2}, {"a\u202eb", "a·b", 3},
	} {
		g := New(c.w+1, 1)
		if at := g.All().Text(0, 0, 0, c.text); at != c.w || Width(c.text) != c.w {
			t.Errorf("%q takes %d columns and measures %d, want %d", c.text, at, Width(c.text), c.w)
		}
		if got := g.Render(nil); got != c.want+" " {
			t.Errorf("%q shows as %q, want %q", c.text, got, c.want)
		}
	}
}
