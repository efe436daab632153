package session

import (
	"io"
	"os"
)

// Input gives an input, behind whose end nobody sits any more, as Bubble Tea reads it: by itself
// it would wait for ever.
func Input(in io.Reader, ended func()) io.Reader {
	if f, ok := in.(*os.File); ok {
		return terminal{f, ending{f, ended}}
	}
	return ending{in, ended}
}

// ending is an input whose end is told.
type ending struct {
	io.Reader
	ended func()
}

func (e ending) Read(p []byte) (int, error) {
	n, err := e.Reader.Read(p)
	if n == 0 && err != nil {
		e.ended()
	}
	return n, err
}

// terminal is a file that is read through another reader.
type terminal struct {
	*os.File
	read io.Reader
}

func (t terminal) Read(p []byte) (int, error) { return t.read.Read(p) }
