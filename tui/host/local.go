package host

import (
	"fmt"
	"os"
	"time"

	"golang.org/x/term"

	"trivet/tui/host/door"
	"trivet/tui/host/line"
	"trivet/tui/host/pace"
)

// sizeEvery is how soon the host's own terminal is found to have another size;
// asking works on every system, a signal does not.
const sizeEvery = 250 * time.Millisecond

// present makes the host's own terminal the presenter until the visit ends.
func (h *Host) present(in, out *os.File, env []string) (err error) {
	was, err := term.MakeRaw(int(in.Fd()))
	if err != nil {
		return fmt.Errorf("the terminal cannot be used: %w", err)
	}
	defer term.Restore(int(in.Fd()), was)
	w, hh, err := term.GetSize(int(out.Fd()))
	if err != nil {
		return fmt.Errorf("the terminal's size is not known: %w", err)
	}
	who := door.Person{Role: door.Presenter, Local: true}
	if in, _ := h.arrive(who); !in {
		return nil
	}
	defer h.depart()
	w, hh = line.Clamped(w, hh)
	v := newVisitor(who, 0, h.log, line.TerminalOf(env), w, hh, out, func() {})
	go func() {
		_ = line.Listen(v.ctx, in, v.term.Kind, pace.Worker(), v.event)
		v.end("the terminal is gone")
	}()
	go func() {
		tick := time.NewTicker(sizeEvery)
		defer tick.Stop()
		for {
			select {
			case <-v.ctx.Done():
				return
			case <-tick.C:
			}
			if w, hh, err := term.GetSize(int(out.Fd())); err == nil && w > 0 && hh > 0 {
				v.resized(line.Clamped(w, hh))
			}
		}
	}()
	defer func() {
		if r := recover(); r != nil { // the watchers, and the sheet, go on
			h.log.Error("the visit here failed", "fault", r)
			err = fmt.Errorf("a fault of ours has ended the visit at this terminal: %v", r)
		}
	}()
	h.entertain(v, out)
	return nil
}

// terminals tells whether a stream is the host's own terminal.
func terminals(in, out any) (*os.File, *os.File, bool) {
	i, okIn := in.(*os.File)
	o, okOut := out.(*os.File)
	ok := okIn && okOut && term.IsTerminal(int(i.Fd())) && term.IsTerminal(int(o.Fd()))
	return i, o, ok
}
