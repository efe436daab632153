package tui

import (
	"slices"
	"testing"
	"time"
)

// BenchmarkKeystroke is a character typed into a cell, through the solved
// result, to the finished frame at 120 by 36.
func BenchmarkKeystroke(b *testing.B) { keystrokes(b, crane, "0, 1, 3") }

// BenchmarkKeystrokeBeam is the same on a rigid body with supports and loads.
func BenchmarkKeystrokeBeam(b *testing.B) { keystrokes(b, beam, "2.5, 1") }

func keystrokes(b *testing.B, text, cell string) {
	r := newRig(b, text, 120, 36)
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
