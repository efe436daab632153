package results

import (
	"fmt"

	"trivet/mechanics/origin"
	"trivet/mechanics/statics"
	"trivet/tui/grid"
	"trivet/tui/text"
	"trivet/tui/theme"
)

// ranges writes what equilibrium and the conditions of an admissible state leave of each unknown, what ends it, and
// the ranges that the sheet gives to its own values.
func (l writer) ranges(w int) text.Lines {
	var d text.Lines
	s := l.Solution
	switch {
	case len(s.X) == 0:
		d.Plain(theme.Plain, "There are no unknowns.")
	case s.Verdict == statics.NoEquilibrium:
		d.Wrapped(theme.Bad, "", "No values of the unknowns give equilibrium, so there is no range.", w)
	case s.Verdict == statics.Inadmissible:
		d.Wrapped(theme.Bad, "", s.Words()[0], w)
	case s.Verdict == statics.Indeterminate:
		d.Wrapped(theme.Warn, "", s.Words()[0], w)
	default:
		d.Wrapped(theme.Plain, "", "Every unknown has a single value, so there is no range.", w)
	}
	if len(s.X) > 0 && s.Verdict != statics.NoEquilibrium {
		d.Heading("Unknowns")
		for i := range s.X {
			if i == MaxRows {
				d.Plain(theme.Dim, fmt.Sprintf("... and %d more", len(s.X)-i))
				break
			}
			l.span(&d, i, w)
		}
	}
	l.effectLines(&d, w)
	l.givenRanges(&d)
	return d
}

// span writes an unknown's value, or its range and what ends it.
func (l writer) span(d *text.Lines, i, w int) {
	x := l.Solution.X[i]
	name := grid.Fit(x.Name, 8) + " "
	if x.Fixed {
		d.Add(append([]text.Span{{Text: name, Look: theme.Name}}, text.Apart(", ", found(l.Result, nil, i, "..")...)...)...)
		return
	}
	u := l.Problem.Units.For(l.Problem.Unknowns[i].Dim)
	ends := found(l.Result, nil, i, " .. ")
	if u.Symbol != "" && Finite(x.Low) && Finite(x.High) {
		ends = append(ends, text.Span{Text: " " + u.Symbol, Look: theme.Computed})
	}
	d.Add(append([]text.Span{{Text: name, Look: theme.Name}}, text.Apart(", ", ends...)...)...)
	in := grid.Fit("", 9)
	if len(x.LowBy) > 0 {
		d.Behind(text.Span{Text: in + "smallest: "}, " ", theme.Plain, l.Solution.Ends(x.LowBy), w)
	}
	if len(x.HighBy) > 0 {
		d.Behind(text.Span{Text: in + "largest:  "}, " ", theme.Plain, l.Solution.Ends(x.HighBy), w)
	}
}

// givenRanges writes the ranges that cells of the givens have.
func (l writer) givenRanges(d *text.Lines) {
	p := l.Problem
	n := 0
	for _, g := range p.Givens {
		if !g.HasRange {
			continue
		}
		if n++; n == 1 {
			d.Heading("Givens: value and range")
		}
		if n > MaxRows {
			d.Plain(theme.Dim, "... and more")
			return
		}
		u := p.Units.For(g.Value.Dim)
		line := []text.Span{{Text: grid.Fit(g.Name, 8), Look: theme.Name}}
		put := func(by, before string, v float64, what string) {
			line = append(line, text.Span{Text: before, By: by}, text.Numeral(u.Format(v, p.Figures), theme.Computed,
				origin.Phrase("%[1]s: %[2]s, from the sheet; variants stay within the range", g.Name, what)))
		}
		put(", ", " ", g.Value.V[0], "its value")
		put(", ", "   ", g.Low, "the lower end of its range")
		put("", " .. ", g.High, "the upper end of its range")
		if g.Step > 0 {
			put("", " in steps of ", g.Step, "the step through its range")
		}
		d.Add(line...)
	}
}
