package tutor

import (
	"slices"

	"gonum.org/v1/gonum/spatial/r3"

	"trivet/mechanics/handsolve"
	"trivet/mechanics/say"
	"trivet/units"
)

// Hint is what is said to one who asks where to go on: stage 1 where to look, 2 which
// equation and why, 3 its terms, 4 the equation with its numbers. Last tells that it was
// the last stage of its step.
type Hint struct {
	Stage int
	Says  string
}

// stages is how many there are of a step.
const stages = 4

// Hint gives the next hint, from where the student stands. Each one asked for counts.
func (t *Practice) Hint() Hint {
	step := t.nextStep()
	if step < 0 {
		if t.verdictIsAsked() {
			return Hint{1, "Count the unknowns and the equations, then look at the senses that cables and contacts can have."}
		}
		for _, q := range t.asked() {
			if !t.done[q.Name] {
				return Hint{1, "All equations that are needed are there: work out " + q.Name + "."}
			}
		}
		return Hint{1, "Everything that is asked is answered."}
	}
	if step != t.at || t.hints == 0 {
		t.at, t.stage = step, 0
	}
	t.hints++
	t.stage = min(t.stage+1, stages)
	return Hint{t.stage, t.hintAt(&t.order.Steps[step], t.stage)}
}

// Hints is how many were asked for.
func (t *Practice) Hints() int { return t.hints }

// nextStep is the first step of the hand solution that the student has neither the value of
// nor the equation.
func (t *Practice) nextStep() int {
	for i := range t.order.Steps {
		s := &t.order.Steps[i]
		if s.Kind != handsolve.One && s.Kind != handsolve.Together {
			continue
		}
		found := !slices.ContainsFunc(s.Finds, func(f handsolve.Found) bool { return !t.hasValue(f.Symbol) })
		entered := !slices.ContainsFunc(s.Equations, func(e handsolve.Equation) bool { return !t.entered(&e) })
		if !found && !entered {
			return i
		}
	}
	return -1
}

func (t *Practice) hasValue(symbol int) bool {
	return symbol < len(t.Problem.Unknowns) && t.done[t.Problem.Unknowns[symbol].Name]
}

// sumOf is the equation of a hand solution as a sum.
func (t *Practice) sumOf(e *handsolve.Equation) sum {
	set := make([]bool, len(t.Problem.Bodies))
	for _, b := range e.Bodies {
		set[b] = true
	}
	s := sum{bodies: set, moment: e.Moment, along: e.Along, at: e.At}
	if s.moment && t.Problem.Planar && s.along == (r3.Vec{}) {
		s.along = axes[2]
	}
	return s
}

// entered tells whether an equation follows from those that were entered.
func (t *Practice) entered(e *handsolve.Equation) bool {
	s := t.sumOf(e)
	row := s.exact(t.forces, len(t.Problem.Unknowns))
	was := len(t.rows)
	adds := t.adds(row)
	t.rows = t.rows[:was]
	return !adds
}

func (t *Practice) hintAt(step *handsolve.Step, stage int) string {
	p := t.Problem
	e := &step.Equations[0]
	for i := range step.Equations {
		if !t.entered(&step.Equations[i]) {
			e = &step.Equations[i]
			break
		}
	}
	s := t.sumOf(e)
	body := s.group(p)
	name := t.order.Short(p, e)
	what := "forces"
	if e.Moment {
		what = "moments"
	}
	switch stage {
	case 1:
		return "Look at " + body + ", and at a sum of " + what + "."
	case 2:
		why := ""
		var passing []string
		for _, d := range e.Drops {
			for _, k := range d.Symbols {
				passing = append(passing, t.order.Name(p, k))
			}
		}
		if len(passing) > 0 {
			why = ": " + say.AndMore(passing, 4) + " " + say.Plural(len(passing), "has") + " no part in it"
		}
		return "Write " + name + " on " + body + why + "."
	case 3:
		var terms []string
		for i := range t.forces {
			if f := &t.forces[i]; s.part(f) != 0 {
				if n := t.nameOf(f); !slices.Contains(terms, n) {
					terms = append(terms, n)
				}
			}
		}
		return name + " on " + body + " has terms of " + say.And(terms...) + "."
	}
	return t.equationText(&s, name, body)
}

// equationText is an equation with its numbers.
func (t *Practice) equationText(s *sum, name, body string) string {
	p := t.Problem
	n := len(p.Unknowns)
	row := s.exact(t.forces, n)
	text := ""
	put := func(v float64, what string) {
		switch {
		case text == "" && v < 0:
			text = "-"
		case text != "" && v < 0:
			text += " - "
		case text != "":
			text += " + "
		}
		if v < 0 {
			v = -v
		}
		text += units.Figures(v, max(p.Figures, figures)) + what
	}
	for k := range n {
		v := row[k]
		if s.moment && p.Unknowns[k].Dim == units.Force {
			v /= p.Units.Length.Factor
		}
		if v != 0 {
			put(v, " "+p.Unknowns[k].Name)
		}
	}
	d := units.Force
	if s.moment {
		d = units.Moment
	}
	if row[n] != 0 {
		put(row[n]/p.Units.For(d).Factor, " "+p.Units.For(d).Symbol)
	}
	return name + " " + body + ": " + text + " = 0"
}
