package problem

import (
	"strings"

	"trivet/mechanics/sheet"
	"trivet/units"
)

// readQueries reads asked = "T1 T2.x angle(T1, T2)".
func (r *reading) readQueries() {
	text, ref := r.top("asked")
	for _, span := range askedWords(text) {
		q, err := ParseQuery(r.p, text[span.Start:span.End])
		if err != nil {
			if r.settled() {
				r.fail(ref, span, err.Msg, err.Hint)
			}
			continue
		}
		r.p.Asked = append(r.p.Asked, q)
	}
}

// settled tells whether all lines read: before that a name may be missing only
// because its line does not read yet.
func (r *reading) settled() bool { return len(r.errs) == 0 }

// askedWords splits at spaces outside parentheses.
func askedWords(text string) []units.Span {
	var spans []units.Span
	start, depth := -1, 0
	for i, c := range text {
		switch {
		case c == '(':
			depth++
		case c == ')' && depth > 0:
			depth--
		}
		sep := depth == 0 && (c == ' ' || c == ',' || c == '\t' || c == '\n' || c == '\r')
		if sep && start >= 0 {
			spans = append(spans, units.Span{Start: start, End: i})
			start = -1
		} else if !sep && start < 0 {
			start = i
		}
	}
	if start >= 0 {
		spans = append(spans, units.Span{Start: start, End: len(text)})
	}
	return spans
}

// readAnswers reads what a source prints. An answer is held to half a unit of
// the last place printed, or to the tolerance within that the sheet gives, with
// its reason under why.
func (r *reading) readAnswers() {
	for _, row := range r.s.Table("answers").Rows {
		if row.Name == "source" {
			r.p.Source, _, _ = r.text("answers", row, "")
			continue
		}
		r.answer(row)
	}
}

func (r *reading) answer(row sheet.Row) {
	key := ""
	if _, bare := row.Cell(""); !bare {
		key = "printed"
	}
	text, ref, ok := r.text("answers", row, key)
	if !ok {
		return // a blank answer is one not given yet
	}
	q, qerr := ParseQuery(r.p, row.Name)
	if qerr != nil {
		if r.settled() {
			r.fail(sheet.Ref{Table: "answers", Row: row.Name}, units.Span{}, qerr.Msg, qerr.Hint)
		}
		return
	}
	value, half, dim, err := units.ReadPrinted(text, r.p.Units, q.Dim)
	if err != nil {
		r.fail(ref, err.Span, err.Msg, err.Hint)
		return
	}
	if dim != q.Dim {
		r.fail(ref, whole(text), q.Name+" is "+q.Dim.Name()+", and this is "+dim.Name(), "write it in "+r.p.Units.For(q.Dim).Symbol)
		return
	}
	a := Answer{Query: q, Printed: strings.TrimSpace(text), Value: value, Half: half, Ref: ref}
	if within, wref, ok := r.text("answers", row, "within"); ok {
		w, ok := r.scalar(wref, within, env{r: r, scope: inGiven}, q.Dim)
		if !ok {
			return
		}
		if w.V[0] <= 0 {
			r.fail(wref, whole(within), "a tolerance is greater than nothing", "write for example \"0.5 N\"")
			return
		}
		a.Half = w.V[0]
	}
	a.Why, _, _ = r.text("answers", row, "why")
	r.p.Answers = append(r.p.Answers, a)
}
