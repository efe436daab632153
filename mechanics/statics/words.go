package statics

import (
	"fmt"
	"math"
	"strings"

	"gonum.org/v1/gonum/spatial/r3"

	"trivet/mechanics/problem"
	"trivet/units"
)

// String is the verdict's name in the JSON contract.
func (v Verdict) String() string {
	return [...]string{"determinate", "sense-broken", "indeterminate", "no-equilibrium", "unreadable"}[v]
}

// Words says the verdict: the first line says which, the others what follows.
func (s *Solution) Words() []string {
	var out []string
	switch s.Verdict {
	case Unreadable:
		return []string{"unreadable: nothing is cut free"}
	case Determinate:
		out = append(out, s.determinateWords())
	case SenseBroken:
		out = append(out, "determinate, sense broken: every unknown has one value, but not one it can have")
	case Indeterminate:
		out = append(out, s.indeterminateWords()...)
	case NoEquilibrium:
		if s.Problem.ResultantOnly() {
			out = append(out, "resultant: no unknowns, and the known forces do not balance")
		} else {
			out = append(out, "no equilibrium: the loads excite a motion that nothing resists")
		}
	}
	for _, i := range s.Broken {
		out = append(out, s.brokenWords(i))
	}
	for _, m := range s.Motions {
		out = append(out, s.MotionWords(m))
	}
	return out
}

func (s *Solution) determinateWords() string {
	word := "determinate: every unknown has one value"
	switch {
	case len(s.X) == 0:
		return "determinate: no unknowns, and the known forces balance"
	case s.System.load(s.Problem) == 0:
		word += "; no load acts, so each is zero"
	}
	if len(s.Motions) > 0 {
		word = strings.Replace(word, "determinate:", "determinate, partly constrained:", 1)
	}
	return word
}

func (s *Solution) indeterminateWords() []string {
	word := fmt.Sprintf("indeterminate to degree %d: %s for %s", s.Degree,
		count(s.Rank, "independent equation"), count(len(s.X), "unknown"))
	if len(s.Motions) > 0 {
		word = strings.Replace(word, ":", ", partly constrained:", 1)
	}
	out := []string{word}
	for j := range s.X {
		out = append(out, s.rangeWords(j))
	}
	return out
}

func (s *Solution) rangeWords(j int) string {
	x := s.X[j]
	unit := s.Problem.Units.For(s.Problem.Unknowns[j].Dim)
	f := func(v float64) string { return unit.Format(v, s.Problem.Figures) }
	switch {
	case x.Fixed:
		return fmt.Sprintf("%s = %s is fixed all the same", x.Name, f(x.Value))
	case !s.sensesMet:
		return x.Name + " is free"
	case !s.rangesKnown:
		return x.Name + " is free, and the range that the senses leave it was not found"
	case math.IsInf(x.Low, -1) && math.IsInf(x.High, 1):
		return x.Name + " is unbounded"
	case math.IsInf(x.High, 1):
		return fmt.Sprintf("%s is at least %s, unbounded above", x.Name, f(x.Low))
	case math.IsInf(x.Low, -1):
		return fmt.Sprintf("%s is at most %s, unbounded below", x.Name, f(x.High))
	}
	if x.High-x.Low <= onBound*s.scale() {
		return fmt.Sprintf("%s = %s is the one value that every sense allows", x.Name, f(x.Low))
	}
	return fmt.Sprintf("%s lies between %s and %s", x.Name, f(x.Low), f(x.High))
}

func (s *Solution) force1(v float64) string {
	return s.Problem.Units.Force.Format(v, s.Problem.Figures)
}

// brokenWords says what has a sense it cannot have, and what it does instead.
func (s *Solution) brokenWords(q Sensed) string {
	v, _ := s.single(q.Magnitude)
	size := s.force1(math.Abs(v))
	if q.Line < 0 {
		return fmt.Sprintf("%s would have to pull with %s: a %s only pushes, so it lifts off", q.Name, size, s.Problem.Joints[q.Joint].Kind)
	}
	l := &s.Problem.Lines[q.Line]
	switch l.Kind.Info().Sense {
	case problem.PullOnly:
		return fmt.Sprintf("%s would have to push with %s: a %s only pulls, so it goes slack", l.Name, size, l.Kind)
	case problem.PushOnly:
		return fmt.Sprintf("%s would have to pull with %s: a %s only pushes, so it comes away", l.Name, size, l.Kind)
	}
	return fmt.Sprintf("%s would have to pull with %s: a %s only pushes, so it lifts off", l.Name, size, l.Kind)
}

// direction names a direction: an axis where it is one, else a unit vector. A
// motion that goes either way has no sign.
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

// Name is a check's name in the JSON contract: what it is about, and of what.
func (c Check) Name() string {
	what := [...]string{"unit vector", "sum of forces", "sum of moments", "conditioning", "sense", "limit", "friction", "two-force member", "three-force member", "limit", "senses"}[c.Kind]
	if c.Subject == "" {
		return what
	}
	return what + " " + c.Subject
}

// Says puts a check in words, numbers in the sheet's units.
func (c Check) Says(p *problem.Problem) string {
	force := func(v float64) string { return p.Units.Force.Format(v, p.Figures) }
	switch c.Kind {
	case CheckUnit:
		return fmt.Sprintf("|u| = 1 for %s, to %.1e", c.Subject, c.Value)
	case CheckResidual:
		if c.About != "" {
			return fmt.Sprintf("ΣF = 0 and ΣM = 0 about %s on %s, to %.1e of the largest term", c.About, c.Subject, c.Value)
		}
		return fmt.Sprintf("ΣF = 0 on %s, to %.1e of the largest term", c.Subject, c.Value)
	case CheckMoment:
		about := "a second point"
		if c.About != "" {
			about = c.About
		}
		return fmt.Sprintf("ΣM = 0 on %s about %s, to %.1e of the largest moment", c.Subject, about, c.Value)
	case CheckCondition:
		return fmt.Sprintf("conditioning costs %.1f of the %.1f figures carried", c.Value, carried)
	case CheckSense:
		positive, negative, name := "push", "pull", ""
		if c.Line >= 0 {
			info := p.Lines[c.Line].Kind.Info()
			positive, negative, name = info.Positive, info.Negative, info.Name
		} else {
			name = p.Joints[c.Joint].Kind.String()
		}
		word := positive
		if !c.OK {
			word = negative + ", which a " + name + " cannot take"
		}
		return fmt.Sprintf("%s = %s: %s", c.Subject, force(math.Abs(c.Value)), word)
	case CheckFriction:
		if !c.OK {
			return fmt.Sprintf("%s slips: it needs %s of friction, and %s is available", c.Subject, force(c.Value), force(c.Bound))
		}
		return fmt.Sprintf("%s holds: it needs %s of the %s of friction available", c.Subject, force(c.Value), force(c.Bound))
	case CheckTwoForce:
		return fmt.Sprintf("%s is a two-force member: forces act on it at %s only, so they lie along the line between, to %.1e", c.Subject, c.With, c.Value)
	case CheckThreeForce:
		if !c.Meets {
			return fmt.Sprintf("%s is a three-force member: its forces at %s have parallel lines of action, to %.1e", c.Subject, c.With, c.Value)
		}
		return fmt.Sprintf("%s is a three-force member: the lines of its forces at %s meet in %s, to %.1e", c.Subject, c.With, placeWords(p, c.Meet), c.Value)
	case CheckLimit, CheckJointLimit:
		if math.IsInf(c.Value, 1) {
			return fmt.Sprintf("%s has no greatest value to hold against its limit of %s", c.Subject, force(c.Bound))
		}
		use := units.Figures(100*c.Value/c.Bound, p.Figures)
		word := "uses"
		if !c.OK {
			word = "exceeds its limit: uses"
		}
		return fmt.Sprintf("%s %s %s %% of %s", c.Subject, word, use, force(c.Bound))
	}
	if c.OK {
		return "some values of the free unknowns keep every sense"
	}
	return "no values of the free unknowns keep every sense: some cable would push or contact pull"
}

// computedFigures is how many figures a computed value shows beside a printed
// one at least, so that it can be seen how near they are.
const computedFigures = 5

// ComputedText is the computed value beside a printed answer.
func (a AnswerCheck) ComputedText(p *problem.Problem) string {
	if a.Err != "" {
		return a.Err
	}
	return p.Units.For(a.Query.Dim).Format(a.Computed, max(computedFigures, p.Figures+2))
}

// Says puts a printed answer and what became of it in words.
func (a AnswerCheck) Says(p *problem.Problem) string {
	word := "meets"
	switch {
	case a.Err != "":
		return a.Query.Name + ": " + a.Err + ", printed " + a.Printed
	case !a.OK:
		word = "misses"
	}
	return fmt.Sprintf("%s = %s %s the printed %s", a.Query.Name, a.ComputedText(p), word, a.Printed)
}
