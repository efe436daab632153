package tui

import (
	"cmp"
	"encoding/base64"
	"fmt"
	"reflect"
	"strings"
	"sync"

	tea "charm.land/bubbletea/v2"
	"github.com/charmbracelet/x/ansi"

	"trivet/tui/keys"
	"trivet/tui/results"
)

// watched is the model in the program, with somebody who counts.
type watched struct {
	Model
	log *watcher
}

// watcher knows what the program has to do, and what its model draws.
type watcher struct {
	mu     sync.Mutex
	frame  string
	marks  int
	flying int // commands whose message is not taken yet
	ground bool
	mode   keys.Mode

	verdict string // the first words of it
	wrong   string // of a frame that does not fit its screen
}

func (w watched) Init() tea.Cmd { return w.log.counted(w.Model.Init()) }

func (w watched) Update(msg tea.Msg) (tea.Model, tea.Cmd) {
	next, cmd := w.Model.Update(msg)
	w.Model = next.(Model)
	cmd = w.log.counted(cmd)
	w.log.mu.Lock()
	defer w.log.mu.Unlock()
	w.log.frame, w.log.mode = w.frame(), w.Model.mode()
	w.log.verdict, _ = results.Headline(&w.Model.live)
	w.log.wrong = cmp.Or(w.log.wrong, misfit(w.log.frame, w.w, w.h))
	switch msg.(type) {
	case tea.BlurMsg:
		w.log.marks++
	case tea.BackgroundColorMsg:
		w.log.ground = true
	}
	if ours(msg) {
		w.log.flying--
	}
	return w, cmd
}

// misfit tells what of a frame is wider or higher than the screen, or leaves some of
// it as it was.
func misfit(frame string, w, h int) string {
	lines := strings.Split(frame, "\n")
	if len(lines) != h {
		return fmt.Sprintf("%d lines on a screen of %d by %d", len(lines), w, h)
	}
	for i, l := range lines {
		if got := ansi.StringWidth(l); got != w {
			return fmt.Sprintf("line %d of %d by %d has %d columns: %q", i+1, w, h, got, l)
		}
	}
	return ""
}

// ours tells the messages of the workbench's own commands, of whichever of its rooms.
func ours(msg tea.Msg) bool {
	return msg != nil && strings.HasPrefix(reflect.TypeOf(msg).PkgPath(), "trivet/")
}

// counted counts a command as under way until its message has been taken.
func (w *watcher) counted(cmd tea.Cmd) tea.Cmd {
	if cmd == nil {
		return nil
	}
	w.mu.Lock()
	w.flying++
	w.mu.Unlock()
	return func() tea.Msg {
		msg := cmd()
		if batch, ok := msg.(tea.BatchMsg); ok {
			for i := range batch {
				batch[i] = w.counted(batch[i])
			}
		}
		if !ours(msg) {
			w.mu.Lock()
			w.flying--
			w.mu.Unlock()
		}
		return msg
	}
}

// quiet tells whether nothing is left to be done, what is to be seen then, and what
// of any frame was wrong.
func (w *watcher) quiet(marks int) (frame, wrong string, quiet bool) {
	w.mu.Lock()
	defer w.mu.Unlock()
	return w.frame, w.wrong, w.marks >= marks && w.flying == 0 && w.ground
}

// now is what has the keys, and how the result is called.
func (w *watcher) now() (mode keys.Mode, verdict string) {
	w.mu.Lock()
	defer w.mu.Unlock()
	return w.mode, w.verdict
}

// clipboard takes what a program puts there by OSC 52.
func (t *terminal) clipboard(data []byte) bool {
	if parts := strings.SplitN(string(data), ";", 3); len(parts) == 3 {
		if text, err := base64.StdEncoding.DecodeString(parts[2]); err == nil {
			t.clip = string(text)
		}
	}
	return true
}

func (t *terminal) copied() string {
	t.mu.Lock()
	defer t.mu.Unlock()
	return t.clip
}
