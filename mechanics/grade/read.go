package grade

import (
	"math"
	"strconv"
	"strings"
	"unicode"

	"trivet/mechanics/diag"
	"trivet/mechanics/problem"
)

// value is an answer that was read.
type value struct {
	problem.Written
	figures int // significant figures written; many for an exact expression
	least   int // as few as those may be: zeros at the end of a whole number may be none
}

// many is the number of figures of an exact expression.
const many = 15

// read reads an answer. A word for its sense gives it the sign that this has on the
// sheet.
func (k *Key) read(q problem.Query, a Typed) (v value, err *diag.Error) {
	const hint = "a number, with its unit if it is not that of the sheet"
	if !strings.ContainsFunc(a.Text, unicode.IsDigit) {
		return v, diag.New("a number is missing", hint)
	}
	if a.Comma {
		if a.Text, err = point(a.Text); err != nil {
			return v, err
		}
	}
	if a.Bare.Symbol == "" {
		a.Bare = k.solution.Problem.Units.For(q.Dim)
		a.Bare.Dim = q.Dim
	}
	v.Written, err = k.solution.Problem.ReadWritten(q, a.Text, a.Bare, true)
	if err == nil && (math.IsNaN(v.Value) || math.IsInf(v.Value, 0)) {
		err = diag.New("this is not a number", hint)
	}
	v.figures, v.least = v.Figures, v.Figures
	switch {
	case err != nil:
	case v.Number:
		v.count()
	case v.Figures == 0:
		v.figures, v.least = many, many
	}
	return v, err
}

// count counts the figures of a number that has a last place.
func (v *value) count() {
	x := math.Abs(v.Value / v.Factor)
	if x == 0 {
		return
	}
	place := int(math.Round(math.Log10(2 * v.Half / v.Factor)))
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
