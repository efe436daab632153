package scene_test

import (
	"slices"
	"strings"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"trivet/mechanics/problem"
	"trivet/mechanics/scene"
	"trivet/mechanics/sheet"
	"trivet/mechanics/statics"
)

// A body with an outline is drawn as one polygon round those points, in their order; one
// that does not read is said, and the body is drawn as without it.
func TestOutlineOfABody(t *testing.T) {
	const text = `plane = "xy"
up = "+y"
[points]
A = { at = "0 m, 0 m", on = "plate" }
B = { at = "2 m, 0 m", on = "plate" }
C = { at = "2 m, 1 m", on = "plate" }
D = "1 m, 1.5 m"
[bodies]
plate = { outline = "A B C D" }
[joints]
A = { kind = "fixed" }
`
	for _, c := range []struct {
		outline, message string
		want             []r3.Vec
	}{
		{"A B C D", "", []r3.Vec{{}, {X: 2}, {X: 2, Y: 1}, {X: 1, Y: 1.5}}},
		{"A C", "an outline needs at least three points. Try: the form A B C", nil},
		{"A B Q", "there is no point \"Q\". Try: add it to the points", nil},
	} {
		s, err := sheet.Parse([]byte(strings.Replace(text, "A B C D", c.outline, 1)))
		if err != nil {
			t.Fatal(err)
		}
		p, errs := problem.Read(s)
		message := ""
		for _, e := range errs {
			message += e.Text()
			if e.Blocks() {
				t.Errorf("%s: the solution waits for what is only drawn", c.outline)
			}
		}
		if message != c.message {
			t.Errorf("%s: %q, want %q", c.outline, message, c.message)
		}
		var got []r3.Vec
		for _, thing := range scene.System(p, nil, scene.Options{}).Things {
			if thing.Kind == scene.Outline {
				got = thing.At
			}
		}
		if !slices.Equal(got, c.want) {
			t.Errorf("%s: drawn through %v, want %v", c.outline, got, c.want)
		}
	}
}

// Couples that act on one body about one axis stand beside one another.
func TestCouplesStandApart(t *testing.T) {
	sheets(t, func(name string, p *problem.Problem, s *statics.Solution) {
		for body := range p.CutFree() {
			var drawn []scene.Thing
			for _, thing := range scene.Free(p, s, body).Things {
				if thing.Kind != scene.Couple || thing.Ref.Table != "couples" {
					continue
				}
				for _, o := range drawn {
					parallel := r3.Norm(r3.Cross(o.Along, thing.Along)) < scene.Flat
					if parallel && r3.Norm(r3.Sub(o.At[0], thing.At[0])) < scene.Flat {
						t.Errorf("%s: the couples %s and %s stand at one place", name, o.Ref.Row, thing.Ref.Row)
					}
				}
				drawn = append(drawn, thing)
			}
		}
	})
}

// A bar rests with its outside on a surface or a roller, and is pinned by its axis.
func TestBarsRestOnSurfaces(t *testing.T) {
	p := read(t, `plane = "xy"
up = "+y"
[points]
A = { at = "0 m, 0 m", on = "ladder" }
B = { at = "3 m, 4 m", on = "ladder" }
C = { at = "1.5 m, 2 m", on = "ladder" }
[joints]
A = { kind = "rough-surface", normal = "+y", friction = "0.3" }
B = { kind = "rocker", normal = "-x" }
C = { kind = "roller", normal = "(-0.8, 0.6)" }
`)
	want := map[string]bool{"A": true, "B": false, "C": true}
	for _, thing := range scene.System(p, nil, scene.Options{}).Things {
		if thing.Kind == scene.Support && thing.Under != want[thing.Ref.Row] {
			t.Errorf("the ladder rests with its outside on %s: %v", thing.Ref.Row, thing.Under)
		}
	}
}
