package grade

import (
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"sync"

	"trivet/mechanics/diag"
	"trivet/mechanics/say"
	"trivet/units"
)

// Columns are those of a table that hold answers.
type Columns struct {
	Asked   []Asked
	LeftOut []*diag.Error // columns that are no results, and what they might have been
}

// Asked is a column of answers: the result it is called after, and the unit of a
// bare number in it where its head says one.
type Asked struct {
	Column int
	Name   string
	Bare   units.Unit
}

// Columns reads the head of a table against a sheet. A column that is called nearly
// as a result is refused, since its answers would be lost; one that has nothing to
// do with the sheet is left out.
func (k *Key) Columns(t *Table) (*Columns, *diag.Error) {
	c := &Columns{}
	for i, h := range t.Head {
		place := diag.Place{Line: 1, Column: i + 1}
		first := slices.Index(t.Head, h)
		switch {
		case h == "" || i == t.Name || i == t.Sheet:
		case first < i:
			return nil, &diag.Error{Place: place, Msg: fmt.Sprintf("the column %q occurs twice, first as column %d", h, first+1), Hint: "remove one of them"}
		default:
			a, err := k.column(h)
			if err == nil && slices.ContainsFunc(c.Asked, func(b Asked) bool { return b.Name == a.Name }) {
				err = diag.New("there are two columns for "+a.Name, "remove one of them")
			}
			switch {
			case err != nil:
				return nil, &diag.Error{Place: place, Msg: err.Msg, Hint: err.Hint}
			case a.Name == "":
				c.LeftOut = append(c.LeftOut, &diag.Error{Place: place, Msg: "the column " + strconv.Quote(h) + " is not a result of the sheet, and is left out"})
			default:
				a.Column = i
				c.Asked = append(c.Asked, a)
			}
		}
	}
	if len(c.Asked) == 0 {
		return nil, &diag.Error{Place: diag.Place{Line: 1}, Msg: "no column is a result of the sheet", Hint: "the names " + say.And(k.Asked()...)}
	}
	return c, nil
}

// column reads the head of one column of answers; its name is blank where it is of no
// result.
func (k *Key) column(head string) (a Asked, err *diag.Error) {
	q, err := k.Query(head)
	unit := ""
	if m := unitBehind().FindStringSubmatch(head); m != nil && err != nil { // angle(T1, T2) ends in brackets too
		q, err = k.Query(m[1])
		unit = m[2] + m[3]
	}
	if err != nil && err.Meant == "" {
		return a, nil
	}
	if err != nil || unit == "" {
		return Asked{Name: q.Name}, err // A_y and Ay are one
	}
	a.Name = q.Name
	a.Bare, err = units.ParseUnit(unit)
	if err != nil {
		return a, diag.New(err.Msg+" in the column "+strconv.Quote(head), err.Hint)
	}
	if a.Bare.Dim != q.Dim {
		own := k.solution.Problem.Units.For(q.Dim)
		return a, diag.New(q.Name+" is "+q.Dim.Name()+", but "+unit+" is a unit of "+a.Bare.Dim.String(), q.Name+" ("+own.Symbol+")")
	}
	return a, nil
}

// unitBehind is a name with a unit in brackets: "T1 (N)", "T1 [kN]".
var unitBehind = sync.OnceValue(func() *regexp.Regexp {
	return regexp.MustCompile(`^(.*?)\s*(?:\(\s*([^(]*?)\s*\)|\[\s*([^\[]*?)\s*\])$`)
})

// Typed are the answers of a row. A row with more cells than the head is not taken
// apart: a comma in a value may have moved all that stand behind it.
func (c *Columns) Typed(t *Table, row Row) ([]Typed, *diag.Error) {
	if len(row.Cells) > len(t.Head) {
		msg := fmt.Sprintf("the row has %d cells, but the head has %d", len(row.Cells), len(t.Head))
		return nil, &diag.Error{Place: diag.Place{Line: row.Line}, Msg: msg, Hint: "quotes around a value with a comma, or a decimal point"}
	}
	out := make([]Typed, len(c.Asked))
	for i, a := range c.Asked {
		out[i] = Typed{Name: a.Name, Text: row.cell(a.Column), Bare: a.Bare, Comma: t.Comma}
	}
	return out, nil
}
