package tui

import (
	"strings"
	"testing"

	"trivet/mechanics/sheet"
)

// guyed has names that begin alike.
var guyed = strings.NewReplacer("\nA =", "\nPost =", "D A", "D Post", "\nB =", "\nPole =", "D B", "D Pole").Replace(hanging)

func TestWordsAreOfferedAsTyped(t *testing.T) {
	r := newRig(t, guyed, 120, 36)
	path := sheet.Ref{Table: "lines", Row: "T1", Key: "path"}
	to := func() {
		t.Helper()
		r.keys("f7 f", "pgup", "home")
		for s, _ := r.m.slot(); s.Ref.Key != "path"; s, _ = r.m.slot() {
			r.keys("right")
		}
	}
	to()
	r.text("D ")
	if len(r.m.cells.Cell.Words) > 0 {
		t.Errorf("a blank asks for %v", r.m.cells.Cell.Words)
	}
	r.text("Po")
	r.sees("Post", "Pole", "enter: insert   esc: leave it as typed")
	first := r.m.cells.Cell.Words[0].Text
	r.keys("tab")
	if want := "D " + first; r.m.cells.Cell == nil || r.m.cells.Cell.Text != want {
		t.Fatalf("tab does not take %q", want)
	}
	if len(r.m.cells.Cell.Words) > 0 {
		t.Error("a whole word asks for more")
	}
	r.keys("ctrl+u")
	r.text("D Po")
	second := r.m.cells.Cell.Words[1].Text
	r.keys("down", "up", "down", "enter")
	r.holds(path, "D "+second)

	// What is highlighted is taken, and kept as typed once the list is closed.
	to()
	r.text("D Pos")
	r.keys("enter")
	r.holds(path, "D Post")
	to()
	r.text("D Pos")
	r.keys("esc", "enter")
	r.holds(path, "D Pos")
	// The first esc closes the list, the second leaves the cell as it was.
	to()
	r.text("D Po")
	r.keys("esc")
	if r.m.cells.Cell == nil || len(r.m.cells.Cell.Words) > 0 {
		t.Fatal("esc does not close the list alone")
	}
	r.text("l")
	if len(r.m.cells.Cell.Words) > 0 {
		t.Error("the list comes back")
	}
	r.keys("esc")
	r.holds(path, "D Pos")
	if r.m.cells.Cell != nil {
		t.Error("the cell is still open")
	}
}

func TestWordsOfOtherCells(t *testing.T) {
	for _, c := range []struct {
		keys []string
		text string
		want string
	}{
		{[]string{"f7 g"}, "5 kip", ""}, // whole as it stands
		{[]string{"f7 g"}, "5 lb", "lbf"},
		{[]string{"f7 g"}, "sq", "sqrt"},
		{[]string{"alt+m", "ctrl+n"}, "ang", "angle"},
		{[]string{"alt+m", "ctrl+n"}, "T", "T1"},
		{[]string{"alt+p", "down"}, "wa", ""}, // a name is not completed
		{[]string{"alt+p", "right"}, "-3, 4", ""},
	} {
		r := newRig(t, hanging, 120, 36)
		r.keys(c.keys...)
		r.text(c.text)
		var words []string
		for _, w := range r.m.cells.Cell.Words {
			words = append(words, w.Text)
		}
		if all := strings.Join(words, " "); c.want == "" && all != "" || !strings.Contains(all, c.want) {
			t.Errorf("%q offers %q, want %q", c.text, all, c.want)
		}
		checkFrame(t, r.m)
	}
}
