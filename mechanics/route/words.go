package route

import (
	"math"
	"slices"
	"strconv"
	"strings"

	"gonum.org/v1/gonum/spatial/r3"

	"trivet/mechanics/problem"
	"trivet/units"
)

// Piece is a piece of a sentence: words, or a symbol among them.
type Piece struct {
	Words  string
	Symbol int // -1 for words
}

// said puts a sentence together.
type said struct {
	r   *Route
	p   *problem.Problem
	out []Piece
}

func (s *said) words(text string) {
	if n := len(s.out); n > 0 && s.out[n-1].Symbol < 0 {
		s.out[n-1].Words += text
		return
	}
	s.out = append(s.out, Piece{text, -1})
}

func (s *said) symbol(k int) { s.out = append(s.out, Piece{"", k}) }

// list says a, b and c.
func (s *said) list(n int, each func(k int)) {
	for k := range n {
		switch {
		case k == 0:
		case k == n-1:
			s.words(" and ")
		default:
			s.words(", ")
		}
		each(k)
	}
}

func (s *said) symbols(of []int) { s.list(len(of), func(k int) { s.symbol(of[k]) }) }

// Says says a step in sentences: what is cut free, the equation, why the other
// unknowns drop out.
func (r *Route) Says(p *problem.Problem, step *Step) []Piece {
	s := &said{r: r, p: p}
	switch step.Kind {
	case TwoForce:
		s.twoForce(step)
	case Components:
		s.components(step)
	case Together:
		s.together(step)
	default:
		s.one(step)
	}
	return s.out
}

// Text is a sentence in plain words.
func (r *Route) Text(p *problem.Problem, pieces []Piece) string {
	var b strings.Builder
	for _, x := range pieces {
		if x.Symbol < 0 {
			b.WriteString(x.Words)
		} else {
			b.WriteString(r.Name(p, x.Symbol))
		}
	}
	return b.String()
}

func (s *said) point(i int) string {
	if i < 0 {
		return "its end"
	}
	return s.p.Points[i].Name
}

func (s *said) twoForce(step *Step) {
	m, symbol := &s.r.Members[step.Member], len(s.p.Unknowns)+step.Member
	from, to := s.point(m.From), s.point(m.To)
	s.words("Forces act on " + s.p.Bodies[m.Body].Name + " at " + from + " and " + to + " only, so it is a two-force member: they lie along " + from + to + ". ")
	s.symbol(symbol)
	s.words(" is its force, tension positive, in place of ")
	s.list(len(m.Shares), func(k int) { s.symbol(m.Shares[k].Unknown) })
	s.words(".")
	var zero []int
	for _, x := range step.Finds {
		zero = append(zero, x.Symbol)
	}
	if len(zero) == 0 {
		return
	}
	s.words(" ")
	s.symbols(zero)
	if len(zero) == 1 {
		s.words(" acts across it and is zero.")
	} else {
		s.words(" act across it and are zero.")
	}
}

func (s *said) components(step *Step) {
	m := &s.r.Members[step.Member]
	s.words("The force in " + s.p.Bodies[m.Body].Name + " has the components ")
	s.list(len(step.Finds), func(k int) { s.symbol(step.Finds[k].Symbol) })
	s.words(" along " + s.point(m.From) + s.point(m.To) + ".")
}

func (s *said) one(step *Step) {
	e := &step.Equations[0]
	if len(e.Cut) > 0 {
		s.section(e)
	}
	s.words(upper(s.equation(e, len(e.Cut) == 0)))
	s.words(" hold ")
	s.symbol(step.Finds[0].Symbol)
	s.words(" alone")
	s.drops(e)
	s.words(".")
	if len(step.Needs) > 0 {
		s.words(" ")
		s.symbols(step.Needs)
		if len(step.Needs) == 1 {
			s.words(" is known by now.")
		} else {
			s.words(" are known by now.")
		}
	}
}

func (s *said) together(step *Step) {
	s.words("No sum of forces or of moments here holds one of ")
	var of []int
	for _, x := range step.Finds {
		of = append(of, x.Symbol)
	}
	s.symbols(of)
	s.words(" alone")
	if step.Screw {
		s.words(": what leaves one of them alone on " + s.on(&step.Equations[0]) + " is a screw, and neither a direction nor an axis")
	}
	if len(step.Equations) > len(step.Finds) {
		s.all(step)
		return
	}
	s.words(", so " + count(len(step.Equations)) + " equations are solved together: ")
	s.list(len(step.Equations), func(k int) { s.words(s.equation(&step.Equations[k], true)) })
	s.words(".")
}

// all says that every equation of some bodies is taken, with what stands in
// them and has no value.
func (s *said) all(step *Step) {
	var bodies, loose []int
	for i := range step.Equations {
		e := &step.Equations[i]
		for _, b := range e.Bodies {
			if !slices.Contains(bodies, b) {
				bodies = append(bodies, b)
			}
		}
		for _, t := range e.Terms {
			found := slices.ContainsFunc(step.Finds, func(x Found) bool { return x.Symbol == t.Symbol })
			if !t.Known && !found && !slices.Contains(loose, t.Symbol) {
				loose = append(loose, t.Symbol)
			}
		}
	}
	s.words(", so the equations of " + s.bodies(bodies) + " are solved together")
	if len(loose) > 0 {
		s.words("; ")
		s.symbols(loose)
		if len(loose) == 1 {
			s.words(" stands in them too and has no single value")
		} else {
			s.words(" stand in them too and have no single value")
		}
	}
	s.words(".")
}

// section says what a cut goes through and which part is kept.
func (s *said) section(e *Equation) {
	names := make([]string, len(e.Cut))
	for k, l := range e.Cut {
		names[k] = s.p.Lines[l].Name
	}
	s.words("Cut through " + listed(names) + " and keep the part with " + s.bodies(e.Bodies) + ". ")
}

// manyNames is how many bodies are named one by one.
const manyNames = 4

func (s *said) bodies(of []int) string {
	names := make([]string, len(of))
	for k, b := range of {
		names[k] = s.p.Bodies[b].Name
	}
	if len(names) > manyNames {
		more := len(names) - manyNames + 1
		return listed(append(names[:manyNames-1], strconv.Itoa(more)+" more"))
	}
	return listed(names)
}

// on names what an equation is for.
func (s *said) on(e *Equation) string {
	switch {
	case len(e.Bodies) == 1:
		return s.p.Bodies[e.Bodies[0]].Name
	case e.Whole:
		return "the whole structure"
	}
	return s.bodies(e.Bodies) + " together"
}

// equation says moments about A on beam, forces along x on beam.
func (s *said) equation(e *Equation, where bool) string {
	text := "forces " + s.direction(e)
	if e.Moment {
		text = "moments about " + s.center(e)
	}
	if where {
		preposition := " on "
		if b := e.bodyOf(s.p); b != nil && b.Particle {
			preposition = " at "
		}
		text += preposition + s.on(e)
	}
	return text
}

func (s *said) direction(e *Equation) string {
	n := &e.Named
	switch {
	case len(n.Across) == 1 && n.Axis != 0:
		return "across " + s.r.Name(s.p, n.Across[0]) + " and " + string(n.Axis)
	case len(n.Across) > 0:
		names := make([]string, len(n.Across))
		for k, symbol := range n.Across {
			names[k] = s.r.Name(s.p, symbol)
		}
		return "across " + listed(names)
	case n.Axis != 0:
		return "along " + string(n.Axis)
	}
	return "along " + s.tuple(e.Along, 1)
}

func (s *said) center(e *Equation) string {
	n := &e.Named
	at := ""
	if n.Point >= 0 {
		at = s.p.Points[n.Point].Name
	}
	if s.p.Planar {
		if at != "" {
			return at
		}
		return "the point " + s.place(e.At) + ", where the lines of " + s.r.Name(s.p, n.Across[0]) + " and " + s.r.Name(s.p, n.Across[1]) + " meet,"
	}
	switch {
	case n.Axis != 0:
		return "the axis through " + at + " along " + string(n.Axis)
	case n.To >= 0:
		return "the axis " + at + s.p.Points[n.To].Name
	case n.Along >= 0 && at == "":
		return "the line of " + s.r.Name(s.p, n.Along)
	case n.Along >= 0:
		return "the axis through " + at + " along " + s.r.Name(s.p, n.Along)
	case len(n.Across) == 2:
		return "the axis through " + at + " that meets the lines of " + s.r.Name(s.p, n.Across[0]) + " and " + s.r.Name(s.p, n.Across[1])
	case at == "":
		at = s.place(e.At)
	}
	return "the axis through " + at + " along " + s.tuple(e.Along, 1)
}

// drops says why what else acts on the bodies is not in the equation.
func (s *said) drops(e *Equation) {
	for k, d := range e.Drops {
		if k == 0 {
			s.words(": ")
		} else {
			s.words(", ")
		}
		s.symbols(d.Symbols)
		many := len(d.Symbols) > 1
		s.words(" " + s.reason(e, d.Why, many))
	}
}

func (s *said) reason(e *Equation, why Why, many bool) string {
	pick := func(one, more string) string {
		if many {
			return more
		}
		return one
	}
	switch why {
	case Through:
		at := "it"
		if e.Named.Point >= 0 {
			at = s.p.Points[e.Named.Point].Name
		}
		return pick("passes", "pass") + " through " + at
	case Meets:
		return pick("meets", "meet") + " the axis"
	case Parallel:
		return pick("is", "are") + " parallel to the axis"
	case Across:
		return pick("acts", "act") + " across it"
	case IsCouple:
		return pick("is a couple", "are couples")
	case CoupleAcross:
		return pick("turns", "turn") + " across the axis"
	}
	return pick("balances itself", "balance themselves")
}

// place is (x, y) in the sheet's unit.
func (s *said) place(at r3.Vec) string {
	u := s.p.Units.Length
	return s.tuple(at, u.Factor) + " " + u.Symbol
}

func (s *said) tuple(v r3.Vec, unit float64) string {
	parts := []float64{v.X, v.Y, v.Z}
	if s.p.Planar {
		parts = parts[:2]
	}
	text := make([]string, len(parts))
	for k, x := range parts {
		if math.Abs(x) <= sameTol*r3.Norm(v) {
			x = 0
		}
		text[k] = Shown(x/unit, s.p.Figures+1)
	}
	return "(" + strings.Join(text, ", ") + ")"
}

// Shown shows a number to so many figures without zeros at the end.
func Shown(x float64, figures int) string {
	text := units.Figures(x, figures)
	mantissa, exponent, _ := strings.Cut(text, "e")
	if strings.Contains(mantissa, ".") {
		mantissa = strings.TrimSuffix(strings.TrimRight(mantissa, "0"), ".")
	}
	if exponent != "" {
		mantissa += "e" + exponent
	}
	return mantissa
}

func count(n int) string {
	if n < len(numerals) {
		return numerals[n]
	}
	return strconv.Itoa(n)
}

var numerals = [...]string{"no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten"}

func listed(names []string) string {
	if len(names) < 2 {
		return strings.Join(names, "")
	}
	return strings.Join(names[:len(names)-1], ", ") + " and " + names[len(names)-1]
}

func upper(s string) string { return strings.ToUpper(s[:1]) + s[1:] }

// Short says an equation in a few words: moments about A, forces along x.
func (r *Route) Short(p *problem.Problem, e *Equation) string {
	s := &said{r: r, p: p}
	return s.equation(e, false)
}
