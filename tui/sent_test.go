package tui

import (
	"fmt"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	tea "charm.land/bubbletea/v2"

	"trivet/fixtures/long"
	"trivet/mechanics/sheet"
)

// editing is what a person types to build the hanging load from a blank sheet,
// and then tries with it: other values, another cable, a search, undo.
const editing = "R enter 0 , 0 , 0 enter enter A enter 2 , 1 , 2 enter enter B enter - 1 , 2 , 2 enter enter C enter 0 , - 3 , 4 enter enter enter " +
	"f7 f T A enter enter R space A enter enter T B enter enter R space B enter enter T C enter enter R space C enter enter " +
	"W enter w e enter R enter 3 8 0 N enter enter " +
	"alt+p down right alt+up alt+up alt+up alt+down alt+down 2 . 5 , 1 , 2 enter left f2 backspace backspace 3 esc ctrl+z ctrl+z ctrl+y " +
	"f7 f down right right right enter left left 1 enter tab tab shift+tab alt+d ctrl+d ctrl+f T C esc " +
	"alt+m down down right up f7 g up up 4 enter down alt+y down down up esc alt+i left left right + + - esc"

// sentShare is what a keystroke may send at most of what a whole frame takes,
// in the median.
const sentShare = 4

// TestAKeystrokeSendsLittle counts what the real program sends for each key.
func TestAKeystrokeSendsLittle(t *testing.T) {
	for _, size := range long.Share([][2]int{{80, 24}, {120, 36}, {200, 60}}) {
		t.Run(fmt.Sprintf("%d by %d", size[0], size[1]), func(t *testing.T) {
			t.Parallel()
			s, err := sheet.Parse([]byte("up = \"+z\"\n"))
			if err != nil {
				t.Fatal(err)
			}
			st := newRunning(t, size[0], size[1], func() Model { return New(Options{Sheet: s}) })
			var each, whole []int64
			for i, k := range strings.Fields(editing) {
				each = append(each, st.cost(press(k)))
				if i%20 == 0 {
					whole = append(whole, st.repaint())
				}
			}
			slices.Sort(each)
			slices.Sort(whole)
			key, frame := each[len(each)/2], whole[len(whole)/2]
			t.Logf("%d keys send %d bytes in the median, at most %d in 95 of 100, at most %d; a whole frame takes %d: %.1f %%",
				len(each), key, each[len(each)*95/100], each[len(each)-1], frame, 100*float64(key)/float64(frame))
			if key*sentShare > frame {
				t.Errorf("a key sends %d bytes, more than a quarter of the %d of a whole frame", key, frame)
			}
			if p := st.look(); !strings.Contains(p.frame, "determinate") {
				t.Errorf("the keys do not lead to a result:\n%s", p.frame)
			}
		})
	}
}

// TestIdleSendsNothing lets the looks at the file come that are all that happens
// while nobody does anything: the terminal gets nothing, and nothing else is asked
// for. Bubble Tea calls its renderer all the time; without a change that sends nothing.
func TestIdleSendsNothing(t *testing.T) {
	s, err := sheet.Parse([]byte(crane))
	if err != nil {
		t.Fatal(err)
	}
	path := filepath.Join(t.TempDir(), "crane.toml")
	stamp, err := sheet.Save(path, s, sheet.Stamp{}, false)
	if err != nil {
		t.Fatal(err)
	}
	opt := Options{Sheet: s, Path: path, Stamp: stamp, Journal: true, Env: []string{"XDG_STATE_HOME=" + t.TempDir()}, Every: time.Hour}
	var first Model
	st := newRunning(t, 80, 24, func() Model { first = New(opt); return first })
	st.settle()
	writes := st.writes.Load()
	for range 100 {
		st.program.Send(tick{})
		st.look()
	}
	if n := st.writes.Load() - writes; n > 0 {
		t.Errorf("100 looks at the file sent %d times", n)
	}
	if first.file.Every = 0; first.next() != nil {
		t.Error("a session that does not look at its file waits for something")
	}
}

// cost is what a message sends to the terminal.
func (s *running) cost(msg tea.Msg) int64 {
	s.t.Helper()
	before := s.sent.Load()
	s.program.Send(msg)
	if _, differs := s.settle(); differs != "" {
		s.t.Fatalf("%v: %s", msg, differs)
	}
	return s.sent.Load() - before
}

// repaint is what the whole frame sends. The terminal holds it already, so the
// bytes themselves are waited for.
func (s *running) repaint() int64 {
	s.t.Helper()
	before := s.sent.Load()
	s.program.Send(tea.ClearScreen())
	s.until("the frame is sent anew", func() bool { return s.sent.Load() > before })
	return s.sent.Load() - before + s.cost(tea.BlurMsg{})
}
