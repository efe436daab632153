package tutor

import (
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"gonum.org/v1/gonum/spatial/r3"

	"trivet/mechanics/diag"
	"trivet/mechanics/problem"
	"trivet/mechanics/say"
	"trivet/units"
)

// written is an equation as it was written, all of it on one side: c·(x, 1) = 0. The last
// of c is what stands without an unknown. half is how far each may be off by the digits
// that were typed.
type written struct {
	text   string
	c      []float64
	half   []float64
	moment bool
	sums   []sum    // the sum that it is claimed to be; nil without a claim
	couple string   // a moment that stands in a sum of forces
	known  []known  // its terms without an unknown
	named  bool     // it is a value or a relation of two unknowns
	angles bool     // with a sine or a cosine
	other  *written // the same read as moments, whose arms stand without a unit
}

// known is a term without an unknown: its value, and the numbers that it is typed with.
type known struct {
	value float64
	typed []literal
}

// names is what an entry's expressions may refer to.
type names struct {
	t      *Practice
	quoted map[string]string // what stands for a name that was typed in quotes
}

var _ units.Env = names{}

// Lookup takes a name as typed, or as printed with a subscript: A_x for Ax.
func (n names) Lookup(name string) (units.Value, bool, error) {
	if name, ok := n.quoted[name]; ok {
		return n.typed(name)
	}
	return n.typed(problem.Unprinted(name, func(s string) bool { _, ok, _ := n.typed(s); return ok }))
}

func (n names) typed(name string) (units.Value, bool, error) {
	p := n.t.Problem
	if i := n.t.unknown(name); i >= 0 {
		return n.t.affine(problem.Affine{Terms: []problem.Term{{Unknown: i, Coef: 1}}}, p.Unknowns[i].Dim), true, nil
	}
	if i, ok := n.t.unknownAsked(name); ok {
		return n.typed(p.Unknowns[i].Name)
	}
	if of, ok := p.Find(name, problem.ALine, problem.ACouple); ok {
		d := units.Force
		if of.Thing == problem.ACouple {
			d = units.Moment
		}
		return n.t.affine(p.Magnitude(of), d), true, nil
	}
	if g := p.GivenNamed(name); g != nil {
		return g.Value, true, nil
	}
	if name == "g" {
		return units.Scalar(p.G, units.Acceleration), true, nil
	}
	if q, err := problem.ParseQuery(p, name); err == nil && q.Kind == problem.AskFriction {
		j := &p.Joints[q.Of.Index]
		tangent := r3.Vec{X: j.Normal.Y, Y: -j.Normal.X}
		a := problem.Affine{Const: r3.Dot(j.Forces.Const, tangent)}
		for _, x := range j.Forces.Terms {
			a.Terms = append(a.Terms, problem.Term{Unknown: x.Unknown, Coef: r3.Dot(x.D, tangent)})
		}
		return n.t.affine(a, units.Force), true, nil
	}
	return units.Value{}, false, nil
}

// Place gives a point, for dir(A, B).
func (n names) Place(name string) (units.Value, bool, error) {
	of, ok := n.t.Problem.Find(name, problem.APoint)
	if !ok {
		return units.Value{}, false, nil
	}
	at := n.t.Problem.Points[of.Index].At
	return units.Vector([3]float64{at.X, at.Y, at.Z}, units.Length), true, nil
}

// affine is a value of terms in unknowns.
func (t *Practice) affine(a problem.Affine, d units.Dim) units.Value {
	v := units.Scalar(a.Const, d)
	for _, x := range a.Terms {
		v.Terms = append(v.Terms, units.Term{Name: t.Problem.Unknowns[x.Unknown].Name, Coef: x.Coef})
	}
	return v
}

func (n names) Names() []string {
	p := n.t.Problem
	all := say.Each(p.Unknowns, func(u problem.Unknown) string { return u.Name })
	for _, name := range p.Names(problem.ALine, problem.ACouple, problem.AGiven) {
		if !slices.Contains(all, name) {
			all = append(all, name)
		}
	}
	return all
}
func (n names) Set() units.Set { return n.t.Problem.Units }
func (n names) Planar() bool   { return n.t.Problem.Planar }
func (n names) Compass() (east, north, up [3]float64) {
	return [3]float64{1, 0, 0}, [3]float64{0, 1, 0}, [3]float64{0, 0, 1}
}

// eval evaluates an expression.
func (t *Practice) eval(text string, quoted map[string]string) (units.Value, *diag.Error) {
	e, err := units.Parse(text)
	if err != nil {
		return units.Value{}, err
	}
	v, err := e.Eval(names{t, quoted})
	return v, t.named(err, text)
}

// named tells the names of the sheet in an error at a name that is none of them.
func (t *Practice) named(err *diag.Error, text string) *diag.Error {
	if err == nil || err.Hint != "" {
		return err
	}
	name := text[err.Span.Start:err.Span.End]
	if name == "" || name != nameForm.FindString(name) || t.isName(name) {
		return err
	}
	told := *err
	told.Hint = suggested(name, names{t: t}.Names())
	return &told
}

// moved sets an error found in a piece of a text to its place in the whole.
func moved(err *diag.Error, by int) *diag.Error {
	e := *err
	e.Span.Start += by
	e.Span.End += by
	return &e
}

// term is a piece of one side of an equation between + and -.
type term struct {
	from, to int
	sign     float64
}

// termsOf splits a side at its + and -: not within parentheses or bars, not the sign of an
// exponent, and not a sign behind another operator.
func termsOf(text string, from, to int) (all []term) {
	depth, begin, sign, bar := 0, from, 1.0, false
	content := false
	for i := from; i < to; i++ {
		switch c := text[i]; {
		case c == '(':
			depth++
			content = true
		case c == ')':
			depth--
		case c == '|':
			bar = !bar
			content = true
		case (c == '+' || c == '-') && depth == 0 && !bar:
			before := strings.TrimRight(text[begin:i], " ")
			exponent := i > from && (text[i-1] == 'e' || text[i-1] == 'E') && i > from+1 && (text[i-2] >= '0' && text[i-2] <= '9' || text[i-2] == '.') && i+1 < to && text[i+1] >= '0' && text[i+1] <= '9'
			if exponent || strings.HasSuffix(before, "*") || strings.HasSuffix(before, "/") || strings.HasSuffix(before, "^") {
				continue
			}
			if content {
				all = append(all, term{begin, i, sign})
				sign = 1
			}
			if c == '-' {
				sign = -sign
			}
			begin, content = i+1, false
		case c != ' ':
			content = true
		}
	}
	if content {
		all = append(all, term{begin, to, sign})
	}
	return all
}

// sort is what an equation's terms are.
type sort int

const (
	anySum sort = iota // what its terms say: moments where one of them is
	forceSum
	momentSum
)

// summand is a term with its value, and the factor from that to SI.
type summand struct {
	term
	v      units.Value
	factor float64
}

// sides reads both sides of an equation, all on one, and its terms. In a sum that is claimed to be one of
// forces a moment is taken as a number of the sheet's force unit, and named.
func (t *Practice) sides(text string, quoted map[string]string, as sort) (w written, all []summand, err *diag.Error) {
	moment := as == momentSum
	equals := strings.IndexByte(text, '=')
	n := len(t.Problem.Unknowns)
	for side, ends := range [][2]int{{0, equals}, {equals + 1, len(text)}} {
		list := termsOf(text, ends[0], ends[1])
		if len(list) == 0 {
			return w, nil, diag.At(diag.Between(ends[0], max(ends[1], ends[0]+1)), "one side of the equation is empty", "0, or a sum of forces")
		}
		if end := strings.TrimRight(text[:ends[1]], " "); strings.HasSuffix(end, "+") || strings.HasSuffix(end, "-") {
			return w, nil, diag.At(diag.Between(len(end)-1, len(end)), "a term is missing after "+end[len(end)-1:], "a force")
		}
		if len(all)+len(list) > maxTerms {
			return w, nil, diag.At(diag.Whole(text), "the equation has more than "+strconv.Itoa(maxTerms)+" terms, which is too long to be judged", "one sum at a time, such as "+t.claimExample())
		}
		for _, x := range list {
			if side == 1 {
				x.sign = -x.sign
			}
			v, err := t.eval(strings.TrimRight(text[x.from:x.to], " "), quoted)
			if err != nil {
				return w, nil, moved(err, x.from)
			}
			if v.N != 1 {
				return w, nil, diag.At(trimmed(text, x), "expected a force or a moment, but this is a vector", "one component of it")
			}
			moment = moment || v.Dim == units.Moment && as == anySum
			all = append(all, summand{x, v, x.sign})
		}
	}
	w.c, w.moment = make([]float64, n+1), moment
	for i := range all {
		x := &all[i]
		switch {
		case x.v.Dim == units.Number && len(x.v.Terms) == 0:
			d := units.Force
			if moment {
				d = units.Moment
			}
			x.factor *= t.Problem.Units.For(d).Factor
		case moment && x.v.Dim == units.Force:
			x.factor *= t.Problem.Units.Length.Factor
		case as == forceSum && x.v.Dim == units.Moment:
			x.factor *= t.Problem.Units.Force.Factor / t.Problem.Units.For(units.Moment).Factor
			w.couple = strings.TrimSpace(text[x.from:x.to])
		case moment && x.v.Dim == units.Moment, !moment && x.v.Dim == units.Force:
		default:
			what, unit := "a force", t.Problem.Units.Force.Symbol
			if moment {
				what, unit = "a moment", t.Problem.Units.For(units.Moment).Symbol
			}
			return w, nil, diag.At(trimmed(text, x.term), "expected "+what+", but "+strings.TrimSpace(text[x.from:x.to])+" is "+x.v.Dim.Name(), "a value in "+unit)
		}
		w.c[n] += x.factor * x.v.V[0]
		if len(x.v.Terms) == 0 && x.v.V[0] != 0 {
			w.known = append(w.known, known{x.factor * x.v.V[0], literals(text[x.from:x.to])})
		}
		for _, u := range x.v.Terms {
			w.c[t.unknown(u.Name)] += x.factor * u.Coef
		}
	}
	return w, all, nil
}

// unknown is the index of an unknown by its name.
func (t *Practice) unknown(name string) int {
	return slices.IndexFunc(t.Problem.Unknowns, func(of problem.Unknown) bool { return of.Name == name })
}

func trimmed(text string, x term) diag.Span {
	from, to := x.from, x.to
	for from < to && text[from] == ' ' {
		from++
	}
	for to > from && text[to-1] == ' ' {
		to--
	}
	return diag.Between(from, to)
}

// read reads an equation and how far its digits leave each of its coefficients.
func (t *Practice) read(text string, as sort) (written, *diag.Error) {
	if n := strings.Count(text, "="); n != 1 {
		return written{}, diag.At(diag.Whole(text), "an equation has one =", t.claimExample())
	}
	spelt := t.spell(text)
	text = spelt.text
	w, all, err := t.sides(text, spelt.quoted, as)
	if err != nil {
		return written{}, spelt.back(err)
	}
	w.text, w.half = text, make([]float64, len(w.c))
	w.angles = slices.ContainsFunc(calls(text), func(at diag.Span) bool {
		return strings.HasPrefix(text[at.Start:], "sin") || strings.HasPrefix(text[at.Start:], "cos")
	})
	n := len(w.c) - 1
	for _, x := range append(literals(text), t.rounded(text, spelt.quoted)...) {
		k := slices.IndexFunc(all, func(s summand) bool { return s.from <= x.from && x.to <= s.to })
		if k < 0 {
			continue
		}
		s := &all[k]
		x.from, x.to = x.from-s.from, x.to-s.from
		v, err := t.eval(strings.TrimRight(x.raised(text[s.from:s.to]), " "), spelt.quoted)
		if err != nil {
			continue // a part of a length such as 5'-6"
		}
		change := make([]float64, n+1)
		change[n] = v.V[0] - s.v.V[0]
		for _, u := range v.Terms {
			change[t.unknown(u.Name)] += u.Coef
		}
		for _, u := range s.v.Terms {
			change[t.unknown(u.Name)] -= u.Coef
		}
		for k := range change {
			w.half[k] += math.Abs(s.factor * change[k])
		}
	}
	return w, nil
}

// literal is a number as typed, or a function of such numbers, and half a unit of its last
// place, or of its third figure where that is less.
type literal struct {
	from, to    int
	value, half float64
	call        bool // it is the value of a function
}

// raised is the text with the number half a unit larger: where it stands for a function,
// between the signs of multiplication that a number needs.
func (x *literal) raised(text string) string {
	v := strconv.FormatFloat(x.value+x.half, 'f', -1, 64)
	before, after := strings.TrimRight(text[:x.from], " "), strings.TrimLeft(text[x.to:], " ")
	if x.call {
		v = "(" + v + ")"
		if before != "" && !strings.ContainsRune("+-*/^=(,|", rune(before[len(before)-1])) {
			v = "*" + v
		}
		if strings.HasPrefix(after, "(") {
			v += "*"
		}
	}
	return text[:x.from] + v + text[x.to:]
}

// A number may have its thousands parted by blanks.
var number = regexp.MustCompile(`[0-9]{1,3}(?: [0-9]{3})+\b(?:\.[0-9]*)?|[0-9]+(?:\.[0-9]*)?(?:[eE][+-]?[0-9]+)?|\.[0-9]+(?:[eE][+-]?[0-9]+)?`)

// literals finds the typed numbers that are rounded: neither those of a fraction, nor of a
// power, nor the arguments of functions, which rounded deals with.
func literals(text string) []literal {
	in := calls(text)
	return slices.DeleteFunc(numbers(text), func(x literal) bool {
		return slices.ContainsFunc(in, func(call diag.Span) bool { return call.Start <= x.from && x.from < call.End })
	})
}

// numbers finds the typed numbers that stand neither in a fraction nor in a power.
func numbers(text string) (all []literal) {
	for _, at := range number.FindAllStringIndex(text, -1) {
		from, to := at[0], at[1]
		if from > 0 {
			if c := text[from-1]; c == '_' || c == '.' || c >= 'a' && c <= 'z' || c >= 'A' && c <= 'Z' || c >= '0' && c <= '9' || c >= 0x80 {
				continue // of a name
			}
		}
		before, after := strings.TrimRight(text[:from], " "), strings.TrimLeft(text[to:], " ")
		if strings.HasSuffix(before, "/") || strings.HasPrefix(after, "/") || strings.HasSuffix(before, "^") {
			continue
		}
		typed := strings.ReplaceAll(text[from:to], " ", "")
		v, err := strconv.ParseFloat(typed, 64)
		if err != nil || v == 0 {
			continue
		}
		all = append(all, literal{from: from, to: to, value: v, half: halfPlace(typed, v)})
	}
	return all
}

// halfPlace is half a unit of the last place of a number as typed, or of its third
// significant figure where that is less. Zeros at the end of a whole number are not taken
// for significant: 2240 may be 2243.
func halfPlace(typed string, v float64) float64 {
	last := lastPlace(typed)
	if digits, _, _ := strings.Cut(strings.ToLower(typed), "e"); !strings.Contains(digits, ".") {
		last += len(digits) - len(strings.TrimRight(digits, "0"))
	}
	return 0.5 * math.Pow(10, math.Min(float64(last), thirdFigure(v)))
}

// lastPlace is the power of ten of the last digit typed.
func lastPlace(typed string) (last int) {
	digits, power, _ := strings.Cut(strings.ToLower(typed), "e")
	if _, behind, ok := strings.Cut(digits, "."); ok {
		last = -len(behind)
	}
	if n, err := strconv.Atoi(power); err == nil {
		last += n
	}
	return last
}

// thirdFigure is the power of ten of the third significant figure of a number.
func thirdFigure(v float64) float64 { return math.Floor(math.Log10(math.Abs(v))) - figures + 1 }

// figures is how many significant figures an answer has unless more are typed: three, as
// textbooks of statics print them (common practice).
const figures = 3

// calls are the functions of a text with their arguments, those within others left out:
// cos 30 deg, sqrt(2).
func calls(text string) (all []diag.Span) {
	for _, f := range units.Functions() {
		for at := 0; ; {
			i := strings.Index(text[at:], f.Name)
			if i < 0 {
				break
			}
			i += at
			at = i + len(f.Name)
			if i > 0 && letter(text[i-1]) || at < len(text) && letter(text[at]) {
				continue
			}
			end := at
			for end < len(text) && text[end] == ' ' {
				end++
			}
			if end < len(text) && text[end] == '(' {
				end = closed(text, end)
			} else {
				for end < len(text) && (end == at+1 && text[end] == '-' || !strings.ContainsRune("+-*/=,)", rune(text[end]))) {
					end++
				}
			}
			all = append(all, diag.Between(i, end))
		}
	}
	slices.SortFunc(all, func(a, b diag.Span) int { return a.Start - b.Start })
	end := 0
	return slices.DeleteFunc(all, func(s diag.Span) bool {
		within := s.Start < end
		end = max(end, s.End)
		return within
	})
}

// rounded are the functions of typed numbers, cos 36.9 deg, as numbers of the digits that
// their arguments leave: of half a unit of the last digit typed, so that 37 deg may be 36.87,
// and at least half a unit of the third figure of their value, but never more than near.
// Right angles, the whole numbers under a root and what has no typed number are exact.
func (t *Practice) rounded(text string, quoted map[string]string) (all []literal) {
	for _, at := range calls(text) {
		call := strings.TrimRight(text[at.Start:at.End], " ")
		v, err := t.eval(call, quoted)
		if err != nil || v.N != 1 || v.Dim != units.Number || len(v.Terms) > 0 || v.V[0] == 0 {
			continue
		}
		angle, spread := !strings.HasPrefix(call, "sqrt") && !strings.HasPrefix(call, "hypot"), 0.0
		for _, x := range numbers(call) {
			if whole := x.value == math.Trunc(x.value); whole && (!angle || math.Mod(x.value, 90) == 0) {
				continue
			}
			x.half = 0.5 * math.Pow(10, float64(lastPlace(call[x.from:x.to])))
			if other, err := t.eval(x.raised(call), quoted); err == nil {
				spread += math.Abs(other.V[0] - v.V[0])
			}
		}
		if size := math.Abs(v.V[0]); spread > 0 {
			half := math.Max(math.Min(spread, near*size), 0.5*math.Pow(10, thirdFigure(size)))
			all = append(all, literal{at.Start, at.Start + len(call), v.V[0], half, true})
		}
	}
	return all
}

func letter(c byte) bool {
	return c == '_' || c >= 'a' && c <= 'z' || c >= 'A' && c <= 'Z' || c >= '0' && c <= '9'
}
