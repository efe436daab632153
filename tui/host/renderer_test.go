package host

import (
	"strings"
	"testing"

	"trivet/mechanics/sheet"
	"trivet/tui"
	"trivet/tui/theme"

	tea "charm.land/bubbletea/v2"
	"github.com/charmbracelet/x/ansi"
)

// Whatever frames came before, and whether a terminal saw them all or came in the
// middle, it shows the last one.
func TestFramesInAnyOrderEndInTheSameScreen(t *testing.T) {
	s, err := sheet.Parse([]byte(lamp))
	if err != nil {
		t.Fatal(err)
	}
	m := tui.New(tui.Options{Sheet: s, Path: "lamp.toml", Width: 90, Height: 29})
	at := terminalOf([]string{"TERM=xterm-256color"})
	p := newRenderer(90, 30, at)
	all := newEmulator(t, 90, 30)
	before := ""
	for i, k := range []tea.Key{
		{Code: tea.KeyDown}, {Code: tea.KeyRight}, {Code: '9', Text: "9"}, {Code: tea.KeyEscape}, {Code: '?', Text: "?"}, {Code: tea.KeyPgDown}, {Code: tea.KeyEscape},
		{Code: 'e', Mod: tea.ModCtrl}, {Code: 'e', Mod: tea.ModCtrl}, {Code: 't', Mod: tea.ModCtrl}, {Code: '7', Mod: tea.ModAlt}, {Code: tea.KeyLeft}, {Code: 'a', Text: "a"},
	} {
		next, _ := m.Update(tea.KeyPressMsg(k))
		m = next.(tui.Model)
		frame := m.Look().On(90, 29, theme.Unicode) + line(90, at, strings.Repeat("x", i))
		if i%5 == 4 {
			frame = "short\n" + frame[:strings.IndexByte(frame, '\n')] // fewer lines
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
		_, _ = want.Write([]byte(strings.ReplaceAll(frame, "\n", "\r\n")))
		if got := all.screen(); got != want.screen() {
			t.Fatalf("frame %d by differences:\n%s\nwant\n%s", i, got, want.screen())
		}
		if got := late.screen(); got != want.screen() {
			t.Fatalf("frame %d as a whole:\n%s\nwant\n%s", i, got, want.screen())
		}
	}
}

// A line that is said to fit does.
func TestALineTakesNoMoreColumnsThanSaid(t *testing.T) {
	for _, l := range []string{
		"", "T1  37.5 N", "\x1b[1;31mT1\x1b[m", "⠀⣿│─▸→Σ°·²", "線が\x1b[7m三", "é e\u0301", "👍🏽 ⌚ ☔ ➕", "\x1b", "\x1b[", "a\x1b[38;5;1", "\xff\xfe", "﷽", "\t",
	} {
		if got, is := columns(l), ansi.StringWidth(l); got < is {
			t.Errorf("%q takes %d columns, said are %d", l, is, got)
		}
	}
	if got := columns("\x1b[1m│ T1 ⣿ 2.50 kN → °\x1b[m"); got != 18 {
		t.Errorf("a line as trivet draws it is measured as %d columns", got)
	}
	for r := rune(1); r < 0x20000; r++ {
		if l := string(r); columns(l) < ansi.StringWidth(l) {
			t.Fatalf("%q (%U) takes %d columns, said are %d", l, r, ansi.StringWidth(l), columns(l))
		}
	}
}
