package report

import (
	"bytes"
	"encoding/json"
	"fmt"
	"math"
	"reflect"
	"strings"

	"trivet/mechanics/diag"
	"trivet/mechanics/printable"
	"trivet/mechanics/problem"
	"trivet/mechanics/say"
	"trivet/mechanics/statics"
	"trivet/mechanics/uncertainty"
)

// object is a JSON object, its keys in the order of the contract. A key that ends in
// ",omitempty" is left out where its value is empty, as encoding/json has it.
type object []struct {
	key   string
	value any
}

// MarshalJSON writes an object.
func (o object) MarshalJSON() ([]byte, error) {
	var b bytes.Buffer
	for _, m := range o {
		key, omits := strings.CutSuffix(m.key, ",omitempty")
		if v := reflect.ValueOf(m.value); omits && (v.IsZero() || v.Kind() == reflect.Slice && v.Len() == 0) {
			continue
		}
		value, err := json.Marshal(m.value)
		if err != nil {
			return nil, err
		}
		fmt.Fprintf(&b, ",%q:%s", key, value)
	}
	return fmt.Appendf(nil, "{%s}", bytes.TrimPrefix(b.Bytes(), []byte(","))), nil
}

// list is an object for each of n things; an empty list of none, not null.
func list(n int, become func(i int) object) []object {
	out := make([]object, n)
	for i := range out {
		out[i] = become(i)
	}
	return out
}

func marshal(v object) []byte {
	b, err := json.MarshalIndent(v, "", "  ")
	if err != nil { // a number that is not finite: our mistake, not the user's
		panic("report: " + err.Error())
	}
	return append(printable.JSON(b), '\n')
}

// jsonFormat is the contract's number: 2 has the verdicts inadmissible and resultant,
// and says of a range's end whether it is unbounded or was not computed.
const jsonFormat = 2

// JSON writes a solved sheet as one object; t may be nil.
func JSON(sheet string, s *statics.Solution, t *uncertainty.Effect, warnings ...*diag.Error) []byte {
	return contract(sheet, s, s.Words(), t, nil, warnings)
}

// JSONUnreadable writes a sheet that can't be read as one object.
func JSONUnreadable(sheet, title string, faults []*diag.Error, warnings ...*diag.Error) []byte {
	s := &statics.Solution{Problem: &problem.Problem{Title: title}, Verdict: statics.Unreadable}
	return contract(sheet, s, []string{"unreadable"}, nil, faults, warnings)
}

// contract is what `trivet solve --format json` writes: numbers at full precision in the
// sheet's units, null where there is no such number.
func contract(sheet string, s *statics.Solution, words []string, t *uncertainty.Effect, faults, warnings []*diag.Error) []byte {
	p := s.Problem
	return marshal(object{
		{"format", jsonFormat},
		{"sheet", sheet},
		{"title", p.Title},
		{"verdict", s.Verdict.String()},
		{"words", words},
		{"degree", s.Degree},
		{"unknowns", list(len(s.X), func(j int) object { return unknownJSON(s, j) })},
		{"lines", say.Each(p.Lines, func(l problem.Line) object { return lineJSON(p, &l) })},
		{"equations", list(len(s.System.Rows), func(i int) object { return equationJSON(s, i) })},
		{"asked", say.Each(p.Asked, func(q problem.Query) object {
			unit := p.Units.For(q.Dim)
			v, err := s.Evaluate(q)
			if err != nil {
				return object{{"name", q.Name}, {"value", nil}, {"unit", unit.Symbol}, {"text", err.Error()}}
			}
			return object{{"name", q.Name}, {"value", number(v / unit.Factor)}, {"unit", unit.Symbol}, {"text", unit.Format(v, p.Figures)}}
		})},
		{"checks", list(len(s.Checks), func(k int) object { // one at risk holds as typed, and not all over the ± of the inputs
			c := &s.Checks[k]
			return object{{"name", c.Name()}, {"ok", c.OK}, {"at_risk,omitempty", t.CheckAtRisk(k)}, {"says", c.Says(p)}}
		})},
		{"answers", say.Each(s.Answers, func(a statics.AnswerCheck) object {
			return object{{"name", a.Query.Name}, {"printed", a.Printed}, {"computed", a.ComputedText(p)}, {"ok", a.OK}}
		})},
		{"free_motions,omitempty", say.Each(s.Motions, func(m statics.Motion) object {
			return object{{"body", p.Bodies[m.Moves[0].Body].Name}, {"says", s.MotionWords(m)}}
		})},
		{"trust,omitempty", uncertaintyJSON(t)}, // what the ± of inputs does, where any has one
		{"errors,omitempty", faults},
		{"warnings,omitempty", warnings}, // what is read by nothing, or most likely meant otherwise
	})
}

func unknownJSON(s *statics.Solution, j int) object {
	p, x := s.Problem, s.X[j]
	f := p.Units.For(p.Unknowns[j].Dim)
	var value, limit, use *float64
	var low, high, sense any
	if x.Fixed {
		value = number(x.Value / f.Factor)
	} else {
		low, high = rangeEnd(x.Ranged, x.Low/f.Factor), rangeEnd(x.Ranged, x.High/f.Factor)
	}
	if word := SenseWord(s, j); word != "" {
		sense = word
	}
	if _, c := LimitCheck(s, j); c != nil {
		limit, use = number(c.Bound/f.Factor), number(100*(c.Value/c.Bound))
	}
	return object{{"name", x.Name}, {"value", value}, {"unit", f.Symbol}, {"fixed", x.Fixed}, {"low", low}, {"high", high},
		{"sense", sense}, {"limit", limit}, {"use", use}, {"text", ResultText(s, j)}}
}

func lineJSON(p *problem.Problem, l *problem.Line) object {
	unit := p.Units.Length
	var r, u *[3]float64
	var length *float64
	if len(l.Legs) > 0 {
		leg := l.Legs[0]
		u = &[3]float64{leg.U.X + 0, leg.U.Y + 0, leg.U.Z + 0} // + 0: no negative zero
		if leg.To >= 0 {
			r = &[3]float64{leg.R.X / unit.Factor, leg.R.Y / unit.Factor, leg.R.Z / unit.Factor}
			length = number(l.Length() / unit.Factor)
		}
	}
	return object{{"name", l.Name}, {"kind", l.Kind.String()}, {"r", r}, {"length", length}, {"u", u}, {"unit", unit.Symbol}}
}

func equationJSON(s *statics.Solution, i int) object {
	row, left := s.System.Rows[i], s.Residuals[i]
	f := s.Problem.Units.For(row.Dim())
	terms := map[string]float64{}
	for _, t := range s.System.Terms[i] {
		if c := s.Coefficient(i, t.Col); c != 0 {
			terms[s.System.Cols[t.Col]] = c
		}
	}
	return object{{"body", row.Name}, {"axis", row.Axis}, {"terms", terms}, {"right", s.System.B[i] / f.Factor},
		{"residual", left.Value / f.Factor}, {"relative", left.Relative}, {"unit", f.Symbol}}
}

// rangeEnd is an end of a range as the contract has it: a number, "unbounded", or null
// where it was not computed.
func rangeEnd(computed bool, x float64) any {
	switch {
	case !computed:
		return nil
	case math.IsInf(x, 0):
		return "unbounded"
	}
	return x
}

// number is a finite number, or nil.
func number(x float64) *float64 {
	if math.IsInf(x, 0) || math.IsNaN(x) {
		return nil
	}
	return &x
}
