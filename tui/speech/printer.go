package speech

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

// To writes what is told to a terminal until it is done. Mute is that terminal for a program that
// asks for its size, but is to draw nothing.
func To(ctx context.Context, out io.Writer) (tell func(text string), mute io.Writer, done func()) {
	p := newPrinter(ctx, out)
	mute = io.Discard
	if f, ok := out.(*os.File); ok {
		mute = muteFile{f}
	}
	return p.write, mute, p.close
}

// muteFile is a terminal on which nothing is drawn.
type muteFile struct{ *os.File }

func (muteFile) Write(p []byte) (int, error) { return len(p), nil }

// WriteString keeps io.WriteString from the file's own.
func (muteFile) WriteString(s string) (int, error) { return len(s), nil }
