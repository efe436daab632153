package tui

import (
	"fmt"
	"image"
	"os"
	"runtime/debug"
	"strconv"
	"strings"
	"testing"

	tea "charm.land/bubbletea/v2"
	"github.com/charmbracelet/x/ansi"

	"trivet/fixtures/long"
	"trivet/mechanics/sheet"
	"trivet/tui/grid"
	"trivet/tui/keys"
	"trivet/tui/layout"
	"trivet/tui/results"
	"trivet/tui/session"
	"trivet/tui/start"
)

// The storm's variables: how many events in all, and the session to play, or to
// begin with where there are more.
const (
	stormEvents  = "TRIVET_STORM"
	stormSession = "TRIVET_STORM_SESSION"
)

const (
	usualStorm = 12_000
	stormKeys  = 500 // events
	lately     = 12  // events that a failure names
)

// storm is a session to which things happen by chance. What it does in commands
// is done at once or later, as on a loaded machine.
type storm struct {
	t       *testing.T
	seed    uint64
	dice    dice
	m       Model
	late    []tea.Cmd
	ended   bool
	events  []string
	reached *[keys.Modes]int
}

// TestStorm plays keys, text, pastes, mouse and sizes by chance: nothing panics,
// every frame has its size, every pane keeps to its rectangle, the sheet reads.
func TestStorm(t *testing.T) {
	events, first := long.Of(usualStorm/10, usualStorm), uint64(0)
	if n, err := strconv.ParseUint(os.Getenv(stormSession), 10, 64); err == nil {
		events, first = 1, n
	}
	if n, err := strconv.Atoi(os.Getenv(stormEvents)); err == nil {
		events = n
	}
	var reached [keys.Modes]int
	state, played := t.TempDir(), 0
	for seed := first; played < events; seed++ {
		s := &storm{t: t, seed: seed, dice: newDice(seed), reached: &reached}
		played += s.play(state)
	}
	t.Logf("%d events; events in each mode: %v", played, reached)
	if events < usualStorm {
		return // too few to come everywhere
	}
	for m, n := range reached {
		if n == 0 {
			t.Errorf("mode %d was never reached", m)
		}
	}
}

func (s *storm) play(state string) (played int) {
	defer func() {
		if r := recover(); r != nil {
			s.fail("panic: %v\n%s", r, debug.Stack())
		}
	}()
	s.m = New(s.dice.options(state))
	defer func() { s.m.file.Close() }()
	s.do(s.m.Init())
	if s.dice.one(4) {
		s.m.offer(s.dice.left())
	}
	for played < stormKeys && !s.ended {
		mode := s.m.mode()
		s.reached[mode]++
		msg := s.dice.event(s.m)
		s.note(fmt.Sprintf("%T %q (mode %d)", msg, fmt.Sprint(msg), mode))
		s.send(msg)
		for len(s.late) > 0 && s.dice.one(3) {
			i := s.dice.IntN(len(s.late))
			cmd := s.late[i]
			s.late = append(s.late[:i:i], s.late[i+1:]...)
			s.do(cmd)
		}
		played++
		s.check(played)
	}
	return played
}

func (s *storm) note(event string) {
	if s.events = append(s.events, event); len(s.events) > lately {
		s.events = s.events[1:]
	}
}

func (s *storm) fail(format string, args ...any) {
	s.t.Helper()
	s.t.Fatalf("%s=%d on %d by %d: %s\nthe last events:\n%s", stormSession, s.seed, s.m.w, s.m.h, fmt.Sprintf(format, args...), strings.Join(s.events, "\n"))
}

func (s *storm) send(msg tea.Msg) {
	next, cmd := s.m.Update(msg)
	s.m = next.(Model)
	switch {
	case cmd == nil:
	case s.dice.one(3):
		s.late = append(s.late, cmd)
	default:
		s.do(cmd)
	}
}

func (s *storm) do(cmd tea.Cmd) {
	if cmd == nil {
		return
	}
	fault := ""
	switch msg := cmd().(type) {
	case nil:
	case tea.QuitMsg:
		s.ended = true
	case tea.BatchMsg:
		for _, c := range msg {
			s.do(c)
		}
	case session.Solved:
		fault = msg.Fault
		s.send(msg)
	case results.Laid:
		fault = msg.Fault
		s.send(msg)
	case session.Mistakes:
		fault = msg.Fault
		s.send(msg)
	case session.Paged, start.Fetched:
		if says := fmt.Sprintf("%+v", msg); strings.Contains(says, "(fault: ") {
			fault = says
		}
		s.send(msg)
	default:
		s.send(msg)
	}
	if fault != "" {
		s.fail("a command failed: %s", fault)
	}
}

func (s *storm) check(played int) {
	frame := s.m.View().Content
	if s.m.w > 0 && s.m.h > 0 {
		lines := strings.Split(frame, "\n")
		if len(lines) != s.m.h {
			s.fail("the frame has %d lines", len(lines))
		}
		for i, l := range lines {
			if w := ansi.StringWidth(l); w != s.m.w {
				s.fail("line %d has %d columns: %q", i, w, l)
			}
		}
	}
	if played%25 == 0 {
		if again := s.m.View().Content; again != frame {
			s.fail("the same model gives two frames:\n%s\n%s", frame, again)
		}
		if _, err := sheet.Parse([]byte(s.m.history.Current().Text())); err != nil {
			s.fail("the sheet does not read any more: %v", err)
		}
		s.bounds()
	}
}

// bounds draws each pane by itself on a frame full of marks: beside its
// rectangle they all stay.
func (s *storm) bounds() {
	const mark = '¤'
	screen := s.m.screen()
	for p, r := range screen.Panes {
		if screen.TooSmall || r.Empty() {
			continue
		}
		if !r.In(image.Rect(0, 0, s.m.w, s.m.h)) {
			s.fail("pane %d lies at %v", p, r)
		}
		g := grid.New(s.m.w, s.m.h)
		g.All().Fill(mark, 0)
		s.m.drawPane(g.All().In(r), layout.Pane(p))
		beside := func(n int) string { return strings.Repeat(string(mark), n) }
		for y, l := range strings.Split(ansi.Strip(g.Render(nil)), "\n") {
			left, right := 0, s.m.w
			if y >= r.Min.Y && y < r.Max.Y {
				left, right = r.Min.X, r.Max.X
			} else {
				left = s.m.w
			}
			if !strings.HasPrefix(l, beside(left)) || !strings.HasSuffix(l, beside(s.m.w-right)) {
				s.fail("pane %d at %v wrote beside its rectangle, in line %d: %q", p, r, y, l)
			}
		}
	}
}
