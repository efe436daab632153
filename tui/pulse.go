package tui

import (
	"reflect"
	"sync"
	"time"
	"unsafe"

	tea "charm.land/bubbletea/v2"
)

// How often a frame may be drawn, and how often Bubble Tea looks for one where
// nothing has come for a while: what an idle workbench costs.
const (
	frames = 60
	rest   = time.Second
	awake  = time.Second // after the last message; more than any step takes
)

// pulse slows Bubble Tea's ticker down while nothing comes. The library wakes for
// every frame that it might draw, some 500 ms of a processor in a minute, and has no
// switch for it.
type pulse struct {
	mu     sync.Mutex
	ticker *time.Ticker
	timer  *time.Timer
	last   time.Time // a message came
	slow   bool
	over   bool
}

// tickerOf finds the ticker of a program that runs, nil where there is none. The
// field is the library's own: where another version has none of this name, it wakes
// as often as it likes.
func tickerOf(p *tea.Program) *time.Ticker {
	f := reflect.ValueOf(p).Elem().FieldByName("ticker")
	if !f.IsValid() || f.Type() != reflect.TypeFor[*time.Ticker]() {
		return nil
	}
	return *(**time.Ticker)(unsafe.Pointer(f.UnsafeAddr()))
}

// beat is called with each message, in the program's own loop.
func (u *pulse) beat(p *tea.Program) {
	u.mu.Lock()
	defer u.mu.Unlock()
	u.last = time.Now()
	if u.ticker == nil {
		if u.ticker = tickerOf(p); u.ticker == nil {
			return
		}
		u.timer = time.AfterFunc(awake, u.tire)
		return
	}
	if u.slow {
		u.slow = false
		u.ticker.Reset(time.Second / frames)
		u.timer.Reset(awake)
	}
}

// tire slows the ticker down, unless something came meanwhile.
func (u *pulse) tire() {
	u.mu.Lock()
	defer u.mu.Unlock()
	if u.over {
		return
	}
	if left := awake - time.Since(u.last); left > 0 {
		u.timer.Reset(left)
		return
	}
	u.slow = true
	u.ticker.Reset(rest)
}

// end leaves the ticker alone, which the program has stopped.
func (u *pulse) end() {
	u.mu.Lock()
	defer u.mu.Unlock()
	u.over = true
	if u.timer != nil {
		u.timer.Stop()
	}
}
