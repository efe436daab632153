package overlay

import (
	"fmt"
	"strings"
	"testing"

	"github.com/charmbracelet/x/ansi"

	"trivet/tui/grid"
	"trivet/tui/keys"
	"trivet/tui/text"
	"trivet/tui/theme"
)

// fruit is a list of two families.
func fruit(pick int) Shown {
	s := Shown{List: List{Pick: pick}, None: "none matches", Columns: []Column{{At: 1, Look: theme.Plain, Picks: true}}}
	for i := range 12 {
		family := "Apples"
		if i > 5 {
			family = "Pears"
		}
		s.Rows = append(s.Rows, Row{Family: family, Cells: []string{fmt.Sprint("kind ", i)}, Says: fmt.Sprint("kind ", i)})
	}
	return s
}

// The mouse finds the row that is drawn under it, and none where a family's name stands.
func TestTheMouseFindsTheRowThatIsDrawn(t *testing.T) {
	for pick := range 12 {
		for h := 1; h < 16; h++ {
			s, g := fruit(pick), grid.New(20, h)
			s.Draw(g.All(), '>')
			shown, lines := false, strings.Split(ansi.Strip(g.Render(theme.New(theme.Unicode).Styles)), "\n")
			for y := range h {
				line := strings.TrimRight(lines[y], " ")
				row, ok := s.At(h, y)
				if want := fmt.Sprintf(" kind %d", row); ok && line != want && line != ">"+want[1:] {
					t.Fatalf("row %d is %q", row, line)
				}
				shown = shown || ok && row == pick
			}
			if !shown {
				t.Fatalf("the row picked, %d, does not show in %d lines", pick, h)
			}
		}
	}
}

func TestAListIsWalked(t *testing.T) {
	l := List{Pick: 3}
	for _, c := range []struct {
		i    keys.Intent
		want int
	}{{keys.Up, 2}, {keys.PageUp, 0}, {keys.PickUp, 0}, {keys.Last, 11}, {keys.Down, 11}, {keys.PageUp, 6}, {keys.PickDown, 7}, {keys.First, 0}} {
		if l, _ = l.Do(c.i, 12, 5); l.Pick != c.want {
			t.Errorf("the pick is %d, want %d", l.Pick, c.want)
		}
	}
	l.Pick = 4
	if l = l.Typed("q"); l.Pick != 0 || l.Text != "q" {
		t.Errorf("what is typed leaves %+v", l)
	}
	if _, ok := l.Do(keys.Save, 12, 5); ok {
		t.Error("a list saves")
	}
	if got := Narrowed(List{Line: text.NewLine("LINE new")}, []string{"new point", "a new Line", "line"}, func(s string) string { return s }); len(got) != 1 || got[0] != "a new Line" {
		t.Errorf("both words are in %q", got)
	}
	if got := fruit(7).Says(); got != "8 of 12, Pears: kind 7" {
		t.Errorf("it is said as %q", got)
	}
	if got := (Shown{None: "none matches"}).Says(); got != "none matches" {
		t.Errorf("an empty list is said as %q", got)
	}
}

func TestATextIsScrolledNoFurtherThanItsEnd(t *testing.T) {
	var d text.Lines
	for range 10 {
		d.Plain(theme.Plain, "twelve cells")
	}
	for i, want := range map[keys.Intent]text.Offset{keys.Last: {Y: 6}, keys.Right: {X: 2}, keys.Up: {}, keys.PageDown: {Y: 3}} {
		if got, _ := Scrolled(text.Offset{}, i, d, 10, 4); got != want {
			t.Errorf("intent %d scrolls to %v, want %v", i, got, want)
		}
	}
}
