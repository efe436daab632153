package doc

import (
	"slices"
	"strings"
)

// Gap is the space between two parts of a formula, or two words.
type Gap int

// The gaps.
const (
	None     Gap = iota
	Relation     // around = and its like; a line may break before it
	Plus         // around + and - between terms; a line may break before it too
	Dot          // around · between numbers
	Times        // around ×
	Factor       // between factors
	Comma        // behind a comma
	Unit         // between a number and its unit, or words
	Beside       // between formulas side by side
	SumOf        // behind Σ
	Word         // between words
	Seam         // in a word that is too long for a line
	Indent       // before what goes on in the next line
)

// Setter sets the parts of a formula, and words, in one format: as T, which is code,
// cells of a terminal or ink on paper. The walk decides where parentheses, signs and
// gaps stand.
type Setter[T any] interface {
	Letter(m Math) T // a symbol or vector, without its subscript
	Number(digits string, m Math) T
	Words(text string) T
	Sign(text string) T // of a relation or an operator, a comma, a parenthesis, Σ
	Space(g Gap) T
	Join(of ...T) T
	Sub(m Math, base, sub T) T
	Power(base, up T, exponent Math) T
	Fraction(over, under T) T
	Root(in T) T
	Fence(op Op, in T) T                         // of Paren or Size, as high as what is in it
	Grid(op Op, rows [][]T, columns []float64) T // columns are their widths
	Width(T) float64
	Traits() Traits
	Small() Setter[T]  // for a subscript or a power
	Inline() Setter[T] // for a line of prose, or a cell of a matrix

	Prose(text string) T
}

// Traits are what a format can.
type Traits struct {
	Flat   bool // fractions stand as a/b
	Linear bool // all is written in one line of characters: a root needs parentheses, and 1e-3 stays so
	Small  bool // it is set in a subscript
}

// Piece is a part of a formula or a sentence that no line break parts. Lead is the space
// before it within a line; where there is none no line begins with it. Deep tells that it
// stands in parentheses or is what Kept keeps with what is before it: a line breaks there if
// it must, and at last where a unit is Measured.
type Piece[T any] struct {
	Box      T
	Lead     Gap
	Deep     bool
	Measured bool
}

// relates tells a piece that begins with a relation of the whole formula.
func (p Piece[T]) relates() bool { return p.Lead == Relation && !p.Deep }

// Set sets a formula in one.
func Set[T any](s Setter[T], m Math) T { return Line(s, Pieces(s, m)) }

// walker takes one formula apart.
type walker[T any] struct{ s Setter[T] }

// Pieces takes a formula apart at its relations and signs.
func Pieces[T any](s Setter[T], m Math) []Piece[T] {
	w := walker[T]{s}
	if of := w.pieces(m); len(of) > 0 {
		return of
	}
	return w.one(s.Words(""))
}

func (w walker[T]) one(box T) []Piece[T] { return []Piece[T]{{Box: box}} }

func (w walker[T]) set(m Math) T { return Set(w.s, m) }

func (w walker[T]) pieces(m Math) []Piece[T] {
	s := w.s
	switch m.Op {
	case Symbol, Vec, UnitVec:
		base := s.Letter(m)
		if len(m.Of) > 0 {
			base = s.Sub(m, base, Set(s.Small(), m.Of[0]))
		}
		return w.one(base)
	case Number:
		return w.one(w.number(m))
	case Words:
		return w.one(w.words(m.Text))
	case Relate:
		return w.relate(m)
	case Sum:
		return w.sum(m)
	case Neg:
		if in := operand(m, 0); in.Op == Number && s.Traits().Linear {
			return w.one(s.Number("-"+in.Text, in)) // the sign is the number's
		}
		return w.behind(w.pieces(inParens(operand(m, 0), Sum)), s.Sign("-"))
	case BigSum:
		return w.behind(w.pieces(inParens(operand(m, 0), Sum)), s.Sign("Σ"), s.Space(SumOf))
	case Product:
		return w.product(m)
	case Cross:
		of := []Math{inParens(operand(m, 0), Sum, Neg), inParens(operand(m, 1), Sum, Neg)}
		return w.chain(of, func(int) []T { return w.between("×", Times) })
	case Function:
		return w.behind(w.pieces(inParens(operand(m, 0), Sum, Neg, Product, Fraction)), s.Words(m.Text), s.Space(Unit))
	case Degrees:
		return w.ended(w.pieces(inParens(operand(m, 0), Sum)), s.Sign("°"))
	case Row:
		return w.row(m)
	case Paren:
		return w.paren(m)
	case Fraction:
		if s.Traits().Flat {
			return w.one(s.Join(w.set(inParens(operand(m, 0), Sum, Neg)), s.Sign("/"), w.set(inParens(operand(m, 1), Sum, Neg, Product))))
		}
		return w.one(s.Fraction(w.set(operand(m, 0)), w.set(operand(m, 1))))
	case Root:
		in := operand(m, 0)
		if s.Traits().Linear {
			in = inParens(in, Sum, Power, Product)
		}
		return w.one(s.Root(w.set(in)))
	case Power:
		base, up := w.set(inParens(operand(m, 0), Sum, Neg, Product, Fraction)), operand(m, 1)
		if s.Traits().Linear {
			up = inParens(up, Sum, Neg, Product, Fraction)
		}
		return w.one(s.Power(base, Set(s.Small(), up), up))
	case Size:
		return w.one(s.Fence(Size, w.set(operand(m, 0))))
	case Column, Grid, Det:
		return w.one(w.grid(m))
	}
	return nil
}

// operand is one of a node's operands, empty words where it has not so many.
func operand(m Math, k int) Math {
	if k < len(m.Of) {
		return m.Of[k]
	}
	return Math{Op: Words}
}

// inParens puts a formula in parentheses where it is one of the given.
func inParens(m Math, ops ...Op) Math {
	if slices.Contains(ops, m.Op) {
		return Math{Op: Paren, Of: []Math{m}}
	}
	return m
}

// behind sets the first piece behind something.
func (w walker[T]) behind(of []Piece[T], before ...T) []Piece[T] {
	if len(of) == 0 {
		of = w.one(w.s.Words(""))
	}
	of[0].Box = w.s.Join(append(before, of[0].Box)...)
	return of
}

// led sets pieces behind a sign with which a line may begin.
func (w walker[T]) led(of []Piece[T], sign string, lead Gap) []Piece[T] {
	of = w.behind(of, w.s.Sign(sign), w.s.Space(lead))
	of[0].Lead = lead
	return of
}

// chain sets formulas side by side, with something between each and the one before it.
func (w walker[T]) chain(of []Math, between func(k int) []T) (out []Piece[T]) {
	for k, x := range of {
		next := w.pieces(x)
		if len(out) == 0 || len(next) == 0 {
			out = append(out, next...)
			continue
		}
		last := &out[len(out)-1]
		last.Box = w.s.Join(slices.Concat([]T{last.Box}, between(k), []T{next[0].Box})...)
		out = append(out, next[1:]...)
	}
	return out
}

// between is a sign between two gaps.
func (w walker[T]) between(sign string, g Gap) []T {
	return []T{w.s.Space(g), w.s.Sign(sign), w.s.Space(g)}
}

// number is digits; 1.89e-3 is a power of ten where the format can raise.
func (w walker[T]) number(m Math) T {
	digits, power, scientific := strings.Cut(m.Text, "e")
	if !scientific || w.s.Traits().Linear {
		return w.s.Number(m.Text, m)
	}
	ten := w.raised(w.s.Number("10", Math{Op: Number, Text: "10"}), power)
	return w.s.Join(slices.Concat([]T{w.s.Number(digits, m)}, w.between("×", Times), []T{ten})...)
}

func (w walker[T]) raised(base T, power string) T {
	up := NumberOf(power, 0)
	return w.s.Power(base, Set(w.s.Small(), up), up)
}

// words are upright; the power of a unit, as in ft^2, is raised where the format can.
func (w walker[T]) words(text string) T {
	unit, power, raised := strings.Cut(text, "^")
	if !raised || w.s.Traits().Linear || power == "" {
		return w.s.Words(text)
	}
	rest := strings.TrimLeft(power[1:], "0123456789")
	out := w.raised(w.s.Words(unit), strings.TrimSuffix(power, rest))
	if rest != "" {
		out = w.s.Join(out, w.words(rest))
	}
	return out
}

func (w walker[T]) relate(m Math) (out []Piece[T]) {
	for k, x := range m.Of {
		of := w.pieces(x)
		if k > 0 {
			of = w.led(of, m.Text, Relation)
		}
		out = append(out, of...)
	}
	return out
}

func (w walker[T]) sum(m Math) (out []Piece[T]) {
	for k, x := range m.Of {
		minus, rest := signed(x)
		of := w.pieces(rest)
		switch {
		case k > 0 && minus:
			of = w.led(of, "-", Plus)
		case k > 0:
			of = w.led(of, "+", Plus)
		case minus:
			of = w.behind(of, w.s.Sign("-"))
		}
		out = append(out, of...)
	}
	return out
}

// signed takes the sign off a term.
func signed(m Math) (minus bool, rest Math) {
	switch {
	case m.Op == Neg:
		return true, inParens(operand(m, 0), Sum)
	case m.Op == Product && len(m.Of) > 0:
		if minus, first := signed(m.Of[0]); minus {
			return true, Math{Op: Product, Of: append([]Math{first}, m.Of[1:]...)}
		}
	}
	return false, m
}

// product sets a point before a number, nothing between parentheses, else a space.
func (w walker[T]) product(m Math) []Piece[T] {
	of := factors(m)
	set := make([]Math, len(of))
	for k, x := range of {
		set[k] = inParens(x, Sum)
		if k > 0 {
			set[k] = inParens(set[k], Neg)
		}
	}
	return w.chain(set, func(k int) []T {
		switch before, x := of[k-1].Op, of[k].Op; {
		case before == Paren && x == Paren:
			return nil
		case before != Paren && x == Number, before == Number && x == Fraction:
			return w.between("·", Dot)
		}
		return []T{w.s.Space(Factor)}
	})
}

// factors are the operands of a product, those of a product in it among them.
func factors(m Math) (of []Math) {
	for _, x := range m.Of {
		if x.Op == Product {
			of = append(of, factors(x)...)
		} else {
			of = append(of, x)
		}
	}
	return of
}

// row sets formulas and words side by side.
func (w walker[T]) row(m Math) []Piece[T] {
	return w.chain(m.Of, func(k int) []T { return []T{w.s.Space(w.rowGap(m.Of[k-1], m.Of[k]))} })
}

func (w walker[T]) rowGap(before, m Math) Gap {
	switch {
	case w.s.Traits().Small,
		m.Op == Words && (m.Text == "" || strings.ContainsAny(m.Text[:1], " ,;.:)")),
		before.Op == Words && (before.Text == "" || strings.HasSuffix(before.Text, " ")):
		return None
	case m.Op == Words, before.Op == Words:
		return Unit
	}
	return Beside
}

// paren sets a list in parentheses; a line may break in it, unless it is higher than one.
func (w walker[T]) paren(m Math) []Piece[T] {
	out := w.chain(m.Of, func(int) []T { return []T{w.s.Sign(","), w.s.Space(Comma)} })
	if slices.ContainsFunc(m.Of, tall) {
		return w.one(w.s.Fence(Paren, Line(w.s, out)))
	}
	out = w.ended(w.behind(out, w.s.Sign("(")), w.s.Sign(")"))
	for k := range out[1:] {
		out[k+1].Deep = true
	}
	return out
}

// ended sets something behind the last piece.
func (w walker[T]) ended(of []Piece[T], sign T) []Piece[T] {
	of = w.behind(of)
	last := &of[len(of)-1]
	last.Box = w.s.Join(last.Box, sign)
	return of
}

// tall tells a formula that is higher than a line where the format can.
func tall(m Math) bool {
	switch m.Op {
	case Grid, Column, Det, Fraction:
		return true
	}
	return slices.ContainsFunc(m.Of, tall)
}

func (w walker[T]) grid(m Math) T {
	s := w.s.Inline()
	rows, columns := make([][]T, len(m.Of)), []float64{}
	for i, r := range m.Of {
		if m.Op == Column {
			r.Of = []Math{r}
		}
		for k, e := range r.Of {
			rows[i] = append(rows[i], Set(s, e))
			if k == len(columns) {
				columns = append(columns, 0)
			}
			columns[k] = max(columns[k], s.Width(rows[i][k]))
		}
	}
	return w.s.Grid(m.Op, rows, columns)
}
