package picture

import (
	"testing"

	"trivet/mechanics/sheet"
	"trivet/tui/grid"
)

func TestOptionsOfAPictureAreToldApart(t *testing.T) {
	of := fixture(t, "hanging-load")
	c := NewCamera()
	o := c.Options(false, false, sheet.Ref{})
	s := &Kept{}
	draw := func(o Options, w int) *drawn {
		s.Draw(grid.New(w, 20).All(), &of, c.View(&of), o)
		return s.last.Load()
	}
	first := draw(o, 40)
	if draw(o, 40) != first {
		t.Error("the same picture is drawn twice")
	}
	for name, change := range map[string]func(o *Options){
		"zoom": func(o *Options) { o.Zoom *= 2 }, "row": func(o *Options) { o.On.Row += "x" },
		"stale": func(o *Options) { o.Stale = !o.Stale }, "ASCII": func(o *Options) { o.ASCII = !o.ASCII },
		"arrows": func(o *Options) { o.Arrows++ },
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
