package host

import (
	"fmt"
	"io"
	"runtime"
	"testing"
)

// class is a presenter and a watcher who must notice nothing.
type class struct {
	*running
	p, w *guest
	step int
}

func newClass(t *testing.T) *class {
	k := key(t)
	r := start(t, Settings{Presenters: keys(t, k), ByPlace: classByPlace}, nil)
	c := &class{running: r, p: r.visit(k, 100, 30), w: r.visit(nil, 80, 24)}
	c.p.sees("live: 1 watches")
	c.p.keys(down + right)
	return c
}

// classByPlace is how many may come from the one address that there is here.
const classByPlace = 30

// works types a value and waits until the watcher sees it.
func (c *class) works() {
	c.t.Helper()
	c.step++
	c.p.keys(fmt.Sprintf("\x15-3, %d", 50+c.step%40)) // the cell anew
	c.w.sees(fmt.Sprintf("-3, %d", 50+c.step%40))
	c.p.keys(escape)
	c.w.sees("-3, 4")
	c.p.sees("enter: edit") // the escape is read as one
}

// heap is what is in use once all that can go is gone.
func heap() uint64 {
	var m runtime.MemStats
	runtime.GC()
	runtime.GC()
	runtime.ReadMemStats(&m)
	return m.HeapAlloc
}

// within tells that a thing takes no more memory than that.
func (c *class) within(bytes uint64, f func()) {
	c.t.Helper()
	before := heap()
	f()
	waitFor(c.t, "the memory is given back", func() bool { return heap() < before+bytes })
}

// pour writes until the other side has had enough or all is written.
func pour(w io.Writer, all []byte) {
	for len(all) > 0 {
		n, err := w.Write(all[:min(len(all), 32<<10)])
		if err != nil {
			return
		}
		all = all[n:]
	}
}
