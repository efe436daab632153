package picture

import (
	"fmt"
	"image"
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"trivet/fixtures"
	"trivet/mechanics/figure"
	"trivet/mechanics/problem"
	"trivet/mechanics/sheet"
	"trivet/mechanics/statics"
	"trivet/tui/grid"
)

// panes are the sizes of a picture on screens of 80 by 24, 120 by 36 and 200 by 60,
// and with all of the smallest to itself.
var panes = [][2]int{{33, 19}, {56, 15}, {61, 55}, {80, 19}}

// turns is how many views stand round a figure in space: one each fifteen degrees.
const turns = 24

// tilt is how far from above it is seen.
const tilt = math.Pi / 9

type solved struct {
	name string
	p    *problem.Problem
	sol  *statics.Solution
}

func sheets(t *testing.T) (all []solved) {
	t.Helper()
	for _, f := range append(fixtures.Starts(), fixtures.Published()...) {
		s, err := sheet.Parse([]byte(f.Text))
		if err != nil {
			t.Fatal(err)
		}
		p, _ := problem.Read(s)
		all = append(all, solved{f.Name, p, statics.Solve(p)})
	}
	return all
}

func (s solved) views() []figure.View {
	if s.p.Planar {
		return []figure.View{figure.Front(s.p)}
	}
	views := []figure.View{figure.Front(s.p), figure.Side(s.p), figure.Top(s.p)}
	for i := range turns {
		views = append(views, figure.Space(s.p, 2*math.Pi*float64(i)/turns, tilt))
	}
	return views
}

// checkLabels holds a picture to what its labels promise.
func checkLabels(t *testing.T, name string, g *grid.Grid, p *pen, f figure.Figure) {
	t.Helper()
	lines := strings.Split(g.Render(nil), "\n")
	room := image.Rect(0, 0, p.c.W(), p.c.H())
	names := 0
	for i, l := range p.placed {
		if !l.alone {
			names++
		}
		if !l.box.In(room) || l.box.Dx() != grid.Width(l.text) || l.box.Dy() != 1 {
			t.Errorf("%s: %q stands at %v of %v", name, l.text, l.box, room)
			continue
		}
		if got := string([]rune(lines[l.box.Min.Y])[l.box.Min.X:l.box.Max.X]); got != l.text {
			t.Errorf("%s: at %v stands %q, not %q", name, l.box, got, l.text)
		}
		for _, other := range p.placed[:i] {
			if l.box.Overlaps(other.box.Inset(-1)) && l.box.Min.Y == other.box.Min.Y {
				t.Errorf("%s: %q at %v touches %q at %v", name, l.text, l.box, other.text, other.box)
			}
		}
		if l.leader {
			for _, at := range way(l.at, l.box, nil) {
				if r := []rune(lines[at.Y])[at.X]; r == ' ' {
					t.Errorf("%s: the leader of %q is broken at %v", name, l.text, at)
				}
			}
		} else if d := astray(p, l); d > 0 {
			t.Errorf("%s: %q at %v is %d cells off its place without a leader", name, l.text, l.box, d)
		}
	}
	if names+p.left != len(p.tags(f)) {
		t.Errorf("%s: %d names stand and %d are left out of %d", name, names, p.left, len(p.tags(f)))
	}
	if note := p.left > 0 && p.c.W() >= leastW; note != strings.Contains(strings.Join(lines, "\n"), "left out") {
		t.Errorf("%s: %d names are left out, and the picture says otherwise:\n%s", name, p.left, g.Render(nil))
	}
}

// astray is how many cells a label is farther from its thing than a label without
// a leader may be.
func astray(p *pen, l placed) int {
	const across, down = 3, 2
	off := func(at image.Point) int {
		dx := max(l.box.Min.X-at.X, at.X-(l.box.Max.X-1), 0)
		dy := max(l.box.Min.Y-at.Y, at.Y-l.box.Min.Y)
		return max(dx-across, 0) + max(dy-down, 0)
	}
	best := off(l.at)
	if l.runs {
		for i := range 101 {
			t := float64(i) / 100
			if x, y, ok := p.cell(figure.Vec{X: l.line[0].X + t*(l.line[1].X-l.line[0].X), Y: l.line[0].Y + t*(l.line[1].Y-l.line[0].Y)}); ok {
				best = min(best, off(image.Pt(x, y)))
			}
		}
	}
	return best
}

func TestLabelsOfAllSheets(t *testing.T) {
	for _, s := range sheets(t) {
		for i, v := range s.views() {
			for _, dims := range []bool{false, true} {
				f := figure.DrawAs(s.p, s.sol, v, figure.Look{Dimensions: dims})
				for _, size := range panes {
					o := Options{ASCII: i%2 == 1, Zoom: 1, Axes: figure.Axes(s.p, v)}
					if len(s.p.Lines) > 0 && i%3 == 0 {
						o.On = s.p.Lines[0].Ref
					}
					g := grid.New(size[0], size[1])
					checkLabels(t, fmt.Sprintf("%s, view %d at %v", s.name, i, size), g, drawn(g.All(), f, o), f)
				}
			}
		}
	}
}

// random is a figure of members, arrows and points anywhere.
func random(r *rand.Rand) (f figure.Figure) {
	place := func() figure.Vec { return figure.Vec{X: r.Float64()*4 - 2, Y: r.Float64()*2 - 1} }
	f.Low, f.High = figure.Vec{X: -2, Y: -1}, figure.Vec{X: 2, Y: 1}
	for i := range 2 + r.IntN(30) {
		ref := sheet.Ref{Table: "lines", Row: fmt.Sprint("F", i)}
		a, b := place(), place()
		s := figure.Stroke{Kind: figure.StrokeKind(r.IntN(int(figure.Arrow))), Pts: []figure.Vec{a, b}, Ref: ref, Near: [2]float64{r.Float64(), r.Float64()}, Open: r.IntN(4) == 0}
		l := figure.Label{At: figure.Vec{X: (a.X + b.X) / 2, Y: (a.Y + b.Y) / 2}, Text: ref.Row, Mark: "(C)", Ref: ref, Rank: figure.Rank(r.IntN(3)), Along: [2]figure.Vec{a, b}}
		if r.IntN(2) == 0 {
			l = figure.Label{At: a, Text: strings.Repeat("P", 1+r.IntN(5)), Ref: sheet.Ref{Table: "points", Row: fmt.Sprint("P", i)}, Rank: figure.OfPoint}
		}
		f.Strokes, f.Labels = append(f.Strokes, s), append(f.Labels, l)
	}
	return f
}

func TestLabelsOfRandomFigures(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 24))
	for i := range 400 {
		f := random(r)
		o := Options{ASCII: i%2 == 1, Zoom: []float64{1, 0.3, 3}[i%3], On: f.Labels[0].Ref, Axes: []figure.Axis{{Name: "x", At: figure.Vec{X: 1}}}}
		w, h := 30+r.IntN(80), 10+r.IntN(40)
		g := grid.New(w, h)
		checkLabels(t, fmt.Sprintf("figure %d at %dx%d", i, w, h), g, drawn(g.All(), f, o), f)
		again := grid.New(w, h)
		drawn(again.All(), f, o)
		if g.Render(nil) != again.Render(nil) {
			t.Fatalf("figure %d is drawn in two ways", i)
		}
	}
}

// The selected row keeps its label in the densest picture of all sheets.
func TestTheSelectedRowHasItsLabel(t *testing.T) {
	for _, s := range sheets(t) {
		f := figure.Draw(s.p, s.sol, s.views()[0])
		for _, l := range f.Labels {
			g := grid.New(33, 19)
			p := drawn(g.All(), f, Options{Zoom: 1, On: l.Ref})
			if _, _, ok := p.cell(l.At); ok && !strings.Contains(g.Render(nil), "["+l.Text) {
				t.Errorf("%s: no label [%s in\n%s", s.name, l.Text, g.Render(nil))
			}
		}
	}
}

// Labels of one length on one place: those that matter most have the room.
func TestTheLeastImportantAreLeftOut(t *testing.T) {
	var f figure.Figure
	for i := range 60 {
		rank := figure.Rank(i % 5)
		f.Labels = append(f.Labels, figure.Label{Text: fmt.Sprintf("%d%02d", rank, i), Rank: rank, Ref: sheet.Ref{Table: "lines", Row: fmt.Sprint(i)}})
	}
	g := grid.New(40, 12)
	p := drawn(g.All(), f, Options{On: f.Labels[58].Ref})
	lit, others := 0, 0
	for _, l := range p.placed {
		switch {
		case l.lit:
			lit++
		case l.rank == figure.OfUnknown:
			others++
		default:
			t.Errorf("%q has a place, and unknown forces have none", l.text)
		}
	}
	if lit != 1 || others == 0 || others >= 12 {
		t.Errorf("%d selected and %d unknown ones stand in\n%s", lit, others, g.Render(nil))
	}
}

// Small turns leave most labels on their side of their thing, and hardly ever take
// one to a place farther off.
func TestLabelsStayWhileTurning(t *testing.T) {
	const (
		sides  = 0.08  // of all labels in a turn of one degree
		farOff = 0.004 // likewise
	)
	swapped, jumped, all := 0, 0, 0
	for _, s := range sheets(t) {
		if s.p.Planar {
			continue
		}
		var last map[string]placed
		for deg := range 90 {
			f := figure.Draw(s.p, s.sol, figure.Space(s.p, float64(deg)*math.Pi/180, tilt))
			now := map[string]placed{}
			for _, l := range drawn(grid.New(80, 19).All(), f, Options{Zoom: 1}).placed {
				now[l.ref.Table+l.ref.Row+l.text] = l
				was, ok := last[l.ref.Table+l.ref.Row+l.text]
				if !ok {
					continue
				}
				all++
				d := l.box.Min.Sub(l.at).Sub(was.box.Min.Sub(was.at))
				if max(d.X, -d.X) > 3 || max(d.Y, -d.Y) > 1 {
					swapped++
				}
				if max(d.X, -d.X) > l.n+6 || max(d.Y, -d.Y) > 3 {
					jumped++
				}
			}
			last = now
		}
	}
	if all == 0 || float64(swapped) > sides*float64(all) || float64(jumped) > farOff*float64(all) {
		t.Errorf("of %d labels %d change sides and %d jump in turns of one degree", all, swapped, jumped)
	}
}
