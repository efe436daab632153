package tui

import (
	"fmt"
	"io"
	"strings"
	"sync/atomic"
	"testing"
	"time"

	tea "charm.land/bubbletea/v2"
	"github.com/charmbracelet/colorprofile"
	uv "github.com/charmbracelet/ultraviolet"
	"github.com/charmbracelet/x/ansi"
	"github.com/charmbracelet/x/vt"

	"trivet/tui/frame"
	"trivet/tui/keys"
)

// shown is a model in the real program that tells what it draws.
type shown struct {
	Model
	again func() Model // the session after this one
}

// shot asks a model for its frame, and whether a result is still to come.
type shot struct{ to chan<- exposure }

type exposure struct {
	frame string
	w, h  int
	mode  keys.Mode
	busy  bool
}

// happen lets something happen by chance; the size is the terminal's alone.
type happen struct{ dice dice }

// anew begins another session in the same program.
type anew struct{}

func (s shown) Update(msg tea.Msg) (tea.Model, tea.Cmd) {
	switch msg := msg.(type) {
	case shot:
		m := s.Model
		msg.to <- exposure{m.View().Content, m.w, m.h, m.mode(), m.live.Running() || m.file.Saving}
		return s, nil
	case happen:
		event := msg.dice.event(s.Model)
		if _, ok := event.(tea.WindowSizeMsg); ok {
			return s, nil
		}
		return s.Update(event)
	case anew:
		w, h, sizing := s.w, s.h, s.sizing
		s.file.Close()
		s.Model = s.again()
		s.sizing = sizing // the terminal is the same, and may not have settled
		s.resize(w, h)
		return s, s.Init()
	}
	next, cmd := s.Model.Update(msg)
	s.Model = next.(Model)
	return s, cmd
}

// running is the real program with its renderer on an emulated terminal.
type running struct {
	t       testing.TB
	term    *terminal
	program *tea.Program
	sent    atomic.Int64 // bytes to the terminal
	writes  atomic.Int64

	onTheWay atomic.Pointer[func(bytes []byte)] // called before the terminal gets them; may be nil
}

func (s *running) Write(p []byte) (int, error) {
	if f := s.onTheWay.Load(); f != nil {
		(*f)(p)
	}
	s.sent.Add(int64(len(p)))
	s.writes.Add(1)
	return s.term.Write(p)
}

func newRunning(t testing.TB, w, h int, model func() Model) *running {
	again := func() Model {
		m := model()
		m.sizing.Settle = frame.SettleAfter // as the program has it
		return m
	}
	s := &running{t: t, term: &terminal{e: vt.NewEmulator(w, h)}}
	go io.Copy(io.Discard, s.term.e) // the emulator's replies; unread they block it
	// What was on its way when the size changed may scroll more lines than there are
	// now. Terminals leave that; the emulator by itself would go on beyond its end.
	s.term.e.RegisterCsiHandler('r', func(margins ansi.Params) bool {
		bottom, _, _ := margins.Param(1, 0)
		return bottom > s.term.e.Height()
	})
	first := again()
	first.w, first.h = 0, 0 // so that it is seen when the terminal's size has come
	s.program = tea.NewProgram(shown{first, again}, tea.WithContext(t.Context()), tea.WithInput(nil), tea.WithOutput(s),
		tea.WithWindowSize(w, h), tea.WithColorProfile(colorprofile.TrueColor), tea.WithEnvironment([]string{"TERM=xterm-256color"}),
		tea.WithFilter(func(_ tea.Model, msg tea.Msg) tea.Msg {
			switch msg.(type) {
			case tea.QuitMsg, tea.SuspendMsg, tea.InterruptMsg:
				return anew{}
			}
			return msg
		}))
	ended := make(chan error, 1)
	go func() {
		_, err := s.program.Run()
		ended <- err
	}()
	t.Cleanup(func() {
		defer s.term.hangUp()
		s.program.Kill()
		<-ended
	})
	if _, differs := s.settle(); differs != "" {
		t.Fatal(differs)
	}
	return s
}

// look gives what the model draws now.
func (s *running) look() exposure {
	to := make(chan exposure, 1)
	s.program.Send(shot{to})
	select {
	case p := <-to:
		return p
	case <-time.After(patience):
		s.t.Fatal("the program does not answer")
		return exposure{}
	}
}

// resize gives the terminal another size and tells the program.
func (s *running) resize(w, h int) {
	s.term.resize(w, h)
	s.program.Send(tea.WindowSizeMsg{Width: w, Height: h})
}

// settle waits until the terminal shows what the model draws, cell for cell, with
// its styles, and nothing else.
func (s *running) settle() (exposure, string) {
	tick := time.NewTicker(2 * time.Millisecond)
	defer tick.Stop()
	for deadline := time.After(patience); ; {
		p := s.look()
		differs := "a result is still to come"
		if !p.busy {
			if differs = s.term.differs(p); differs == "" {
				return p, ""
			}
		}
		select {
		case <-deadline:
			return p, differs
		case <-tick.C:
		}
	}
}

// until polls until a condition holds.
func (s *running) until(what string, holds func() bool) {
	s.t.Helper()
	tick := time.NewTicker(time.Millisecond)
	defer tick.Stop()
	for deadline := time.After(patience); !holds(); {
		select {
		case <-deadline:
			s.t.Fatalf("never: %s", what)
		case <-tick.C:
		}
	}
}

func (t *terminal) resize(w, h int) {
	t.mu.Lock()
	defer t.mu.Unlock()
	t.e.Resize(w, h)
}

// differs names the first cell that is not as in a terminal on which the frame
// alone was written.
func (t *terminal) differs(p exposure) string {
	t.mu.Lock()
	defer t.mu.Unlock()
	if t.e.Width() != p.w || t.e.Height() != p.h {
		return "the sizes differ"
	}
	clean := vt.NewEmulator(p.w, p.h)
	clean.Write([]byte(strings.ReplaceAll(p.frame, "\n", "\r\n")))
	for y := range p.h {
		for x := range p.w {
			is, want := cellOf(t.e, x, y), cellOf(clean, x, y)
			if is != want {
				return fmt.Sprintf("column %d of line %d holds %s, not %s", x, y, is, want)
			}
		}
	}
	return ""
}

func cellOf(e *vt.Emulator, x, y int) string {
	c := e.CellAt(x, y)
	if c == nil {
		return "a blank"
	}
	style := c.Style
	if seen := uv.AttrReverse | uv.AttrStrikethrough; c.Content == " " && style.Attrs&uint8(seen) == 0 {
		style.Attrs = 0 // on a blank nobody sees it
		if style.Underline == 0 {
			style.Fg = nil
		}
		if style.IsZero() {
			return "a blank"
		}
	}
	return fmt.Sprintf("%q in style %+v", c.Content, style)
}
