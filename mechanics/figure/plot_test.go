package figure

import (
	"math"
	"slices"
	"strings"
	"testing"

	"trivet/mechanics/drawing"
)

func TestTicksAreRound(t *testing.T) {
	for _, c := range []struct {
		low, high float64
		most      int
		want      []float64
	}{
		{0, 10, 5, []float64{0, 2, 4, 6, 8, 10}},
		{200, 800, 4, []float64{200, 400, 600, 800}},
		{-480, 780, 4, []float64{0, 500}},
		{0, 1, 5, []float64{0, 0.2, 0.4, 0.6, 0.8, 1}},
		{-4, -1, 3, []float64{-4, -3, -2, -1}},
		{0.013, 0.0171, 5, []float64{0.013, 0.014, 0.015, 0.016, 0.017}},
	} {
		got := span{c.low, c.high}.ticks(c.most)
		same := slices.EqualFunc(got, c.want, func(a, b float64) bool { return math.Abs(a-b) <= 1e-12*math.Abs(c.high) })
		if !same {
			t.Errorf("from %g to %g: %v, want %v", c.low, c.high, got, c.want)
		}
	}
}

// A curve lies where the ticks say, has a gap where it has no value, and its name at its end.
func TestCurvesLieByTheirAxes(t *testing.T) {
	p := &Plot{XLabel: "W (kN)", YLabel: "kN", Curves: []Curve{{Name: "T1", X: []float64{0, 1, 2, 3, 4}, Y: []float64{0, 10, math.NaN(), 30, 40}, Marks: []Mark{{1, "knee"}}}}}
	d := SetPlot(p, Paper(400, 220))
	ticks := map[string]drawing.Vec{}
	for _, text := range d.Texts {
		ticks[drawing.Plain(text.Runs)] = text.Box().Centre()
	}
	for _, name := range []string{"T1", "knee", "W (kN)", "kN", "0", "4", "40"} {
		if _, ok := ticks[name]; !ok {
			t.Errorf("no %q among %v", name, ticks)
		}
	}
	var curves [][]drawing.Vec
	for _, s := range d.Shapes {
		if s.Line == drawing.Found && !s.Closed {
			curves = append(curves, s.Pts)
		}
	}
	if len(curves) != 2 || len(curves[0]) != 2 || len(curves[1]) != 2 {
		t.Fatalf("the curve is drawn in %d pieces: %v", len(curves), curves)
	}
	const beside = 3 // points that a figure stands off the middle of its tick
	if end := curves[1][1]; math.Abs(end.X-ticks["4"].X) > beside || math.Abs(end.Y-ticks["40"].Y) > beside {
		t.Errorf("(4, 40) lies at %v, its ticks at %v and %v", end, ticks["4"], ticks["40"])
	}
}

// A curve that varies by rounding alone is level, and has the ticks of a level one.
func TestALevelCurve(t *testing.T) {
	d := SetPlot(&Plot{Curves: []Curve{{Name: "T", X: []float64{0, 1}, Y: []float64{312.5, 312.5 + 6e-14}}}}, Paper(300, 200))
	if n := len(d.Texts); n < 4 || n > 20 {
		t.Errorf("%d texts", n)
	}
}

func TestAPlotOfNothing(t *testing.T) {
	for _, curves := range [][]Curve{nil, {{Name: "T", X: []float64{1}, Y: []float64{math.NaN()}}}, {{Name: "T", X: []float64{1, 2}, Y: []float64{math.Inf(1), 0}}}} {
		d := SetPlot(&Plot{Curves: curves}, Paper(300, 200))
		if text := string(drawing.SVG(d.Drawing)); strings.Contains(text, "NaN") || strings.Contains(text, "Inf") {
			t.Errorf("no number in\n%s", text)
		}
	}
}
