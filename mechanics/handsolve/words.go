package handsolve

import (
	"slices"
	"strings"

	"trivet/mechanics/problem"
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

// Short says an equation in a few words: moments about A, forces along x.
func (r *Route) Short(p *problem.Problem, e *Equation) string {
	s := &said{r: r, p: p}
	return s.equation(e, false)
}
