package tui

import (
	"math/rand/v2"
	"testing"

	"trivet/tui/grid"
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
			fresh.sketch = &sketch{}
			if r.m.frame() != fresh.frame() {
				t.Fatalf("another picture is kept than is drawn:\n%s\nwant\n%s", r.m.frame(), fresh.frame())
			}
		}
	}
}

func TestOptionsOfAPictureAreToldApart(t *testing.T) {
	r := newRig(t, crane, 120, 36)
	o := r.m.pictureOptions()
	s := &sketch{}
	draw := func(o picture.Options, w int) *drawing {
		s.draw(grid.New(w, 20).All(), r.m.drawing, r.m.cam.view(r.m.drawing), o)
		return s.last.Load()
	}
	first := draw(o, 40)
	if draw(o, 40) != first {
		t.Error("the same picture is drawn twice")
	}
	for name, change := range map[string]func(o *picture.Options){
		"zoom": func(o *picture.Options) { o.Zoom *= 2 }, "row": func(o *picture.Options) { o.On.Row += "x" },
		"stale": func(o *picture.Options) { o.Stale = !o.Stale }, "ASCII": func(o *picture.Options) { o.ASCII = !o.ASCII },
		"arrows": func(o *picture.Options) { o.Arrows++ },
	} {
		draw(o, 40)
		other, before := o, s.last.Load()
		change(&other)
		if draw(other, 40) == before {
			t.Errorf("another %s gives the same picture", name)
		}
	}
	before := draw(o, 40)
	if draw(o, 41) == before {
		t.Error("another width gives the same picture")
	}
}
