package problem

import (
	"slices"
	"strconv"
	"strings"

	"gonum.org/v1/gonum/spatial/r3"

	"trivet/mechanics/diag"
	"trivet/mechanics/say"
	"trivet/mechanics/sheet"
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
	l, row := &r.p.Lines[i], r.lineRows[i]
	text, ref, ok := r.text("lines", row, "kind")
	if !ok {
		r.fail(l.Ref, diag.Span{}, "the line "+l.Name+" has no kind", kindNames())
		return
	}
	l.Kind, ok = kindOf(strings.TrimSpace(text))
	if !ok {
		r.fail(ref, whole(text), strconv.Quote(text)+" is not a kind of line", suggestion(text, spelled(lineWords), kindNames()))
		return
	}
	if l.Belt != nil {
		if i == l.Belt.Lines[0] {
			r.belt(i)
		}
		return
	}
	l.OK = r.linePath(i)
	l.Limit, _ = r.limit("lines", row)
}

// limit reads the capacity of a line or a joint, 0 where there is none that reads.
func (r *reading) limit(table string, row sheet.Row) (limit float64, ok bool) {
	q := r.quantity(table, row, "limit")
	if !q.has || !q.ok || !r.positive(q, "a limit", "the capacity, such as 5 kN") {
		return 0, !q.has
	}
	return q.value, true
}

func kindOf(s string) (Kind, bool) {
	i := wordOf(lineWords, s)
	return Kind(max(i, 0)), i >= 0
}

func kindNames() string { return say.Or(spelled(lineWords)...) }

// linePath reads path = "T A", or at with along or components.
func (r *reading) linePath(i int) bool {
	l, row := &r.p.Lines[i], r.lineRows[i]
	pathText, pathRef, hasPath := r.text("lines", row, "path")
	atText, atRef, hasAt := r.text("lines", row, "at")
	_, alongRef, hasAlong := r.text("lines", row, "along")
	_, _, hasComponents := r.text("lines", row, "components")

	if hasPath {
		if hasAlong && (l.Kind == Force || l.Kind == Contact) {
			if between, ok := r.particlePair(l, pathText); between {
				return ok && r.alongDirection(l, row, l.Path[0])
			}
		}
		if hasAlong {
			return r.fail(alongRef, diag.Span{}, "the line "+l.Name+" has both a path and a direction", "remove one of them")
		}
		return r.throughPoints(l, pathRef, pathText, fields(pathText))
	}
	if !hasAt {
		hint := "a path such as T A, or at T along +x"
		if !l.Kind.Info().Path {
			hint = "at T along +x"
		}
		return r.fail(l.Ref, diag.Span{}, "the line "+l.Name+" has no point of application", hint)
	}
	notPoint := func(w word) bool { return !has(r.points, w.text) }
	if words := fields(atText); len(words) == 2 && !slices.ContainsFunc(words, notPoint) {
		hint := "the path " + strings.TrimSpace(atText)
		if hasAlong {
			hint = "at " + words[0].text
		}
		return r.fail(atRef, whole(atText), "the line "+l.Name+" acts at one point, but "+strings.TrimSpace(atText)+" is two", hint)
	}
	at, ok := r.pointNamed(atRef, word{whole(atText), atText})
	if !ok {
		return false
	}
	l.Path = []int{at}
	if hasComponents {
		return true
	}
	return r.alongDirection(l, row, at)
}

// particlePair reads a path of two particles, between which a force may have any
// direction: they have no size, and no moments.
func (r *reading) particlePair(l *Line, text string) (between, ok bool) {
	words := fields(text)
	if len(words) != 2 {
		return false, false
	}
	for _, w := range words {
		b, known := r.bodies[w.text]
		if !known || !r.p.Bodies[b].Particle {
			return false, false
		}
		l.Path = append(l.Path, r.p.Bodies[b].Points[0])
	}
	return l.Path[0] != l.Path[1], r.pointAt[l.Path[0]] == done && r.pointAt[l.Path[1]] == done
}

func (r *reading) alongDirection(l *Line, row sheet.Row, at int) bool {
	text, ref, ok := r.text("lines", row, "along")
	var u r3.Vec
	var typed TypedDirection
	switch {
	case ok:
		typed = r.typedDirection(ref, text)
		if u, ok = r.direction(ref, text, env{r: r, scope: inGeometry}); !ok {
			return false
		}
	case l.Kind == Weight:
		u = r3.Scale(-1, r.p.Up)
	default:
		return r.fail(l.Ref, diag.Span{}, "the line "+l.Name+" has no direction", "along +x, along (3, 0, -4) or along dir(A, B)")
	}
	l.Legs = []Leg{{From: at, To: -1, R: u, U: u, Typed: typed}}
	return true
}

// throughPoints reads the points that words of a cell name as the path of a line.
func (r *reading) throughPoints(l *Line, ref sheet.Ref, text string, words []word) bool {
	path, ok := r.pointsNamed(ref, words)
	if l.Path = append(l.Path, path...); !ok {
		return false
	}
	if len(words) > 2 && !l.Kind.Info().Path {
		return r.fail(ref, diag.Between(words[2].Start, words[len(words)-1].End), aKind(l.Kind.String())+" is straight, so its path has two points, not "+say.Number(len(words)),
			"the path "+text[words[0].Start:words[1].End])
	}
	if len(words) < 2 {
		return r.fail(ref, whole(text), "a path has at least two points", "the form T A")
	}
	for k := 1; k < len(l.Path); k++ {
		a, b := &r.p.Points[l.Path[k-1]], &r.p.Points[l.Path[k]]
		span := diag.Between(words[k-1].Start, words[k].End)
		if l.Path[k-1] == l.Path[k] {
			return r.fail(ref, span, "the line "+l.Name+" runs from "+a.Name+" to "+b.Name+", so its length is zero", "the point at its other end")
		}
		if r.pointAt[l.Path[k-1]] != done || r.pointAt[l.Path[k]] != done {
			return false // the point's own cell says why
		}
		d := between(a.At, b.At)
		size := max(largest(a.At), largest(b.At))
		length := r3.Norm(d)
		u, hasLength := unit(d)
		if !hasLength || length <= coincident*size {
			return r.fail(ref, span, "the points "+a.Name+" and "+b.Name+" coincide, so the line "+l.Name+" has no direction", "move one of them")
		}
		l.Legs = append(l.Legs, Leg{From: l.Path[k-1], To: l.Path[k], R: d, Length: length, U: u})
	}
	return true
}

// word is a word of a cell, with its place in the cell's text.
type word struct {
	diag.Span
	text string
}

// fields gives the words of a path: separated by spaces or commas.
func fields(text string) []word {
	return split(text, func(c rune) bool { return c == ' ' || c == '\t' || c == ',' })
}

// split gives what stands between separators, of which it asks from left to right.
func split(text string, separates func(rune) bool) (words []word) {
	start := -1
	end := func(i int) {
		if start >= 0 {
			words = append(words, word{diag.Between(start, i), text[start:i]})
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
	for _, w := range fields(text) {
		if w.text == name {
			return w.Span
		}
	}
	return whole(text)
}

// pointNamed finds a point that a cell names. A point whose own cell does not
// read makes the line unreadable too, without a second error.
func (r *reading) pointNamed(ref sheet.Ref, w word) (int, bool) {
	name := strings.TrimSpace(w.text)
	if i, ok := r.points[name]; ok {
		return i, r.pointAt[i] == done
	}
	if _, kept := r.s.Table("points").Row(name); kept {
		return 0, r.fail(ref, w.Span, "the point "+name+" is ignored because its name begins with x-", "another name for it")
	}
	return 0, r.fail(ref, w.Span, "there is no point "+strconv.Quote(name), suggestion(name, namesOf(r.p.Points), "add it to the points"))
}

// pointsNamed finds the points that words of a cell name; false where one does not read.
func (r *reading) pointsNamed(ref sheet.Ref, words []word) (path []int, ok bool) {
	ok = true
	for _, w := range words {
		i, found := r.pointNamed(ref, w)
		path, ok = append(path, i), ok && found
	}
	return path, ok
}
