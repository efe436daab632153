package picture

import (
	"fmt"
	"image"
	"math"
	"slices"
	"strings"

	"trivet/mechanics/figure"
	"trivet/mechanics/sheet"
	"trivet/tui/grid"
	"trivet/tui/theme"
)

var plainMarks = strings.NewReplacer("⊙", "(.)", "⊗", "(x)")

// tag is a label on its way to a place.
type tag struct {
	text  string
	mark  string
	n     int // cells of it
	ref   sheet.Ref
	rank  figure.Rank
	own   int32       // the number of its row
	lit   bool        // the selected row, which is never left out for being in the way
	at    image.Point // the place that it names, or the middle of the line
	line  [2]figure.Vec
	runs  bool // along a line
	alone bool // the mark without the name, which stands at its line and nowhere else
}

// placed is a label in its place.
type placed struct {
	tag
	box    image.Rectangle
	leader bool // a line leads from it to its thing
}

// label writes the labels, the most important first: the selected row, unknown
// forces, known ones, bodies, points, dimensions.
func (p *pen) label(f figure.Figure) {
	tags := p.tags(f)
	spots := p.spots(f)
	at, noted := p.freest(len(tags))
	if p.place(tags, spots, noted); p.left > 0 && noted {
		p.note(at, tags, spots)
	}
	for _, l := range p.placed {
		if l.leader {
			p.lead(l)
		}
	}
	for _, l := range p.placed {
		p.c.Text(l.box.Min.X, l.box.Min.Y, p.ink(l.tag), l.text)
	}
}

// tags are the labels whose thing is in sight.
func (p *pen) tags(f figure.Figure) []tag {
	tags := make([]tag, 0, len(f.Labels))
	for _, l := range f.Labels {
		t := tag{text: l.Text, mark: l.Mark, ref: l.Ref, rank: l.Rank, lit: p.lit(l.Ref) && l.Rank != figure.OfSize}
		if l.Mark != "" {
			t.text += " " + l.Mark
		}
		if p.o.ASCII {
			t.text = plainMarks.Replace(t.text)
		}
		if t.lit {
			t.text = "[" + t.text + "]"
		}
		t.own, t.n = p.number(l.Ref), grid.Width(t.text)
		at := l.At
		if l.Along[0] != l.Along[1] {
			// Of a line that is zoomed in on, what is in sight has the label.
			x0, y0 := p.dot(l.Along[0])
			x1, y1 := p.dot(l.Along[1])
			c, ok := clip(x0, y0, x1, y1, float64(p.c.W()*dotsX)-0.01, float64(p.c.H()*dotsY)-0.01)
			if !ok {
				continue
			}
			cut := func(t float64) figure.Vec {
				return figure.Vec{X: l.Along[0].X + t*(l.Along[1].X-l.Along[0].X), Y: l.Along[0].Y + t*(l.Along[1].Y-l.Along[0].Y)}
			}
			t.line, t.runs = [2]figure.Vec{cut(c.t0), cut(c.t1)}, math.Hypot(c.x1-c.x0, c.y1-c.y0) > 2*dotsY
			if c.t0 > 0 || c.t1 < 1 {
				at = cut((c.t0 + c.t1) / 2)
			}
		}
		x, y, ok := p.cell(at)
		if !ok || t.n == 0 {
			continue
		}
		t.at = image.Pt(x, y)
		tags = append(tags, t)
	}
	slices.SortStableFunc(tags, func(a, b tag) int {
		if a.lit != b.lit {
			if a.lit {
				return -1
			}
			return 1
		}
		return int(a.rank - b.rank)
	})
	return tags
}

// spots are the cells of the points, by cell: the numbers of their rows.
func (p *pen) spots(f figure.Figure) map[image.Point]int32 {
	spots := make(map[image.Point]int32, len(f.Labels))
	for _, l := range f.Labels {
		if l.Rank == figure.OfPoint {
			if x, y, ok := p.cell(l.At); ok {
				spots[image.Pt(x, y)] = p.number(l.Ref)
			}
		}
	}
	return spots
}

// ink is the look of a label.
func (p *pen) ink(t tag) grid.Style {
	switch {
	case p.o.Stale:
		return theme.Stale
	case t.lit:
		return theme.Emphasis
	case t.ref.Table == "points":
		return theme.Point
	}
	return theme.Computed
}

// leftOut says how many labels have no room.
func leftOut(n int) string {
	if n == 1 {
		return "1 name left out"
	}
	return fmt.Sprintf("%d names left out", n)
}

// freest is the corner that hides least for the note that labels are left out, at
// most so many; ok is false where it has no room.
func (p *pen) freest(most int) (box image.Rectangle, ok bool) {
	n := len(leftOut(max(most, 2)))
	if n+2 > p.c.W() {
		return box, false
	}
	best, at := -1, image.Point{}
	for _, c := range [...]image.Point{{p.c.W() - n, p.c.H() - 1}, {0, p.c.H() - 1}, {p.c.W() - n, 0}, {0, 0}} {
		hides := 0
		for x := c.X; x < c.X+n; x++ {
			if k := c.Y*p.c.W() + x; p.taken[k] {
				hides += n
			} else if p.bits[k] != 0 {
				hides++
			}
		}
		if best < 0 || hides < best {
			best, at = hides, c
		}
	}
	return image.Rect(at.X, at.Y, at.X+n, at.Y+1), true
}

// note says in a corner how many labels have no room, and places the others
// round it.
func (p *pen) note(at image.Rectangle, tags []tag, spots map[image.Point]int32) {
	for x := at.Min.X; x < at.Max.X; x++ {
		p.taken[at.Min.Y*p.c.W()+x] = true
	}
	p.place(tags, spots, false)
	if p.left > 0 {
		text := leftOut(p.left)
		p.c.Text(at.Max.X-len(text), at.Min.Y, theme.Dim, text)
	}
}
