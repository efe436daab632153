package tutor

import (
	"slices"
	"strconv"
	"strings"

	"gonum.org/v1/gonum/spatial/r3"

	"trivet/mechanics/diag"
	"trivet/mechanics/problem"
	"trivet/mechanics/say"
	"trivet/units"
)

// word is a word of an entry with its place: a name, or what stands in parentheses.
type word struct {
	text string
	at   int
}

// words splits at blanks and commas outside parentheses and quotes.
func wordsOf(text string) (all []word) {
	for i := 0; i < len(text); {
		switch c := text[i]; {
		case c == ' ' || c == ',':
			i++
		case c == '(':
			k := closed(text, i)
			all = append(all, word{text[i:k], i})
			i = k
		case c == '"':
			k := strings.IndexByte(text[i+1:], '"')
			if k < 0 {
				k = len(text) - i - 1
			}
			all = append(all, word{text[i+1 : i+1+k], i})
			i += k + 2
		default:
			k := i
			for k < len(text) && text[k] != ' ' && text[k] != ',' && text[k] != '(' {
				k++
			}
			all = append(all, word{text[i:k], i})
			i = k
		}
	}
	return all
}

// closed is the place behind the parenthesis that closes one, or the end.
func closed(text string, open int) int {
	depth := 0
	for i := open; i < len(text); i++ {
		if text[i] == '(' {
			depth++
		} else if text[i] == ')' {
			if depth--; depth == 0 {
				return i + 1
			}
		}
	}
	return len(text)
}

func (w word) span() diag.Span { return diag.Between(w.at, w.at+len(w.text)) }

// inner are the words within the parentheses of a word.
func (w word) inner() []word {
	in := wordsOf(strings.TrimSuffix(strings.TrimPrefix(w.text, "("), ")"))
	for i := range in {
		in[i].at += w.at + 1
	}
	return in
}

// claim reads what an equation is said to be: ΣFx T, ΣF along n T, ΣM A beam, ΣMx A beam,
// ΣM (A, B) beam; bodies in parentheses are cut free together.
func (t *Practice) claim(text string) (*sum, *diag.Error) {
	all := wordsOf(text)
	if len(all) > 0 && (all[0].text == "sum" || all[0].text == "Σ") {
		all = all[1:]
	}
	unread := func(at diag.Span) *diag.Error {
		return diag.At(at, strconv.Quote(strings.TrimSpace(text))+" is not the name of a sum", t.claimExample())
	}
	if len(all) == 0 {
		return nil, unread(diag.Whole(text))
	}
	head, rest := all[0], all[1:]
	what := strings.TrimPrefix(strings.TrimPrefix(head.text, "Σ"), "_")
	what = strings.Replace(what, "_", "", 1)
	switch {
	case what == "Fx" || what == "Fy" || what == "Fz" && !t.Problem.Planar:
		set, err := t.bodies(rest, head)
		k := strings.IndexByte(axisNames, what[1])
		return &sum{bodies: set, along: axes[k], words: "ΣF" + axisNames[k:k+1]}, err
	case what == "F" && len(rest) >= 2 && rest[0].text == "along":
		along, name, err := t.direction(rest[1:])
		if err != nil {
			return nil, err
		}
		n := 2
		if rest[1].text == "u" && len(rest) > 2 {
			n = 3
		}
		set, err := t.bodies(rest[n:], head)
		return &sum{bodies: set, along: along, words: "ΣF along " + name, rounded: strings.HasPrefix(name, "(")}, err
	case strings.HasPrefix(what, "M") && t.isPoint(what[1:]): // ΣM_A beam
		return t.momentClaim("", head, append([]word{{what[1:], head.at}}, rest...))
	case strings.HasPrefix(what, "M") && len(what) <= 2 && len(rest) > 0:
		return t.momentClaim(what[1:], head, rest)
	}
	return nil, unread(head.span())
}

func (t *Practice) claimExample() string {
	p := t.Problem
	if len(p.Bodies) == 0 {
		return "an equation without a claim"
	}
	return "ΣFx " + p.Bodies[0].Name + ": ... = 0"
}

func (t *Practice) momentClaim(axis string, head word, rest []word) (*sum, *diag.Error) {
	p := t.Problem
	s := &sum{moment: true}
	var err *diag.Error
	if pair := rest[0]; strings.HasPrefix(pair.text, "(") && len(pair.inner()) == 2 {
		var ends [2]r3.Vec
		for k, w := range pair.inner() {
			if ends[k], err = t.point(w); err != nil {
				return nil, err
			}
		}
		d := r3.Sub(ends[1], ends[0])
		if r3.Norm(d) == 0 || p.Planar {
			return nil, diag.At(pair.span(), "moments in the plane are taken about a point", "ΣM "+pair.inner()[0].text)
		}
		s.at, s.along, s.words = ends[0], r3.Unit(d), "ΣM about the axis "+pair.inner()[0].text+pair.inner()[1].text
		s.bodies, err = t.bodies(rest[1:], head)
		return s, err
	}
	if s.at, err = t.point(rest[0]); err != nil {
		return nil, err
	}
	k := 2
	switch {
	case axis != "" && strings.Contains(axisNames, axis) && (!p.Planar || axis == "z"):
		k = strings.Index(axisNames, axis)
	case axis == "" && p.Planar:
	case axis == "":
		return nil, diag.At(head.span(), "a moment in space is taken about an axis", "ΣMx "+rest[0].text+", or ΣM ("+rest[0].text+", "+t.otherPoint(rest[0].text)+")")
	default:
		return nil, diag.At(head.span(), strconv.Quote(head.text)+" is not the name of a sum", "ΣM "+rest[0].text)
	}
	s.along, s.words = axes[k], "ΣM about "+rest[0].text
	if !p.Planar {
		s.words = "ΣM" + axisNames[k:k+1] + " about " + rest[0].text
	}
	s.bodies, err = t.bodies(rest[1:], head)
	return s, err
}

func (t *Practice) otherPoint(name string) string {
	for _, p := range t.Problem.Points {
		if p.Name != name {
			return p.Name
		}
	}
	return "B"
}

func (t *Practice) isPoint(name string) bool {
	_, ok := t.Problem.Find(name, problem.APoint)
	return ok
}

func (t *Practice) point(w word) (r3.Vec, *diag.Error) {
	of, err := t.find("point", w.text, problem.APoint)
	if err != nil {
		err.Span = w.span()
		return r3.Vec{}, err
	}
	return t.Problem.Points[of.Index].At, nil
}

// suggested is the name that a mistyped one most likely stands for, else the names.
func suggested(wrong string, known []string) string {
	if s := units.Suggest(wrong, known); s != "" {
		return s
	}
	return say.Or(known[:min(len(known), 4)]...)
}

// bodies reads a body, or bodies in parentheses. Where there is only one it may be left out.
func (t *Practice) bodies(all []word, head word) ([]bool, *diag.Error) {
	p := t.Problem
	names := make([]string, len(p.Bodies))
	for i := range p.Bodies {
		names[i] = p.Bodies[i].Name
	}
	if len(all) == 1 && strings.HasPrefix(all[0].text, "(") {
		all = all[0].inner()
	}
	set := make([]bool, len(p.Bodies))
	if len(all) == 0 {
		if len(p.Bodies) == 1 {
			set[0] = true
			return set, nil
		}
		return nil, diag.At(head.span(), "the body is missing", strings.TrimSpace(head.text)+" "+say.Or(names[:min(len(names), 4)]...))
	}
	for _, w := range all {
		i := slices.Index(names, w.text)
		if i < 0 {
			return nil, diag.At(w.span(), "there is no body "+strconv.Quote(w.text), suggested(w.text, names))
		}
		set[i] = true
	}
	return set, nil
}

// direction reads what a sum is taken along: a line, the n of an own vector, a vector.
func (t *Practice) direction(all []word) (r3.Vec, string, *diag.Error) {
	w := all[0]
	if w.text == "u" && len(all) > 1 {
		w = all[1]
	}
	if v, ok := t.own(w.text); ok {
		return v, w.text, nil
	}
	if of, ok := t.Problem.Find(w.text, problem.ALine); ok {
		if u, ok := t.Problem.Lines[of.Index].Direction(); ok {
			return u, w.text, nil
		}
	}
	if v, err := t.vector(w.text, units.Number); err == nil && r3.Norm(v) > 0 {
		return r3.Unit(v), w.text, nil
	}
	return r3.Vec{}, "", diag.At(w.span(), strconv.Quote(w.text)+" is not a direction", "the name of a line, or a vector such as (3, 4)")
}

// vector reads a vector of a dimension.
func (t *Practice) vector(text string, d units.Dim) (r3.Vec, *diag.Error) {
	v, err := t.eval(text, nil)
	if err != nil {
		return r3.Vec{}, err
	}
	if v, err = units.WantVector(v, d, t.Problem.Units.For(d), diag.Whole(text)); err != nil {
		return r3.Vec{}, err
	}
	return r3.Vec{X: v.V[0], Y: v.V[1], Z: v.V[2]}, nil
}
