package tui

import (
	"cmp"
	"context"
	"errors"
	"image/color"
	"io"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	tea "charm.land/bubbletea/v2"
	uv "github.com/charmbracelet/ultraviolet"
	"github.com/charmbracelet/x/vt"

	"trivet/mechanics/sheet"
)

// seat is a person at the real program: bytes go in as from a keyboard, and what
// comes out is on an emulated terminal that answers as terminals do.
type seat struct {
	t        testing.TB
	term     *terminal
	keyboard *io.PipeWriter
	watch    *watcher
	ended    chan error
	folder   string // of the sheets
	home     string
	asked    int // marks sent after what was typed
	w, h     int
	paper    *vt.Emulator // with the frame that the model draws
	on       string       // that frame
}

// seating is where a person sits down.
type seating struct {
	w, h   int
	env    []string
	like   string      // the text of the settings file
	ground color.Color // of the terminal; nil: it does not tell
	file   string      // the sheet's name in the folder; "" for the start screen
	text   string      // what that file holds
	inside bool        // the program runs in the folder, and names its files alone
	again  *seat       // whose home and folder it is, where somebody sat before
}

func sit(t testing.TB, at seating) *seat {
	t.Helper()
	s := &seat{t: t, w: at.w, h: at.h, ended: make(chan error, 1)}
	if at.again != nil {
		s.home, s.folder = at.again.home, at.again.folder
	} else {
		s.home = t.TempDir()
		s.folder = filepath.Join(s.home, "statics")
		if err := os.Mkdir(s.folder, 0o700); err != nil {
			t.Fatal(err)
		}
	}
	env := append([]string{"TERM=xterm-256color", "LANG=en_GB.UTF-8", "HOME=" + s.home, "XDG_CONFIG_HOME=" + filepath.Join(s.home, "config"), "XDG_STATE_HOME=" + filepath.Join(s.home, "state")}, at.env...)
	if at.like != "" {
		s.write(filepath.Join(s.home, "config", "trivet", "settings.toml"), at.like)
	}
	opt := Options{Env: env, Width: at.w, Height: at.h, Journal: true, Start: at.file == ""}
	if at.inside {
		t.Chdir(s.folder)
	}
	if at.file != "" {
		opt.Path = filepath.Join(s.folder, at.file)
		if at.text != "" {
			s.write(opt.Path, at.text)
		}
		if at.inside {
			opt.Path = at.file
		}
		opt.Sheet, opt.Stamp = s.load(opt.Path)
	}
	s.term = &terminal{e: vt.NewEmulator(at.w, at.h)}
	if at.ground != nil {
		s.term.e.SetBackgroundColor(at.ground)
	}
	s.term.e.RegisterOscHandler(52, s.term.clipboard)
	in, keyboard := io.Pipe()
	s.keyboard = keyboard
	go io.Copy(keyboard, s.term.e) // the terminal's answers come in as what is typed does
	ctx, cancel := context.WithCancel(context.Background())
	opt.In, opt.Out = in, s.term
	// Where the background is asked for, its answer comes before anything is typed.
	s.watch = &watcher{ground: at.like != "" || at.ground == nil}
	go func() {
		s.ended <- opt.run(ctx, func(m Model) tea.Model { return watched{m, s.watch} })
	}()
	t.Cleanup(func() {
		cancel()
		in.CloseWithError(errors.New("nobody is there any more"))
		s.term.hangUp()
		s.paper = nil
	})
	s.settle()
	return s
}

func (s *seat) write(path, text string) {
	s.t.Helper()
	if err := os.MkdirAll(filepath.Dir(path), 0o700); err != nil {
		s.t.Fatal(err)
	}
	if err := os.WriteFile(path, []byte(text), 0o644); err != nil {
		s.t.Fatal(err)
	}
}

func (s *seat) file(name string) string {
	s.t.Helper()
	text, err := os.ReadFile(filepath.Join(s.folder, name))
	if err != nil {
		s.t.Error(err)
	}
	return string(text)
}

func (s *seat) load(path string) (*sheet.Sheet, sheet.Stamp) {
	s.t.Helper()
	sh, stamp, err := sheet.Load(path)
	if err != nil {
		s.t.Fatal(err)
	}
	return sh, stamp
}

// send is bytes as a terminal sends them.
func (s *seat) send(bytes string) {
	s.t.Helper()
	if _, err := io.WriteString(s.keyboard, bytes); err != nil {
		s.t.Fatal(err)
	}
}

// blur is what a terminal sends when it loses the focus. The workbench does
// nothing at it, and it comes behind all that was sent before.
const blur = "\x1b[O"

// patience is that of a loaded machine; it is not a measure.
const patience = time.Minute

// settle waits until all that was sent is done, nothing is under way any more, and
// the terminal shows the frame that the model draws: all of it and no more.
func (s *seat) settle() {
	s.t.Helper()
	s.asked++
	s.send(blur)
	tick := time.NewTicker(2 * time.Millisecond)
	defer tick.Stop()
	for deadline := time.After(patience); ; {
		frame, wrong, quiet := s.watch.quiet(s.asked)
		if wrong != "" {
			s.t.Fatal(wrong)
		}
		if quiet && s.drawn(frame) {
			return
		}
		select {
		case err := <-s.ended:
			s.ended <- err
			return
		case <-deadline:
			s.t.Fatalf("the screen never settled (all done: %v); it shows\n%s\nand the frame is\n%s", quiet, s.term.screen(), frame)
		case <-tick.C:
		}
	}
}

// gone tells whether the program has ended.
func (s *seat) gone() bool {
	select {
	case err := <-s.ended:
		s.ended <- err
		return true
	default:
		return false
	}
}

// ends waits for the program's end, and tells whether it came.
func (s *seat) ends() bool {
	select {
	case err := <-s.ended:
		s.ended <- err
		return true
	case <-time.After(patience):
		return false
	}
}

// drawn tells whether the terminal shows a frame: its characters, and which of them
// are bold, underlined, reversed. Colours are left to what asks for them, since a
// terminal need not have them.
func (s *seat) drawn(frame string) bool {
	if s.paper == nil || s.on != frame {
		s.paper, s.on = vt.NewEmulator(s.w, s.h), frame
		if _, err := s.paper.WriteString(strings.ReplaceAll(frame, "\n", "\r\n")); err != nil {
			s.t.Fatal(err)
		}
	}
	s.term.mu.Lock()
	defer s.term.mu.Unlock()
	for y := range s.h {
		for x := range s.w {
			if ink(s.paper.CellAt(x, y)) != ink(s.term.e.CellAt(x, y)) {
				return false
			}
		}
	}
	return true
}

// ink is what can be seen of a cell on a terminal without colours: a blank is
// neither bold nor faint.
func ink(c *uv.Cell) (out struct {
	text   string
	attrs  uint8
	single bool
}) {
	out.text = " "
	if c == nil {
		return out
	}
	out.text, out.attrs, out.single = cmp.Or(c.Content, " "), c.Style.Attrs, c.Style.Underline != 0
	if out.text == " " {
		out.attrs &= uv.AttrReverse
	}
	return out
}

// left waits until the program has ended.
func (s *seat) left() {
	s.t.Helper()
	select {
	case err := <-s.ended:
		s.ended <- err
		if err != nil {
			s.t.Fatalf("left with %v", err)
		}
	case <-time.After(patience):
		s.t.Fatalf("it is not left:\n%s", s.term.screen())
	}
}
