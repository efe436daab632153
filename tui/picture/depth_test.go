package picture

import (
	"strings"
	"testing"

	"trivet/mechanics/figure"
	"trivet/mechanics/sheet"
)

// crossing is a level line and an upright one that stand so near to the reader.
func crossing(level, upright float64) figure.Figure {
	v := func(x, y float64) figure.Vec { return figure.Vec{X: x, Y: y} }
	return figure.Figure{
		Strokes: []figure.Stroke{
			{Kind: figure.Cable, Pts: []figure.Vec{v(-3, 0), v(3, 0)}, Ref: sheet.Ref{Row: "a"}, Near: [2]float64{level, level}},
			{Kind: figure.Cable, Pts: []figure.Vec{v(0, -1.5), v(0, 1.5)}, Ref: sheet.Ref{Row: "b"}, Near: [2]float64{upright, upright}},
		},
		Low: v(-3, -1.5), High: v(3, 1.5),
	}
}

func TestWhatIsInFrontBreaksWhatIsBehind(t *testing.T) {
	for _, c := range []struct {
		name           string
		ascii          bool
		level, upright float64
		want           string // where they cross
	}{
		{"the upright one in front", true, 0, 2, "....... | ......."},
		{"the level one in front", true, 2, 0, "-----------------"},
		{"neither", true, 1, 1, "--------|--------"},
		{"the upright one in front", false, 0, 2, "⠄⠄⠄⠄⠄⠄⠄ ⢸ ⠄⠄⠄⠄⠄⠄⠄"},
		{"the level one in front", false, 2, 0, "⠤⠤⠤⠤⠤⠤⠤⠤⠤⠤⠤⠤⠤⠤⠤⠤⠤"},
		{"neither", false, 1, 1, "⠤⠤⠤⠤⠤⠤⠤⠤⢼⠤⠤⠤⠤⠤⠤⠤⠤"},
	} {
		lines := strings.Split(draw(27, 11, crossing(c.level, c.upright), Options{ASCII: c.ascii}), "\n")
		if got := strings.TrimSpace(lines[5]); got != c.want {
			t.Errorf("%s: %q, want %q in\n%s", c.name, got, c.want, strings.Join(lines, "\n"))
		}
	}
}

// Lines that meet at a joint, and lines side by side, are whole.
func TestNoGapWithoutACrossing(t *testing.T) {
	v := func(x, y float64) figure.Vec { return figure.Vec{X: x, Y: y} }
	member := func(a, b figure.Vec, from, to float64) figure.Stroke {
		return figure.Stroke{Kind: figure.Cable, Pts: []figure.Vec{a, b}, Near: [2]float64{from, to}}
	}
	for name, strokes := range map[string][]figure.Stroke{
		"at a joint":   {member(v(0, 0), v(3, 1), 1, 5), member(v(0, 0), v(3, -1), 1, 0), member(v(0, 0), v(-3, 0), 1, 1)},
		"side by side": {member(v(-3, 0), v(3, 0), 0, 0), member(v(-3, 0.05), v(3, 0.05), 5, 5)},
	} {
		f := figure.Figure{Strokes: strokes, Low: v(-3, -1), High: v(3, 1)}
		p := &pen{}
		p.scale = 10
		p.deepen(f)
		if p.deep.span <= 0 {
			t.Fatalf("%s: the figure counts as flat", name)
		}
		for i, g := range p.gaps(f) {
			if len(g) > 0 {
				t.Errorf("%s: stroke %d is broken at %v", name, i, g)
			}
		}
	}
}

// A dashed line that is far is dotted in its dashes.
func TestDashedAndDotted(t *testing.T) {
	row := func(open, far bool) string {
		b := brush{open: open}
		var s strings.Builder
		for i := range 20 {
			s.WriteByte(map[bool]byte{true: ' ', false: '.'}[b.blank(i, far)])
		}
		return s.String()
	}
	for _, c := range []struct {
		open, far bool
		want      string
	}{
		{false, false, "...................."},
		{true, false, "....   ....   ....  "},
		{false, true, ". . . . . . . . . . "},
		{true, true, ". . . .   . . . .   "},
	} {
		if got := row(c.open, c.far); got != c.want {
			t.Errorf("open %v, far %v: %q, want %q", c.open, c.far, got, c.want)
		}
	}
}
