package tui

import (
	"fmt"
	"slices"
	"strings"
	"testing"
	"time"

	tea "charm.land/bubbletea/v2"

	"trivet/mechanics/sheet"
)

// BenchmarkKeystroke is a character typed into a cell, through the journal, the
// solved result and the rebuilt panes to the finished frame at 120 by 36, with
// the frame that shows before the result is there: at most 1 ms for three
// equations, 16 ms for a truss of 300 unknowns and for sheets of 500 rows.
func BenchmarkKeystroke(b *testing.B) {
	for _, c := range []struct {
		name, text string
		rows       int // down to the point whose place is typed
		cell       string
	}{
		{"crane", crane, 1, "0, 1, 3"},
		{"beam", beam, 1, "2, 0"},
		{"truss of 300 unknowns", longTruss(150), 40, "40, 0"},
		{"500 points", rows(500), 250, "1, 2, 3"},
		{"500 rows of a truss", longTruss(165), 40, "40, 0"},
	} {
		b.Run(c.name, func(b *testing.B) {
			keystrokes(b, c.text, c.rows, c.cell)
		})
	}
}

// BenchmarkMove goes through the rows of a large sheet.
func BenchmarkMove(b *testing.B) {
	for name, text := range map[string]string{"500 points": rows(500), "500 rows of a truss": longTruss(165)} {
		b.Run(name, func(b *testing.B) {
			r := bench(b, text)
			n := 0
			r.timed(b, func() string {
				n++
				return [...]string{"down", "down", "down", "up", "right", "pgdown", "left", "end", "home"}[n%9]
			})
		})
	}
}

// BenchmarkOpen is a sheet from its text to the frame with the result.
func BenchmarkOpen(b *testing.B) {
	for name, text := range map[string]string{"crane": crane, "500 points": rows(500), "500 rows of a truss": longTruss(165)} {
		b.Run(name, func(b *testing.B) {
			for b.Loop() {
				newRig(b, text, 120, 36).m.View()
			}
		})
	}
}

func keystrokes(b *testing.B, text string, rows int, cell string, before ...string) {
	r := bench(b, text)
	r.keys(before...)
	r.keys("alt+p")
	for range rows {
		r.keys("down")
	}
	r.keys("right")
	r.text(cell)
	n := 0
	r.timed(b, func() string { n++; return [...]string{"5", "backspace"}[n%2] })
}

func bench(b *testing.B, text string) *rig {
	s, err := sheet.Parse([]byte(text))
	if err != nil {
		b.Fatal(err)
	}
	r := rigOf(b, Options{Sheet: s, Path: "bench.toml", Width: 120, Height: 36, Journal: true, Env: []string{"XDG_STATE_HOME=" + b.TempDir()}})
	b.Cleanup(r.m.file.Close)
	return r
}

// timed presses keys and draws a frame behind each message, as the program does.
func (r *rig) timed(b *testing.B, key func() string) {
	b.ReportAllocs()
	var took []time.Duration
	for b.Loop() {
		msg := press(key())
		began := time.Now()
		r.step(msg)
		took = append(took, time.Since(began))
	}
	slices.Sort(took)
	for _, share := range []int{50, 95, 100} {
		at := min(len(took)*share/100, len(took)-1)
		b.ReportMetric(took[at].Seconds()*1000, fmt.Sprintf("p%d-ms", share))
	}
}

// step does a message and its commands, with a frame behind each, as the program does.
func (r *rig) step(msg tea.Msg) {
	switch msg := msg.(type) {
	case nil:
	case tea.BatchMsg:
		for _, c := range msg {
			if c != nil {
				r.step(c())
			}
		}
	default:
		next, cmd := r.m.Update(msg)
		r.m = next.(Model)
		r.m.View()
		if cmd != nil {
			r.step(cmd())
		}
	}
}

func BenchmarkFrame(b *testing.B) {
	r := newRig(b, crane, 120, 36)
	b.ReportAllocs()
	for b.Loop() {
		r.m.View()
	}
}

func BenchmarkRebuild(b *testing.B) {
	r := newRig(b, crane, 120, 36)
	b.ReportAllocs()
	for b.Loop() {
		r.m.renew()
	}
}

// BenchmarkKeystrokeResult is the same with other results beside the cells, and with
// the cursor of a result followed.
func BenchmarkKeystrokeResult(b *testing.B) {
	for _, pane := range []string{"alt+y", "f7 c", "f7 w", "alt+h", "f7 r", "alt+l"} {
		b.Run(pane, func(b *testing.B) { keystrokes(b, crane, 1, "0, 1, 3", pane) })
	}
}

// BenchmarkKeystrokeTruss is the same on a truss of 300 unknowns.
func BenchmarkKeystrokeTruss(b *testing.B) {
	for _, pane := range []string{"alt+y", "f7 c", "f7 w", "alt+h", "f7 r", "alt+l"} {
		b.Run(pane, func(b *testing.B) { keystrokes(b, longTruss(150), 1, "1, 0", pane) })
	}
}

// BenchmarkCursor is a key that moves the cursor of the system and explains the number.
func BenchmarkCursor(b *testing.B) {
	for name, text := range map[string]string{"crane": crane, "truss": longTruss(150)} {
		b.Run(name, func(b *testing.B) {
			r := newRig(b, text, 120, 36)
			r.keys("alt+y")
			for n := 0; b.Loop(); n++ {
				r.keys([]string{"down", "right", "up", "left"}[n%4])
				r.m.View()
			}
		})
	}
}

// BenchmarkLinear reads on in results on the screen that is told instead of drawn.
func BenchmarkLinear(b *testing.B) {
	for _, pane := range []string{"alt+y", "alt+i", "f7 c"} {
		b.Run(pane, func(b *testing.B) {
			s, err := sheet.Parse([]byte(longTruss(150)))
			if err != nil {
				b.Fatal(err)
			}
			r := rigOf(b, Options{Sheet: s, Path: "bench.toml", Width: 120, Height: 36, Linear: true})
			r.keys(pane)
			n := 0
			r.timed(b, func() string { n++; return [...]string{"down", "down", "up"}[n%3] })
		})
	}
}

// longTruss is a truss of n joints in the plane in a zigzag, each a particle, tied to the two
// behind it and held by three links at its ends: 2n unknowns.
func longTruss(n int) string {
	var s strings.Builder
	s.WriteString("plane = \"xy\"\n[points]\n")
	for i := range n {
		fmt.Fprintf(&s, "P%d = { at = \"%d, %d\", on = \"particle\" }\n", i, i, i%2)
	}
	fmt.Fprintf(&s, "G1 = \"-1, 0\"\nG2 = \"0, -1\"\nG3 = \"%d, -1\"\n[lines]\n", n-1)
	link := func(name, from, to string) {
		fmt.Fprintf(&s, "%s = { kind = \"link\", path = \"%s %s\" }\n", name, from, to)
	}
	for i := 1; i < n; i++ {
		link(fmt.Sprintf("a%d", i), fmt.Sprintf("P%d", i-1), fmt.Sprintf("P%d", i))
		if i > 1 {
			link(fmt.Sprintf("b%d", i), fmt.Sprintf("P%d", i-2), fmt.Sprintf("P%d", i))
		}
	}
	link("g1", "P0", "G1")
	link("g2", "P0", "G2")
	link("g3", fmt.Sprintf("P%d", n-1), "G3")
	fmt.Fprintf(&s, "W = { kind = \"force\", at = \"P%d\", along = \"-y\", magnitude = \"10 N\" }\n", n/2)
	return s.String()
}
