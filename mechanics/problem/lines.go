package problem

import (
	"strconv"
	"strings"

	"gonum.org/v1/gonum/spatial/r3"

	"trivet/mechanics/diag"
	"trivet/mechanics/say"
	"trivet/mechanics/sheet"
	"trivet/units"
)

// coincident is how near two points may be, relative to the coordinates they
// are made of, before the line between them has no direction worth the name:
// the difference of two coordinates is then rounding only (2^-52 each).
const coincident = 1e-14

func (r *reading) readLineGeometry() {
	for i := range r.p.Lines {
		r.lineGeometry(i)
	}
}

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
		r.fail(ref, whole(text), strconv.Quote(text)+" is not a kind of line", suggestion(text, kindList(), kindNames()))
		return
	}
	if l.Belt != nil {
		if i == l.Belt.Lines[0] {
			r.belt(i)
		}
		return
	}
	l.OK = r.linePath(i)
	r.limit(l, row)
}

// limit reads the capacity of a line.
func (r *reading) limit(l *Line, row sheet.Row) {
	if text, ref, ok := r.text("lines", row, "limit"); ok {
		if v, ok := r.scalar(ref, text, env{r: r, scope: inGiven}, units.Force); ok {
			if v.V[0] <= 0 {
				r.fail(ref, whole(text), "a limit must be greater than zero", "the capacity, such as 5 kN")
			} else {
				l.Limit = v.V[0]
			}
		}
	}
}

func kindOf(s string) (Kind, bool) {
	for _, k := range kinds {
		if k.Name == s {
			return k.Kind, true
		}
	}
	return 0, false
}

func kindList() []string {
	names := make([]string, len(kinds))
	for i, k := range kinds {
		names[i] = k.Name
	}
	return names
}

func kindNames() string { return say.Or(kindList()...) }

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
	if words := fields(atText); len(words) == 2 && r.namesPoints(atText, words) {
		hint := "the path " + strings.TrimSpace(atText)
		if hasAlong {
			hint = "at " + atText[words[0].Start:words[0].End]
		}
		return r.fail(atRef, whole(atText), "the line "+l.Name+" acts at one point, but "+strings.TrimSpace(atText)+" is two", hint)
	}
	at, ok := r.pointNamed(atRef, atText, whole(atText))
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
		b, known := r.bodies[text[w.Start:w.End]]
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
func (r *reading) throughPoints(l *Line, ref sheet.Ref, text string, words []diag.Span) bool {
	ok := true
	for _, w := range words {
		i, found := r.pointNamed(ref, text[w.Start:w.End], w)
		ok = ok && found
		l.Path = append(l.Path, i)
	}
	if !ok {
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

// fields gives the words of a path: separated by spaces or commas.
func fields(text string) []diag.Span {
	var spans []diag.Span
	start := -1
	for i, c := range text {
		sep := c == ' ' || c == '\t' || c == ','
		if sep && start >= 0 {
			spans = append(spans, diag.Between(start, i))
			start = -1
		} else if !sep && start < 0 {
			start = i
		}
	}
	if start >= 0 {
		spans = append(spans, diag.Between(start, len(text)))
	}
	return spans
}

func (r *reading) namesPoints(text string, words []diag.Span) bool {
	for _, w := range words {
		if _, ok := r.points[text[w.Start:w.End]]; !ok {
			return false
		}
	}
	return true
}

// pointNamed finds a point that a cell names. A point whose own cell does not
// read makes the line unreadable too, without a second error.
func (r *reading) pointNamed(ref sheet.Ref, text string, span diag.Span) (int, bool) {
	name := strings.TrimSpace(text)
	i, ok := r.points[name]
	if !ok {
		names := make([]string, 0, len(r.p.Points))
		for _, p := range r.p.Points {
			names = append(names, p.Name)
		}
		if _, kept := r.s.Table("points").Row(name); kept {
			r.fail(ref, span, "the point "+name+" is ignored because its name begins with x-", "another name for it")
			return 0, false
		}
		r.fail(ref, span, "there is no point "+strconv.Quote(name), suggestion(name, names, "add it to the points"))
		return 0, false
	}
	return i, r.pointAt[i] == done
}
