package report

import (
	"math"

	"trivet/mechanics/problem"
	"trivet/mechanics/say"
	"trivet/mechanics/uncertainty"
)

// uncertaintyJSON is the object "trust", which a sheet without ± has not. A number is null
// where a result has no single value within the ± of the inputs; by says what
// each input does that does anything: half of what the result differs by between
// its ends, positive where both grow together. Worst, low and high were searched at so many
// combinations of the ends of the ±, which are all or some, and in between.
func uncertaintyJSON(t *uncertainty.Effect) object {
	if t == nil {
		return nil
	}
	return object{
		{"inputs", say.Each(t.Measured, func(m problem.Measured) object { return object{{"name", m.Name}, {"plus", m.Half}} })},
		{"results", say.Each(t.Spreads, func(s uncertainty.Spread) object {
			f := t.Solution.Problem.Units.For(s.Dim)
			in := func(v float64) *float64 { return number(v / f.Factor) }
			moves := []object{}
			for k, by := range s.By {
				if math.Abs(by) > 0 {
					moves = append(moves, object{{"input", k}, {"moves", in(by)}})
				}
			}
			return object{{"name", s.Name}, {"end,omitempty", s.End.String()}, {"value", in(s.Value)}, {"unit", f.Symbol},
				{"independent", in(s.Independent)}, {"worst", in(s.Worst)}, {"low", in(s.Low)}, {"high", in(s.High)}, {"by", moves}}
		})},
		{"at_risk", len(t.AtRisk()) > 0},
		{"searched", object{{"combinations", t.Search.Corners}, {"all", t.Search.All}, {"between", t.Search.Inside}}},
		{"says", append([]string{}, t.Words()...)},
	}
}
