package scene_test

import (
	"slices"
	"strings"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"trivet/mechanics/problem"
	"trivet/mechanics/scene"
	"trivet/mechanics/sheet"
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
