package picture

import (
	"image"
	"math"
	"strings"
	"testing"

	"trivet/mechanics/figure"
	"trivet/mechanics/sheet"
	"trivet/tui/grid"
)

func draw(w, h int, f figure.Figure, o Options) string {
	g := grid.New(w, h)
	Draw(g.All(), f, o)
	lines := strings.Split(g.Render(nil), "\n")
	for i := range lines {
		lines[i] = strings.TrimRight(lines[i], " ")
	}
	return strings.Join(lines, "\n")
}

// vee is two members from D to A and B, a load below and its labels.
func vee() figure.Figure {
	v := func(x, y float64) figure.Vec { return figure.Vec{X: x, Y: y} }
	return figure.Figure{
		Strokes: []figure.Stroke{
			{Kind: figure.Cable, Pts: []figure.Vec{v(0, 0), v(-2, 2)}},
			{Kind: figure.Strut, Pts: []figure.Vec{v(0, 0), v(2, 2)}},
			{Kind: figure.Arrow, Pts: []figure.Vec{v(0, 0), v(0, -1)}},
			{Kind: figure.Arrow, Pts: []figure.Vec{v(-0.1, -0.8), v(0, -1), v(0.1, -0.8)}},
			{Kind: figure.Ground, Pts: []figure.Vec{v(-2.1, 2), v(-1.9, 2)}},
		},
		Labels: []figure.Label{{At: v(0, 0), Text: "D", Ref: sheet.Ref{Table: "points", Row: "D"}}, {At: v(-1, 1), Text: "T1", Mark: "(T)"}, {At: v(0, -1), Text: "W", Mark: "⊗"}},
		Low:    v(-2, -1), High: v(2, 2),
	}
}

func TestPlainCharacters(t *testing.T) {
	got := draw(26, 9, vee(), Options{ASCII: true})
	for _, piece := range []string{"#", "/", `\`, "v", "T1 (T)", "W (x)", "D"} {
		if !strings.Contains(got, piece) {
			t.Errorf("no %q in\n%s", piece, got)
		}
	}
	for _, r := range got {
		if r >= 0x80 {
			t.Fatalf("%q is not ASCII in\n%s", r, got)
		}
	}
}

func TestDots(t *testing.T) {
	f := figure.Figure{Strokes: []figure.Stroke{{Pts: []figure.Vec{{X: 0, Y: 0}, {X: 1, Y: 0}}}}, High: figure.Vec{X: 1}}
	// Sixteen dots on a row in the middle, five cells free on either side.
	if got := draw(18, 3, f, Options{}); got != "\n     ⠤⠤⠤⠤⠤⠤⠤⠤\n" {
		t.Errorf("%q", got)
	}
}

func TestNothingOutsideAndNoPanic(t *testing.T) {
	bad := vee()
	bad.Strokes = append(bad.Strokes,
		figure.Stroke{Pts: []figure.Vec{{X: math.NaN()}, {X: 1}}},
		figure.Stroke{Pts: []figure.Vec{{X: math.Inf(1)}, {X: 1}}},
		figure.Stroke{Pts: []figure.Vec{{X: -1e300}, {X: 1e300}}},
		figure.Stroke{})
	bad.Labels = append(bad.Labels, figure.Label{At: figure.Vec{X: math.NaN()}, Text: "x"}, figure.Label{At: figure.Vec{X: 1e300}, Text: "x"})
	for _, ascii := range []bool{true, false} {
		for _, zoom := range []float64{0, 1, 100, 1e9} {
			for w := range 40 {
				g := grid.New(w+2, w/2+2)
				g.All().Fill('#', 0)
				in := g.All().In(image.Rect(1, 1, w+1, w/2+1))
				in.Fill(' ', 0)
				Draw(in, bad, Options{ASCII: ascii, Zoom: zoom, Axes: []figure.Axis{{Name: "x", At: figure.Vec{X: 1}}}})
				lines := strings.Split(g.Render(nil), "\n")
				for y, l := range lines {
					edge := y == 0 || y == len(lines)-1
					if !strings.HasPrefix(l, "#") || !strings.HasSuffix(l, "#") || edge && strings.Trim(l, "#") != "" {
						t.Fatalf("drawn over the edge:\n%s", g.Render(nil))
					}
				}
			}
		}
	}
}

func TestClip(t *testing.T) {
	for _, c := range []struct {
		in, want [4]float64
		ok       bool
	}{
		{[4]float64{-5, 5, 15, 5}, [4]float64{0, 5, 10, 5}, true},
		{[4]float64{5, -5, 5, 15}, [4]float64{5, 0, 5, 10}, true},
		{[4]float64{-5, -5, 15, 15}, [4]float64{0, 0, 10, 10}, true},
		{[4]float64{11, 0, 11, 10}, [4]float64{}, false},
		{[4]float64{-1, 9.5, 3, 12}, [4]float64{}, false},
	} {
		got, ok := clip(c.in[0], c.in[1], c.in[2], c.in[3], 10, 10)
		if got := [4]float64{got.x0, got.y0, got.x1, got.y1}; ok != c.ok || ok && got != c.want {
			t.Errorf("clip %v = %v %v, want %v %v", c.in, got, ok, c.want, c.ok)
		}
	}
}

func TestTheAxesGiveWay(t *testing.T) {
	v := func(x, y float64) figure.Vec { return figure.Vec{X: x, Y: y} }
	axes := []figure.Axis{{Name: "x", At: v(1, 0)}, {Name: "y", At: v(0, 1)}, {Name: "z", Toward: 1}}
	// A zoomed stroke covers the lower left: the axes go to the lower right.
	f := figure.Figure{Strokes: []figure.Stroke{{Pts: []figure.Vec{v(-1, -1), v(0, 0)}}}, Low: v(-1, -1), High: v(1, 1)}
	lines := strings.Split(draw(40, 12, f, Options{ASCII: true, Zoom: 3, Axes: axes}), "\n")
	if i := strings.Index(lines[9], "x"); i < 30 {
		t.Errorf("the x axis is at column %d of\n%s", i, strings.Join(lines, "\n"))
	}
	lines = strings.Split(draw(40, 12, vee(), Options{ASCII: true, Axes: axes}), "\n")
	if i := strings.Index(lines[9], "x"); i != 8 {
		t.Errorf("the x axis is at column %d of\n%s", i, strings.Join(lines, "\n"))
	}
}

func TestSignsInPlainCharacters(t *testing.T) {
	v := func(x, y float64) figure.Vec { return figure.Vec{X: x, Y: y} }
	arc := []figure.Vec{v(-0.2, 0), v(0, -0.2), v(0.2, 0), v(0, 0.2)} // counter-clockwise
	f := figure.Figure{
		Strokes: []figure.Stroke{{Kind: figure.Couple, Pts: arc}},
		Marks: []figure.Mark{
			{At: v(-4, 0), Toward: v(0, 1), Sign: figure.PinSign}, {At: v(-2, 0), Toward: v(0, 1), Sign: figure.RollerSign},
			{At: v(2, 0), Toward: v(1, 0), Sign: figure.FixedSign}, {At: v(4, 0), Sign: figure.RollerSign},
		},
		Low: v(-4, -1), High: v(4, 1),
	}
	got := draw(40, 11, f, Options{ASCII: true})
	for _, piece := range []string{`/_\`, "(_)", "///", "#", "( )", "<-.", "--'"} {
		if !strings.Contains(got, piece) {
			t.Errorf("no %q in\n%s", piece, got)
		}
	}
	// The other way round, and far outside.
	f.Strokes[0].Pts = []figure.Vec{arc[2], arc[1], arc[0], arc[3]}
	f.Marks = append(f.Marks, figure.Mark{At: v(math.NaN(), 0)}, figure.Mark{At: v(1e300, 0), Toward: v(0, -1)})
	if got = draw(40, 11, f, Options{ASCII: true}); !strings.Contains(got, ".->") {
		t.Errorf("no clockwise arrow in\n%s", got)
	}
}
