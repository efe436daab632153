package problem

import (
	"math"
	"strconv"
	"strings"
	"unicode"

	"trivet/mechanics/diag"
	"trivet/mechanics/sheet"
	"trivet/units"
)

// Written is a value of a result as a person wrote it. Value has the sign that the
// word for its sense gives it; Sense is that word, "" where none is written.
type Written struct {
	units.Printed
	Sense string // tension, compression, push or pull
}

// senses are the words for a sense, and the single letters, which are capitals where
// they are not in parentheses: t is a tonne.
var senses = []struct{ word, means string }{
	{"T", "tension"}, {"C", "compression"}, {"tension", "tension"}, {"compression", "compression"},
	{"tensile", "tension"}, {"compressive", "compression"}, {"tens", "tension"}, {"comp", "compression"},
	{"push", "push"}, {"pull", "pull"},
}

const senseWords = "T, C, (T), (C), tension or compression"

// ReadWritten reads a value of a result as people write it: "761 N", "2*761 N",
// "1,200 lb", "2.5 kN T", "2887 lb (C)", "288.7 lb compression". A bare number is in
// the unit bare. The word for a sense is the last, behind a unit or in parentheses,
// and behind a bare number where headed says that its unit stands elsewhere, as in
// the head of a column. It sets the sign by the convention of the line: 5 kN C is
// +5 kN of a strut and -5 kN of a cable, link or spring. What has no sense, such as
// a reaction, takes none.
func (p *Problem) ReadWritten(q Query, text string, bare units.Unit, headed bool) (Written, *diag.Error) {
	rest, word, sense, closed := cutSense(text)
	if rest == "" {
		return Written{}, diag.At(whole(text), "a number is missing", "a number, with its unit if it is not that of the sheet")
	}
	printed, err := units.ReadPrintedIn(rest, p.Units, bare, p.gravity())
	if sense == "" && (err != nil || printed.Dim != q.Dim) {
		if other := p.unknownWord(q, text, bare); other != nil {
			return Written{}, other
		}
	}
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
		return w, diag.At(whole(text), word+" must follow a unit or be in parentheses", rest+" "+bare.Symbol+" "+word+" or "+rest+" ("+word+")")
	}
	return w, nil
}

// cutSense takes the word for a sense from behind a number: "1.2 kN C",
// "1.2 kN (tension)", "1.2 kN in compression".
func cutSense(text string) (rest, word, means string, closed bool) {
	text = strings.TrimSpace(text)
	rest, word, closed = cutWord(text)
	bare := strings.TrimSuffix(word, ".")
	if in, found := strings.CutPrefix(strings.ToLower(bare), "in "); found { // (in tension)
		bare = strings.TrimSpace(in)
	}
	for _, s := range senses {
		letter := len(s.word) == 1
		if bare != s.word && !(strings.EqualFold(bare, s.word) && (!letter || closed)) {
			continue
		}
		if head, found := strings.CutSuffix(rest, " in"); found && !letter {
			rest = strings.TrimSpace(head)
		}
		return rest, word, s.means, closed
	}
	return text, "", "", false
}

// cutWord takes the last word, or what stands in parentheses at the end, from a text.
func cutWord(text string) (rest, word string, closed bool) {
	parts := func(c rune) bool { return unicode.IsSpace(c) || c == ',' }
	i := strings.LastIndexFunc(text, func(c rune) bool { return parts(c) || c == '(' })
	if strings.HasSuffix(text, ")") {
		i = strings.LastIndexByte(text, '(')
	}
	last := text[max(i, 0):]
	rest = strings.TrimRightFunc(text[:max(i, 0)], parts)
	last = strings.TrimLeftFunc(last, parts)
	word = strings.TrimSpace(strings.TrimSuffix(strings.TrimPrefix(last, "("), ")"))
	return rest, word, strings.HasPrefix(last, "(")
}

// turning tells the words for a sense of rotation, and whether it is the positive one.
func turning(word string) (ccw, ok bool) {
	switch strings.ToLower(strings.TrimSuffix(word, ".")) {
	case "ccw", "counter-clockwise", "counterclockwise", "anticlockwise", "anti-clockwise":
		return true, true
	case "cw", "clockwise":
		return false, true
	}
	return false, false
}

// unknownWord says of a value with a word behind it, which is no sense, that the word is
// not read. It is nil where the value itself does not read.
func (p *Problem) unknownWord(q Query, text string, bare units.Unit) *diag.Error {
	rest, word, closed := cutWord(strings.TrimSpace(text))
	if _, isUnit := units.Find(word); isUnit && word != "t" || rest == "" || !strings.ContainsFunc(word, unicode.IsLetter) || strings.ContainsFunc(word, unicode.IsDigit) {
		return nil
	}
	v, err := units.ReadPrintedIn(rest, p.Units, bare, p.gravity())
	if err != nil || v.Dim != q.Dim {
		return nil
	}
	if ccw, ok := turning(word); ok {
		return p.signedTurn(text, rest, word, ccw)
	}
	if !closed && !v.Unit { // it may be a unit, mistyped
		return nil
	}
	hint := rest
	if p.SensedLine(q) >= 0 {
		hint += ", or one of " + senseWords + " after it"
	}
	return diag.At(whole(text), "unexpected "+strconv.Quote(word)+" after the value", hint)
}

// signedTurn says how the sense of a moment is written.
func (p *Problem) signedTurn(text, rest, word string, ccw bool) *diag.Error {
	positive, hint := "counter-clockwise is positive", rest
	switch signed := rest != strings.TrimLeft(rest, "-−–"); {
	case !p.Planar:
		positive, hint = "right-handed about its axis is positive", "the value with its sign"
	case signed:
		hint = "the value with its sign"
	case !ccw:
		hint = "-" + rest
	}
	return diag.At(whole(text), "the sense is given by the sign, not by the word "+word+"; "+positive, hint)
}

// wordBehind says of a limit or a magnitude that does not read, because a sense stands
// behind it or bars around it, what to try.
func (r *reading) wordBehind(ref sheet.Ref, text string, e env) *diag.Error {
	if ref.Key != "limit" && ref.Key != "magnitude" {
		return nil
	}
	fail := func(msg, hint string) *diag.Error { return diag.At(whole(text), msg, hint) }
	if open := strings.IndexByte(text, '|'); open >= 0 {
		inner, _, closed := strings.Cut(text[open+1:], "|")
		if name := strings.TrimSpace(inner); closed && isIdentifier(name) && !r.isGiven(name) && ref.Key == "magnitude" {
			return fail("a magnitude must be linear in the unknowns, but |"+name+"| is not", name+", or -"+name+" if it is negative")
		}
		return nil
	}
	rest, word, means, _ := cutSense(text)
	ccw, turns := false, false
	if means == "" {
		rest, word, _ = cutWord(strings.TrimSpace(text))
		ccw, turns = turning(word)
	}
	if means == "" && !turns {
		return nil
	}
	expr, err := r.parseOne(rest)
	if err != nil {
		return nil
	}
	if _, _, ok := expr.Literal(); !ok {
		return nil
	}
	switch {
	case turns:
		return r.p.signedTurn(text, rest, word, ccw)
	case ref.Key == "limit":
		return fail("a limit has no sense, so "+word+" cannot follow it", rest)
	case e.line < 0:
		return nil
	}
	info := r.p.Lines[e.line].Kind.Info()
	switch means {
	case info.Positive:
		return fail("the sense is given by the sign of the magnitude; "+info.Positive+" is positive for a "+info.Name, rest)
	case info.Negative:
		return fail("the sense is given by the sign of the magnitude; "+info.Positive+" is positive for a "+info.Name, "-"+rest)
	}
	return fail("a "+info.Name+" has no tension or compression", rest)
}

// sensed gives a value the sign of its sense, by what is positive of the line's kind.
func (p *Problem) sensed(q Query, w *Written) *diag.Error {
	line := p.SensedLine(q)
	if line < 0 {
		what := q.Name + " has no tension or compression"
		if q.Kind == AskMagnitude {
			return diag.New("a magnitude has no tension or compression", "the value alone")
		}
		if q.Joint >= 0 || q.Kind == AskUnknown && q.Unknown >= 0 && p.Unknowns[q.Unknown].Joint >= 0 {
			what = q.Name + " is a reaction, which has no tension or compression"
		}
		return diag.New(what, "the value with its sign")
	}
	info := p.Lines[line].Kind.Info()
	// A minus says compression as well, where tension is positive, as everywhere but
	// with struts.
	if w.Value < 0 && (w.Sense == "tension" || w.Sense == "push") {
		return diag.New("the value has both a minus sign and the word "+w.Sense, "only one of them")
	}
	switch w.Sense {
	case info.Positive:
		w.Value = math.Abs(w.Value)
	case info.Negative:
		w.Value = -math.Abs(w.Value)
	default:
		return senseOf(info, w.Sense)
	}
	return nil
}

// senseOf says what the senses of a kind of line are called.
func senseOf(info KindInfo, sense string) *diag.Error {
	switch {
	case info.Sense == PressOnly:
		return diag.New("a "+info.Name+" can only push", "the word push, or the value alone")
	case info.Sense == Along:
		return diag.New("a "+info.Name+" has no "+sense, "the value with its sign")
	case sense == "pull":
		return diag.New("the sense of a "+info.Name+" that pulls is tension", "T or tension instead of pull")
	}
	return diag.New("the sense of a "+info.Name+" that pushes is compression", "C or compression instead of push")
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
