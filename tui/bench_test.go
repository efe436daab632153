package tui

import (
	"fmt"
	"slices"
	"strings"
	"testing"
	"time"
)

// BenchmarkKeystroke is a character typed into a cell, through the solved
// result, to the finished frame at 120 by 36.
func BenchmarkKeystroke(b *testing.B) { keystrokes(b, crane, "0, 1, 3") }

// BenchmarkKeystrokeBeam is the same on a rigid body with supports and loads.
func BenchmarkKeystrokeBeam(b *testing.B) { keystrokes(b, beam, "2.5, 1") }

func keystrokes(b *testing.B, text, cell string, before ...string) {
	r := newRig(b, text, 120, 36)
	r.keys(before...)
	r.keys("alt+2")
	r.keys("down", "right")
	r.text(cell)
	b.ReportAllocs()
	var took []time.Duration
	for b.Loop() {
		began := time.Now()
		if len(took)%2 == 0 {
			r.send(press("5"))
		} else {
			r.send(press("backspace"))
		}
		r.m.View()
		took = append(took, time.Since(began))
	}
	slices.Sort(took)
	b.ReportMetric(took[len(took)/2].Seconds()*1000, "median-ms")
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
		r.m.rebuild()
	}
}

// BenchmarkKeystrokeResult is the same with other results beside the cells, and with
// the cursor of a result followed.
func BenchmarkKeystrokeResult(b *testing.B) {
	for _, pane := range []string{"alt+6", "alt+8", "alt+9", "alt+h", "alt+i", "alt+l"} {
		b.Run(pane, func(b *testing.B) { keystrokes(b, crane, "0, 1, 3", pane) })
	}
}

// BenchmarkKeystrokeTruss is the same on a truss of 300 unknowns.
func BenchmarkKeystrokeTruss(b *testing.B) {
	for _, pane := range []string{"alt+6", "alt+8", "alt+9", "alt+h", "alt+i", "alt+l"} {
		b.Run(pane, func(b *testing.B) { keystrokes(b, longTruss(150), "1, 0", pane) })
	}
}

// BenchmarkCursor is a key that moves the cursor of the system and explains the number.
func BenchmarkCursor(b *testing.B) {
	for name, text := range map[string]string{"crane": crane, "truss": longTruss(150)} {
		b.Run(name, func(b *testing.B) {
			r := newRig(b, text, 120, 36)
			r.keys("alt+6")
			for n := 0; b.Loop(); n++ {
				r.keys([]string{"down", "right", "up", "left"}[n%4])
				r.m.View()
			}
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
