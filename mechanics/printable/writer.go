package printable

import (
	"bytes"
	"io"
	"unicode/utf8"
)

// Writer is what a text passes on its way to a terminal. The ends of lines, LF or CR
// LF, and tabs pass, and a byte order mark where it comes first; a Stand takes the place
// of every other character that acts.
// What is cut between two calls of Write is put together again: the start of a
// character, or a CR, is held back until more comes or Close is called. It belongs
// to one goroutine.
type Writer struct {
	to    io.Writer
	held  []byte // the start of a character, or a CR
	begun bool   // something was written
}

// NewWriter makes a Writer on another. It has to be closed, which leaves the other open.
func NewWriter(to io.Writer) *Writer { return &Writer{to: to} }

// Write writes a piece of a text. The error is the other writer's.
func (w *Writer) Write(p []byte) (int, error) {
	if err := w.write(p, false); err != nil {
		return 0, err
	}
	return len(p), nil
}

// Close writes what is held back.
func (w *Writer) Close() error { return w.write(nil, true) }

func (w *Writer) write(p []byte, last bool) error {
	in := append(w.held, p...)
	w.held = nil
	var out bytes.Buffer
	out.Grow(len(in))
	for len(in) > 0 {
		if !last && (!utf8.FullRune(in) || in[0] == '\r' && len(in) == 1) {
			w.held = bytes.Clone(in)
			break
		}
		r, n := utf8.DecodeRune(in)
		switch {
		case r == '\n' || r == '\t' || r == '\r' && len(in) > 1 && in[1] == '\n' || r == byteOrderMark && !w.begun || !Acts(r):
			out.Write(in[:n])
		default:
			out.WriteRune(Stand)
		}
		in, w.begun = in[n:], true
	}
	if out.Len() == 0 {
		return nil
	}
	_, err := w.to.Write(out.Bytes())
	return err
}
