package plate

import (
	"math"
	"strings"
	"testing"

	"trivet/mechanics/ink"
)

// The drum of a belt bears its friction and its angle of contact, which a task may have
// nowhere else.
func TestDrumsShowWhatIsGiven(t *testing.T) {
	s := solved(t, `plane = "xy"
[points]
A = { at = "-2, -3", on = "particle" }
C = "0, 0"
B = { at = "2, -3", on = "particle" }
[lines]
R = { kind = "belt", path = "A C B", wrap = "1.5 turn", friction = "0.3" }
F = { kind = "weight", at = "A", magnitude = "100 N" }
G = { kind = "weight", at = "B", magnitude = "100 N" }
`)
	var all []string
	for _, text := range views(s)["front"].d.Texts {
		words := ""
		for _, run := range text.Runs {
			words += run.Text
		}
		all = append(all, words)
	}
	if got := strings.Join(all, "\n"); !strings.Contains(got, "μ = 0.3, β = 540 deg") {
		t.Errorf("the labels are\n%s", got)
	}
}

// The circle that a belt touches: where its parts meet, leave a drum apart, run parallel,
// or touch no circle.
func TestDrum(t *testing.T) {
	at := func(deg float64) ink.Vec {
		sin, cos := math.Sincos(deg * math.Pi / 180)
		return ink.Vec{X: cos, Y: sin}
	}
	for _, c := range []struct {
		p, q, u, v ink.Vec
		radius     float64
	}{
		{ink.Vec{}, ink.Vec{}, at(0), at(90), drumRadius},
		{at(180).Scale(20), at(0).Scale(20), at(90), at(-90), 20},
		{at(150).Scale(20), at(30).Scale(20), at(60), at(-60), 20},
		{at(150).Scale(20), at(30).Scale(20), at(90), at(-60), 0},
		{at(180).Scale(20), at(0).Scale(20), at(60), at(-120), 0},
	} {
		if _, radius := drum(c.p, c.q, c.u, c.v); math.Abs(radius-c.radius) > 1e-9 {
			t.Errorf("%v and %v along %v and %v: %v, want %v", c.p, c.q, c.u, c.v, radius, c.radius)
		}
	}
}
