package mark

import (
	"math"
	"strconv"
	"strings"
	"unicode"

	"trivet/mechanics/problem"
	"trivet/units"
)

// value is an answer that was read.
type value struct {
	si      float64
	half    float64 // half a unit of the last place written, SI
	dim     units.Dim
	factor  float64 // of the unit written
	figures int     // significant figures written; many for an expression
	least   int     // as few as those may be: zeros at the end of a whole number may be none
	sense   string  // the word for it, where one is written
}

// many is the number of figures of an exact expression.
const many = 15

func blank(text string) bool { return strings.TrimSpace(text) == "" }

// senses are the words for a sense, and the single letters, which are capitals: t is
// a tonne.
var senses = []struct{ word, means string }{
	{"T", "tension"}, {"C", "compression"}, {"tension", "tension"}, {"compression", "compression"},
	{"tens.", "tension"}, {"comp.", "compression"}, {"tens", "tension"}, {"comp", "compression"},
	{"push", "push"}, {"pull", "pull"},
}

// cutSense takes the word for a sense from behind a number: "1.2 kN C",
// "1.2 kN (tension)".
func cutSense(text string) (rest, sense string) {
	text = strings.TrimSpace(text)
	word := text
	if i := strings.LastIndexFunc(text, func(c rune) bool { return unicode.IsSpace(c) || c == '(' || c == ',' }); i > 0 {
		word = strings.TrimLeftFunc(text[i:], func(c rune) bool { return unicode.IsSpace(c) || c == ',' })
	}
	bare := strings.TrimSuffix(strings.TrimPrefix(word, "("), ")")
	for _, s := range senses {
		if bare == s.word || len(s.word) > 1 && strings.EqualFold(bare, s.word) {
			return strings.TrimRightFunc(strings.TrimSuffix(text, word), func(c rune) bool { return unicode.IsSpace(c) || c == ',' }), s.means
		}
	}
	return text, ""
}

// read reads an answer. A word for its sense gives it the sign that this has on the
// sheet.
func (k *Key) read(q problem.Query, a Typed) (value, *units.Error) {
	text, sense := cutSense(a.Text)
	if !strings.ContainsFunc(text, unicode.IsDigit) {
		return value{}, &units.Error{Msg: "there is no number", Hint: "write one, with its unit where it is not the sheet's"}
	}
	text, err := points(text, a.Comma)
	if err != nil {
		return value{}, err
	}
	bare := a.Bare
	if bare.Symbol == "" {
		bare = k.solution.Problem.Units.For(q.Dim)
		bare.Dim = q.Dim
	}
	r, err := units.ReadPrintedIn(text, k.solution.Problem.Units, bare)
	if err != nil {
		return value{}, err
	}
	v := value{si: r.Value, half: r.Half, dim: r.Dim, factor: r.Factor, figures: many, least: many, sense: sense}
	if math.IsNaN(v.si) || math.IsInf(v.si, 0) {
		return value{}, &units.Error{Msg: "this is no number", Hint: "write one, with its unit where it is not the sheet's"}
	}
	if r.Number {
		v.count()
	}
	if sense != "" {
		if err := k.signed(q, &v); err != nil {
			return value{}, err
		}
	}
	return v, nil
}

// count counts the figures of a number that has a last place.
func (v *value) count() {
	x := math.Abs(v.si / v.factor)
	if x == 0 {
		v.figures, v.least = 0, 0
		return
	}
	place := int(math.Round(math.Log10(2 * v.half / v.factor)))
	v.figures = max(decade(x)-place+1, 0)
	v.least = v.figures
	for place == 0 && v.least > 1 && math.Mod(math.Round(x), math.Pow(10, float64(v.figures-v.least+1))) == 0 {
		v.least--
	}
}

// points makes decimal points of commas where those are such, and refuses a comma
// that may be either.
func points(text string, comma bool) (string, *units.Error) {
	before, after, one := strings.Cut(text, ",")
	switch {
	case !one || strings.Contains(text, "("): // angle pairs and the like are left to the reader
		return text, nil
	case comma && !strings.ContainsAny(after, ",.") && !strings.Contains(before, "."):
		return before + "." + after, nil
	}
	hint := "write a point before the decimals, and nothing between thousands"
	if digits := strings.TrimLeft(before, "+-−"); !comma && isDigits(digits) && len(after) >= 3 && isDigits(after[:3]) && (len(after) == 3 || !isDigits(after[3:4])) {
		hint = "write " + before + after[:3] + " or " + before + "." + after[:3]
	}
	return "", &units.Error{Msg: strconv.Quote(text) + " has a comma in it", Hint: hint}
}

func isDigits(s string) bool {
	return s != "" && strings.IndexFunc(s, func(c rune) bool { return c < '0' || c > '9' }) < 0
}

// lineOf is the line whose magnitude a result is, or -1.
func (k *Key) lineOf(q problem.Query) int {
	if q.Kind != problem.AskUnknown {
		return -1
	}
	if q.Unknown < 0 {
		return q.Line
	}
	if u := k.solution.Problem.Unknowns[q.Unknown]; u.Own {
		return u.Line
	}
	return -1
}

// signed gives a value the sign of its word, by what is positive of the line's kind.
func (k *Key) signed(q problem.Query, v *value) *units.Error {
	line := k.lineOf(q)
	if line < 0 {
		return &units.Error{Msg: q.Name + " is no tension, and " + v.sense + " says nothing of it", Hint: "write its sign"}
	}
	info := k.solution.Problem.Lines[line].Kind.Info()
	// A minus says compression as well, where tension is positive, as everywhere but
	// with struts.
	if v.si < 0 && (v.sense == "tension" || v.sense == "push") {
		return &units.Error{Msg: "there is a minus, and the word " + v.sense, Hint: "write one of them"}
	}
	switch v.sense {
	case info.Positive:
		v.si = math.Abs(v.si)
	case info.Negative:
		v.si = -math.Abs(v.si)
	default:
		return &units.Error{Msg: "a " + info.Name + " has no " + v.sense, Hint: "write its sign"}
	}
	return nil
}
