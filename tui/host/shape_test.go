package host

import (
	"testing"

	"trivet/mechanics/sheet"
	"trivet/tui"
	"trivet/tui/host/line"
	"trivet/tui/host/store"
)

// However many sizes and kinds of terminals follow, a bounded number of screens is
// drawn, none larger than its terminal where that has at least 40x10.
func TestFewScreensAreDrawnForManySizes(t *testing.T) {
	sh, err := sheet.Parse([]byte(lamp))
	if err != nil {
		t.Fatal(err)
	}
	s := newClassroom(testLog(&logged{}), tui.Options{Sheet: sh}, &store.Store{}, "", "")
	s.workbench.close() // nobody else reads the screens
	kinds := []line.Terminal{}
	for _, env := range []string{"xterm", "screen", "linux", "vt100"} {
		for _, more := range []string{"LANG=C", "LANG=C.UTF-8", "NO_COLOR=1"} {
			kinds = append(kinds, line.TerminalOf([]string{"TERM=" + env, more}))
		}
	}
	for w := 1; w <= line.MaxW; w += 7 {
		for h := 1; h <= line.MaxH; h += 3 {
			t1 := kinds[(w+h)%len(kinds)]
			cw, ch := line.Clamped(w, h)
			k := s.shape(cw, ch, t1)
			if k.t.Colour != t1.Colour || k.t.Set != t1.Set {
				t.Fatalf("%v for %v", k, t1)
			}
			if cw >= 40 && ch >= 10 && (k.w > cw || k.h > ch) {
				t.Fatalf("%dx%d for %dx%d", k.w, k.h, cw, ch)
			}
			s.screens[k] = &shared{}
		}
	}
	if n := len(s.screens); n > maxShapes+6*len(coarse) {
		t.Errorf("%d screens", n)
	}
	// A usual terminal that comes late sees nearly all of its own screen.
	clear(s.screens)
	usual := line.TerminalOf([]string{"TERM=xterm-256color"})
	s.screens[shape{120, 36, usual}] = &shared{}
	for i := range maxShapes {
		s.screens[shape{i, 1, usual}] = &shared{}
	}
	if k := s.shape(126, 38, usual); k != (shape{120, 36, usual}) {
		t.Errorf("%v", k)
	}
	if k := s.shape(90, 30, usual); k.w != 80 || k.h != 24 || k.t.Kind != line.UnknownKind {
		t.Errorf("%v", k)
	}
}
