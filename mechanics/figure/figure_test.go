package figure

import (
	"math"
	"testing"

	"trivet/fixtures"
	"trivet/mechanics/drawing"
	"trivet/mechanics/problem"
	"trivet/mechanics/scene"
	"trivet/mechanics/sheet"
	"trivet/mechanics/statics"
)

// figures sets the figure and the free bodies of each sheet of the fixtures on paper.
func figures(t *testing.T, visit func(name string, d drawing.Drawing)) {
	t.Helper()
	for _, one := range append(fixtures.Starts(), fixtures.Published()...) {
		s, err := sheet.Parse([]byte(one.Text))
		if err != nil {
			t.Fatal(err)
		}
		p, _ := problem.Read(s)
		whole := scene.System(p, nil, scene.Options{Dimensions: true})
		visit(one.Name, System(&whole))
		for _, with := range []*statics.Solution{nil, statics.Solve(p)} {
			for i := range p.CutFree() {
				free := scene.Free(p, with, i)
				visit(one.Name+", "+p.Bodies[i].Name, Free(&free, p.Bodies[i].Name, len(p.Bodies) > 1))
			}
		}
	}
}

// faint lines are those of dimensions and leaders, and hatching, which lies behind a line
// that labels keep off.
func faint(s *drawing.Shape) bool {
	return s.Line == drawing.Faint || s.Line == drawing.None && s.Fill == drawing.Faint
}

// covers tells how much of a stroke lies in a label, points.
func covers(text drawing.Text, s *drawing.Shape) (most float64) {
	box := text.Box()
	for k := 1; k < len(s.Pts); k++ {
		from, to, ok := box.Clip(s.Pts[k-1], s.Pts[k])
		if ok {
			most = math.Max(most, (to-from)*s.Pts[k].Sub(s.Pts[k-1]).Len())
		}
	}
	return most
}

// No label lies on a stroke or on another label. A label touches a stroke where less of it
// than this lies under the label, in points.
const touching = 0.3

func TestNoLabelLiesOnAnything(t *testing.T) {
	labels, bad := 0, 0
	figures(t, func(name string, d drawing.Drawing) {
		for i, text := range d.Texts {
			labels++
			for _, other := range d.Texts[:i] {
				if text.Box().Meets(other.Box()) {
					t.Errorf("%s: %q lies on %q", name, drawing.Plain(text.Runs), drawing.Plain(other.Runs))
				}
			}
			for k := range d.Shapes {
				if s := &d.Shapes[k]; !faint(s) && s.Line != drawing.Paper && (s.Line != drawing.None || s.Fill != drawing.Paper) && covers(text, s) > touching {
					bad++
					t.Errorf("%s: %q lies on a stroke, by %.1f points", name, drawing.Plain(text.Runs), covers(text, s))
					break
				}
			}
		}
	})
	if labels < 1000 {
		t.Errorf("%d labels are looked at", labels)
	}
	t.Logf("%d labels, %d on strokes", labels, bad)
}

// Front and side have one scale, the one in line with the other, and the view in space is
// the largest.
func TestViewsAreAligned(t *testing.T) {
	one, _ := fixtures.Get("mast-top")
	s, err := sheet.Parse([]byte(one.Text))
	if err != nil {
		t.Fatal(err)
	}
	p, _ := problem.Read(s)
	whole := scene.System(p, nil, scene.Options{Dimensions: true})
	mast := 0
	for i, thing := range whole.Things {
		if thing.Kind == scene.Strut {
			mast = i + 1
		}
	}
	var spans [][2]float64 // from top to bottom, of the mast in each view that shows its length
	for _, shape := range System(&whole).Shapes {
		if shape.Of == mast && shape.Line == drawing.Dark && len(shape.Pts) == 2 {
			spans = append(spans, [2]float64{math.Min(shape.Pts[0].Y, shape.Pts[1].Y), math.Max(shape.Pts[0].Y, shape.Pts[1].Y)})
		}
	}
	const aligned = 1e-6 // points
	if len(spans) != 3 || math.Abs(spans[1][0]-spans[2][0]) > aligned || math.Abs(spans[1][1]-spans[2][1]) > aligned || spans[0][1]-spans[0][0] < 1.5*(spans[1][1]-spans[1][0]) {
		t.Errorf("in space, from the front and from the side the mast reaches from and to %v points", spans)
	}
}
