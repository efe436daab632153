package working

import (
	"math"
	"strconv"
	"strings"
	"testing"

	"trivet/mechanics/doc"
)

// agreement is how far two sides of an equation may be apart, relative to the
// largest of their terms: rounding, times the condition numbers met here.
const agreement = 1e-9

// value is what a formula comes to: a scalar, a vector or a matrix, row-major,
// and the largest term that went into it.
type value struct {
	rows, cols int
	of         []float64
	size       float64
	ok         bool
}

func scalar(x float64) value { return value{1, 1, []float64{x}, math.Abs(x), true} }

func vectorValue(of ...float64) value {
	v := value{len(of), 1, of, 0, true}
	for _, x := range of {
		v.size = max(v.size, math.Abs(x))
	}
	return v
}

// symbols are what the symbols of a formula stand for, by their print as text.
type symbols map[string]value

// print is a symbol as text prints it: as the sheet has it, or with its subscript.
func print(m doc.Math) string {
	if m.Name != "" {
		return m.Name
	}
	var sub func(m doc.Math) string
	sub = func(m doc.Math) string {
		text := ""
		for _, x := range m.Of {
			if x.Name != "" {
				text += x.Name
			} else {
				text += x.Text + sub(x)
			}
		}
		return text
	}
	mark := ""
	if m.Op == doc.Vec || m.Op == doc.UnitVec {
		mark = "→" // a vector's symbol is another than the scalar's of the same letter
	}
	if len(m.Of) == 0 {
		return mark + m.Text
	}
	return mark + m.Text + "_" + sub(m)
}

func (env symbols) eval(m doc.Math) value {
	switch m.Op {
	case doc.Number:
		return scalar(m.Num)
	case doc.Symbol, doc.Vec:
		return env[print(m)]
	case doc.UnitVec:
		switch m.Text {
		case "i":
			return vectorValue(1, 0, 0)
		case "j":
			return vectorValue(0, 1, 0)
		case "k":
			return vectorValue(0, 0, 1)
		}
		return env[print(m)]
	case doc.Paren, doc.Column:
		if len(m.Of) == 1 && m.Op == doc.Paren {
			return env.eval(m.Of[0])
		}
		var of []float64
		for _, x := range m.Of {
			v := env.eval(x)
			if !v.ok || len(v.of) != 1 {
				return value{}
			}
			of = append(of, v.of[0])
		}
		if m.Op == doc.Paren && len(of) == 2 {
			of = append(of, 0) // in the plane
		}
		return vectorValue(of...)
	case doc.Row, doc.Product:
		return env.product(m)
	case doc.Sum:
		total := value{}
		for k, x := range m.Of {
			v := env.eval(x)
			if k == 0 {
				total = v
			} else {
				total = plus(total, v, 1)
			}
		}
		return total
	case doc.Neg:
		return scaled(env.eval(m.Of[0]), -1)
	case doc.Fraction:
		a, b := env.eval(m.Of[0]), env.eval(m.Of[1])
		if !b.ok || len(b.of) != 1 {
			return value{}
		}
		return scaled(a, 1/b.of[0])
	case doc.Degrees:
		return scaled(env.eval(m.Of[0]), math.Pi/180)
	case doc.Function:
		v := env.eval(m.Of[0])
		f := map[string]func(float64) float64{"sin": math.Sin, "cos": math.Cos, "atan": math.Atan, "acos": math.Acos}[m.Text]
		if !v.ok || f == nil {
			return value{}
		}
		return scalar(f(v.of[0]))
	case doc.Root, doc.Power, doc.Size:
		return env.measure(m)
	case doc.Cross:
		a, b := env.eval(m.Of[0]), env.eval(m.Of[1])
		if !a.ok || !b.ok || len(a.of) != 3 || len(b.of) != 3 {
			return value{}
		}
		v := vectorValue(a.of[1]*b.of[2]-a.of[2]*b.of[1], a.of[2]*b.of[0]-a.of[0]*b.of[2], a.of[0]*b.of[1]-a.of[1]*b.of[0])
		v.size = max(v.size, a.size*b.size)
		return v
	case doc.Det:
		r, f := m.Of[1], m.Of[2]
		return env.eval(cross(paren(r.Of...), paren(f.Of...)))
	case doc.Grid:
		v := value{rows: len(m.Of), ok: true}
		for _, r := range m.Of {
			v.cols = len(r.Of)
			for _, x := range r.Of {
				e := env.eval(x)
				v.of, v.size = append(v.of, e.of...), max(v.size, e.size)
			}
		}
		return v
	}
	return value{}
}

func (env symbols) measure(m doc.Math) value {
	v := env.eval(m.Of[0])
	if !v.ok {
		return v
	}
	switch {
	case m.Op == doc.Size:
		n := 0.0
		for _, x := range v.of {
			n = math.Hypot(n, x)
		}
		return scalar(n)
	case len(v.of) != 1:
		return value{}
	case m.Op == doc.Root:
		return scalar(math.Sqrt(v.of[0]))
	}
	return scalar(math.Pow(v.of[0], env.eval(m.Of[1]).of[0]))
}

// product multiplies what is not words; a matrix times a column too.
func (env symbols) product(m doc.Math) value {
	out := value{}
	first := true
	for _, x := range m.Of {
		if x.Op == doc.Words {
			continue
		}
		v := env.eval(x)
		switch {
		case !v.ok:
			return value{}
		case first:
			out, first = v, false
		case len(out.of) == 1 && out.rows == 1:
			out = scaled(v, out.of[0])
		case len(v.of) == 1 && out.cols == 1:
			out = scaled(out, v.of[0])
		case out.cols == v.rows && v.cols == 1:
			r := value{rows: out.rows, cols: 1, ok: true}
			for i := range out.rows {
				total := 0.0
				for j := range out.cols {
					total += out.of[i*out.cols+j] * v.of[j]
					r.size = max(r.size, math.Abs(out.of[i*out.cols+j]*v.of[j]))
				}
				r.of = append(r.of, total)
			}
			out = r
		default:
			return value{}
		}
	}
	return out
}

func scaled(v value, by float64) value {
	out := value{v.rows, v.cols, make([]float64, len(v.of)), v.size * math.Abs(by), v.ok}
	for k, x := range v.of {
		out.of[k] = x * by
	}
	return out
}

func plus(a, b value, sign float64) value {
	switch {
	case !a.ok || !b.ok:
		return value{}
	case len(a.of) == 1 && a.of[0] == 0 && len(b.of) > 1:
		return scaled(b, sign)
	case len(a.of) != len(b.of):
		return value{}
	}
	out := value{a.rows, a.cols, make([]float64, len(a.of)), max(a.size, b.size), true}
	for k := range a.of {
		out.of[k] = a.of[k] + sign*b.of[k]
		out.size = max(out.size, math.Abs(out.of[k]))
	}
	return out
}

// holds evaluates every side of an equation that can be, and tells how many
// sides were held against the first.
func (env symbols) holds(t *testing.T, where string, m doc.Math, slack float64) int {
	n := 0
	if m.Op == doc.Relate && (m.Text == "=" || m.Text == "≈") {
		var first value
		var of doc.Math
		for _, x := range m.Of {
			v := env.eval(x)
			if !v.ok {
				continue
			}
			if !first.ok {
				first, of = v, x
				continue
			}
			if len(v.of) == 1 && v.of[0] == 0 && len(first.of) > 1 {
				v = scaled(first, 0)
			}
			d := plus(first, v, -1)
			if !d.ok {
				t.Errorf("%s: %d and %d entries are called equal", where, len(first.of), len(v.of))
				continue
			}
			for _, e := range d.of {
				if !(math.Abs(e) <= agreement*(d.size+slack)) {
					t.Errorf("%s: %s = %s is off by %v of %v", where, plain(of), plain(x), e, d.size)
				}
			}
			n++
		}
	}
	for _, x := range m.Of {
		n += env.holds(t, where, x, slack)
	}
	return n
}

// asPrinted is a formula whose numbers are what is printed of them.
func asPrinted(t *testing.T, m doc.Math) doc.Math {
	t.Helper()
	if m.Op == doc.Number {
		x, _, err := printedNumber(m.Text)
		if err != nil {
			t.Fatal(err)
		}
		m.Num = x
	}
	of := make([]doc.Math, len(m.Of))
	for k, x := range m.Of {
		of[k] = asPrinted(t, x)
	}
	m.Of = of
	return m
}

// roundings are how far a result may be from its print, by components: what half a unit of the last
// place of each of its numbers makes.
func (env symbols) roundings(m *doc.Math, whole *doc.Math, out []float64) {
	if m.Op == doc.Number {
		_, half, err := printedNumber(m.Text)
		if err != nil {
			return
		}
		base := env.eval(*whole)
		m.Num += half
		moved := env.eval(*whole)
		m.Num -= half
		for k := range out {
			out[k] += math.Abs(moved.of[k] - base.of[k])
		}
	}
	for k := range m.Of {
		env.roundings(&m.Of[k], whole, out)
	}
}

// comesOut evaluates the sides of an equation from the numbers as they are printed: each is the
// printed result to half a unit of its last place, unless it stands before ≈. It tells
// how many sides it held.
func (env symbols) comesOut(t *testing.T, where string, m doc.Math) int {
	t.Helper()
	n := 0
	if m.Op == doc.Relate && m.Text == "=" && len(m.Of) > 1 {
		last := asPrinted(t, m.Of[len(m.Of)-1])
		r := env.eval(last)
		for k := 1; k < len(m.Of)-1 && r.ok && !(len(r.of) == 1 && r.of[0] == 0); k++ {
			x := env.eval(asPrinted(t, m.Of[k]))
			if !x.ok || len(x.of) != len(r.of) || !hasNumber(m.Of[k]) {
				continue
			}
			half := make([]float64, len(r.of))
			env.roundings(&last, &last, half)
			for i := range r.of {
				if math.Abs(x.of[i]-r.of[i]) > half[i]*(1+1e-6)+agreement*(x.size+r.size) {
					t.Errorf("%s: %s = %v from what is printed, and %s is %v", where, plain(m.Of[k]), x.of[i], plain(last), r.of[i])
				}
			}
			n++
		}
	}
	for _, x := range m.Of {
		n += env.comesOut(t, where, x)
	}
	return n
}

// solves solves each equation of the solution by hand from its printed numbers: the unknown is the
// printed value to half a unit of its last place, unless it stands behind ≈. It tells how many it solved.
func solves(t *testing.T, where string, body []doc.Block) int {
	t.Helper()
	n := 0
	for k := 1; k < len(body); k++ {
		var equations, values []doc.Math
		if f, ok := body[k-1].(*doc.Formula); ok {
			equations = f.Of
		}
		if f, ok := body[k].(*doc.Formula); ok {
			values = f.Of
		}
		if len(values) == 1 && values[0].Text == "≈" {
			continue
		}
		if len(equations) == 0 || len(values) != 1 || equations[len(equations)-1].Of[0].Op != doc.BigSum {
			continue
		}
		x, found := print(values[0].Of[0]), values[0].Of[len(values[0].Of)-1]
		if sides := equations[len(equations)-1]; sides.Text != "=" || sides.Of[1].Op == doc.Relate {
			t.Errorf("%s: %s holds an unknown and is not set equal to zero", where, plain(sides))
			continue
		}
		sum := asPrinted(t, equations[len(equations)-1].Of[1])
		known, with := symbols{x: scalar(0)}.eval(sum), symbols{x: scalar(1)}.eval(sum)
		last := asPrinted(t, found)
		value := symbols{}.eval(last)
		if !known.ok || !with.ok || value.of[0] == 0 {
			continue
		}
		half := []float64{0}
		symbols{}.roundings(&last, &last, half)
		if got := -known.of[0] / (with.of[0] - known.of[0]); math.Abs(got-value.of[0]) > half[0]*(1+1e-6) {
			t.Errorf("%s: %s = %v from the equation as it is printed, and %v is printed", where, x, got, value.of[0])
		}
		n++
	}
	return n
}

// plain is a formula for a message of a test.
func plain(m doc.Math) string {
	var parts []string
	for _, x := range m.Of {
		parts = append(parts, plain(x))
	}
	return m.Text + "[" + strings.Join(parts, " ") + "]"
}

// numbers walks all formulas of a working.
func eachFormula(w *Working, do func(step Step, m doc.Math)) {
	for _, step := range w.Steps {
		for _, b := range step.Body {
			for _, m := range doc.Formulas(b) {
				do(step, *m)
			}
		}
	}
}

// printedNumber reads a number back, with half a unit of its last place.
func printedNumber(text string) (x, half float64, err error) {
	digits := strings.ReplaceAll(text, " ", "")
	if x, err = strconv.ParseFloat(digits, 64); err != nil {
		return 0, 0, err
	}
	mantissa, exp, _ := strings.Cut(digits, "e")
	power := 0
	if exp != "" {
		if power, err = strconv.Atoi(exp); err != nil {
			return 0, 0, err
		}
	}
	if _, decimals, some := strings.Cut(mantissa, "."); some {
		power -= len(decimals)
	} else if exp == "" { // zeros at the end of a whole number need not be figures
		power += len(mantissa) - len(strings.TrimRight(mantissa, "0"))
		if strings.Trim(mantissa, "0") == "" {
			power = 0
		}
	}
	return x, 0.5 * math.Pow(10, float64(power)), nil
}

// shown holds every number of a formula against its print: never negative, and
// within half a unit of the last place.
func shown(t *testing.T, where string, m doc.Math) int {
	n := 0
	if m.Op == doc.Number {
		n++
		x, half, err := printedNumber(m.Text)
		switch {
		case err != nil:
			t.Errorf("%s: %v", where, err)
		case math.Abs(x-m.Num) > half*(1+1e-6):
			t.Errorf("%s: %v is shown as %s", where, m.Num, m.Text)
		case x < 0 || strings.HasPrefix(m.Text, "-"):
			t.Errorf("%s: the sign of %s is in its text", where, m.Text)
		}
	}
	if m.Op == doc.Neg && m.Of[0].Op == doc.Number && !strings.ContainsAny(m.Of[0].Text, "123456789") {
		t.Errorf("%s: a negative zero", where)
	}
	for _, x := range m.Of {
		n += shown(t, where, x)
	}
	return n
}
