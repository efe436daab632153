package tutor

import (
	"fmt"
	"math"
	"regexp"
	"slices"
	"strings"

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

// Hint gives the next hint, from where the student stands. Each one counts but one that says
// nothing new: the last stage of a step once more, or that nothing is left to hint at.
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
	if t.stage < stages {
		t.hints++
		t.stage++
	}
	return Hint{t.stage, t.hintAt(&t.order.Steps[step], t.stage)}
}

// Hinted counts a hint that was given before, up to this stage of the step that comes next.
func (t *Practice) Hinted(stage int) {
	if step := t.nextStep(); step >= 0 {
		t.at, t.stage = step, stage
		t.hints++
	}
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
	what := "forces"
	if e.Moment {
		what = "moments"
	}
	switch stage {
	case 1:
		return "Look at " + t.subject(&s) + ", and at a sum of " + what + "."
	case 2:
		return "Write " + t.sumWords(e) + " on " + t.subject(&s) + t.because(e) + "."
	case 3:
		return "The sum " + t.sumWords(e) + " on " + s.group(p) + " contains " + say.And(t.termsOf(&s)...) + t.lacking(&s) + "."
	}
	return t.equationText(&s, t.claimText(e, &s))
}

// subject names the bodies of a sum with their kind.
func (t *Practice) subject(s *sum) string {
	p := t.Problem
	for i := range p.Bodies {
		switch {
		case !s.bodies[i] || size(s.bodies) > 1:
		case p.Bodies[i].Particle:
			return "particle " + p.Bodies[i].Name
		default:
			return "the body " + p.Bodies[i].Name
		}
	}
	return s.group(p) + " as one free body"
}

// whys say why one force, or more, are not in a sum.
var whys = map[handsolve.Why][2]string{
	handsolve.Through:       {"passes through that point", "pass through that point"},
	handsolve.Intersects:    {"intersects that axis", "intersect that axis"},
	handsolve.Parallel:      {"is parallel to that axis", "are parallel to that axis"},
	handsolve.Perpendicular: {"is perpendicular to that direction", "are perpendicular to that direction"},
	handsolve.IsCouple:      {"is a couple", "are couples"},
}

// because says which unknowns an equation does not contain, and why.
func (t *Practice) because(e *handsolve.Equation) string {
	var why []string
	for _, d := range e.Drops {
		if d.Why == handsolve.Perpendicular && !e.Moment && e.Named.Axis == 0 {
			continue // the direction was said by them
		}
		names := say.Each(d.Symbols, func(k int) string { return t.order.Name(t.Problem, k) })
		if says, ok := whys[d.Why]; ok && len(names) > 0 {
			why = append(why, say.AndMore(names, 4)+" "+says[min(len(names)-1, 1)])
		}
	}
	if len(why) == 0 {
		return ""
	}
	return ": " + say.And(why...)
}

// termsOf are the forces that are in a sum.
func (t *Practice) termsOf(s *sum) (terms []string) {
	for i := range t.forces {
		if f := &t.forces[i]; s.part(f) != 0 {
			if n := t.nameOf(f); !slices.Contains(terms, n) {
				terms = append(terms, n)
			}
		}
	}
	return terms
}

// lacking names the forces that the student's last claim of the same sum did not have.
func (t *Practice) lacking(s *sum) string {
	row := s.exact(t.forces, len(t.Problem.Unknowns))
	for i := len(t.equation) - 1; i >= 0; i-- {
		w := &t.equation[i]
		if len(w.sums) == 0 || !slices.Equal(w.sums[0].exact(t.forces, len(row)-1), row) {
			continue
		}
		var names []string
		for k, u := range t.Problem.Unknowns {
			if row[k] != 0 && w.c[k] == 0 {
				names = append(names, u.Name)
			}
		}
		if len(names) > 0 {
			return "; yours lacks " + say.And(names...)
		}
		return ""
	}
	return ""
}

// sumWords is what a sum is called.
func (t *Practice) sumWords(e *handsolve.Equation) string {
	p := t.Problem
	switch n := &e.Named; {
	case !e.Moment && e.Named.Axis != 0 && !e.Unnamed():
		return "ΣF" + string(n.Axis)
	case !e.Moment:
		return "ΣF " + t.slanted(e)
	case !e.Unnamed() && !p.Planar && e.Named.To < 0 && e.Named.Axis != 0:
		return "ΣM" + string(e.Named.Axis) + " about " + p.Points[e.Named.Point].Name
	case !e.Unnamed():
		return t.order.Short(p, e)
	case p.Planar:
		return "ΣM about " + p.Place(e.At)
	}
	return "ΣM about an axis through " + p.Place(e.At) + t.parallel(" along ", e.Along)
}

// slanted says in which direction, of no axis, forces are summed: in words, since its components
// are for the student to find.
func (t *Practice) slanted(e *handsolve.Equation) string {
	for _, d := range e.Drops {
		if d.Why == handsolve.Perpendicular {
			return "perpendicular to " + say.And(say.Each(d.Symbols, func(k int) string { return t.order.Name(t.Problem, k) })...)
		}
	}
	if says := t.parallel("along ", e.Along); says != "" {
		return says
	}
	return "in a slanted direction"
}

// parallel names a line of a direction, behind a word; empty where none has it.
func (t *Practice) parallel(word string, along r3.Vec) string {
	for i := range t.Problem.Lines {
		l := &t.Problem.Lines[i]
		if u, ok := l.Direction(); ok && l.OK && r3.Norm(r3.Cross(u, along)) < tiny {
			return word + l.Name
		}
	}
	return ""
}

// claimText is a sum as an entry claims it, "" where no claim can say it.
func (t *Practice) claimText(e *handsolve.Equation, s *sum) string {
	p := t.Problem
	var bodies []string
	for i := range p.Bodies {
		if s.bodies[i] {
			bodies = append(bodies, quotedName(p.Bodies[i].Name))
		}
	}
	on := " " + bodies[0] + ": "
	if len(bodies) > 1 {
		on = " (" + strings.Join(bodies, ", ") + "): "
	}
	n := &e.Named
	point := func(i int) string { return quotedName(p.Points[i].Name) }
	switch {
	case !e.Moment && !e.Unnamed():
		return "ΣF" + string(n.Axis) + on
	case !e.Moment:
		return fmt.Sprintf("ΣF along %s", t.tuple(e.Along)) + on
	case e.Unnamed():
		return ""
	case p.Planar:
		return "ΣM " + point(n.Point) + on
	case n.To >= 0:
		return "ΣM (" + point(n.Point) + ", " + point(n.To) + ")" + on
	case n.Axis != 0:
		return "ΣM" + string(n.Axis) + " " + point(n.Point) + on
	}
	return ""
}

// tuple is a direction as an entry has it, precise enough to be held against.
func (t *Practice) tuple(v r3.Vec) string {
	text := units.Figures(v.X, preciseFigures) + ", " + units.Figures(v.Y, preciseFigures)
	if !t.Problem.Planar {
		text += ", " + units.Figures(v.Z, preciseFigures)
	}
	return "(" + text + ")"
}

// preciseFigures is more than the coefficients of a hint have.
const preciseFigures = 6

// quotedName is a name as an entry has it.
func quotedName(name string) string {
	if identifierForm.MatchString(name) {
		return name
	}
	return `"` + name + `"`
}

var identifierForm = regexp.MustCompile(`^[\pL_][\pL\pN_]*$`)

// equationText is an equation with its numbers, behind its claim, as it may be entered. A
// number alone takes the unit of the sum.
func (t *Practice) equationText(s *sum, claim string) string {
	p := t.Problem
	n := len(p.Unknowns)
	row := s.exact(t.forces, n)
	text := ""
	put := func(v float64, name string) {
		switch {
		case text == "" && v < 0:
			text = "-"
		case text != "" && v < 0:
			text += " - "
		case text != "":
			text += " + "
		}
		v = math.Abs(v)
		number := units.Figures(v, max(p.Figures, figures))
		_, unit := units.Find(name)
		switch {
		case name == "":
			text += number
		case math.Abs(v-1) < rounding:
			text += quotedName(name)
		case unit:
			text += number + "*" + quotedName(name)
		default:
			text += number + " " + quotedName(name)
		}
	}
	top := largest(row[:n])
	for k := range n {
		v := row[k]
		if math.Abs(v) <= rounding*top {
			continue
		}
		if s.moment && p.Unknowns[k].Dim == units.Force {
			v /= p.Units.Length.Factor
		}
		put(v, p.Unknowns[k].Name)
	}
	d := units.Force
	if s.moment {
		d = units.Moment
	}
	if row[n] != 0 {
		put(row[n]/p.Units.For(d).Factor, "")
	}
	return claim + text + " = 0"
}
