package host

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"io"
	"time"

	tea "charm.land/bubbletea/v2"
	uv "github.com/charmbracelet/ultraviolet"
)

var (
	errTyped  = errors.New("more was typed than anybody types")
	errSilent = errors.New("what was typed did not form a key")
)

// limiter is how fast one types: keys, and the bytes that they come in.
type limiter struct {
	keys, bytes *bucket
	silent      int // bytes that come to no key, as in a paste that never ends
}

// worker types cells and pastes tables; looker holds a key down at most.
func worker() limiter {
	return limiter{newBucket(keyBurst, keysPerSecond), newBucket(typedBurst, typedPerSecond), maxSilent}
}

func looker() limiter {
	return limiter{newBucket(lookBurst, looksPerSecond), newBucket(lookedBurst, lookedPerSecond), lookedBurst}
}

// throttle is the keyboard's end of a session: a rate that a person does not
// reach, and an end to what only fills memory.
type throttle struct {
	in     io.Reader
	rate   *bucket
	stop   <-chan struct{}
	within int // bytes since from
	from   time.Time
	silent int // bytes since the last event
	limit  int // of them
	events chan struct{}
}

func (t *throttle) Read(p []byte) (int, error) {
	n, err := t.in.Read(p)
	if n <= 0 {
		return n, err
	}
	select {
	case <-t.stop:
		return 0, io.EOF
	default:
	}
	select {
	case <-t.events:
		t.silent = 0
	default:
	}
	if now := time.Now(); now.Sub(t.from) > typedSpan {
		t.from, t.within = now, 0
	}
	t.within += n
	t.silent += n
	switch {
	case t.within > maxTyped:
		return 0, errTyped
	case t.silent > t.limit:
		return 0, errSilent
	}
	return n, rest(t.rate.take(n), t.stop, err)
}

// rest waits, but not beyond the end of the visit.
func rest(d time.Duration, stop <-chan struct{}, err error) error {
	if d <= 0 {
		return err
	}
	timer := time.NewTimer(d)
	defer timer.Stop()
	select {
	case <-timer.C:
		return err
	case <-stop:
		return io.EOF
	}
}

// listen reads keys from a terminal until it ends, or stop is closed and in
// with it. The parser of terminal input has panicked on malformed input before:
// that ends this terminal alone.
func listen(in io.Reader, kind string, stop <-chan struct{}, by limiter, event func(tea.Msg)) (err error) {
	defer func() {
		if r := recover(); r != nil {
			err = fmt.Errorf("the input could not be read: %v", r)
		}
	}()
	ctx, cancel := context.WithCancel(context.Background())
	defer cancel()
	t := &throttle{in: in, rate: by.bytes, limit: by.silent, stop: stop, from: time.Now(), events: make(chan struct{}, 1)}
	// A reader has a large table of keys; one who only watches needs none.
	first := make([]byte, 64)
	n, err := t.Read(first)
	if err != nil {
		return ended(err)
	}
	events := make(chan uv.Event)
	over := make(chan struct{})
	go func() {
		defer close(over)
		for e := range events {
			nudge(t.events)
			var msg tea.Msg
			switch e := e.(type) {
			case uv.KeyPressEvent:
				msg = tea.KeyPressMsg(e)
			case uv.PasteEvent:
				msg = tea.PasteMsg(e)
			default:
				continue // sizes come from the session, the rest from nowhere
			}
			if rest(by.keys.take(1), stop, nil) != nil {
				cancel() // and whatever is still to be read is not
				continue
			}
			event(msg)
		}
	}()
	defer func() { close(events); <-over }()
	return uv.NewTerminalReader(io.MultiReader(bytes.NewReader(first[:n]), t), kind).StreamEvents(ctx, events)
}

// ended is no error where the input has come to its end.
func ended(err error) error {
	if errors.Is(err, io.EOF) {
		return nil
	}
	return err
}
