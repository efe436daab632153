package tutor

import (
	"slices"
	"strconv"
	"strings"

	"trivet/mechanics/diag"
	"trivet/mechanics/problem"
	"trivet/mechanics/say"
)

// freeBody judges the forces that a student says act on a body, or on bodies cut free
// together: cut beam: Ax Ay B W.
func (t *Practice) freeBody(m []string) Judgement {
	p := t.Problem
	head := wordsOf(m[1])
	set, err := t.bodies(head, word{text: m[1], at: len("cut ")})
	if err != nil {
		return unread(FreeBody, moved(err, len("cut ")))
	}
	s := &sum{bodies: set}
	j := Judgement{Kind: FreeBody, Is: "the free body of " + s.group(p), on: set}
	at := strings.Index(m[0], ":") + 1
	var named []string
	words := wordsOf(m[2])
	for i := 0; i < len(words); i++ {
		w := words[i]
		name, ok := t.forceName(w.text)
		if !ok {
			return unread(FreeBody, diag.At(diag.Between(at+w.at, at+w.at+len(w.text)), "there is no force "+strconv.Quote(w.text), suggested(w.text, t.forceNames())))
		}
		named = append(named, name)
		if i+1 < len(words) && (words[i+1].text == "pulls" || words[i+1].text == "pushes") {
			i++
			if j, wrong := t.wrongSense(j, name, words[i].text); wrong {
				return j
			}
		}
	}
	var acting, missing, internal, elsewhere []string
	for i := range t.forces {
		f := &t.forces[i]
		for _, name := range t.namesOf(f) {
			switch acts := f.on(set); {
			case acts && !slices.Contains(acting, name):
				acting = append(acting, name)
				if !slices.Contains(named, name) {
					missing = append(missing, name)
				}
			case !acts && slices.Contains(named, name) && !t.actsBesides(name, set):
				if t.touches(f, set) {
					internal = append(internal, name)
				} else {
					elsewhere = append(elsewhere, name)
				}
			}
		}
	}
	j.Verdict = Wrong
	switch n := len(missing); {
	case n > 0:
		j.Mistake = &Mistake{Kind: "missing-force"}
		j.Says = "The free body of " + s.group(p) + " is not complete: " + strconv.Itoa(n) + " " + say.Plural(n, "force") + " " + say.Plural(n, "is") + " missing"
		if 2*n <= len(acting) { // the rest is for the student to find
			j.Mistake.Term = missing[0]
			j.Says += map[bool]string{true: ": ", false: ", among them "}[n == 1] + missing[0]
		}
		j.Says += "."
	case len(internal) > 0:
		j.Mistake = &Mistake{"extra-force", internal[0]}
		j.Says = internal[0] + " is internal to the bodies cut free together: it acts on both and cancels."
	case len(elsewhere) > 0:
		j.Mistake = &Mistake{"extra-force", elsewhere[0]}
		j.Says = elsewhere[0] + " does not act on " + s.group(p) + "."
	default:
		j.Verdict, j.Says = Right, "The free body of "+s.group(p)+" is complete."
		for b, in := range set {
			t.cut[b] = t.cut[b] || in
		}
		return j
	}
	return j
}

// namesOf are the names that a force has on a free body: that of its line, and of a rough
// surface where slip impends both the normal force and the friction that is tied to it.
func (t *Practice) namesOf(f *force) []string {
	p, name := t.Problem, t.nameOf(f)
	switch {
	case f.unknown < 0:
	case f.of.Thing == problem.ALine && p.Unknowns[f.unknown].Line != f.of.Index:
		return []string{p.NameOf(f.of)}
	case f.of.Thing == problem.AJoint:
		friction := p.Joints[f.of.Index].Name + "F"
		if q, err := problem.ParseQuery(p, friction); err == nil && q.Kind == problem.AskFriction {
			return []string{name, friction}
		}
	}
	return []string{name}
}

// forceNames are the names that forces on bodies have in an entry.
func (t *Practice) forceNames() (all []string) {
	for i := range t.forces {
		for _, name := range t.namesOf(&t.forces[i]) {
			if !slices.Contains(all, name) {
				all = append(all, name)
			}
		}
	}
	return all
}

// forceName is the force that a word names: a weight also by its body's name before
// .weight, or by W where that is no other name, a moment also as a result names it.
func (t *Practice) forceName(text string) (string, bool) {
	known := t.forceNames()
	if slices.Contains(known, text) {
		return text, true
	}
	if plain := problem.Unprinted(text, func(s string) bool { return slices.Contains(known, s) }); slices.Contains(known, plain) {
		return plain, true
	}
	for _, name := range known {
		if body, ok := strings.CutPrefix(name, "the weight of "); ok && (text == "W" || text == "weight" || text == body+".weight") {
			return name, true
		}
	}
	if k, ok := t.unknownAsked(text); ok && slices.Contains(known, t.Problem.Unknowns[k].Name) {
		return t.Problem.Unknowns[k].Name, true
	}
	return "", false
}

// unknownAsked is the unknown that a result names: MA is the only moment MAz of a support
// in the plane.
func (t *Practice) unknownAsked(name string) (int, bool) {
	q, err := problem.ParseQuery(t.Problem, name)
	return q.Of.Index, err == nil && q.Kind == problem.AskValue && q.Of.Thing == problem.AnUnknown
}

// touches tells whether a force acts on one of some bodies at all.
func (t *Practice) touches(f *force, set []bool) bool {
	return slices.ContainsFunc(f.pieces, func(p piece) bool { return p.body >= 0 && set[p.body] })
}

// actsBesides tells whether another force of the same name acts on the bodies.
func (t *Practice) actsBesides(name string, set []bool) bool {
	for i := range t.forces {
		if f := &t.forces[i]; slices.Contains(t.namesOf(f), name) && f.on(set) {
			return true
		}
	}
	return false
}

// wrongSense judges pulls and pushes: of what can act in one sense only.
func (t *Practice) wrongSense(j Judgement, name, sense string) (Judgement, bool) {
	of, ok := t.Problem.Find(name, problem.ALine)
	if !ok {
		return j, false
	}
	kind := t.Problem.Lines[of.Index].Kind
	can := ""
	switch kind.Info().Sense {
	case problem.PullOnly:
		can = "pulls"
	case problem.PushOnly, problem.PressOnly:
		can = "pushes"
	default:
		return j, false
	}
	if can == sense {
		return j, false
	}
	j.Verdict, j.Mistake = Wrong, &Mistake{"sign", name}
	j.Says = "A " + kind.Info().Noun + " " + can + ": look at " + name + "."
	return j, true
}
