package line

import (
	"strings"
	"testing"

	tea "charm.land/bubbletea/v2"

	"trivet/mechanics/sheet"
	"trivet/tui"
	"trivet/tui/grid"
	"trivet/tui/theme"
)

// Whatever frames came before, and whether a terminal saw them all or came in the
// middle, it shows the last one.
func TestFramesInAnyOrderEndInTheSameScreen(t *testing.T) {
	s, err := sheet.Parse([]byte(lamp))
	if err != nil {
		t.Fatal(err)
	}
	m := tui.New(tui.Options{Sheet: s, Path: "lamp.toml", Width: 90, Height: 29})
	at := TerminalOf([]string{"TERM=xterm-256color"})
	p := newRenderer(90, 30, at)
	all := newEmulator(t, 90, 30)
	var before grid.Frame
	for i, k := range []tea.Key{
		{Code: tea.KeyDown}, {Code: tea.KeyRight}, {Code: '9', Text: "9"}, {Code: tea.KeyEscape}, {Code: '?', Text: "?"}, {Code: tea.KeyPgDown}, {Code: tea.KeyEscape},
		{Code: 'e', Mod: tea.ModCtrl}, {Code: 'e', Mod: tea.ModCtrl}, {Code: 't', Mod: tea.ModCtrl}, {Code: '7', Mod: tea.ModAlt}, {Code: tea.KeyLeft}, {Code: 'a', Text: "a"},
	} {
		next, _ := m.Update(tea.KeyPressMsg(k))
		m = next.(tui.Model)
		frame := Under(m.Look().On(90, 29, theme.Unicode), 90, 30, at, strings.Repeat("x", i))
		switch i % 5 {
		case 3:
			frame.All().Text(3, 4, theme.Bad, "線が三 👍🏽 e\u0301 é")
		case 4: // of another size still
			frame = Under(m.Look().On(70, 20, theme.Unicode), 90, 30, at, "")
		}
		if i == 0 {
			_, _ = all.Write(p.whole(frame))
		} else {
			_, _ = all.Write(p.next(before, frame))
		}
		before = frame
		late := newEmulator(t, 90, 30)
		_, _ = late.Write([]byte("what was there before"))
		_, _ = late.Write(p.whole(frame))
		want := newEmulator(t, 90, 30)
		_, _ = want.Write([]byte(strings.ReplaceAll(frame.String(), "\n", "\r\n")))
		if got := all.screen(); got != want.screen() {
			t.Fatalf("frame %d by differences:\n%s\nwant\n%s", i, got, want.screen())
		}
		if got := late.screen(); got != want.screen() {
			t.Fatalf("frame %d as a whole:\n%s\nwant\n%s", i, got, want.screen())
		}
	}
}
