package problem

import (
	"math"
	"slices"
	"strconv"
	"strings"

	"gonum.org/v1/gonum/spatial/r3"

	"trivet/mechanics/diag"
	"trivet/mechanics/sheet"
	"trivet/units"
)

// scalar reads a cell as one known value of a dimension; a bare number takes
// the sheet's unit. It reports what does not read and returns false.
func (r *reading) scalar(ref sheet.Ref, text string, e env, d units.Dim) (units.Value, bool) {
	v, ok := r.one(ref, text, e)
	if !ok {
		return v, false
	}
	if v, ok = r.want(ref, text, v, d); !ok {
		return v, false
	}
	if len(v.Terms) > 0 {
		return v, r.fail(ref, whole(text), "expected a known value, but "+v.Terms[0].Name+" is an unknown", "a number or a given")
	}
	return v, true
}

// quantity is what a cell of a known value holds; has is false where it is blank, ok where
// it does not read, which has been reported.
type quantity struct {
	value   float64
	ref     sheet.Ref
	text    string
	has, ok bool
}

// quantity reads a cell as a value of the dimension of its key.
func (r *reading) quantity(table string, row sheet.Row, key string) (q quantity) {
	if q.text, q.ref, q.has = r.text(table, row, key); q.has {
		k, _ := cellKey(table, row.Name, key)
		v, ok := r.scalar(q.ref, q.text, env{r: r, scope: inGiven}, k.Dim)
		q.value, q.ok = v.V[0], ok
	}
	return q
}

// positive refuses a quantity that is not greater than zero.
func (r *reading) positive(q quantity, what, hint string) bool {
	return q.value > 0 || r.fail(q.ref, whole(q.text), what+" must be greater than zero", hint)
}

// one evaluates a cell of one value, in which commas may group digits, without
// holding it against a dimension.
func (r *reading) one(ref sheet.Ref, text string, e env) (units.Value, bool) {
	expr, err := r.parseOne(text)
	if err != nil {
		r.blocked = false
		if other := r.wordBehind(ref, text, e); other != nil {
			err = other
		}
		return units.Value{}, r.failCell(ref, err)
	}
	r.grouped(ref, text, expr)
	return r.evaluate(ref, expr, e)
}

// ends parses the two ends of a range.
func (r *reading) ends(ref sheet.Ref, text string) (low, high *units.Expr, ok bool) {
	low, high, err := units.ParseRange(text)
	if err != nil {
		return nil, nil, r.failCell(ref, err)
	}
	r.grouped(ref, text, low)
	return low, high, true
}

func (r *reading) grouped(ref sheet.Ref, text string, expr *units.Expr) {
	if as, ok := expr.Grouped(); ok {
		r.noteGroups(ref, text, as)
	}
}

// noteGroups notes how a value whose digits are grouped by commas is read, once a
// cell: to some readers they are decimal commas.
func (r *reading) noteGroups(ref sheet.Ref, text, grouped string) {
	note := Error{Ref: ref, Sort: DigitsGrouped, Error: diag.Error{Span: whole(text), Msg: strings.TrimSpace(text) + " is read as " + grouped}}
	if grouped != "" && !slices.Contains(r.p.Doubts, note) {
		r.p.Doubts = append(r.p.Doubts, note)
	}
}

// The sizes, in SI, between which a quantity of a problem lies. They are far
// outside anything real, and keep squares and products of quantities finite.
const (
	greatest = 1e50
	smallest = 1e-50
)

// want holds a value against the dimension a cell must have, as one value; a bare
// number takes the sheet's unit.
func (r *reading) want(ref sheet.Ref, text string, v units.Value, d units.Dim) (units.Value, bool) {
	v, err := units.Want(v, d, r.p.Units.For(d), whole(text))
	return r.inReach(ref, text, v, err)
}

// wantVector does the same for a vector.
func (r *reading) wantVector(ref sheet.Ref, text string, v units.Value, d units.Dim) (units.Value, bool) {
	v, err := units.WantVector(v, d, r.p.Units.For(d), whole(text))
	return r.inReach(ref, text, v, err)
}

// vectorOf reads a cell as a vector of a dimension. Components typed one by one
// are cells of their own: in "4, 0, h" the bare numbers take the sheet's unit.
func (r *reading) vectorOf(ref sheet.Ref, text string, e env, d units.Dim) (units.Value, bool) {
	expr, err := r.parse(text)
	var parts []*units.Expr
	tuple := false
	if err == nil {
		if r.groupedPair(ref, text, expr, e) {
			return units.Value{}, false
		}
		parts, tuple = expr.Tuple()
	}
	if !tuple || len(parts) > 3 {
		v, ok := r.eval(ref, text, e)
		if !ok || !r.shaped(ref, text, v) {
			return v, false
		}
		v.N = 3
		return r.wantVector(ref, text, v, d)
	}
	out := units.Value{Dim: d, N: len(parts)}
	bare := r.p.Units.For(d)
	for k, part := range parts {
		if x, dim, ok := part.Literal(); ok && (dim == d || dim == units.Number) {
			if dim != d {
				x = bare.Of(x)
			}
			if x == 0 || abs(x) >= smallest && abs(x) <= greatest {
				out.V[k] = x
				continue
			}
		}
		r.blocked = false
		e.cell = ref
		v, err := part.Eval(e)
		if err == nil {
			v, err = units.Want(v, d, bare, part.Span())
		}
		if err == nil && len(v.Terms) > 0 {
			err = diag.At(part.Span(), "a component must be known, but "+v.Terms[0].Name+" is an unknown", "a number or a given")
		}
		v, ok := r.inReach(ref, text, v, err)
		if !ok {
			return out, false
		}
		out.V[k], out.Plus[k] = v.V[0], v.Plus[0]
	}
	ok := r.shaped(ref, text, out)
	out.N = 3
	return out, ok
}

// groupedPair notes three components in the plane whose first two look like one number
// with a comma between its digits, where the third is 0, and refuses them where it is not.
func (r *reading) groupedPair(ref sheet.Ref, text string, expr *units.Expr, e env) bool {
	if !r.p.Planar {
		return false
	}
	one, two, ok := expr.GroupedPair()
	if !ok {
		return false
	}
	e.cell = sheet.Ref{}
	v, err := expr.Eval(e)
	r.blocked = false
	if err != nil || v.V[2] != 0 {
		if err == nil {
			r.fail(ref, whole(text), "the plane has two components, but "+strings.TrimSpace(text)+" is three", one)
		}
		return err == nil
	}
	r.doubt(ref, NoSort, whole(text), strings.TrimSpace(text)+" is read as "+two, one+", if that is meant")
	return false
}

func (r *reading) inReach(ref sheet.Ref, text string, v units.Value, err *diag.Error) (units.Value, bool) {
	if err != nil {
		return v, r.failCell(ref, err)
	}
	reach := func(x float64) bool {
		switch {
		case abs(x) > greatest:
			return r.fail(ref, whole(text), "the value is too large for a problem", "check the exponent")
		case x != 0 && abs(x) < smallest:
			return r.fail(ref, whole(text), "the value is too small for a problem", "check the exponent")
		}
		return true
	}
	for k := range v.N {
		if !reach(v.V[k]) || !reach(v.Plus[k]) {
			return v, false
		}
	}
	for _, t := range v.Terms {
		if !reach(t.Coef) {
			return v, false
		}
	}
	return v, true
}

// eval evaluates a cell without holding it against a dimension.
func (r *reading) eval(ref sheet.Ref, text string, e env) (units.Value, bool) {
	expr, err := r.parse(text)
	if err != nil {
		r.blocked = false
		return units.Value{}, r.failCell(ref, err)
	}
	return r.evaluate(ref, expr, e)
}

func (r *reading) evaluate(ref sheet.Ref, expr *units.Expr, e env) (units.Value, bool) {
	r.blocked = false
	e.cell = ref
	v, err := expr.Eval(e)
	if err != nil {
		return v, r.failCell(ref, err)
	}
	r.blocked = false
	return v, true
}

// shaped refuses a vector that is not a pair in the plane, or a triple in space.
func (r *reading) shaped(ref sheet.Ref, text string, v units.Value) bool {
	fail := func(msg, hint string) bool { return r.fail(ref, whole(text), msg, hint) }
	switch {
	case v.N == 1 && r.p.Planar:
		return fail("expected two components, but this is one value", "the form 3, 4")
	case v.N == 1:
		return fail("expected three components, but this is one value", "the form 3, 4, 0")
	case v.N == 2 && !r.p.Planar:
		return fail("expected three components in space, but these are two", "add the third, or set the plane of the sheet to xy")
	case v.N == 3 && r.p.Planar && v.V[2] != 0:
		return fail("the vector is not in the plane xy", "two components")
	}
	return true
}

// direction reads a cell as a direction and makes it a unit vector.
func (r *reading) direction(ref sheet.Ref, text string, e env) (r3.Vec, bool) {
	if expr, err := r.parse(text); err == nil {
		if expr.IsQuestion() {
			r.unknownDirection(ref, text)
			return r3.Vec{}, false
		}
		if rise, run, ok := expr.Quotient(); ok && r.p.Planar {
			hint := "slope " + rise + ":" + run
			if r.p.Up.Y > 0 {
				hint = "(" + run + ", " + rise + ")"
			}
			return r3.Vec{}, r.fail(ref, whole(text), "expected a direction, but "+strings.TrimSpace(text)+" is a number", hint+", for a rise of "+rise+" in a run of "+run)
		}
		if name, ok := expr.Name(); ok {
			if has(r.points, name) {
				return r3.Vec{}, r.fail(ref, whole(text), "expected a direction, but "+name+" is a point", "dir(P, "+name+") for the direction from P to "+name)
			}
		}
	}
	if word := strings.TrimLeft(text, "+-"); r.noDirection(word) {
		return r3.Vec{}, r.fail(ref, whole(text), strconv.Quote(text)+" is not a direction", suggestion(word, e.Names(), "an axis such as +x or -y, a vector such as (3, 4), or dir(A, B)"))
	}
	v, ok := r.eval(ref, text, e)
	if !ok {
		return r3.Vec{}, false
	}
	if v.N == 1 && v.Dim == units.Angle && r.p.Planar {
		text = strings.TrimSpace(text)
		return r3.Vec{}, r.fail(ref, whole(text), "expected a direction, but "+text+" is an angle", "polar("+text+"), counter-clockwise from +x")
	}
	if !r.shaped(ref, text, v) {
		return r3.Vec{}, false
	}
	u, ok := unit(r3.Vec{X: v.V[0], Y: v.V[1], Z: v.V[2]})
	if !ok {
		return r3.Vec{}, r.fail(ref, whole(text), "the zero vector has no direction", "an axis such as +x or a vector such as (3, 0, -4)")
	}
	return u, true
}

// unknownDirection says how a direction is sought: by its components, since the
// equations are linear in those alone.
func (r *reading) unknownDirection(ref sheet.Ref, text string) {
	if ref.Table != "lines" {
		r.fail(ref, whole(text), "expected a direction, but ? is an unknown", "an axis such as +x or a vector such as (3, 4)")
		return
	}
	found := ref.Row + "x and " + ref.Row + "y"
	if !r.p.Planar {
		found = ref.Row + "x, " + ref.Row + "y and " + ref.Row + "z"
	}
	r.fail(ref, whole(text), "an unknown direction is found from the components "+found, "the kind force with the components ?, without direction and magnitude")
}

// noDirection tells words that nothing in a sheet stands for, such as down and yy.
func (r *reading) noDirection(word string) bool {
	return isIdentifier(word) && !has(r.points, word) && !r.isGiven(word) && !has(axes, word)
}

func abs(x float64) float64 { return math.Abs(x) }

// plain gives the cell that stands alone in a row, or else the one under the key that a
// plain value of the table stands for.
func (r *reading) plain(table string, row sheet.Row) (text string, ref sheet.Ref, ok bool) {
	if _, bare := row.Cell(""); bare {
		return r.text(table, row, "")
	}
	t, _ := tableNamed(table)
	return r.text(table, row, t.Plain)
}

// text gives a row's cell, trimmed; ok is false where it is missing, blank, or
// not a text (which is reported).
func (r *reading) text(table string, row sheet.Row, key string) (text string, ref sheet.Ref, ok bool) {
	ref = sheet.Ref{Table: table, Row: row.Name, Key: key}
	c, found := row.Cell(key)
	if !found {
		return "", ref, false
	}
	if !c.Readable {
		name := key
		if name == "" {
			name = row.Name
		}
		r.fail(ref, diag.Span{}, name+" is neither a text nor a number", "the value in quotes")
		r.notText = sheet.Ref{Table: table, Row: row.Name}
		return "", ref, false
	}
	if strings.TrimSpace(c.Text) == "" {
		return "", ref, false
	}
	return c.Text, ref, true
}
