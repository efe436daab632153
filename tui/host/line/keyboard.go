package line

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"io"
	"sync/atomic"
	"time"

	tea "charm.land/bubbletea/v2"
	uv "github.com/charmbracelet/ultraviolet"
	"golang.org/x/time/rate"

	"trivet/tui/host/pace"
)

var (
	errTyped  = errors.New("more was typed than anybody types")
	errSilent = errors.New("what was typed did not form a key")
)

const (
	maxTyped  = 1 << 20 // bytes within typedSpan, more ends the visit
	typedSpan = time.Minute
)

// throttle is the keyboard's end of a session: a rate that a person does not
// reach, and an end to what only fills memory.
type throttle struct {
	in     io.Reader
	rate   *rate.Limiter
	over   context.Context
	within int // bytes since from
	from   time.Time
	silent atomic.Int64 // bytes since the last event
	limit  int          // of them
}

func (t *throttle) Read(p []byte) (int, error) {
	n, err := t.in.Read(p)
	if n <= 0 {
		return n, err
	}
	if t.over.Err() != nil {
		return 0, io.EOF
	}
	if now := time.Now(); now.Sub(t.from) > typedSpan {
		t.from, t.within = now, 0
	}
	t.within += n
	switch {
	case t.within > maxTyped:
		return 0, errTyped
	case t.silent.Add(int64(n)) > int64(t.limit):
		return 0, errSilent
	}
	if pace.Take(t.over, t.rate, n) != nil {
		err = io.EOF
	}
	return n, err
}

// Listen reads keys from a terminal until it ends, or the visit is over and in
// closed with it. The parser of terminal input has panicked on malformed input before:
// that ends this terminal alone.
func Listen(over context.Context, in io.Reader, kind string, by pace.Typing, event func(tea.Msg)) (err error) {
	defer func() {
		if r := recover(); r != nil {
			err = fmt.Errorf("the input could not be read: %v", r)
		}
	}()
	ctx, cancel := context.WithCancel(context.Background())
	defer cancel()
	t := &throttle{in: in, rate: by.Bytes, limit: by.Silent, over: over, from: time.Now()}
	// A reader has a large table of keys; one who only watches needs none.
	first := make([]byte, 64)
	n, err := t.Read(first)
	if err != nil {
		return ended(err)
	}
	events := make(chan uv.Event)
	done := make(chan struct{})
	go func() {
		defer close(done)
		for e := range events {
			t.silent.Store(0)
			var msg tea.Msg
			switch e := e.(type) {
			case uv.KeyPressEvent:
				msg = tea.KeyPressMsg(e)
			case uv.PasteEvent:
				msg = tea.PasteMsg(e)
			default:
				continue // sizes come from the session, the rest from nowhere
			}
			if by.Keys.Wait(over) != nil {
				cancel() // and whatever is still to be read is not
				continue
			}
			event(msg)
		}
	}()
	defer func() { close(events); <-done }()
	return uv.NewTerminalReader(io.MultiReader(bytes.NewReader(first[:n]), t), kind).StreamEvents(ctx, events)
}

// ended is no error where the input has come to its end.
func ended(err error) error {
	if errors.Is(err, io.EOF) {
		return nil
	}
	return err
}
