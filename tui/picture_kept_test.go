package tui

import (
	"math/rand/v2"
	"testing"

	"trivet/tui/picture"
)

// A picture that is kept is the one that would be drawn: whatever is done, each
// frame equals that of a model that has kept none.
func TestThePictureKeptIsTheOneDrawn(t *testing.T) {
	rng := rand.New(rand.NewPCG(3, 3))
	for _, text := range []string{crane, beam, hanging} {
		r := newRig(t, text, 120, 36)
		r.keys("alt+i")
		for range 150 {
			r.keys([]string{"left", "up", "+", "-", "0", "x", "d", "g", "a", "f", "v", "n", "p", "alt+p", "f7 f", "alt+i", "down", "right", "alt+up", "ctrl+z", "ctrl+e", "5", "esc"}[rng.IntN(23)])
			fresh := r.m
			fresh.sketch = &picture.Kept{}
			if r.m.frame() != fresh.frame() {
				t.Fatalf("another picture is kept than is drawn:\n%s\nwant\n%s", r.m.frame(), fresh.frame())
			}
		}
	}
}
