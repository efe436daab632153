package problem

import (
	"math"
	"strconv"
	"strings"
	"unicode"

	"trivet/mechanics/diag"
	"trivet/units"
)

// Written is a value of a result as a person wrote it. Value has the sign that the
// word for its sense gives it; Sense is that word, "" where none is written.
type Written struct {
	units.Printed
	Sense string // tension, compression, push or pull
}

// Senses are the words for a sense, and the single letters, which are capitals where
// they are not in parentheses: t is a tonne.
var Senses = []struct{ Word, Means string }{
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
	text = strings.TrimSpace(text)
	t, value := cutTail(text), text
	if t.sense != "" {
		value = t.rest
	}
	if value == "" {
		return Written{}, diag.At(diag.Whole(text), "a number is missing", "a number, with its unit if it is not that of the sheet")
	}
	printed, err := units.ReadPrintedIn(value, p.Units, bare, p.gravity())
	if t.sense == "" && (err != nil || printed.Dim != q.Dim) {
		if other := p.unknownWord(q, text, t, bare); other != nil {
			return Written{}, other
		}
	}
	if err != nil {
		return Written{}, err
	}
	w := Written{Printed: printed, Sense: t.sense}
	if t.sense == "" {
		return w, nil
	}
	if w.Grouped != "" {
		w.Grouped += text[len(t.rest):]
	}
	err = p.sensed(q, &w)
	if err == nil && !t.closed && !headed && w.Symbol == "" {
		err = diag.New(t.word+" must follow a unit or be in parentheses", t.rest+" "+bare.Symbol+" "+t.word+" or "+t.rest+" ("+t.word+")")
	}
	if err != nil {
		err.Span = diag.Whole(text)
	}
	return w, err
}

// tail is the last word of a text, or what stands in parentheses at its end, and the rest:
// of "1.2 kN C", "1.2 kN (tension)" and "1.2 kN in compression" with the sense it means.
type tail struct {
	rest, word, sense string
	closed            bool // in parentheses
	ccw, turns        bool // it is a sense of rotation
}

func cutTail(text string) (t tail) {
	text = strings.TrimSpace(text)
	parts := func(c rune) bool { return unicode.IsSpace(c) || c == ',' }
	i := strings.LastIndexFunc(text, func(c rune) bool { return parts(c) || c == '(' })
	if strings.HasSuffix(text, ")") {
		i = strings.LastIndexByte(text, '(')
	}
	last := strings.TrimLeftFunc(text[max(i, 0):], parts)
	t.rest = strings.TrimRightFunc(text[:max(i, 0)], parts)
	t.word = strings.TrimSpace(strings.TrimSuffix(strings.TrimPrefix(last, "("), ")"))
	t.closed = strings.HasPrefix(last, "(")
	bare := strings.TrimSuffix(t.word, ".")
	t.ccw, t.turns = turning[strings.ToLower(bare)]
	if in, found := strings.CutPrefix(strings.ToLower(bare), "in "); found { // (in tension)
		bare = strings.TrimSpace(in)
	}
	for _, s := range Senses {
		letter := len(s.Word) == 1
		if bare == s.Word || strings.EqualFold(bare, s.Word) && (!letter || t.closed) {
			t.sense = s.Means
			if head, found := strings.CutSuffix(t.rest, " in"); found && !letter {
				t.rest = strings.TrimSpace(head)
			}
			break
		}
	}
	return t
}

// turning are the words for a sense of rotation, and whether it is the positive one.
var turning = map[string]bool{
	"ccw": true, "counter-clockwise": true, "counterclockwise": true, "anticlockwise": true, "anti-clockwise": true,
	"cw": false, "clockwise": false,
}

// unknownWord says of a value with a word behind it, which is no sense, that the word is
// not read. It is nil where the value itself does not read.
func (p *Problem) unknownWord(q Query, text string, t tail, bare units.Unit) *diag.Error {
	if _, isUnit := units.Find(t.word); isUnit && t.word != "t" || t.rest == "" || !strings.ContainsFunc(t.word, unicode.IsLetter) || strings.ContainsFunc(t.word, unicode.IsDigit) {
		return nil
	}
	v, err := units.ReadPrintedIn(t.rest, p.Units, bare, p.gravity())
	switch {
	case err != nil || v.Dim != q.Dim:
		return nil
	case t.turns:
		return p.signedTurn(text, t)
	case !t.closed && v.Symbol == "": // it may be a unit, mistyped
		return nil
	}
	hint := t.rest
	if p.SensedLine(q) >= 0 {
		hint += ", or one of " + senseWords + " after it"
	}
	return diag.At(diag.Whole(text), "unexpected "+strconv.Quote(t.word)+" after the value", hint)
}

// signedTurn says how the sense of a moment is written.
func (p *Problem) signedTurn(text string, t tail) *diag.Error {
	positive, hint := "counter-clockwise is positive", t.rest
	switch signed := t.rest != strings.TrimLeft(t.rest, "-−–"); {
	case !p.Planar:
		positive, hint = "right-handed about its axis is positive", "the value with its sign"
	case signed:
		hint = "the value with its sign"
	case !t.ccw:
		hint = "-" + t.rest
	}
	return diag.At(diag.Whole(text), "the sense is given by the sign, not by the word "+t.word+"; "+positive, hint)
}

// wordBehind says of a limit or a magnitude that does not read, because a sense stands
// behind it or bars around it, what to try.
func (c cell) wordBehind(e env) *diag.Error {
	r, ref, text := c.r, c.ref, c.text
	if ref.Key != "limit" && ref.Key != "magnitude" {
		return nil
	}
	fail := func(msg, hint string) *diag.Error { return diag.At(diag.Whole(text), msg, hint) }
	if _, behind, bars := strings.Cut(text, "|"); bars {
		inner, _, closed := strings.Cut(behind, "|")
		if name := strings.TrimSpace(inner); closed && IsIdentifier(name) && !r.isGiven(name) && ref.Key == "magnitude" {
			return fail("a magnitude must be linear in the unknowns, but |"+name+"| is not", name+", or -"+name+" if it is negative")
		}
		return nil
	}
	t := cutTail(text)
	expr, err := r.parseOne(t.rest)
	if err != nil || t.sense == "" && !t.turns {
		return nil
	}
	_, _, literal := expr.Literal()
	switch {
	case !literal:
		return nil
	case t.turns:
		return r.p.signedTurn(text, t)
	case ref.Key == "limit":
		return fail("a limit has no sense, so "+t.word+" cannot follow it", t.rest)
	case e.line < 0:
		return nil
	}
	info, hint := r.p.Lines[e.line].Kind.Info(), t.rest
	switch t.sense {
	case info.Positive:
	case info.Negative:
		hint = "-" + t.rest
	default:
		return fail("a "+info.Name+" has no tension or compression", t.rest)
	}
	return fail("the sense is given by the sign of the magnitude; "+info.Positive+" is positive for a "+info.Name, hint)
}

// sensed gives a value the sign of its sense, by what is positive of the line's kind.
func (p *Problem) sensed(q Query, w *Written) *diag.Error {
	line := p.SensedLine(q)
	switch {
	case line >= 0:
	case q.Kind == AskMagnitude:
		return diag.New("a magnitude has no tension or compression", "the value alone")
	case q.Of.Thing == AJoint || q.Of.Thing == AnUnknown && p.Unknowns[q.Of.Index].Joint >= 0:
		return diag.New(q.Name+" is a reaction, which has no tension or compression", "the value with its sign")
	default:
		return diag.New(q.Name+" has no tension or compression", "the value with its sign")
	}
	info := p.Lines[line].Kind.Info()
	switch {
	case w.Value < 0 && (w.Sense == "tension" || w.Sense == "push"):
		// A minus says compression as well, where tension is positive, as everywhere but
		// with struts.
		return diag.New("the value has both a minus sign and the word "+w.Sense, "only one of them")
	case w.Sense == info.Positive:
		w.Value = math.Abs(w.Value)
		return nil
	case w.Sense == info.Negative:
		w.Value = -math.Abs(w.Value)
		return nil
	case info.Sense == PressOnly:
		return diag.New("a "+info.Name+" can only push", "the word push, or the value alone")
	case info.Sense == Along:
		return diag.New("a "+info.Name+" has no "+w.Sense, "the value with its sign")
	case w.Sense == "pull":
		return diag.New("the sense of a "+info.Name+" that pulls is tension", "T or tension instead of pull")
	}
	return diag.New("the sense of a "+info.Name+" that pushes is compression", "C or compression instead of push")
}

// SensedLine is the line whose tension, compression or push a result is, or -1: its
// own unknown or magnitude, or an unknown that is the whole magnitude of lines of one
// convention, as the tension of a rope over several stretches.
func (p *Problem) SensedLine(q Query) int {
	unknown := q.Of.Index
	switch {
	case q.Kind != AskValue || q.Of.Thing == ACouple:
		return -1
	case q.Of.Thing == ALine:
		return q.Of.Index
	case p.Unknowns[unknown].Own:
		return p.Unknowns[unknown].Line
	}
	found := -1
	for i := range p.Lines {
		switch {
		case p.Lines[i].Magnitude.Alone() != unknown:
			continue
		case found >= 0 && p.Lines[found].Kind.Info().Positive != p.Lines[i].Kind.Info().Positive:
			return -1
		}
		found = i
	}
	return found
}

// gravity is the g of cells: the given of that name, else the sheet's.
func (p *Problem) gravity() float64 {
	if g, ok := p.Find("g", AGiven); ok && p.Givens[g.Index].Value.Dim == units.Acceleration {
		return p.Givens[g.Index].Value.V[0]
	}
	return p.G
}
