package statics

import (
	"fmt"
	"math"
	"strings"

	"gonum.org/v1/gonum/spatial/r3"

	"trivet/units"
)

// String is the verdict's name in the JSON contract.
func (v Verdict) String() string {
	return [...]string{"determinate", "inadmissible", "indeterminate", "no-equilibrium", "resultant", "unreadable"}[v]
}

// Words says the verdict: the first line says which, the others what follows, and
// last what is read by nothing, or doubtful, in the sheet.
func (s *Solution) Words() []string {
	out := s.VerdictWords()
	for _, e := range s.Problem.Notes() {
		out = append(out, e.Text())
	}
	return out
}

// VerdictWords are Words without what is said of the sheet.
func (s *Solution) VerdictWords() []string {
	var out []string
	switch s.Verdict {
	case Unreadable:
		return []string{"unreadable: nothing is cut free"}
	case Determinate:
		out = append(out, s.determinateWords())
	case Inadmissible:
		out = append(out, s.inadmissibleWords()...)
	case Indeterminate:
		out = append(out, s.indeterminateWords()...)
	case Resultant:
		return s.resultantWords()
	case NoEquilibrium:
		out = append(out, "no equilibrium: the loads excite a motion that nothing resists")
	}
	out = append(out, s.motionLines()...)
	out = append(out, s.slackWords()...)
	if s.Verdict == NoEquilibrium && len(s.X) == 0 {
		out = append(out, "the sheet has no supports and no unknowns. Try: expect = \"resultant\", if the resultant of the known forces is what is asked")
	}
	return out
}

// resultantWords says what the resultant of the known forces on each body is.
func (s *Solution) resultantWords() []string {
	out := []string{"resultant: the known forces are added up, and need not balance"}
	p := s.Problem
	for b := range p.Bodies {
		force, moment := loads(p, b)
		var parts []string
		part := &s.parts[s.partOfBody[b]]
		if size := r3.Norm(force); size > part.least() {
			parts = append(parts, s.force1(size)+" along "+s.direction(force, true))
		}
		if size := r3.Norm(moment); !p.Bodies[b].Particle && size > part.least()*s.armOf(part) {
			unit := p.Units.For(units.Moment)
			way := "along " + s.direction(moment, true)
			switch {
			case p.Planar && moment.Z > 0:
				way = "counter-clockwise"
			case p.Planar:
				way = "clockwise"
			}
			parts = append(parts, fmt.Sprintf("a moment of %s about %s %s", unit.Format(size, p.Figures), p.Bodies[b].AboutName, way))
		}
		if len(parts) == 0 {
			parts = append(parts, "zero")
		}
		out = append(out, "the resultant of the known forces on "+p.Bodies[b].Name+" is "+strings.Join(parts, " and "))
	}
	return out
}

// Headline is the verdict in a few words: "indeterminate to degree 1, partly constrained".
func (s *Solution) Headline() string {
	word := strings.Replace(s.Verdict.String(), "-", " ", 1)
	if s.Verdict == Indeterminate {
		word += fmt.Sprintf(" to degree %d", s.Degree)
	}
	if s.Verdict != NoEquilibrium && len(s.Motions) > 0 {
		word += ", partly constrained"
	}
	return word
}

func (s *Solution) determinateWords() string {
	says := "every unknown has one value"
	switch {
	case len(s.X) == 0:
		says = "no unknowns, and the known forces balance"
	case s.load == 0:
		says += "; no load acts, so each is zero"
	}
	return s.Headline() + ": " + says
}

func (s *Solution) indeterminateWords() []string {
	word := fmt.Sprintf("%s: %s for %s", s.Headline(), count(s.Rank, "independent equation"), count(len(s.X), "unknown"))
	out := []string{word}
	for j := range s.X {
		out = append(out, s.RangeWords(j))
	}
	if w := s.possibleWords(); w != "" {
		out = append(out, w)
	}
	return out
}

// RangeWords says the value of an unknown, or the range that it may have.
func (s *Solution) RangeWords(j int) string {
	x := s.X[j]
	unit := s.Problem.Units.For(s.Problem.Unknowns[j].Dim)
	f := func(v float64) string { return unit.Format(v, s.Problem.Figures) }
	switch {
	case x.Fixed:
		return fmt.Sprintf("%s = %s is fixed all the same", x.Name, f(x.Value))
	case !x.Ranged:
		return x.Name + " is undetermined, and its admissible range was not computed"
	case math.IsInf(x.Low, -1) && math.IsInf(x.High, 1):
		return x.Name + " is unbounded"
	case math.IsInf(x.High, 1):
		return fmt.Sprintf("%s is at least %s, unbounded above", x.Name, f(x.Low))
	case math.IsInf(x.Low, -1):
		return fmt.Sprintf("%s is at most %s, unbounded below", x.Name, f(x.High))
	}
	if x.High-x.Low <= onBound*s.scaleOf(j) {
		return fmt.Sprintf("%s = %s is the only admissible value", x.Name, f(x.Low))
	}
	low, high := f(x.Low), f(x.High)
	if low == high {
		return fmt.Sprintf("%s is %s to the figures shown", x.Name, low)
	}
	return fmt.Sprintf("%s lies between %s and %s", x.Name, low, high)
}

func (s *Solution) force1(v float64) string {
	return s.Problem.Units.Force.Format(v, s.Problem.Figures)
}

// direction names a direction: an axis where it is one, else a unit vector. A
// motion of one body that goes either way has no sign.
func (s *Solution) direction(v r3.Vec, signed bool) string {
	const aligned = 1e-9 // of a unit vector: less is rounding of the null space
	size := r3.Norm(v)
	u := [3]float64{v.X / size, v.Y / size, v.Z / size}
	for k, name := range []string{"x", "y", "z"} {
		if math.Abs(math.Abs(u[k])-1) < aligned {
			switch {
			case !signed:
				return name
			case u[k] < 0:
				return "-" + name
			}
			return "+" + name
		}
	}
	n := 3
	if s.Problem.Planar {
		n = 2
	}
	parts := make([]string, n)
	for k := range n {
		parts[k] = units.Decimals(u[k], 4)
	}
	return "(" + strings.Join(parts, ", ") + ")"
}

func count(n int, noun string) string {
	if n == 1 {
		return "1 " + noun
	}
	return fmt.Sprintf("%d %ss", n, noun)
}
