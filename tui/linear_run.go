package tui

import (
	"context"
	"io"
	"os"
	"time"

	"github.com/charmbracelet/x/ansi"
)

// printer writes to a terminal what is said, one after the other, beside the
// session: a slow line keeps nobody from typing on.
type printer struct {
	ctx   context.Context // of the session
	texts chan string
	done  chan struct{}
}

// saidAhead is how much is said before the session waits for the terminal.
const saidAhead = 256

func newPrinter(ctx context.Context, out io.Writer) *printer {
	p := &printer{ctx: ctx, texts: make(chan string, saidAhead), done: make(chan struct{})}
	go func() {
		defer close(p.done)
		for text := range p.texts {
			// An error is that of a terminal that is gone; its input ends the session.
			_, _ = io.WriteString(out, text)
		}
	}()
	p.write(ansi.SetModeBracketedPaste)
	return p
}

// write waits for a terminal that takes no more, but not beyond the session.
func (p *printer) write(text string) {
	select {
	case p.texts <- text:
	case <-p.ctx.Done():
	}
}

// lastWait is how long an end waits for a terminal that takes no more.
const lastWait = 2 * time.Second

// close waits until all is written, and leaves the terminal at the start of a line.
func (p *printer) close() {
	select {
	case p.texts <- ansi.ResetModeBracketedPaste + "\r" + ansi.EraseLineRight:
	default: // it has taken nothing for long
	}
	close(p.texts)
	select {
	case <-p.done:
	case <-time.After(lastWait):
	}
}

// inLines has the session write lines to its terminal, where it is to be so. The
// program that runs it has a terminal to ask for its size, but draws nothing.
func (opt *Options) inLines(ctx context.Context) (done func()) {
	if !opt.Linear && opt.Settings.Screen != "linear" {
		return func() {}
	}
	opt.Linear = true
	out := opt.Out
	if out == nil {
		out = os.Stdout
	}
	p := newPrinter(ctx, out)
	opt.tell = p.write
	if f, ok := out.(*os.File); ok {
		opt.Out = muteFile{f}
	} else {
		opt.Out = io.Discard
	}
	return p.close
}

// muteFile is a terminal on which nothing is drawn.
type muteFile struct{ *os.File }

func (muteFile) Write(p []byte) (int, error) { return len(p), nil }

// WriteString keeps io.WriteString from the file's own.
func (muteFile) WriteString(s string) (int, error) { return len(s), nil }
