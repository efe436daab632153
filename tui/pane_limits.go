package tui

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"trivet/mechanics/statics"
	"trivet/tui/grid"
	"trivet/tui/theme"
	"trivet/units"
)

// limits writes each limit with its use, the governing one first, and what has none.
func (l live) limits(w int) doc {
	var d doc
	s := l.solution
	var of []int
	for k, c := range s.Checks {
		if c.Kind == statics.CheckLimit || c.Kind == statics.CheckJointLimit {
			of = append(of, k)
		}
	}
	share := func(k int) float64 { return s.Checks[k].Value / s.Checks[k].Bound }
	slices.SortStableFunc(of, func(a, b int) int { return cmp.Compare(share(b), share(a)) })
	switch {
	case len(of) == 0:
		d.wrapped(theme.Plain, "", "No limit is held against a value here: type one beside a line or a joint.", w)
	case s.Checks[of[0]].OK:
		d.wrapped(theme.Good, "", s.Checks[of[0]].Subject+" governs: every limit is kept", w)
	default:
		d.wrapped(theme.Bad, "", s.Checks[of[0]].Subject+" governs: its limit is exceeded", w)
	}
	if len(of) > 0 {
		l.uses(&d, of)
	}
	if none := l.unlimited(); len(none) > 0 {
		d.heading("Without a limit")
		d.wrapped(theme.Plain, "", strings.Join(none, ", "), w)
	}
	d.add()
	d.wrapped(theme.Dim, "", caution, w)
	return d
}

// uses writes the table of limits.
func (l live) uses(d *doc, of []int) {
	s, p := l.solution, l.problem
	unit := p.Units.Force.Symbol
	d.heading(grid.Fit("", 6) + grid.Fit("", 8) + grid.FitRight("size", 9) + grid.FitRight("limit", 9) + grid.FitRight("use", 9) + grid.FitRight("left", 8) + "   in " + unit)
	for n, k := range of {
		if n == mostRows {
			d.text(theme.Dim, fmt.Sprintf("... and %d more", len(of)-n))
			return
		}
		c := s.Checks[k]
		size, per, factor := "no end", "", ""
		if finite(c.Value) {
			size, per = bare(p, c.Value, units.Force), units.Figures(100*c.Value/c.Bound, p.Figures)+"%"
			if c.Value > 0 {
				factor = "×" + units.Figures(c.Bound/c.Value, p.Figures)
			}
		}
		mark := seg{text: "ok    ", look: theme.Good}
		if !c.OK {
			mark = seg{text: "FAILS ", look: theme.Bad}
		}
		line := []seg{mark, {text: grid.Fit(c.Subject, 8), look: theme.Name}}
		put := func(text string, w int, a ask) {
			if math.IsInf(c.Value, 0) && a.what == use && text == "" {
				a = ask{}
			}
			line = append(line, seg{grid.FitRight(text, w), theme.Computed, a})
		}
		put(size, 9, ask{what: use, i: k})
		put(bare(p, c.Bound, units.Force), 9, ask{what: limit, i: k})
		put(per, 9, ask{what: use, i: k, n: 1})
		put(factor, 8, ask{what: use, i: k, n: 2})
		d.add(line...)
	}
}

// unlimited names what carries a force and has no limit.
func (l live) unlimited() (names []string) {
	more := 0
	add := func(name string) {
		if len(names) < mostCols {
			names = append(names, name)
		} else {
			more++
		}
	}
	for i := range l.problem.Lines {
		if line := &l.problem.Lines[i]; line.OK && line.Limit == 0 && line.Kind.Info().Path {
			add(line.Name)
		}
	}
	for i := range l.problem.Joints {
		if j := &l.problem.Joints[i]; j.OK && j.Limit == 0 {
			add(j.Name)
		}
	}
	if more > 0 {
		names = append(names, fmt.Sprintf("and %d more", more))
	}
	return names
}
