package problem

import (
	"math"
	"slices"
	"strconv"
	"strings"

	"gonum.org/v1/gonum/spatial/r3"

	"trivet/mechanics/diag"
	"trivet/mechanics/sheet"
	"trivet/units"
)

// Belt is a belt or rope round a drum that has friction. It has two lines, its straight
// parts before and behind the drum, with a tension each. Where nothing slips
//
//	R1 e^(-μβ) <= R2 <= R1 e^(μβ)
//
// and where slip impends, the tension of Tight is e^(μβ) times the other.
type Belt struct {
	Name     string
	Lines    [2]int
	Wrap     float64 // β, rad
	ByPath   bool    // Wrap is the angle by which the path changes its direction
	Friction float64 // μ, the static coefficient
	Tight    int     // which of Lines has the larger tension where slip impends, or -1
	Tied     int     // and which of them follows from the other

	typed [2]*units.Expr // the tensions; nil where left out
}

// Ratio is e^(μβ), the largest ratio of the two tensions.
func (b *Belt) Ratio() float64 { return math.Exp(b.Friction * b.Wrap) }

// Belts gives the belts of which both parts read.
func (p *Problem) Belts() []*Belt {
	return slices.DeleteFunc(slices.Clone(p.belts), func(b *Belt) bool { return !p.Lines[b.Lines[0]].OK || !p.Lines[b.Lines[1]].OK })
}

// Slack is the line of the smaller tension where slip impends.
func (b *Belt) Slack() int { return b.Lines[1-b.Tight] }

// maxRatio bounds e^(μβ): with more the smaller tension is lost in the rounding that
// counts as zero beside the larger one, 1e-9.
const maxRatio = 1e9

// Tensions are the names of the tensions of a belt, in the order of its path.
func Tensions(name string) [2]string { return [2]string{name + "1", name + "2"} }

// twoTensions says that a belt is named where one of its tensions, or a part of it, is meant.
func twoTensions(at diag.Span, belt, part string) *diag.Error {
	of := Tensions(belt)
	return diag.At(at, "the belt "+belt+" has two tensions", of[0]+part+" or "+of[1]+part)
}

// IsBelt tells whether a row of [lines] is a belt.
func IsBelt(row sheet.Row) bool {
	return row.Text("kind") == BeltKind.String()
}

// LinesOf names the lines that a row of [lines] describes: one, or the two parts of a belt.
func LinesOf(row sheet.Row) []string {
	if IsBelt(row) {
		names := Tensions(row.Name)
		return names[:]
	}
	return []string{row.Name}
}

// belt finds a belt by name, nil where there is none.
func (p *Problem) belt(name string) *Belt {
	if k := slices.IndexFunc(p.belts, func(b *Belt) bool { return b.Name == name }); k >= 0 {
		return p.belts[k]
	}
	return nil
}

// namesakeOf is what else is called like a tension, or "".
func (r *reading) namesakeOf(tension *Line) string {
	if r.isGiven(tension.Name) {
		return "a given"
	}
	if _, taken := r.s.Table("lines").Row(tension.Name); taken {
		return "a line"
	}
	return ""
}

// belt reads the path, the friction and the limit of a belt. Its parts begin and end at
// the drum's centre, or each where it leaves the drum.
func (r *reading) belt(first int, w row) {
	parts := [2]*Line{&r.p.Lines[first], &r.p.Lines[first+1]}
	belt := parts[0].Belt
	parts[1].Kind = parts[0].Kind

	form := lineKey("path") + " A C B, from one end round the drum at C to the other end"
	path := w.cell("path")
	words := Fields(path.text)
	switch {
	case !path.has:
		w.fail("the belt "+belt.Name+" has no "+quotedKey("path"), form)
		return
	case len(words) != 3 && len(words) != 4:
		path.fail(quotedKey("path")+" of a belt has three points, and this one has "+strconv.Itoa(len(words)), form)
		return
	}
	for k, l := range parts {
		from := k * (len(words) - 2)
		if !r.throughPoints(l, path, words[from:from+2]) {
			return
		}
	}
	okWrap, okFriction, okTight := belt.readWrap(w, parts), belt.readFriction(w), belt.readTight(w)
	okTensions := belt.readTensions(w.cell("magnitude"))
	switch ok := okWrap && okFriction && okTight && okTensions; {
	case ok && belt.Ratio() > maxRatio:
		w.fail("the belt "+belt.Name+" has e^(μβ) = "+units.Figures(belt.Ratio(), 3)+", and more than "+units.Figures(maxRatio, 1)+" cannot be computed", "a smaller wrap")
	case ok:
		w.limit(&parts[0].Limit)
		parts[1].Limit = parts[0].Limit // of the larger tension, so of either
		parts[0].OK, parts[1].OK = true, true
		r.doubtDrum(belt, path, words)
	}
}

// readWrap reads the angle over which a belt touches its drum; left out it is the angle by
// which the path changes its direction there.
func (b *Belt) readWrap(w row, parts [2]*Line) bool {
	if q := w.quantity("wrap"); q.has {
		b.Wrap = q.value
		return q.positive("the wrap of a belt", "the angle over which it touches the drum, such as 180 deg or 1.5 turn")
	}
	b.ByPath = true
	u, v := parts[0].Legs[0].U, parts[1].Legs[0].U
	b.Wrap = math.Atan2(r3.Norm(r3.Cross(u, v)), r3.Dot(u, v))
	return b.Wrap > coincident || w.fail("the path of the belt "+b.Name+" runs straight on, so it does not touch the drum", "a wrap such as 180 deg, or one of its points elsewhere")
}

func (b *Belt) readFriction(w row) bool {
	const hint = "a friction such as 0.3; a cable runs over a smooth drum"
	q := w.quantity("friction")
	b.Friction = q.value
	return w.needs(q.cell, "the belt "+b.Name+" has no coefficient of static friction", hint) &&
		q.positive("the coefficient of static friction of a belt", hint) && q.friction()
}

func (b *Belt) readTight(w row) bool {
	c, names := w.cell("tight"), Tensions(b.Name)
	if !c.has {
		return true
	}
	b.Tight = max(slices.Index(names[:], c.word()), slices.Index(names[:], strings.ReplaceAll(c.word(), "_", "")))
	return b.Tight >= 0 || c.fail("the belt "+b.Name+" has no tension "+strconv.Quote(c.word()), names[0]+" or "+names[1]+", which is the larger tension where slip impends")
}

// doubtDrum notes that a path through the centre of a drum leaves out the moment of the
// friction about it, which decides where the drum is a rigid body.
func (r *reading) doubtDrum(belt *Belt, path cell, words []Token) {
	drum := &r.p.Points[r.p.Lines[belt.Lines[0]].Path[1]]
	if len(words) > 3 || drum.Body == Ground || r.p.Bodies[drum.Body].Particle {
		return
	}
	r.doubt(path.ref, NoSort, words[1].Span, "the belt "+belt.Name+" acts on the body "+r.p.Bodies[drum.Body].Name+" at "+drum.Name+", so its friction has no moment about "+drum.Name,
		lineKey("path")+" "+words[0].Text+" P Q "+words[2].Text+", with P and Q where the belt leaves the drum")
}

// heldByDrum tells that a part of a belt may run between fixed ends: the friction of the
// drum joins its tension to that of the other part, which acts on something, or to what is
// typed of it, as of a rope over several drums.
func (r *reading) heldByDrum(l *Line) bool {
	if l.Belt == nil {
		return false
	}
	first := &r.p.Lines[l.Belt.Lines[0]]
	return l == first || len(first.Acts) > 0 || !first.OK || r.rows[l.Ref].Text("magnitude") != ""
}

// tension reads the tension in part i of a belt: its part of magnitude = "?, 600 N", and
// of the other where slip impends; else it is unknown.
func (r *reading) tension(i int) bool {
	l := &r.p.Lines[i]
	belt := l.Belt
	if !l.OK || r.namesakeOf(l) != "" {
		return false // its row does not read, which says so itself
	}
	c, parts := r.rows[l.Ref].cell("magnitude"), belt.typed
	mine := i - belt.Lines[0]
	other := 1 - mine
	known := [2]bool{parts[0] != nil && !parts[0].IsQuestion(), parts[1] != nil && !parts[1].IsQuestion()}
	switch {
	case belt.Tight >= 0 && known[0] && known[1]:
		return mine == belt.Tight && r.fail(c.ref, diag.Span{}, "both tensions of the belt "+belt.Name+" are typed, and slip impends", "? for one of them")
	case known[mine]:
		v, ok := c.part(parts[mine], env{r: r, scope: inMagnitude, line: i}, units.Force)
		l.Magnitude, l.Plus = r.affine(v), v.Plus[0]
		return ok
	case belt.Tight < 0, !known[other] && mine != belt.Tight:
		return r.ownUnknown(i)
	}
	if !r.magnitude(belt.Lines[other]) {
		return false
	}
	belt.Tied = mine
	factor := belt.Ratio()
	if mine != belt.Tight {
		factor = 1 / factor
	}
	l.Magnitude = r.p.Lines[belt.Lines[other]].Magnitude.Times(factor)
	return true
}

// readTensions reads the two expressions of a belt's magnitude.
func (b *Belt) readTensions(c cell) bool {
	if !c.has {
		return true
	}
	expr, ok := c.expr(c.r.Parse)
	if !ok || expr.IsQuestion() {
		return ok
	}
	if both, _ := expr.Tuple(); len(both) == 2 {
		b.typed = [2]*units.Expr(both)
		return true
	}
	hint := "the magnitude " + c.word() + ", ?"
	if strings.Contains(c.text, ",") {
		hint = "one for each, or ? for an unknown, such as 600 N, ?"
	}
	names := Tensions(b.Name)
	return c.fail("the belt "+b.Name+" has two tensions, "+names[0]+" and "+names[1], hint)
}
