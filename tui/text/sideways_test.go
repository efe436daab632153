package text

import (
	"strings"
	"testing"

	"github.com/charmbracelet/x/ansi"

	"trivet/mechanics/origin"
	"trivet/tui/grid"
	"trivet/tui/theme"
)

// A matrix scrolled sideways keeps its rows' names, and cuts no number; what fits
// stays where it is.
func TestATextGoesSidewaysByWholeNumbers(t *testing.T) {
	row := func(name string, entries ...string) []Span {
		line := []Span{{Text: grid.Fit(name, 6), Look: theme.Name, Head: true}}
		for _, e := range entries {
			line = append(line, Numeral(grid.FitRight(e, Column), theme.Plain, origin.Balance))
		}
		return line
	}
	d := Lines{{{Text: "short words"}}, row("P ΣFx", "0.1111", "-0.2222", "0.3333", "0.4444"), row("P ΣFy", "0.5555", ".", "0.7777", "-0.8888")}
	const w = 24
	for _, c := range []struct {
		x    int
		want []string
	}{
		{0, []string{"short words", "P ΣFx   0.1111 -0.2222", "P ΣFy   0.5555       ."}},
		{8, []string{"short words", "P ΣFx  -0.2222  0.3333", "P ΣFy        .  0.7777"}},
		{12, []string{"short words", "P ΣFx       0.3333", "P ΣFy    .  0.7777"}}, // -0.2222 would be cut at the left, 0.4444 at the right
		{16, []string{"short words", "P ΣFx   0.3333  0.4444", "P ΣFy   0.7777 -0.8888"}},
	} {
		g := grid.New(w, 3)
		d.Draw(g.All(), Offset{X: c.x}, w, false)
		for y, line := range strings.Split(ansi.Strip(g.Render(theme.New(theme.Unicode).Styles)), "\n") {
			if got := strings.TrimRight(line, " "); got != c.want[y] {
				t.Errorf("by %d, line %d is %q, want %q", c.x, y, got, c.want[y])
			}
		}
	}
	for j, want := range []int{0, 0, 8, 16} {
		v := View{Line: 1, Span: j + 1}
		v.widen(d, w)
		if v.Scroll.X != want {
			t.Errorf("entry %d is shown from %d on, want %d", j, v.Scroll.X, want)
		}
	}
	v := View{Line: 1, Span: 2, Scroll: Offset{X: 16}}
	if v.widen(d, w); v.Scroll.X != 0 {
		t.Errorf("back at the second entry it shows from %d on", v.Scroll.X)
	}
}
