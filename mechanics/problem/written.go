package problem

import (
	"math"
	"strings"
	"unicode"

	"trivet/units"
)

// Written is a value of a result as a person wrote it. Value has the sign that the
// word for its sense gives it; Sense is that word, "" where none is written.
type Written struct {
	units.Printed
	Sense string // tension, compression, push or pull
}

// senses are the words for a sense, and the single letters, which are capitals: t is
// a tonne.
var senses = []struct{ word, means string }{
	{"T", "tension"}, {"C", "compression"}, {"tension", "tension"}, {"compression", "compression"},
	{"tens.", "tension"}, {"comp.", "compression"}, {"tens", "tension"}, {"comp", "compression"},
	{"push", "push"}, {"pull", "pull"},
}

// ReadWritten reads a value of a result as people write it: "761 N", "2*761 N",
// "1,200 lb", "2.5 kN T", "2887 lb (C)", "288.7 lb compression". A bare number is in
// the unit bare. The word for a sense is the last, behind a unit or in parentheses,
// and behind a bare number where headed says that its unit stands elsewhere, as in
// the head of a column. It sets the sign by the convention of the line: 5 kN C is
// +5 kN of a strut and -5 kN of a cable, link or spring. What has no sense, such as
// a reaction, takes none.
func (p *Problem) ReadWritten(q Query, text string, bare units.Unit, headed bool) (Written, *units.Error) {
	rest, word, sense, closed := cutSense(text)
	if rest == "" {
		return Written{}, &units.Error{Span: whole(text), Msg: "there is no number", Hint: "write one, with its unit where it is not the sheet's"}
	}
	printed, err := units.ReadPrintedIn(rest, p.Units, bare, p.gravity())
	if err != nil {
		return Written{}, err
	}
	w := Written{Printed: printed, Sense: sense}
	if sense == "" {
		return w, nil
	}
	if w.Grouped != "" {
		w.Grouped += strings.TrimSpace(text)[len(rest):]
	}
	if err := p.sensed(q, &w); err != nil {
		err.Span = whole(text)
		return w, err
	}
	if !closed && !headed && !w.Unit {
		rest = strings.TrimSpace(rest)
		return w, &units.Error{Span: whole(text), Msg: word + " stands behind a unit or in parentheses",
			Hint: "Try: " + rest + " " + bare.Symbol + " " + word + ", or " + rest + " (" + word + ")"}
	}
	return w, nil
}

// cutSense takes the word for a sense from behind a number: "1.2 kN C",
// "1.2 kN (tension)".
func cutSense(text string) (rest, word, means string, closed bool) {
	text = strings.TrimSpace(text)
	last := text
	if i := strings.LastIndexFunc(text, func(c rune) bool { return unicode.IsSpace(c) || c == '(' || c == ',' }); i > 0 {
		last = strings.TrimLeftFunc(text[i:], func(c rune) bool { return unicode.IsSpace(c) || c == ',' })
	}
	bare := strings.TrimSuffix(strings.TrimPrefix(last, "("), ")")
	for _, s := range senses {
		if bare == s.word || len(s.word) > 1 && strings.EqualFold(bare, s.word) {
			rest = strings.TrimRightFunc(strings.TrimSuffix(text, last), func(c rune) bool { return unicode.IsSpace(c) || c == ',' })
			return rest, bare, s.means, bare != last
		}
	}
	return text, "", "", false
}

// sensed gives a value the sign of its sense, by what is positive of the line's kind.
func (p *Problem) sensed(q Query, w *Written) *units.Error {
	line := p.SensedLine(q)
	if line < 0 {
		what := q.Name + " has no tension or compression"
		if q.Kind == AskMagnitude {
			return &units.Error{Msg: "a magnitude has no tension or compression", Hint: "Try: the value alone"}
		}
		if q.Joint >= 0 || q.Kind == AskUnknown && q.Unknown >= 0 && p.Unknowns[q.Unknown].Joint >= 0 {
			what = q.Name + " is a reaction, which has no tension or compression"
		}
		return &units.Error{Msg: what, Hint: "Try: the value with its sign"}
	}
	info := p.Lines[line].Kind.Info()
	// A minus says compression as well, where tension is positive, as everywhere but
	// with struts.
	if w.Value < 0 && (w.Sense == "tension" || w.Sense == "push") {
		return &units.Error{Msg: "there is a minus, and the word " + w.Sense, Hint: "write one of them"}
	}
	switch w.Sense {
	case info.Positive:
		w.Value = math.Abs(w.Value)
	case info.Negative:
		w.Value = -math.Abs(w.Value)
	default:
		return &units.Error{Msg: "a " + info.Name + " has no " + w.Sense, Hint: "write its sign"}
	}
	return nil
}

// SensedLine is the line whose tension, compression or push a result is, or -1: its
// own unknown or magnitude, or an unknown that is the whole magnitude of lines of one
// convention, as the tension of a rope over several stretches.
func (p *Problem) SensedLine(q Query) int {
	switch {
	case q.Kind != AskUnknown:
		return -1
	case q.Unknown < 0:
		return q.Line
	case p.Unknowns[q.Unknown].Own:
		return p.Unknowns[q.Unknown].Line
	}
	found := -1
	for i := range p.Lines {
		m := p.Lines[i].Magnitude
		if m.Const != 0 || len(m.Terms) != 1 || m.Terms[0] != (Term{Unknown: q.Unknown, Coef: 1}) {
			continue
		}
		if found >= 0 && p.Lines[found].Kind.Info().Positive != p.Lines[i].Kind.Info().Positive {
			return -1
		}
		found = i
	}
	return found
}

// gravity is the g of cells: the given of that name, else the sheet's.
func (p *Problem) gravity() float64 {
	for _, g := range p.Givens {
		if g.Name == "g" && g.Value.Dim == units.Acceleration && g.Value.N == 1 {
			return g.Value.V[0]
		}
	}
	return p.G
}
