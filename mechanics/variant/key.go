package variant

import (
	"math"
	"slices"
	"strings"

	"trivet/mechanics/problem"
	"trivet/mechanics/say"
	"trivet/mechanics/statics"
)

// Key is what an instructor marks by: a row a variant, with what it is called, its
// givens and what is asked.
type Key struct {
	Seed uint64
	Head []string // "variant", the givens, then the results, each with its unit
	Rows [][]KeyCell
}

// KeyCell is a cell of a key, as it is shown; one that is a number may have blanks between its thousands.
type KeyCell struct {
	Text   string
	Number bool
}

// Key gathers the key of variants that go by these names.
func (src *Source) Key(seed uint64, variants []Variant, names []string) Key {
	givens := say.Each(src.Grids, func(g Grid) string { return heading(g.Name, g.Symbol) })
	k := Key{Seed: seed, Head: slices.Concat([]string{"variant"}, givens, headings(src.Solution.Problem))}
	for n, v := range variants {
		row := []KeyCell{{Text: names[n]}}
		for i, at := range v.At {
			row = append(row, KeyCell{src.Grids[i].Number(at), true})
		}
		results := say.Each(v.Solution.Problem.Results(), func(q problem.Query) KeyCell { return shown(v.Solution, q) })
		k.Rows = append(k.Rows, append(row, results...))
	}
	return k
}

// headings are what stands above the results that are asked.
func headings(p *problem.Problem) []string {
	return say.Each(p.Results(), func(q problem.Query) string { return heading(q.Name, p.Units.For(q.Dim).Symbol) })
}

func heading(name, unit string) string {
	if unit == "" {
		return name
	}
	return name + " (" + unit + ")"
}

// shown is a result to the figures that the sheet shows, or the range it has.
func shown(s *statics.Solution, q problem.Query) KeyCell {
	c := resultOf(s, q)
	bounded := c.Ranged && !(math.IsInf(c.Low, -1) && math.IsInf(c.High, 1))
	switch {
	case c.OK, bounded:
		return KeyCell{c.Text(func(si float64) string { return s.Problem.Units.For(q.Dim).Number(si, s.Problem.Figures) }), c.OK}
	case q.Of.Thing != problem.AnUnknown, s.Verdict == statics.NoEquilibrium:
		return KeyCell{Text: "none"}
	}
	return KeyCell{Text: "free"}
}

// Says names the values of a variant: "W = 400 N, h = 3 m".
func (src *Source) Says(v Variant) string {
	var out []string
	for i, at := range v.At {
		out = append(out, src.Grids[i].Name+" = "+src.Grids[i].Said(at))
	}
	return strings.Join(out, ", ")
}
