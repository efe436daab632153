package host

import (
	"log/slog"
	"sync"
	"time"
)

// pace is how soon a screen follows a change, how often at most, and how many
// times the time that a frame took it rests. What a keystroke changes comes in
// two steps, the cell and a moment later the result: a class gets both in one
// frame. One who looks around has no share in the class's time.
type pace struct {
	after, every time.Duration
	rests        time.Duration
}

var (
	atOnce    = pace{0, 15 * time.Millisecond, 1}
	withClass = pace{30 * time.Millisecond, 100 * time.Millisecond, 1}
	alone     = pace{10 * time.Millisecond, 60 * time.Millisecond, 8}
)

// screen is one drawing that any number of terminals show: one frame and one
// difference for all of them.
type screen struct {
	log   *slog.Logger
	frame func() string // pure but for what it reads atomically
	pace  pace
	easel *sync.Mutex // nil for one that waits for no other
	dirty chan struct{}
	stop  chan struct{}

	brush   sync.Mutex // held while drawing, which takes its time
	painter *painter
	shown   string
	whole   []byte // of what is shown, once somebody needed it
	painted int    // frames, for measuring

	mu      sync.Mutex // of the members alone; never held while drawing
	members map[*feed]bool
}

func newScreen(log *slog.Logger, w, h int, t terminal, p pace, frame func() string) *screen {
	s := &screen{
		log: log, frame: frame, pace: p, painter: newPainter(w, h, t), members: map[*feed]bool{},
		dirty: make(chan struct{}, 1), stop: make(chan struct{}),
	}
	return s
}

// begin lets the screen follow what changes, in turn with those of one easel.
func (s *screen) begin(easel *sync.Mutex) *screen {
	s.easel = easel
	go s.run()
	return s
}

func (s *screen) touch() { nudge(s.dirty) }

func (s *screen) run() {
	var last time.Time
	var took time.Duration
	timer := time.NewTimer(0)
	defer timer.Stop()
	for {
		select {
		case <-s.stop:
			return
		case <-s.dirty:
		}
		timer.Reset(max(s.pace.after, max(s.pace.every, s.pace.rests*took)-time.Since(last)))
		select {
		case <-s.stop:
			return
		case <-timer.C:
		}
		select { // what changed while waiting is in this frame
		case <-s.dirty:
		default:
		}
		took = s.turn()
		last = time.Now()
	}
}

// turn paints, and tells how long it took; where many are drawn beside a class
// they take turns.
func (s *screen) turn() time.Duration {
	if s.easel != nil {
		s.easel.Lock()
		defer s.easel.Unlock()
	}
	from := time.Now()
	s.paint()
	return time.Since(from)
}

// paint draws what has become and hands the difference round.
func (s *screen) paint() {
	frame, ok := s.compose()
	if !ok {
		return
	}
	s.brush.Lock()
	defer s.brush.Unlock()
	s.take(frame)
}

// take shows a frame; the caller holds the brush.
func (s *screen) take(frame string) {
	if frame == s.shown {
		return
	}
	old := s.shown
	s.shown, s.whole = frame, nil
	s.painted++
	s.mu.Lock()
	watched := len(s.members) > 0
	s.mu.Unlock()
	if old == "" {
		s.mu.Lock()
		defer s.mu.Unlock()
		for f := range s.members {
			nudge(f.wake) // for the first, whole
		}
		return
	}
	if !watched {
		return // whoever comes gets it whole
	}
	b := s.painter.next(old, frame)
	if len(b) == 0 {
		return
	}
	s.mu.Lock()
	defer s.mu.Unlock()
	for f := range s.members {
		f.push(s, b)
	}
}

// compose draws. A fault of ours in there leaves the frame as it is and ends
// nobody.
func (s *screen) compose() (frame string, ok bool) {
	defer func() {
		if r := recover(); r != nil {
			s.log.Error("a frame could not be drawn", "fault", r)
			ok = false
		}
	}()
	return s.frame(), true
}

func (s *screen) join(f *feed) {
	s.mu.Lock()
	defer s.mu.Unlock()
	f.mu.Lock()
	defer f.mu.Unlock()
	if f.screen == s {
		s.members[f] = true
	}
}

func (s *screen) leave(f *feed) {
	s.mu.Lock()
	defer s.mu.Unlock()
	delete(s.members, f)
}

// wholeFor gives a member the frame as it stands; the differences that follow
// start from it.
func (s *screen) wholeFor(f *feed) []byte {
	s.brush.Lock()
	defer s.brush.Unlock()
	if s.shown == "" {
		frame, ok := s.compose()
		if !ok {
			return nil // with the next that can be drawn
		}
		s.take(frame)
	}
	if s.whole == nil {
		s.whole = s.painter.whole(s.shown)
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

func (s *screen) close() { close(s.stop) }
