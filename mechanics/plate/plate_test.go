package plate

import (
	"math"
	"strings"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"trivet/fixtures"
	"trivet/mechanics/figure"
	"trivet/mechanics/ink"
	"trivet/mechanics/problem"
	"trivet/mechanics/sheet"
	"trivet/mechanics/statics"
)

func solved(t testing.TB, text string) *statics.Solution {
	t.Helper()
	sh, err := sheet.Parse([]byte(text))
	if err != nil {
		t.Fatal(err)
	}
	p, errs := problem.Read(sh)
	if len(errs) > 0 {
		t.Fatal(errs[0])
	}
	return statics.Solve(p)
}

// views are all sketches of a sheet's figures, finished.
func views(s *statics.Solution) map[string]*sketch {
	p := s.Problem
	all := map[string]*sketch{}
	put := func(name string, v figure.View, draw func(*sketch)) {
		low, high := p.Extent()
		k := 1.0
		if n := r3.Norm(r3.Sub(high, low)); n > 0 {
			k = 250 / n
		}
		sk := newSketch(p, s, v, k)
		draw(sk)
		sk.finish()
		all[name] = sk
	}
	put("front", figure.Front(p), func(sk *sketch) { sk.system(Options{Dimensions: true}) })
	put("side", figure.Side(p), func(sk *sketch) { sk.system(Options{Dimensions: true}) })
	put("space", Oblique(p), func(sk *sketch) { sk.system(Options{}) })
	for i := range p.Bodies {
		put("free "+p.Bodies[i].Name, Oblique(p), func(sk *sketch) { sk.freeBody(i) })
	}
	return all
}

// No two labels of any figure meet, none lies far outside, and few lie on a
// line: where members meet at a point there may be no other place.
func TestLabelsKeepClear(t *testing.T) {
	labels, crossed := 0, 0
	for _, f := range append(fixtures.Starts(), fixtures.Published()...) {
		for name, sk := range views(solved(t, f.Text)) {
			var boxes []ink.Box
			for _, text := range sk.d.Texts {
				b := text.Box()
				for k, o := range boxes {
					if b.Meets(o) {
						t.Errorf("%s, %s: %q lies on %q", f.Name, name, ink.Plain(text.Runs), ink.Plain(sk.d.Texts[k].Runs))
					}
				}
				boxes = append(boxes, b)
				labels++
				for _, g := range sk.segs {
					if !g.soft && b.Crossed(g.a, g.b) > 1 {
						crossed++
						break
					}
				}
			}
		}
	}
	const share = 0.02
	if float64(crossed) > share*float64(labels) {
		t.Errorf("%d of %d labels lie on a line", crossed, labels)
	}
	t.Logf("%d labels, %d on a line", labels, crossed)
}

func TestEveryForceOfABodyIsNamed(t *testing.T) {
	for _, f := range append(fixtures.Starts(), fixtures.Published()...) {
		s := solved(t, f.Text)
		for i, b := range s.Problem.Bodies {
			d := FreeBody(s.Problem, s, i)
			var all strings.Builder
			for _, text := range d.Texts {
				all.WriteString(ink.Plain(text.Runs) + "\n")
			}
			for _, l := range s.Problem.Lines {
				for _, a := range l.Acts {
					unknown := len(a.Terms) > 0 && len(l.Magnitude.Terms) == 0 // components, each by its own name
					if a.Body == i && !unknown && r3.Norm(a.Const)+float64(len(a.Terms)) > 0 && !strings.Contains(all.String(), l.Name) {
						t.Errorf("%s: %s is not in the free-body diagram of %s:\n%s", f.Name, l.Name, b.Name, all.String())
					}
				}
			}
			for _, j := range s.Problem.Joints {
				for _, a := range j.Acts {
					for _, term := range a.Terms {
						if name := s.Problem.Unknowns[term.Unknown].Name; a.Body == i && !strings.Contains(all.String(), name) {
							t.Errorf("%s: %s is not in the free-body diagram of %s", f.Name, name, b.Name)
						}
					}
				}
			}
		}
	}
}

func TestFiguresFitThePaper(t *testing.T) {
	for _, f := range append(fixtures.Starts(), fixtures.Published()...) {
		s := solved(t, f.Text)
		d := System(s.Problem, s, Options{Dimensions: true})
		b := d.Bounds()
		if d.Width > 700 || d.Height > 420 || d.Width < 20 || d.Height < 20 {
			t.Errorf("%s: the figure is %.0f × %.0f points", f.Name, d.Width, d.Height)
		}
		if b.Low.X < -0.01 || b.Low.Y < -0.01 || b.High.X > d.Width+0.01 || b.High.Y > d.Height+0.01 {
			t.Errorf("%s: something lies outside the figure: %v in %.0f × %.0f", f.Name, b, d.Width, d.Height)
		}
	}
}

// A few numbers that no figure may be made of.
func TestOddProblemsDraw(t *testing.T) {
	for _, text := range []string{
		"[points]\nA = { at = \"0, 0, 0\", on = \"particle\" }\n[lines]\nW = { kind = \"weight\", at = \"A\", magnitude = \"1 N\" }\n",
		"[points]\nA = { at = \"1, 0, 0\", on = \"particle\" }\nB = \"1, 0, 0\"\n[lines]\nF = { kind = \"force\", at = \"A\", components = \"(0, 0, 0) N\" }\n",
		"plane = \"xy\"\n[points]\nA = { at = \"1e6, 1e6\", on = \"particle\" }\nB = \"1e6, 1000001\"\n[lines]\nT = { kind = \"cable\", path = \"A B\" }\n",
	} {
		s := solved(t, text)
		d := System(s.Problem, s, Options{Dimensions: true})
		for _, shape := range d.Shapes {
			for _, q := range shape.Pts {
				if math.IsNaN(q.X+q.Y) || math.IsInf(q.X+q.Y, 0) {
					t.Fatalf("a place is %v in\n%s", q, text)
				}
			}
		}
	}
}

func TestSymbols(t *testing.T) {
	for _, c := range []struct{ name, base, low string }{{"T1", "T", "1"}, {"load", "load", ""}, {"TA", "TA", ""}, {"12", "12", ""}, {"α2", "α", "2"}} {
		runs := Symbol(c.name)
		low := ""
		if len(runs) > 1 {
			low = runs[1].Text
		}
		if runs[0].Text != c.base || low != c.low {
			t.Errorf("%s is %q with %q, want %q with %q", c.name, runs[0].Text, low, c.base, c.low)
		}
	}
}

func BenchmarkFigureInSpace(b *testing.B) {
	f, _ := fixtures.Get("boom-and-two-cables")
	s := solved(b, f.Text)
	for b.Loop() {
		System(s.Problem, s, Options{Dimensions: true})
	}
}

// The free body of either of two bodies in contact shows the push on it: the same figure
// as where the push is typed on that body alone.
func TestAContactStandsOnBothFreeBodies(t *testing.T) {
	sheet := func(line string) *statics.Solution {
		return solved(t, strings.Replace(`plane = "xy"
[points]
a = { at = "0, 0", on = "left" }
b = { at = "2, 0", on = "right" }
[lines]
LINE
P = { kind = "force", at = "a", along = "+x", magnitude = "50 N" }
Q = { kind = "force", at = "b", along = "-x", magnitude = "50 N" }
`, "LINE", line, 1))
	}
	for _, c := range []struct{ both, left, right string }{
		{`N = { kind = "contact", path = "a b" }`, `N = { kind = "contact", at = "a", along = "-x" }`, `N = { kind = "contact", at = "b", along = "+x" }`},
		{`N = { kind = "force", path = "a b" }`, `N = { kind = "force", at = "a", along = "+x" }`, `N = { kind = "force", at = "b", along = "-x" }`},
	} {
		for body, alone := range []string{c.left, c.right} {
			both, one := sheet(c.both), sheet(alone+"\n"+strings.Replace([]string{c.right, c.left}[body], "N = ", "M = ", 1)) // M holds the other one
			got, want := FreeBody(both.Problem, both, body), FreeBody(one.Problem, one, body)
			if ink.InlineSVG(got) != ink.InlineSVG(want) {
				t.Errorf("%s: the free body of %s is another than with %s", c.both, both.Problem.Bodies[body].Name, alone)
			}
		}
	}
}
