package host

import (
	"bytes"
	"fmt"
	"math/rand/v2"
	"testing"
)

// malformed is input that no keyboard sends, 10 million bytes of each kind.
func malformed() map[string][]byte {
	const size = 10_000_000
	seed := rand.New(rand.NewPCG(6, 2))
	noise := make([]byte, size)
	for i := range noise {
		noise[i] = byte(seed.UintN(256))
	}
	pieces := []string{"\x1b[", "\x1b]", "\x1bP", "\x1b_", "\x1b[<", "\x1b[M", ";", ":", "9999999999999", "\x1b[200~", "\x1b[27;5;", "u", "~", "\x9b", "\x1bO", "\xf0\x9f", "\x1b[0;0;0;1;0;1_", "\x1b[I", "\x1b[?1;2c", "R", "m"}
	var sequences bytes.Buffer
	for sequences.Len() < size {
		sequences.WriteString(pieces[seed.IntN(len(pieces))])
	}
	return map[string][]byte{
		"random":    noise,
		"sequences": sequences.Bytes(),
		"paste":     append([]byte("\x1b[200~"), bytes.Repeat([]byte("x"), size)...),
		"string":    append([]byte("\x1b]0;"), bytes.Repeat([]byte("x"), size)...),
		"escapes":   bytes.Repeat([]byte("\x1b"), size),
	}
}

func TestMalformedInputEndsOneVisit(t *testing.T) {
	for name, input := range malformed() {
		t.Run(name, func(t *testing.T) {
			c := newClass(t)
			c.within(6<<20, func() {
				g := c.visit(nil, 80, 24)
				g.sees("following")
				go pour(g.in, input)
				c.works()
				c.works()
				if name == "random" || name == "paste" {
					g.leaves() // the others are read, at the pace of a very fast hand
				}
				_ = g.client.Close()
				c.p.sees("live: 1 watches")
			})
		})
	}
}

// At a workbench every key counts: one who pours is slowed, or ended, and keeps
// what was there; the next is not concerned.
func TestMalformedInputAtAPrivateWorkbench(t *testing.T) {
	folder, _ := shelf(t)
	r := start(t, Settings{Private: folder}, nil)
	calm := r.visit(key(t), 100, 30)
	calm.sees("Your sheets")
	calm.keys("\r")
	calm.sees("37.5 T")
	calm.keys(down + right)
	before := heap()
	n := 0
	for name, input := range malformed() {
		g := r.visit(key(t), 100, 30)
		g.sees("Your sheets")
		g.keys("\r")
		g.sees("37.5 T")
		go pour(g.in, input)
		for range 3 {
			n++
			calm.keys(fmt.Sprintf("\x15-3, %d", 50+n))
			calm.sees(fmt.Sprintf("-3, %d", 50+n))
		}
		if name == "paste" {
			g.leaves()
		}
		_ = g.client.Close()
	}
	waitFor(t, "all have left", func() bool {
		l := r.service.(*library)
		l.mu.Lock()
		defer l.mu.Unlock()
		return len(l.rooms) == 1
	})
	waitFor(t, "the memory is given back", func() bool { return heap() < before+8<<20 })
}
