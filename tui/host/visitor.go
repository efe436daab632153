package host

import (
	"context"
	"errors"
	"io"
	"log/slog"
	"sync"
	"sync/atomic"
	"time"

	tea "charm.land/bubbletea/v2"

	"trivet/tui/host/door"
	"trivet/tui/host/line"
)

// visitor is one terminal: a session that came in, or the host's own.
type visitor struct {
	who    door.Person
	id     int64
	log    *slog.Logger
	term   line.Terminal
	sender *line.Sender

	events chan tea.Msg
	ctx    context.Context // until the visit ends, and why
	finish context.CancelCauseFunc
	typed  atomic.Int64 // when a key came last
	kill   func()       // closes what is below a session that does not take bytes

	mu   sync.Mutex
	w, h int
	more string // of why it ended
}

func newVisitor(who door.Person, id int64, log *slog.Logger, t line.Terminal, w, h int, out io.Writer, kill func()) *visitor {
	ctx, finish := context.WithCancelCause(context.Background())
	v := &visitor{
		who: who, id: id, log: log, term: t, w: w, h: h,
		sender: line.NewSender(out), events: make(chan tea.Msg), ctx: ctx, finish: finish, kill: kill,
	}
	v.types()
	return v
}

// end ends the visit; the first reason stands.
func (v *visitor) end(why string) { v.finish(errors.New(why)) }

// also adds to the reason what is known only once the visit is over.
func (v *visitor) also(more string) {
	v.mu.Lock()
	defer v.mu.Unlock()
	v.more += more
}

func (v *visitor) reason() string {
	v.mu.Lock()
	defer v.mu.Unlock()
	return context.Cause(v.ctx).Error() + v.more
}

func (v *visitor) ended() bool { return v.ctx.Err() != nil }

func (v *visitor) size() (w, h int) {
	v.mu.Lock()
	defer v.mu.Unlock()
	return v.w, v.h
}

// resized takes a new size; the place hears of it as of a key.
func (v *visitor) resized(w, h int) {
	v.mu.Lock()
	same := v.w == w && v.h == h
	v.w, v.h = w, h
	v.mu.Unlock()
	if !same {
		v.event(tea.WindowSizeMsg{Width: w, Height: h})
	}
}

func (v *visitor) event(msg tea.Msg) {
	select {
	case v.events <- msg:
	case <-v.ctx.Done():
	}
}

// idle tells how long no key came.
func (v *visitor) idle(now time.Time) time.Duration {
	return now.Sub(time.Unix(0, v.typed.Load()))
}

func (v *visitor) types() { v.typed.Store(time.Now().UnixNano()) }
