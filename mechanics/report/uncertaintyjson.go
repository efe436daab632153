package report

import (
	"math"

	"trivet/mechanics/problem"
	"trivet/mechanics/uncertainty"
)

type (
	jsonInput struct {
		Name string `json:"name"`
		Plus string `json:"plus"`
	}
	jsonSpread struct {
		Name        string   `json:"name"`
		End         string   `json:"end,omitempty"` // of a range: "least" or "greatest"
		Value       *float64 `json:"value"`
		Unit        string   `json:"unit"`
		Independent *float64 `json:"independent"`
		Worst       *float64 `json:"worst"`
		Low         *float64 `json:"low"`
		High        *float64 `json:"high"`
		By          []jsonBy `json:"by"`
	}
	jsonBy struct {
		Input int      `json:"input"`
		Moves *float64 `json:"moves"`
	}
	jsonUncertainty struct {
		Inputs  []jsonInput  `json:"inputs"`
		Results []jsonSpread `json:"results"`
		AtRisk  bool         `json:"at_risk"`
		Search  jsonSearch   `json:"searched"`
		Says    []string     `json:"says"`
	}
	// jsonSearch says where worst, low and high were looked for: at so many combinations
	// of the ends of the ±, which are all or some, and in between.
	jsonSearch struct {
		Combinations int  `json:"combinations"`
		All          bool `json:"all"`
		Between      bool `json:"between"`
	}
)

// uncertaintyJSON is the object "trust", which a sheet without ± has not. A number is null
// where a result has no single value within the ± of the inputs; by says what
// each input does that does anything: half of what the result differs by between
// its ends, positive where both grow together.
func uncertaintyJSON(t *uncertainty.Effect) *jsonUncertainty {
	if t == nil {
		return nil
	}
	input := func(m problem.Measured) jsonInput { return jsonInput{m.Name, m.Half} }
	out := &jsonUncertainty{Inputs: each(t.Measured, input), Results: []jsonSpread{}, AtRisk: len(t.AtRisk()) > 0,
		Search: jsonSearch{t.Search.Corners, t.Search.All, t.Search.Inside}, Says: append([]string{}, t.Words()...)}
	for i := range t.Spreads {
		s := &t.Spreads[i]
		f := t.Solution.Problem.Units.For(s.Dim)
		in := func(v float64) *float64 { return number(v / f.Factor) }
		one := jsonSpread{Name: s.Name, End: s.End.String(), Unit: f.Symbol, Value: in(s.Value), Independent: in(s.Independent), Worst: in(s.Worst),
			Low: in(s.Low), High: in(s.High), By: []jsonBy{}}
		for k, by := range s.By {
			if math.Abs(by) > 0 {
				one.By = append(one.By, jsonBy{k, in(by)})
			}
		}
		out.Results = append(out.Results, one)
	}
	return out
}
