package tutor

import (
	"math"
	"slices"
	"strings"

	"gonum.org/v1/gonum/spatial/r3"

	"trivet/mechanics/diag"
	"trivet/mechanics/problem"
	"trivet/units"
)

// vectorOf judges r, u or F of a line.
func (t *Practice) vectorOf(letter, name, text string, at int) Judgement {
	p := t.Problem
	of, err := t.find("line", name, problem.ALine)
	if err != nil {
		return unread(VectorKind, err)
	}
	line := &p.Lines[of.Index]
	if len(line.Legs) == 0 || line.Legs[0].To < 0 && letter == "r" {
		return unread(VectorKind, diag.New("the line "+name+" has no second point, so it has no position vector", "u "+name))
	}
	leg := line.Legs[0]
	subject := letter + " " + name
	var j Judgement
	switch letter {
	case "r":
		j = t.compare(subject, text, at, units.Length, leg.R, vectorMistakes(leg.R, false))
	case "u":
		j = t.compare(subject, text, at, units.Number, leg.U, unitMistakes(leg))
	default:
		j = t.forceVector(subject, of, leg, text, at)
	}
	if j.Verdict == Right {
		t.vectored[of.Index] = true
	}
	return j
}

// forceVector judges F as a multiple of the magnitude, T1 (0.6, 0.8), or in components.
func (t *Practice) forceVector(subject string, of problem.Source, leg problem.Leg, text string, at int) Judgement {
	if rest, ok := strings.CutPrefix(strings.TrimSpace(text), t.Problem.NameOf(of)); ok {
		rest = strings.TrimLeft(strings.TrimPrefix(strings.TrimLeft(rest, " "), "*"), " ")
		if strings.HasPrefix(rest, "(") {
			return t.compare(subject, rest, at+strings.Index(text, rest), units.Number, leg.U, unitMistakes(leg))
		}
	}
	size, ok := t.solution.Magnitude(of.Index)
	if !ok {
		size = math.NaN() // no vector is right, and why is what the student is to find
	}
	f := r3.Scale(size, leg.U)
	return t.compare(subject, text, at, units.Force, f, vectorMistakes(f, true))
}

// momentOf judges the moment of one force about a point.
func (t *Practice) momentOf(about, name, text string, at int) Judgement {
	p := t.Problem
	q, err := t.find("point", about, problem.APoint)
	if err != nil {
		return unread(MomentKind, err)
	}
	of, err := t.find("force", name, problem.ALine)
	if err == nil && len(p.Lines[of.Index].Acts) == 0 {
		err = t.noSuch("force", name, problem.ALine)
	}
	if err != nil {
		return unread(MomentKind, err)
	}
	act := &p.Lines[of.Index].Acts[0]
	f := t.solution.Sum(act.Force)
	if _, _, err := t.solution.ForceOf(of); err != nil {
		f = r3.Scale(math.NaN(), act.Force.Const) // no moment is right
	}
	if v, err := t.eval(strings.TrimRight(text, " "), nil); err == nil && len(v.Terms) > 0 { // 2.4 m*BC: per unit of the force
		d, ok := t.multipleOf(act, v)
		if !ok {
			return unread(MomentKind, diag.At(diag.Between(at, at+len(text)), strings.TrimSpace(text)+" is not a multiple of "+name, "a value in "+p.Units.For(units.Moment).Symbol+", or an arm times "+name))
		}
		f = d
	}
	m := func(from r3.Vec) r3.Vec { return r3.Cross(r3.Sub(act.At, from), f) }
	exact := m(p.Points[q.Index].At)
	var wrong []vectorMistake
	wrong = append(wrong, vectorMistake{"r-cross-f", r3.Scale(-1, exact), "It is r × F, in that order: look at the sign."})
	for i := range p.Points {
		if i != q.Index && p.Points[i].OK {
			wrong = append(wrong, vectorMistake{"arm-point", m(p.Points[i].At), "The arm is measured from another point than " + about + "."})
		}
	}
	wrong = append(wrong, vectorMistake{"arm-distance", scaledTo(exact, r3.Norm(r3.Sub(act.At, p.Points[q.Index].At))*r3.Norm(f)), "The arm is the perpendicular distance to the line of action, not the distance to the point of application."})
	return t.compare("M "+about+" "+name, text, at, units.Moment, exact, wrong)
}

// multipleOf is a force per unit of its unknown where a moment in the plane is written as a
// multiple of just that.
func (t *Practice) multipleOf(act *problem.Act, v units.Value) (r3.Vec, bool) {
	if !t.Problem.Planar || len(v.Terms) != 1 || v.N != 1 || v.V[0] != 0 || len(act.Force.Terms) != 1 || act.Force.Const != (r3.Vec{}) {
		return r3.Vec{}, false
	}
	of := act.Force.Terms[0]
	return of.D, t.Problem.Unknowns[of.Unknown].Name == v.Terms[0].Name
}

func scaledTo(v r3.Vec, size float64) r3.Vec {
	if n := r3.Norm(v); n > 0 {
		return r3.Scale(size/n, v)
	}
	return v
}

// lengthOf judges |r T1|.
func (t *Practice) lengthOf(name, text string, at int) Judgement {
	q, err := problem.ParseQuery(t.Problem, name+".length")
	if err != nil {
		return unread(LengthKind, err)
	}
	return t.valueOf(q, text, at)
}

// vectorMistake is a wrong vector with what it comes from.
type vectorMistake struct {
	kind MistakeKind
	v    r3.Vec
	says string
}

func vectorMistakes(v r3.Vec, force bool) []vectorMistake {
	says := "It points the other way: r runs from the first point to the second."
	if force {
		says = "It points the other way: look at the sense of the force."
	}
	all := []vectorMistake{{"reversed", r3.Scale(-1, v), says}}
	for k, e := range axes {
		other := r3.Sub(v, r3.Scale(2*problem.Component(v, k), e))
		all = append(all, vectorMistake{"sign", other, "Look at the " + axisNames[k:k+1] + " component: the coordinates are subtracted the wrong way round."})
	}
	return all
}

func unitMistakes(leg problem.Leg) []vectorMistake {
	all := vectorMistakes(leg.U, false)
	return append(all, vectorMistake{"not-normalised", leg.R, "A unit vector is r divided by its length."})
}

// compare holds a vector, or in the plane a moment as one number, against the exact one.
func (t *Practice) compare(subject, text string, at int, d units.Dim, exact r3.Vec, mistakes []vectorMistake) Judgement {
	p := t.Problem
	j := Judgement{Kind: VectorKind}
	scalar := d == units.Moment && p.Planar
	if d == units.Moment {
		j.Kind = MomentKind
	}
	text = strings.TrimRight(text, " ")
	parse := func(text string) (r3.Vec, *diag.Error) {
		if !scalar {
			return t.vector(text, d)
		}
		v, err := t.eval(text, nil)
		if err == nil && len(v.Terms) == 1 {
			v.V[0] = v.Terms[0].Coef
		}
		if err == nil && v.Dim == units.Force && v.N == 1 && t.namesForce(text) { // a bare arm before its name
			return r3.Vec{Z: v.V[0] * p.Units.Length.Factor}, nil
		}
		if err == nil {
			v, err = units.Want(v, d, p.Units.For(d), diag.Whole(text))
		}
		return r3.Vec{Z: v.V[0]}, err
	}
	v, err := parse(text)
	if err != nil {
		return unread(j.Kind, moved(err, at))
	}
	var half r3.Vec
	for _, x := range append(literals(text), t.rounded(text, nil)...) {
		other, err := parse(x.raised(text))
		if err != nil {
			continue
		}
		half.X += math.Abs(other.X - v.X)
		half.Y += math.Abs(other.Y - v.Y)
		half.Z += math.Abs(other.Z - v.Z)
	}
	size := math.Max(r3.Norm(exact), tiny)
	within := func(w r3.Vec, share float64) bool {
		for k := range axes {
			if off := math.Abs(problem.Component(v, k) - problem.Component(w, k)); !(off <= problem.Component(half, k)+(rounding+share)*size) {
				return false
			}
		}
		return true
	}
	switch {
	case within(exact, 0):
		j.Verdict, j.Says = Right, subject+" is right."
		return j
	case within(exact, near):
		j.Verdict, j.Mistake = Imprecise, &Mistake{"figures", subject}
		j.Says = subject + " is close, but not right to the digits typed: give three significant figures."
		return j
	}
	j.Verdict = Wrong
	found := map[MistakeKind]string{}
	for _, m := range mistakes {
		if within(m.v, 0.002) && r3.Norm(r3.Sub(m.v, exact)) > tiny*size {
			found[m.kind] = m.says
		}
	}
	j.Says = subject + " is not right. Look at the coordinates of its two points."
	if j.Kind == MomentKind {
		j.Says = subject + " is not right. Look at the arm and at the force."
	}
	if len(found) == 1 {
		for kind, says := range found {
			j.Mistake, j.Says = &Mistake{kind, subject}, says
		}
	}
	return j
}

// namesForce tells whether a text has the name of a force that no unit has.
func (t *Practice) namesForce(text string) bool {
	return slices.ContainsFunc(nameForm.FindAllString(text, -1), func(name string) bool {
		_, unit := units.Find(name)
		return !unit && t.isName(name)
	})
}

// ownVector judges n = u T1 x u T2 and keeps n as a direction.
func (t *Practice) ownVector(name, one, two, text string) Judgement {
	p := t.Problem
	var u [2]r3.Vec
	for k, w := range []string{one, two} {
		of, err := t.find("line", w, problem.ALine)
		if err == nil && len(p.Lines[of.Index].Legs) == 0 {
			err = t.noSuch("line", w, problem.ALine)
		}
		if err != nil {
			return unread(VectorKind, err)
		}
		u[k] = p.Lines[of.Index].Legs[0].U
	}
	n := r3.Cross(u[0], u[1])
	j := t.compare(name, text, 0, units.Number, n, []vectorMistake{{"reversed", r3.Scale(-1, n), "The factors of the cross product are exchanged."}})
	if j.Verdict == Right && r3.Norm(n) > tiny {
		if t.vectors == nil {
			t.vectors = map[string]r3.Vec{}
		}
		t.vectors[name] = r3.Unit(n)
	}
	return j
}

// own is a direction that the student has named.
func (t *Practice) own(name string) (r3.Vec, bool) {
	v, ok := t.vectors[name]
	return v, ok
}
