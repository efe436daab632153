package problem

import (
	"cmp"
	"math"
	"slices"
	"strconv"
	"strings"

	"gonum.org/v1/gonum/spatial/r3"

	"trivet/mechanics/diag"
	"trivet/mechanics/say"
	"trivet/mechanics/sheet"
	"trivet/units"
)

// PrivatePrefix begins the names of tables, rows and keys that a sheet keeps for itself:
// nothing reads them, and nothing is said of them.
const PrivatePrefix = "x-"

// Private tells that a table, a row or a key of this name is kept and not read.
func Private(name string) bool { return strings.HasPrefix(name, PrivatePrefix) }

// Rows gives the rows of a table that are read: all but the private ones.
func Rows(s *sheet.Sheet, table string) []sheet.Row {
	return slices.DeleteFunc(slices.Clone(s.Table(table).Rows), func(row sheet.Row) bool { return Private(row.Name) })
}

// row is a row of a table that is being read.
type row struct {
	r *reading
	sheet.Row
	ref sheet.Ref
}

// rowsOf gives the rows of a kind of thing.
func (r *reading) rowsOf(what Thing) (rows []row) {
	for _, of := range Rows(r.s, things[what].table) {
		w := row{r, of, sheet.Ref{Table: things[what].table, Row: of.Name}}
		rows, r.rows[w.ref] = append(rows, w), w
	}
	return rows
}

// entry begins a thing of a row, and notes its place in its list.
func (w row) entry(what Thing, i int) Entry {
	w.r.note(what, w.Name, i)
	return Entry{Name: w.Name, Ref: w.ref}
}

// fail reports what is wrong with a row, and is false for its reader to return.
func (w row) fail(msg, hint string) bool { return w.r.fail(w.ref, diag.Span{}, msg, hint) }

// cell is a cell as it was typed; has is false where it is missing, blank, or not a text
// (which is reported), asks tells that a component of it may be ?.
type cell struct {
	r         *reading
	ref       sheet.Ref
	text      string
	has, asks bool
}

// cell gives the cell under a key of a row.
func (w row) cell(key string) cell {
	at := w.ref
	at.Key = key
	typed, found := w.Cell(key)
	c := cell{r: w.r, ref: at, text: typed.Text, has: strings.TrimSpace(typed.Text) != ""}
	if found && !typed.Readable {
		w.r.fail(at, diag.Span{}, cmp.Or(key, w.Name)+" is neither a text nor a number", "the value in quotes")
		w.r.notText = w.ref
		c.has = false
	}
	if !c.has {
		c.text = ""
	}
	return c
}

// kind reads the kind of a row, one of some words; offered are those that have a meaning on
// the sheet.
func (w row) kind(what string, words []Word, offered []string) (kind int, ok bool) {
	c := w.cell("kind")
	switch kind = WordOf(words, c.word()); {
	case !c.has:
		return 0, w.fail("the "+what+" "+w.Name+" has no kind", say.Or(offered...))
	case kind < 0:
		return 0, c.fail(strconv.Quote(c.text)+" is not a kind of "+what, suggestion(c.text, offered, say.Or(offered...)))
	}
	return kind, true
}

// needs refuses a row without a cell.
func (w row) needs(c cell, msg, hint string) bool { return c.has || w.fail(msg, hint) }

func (c cell) word() string { return strings.TrimSpace(c.text) }

// fail reports what is wrong with a cell's text, and is false for its reader to return.
func (c cell) fail(msg, hint string) bool { return c.failAt(diag.Whole(c.text), msg, hint) }

func (c cell) failAt(at diag.Span, msg, hint string) bool { return c.r.fail(c.ref, at, msg, hint) }

// plain gives the cell that stands alone in a row, or else the one under the key that a
// plain value of the table stands for.
func (w row) plain() cell {
	if _, bare := w.Cell(""); bare {
		return w.cell("")
	}
	t, _ := TableNamed(w.ref.Table)
	return w.cell(t.Plain)
}

// value reads a cell as one value of a dimension, which may be linear in unknowns.
func (c cell) value(e env, d units.Dim) (units.Value, bool) {
	v, ok := c.one(e)
	if ok {
		v, ok = c.want(v, d)
	}
	return v, ok
}

// quantity is what a cell of a known value holds; ok is false where it does not read, which
// has been reported.
type quantity struct {
	cell
	value float64
	ok    bool
}

// quantity reads a cell as a value of the dimension of its key.
func (w row) quantity(key string) quantity {
	k, _ := CellKey(w.ref.Table, w.ref.Row, key)
	return w.cell(key).quantity(k.Dim)
}

// quantity reads a cell as one known value of a dimension.
func (c cell) quantity(d units.Dim) quantity {
	q := quantity{cell: c}
	if c.has {
		v, ok := c.value(env{r: c.r, scope: inGiven}, d)
		q.value, q.ok = v.V[0], ok
	}
	return q
}

// positive tells whether a quantity reads and is greater than zero, as it must be.
func (q quantity) positive(what, hint string) bool {
	return q.ok && (q.value > 0 || q.fail(what+" must be greater than zero", hint))
}

// limit reads the capacity of a line or a joint, 0 where there is none.
func (w row) limit(to *float64) bool {
	q := w.quantity("limit")
	*to = max(q.value, 0)
	return !q.has || q.positive("a limit", "the capacity, such as 5 kN")
}

// expr parses a cell; false where it does not read, which has been reported.
func (c cell) expr(parse func(string) (*units.Expr, *diag.Error)) (*units.Expr, bool) {
	expr, err := parse(c.text)
	if err != nil {
		c.r.failCell(c.ref, err)
	}
	return expr, err == nil
}

// maxFriction is the largest static coefficient that is taken for one: rubber
// on dry concrete has about 1 (common practice), and 2 leaves room.
const maxFriction = 2

// friction tells whether a coefficient of static friction that is not negative is one.
func (q quantity) friction() bool {
	return q.ok && (q.value <= maxFriction ||
		q.fail("a coefficient of static friction of "+units.Figures(q.value, 3)+" is too large for any surface", "a decimal such as 0.3"))
}

// one evaluates a cell of one value, in which commas may group digits, without
// holding it against a dimension.
func (c cell) one(e env) (units.Value, bool) {
	expr, err := c.r.parseOne(c.text)
	if err != nil {
		return units.Value{}, c.r.failCell(c.ref, cmp.Or(c.wordBehind(e), err))
	}
	c.grouped(expr)
	return c.r.evaluate(c.ref, expr, e)
}

// ends parses the two ends of a range.
func (c cell) ends() (low, high *units.Expr, ok bool) {
	low, high, err := units.ParseRange(c.text)
	if err != nil {
		return nil, nil, c.r.failCell(c.ref, err)
	}
	c.grouped(low)
	return low, high, true
}

func (c cell) grouped(expr *units.Expr) {
	as, _ := expr.Grouped()
	c.noteGroups(as)
}

// noteGroups notes how a value whose digits are grouped by commas is read, once a
// cell: to some readers they are decimal commas.
func (c cell) noteGroups(grouped string) {
	note := Error{Ref: c.ref, Sort: DigitsGrouped, Error: diag.Error{Span: diag.Whole(c.text), Msg: c.word() + " is read as " + grouped}}
	if grouped != "" && !slices.ContainsFunc(c.r.p.Doubts, func(e Error) bool { return e.Ref == note.Ref && e.Sort == note.Sort }) {
		c.r.p.Doubts = append(c.r.p.Doubts, note)
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
func (c cell) want(v units.Value, d units.Dim) (units.Value, bool) {
	return c.inReach(units.Want(v, d, c.r.p.Units.For(d), diag.Whole(c.text)))
}

// wantVector does the same for a vector.
func (c cell) wantVector(v units.Value, d units.Dim) (units.Value, bool) {
	return c.inReach(units.WantVector(v, d, c.r.p.Units.For(d), diag.Whole(c.text)))
}

func (c cell) inReach(v units.Value, err *diag.Error) (units.Value, bool) {
	if err != nil {
		return v, c.r.failCell(c.ref, err)
	}
	numbers := slices.Concat(v.V[:v.N], v.Plus[:v.N])
	for _, t := range v.Terms {
		numbers = append(numbers, t.Coef)
	}
	for _, x := range numbers {
		switch {
		case abs(x) > greatest:
			return v, c.fail("the value is too large for a problem", "check the exponent")
		case x != 0 && abs(x) < smallest:
			return v, c.fail("the value is too small for a problem", "check the exponent")
		}
	}
	return v, true
}

// eval evaluates a cell in geometry without holding it against a dimension.
func (c cell) eval() (units.Value, bool) {
	expr, ok := c.expr(c.r.Parse)
	if !ok {
		return units.Value{}, false
	}
	return c.r.evaluate(c.ref, expr, env{r: c.r, scope: inGeometry})
}

func (r *reading) evaluate(ref sheet.Ref, expr *units.Expr, e env) (units.Value, bool) {
	e.cell = ref
	v, err := expr.Eval(e)
	return v, err == nil || r.failCell(ref, err)
}

// vector reads a cell as a vector of a dimension. Components typed one by one
// are cells of their own: in "4, 0, h" the bare numbers take the sheet's unit.
func (c cell) vector(d units.Dim) (units.Value, bool) {
	r, e := c.r, env{r: c.r, scope: inGeometry}
	expr, ok := c.expr(r.Parse)
	if !ok || c.groupedPair(expr, e) {
		return units.Value{}, false
	}
	parts, tuple := expr.Tuple()
	if !tuple || len(parts) > 3 {
		v, ok := r.evaluate(c.ref, expr, e)
		if !ok || !c.shaped(v) {
			return v, false
		}
		v.N = 3
		return c.wantVector(v, d)
	}
	out := units.Value{Dim: d, N: len(parts)}
	for k, part := range parts {
		if c.asks && part.IsQuestion() {
			continue
		}
		v, ok := c.part(part, e, d)
		if ok && len(v.Terms) > 0 {
			ok = c.failAt(part.Span(), "a component must be known, but "+v.Terms[0].Name+" is an unknown", "a number or a given")
		}
		if !ok {
			return out, false
		}
		out.V[k], out.Plus[k] = v.V[0], v.Plus[0]
	}
	ok = c.shaped(out)
	out.N = 3
	return out, ok
}

// part reads an expression within a cell as one value of a dimension.
func (c cell) part(expr *units.Expr, e env, d units.Dim) (units.Value, bool) {
	v, ok := c.r.evaluate(c.ref, expr, e)
	if !ok {
		return v, false
	}
	return c.inReach(units.Want(v, d, c.r.p.Units.For(d), expr.Span()))
}

// groupedPair notes three components in the plane whose first two look like one number
// with a comma between its digits, where the third is 0, and refuses them where it is not.
func (c cell) groupedPair(expr *units.Expr, e env) bool {
	one, two, ok := expr.GroupedPair()
	if !ok || !c.r.p.Planar {
		return false
	}
	v, err := expr.Eval(e)
	switch {
	case err != nil:
	case v.V[2] != 0:
		c.fail("the plane has two components, but "+c.word()+" is three", one)
		return true
	default:
		c.r.doubt(c.ref, NoSort, diag.Whole(c.text), c.word()+" is read as "+two, one+", if that is meant")
	}
	return false
}

// shaped refuses a vector that is not a pair in the plane, or a triple in space.
func (c cell) shaped(v units.Value) bool {
	planar := c.r.p.Planar
	switch {
	case v.N == 1 && planar:
		return c.fail("expected two components, but this is one value", "the form 3, 4")
	case v.N == 1:
		return c.fail("expected three components, but this is one value", "the form 3, 4, 0")
	case v.N == 2 && !planar:
		return c.fail("expected three components in space, but these are two", "add the third, or set the plane of the sheet to xy")
	case v.N == 3 && planar && v.V[2] != 0:
		return c.fail("the vector is not in the plane xy", "two components")
	}
	return true
}

// direction reads a cell as a direction, a unit vector.
func (c cell) direction(to *r3.Vec) bool {
	r := c.r
	if expr, err := r.Parse(c.text); err == nil {
		rise, run, quotient := expr.Quotient()
		name, named := expr.Name()
		switch {
		case expr.IsQuestion():
			return c.unknownDirection()
		case quotient && r.p.Planar:
			hint := "slope " + rise + ":" + run
			if r.p.Up.Y > 0 {
				hint = "(" + run + ", " + rise + ")"
			}
			return c.fail("expected a direction, but "+c.word()+" is a number", hint+", for a rise of "+rise+" in a run of "+run)
		case named && r.isPoint(name):
			return c.fail("expected a direction, but "+name+" is a point", "dir(P, "+name+") for the direction from P to "+name)
		}
	}
	// down and yy, which nothing in a sheet stands for
	if word := strings.TrimLeft(c.text, "+-"); IsIdentifier(word) && !r.isPoint(word) && !r.isGiven(word) && !has(axes, word) {
		names := env{r: r, scope: inGeometry}.Names()
		return c.fail(strconv.Quote(c.text)+" is not a direction", suggestion(word, names, "an axis such as +x or -y, a vector such as (3, 4), or dir(A, B)"))
	}
	v, ok := c.eval()
	switch {
	case !ok:
		return false
	case v.N == 1 && v.Dim == units.Angle && r.p.Planar:
		return c.fail("expected a direction, but "+c.word()+" is an angle", "polar("+c.word()+"), counter-clockwise from +x")
	case !c.shaped(v):
		return false
	}
	*to, ok = unit(vec(v.V))
	return ok || c.fail("the zero vector has no direction", "an axis such as +x or a vector such as (3, 0, -4)")
}

// unknownDirection says how a direction is sought: by its components, since the
// equations are linear in those alone.
func (c cell) unknownDirection() bool {
	line := c.ref.Row
	found := line + "x and " + line + "y"
	switch {
	case c.ref.Table != "lines":
		return c.fail("expected a direction, but ? is an unknown", "an axis such as +x or a vector such as (3, 4)")
	case !c.r.p.Planar:
		found = line + "x, " + line + "y and " + line + "z"
	}
	return c.fail("an unknown direction is found from the components "+found, "the kind force with the components ?, without direction and magnitude")
}

func vec(v [3]float64) r3.Vec { return r3.Vec{X: v[0], Y: v[1], Z: v[2]} }

func abs(x float64) float64 { return math.Abs(x) }
