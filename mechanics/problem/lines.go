package problem

import (
	"strconv"
	"strings"

	"gonum.org/v1/gonum/spatial/r3"

	"trivet/mechanics/diag"
	"trivet/mechanics/say"
)

// coincident is how near two points may be, relative to the coordinates they
// are made of, before the line between them has no direction worth the name:
// the difference of two coordinates is then rounding only (2^-52 each).
const coincident = 1e-14

// readMagnitudes comes after all geometry (a spring's needs its length) and goes
// in the order of the lines, which is the order of first use of the unknowns.
func (r *reading) readMagnitudes() {
	for i := range r.p.Lines {
		ok := r.magnitude(i)
		r.p.Lines[i].OK = r.p.Lines[i].OK && ok
	}
	for i := range r.p.Lines {
		if r.p.Lines[i].OK {
			r.acts(i)
		}
	}
}

// lineGeometry reads a line's kind, path or direction, and limit.
func (r *reading) lineGeometry(i int) {
	l, w := &r.p.Lines[i], r.rows[r.p.Lines[i].Ref]
	kind, ok := w.kind("line", lineWords, spelled(lineWords))
	switch l.Kind = Kind(kind); {
	case !ok:
	case l.Belt == nil:
		l.OK = r.linePath(l, w)
		w.limit(&l.Limit)
	case i == l.Belt.Lines[0]:
		r.belt(i, w)
	}
}

// lineKey is a key of a line in a message, and quotedKey the same where it is spoken of.
func lineKey(name string) string   { return diag.Key("lines", name) }
func quotedKey(name string) string { return `"` + lineKey(name) + `"` }

// linePath reads path = "T A", or at with along or components.
func (r *reading) linePath(l *Line, w row) bool {
	path, at, along := w.cell("path"), w.cell("at"), w.cell("along")
	words := Fields(at.text)
	switch pair := r.particlePair(path.text); {
	case path.has && !along.has:
		return r.throughPoints(l, path, Fields(path.text))
	case path.has && pair != nil && (l.Kind == Force || l.Kind == Contact):
		l.Path = pair
		return r.p.Points[pair[0]].OK && r.p.Points[pair[1]].OK && r.alongDirection(l, w, along)
	case path.has:
		return along.fail("the line "+l.Name+" has both "+quotedKey("path")+" and "+quotedKey("along"), "remove one of them")
	case !at.has:
		hint := lineKey("at") + " T and " + lineKey("along") + " +x"
		if l.Kind.Info().Path {
			hint = lineKey("path") + " T A, or " + hint
		}
		return w.fail("the line "+l.Name+" has no point of application", hint)
	case len(words) == 2 && r.isPoint(words[0].Text) && r.isPoint(words[1].Text):
		hint := lineKey("path") + " " + at.word()
		if along.has {
			hint = lineKey("at") + " " + words[0].Text
		}
		return at.fail("the line "+l.Name+" acts at one point, but "+at.word()+" is two", hint)
	}
	point := 0
	if !at.point(&point) {
		return false
	}
	l.Path = []int{point}
	return w.cell("components").has || r.alongDirection(l, w, along)
}

// particlePair gives the places of the two particles that a path names, between which a
// force may have any direction: they have no size, and no moments.
func (r *reading) particlePair(path string) (pair []int) {
	for _, w := range Fields(path) {
		if !r.isParticle(w.Text) {
			return nil
		}
		b, _ := r.find(ABody, w.Text)
		pair = append(pair, r.p.Bodies[b].Points[0])
	}
	if len(pair) != 2 || pair[0] == pair[1] {
		return nil
	}
	return pair
}

func (r *reading) alongDirection(l *Line, w row, along cell) bool {
	leg := Leg{From: l.Path[0], To: -1, U: r3.Scale(-1, r.p.Up)}
	if along.has {
		leg.Typed = along.typedDirection()
	}
	if along.has && !along.direction(&leg.U) || l.Kind != Weight && !w.needs(along, "the line "+l.Name+" has no direction", lineKey("along")+" +x, (3, 0, -4) or dir(A, B)") {
		return false
	}
	leg.R = leg.U
	l.Legs = []Leg{leg}
	return true
}

// throughPoints reads the points that words of a cell name as the path of a line.
func (r *reading) throughPoints(l *Line, c cell, words []Token) bool {
	path, ok := c.pointsNamed(words)
	l.Path = append(l.Path, path...)
	switch {
	case !ok:
		return false
	case len(words) < 2:
		return c.fail(quotedKey("path")+" needs at least two points", "the form T A")
	case len(words) > 2 && !l.Kind.Info().Path:
		return c.failAt(diag.Between(words[2].Start, words[len(words)-1].End), AKind(l.Kind.String())+" is straight, so its path has two points, not "+say.Number(len(words)),
			lineKey("path")+" "+c.text[words[0].Start:words[1].End])
	}
	for k := 1; k < len(l.Path); k++ {
		span, name := diag.Between(words[k-1].Start, words[k].End), r.p.Points[l.Path[k]].Name
		if l.Path[k-1] == l.Path[k] {
			return c.failAt(span, "the line "+l.Name+" runs from "+name+" to "+name+", so its length is zero", "the point at its other end")
		}
		leg, ok := c.leg(span, l.Path[k-1], l.Path[k], "the line "+l.Name+" has no direction")
		if !ok {
			return false
		}
		l.Legs = append(l.Legs, leg)
	}
	return true
}

// leg is the straight way from a point to another one, which has to be at another place.
func (c cell) leg(span diag.Span, from, to int, so string) (leg Leg, ok bool) {
	a, b := &c.r.p.Points[from], &c.r.p.Points[to]
	size := max(largest(a.At), largest(b.At))
	leg = Leg{From: from, To: to, R: snapped(r3.Sub(b.At, a.At), size)} // without the rounding that coordinates leave
	leg.Length = r3.Norm(leg.R)
	leg.U, ok = unit(leg.R)
	if ok = ok && leg.Length > coincident*size; !ok {
		c.failAt(span, "the points "+a.Name+" and "+b.Name+" coincide, so "+so, "move one of them")
	}
	return leg, ok
}

// Token is a word of a cell, with its place in the cell's text.
type Token struct {
	diag.Span
	Text string
}

// fields gives the words of a path: separated by spaces or commas.
func Fields(text string) []Token {
	return Split(text, func(c rune) bool { return c == ' ' || c == '\t' || c == ',' })
}

// split gives what stands between separators, of which it asks from left to right.
func Split(text string, separates func(rune) bool) (words []Token) {
	start := -1
	end := func(i int) {
		if start >= 0 {
			words = append(words, Token{diag.Between(start, i), text[start:i]})
			start = -1
		}
	}
	for i, c := range text {
		if separates(c) {
			end(i)
		} else if start < 0 {
			start = i
		}
	}
	end(len(text))
	return words
}

// wordIn is where a word stands in a list of names.
func wordIn(text, name string) diag.Span {
	for _, w := range Fields(text) {
		if w.Text == name {
			return w.Span
		}
	}
	return diag.Whole(text)
}

// point finds the point that a cell names.
func (c cell) point(to *int) bool {
	i, ok := c.pointNamed(Token{diag.Whole(c.text), c.text})
	if ok {
		*to = i
	}
	return ok
}

// pointNamed finds a point that a cell names. A point whose own cell does not
// read makes the line unreadable too, without a second error.
func (c cell) pointNamed(w Token) (int, bool) {
	name := strings.TrimSpace(w.Text)
	if i, ok := c.r.find(APoint, name); ok {
		return i, c.r.p.Points[i].OK
	}
	if _, kept := c.r.s.Table("points").Row(name); kept {
		return 0, c.failAt(w.Span, "the point "+name+" is ignored because its name begins with x-", "another name for it")
	}
	return 0, c.failAt(w.Span, "there is no point "+strconv.Quote(name), suggestion(name, c.r.p.Names(APoint), "add it to the points"))
}

// pointsNamed finds the points that words of a cell name; false where one does not read.
func (c cell) pointsNamed(words []Token) (path []int, ok bool) {
	ok = true
	for _, w := range words {
		i, found := c.pointNamed(w)
		path, ok = append(path, i), ok && found
	}
	return path, ok
}
