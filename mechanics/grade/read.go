package grade

import (
	"math"
	"strconv"
	"strings"
	"unicode"

	"trivet/mechanics/diag"
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

// read reads an answer. A word for its sense gives it the sign that this has on the
// sheet.
func (k *Key) read(q problem.Query, a Typed) (value, *diag.Error) {
	if !strings.ContainsFunc(a.Text, unicode.IsDigit) {
		return value{}, diag.New("a number is missing", "a number, with its unit if it is not that of the sheet")
	}
	text := a.Text
	if a.Comma {
		var err *diag.Error
		if text, err = point(text); err != nil {
			return value{}, err
		}
	}
	bare := a.Bare
	if bare.Symbol == "" {
		bare = k.solution.Problem.Units.For(q.Dim)
		bare.Dim = q.Dim
	}
	r, err := k.solution.Problem.ReadWritten(q, text, bare, true)
	if err != nil {
		return value{}, err
	}
	v := value{si: r.Value, half: r.Half, dim: r.Dim, factor: r.Factor, figures: many, least: many, sense: r.Sense}
	if math.IsNaN(v.si) || math.IsInf(v.si, 0) {
		return value{}, diag.New("this is not a number", "a number, with its unit if it is not that of the sheet")
	}
	switch {
	case r.Number:
		v.count()
	case r.Figures > 0:
		v.figures, v.least = r.Figures, r.Figures
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

// point makes a decimal point of a comma, in a table whose cells are parted by
// semicolons.
func point(text string) (string, *diag.Error) {
	before, after, one := strings.Cut(text, ",")
	switch {
	case !one || strings.Contains(text, "("): // angle pairs and the like are left to the reader
		return text, nil
	case !strings.ContainsAny(after, ",.") && !strings.Contains(before, "."):
		return before + "." + after, nil
	}
	return "", diag.New(strconv.Quote(text)+" contains a comma", "a point before the decimals, and nothing between thousands")
}
