package figure

import (
	"math"
	"sync"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

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
	all, err := drawn()
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range all {
		visit(f.name, f.d)
	}
}

// named is a figure of a sheet.
type named struct {
	name string
	d    drawing.Drawing
}

// drawn are all figures, set once for all tests.
var drawn = sync.OnceValues(func() (all []named, _ error) {
	for _, one := range append(fixtures.Starts(), fixtures.Published()...) {
		s, err := sheet.Parse([]byte(one.Answered()))
		if err != nil {
			return nil, err
		}
		p, _ := problem.Read(s)
		whole := scene.System(p, nil, scene.Options{Dimensions: true})
		all = append(all, named{one.Name, System(&whole)})
		for _, with := range []*statics.Solution{nil, statics.Solve(p)} {
			for i := range p.CutFree() {
				free := scene.Free(p, with, i)
				all = append(all, named{one.Name + ", " + p.Bodies[i].Name, Free(&free, p.Bodies[i].Name, len(p.Bodies) > 1)})
			}
		}
	}
	return all, nil
})

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

// wordSpace is less than two labels on one line lie apart: the space of two words, in points.
const wordSpace = 2.5

func TestNoLabelLiesOnAnything(t *testing.T) {
	labels, bad := 0, 0
	figures(t, func(name string, d drawing.Drawing) {
		for i, text := range d.Texts {
			labels++
			for _, other := range d.Texts[:i] {
				if text.Box().Meets(other.Box()) {
					t.Errorf("%s: %q lies on %q", name, drawing.Plain(text.Runs), drawing.Plain(other.Runs))
				}
				if beside := text.Box(); other.Size == text.Size && other.Tone != drawing.Faint && beside.Low.Y < other.At.Y && other.At.Y < beside.High.Y && other.Box().Low.X < beside.High.X+wordSpace && other.Box().High.X > beside.Low.X-wordSpace {
					t.Errorf("%s: %q and %q read as one", name, drawing.Plain(text.Runs), drawing.Plain(other.Runs))
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
	s, err := sheet.Parse([]byte(one.Answered()))
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

// No figure is larger than a sheet of paper that a person holds: one of a single point in
// space, whose members have no other end, was as large as a field.
func TestFiguresFitOnPaper(t *testing.T) {
	const large = 1000 // points: more than a page is wide, which whoever prints it scales down
	figures(t, func(name string, d drawing.Drawing) {
		if !(d.Width < large && d.Height < large) {
			t.Errorf("%s: %.0f × %.0f points", name, d.Width, d.Height)
		}
	})
}

// In space no force and no member is seen end on, neither in the figure nor in a free body.
func TestNothingIsSeenEndOnInSpace(t *testing.T) {
	const foreshortened = 0.25 // of its length is the least that shows
	for _, one := range append(fixtures.Starts(), fixtures.Published()...) {
		s, err := sheet.Parse([]byte(one.Answered()))
		if err != nil {
			t.Fatal(err)
		}
		p, _ := problem.Read(s)
		scenes := []scene.Scene{scene.System(p, nil, scene.Options{})}
		for i := range p.CutFree() {
			scenes = append(scenes, scene.Free(p, nil, i))
		}
		for _, whole := range scenes {
			v := oblique(&whole)
			for _, thing := range whole.Things {
				ways := []r3.Vec{}
				if thing.Kind == scene.Force {
					ways = append(ways, thing.Along)
				}
				for from, to := range thing.Lines() {
					ways = append(ways, r3.Unit(r3.Sub(to, from)))
				}
				for _, way := range ways {
					if shows := v.project(way).Len(); shows < foreshortened {
						t.Errorf("%s, %s: of %s shows %.2f", one.Name, whole.Title, thing.Ref.Row, shows)
					}
				}
			}
		}
	}
}

// An arrow behind another of the same sense begins where that ends, so that the label of
// the first stands beside it.
func TestTheLabelsOfTwoWeightsAtAPoint(t *testing.T) {
	one, _ := fixtures.Get("balloon")
	s, err := sheet.Parse([]byte(one.Answered()))
	if err != nil {
		t.Fatal(err)
	}
	p, _ := problem.Read(s)
	free := scene.Free(p, nil, 0)
	var first, second float64 // how far down the arrows end
	var low, high float64
	d := Free(&free, "D", false)
	for i, thing := range free.Things {
		for _, shape := range d.Shapes {
			if shape.Of == i+1 && shape.Head && thing.Ref.Row == "envelope" {
				first = shape.Pts[0].Y
			} else if shape.Of == i+1 && shape.Head && thing.Ref.Row == "instruments" {
				second = shape.Pts[0].Y
			}
		}
		for _, text := range d.Texts {
			if text.Of == i+1 && thing.Ref.Row == "envelope" {
				low = text.Box().Low.Y
			} else if text.Of == i+1 && thing.Ref.Row == "instruments" {
				high = text.Box().Low.Y
			}
		}
	}
	if !(low < first && first < second && first < high) {
		t.Errorf("the arrows end at %.0f and %.0f, their labels begin at %.0f and %.0f", first, second, low, high)
	}
}

// Dimensions lie below all arrows and their names, that of a body's weight as well.
func TestDimensionsLieBelowTheWeights(t *testing.T) {
	for _, name := range []string{"beam-on-supports", "ladder-on-rough-floor", "crate-tips-or-slips"} {
		one, _ := fixtures.Get(name)
		s, err := sheet.Parse([]byte(one.Answered()))
		if err != nil {
			t.Fatal(err)
		}
		p, _ := problem.Read(s)
		whole := scene.System(p, nil, scene.Options{Dimensions: true})
		d := System(&whole)
		line := 0.0
		for _, shape := range d.Shapes {
			if shape.Line == drawing.Faint && shape.Of == 0 && len(shape.Pts) == 2 && shape.Pts[0].Y == shape.Pts[1].Y {
				line = math.Max(line, shape.Pts[0].Y)
			}
		}
		for _, text := range d.Texts {
			if text.Tone == drawing.Load && text.Box().High.Y > line {
				t.Errorf("%s: %q stands below the dimensions", name, drawing.Plain(text.Runs))
			}
		}
	}
}

// No arrow of a force lies on another, wherever both act.
func TestNoArrowLiesOnAnother(t *testing.T) {
	for _, name := range []string{"post-with-pulley", "crate-tips-or-slips", "door-in-the-wind"} {
		one, _ := fixtures.Get(name)
		s, err := sheet.Parse([]byte(one.Answered()))
		if err != nil {
			t.Fatal(err)
		}
		p, _ := problem.Read(s)
		for i := range p.CutFree() {
			free := scene.Free(p, statics.Solve(p), i)
			var arrows []drawing.Shape // the shafts
			d := Free(&free, "", true)
			for _, shape := range d.Shapes {
				if shape.Of > 0 && free.Things[shape.Of-1].Kind == scene.Force && len(shape.Pts) == 2 && (shape.Line == drawing.Load || shape.Line == drawing.Found) {
					arrows = append(arrows, shape)
				}
			}
			for k, a := range arrows {
				for _, b := range arrows[:k] {
					mid, u := b.Pts[0].Add(b.Pts[1]).Scale(0.5), a.Pts[1].Sub(a.Pts[0])
					along, off := mid.Sub(a.Pts[0]).Dot(u.Unit()), mid.Sub(a.Pts[0]).Dot(u.Unit().Perp())
					parallel := math.Abs(b.Pts[1].Sub(b.Pts[0]).Unit().Dot(u.Unit())) > 0.99
					if parallel && math.Abs(off) < 2 && along > 0 && along < u.Len() {
						t.Errorf("%s, %s: the arrows of %s and %s lie on one another", name, p.Bodies[i].Name, free.Things[a.Of-1].Ref.Row, free.Things[b.Of-1].Ref.Row)
					}
				}
			}
		}
	}
}

// Without colours loads are told from what is sought: the heads of the latter are hollow, on
// paper and on a screen.
func TestLoadsAreToldWithoutColours(t *testing.T) {
	figures(t, func(name string, d drawing.Drawing) {
		for _, s := range d.Shapes {
			if s.Head && (s.Fill == drawing.Found || s.Line == drawing.Load) {
				t.Fatalf("%s: a head is filled with %v, in a line %v", name, s.Fill, s.Line)
			}
		}
	})
	one, _ := fixtures.Get("beam-on-supports")
	s, err := sheet.Parse([]byte(one.Text))
	if err != nil {
		t.Fatal(err)
	}
	p, _ := problem.Read(s)
	whole := scene.System(p, statics.Solve(p), scene.Options{Reactions: true})
	screen := Medium{Width: 120, Height: 80, Point: 0.5, Fine: 1.5, Bounded: true, Measure: func(runs []drawing.Run, _ bool) (float64, float64, float64) {
		return 2 * float64(len(drawing.Plain(runs))), 4, 0
	}}
	heads := map[drawing.Tone]int{}
	for _, shape := range Set(&whole, Front(&whole), screen).Shapes {
		if shape.Head {
			heads[shape.Fill]++
		}
	}
	if heads[drawing.Load] != 2 || heads[drawing.Paper] != 3 {
		t.Errorf("on a screen %d heads are filled and %d hollow, want 2 and 3", heads[drawing.Load], heads[drawing.Paper])
	}
}

// No name stands so far from what it names that its leader crosses the figure.
func TestLeadersAreShort(t *testing.T) {
	const long = 54.0 // points: three quarters of an inch
	figures(t, func(name string, d drawing.Drawing) {
		for _, s := range d.Shapes {
			if s.Line != drawing.Faint || s.Of != 0 || len(s.Pts) != 2 || s.Pts[0].X == s.Pts[1].X || s.Pts[0].Y == s.Pts[1].Y { // level and upright are those of dimensions
				continue
			}
			if l := s.Pts[1].Sub(s.Pts[0]).Len(); l > long {
				t.Errorf("%s: a leader of %.0f points", name, l)
			}
		}
	})
}

// What a plate covers of a member is dashed, and what stands in front of it is not.
func TestWhatAPlateCovers(t *testing.T) {
	for _, side := range []string{"-1", "1"} {
		s, err := sheet.Parse([]byte(`
[points]
A = { at = "0, 0, 0", on = "plate" }
B = { at = "4, 0, 0", on = "plate" }
C = { at = "4, 0, 4", on = "plate" }
D = { at = "0, 0, 4", on = "plate" }
K = { at = "2, 0, 2", on = "plate" }
E = "3, ` + side + `, 1"
[bodies]
plate = { outline = "A B C D" }
[lines]
T = { kind = "cable", path = "K E" }
`))
		if err != nil {
			t.Fatal(err)
		}
		p, _ := problem.Read(s)
		whole := scene.System(p, nil, scene.Options{})
		d := Set(&whole, Front(&whole), Paper(planeWidth, planeHeight))
		seen, hidden := 0, 0
		for _, shape := range d.Shapes {
			switch of := shape.Of - 1; {
			case of < 0 || whole.Things[of].Ref.Row != "T" || shape.Line != drawing.Dark:
			case shape.Dashed:
				hidden++
			default:
				seen++
			}
		}
		// Front looks along +y: what has a smaller y stands in front.
		if behind := side == "1"; hidden > 0 != behind {
			t.Errorf("a cable to y = %s has %d dashed parts and %d others", side, hidden, seen)
		}
	}
}
