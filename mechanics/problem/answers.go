package problem

import (
	"strings"

	"trivet/mechanics/diag"
	"trivet/mechanics/sheet"
	"trivet/units"
)

// readQueries reads asked = "T1 T2.x angle(T1, T2)".
func (r *reading) readQueries() {
	text, ref := r.top("asked")
	for _, w := range askedWords(text) {
		q, err := ParseQuery(r.p, w.text)
		if err != nil {
			if r.settled() {
				r.fail(ref, w.Span, err.Msg, err.Hint)
			}
			continue
		}
		r.p.Asked = append(r.p.Asked, q)
	}
}

// settled tells whether all lines read: before that a name may be missing only
// because its line does not read yet.
func (r *reading) settled() bool { return len(r.errs) == 0 }

// askedWords splits at spaces outside parentheses and bars.
func askedWords(text string) []word {
	depth, bars := 0, false
	return split(text, func(c rune) bool {
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
	for _, row := range Rows(r.s, "answers") {
		if row.Name == "source" {
			r.p.Source, _, _ = r.text("answers", row, "")
			continue
		}
		r.answer(row)
	}
}

func (r *reading) answer(row sheet.Row) {
	text, ref, ok := r.plain("answers", row)
	if !ok {
		return // a blank answer is one not given yet
	}
	q, qerr := ParseQuery(r.p, row.Name)
	if qerr != nil {
		if r.settled() {
			r.fail(sheet.Ref{Table: "answers", Row: row.Name}, diag.Span{}, qerr.Msg, qerr.Hint)
		}
		return
	}
	bare := r.p.Units.For(q.Dim)
	bare.Dim = q.Dim
	w, err := r.p.ReadWritten(q, text, bare, false)
	if err != nil {
		r.fail(ref, err.Span, err.Msg, err.Hint)
		return
	}
	if w.Dim != q.Dim {
		hint := "a value in " + bare.Symbol
		if bare.Symbol == "" {
			hint = "a number without a unit"
		}
		if w.Dim == units.Mass && q.Dim == units.Force && w.Number {
			hint = strings.TrimSpace(text) + " * g"
		}
		r.fail(ref, whole(text), q.Name+" is "+q.Dim.Name()+", but "+strings.TrimSpace(text)+" is "+w.Dim.Name(), hint)
		return
	}
	r.noteGroups(ref, text, w.Grouped)
	a := Answer{Query: q, Printed: strings.TrimSpace(text), Value: w.Value, Half: w.Half, Ref: ref}
	if within, wref, ok := r.text("answers", row, "within"); ok {
		if a.Half, ok = r.tolerance(wref, within, a.Value, q.Dim); !ok {
			return
		}
		a.Why, _, _ = r.text("answers", row, "why")
	}
	r.p.Answers = append(r.p.Answers, a)
}

// tolerance reads within: a value, or per cent of the answer.
func (r *reading) tolerance(ref sheet.Ref, text string, answer float64, d units.Dim) (float64, bool) {
	share, percent := units.Percent(text)
	if point := strings.Replace(text, ",", ".", 1); !percent && point != text {
		if _, ok := units.Percent(point); ok {
			return 0, r.fail(ref, whole(text), strings.TrimSpace(text)+" contains a comma", strings.TrimSpace(point))
		}
	}
	v := abs(answer) * share
	if !percent {
		w, ok := r.scalar(ref, text, env{r: r, scope: inGiven}, d)
		if !ok {
			return 0, false
		}
		v = w.V[0]
	}
	switch {
	case percent && share > 0 && answer == 0:
		r.fail(ref, whole(text), strings.TrimSpace(text)+" of zero is zero", "the tolerance itself, such as 0.5 N")
	case v <= 0:
		r.fail(ref, whole(text), "a tolerance must be greater than zero", "a value such as 0.5 N")
	}
	return v, v > 0
}
