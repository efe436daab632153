package picture

import (
	"fmt"
	"image"
	"math"
	"strings"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"trivet/fixtures"
	"trivet/mechanics/figure"
	"trivet/mechanics/problem"
	"trivet/mechanics/scene"
	"trivet/mechanics/sheet"
	"trivet/mechanics/statics"
	"trivet/tui/grid"
)

// shown is the scene of a sheet, solved.
func shown(t testing.TB, text string) scene.Scene {
	t.Helper()
	s, err := sheet.Parse([]byte(text))
	if err != nil {
		t.Fatal(err)
	}
	p, _ := problem.Read(s)
	return scene.System(p, statics.Solve(p), scene.Options{Reactions: true})
}

func fixture(t testing.TB, name string) scene.Scene {
	t.Helper()
	one, ok := fixtures.Get(name)
	if !ok {
		t.Fatalf("no sheet %s", name)
	}
	return shown(t, one.Text)
}

// view is that in which the workbench starts.
func view(s *scene.Scene) figure.View { return figure.Space(s, -math.Pi/6, math.Pi/9) }

func draw(w, h int, s *scene.Scene, o Options) string {
	g := grid.New(w, h)
	Draw(g.All(), s, view(s), o)
	lines := strings.Split(g.Render(nil), "\n")
	for i := range lines {
		lines[i] = strings.TrimRight(lines[i], " ")
	}
	return strings.Join(lines, "\n")
}

// A pin and a roller can be told apart, reactions are named, and a load and an unknown by
// more than colour.
func TestWhatAPictureShows(t *testing.T) {
	for _, c := range []struct {
		name  string
		ascii bool
		want  []string
	}{
		{"beam-on-supports", false, []string{"Ax", "Ay", "B", "P", "Wbeam"}},
		{"beam-on-supports", true, []string{`/_\`, "(_)", "///", "{", "Ay", "v", "Wbeam"}},
		{"traffic-light", false, []string{"T1 (T)", "T2 (T)", "light"}},
		{"camera-on-four-wires", false, []string{"T1", "camera"}},
		{"flap-on-torsion-spring", true, []string{"<-.", "--'"}},
		{"sluice-gate", true, []string{"V", "water"}},
	} {
		s := fixture(t, c.name)
		got := draw(58, 20, &s, Options{ASCII: c.ascii, Zoom: 1})
		for _, piece := range c.want {
			if !strings.Contains(got, piece) {
				t.Errorf("%s: no %q in\n%s", c.name, piece, got)
			}
		}
		for _, r := range got {
			if c.ascii && r >= 0x80 {
				t.Fatalf("%s: %q is not ASCII in\n%s", c.name, r, got)
			}
		}
	}
	s := fixture(t, "frame-of-two-members")
	s = scene.System(nil, nil, scene.Options{})
	if got := strings.TrimSpace(draw(40, 12, &s, Options{})); got != "" {
		t.Errorf("nothing is drawn as\n%s", got)
	}
}

func TestNothingOutsideAndNoPanic(t *testing.T) {
	bad := fixture(t, "planar-truss")
	for _, v := range []r3.Vec{{X: math.NaN()}, {X: math.Inf(1)}, {X: -1e300}, {Y: 1e300}} {
		for k := scene.Outline; k <= scene.Name; k++ {
			bad.Things = append(bad.Things, scene.Thing{Kind: k, At: []r3.Vec{v, {X: 1}, {Y: 1}}, Along: r3.Vec{Y: 1}, Heights: []float64{1, 0, math.NaN()},
				Symbol: &scene.Symbol{Half: 5}, Label: scene.Label{Runs: scene.Plain("x"), Short: scene.Plain("x")}})
		}
	}
	for _, ascii := range []bool{true, false} {
		for _, zoom := range []float64{0, 1, 100, 1e9} {
			for w := range 40 {
				g := grid.New(w+2, w/2+2)
				g.All().Fill('#', 0)
				in := g.All().In(image.Rect(1, 1, w+1, w/2+1))
				in.Fill(' ', 0)
				Draw(in, &bad, view(&bad), Options{ASCII: ascii, Zoom: zoom})
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

// No two labels of any sheet run into each other, and all unknown forces have theirs where
// there are few.
func TestLabelsOfAllSheets(t *testing.T) {
	for _, one := range append(fixtures.Starts(), fixtures.Published()...) {
		s := shown(t, one.Text)
		for _, size := range [][2]int{{30, 18}, {58, 20}, {61, 55}} {
			p := &pen{c: grid.New(size[0], size[1]).All(), o: Options{Zoom: 1}, scene: &s}
			p.d = figure.Set(&s, view(&s), p.medium())
			taken := map[image.Point]string{}
			for _, text := range p.d.Texts {
				words := p.text(text.Runs)
				x, y := int(text.At.X/dotsX+0.5), int(text.At.Y/dotsY+0.5)
				for dx := range grid.Width(words) {
					at := image.Pt(x+dx, y)
					if other, ok := taken[at]; ok || at.X < 0 || at.X >= size[0] || at.Y < 0 || at.Y >= size[1] {
						t.Errorf("%s at %dx%d: %q lies on %q or outside", one.Name, size[0], size[1], words, other)
						break
					}
					taken[at] = words
				}
			}
			if few := 12; len(s.Things) < 3*few && size[0] > 58 && p.d.LeftOut() != "" {
				t.Errorf("%s at %dx%d: %s", one.Name, size[0], size[1], p.d.LeftOut())
			}
		}
	}
}

func TestTheSelectedRowHasItsLabel(t *testing.T) {
	s := fixture(t, "road-sign-truss")
	for i := range s.Things {
		if thing := &s.Things[i]; thing.Kind.Member() {
			o := Options{Zoom: 1, On: thing.Ref}
			if got := draw(40, 12, &s, o); !strings.Contains(got, "["+thing.Ref.Row) {
				t.Errorf("%s is selected and has no label in\n%s", thing.Ref.Row, got)
			}
		}
	}
	if got := draw(30, 9, &s, Options{Zoom: 1}); !strings.Contains(got, "names left out") {
		t.Errorf("a crowded picture does not say what it leaves out:\n%s", got)
	}
}

// What the mouse finds is what is drawn or named there.
func TestHit(t *testing.T) {
	s := fixture(t, "traffic-light")
	const w, h = 58, 20
	o := Options{Zoom: 1}
	lines := strings.Split(draw(w, h, &s, o), "\n")
	for _, c := range []struct {
		text string
		want sheet.Ref
	}{{"T1 (T)", sheet.Ref{Table: "lines", Row: "T1"}}, {"light", sheet.Ref{Table: "lines", Row: "light"}}} {
		for y, l := range lines {
			if i := strings.Index(l, c.text); i >= 0 {
				x := len([]rune(l[:i]))
				if ref, ok := Hit(w, h, &s, view(&s), o, x+1, y); !ok || ref.Row != c.want.Row || ref.Table != c.want.Table {
					t.Errorf("on %q the mouse finds %v", c.text, ref)
				}
			}
		}
	}
	if ref, ok := Hit(w, h, &s, view(&s), o, 0, h-1); ok {
		t.Errorf("in an empty corner the mouse finds %v", ref)
	}
}

// The picture of 300 members, at the sizes of a picture on screens of 120 by 36 and of 200
// by 60; and of three cables.
func BenchmarkPicture(b *testing.B) {
	var truss strings.Builder
	truss.WriteString("up = \"+z\"\n[points]\n")
	const bays = 25 // of a mast in space, each of four legs, four rungs and four diagonals
	for k := range bays + 1 {
		for c := range 4 {
			sin, cos := math.Sincos(math.Pi / 2 * float64(c))
			fmt.Fprintf(&truss, "P%d%d = { at = \"%.3f, %.3f, %.3f\", on = \"particle\" }\n", k, c, cos, sin, 1.5*float64(k))
		}
	}
	truss.WriteString("[lines]\n")
	for k := range bays {
		for c := range 4 {
			for i, to := range [3][2]int{{k + 1, c}, {k + 1, (c + 1) % 4}, {k, (c + 1) % 4}} {
				fmt.Fprintf(&truss, "M%d%d%d = { kind = \"link\", path = \"P%d%d P%d%d\" }\n", k, c, i, k, c, to[0], to[1])
			}
		}
	}
	large, small := shown(b, truss.String()), fixture(b, "hanging-load")
	for _, c := range []struct {
		name  string
		s     *scene.Scene
		w, h  int
		ascii bool
	}{{"300", &large, 56, 15, false}, {"300", &large, 61, 55, false}, {"300 in characters", &large, 61, 55, true}, {"3", &small, 56, 15, false}} {
		b.Run(fmt.Sprintf("%s/%dx%d", c.name, c.w, c.h), func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				Draw(grid.New(c.w, c.h).All(), c.s, view(c.s), Options{ASCII: c.ascii, Zoom: 1})
			}
		})
	}
}
