package line

import (
	"io"
	"slices"
	"sync"
	"sync/atomic"
	"time"

	"trivet/tui/host/pace"
)

// queued is how many frames wait for a slow terminal. One more drops them all,
// and it gets a whole frame once it takes bytes again.
const queued = 8

// StalledLimit is how long a write may take that does not get on.
const StalledLimit = 10 * time.Second

// Sender writes to one terminal, in a goroutine of its own: nobody else waits for
// a terminal.
type Sender struct {
	out  io.Writer
	wake chan struct{}
	Done chan struct{}

	closed atomic.Bool
	drops  atomic.Int64 // how often frames were dropped
	since  atomic.Int64 // when the write that is under way began, 0 for none

	mu     sync.Mutex
	screen *Screen
	queue  [][]byte
	whole  bool // the next frame has to be whole
}

// NewSender starts one.
func NewSender(out io.Writer) *Sender {
	f := &Sender{out: out, wake: make(chan struct{}, 1), Done: make(chan struct{})}
	go f.run()
	return f
}

// push adds a frame of a screen, or drops those that wait.
func (f *Sender) push(s *Screen, frame []byte) {
	f.mu.Lock()
	switch {
	case f.screen != s || f.whole:
	case len(f.queue) >= queued:
		f.queue, f.whole = nil, true
		f.drops.Add(1)
	default:
		f.queue = append(f.queue, frame)
	}
	f.mu.Unlock()
	pace.Nudge(f.wake)
}

// Show takes the sender to another screen; nil to none.
func (f *Sender) Show(s *Screen) {
	f.mu.Lock()
	old := f.screen
	f.screen, f.queue, f.whole = s, nil, s != nil
	f.mu.Unlock()
	if old != nil && old != s {
		old.leave(f)
	}
	if s != nil {
		s.join(f)
	}
	pace.Nudge(f.wake)
}

// next takes what there is to write.
func (f *Sender) next() []byte {
	f.mu.Lock()
	s, whole := f.screen, f.whole
	if !whole {
		var b []byte
		if len(f.queue) == 1 {
			b = f.queue[0]
		} else {
			b = slices.Concat(f.queue...)
		}
		f.queue = nil
		f.mu.Unlock()
		return b
	}
	f.mu.Unlock()
	return s.wholeFor(f)
}

func (f *Sender) run() {
	defer close(f.Done)
	for range f.wake {
		for b := f.next(); len(b) > 0; b = f.next() {
			f.since.Store(time.Now().UnixNano())
			_, err := f.out.Write(b)
			f.since.Store(0)
			if err != nil {
				return
			}
		}
		if f.closed.Load() {
			return
		}
	}
}

// Stalled tells whether a write does not get on.
func (f *Sender) Stalled(now time.Time) bool {
	since := f.since.Load()
	return since != 0 && now.Sub(time.Unix(0, since)) > StalledLimit
}

// Close ends the sender; a write under way ends with its connection.
func (f *Sender) Close() {
	f.closed.Store(true)
	f.Show(nil)
}

// Dropped is how often frames were dropped.
func (f *Sender) Dropped() int64 { return f.drops.Load() }
