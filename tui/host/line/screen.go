// Package line is a visitor's end of the line: the keys that come from a terminal, and the screens
// that go to it, each drawn once for all who see the same.
package line

import (
	"log/slog"
	"sync"
	"time"

	"trivet/tui/grid"
	"trivet/tui/host/pace"
)

// Tempo is how soon a screen follows a change, how often at most, and how many
// times the time that a frame took it rests. What a keystroke changes comes in
// two steps, the cell and a moment later the result: a class gets both in one
// frame. One who looks around has no share in the class's time.
type Tempo struct {
	after, every time.Duration
	rests        time.Duration
}

var (
	AtOnce    = Tempo{0, 15 * time.Millisecond, 1}
	WithClass = Tempo{20 * time.Millisecond, 100 * time.Millisecond, 1}
	Alone     = Tempo{10 * time.Millisecond, 60 * time.Millisecond, 8}
)

// Screen is one drawing that any number of terminals show: one frame and one
// difference for all of them.
type Screen struct {
	log    *slog.Logger
	frame  func() grid.Frame // pure but for what it reads atomically
	pace   Tempo
	paints pace.Turns // when it follows a change
	first  pace.Turns // when it is drawn whole
	dirty  chan struct{}
	stop   chan struct{}

	drawing  sync.Mutex // held while drawing, which takes its time
	renderer *renderer
	shown    grid.Frame
	whole    []byte // of what is shown, once somebody needed it
	frames   int    // drawn, for measuring

	mu      sync.Mutex // of the members alone; never held while drawing
	members map[*Sender]bool
}

// NewScreen makes a screen of w by h that shows what frame draws, once it has begun.
func NewScreen(log *slog.Logger, w, h int, t Terminal, p Tempo, frame func() grid.Frame) *Screen {
	return &Screen{
		log: log, frame: frame, pace: p, renderer: newRenderer(w, h, t), members: map[*Sender]bool{},
		dirty: make(chan struct{}, 1), stop: make(chan struct{}),
	}
}

// Begin lets the screen follow what changes.
func (s *Screen) Begin(paints, first pace.Turns) *Screen {
	s.paints, s.first = paints, first
	go s.run()
	return s
}

// Touch says that something may look otherwise.
func (s *Screen) Touch() { pace.Nudge(s.dirty) }

func (s *Screen) run() {
	var last time.Time
	var took time.Duration
	for {
		select {
		case <-s.stop:
			return
		case <-s.dirty:
		}
		if pace.Sleep(max(s.pace.after, max(s.pace.every, s.pace.rests*took)-time.Since(last)), s.stop) != nil {
			return
		}
		select { // what changed while waiting is in this frame
		case <-s.dirty:
		default:
		}
		took = s.paints.Do(s.redraw)
		last = time.Now()
	}
}

// redraw draws what has become and hands the difference round.
func (s *Screen) redraw() {
	frame, ok := s.compose()
	if !ok {
		return
	}
	s.drawing.Lock()
	defer s.drawing.Unlock()
	s.take(frame)
}

// take shows a frame; the caller is drawing.
func (s *Screen) take(frame grid.Frame) {
	if frame.Same(s.shown) {
		return
	}
	old := s.shown
	s.shown, s.whole = frame, nil
	s.frames++
	s.mu.Lock()
	watched := len(s.members) > 0
	s.mu.Unlock()
	if !watched {
		return // whoever comes gets it whole
	}
	var b []byte
	if old.Grid != nil {
		if b = s.renderer.next(old, frame); len(b) == 0 {
			return
		}
	}
	s.mu.Lock()
	defer s.mu.Unlock()
	for f := range s.members {
		f.push(s, b) // the first is whole
	}
}

// compose draws. A fault of ours in there leaves the frame as it is and ends
// nobody.
func (s *Screen) compose() (frame grid.Frame, ok bool) {
	defer func() {
		if r := recover(); r != nil {
			s.log.Error("a frame could not be drawn", "fault", r)
			ok = false
		}
	}()
	return s.frame(), true
}

func (s *Screen) join(f *Sender) {
	s.mu.Lock()
	defer s.mu.Unlock()
	f.mu.Lock()
	defer f.mu.Unlock()
	if f.screen == s {
		s.members[f] = true
	}
}

func (s *Screen) leave(f *Sender) {
	s.mu.Lock()
	defer s.mu.Unlock()
	delete(s.members, f)
}

// wholeFor gives a member the frame as it stands; the differences that follow
// start from it.
func (s *Screen) wholeFor(f *Sender) []byte {
	if !s.isReady() {
		s.first.Do(s.ready)
	}
	s.drawing.Lock()
	defer s.drawing.Unlock()
	if !s.makeWhole() {
		return nil // with the next that can be drawn
	}
	s.mu.Lock()
	defer s.mu.Unlock()
	f.mu.Lock()
	defer f.mu.Unlock()
	if f.screen != s {
		return nil // gone elsewhere meanwhile, where it is woken again
	}
	s.members[f] = true // before the next frame, whatever show is at
	f.queue, f.whole = nil, false
	return s.whole
}

func (s *Screen) isReady() bool {
	s.drawing.Lock()
	defer s.drawing.Unlock()
	return s.whole != nil
}

// ready has a whole frame there; who waits for a turn draws nothing.
func (s *Screen) ready() {
	s.drawing.Lock()
	defer s.drawing.Unlock()
	s.makeWhole()
}

// makeWhole draws the frame whole, unless it is there or cannot be drawn; the
// caller is drawing.
func (s *Screen) makeWhole() bool {
	if s.shown.Grid == nil {
		frame, ok := s.compose()
		if !ok {
			return false
		}
		s.take(frame)
	}
	if s.whole == nil {
		s.whole = s.renderer.whole(s.shown)
	}
	return true
}

// Close ends the drawing.
func (s *Screen) Close() { close(s.stop) }
