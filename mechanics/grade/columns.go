package grade

import (
	"fmt"
	"strconv"
	"strings"

	"trivet/mechanics/diag"
	"trivet/mechanics/say"
	"trivet/units"
)

// Columns says what the columns of a table hold: Name and Sheet are indices, -1
// where there is no such column.
type Columns struct {
	Name, Sheet int
	Asked       []Asked
	LeftOut     []*diag.Error // columns that are no results, and what they might have been
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
func (k *Key) Columns(head []string) (*Columns, *diag.Error) {
	c := &Columns{Name: -1, Sheet: -1}
	at := map[string]int{}
	for i, h := range head {
		fault := func(msg, hint string) (*Columns, *diag.Error) {
			return nil, &diag.Error{Place: diag.Place{Line: 1, Column: i + 1}, Msg: msg, Hint: hint}
		}
		name, unit := cutUnit(h)
		key := strings.ToLower(h)
		if h == "" {
			continue
		}
		if first, twice := at[h]; twice {
			return fault(fmt.Sprintf("the column %q occurs twice, first as column %d", h, first+1), "remove one of them")
		}
		at[h] = i
		switch {
		case key == "name" && c.Name < 0:
			c.Name = i
			continue
		case IsSheet(h) && c.Sheet < 0:
			c.Sheet = i
			continue
		}
		q, err := k.Query(name)
		if whole, plain := k.Query(h); err != nil && plain == nil {
			q, err, name, unit = whole, nil, h, "" // angle(T1, T2) ends in brackets too
		}
		if err != nil {
			if err.Meant != "" {
				return fault(err.Msg, err.Hint)
			}
			c.LeftOut = append(c.LeftOut, &diag.Error{Place: diag.Place{Line: 1, Column: i + 1}, Msg: "the column " + strconv.Quote(h) + " is not a result of the sheet, and is left out"})
			continue
		}
		name = q.Name // A_y and Ay are one
		a := Asked{Column: i, Name: name}
		if unit != "" {
			u, err := units.ParseUnit(unit)
			switch own := k.solution.Problem.Units.For(q.Dim); {
			case err != nil:
				return fault(err.Msg+" in the column "+strconv.Quote(h), err.Hint)
			case u.Dim != q.Dim:
				return fault(name+" is "+q.Dim.Name()+", but "+unit+" is a unit of "+u.Dim.String(), name+" ("+own.Symbol+")")
			}
			a.Bare = u
		}
		for _, b := range c.Asked {
			if b.Name == name {
				return fault("there are two columns for "+name, "remove one of them")
			}
		}
		c.Asked = append(c.Asked, a)
	}
	if len(c.Asked) == 0 {
		return nil, &diag.Error{Place: diag.Place{Line: 1}, Msg: "no column is a result of the sheet", Hint: "the names " + say.And(k.Asked()...)}
	}
	return c, nil
}

// IsSheet tells whether a column holds the file of each student's sheet; a key of
// variants calls it variant.
func IsSheet(head string) bool {
	return strings.EqualFold(head, "sheet") || strings.EqualFold(head, "variant")
}

// cutUnit takes the unit in brackets from behind a name: "T1 (N)", "T1 [kN]".
func cutUnit(head string) (name, unit string) {
	for _, pair := range []string{"()", "[]"} {
		i := strings.LastIndex(head, pair[:1])
		if i > 0 && strings.HasSuffix(head, pair[1:]) {
			return strings.TrimSpace(head[:i]), strings.TrimSpace(head[i+1 : len(head)-1])
		}
	}
	return strings.TrimSpace(head), ""
}

// Typed are the answers of a row. A row with more cells than the head is not taken
// apart: a comma in a value may have moved all that stand behind it.
func (c *Columns) Typed(t *Table, row Line) ([]Typed, *diag.Error) {
	if len(row.Cells) > len(t.Head) {
		return nil, &diag.Error{Place: diag.Place{Line: row.Number}, Msg: fmt.Sprintf("the row has %d cells, but the head has %d", len(row.Cells), len(t.Head)), Hint: "quotes around a value with a comma, or a decimal point"}
	}
	out := make([]Typed, len(c.Asked))
	for i, a := range c.Asked {
		out[i] = Typed{Name: a.Name, Text: row.cell(a.Column), Bare: a.Bare, Comma: t.Comma}
	}
	return out, nil
}

// Who is the name of who wrote a row, or its line where it has none.
func (c *Columns) Who(row Line) string {
	if name := row.cell(c.Name); name != "" {
		return name
	}
	return "line " + strconv.Itoa(row.Number)
}

// Variant is the sheet that a row names, or "".
func (c *Columns) Variant(row Line) string { return row.cell(c.Sheet) }

func (l Line) cell(i int) string {
	if i < 0 || i >= len(l.Cells) {
		return ""
	}
	return l.Cells[i]
}
