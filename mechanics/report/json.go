package report

import (
	"encoding/json"
	"math"

	"trivet/mechanics/diag"
	"trivet/mechanics/printable"
	"trivet/mechanics/problem"
	"trivet/mechanics/statics"
	"trivet/mechanics/uncertainty"
)

// The objects of `trivet solve --format json`, a contract: numbers at full
// precision in the sheet's units, null where there is no such number.
type (
	jsonSheet struct {
		Format      int              `json:"format"`
		Sheet       string           `json:"sheet"`
		Title       string           `json:"title"`
		Verdict     string           `json:"verdict"`
		Words       []string         `json:"words"`
		Degree      int              `json:"degree"`
		Unknowns    []jsonUnknown    `json:"unknowns"`
		Lines       []jsonLine       `json:"lines"`
		Equations   []jsonEquation   `json:"equations"`
		Asked       []jsonAsked      `json:"asked"`
		Checks      []jsonCheck      `json:"checks"`
		Answers     []jsonAnswer     `json:"answers"`
		Free        []jsonMotion     `json:"free_motions,omitempty"`
		Uncertainty *jsonUncertainty `json:"trust,omitempty"` // what the ± of inputs does, where any has one
		Errors      []*diag.Error    `json:"errors,omitempty"`
		Warnings    []*diag.Error    `json:"warnings,omitempty"` // what is read by nothing, or most likely meant otherwise
	}
	jsonUnknown struct {
		Name  string   `json:"name"`
		Value *float64 `json:"value"`
		Unit  string   `json:"unit"`
		Fixed bool     `json:"fixed"`
		Low   any      `json:"low"` // a number, "unbounded", or null where it was not computed
		High  any      `json:"high"`
		Sense *string  `json:"sense"`
		Limit *float64 `json:"limit"`
		Use   *float64 `json:"use"`
		Text  string   `json:"text"`
	}
	jsonLine struct {
		Name   string      `json:"name"`
		Kind   string      `json:"kind"`
		R      *[3]float64 `json:"r"`
		Length *float64    `json:"length"`
		U      *[3]float64 `json:"u"`
		Unit   string      `json:"unit"`
	}
	jsonEquation struct {
		Body     string             `json:"body"`
		Axis     string             `json:"axis"`
		Terms    map[string]float64 `json:"terms"`
		Right    float64            `json:"right"`
		Residual float64            `json:"residual"`
		Relative float64            `json:"relative"`
		Unit     string             `json:"unit"`
	}
	jsonAsked struct {
		Name  string   `json:"name"`
		Value *float64 `json:"value"`
		Unit  string   `json:"unit"`
		Text  string   `json:"text"`
	}
	jsonCheck struct {
		Name string `json:"name"`
		OK   bool   `json:"ok"`
		Risk bool   `json:"at_risk,omitempty"` // it holds as typed, and not all over the ± of the inputs
		Says string `json:"says"`
	}
	jsonAnswer struct {
		Name     string `json:"name"`
		Printed  string `json:"printed"`
		Computed string `json:"computed"`
		OK       bool   `json:"ok"`
	}
	jsonMotion struct {
		Body string `json:"body"`
		Says string `json:"says"`
	}
)

// jsonFormat is the contract's number: 2 has the verdicts inadmissible and resultant,
// and says of a range's end whether it is unbounded or was not computed.
const jsonFormat = 2

// JSON writes a solved sheet as one object; t may be nil.
func JSON(sheet string, s *statics.Solution, t *uncertainty.Effect, warnings ...*diag.Error) []byte {
	p := s.Problem
	out := newJSON(sheet, p.Title, s.Verdict, s.Words(), warnings)
	out.Degree, out.Uncertainty = s.Degree, uncertaintyJSON(t)
	for j := range s.X {
		out.Unknowns = append(out.Unknowns, unknownJSON(s, j))
	}
	for i := range p.Lines {
		out.Lines = append(out.Lines, lineJSON(p, i))
	}
	for i, row := range s.System.Rows {
		f := p.Units.For(row.Dim())
		e := jsonEquation{Body: row.Name, Axis: row.Axis, Terms: map[string]float64{}, Unit: f.Symbol,
			Right: s.System.B[i] / f.Factor, Residual: s.Residuals[i].Value / f.Factor, Relative: s.Residuals[i].Relative}
		for j, col := range s.System.Cols {
			if c := s.Coefficient(i, j); c != 0 {
				e.Terms[col] = c
			}
		}
		out.Equations = append(out.Equations, e)
	}
	for _, q := range p.Asked {
		unit := p.Units.For(q.Dim)
		if v, err := s.Evaluate(q); err != nil {
			out.Asked = append(out.Asked, jsonAsked{q.Name, nil, unit.Symbol, err.Error()})
		} else {
			out.Asked = append(out.Asked, jsonAsked{q.Name, number(v / unit.Factor), unit.Symbol, unit.Format(v, p.Figures)})
		}
	}
	for k, c := range s.Checks {
		out.Checks = append(out.Checks, jsonCheck{Name: c.Name(), OK: c.OK, Risk: t.CheckAtRisk(k), Says: c.Says(p)})
	}
	out.Answers = each(s.Answers, func(a statics.AnswerCheck) jsonAnswer {
		return jsonAnswer{a.Query.Name, a.Printed, a.ComputedText(p), a.OK}
	})
	for _, m := range s.Motions {
		body := ""
		if len(m.Moves) > 0 {
			body = p.Bodies[m.Moves[0].Body].Name
		}
		out.Free = append(out.Free, jsonMotion{Body: body, Says: s.MotionWords(m)})
	}
	return marshal(out)
}

// JSONUnreadable writes a sheet that can't be read as one object.
func JSONUnreadable(sheet, title string, faults []*diag.Error, warnings ...*diag.Error) []byte {
	out := newJSON(sheet, title, statics.Unreadable, []string{"unreadable"}, warnings)
	out.Errors = faults
	return marshal(out)
}

// newJSON has lists that are empty, not null.
func newJSON(sheet, title string, v statics.Verdict, words []string, warnings []*diag.Error) jsonSheet {
	return jsonSheet{
		Format: jsonFormat, Sheet: sheet, Title: title, Verdict: v.String(), Words: words, Warnings: warnings,
		Unknowns: []jsonUnknown{}, Lines: []jsonLine{}, Equations: []jsonEquation{},
		Asked: []jsonAsked{}, Checks: []jsonCheck{}, Answers: []jsonAnswer{},
	}
}

// each is what becomes of each of some things; an empty list of none, not null.
func each[S, T any](of []S, become func(S) T) []T {
	out := make([]T, len(of))
	for i, x := range of {
		out[i] = become(x)
	}
	return out
}

func marshal(v any) []byte {
	b, err := json.MarshalIndent(v, "", "  ")
	if err != nil { // a number that is not finite: our mistake, not the user's
		panic("report: " + err.Error())
	}
	return append(printable.JSON(b), '\n')
}

func unknownJSON(s *statics.Solution, j int) jsonUnknown {
	p, x := s.Problem, s.X[j]
	f := p.Units.For(p.Unknowns[j].Dim)
	u := jsonUnknown{Name: x.Name, Unit: f.Symbol, Fixed: x.Fixed, Text: ResultText(s, j)}
	if x.Fixed {
		u.Value = number(x.Value / f.Factor)
	} else {
		u.Low, u.High = rangeEnd(x.Ranged, x.Low/f.Factor), rangeEnd(x.Ranged, x.High/f.Factor)
	}
	if word := SenseWord(s, j); word != "" {
		u.Sense = &word
	}
	if limit, use, ok := LimitUse(s, j); ok {
		u.Limit = number(limit / f.Factor)
		u.Use = number(100 * use)
	}
	return u
}

func lineJSON(p *problem.Problem, i int) jsonLine {
	l := &p.Lines[i]
	unit := p.Units.Length
	out := jsonLine{Name: l.Name, Kind: l.Kind.String(), Unit: unit.Symbol}
	if len(l.Legs) == 0 {
		return out
	}
	leg := l.Legs[0]
	out.U = &[3]float64{leg.U.X + 0, leg.U.Y + 0, leg.U.Z + 0} // + 0: no negative zero
	if leg.To >= 0 {
		out.R = &[3]float64{leg.R.X / unit.Factor, leg.R.Y / unit.Factor, leg.R.Z / unit.Factor}
		out.Length = number(l.Length() / unit.Factor)
	}
	return out
}

// rangeEnd is an end of a range as the contract has it.
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
