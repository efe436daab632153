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

// Words says the verdict: the first line says which, the others what follows, and
// last what is doubtful in the sheet.
func (s *Solution) Words() []string {
	out := s.verdictWords()
	for _, e := range s.Problem.Doubts {
		out = append(out, e.Error())
	}
	return out
}

func (s *Solution) verdictWords() []string {
	var out []string
	switch s.Verdict {
	case Unreadable:
		return []string{"unreadable: nothing is cut free"}
	case Determinate:
		out = append(out, s.determinateWords())
	case SenseBroken:
		word := "determinate, sense broken"
		if len(s.Motions) > 0 {
			word += ", partly constrained"
		}
		out = append(out, word+": every unknown has one value, and not every "+s.brokenKinds()+" can act that way")
	case Indeterminate:
		out = append(out, s.indeterminateWords()...)
	case NoEquilibrium:
		if s.Problem.ResultantOnly() {
			return append(out, s.resultantWords()...)
		} else {
			out = append(out, "no equilibrium: the loads excite a motion that nothing resists")
		}
	}
	for _, i := range s.Broken {
		out = append(out, s.brokenWords(i))
	}
	out = append(out, s.motionLines()...)
	out = append(out, s.slackWords()...)
	return out
}

// resultantWords says what the known forces on each body come to.
func (s *Solution) resultantWords() []string {
	out := []string{"resultant: no unknowns, and the known forces do not balance"}
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
		if len(parts) > 0 {
			out = append(out, "the known forces on "+p.Bodies[b].Name+" come to "+strings.Join(parts, " and "))
		}
	}
	return out
}

func (s *Solution) determinateWords() string {
	word := "determinate: every unknown has one value"
	switch {
	case len(s.X) == 0:
		return "determinate: no unknowns, and the known forces balance"
	case s.load == 0:
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
		return x.Name + " is free, and no value of it lets every line keep its sense"
	case !s.rangesKnown:
		return x.Name + " is free, and what the senses leave it was not worked out"
	case math.IsInf(x.Low, -1) && math.IsInf(x.High, 1):
		return x.Name + " is unbounded"
	case math.IsInf(x.High, 1):
		return fmt.Sprintf("%s is at least %s, unbounded above", x.Name, f(x.Low))
	case math.IsInf(x.Low, -1):
		return fmt.Sprintf("%s is at most %s, unbounded below", x.Name, f(x.High))
	}
	if x.High-x.Low <= onBound*s.scaleOf(j) {
		return fmt.Sprintf("%s = %s is the one value that every sense allows", x.Name, f(x.Low))
	}
	return fmt.Sprintf("%s lies between %s and %s", x.Name, f(x.Low), f(x.High))
}

func (s *Solution) force1(v float64) string {
	return s.Problem.Units.Force.Format(v, s.Problem.Figures)
}

// brokenKinds says what kinds of things have a sense they cannot have.
func (s *Solution) brokenKinds() string {
	lines, joints := false, false
	for _, q := range s.Broken {
		lines, joints = lines || q.Line >= 0, joints || q.Joint >= 0
	}
	switch {
	case lines && joints:
		return "line and support"
	case joints:
		return "support"
	}
	return "line"
}

// brokenWords says what has a sense it cannot have, and what it does instead.
func (s *Solution) brokenWords(q Sensed) string {
	v, _ := s.single(q.Magnitude)
	size := s.force1(math.Abs(v))
	kind, would, does := "", "pull", "pushes"
	if q.Line < 0 {
		kind = s.Problem.Joints[q.Joint].Kind.String()
	} else {
		info := s.Problem.Lines[q.Line].Kind.Info()
		if kind = info.Name; info.Sense == problem.PullOnly {
			would, does = "push", "pulls"
		}
	}
	return fmt.Sprintf("%s would have to %s with %s: a %s only %s, so it %s", q.Name, would, size, kind, does, s.Problem.LetsGo(q.Line))
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
