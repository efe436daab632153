package variant

import (
	"fmt"
	"math"

	"trivet/mechanics/problem"
	"trivet/mechanics/statics"
)

// Key is what an instructor marks by: a row a variant, with its givens and what is
// asked.
type Key struct {
	Seed uint64
	Head []string // the givens, then the results, each with its unit
	Rows []KeyRow
}

// KeyRow is the line of a variant: what it is called, and its numbers as shown.
type KeyRow struct {
	Name  string
	Cells []string
}

// Key gathers the key of variants that go by these names.
func (src *Source) Key(seed uint64, variants []Variant, names []string) Key {
	k := Key{Seed: seed}
	for i := range src.Grids {
		k.Head = append(k.Head, heading(src.Grids[i].Name, src.Grids[i].Symbol))
	}
	asked := Asked(src.Solution.Problem)
	for _, q := range asked {
		k.Head = append(k.Head, heading(q.Name, src.Solution.Problem.Units.For(q.Dim).Symbol))
	}
	for n, v := range variants {
		row := KeyRow{Name: names[n]}
		for i, at := range v.At {
			row.Cells = append(row.Cells, src.Grids[i].Number(at))
		}
		for _, q := range Asked(v.Solution.Problem) {
			row.Cells = append(row.Cells, resultOf(v.Solution, q))
		}
		k.Rows = append(k.Rows, row)
	}
	return k
}

func heading(name, unit string) string {
	if unit == "" {
		return name
	}
	return name + " (" + unit + ")"
}

// Asked are the results that a sheet asks for, or all its unknowns.
func Asked(p *problem.Problem) []problem.Query {
	if len(p.Asked) > 0 {
		return p.Asked
	}
	var out []problem.Query
	for _, u := range p.Unknowns {
		if q, err := problem.ParseQuery(p, u.Name); err == nil {
			out = append(out, q)
		}
	}
	return out
}

// resultOf is a result to the figures that the sheet shows, or the range it has.
func resultOf(s *statics.Solution, q problem.Query) string {
	u := s.Problem.Units.For(q.Dim)
	if v, err := s.Evaluate(q); err == nil {
		return u.Number(v, s.Problem.Figures)
	}
	if q.Kind != problem.AskUnknown || q.Unknown < 0 || s.Verdict == statics.NoEquilibrium {
		return "none"
	}
	x := s.X[q.Unknown]
	if !x.Ranged || math.IsInf(x.Low, -1) && math.IsInf(x.High, 1) {
		return "free"
	}
	return SweptCell{Ranged: true, Low: x.Low, High: x.High}.Text(func(si float64) string { return u.Number(si, s.Problem.Figures) })
}

// Says names the values of a variant: "W = 400 N, h = 3 m".
func (src *Source) Says(v Variant) string {
	out := ""
	for i, at := range v.At {
		if i > 0 {
			out += ", "
		}
		out += fmt.Sprintf("%s = %s", src.Grids[i].Name, src.Grids[i].Said(at))
	}
	return out
}
