package problem

import (
	"strings"

	"trivet/mechanics/sheet"
	"trivet/units"
)

// readQueries reads asked = "T1 T2.x angle(T1, T2)".
func (r *reading) readQueries() {
	asked := r.top("asked")
	for _, w := range ResultNames(asked.text) {
		if q, ok := r.query(w.Text, func(msg, hint string) bool { return asked.failAt(w.Span, msg, hint) }); ok {
			r.p.Asked = append(r.p.Asked, q)
		}
	}
}

// query reads the name of a result, and reports what does not read where all lines do:
// before that a name may be missing only because its line does not read yet.
func (r *reading) query(name string, fail func(msg, hint string) bool) (Query, bool) {
	q, err := ParseQuery(r.p, name)
	if err != nil && len(r.errs) == 0 {
		fail(err.Msg, err.Hint)
	}
	return q, err == nil
}

// Results are what the sheet asks for, or all its unknowns where it asks for nothing.
func (p *Problem) Results() []Query {
	if len(p.Asked) > 0 {
		return p.Asked
	}
	var out []Query
	for j := range p.Unknowns {
		out = append(out, p.Ask(j))
	}
	return out
}

// ResultNames splits at spaces outside parentheses and bars.
func ResultNames(text string) []Token {
	depth, bars := 0, false
	return Split(text, func(c rune) bool {
		switch {
		case c == '(':
			depth++
		case c == ')' && depth > 0:
			depth--
		case c == '|':
			bars = !bars
		}
		return depth == 0 && !bars && strings.ContainsRune(" ,\t\n\r", c)
	})
}

// readAnswers reads what a source prints. An answer is held to half a unit of
// the last place printed, or to the tolerance within that the sheet gives, with
// its reason under why.
func (r *reading) readAnswers() {
	for _, of := range Rows(r.s, "answers") {
		w := row{r, of, sheet.Ref{Table: "answers", Row: of.Name}}
		if w.Name == "source" {
			r.p.Source = w.cell("").text
		} else if c := w.plain(); c.has { // a blank answer is one not given yet
			r.answer(w, c)
		}
	}
}

func (r *reading) answer(of row, c cell) {
	q, ok := r.query(of.Name, of.fail)
	if !ok {
		return
	}
	bare := r.p.Units.For(q.Dim)
	bare.Dim = q.Dim
	w, err := r.p.ReadWritten(q, c.text, bare, false)
	if err != nil {
		c.failAt(err.Span, err.Msg, err.Hint)
		return
	}
	if w.Dim != q.Dim {
		hint := "a value in " + bare.Symbol
		if bare.Symbol == "" {
			hint = "a number without a unit"
		}
		if w.Dim == units.Mass && q.Dim == units.Force && w.Number {
			hint = c.word() + " * g"
		}
		c.fail(q.Name+" is "+q.Dim.Name()+", but "+c.word()+" is "+w.Dim.Name(), hint)
		return
	}
	c.noteGroups(w.Grouped)
	a := Answer{Query: q, Printed: c.word(), Value: w.Value, Half: w.Half, Ref: c.ref}
	if within := of.cell("within"); within.has {
		if a.Half, ok = within.tolerance(a.Value, q.Dim); !ok {
			return
		}
		a.Why = of.cell("why").text
	}
	r.p.Answers = append(r.p.Answers, a)
}

// tolerance reads within: a value, or per cent of the answer.
func (c cell) tolerance(answer float64, d units.Dim) (float64, bool) {
	share, percent := units.Percent(c.text)
	if point := strings.Replace(c.word(), ",", ".", 1); !percent && point != c.word() {
		if _, ok := units.Percent(point); ok {
			return 0, c.fail(c.word()+" contains a comma", point)
		}
	}
	if !percent {
		q := c.quantity(d)
		return q.value, q.positive("a tolerance", "a value such as 0.5 N")
	}
	q := quantity{c, abs(answer) * share, true}
	if share > 0 && answer == 0 {
		return 0, c.fail(c.word()+" of zero is zero", "the tolerance itself, such as 0.5 N")
	}
	return q.value, q.positive("a tolerance", "a value such as 0.5 N")
}
