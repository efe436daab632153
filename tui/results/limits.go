package results

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"trivet/mechanics/origin"
	"trivet/mechanics/problem"
	"trivet/mechanics/statics"
	"trivet/tui/grid"
	"trivet/tui/text"
	"trivet/tui/theme"
	"trivet/units"
)

// limits writes each limit with its use, the governing one first, and what has none.
func (l writer) limits(w int) text.Lines {
	var d text.Lines
	s := l.Solution
	var of []int
	for k, c := range s.Checks {
		if c.Kind == statics.CheckLimit {
			of = append(of, k)
		}
	}
	share := func(k int) float64 { return s.Checks[k].Value / s.Checks[k].Bound }
	slices.SortStableFunc(of, func(a, b int) int { return cmp.Compare(share(b), share(a)) })
	switch {
	case len(of) == 0:
		d.Wrapped(theme.Plain, "", "No limit is checked. Try: type one beside a line or a joint.", w)
	case s.Checks[of[0]].OK && l.couldExceed():
		d.Wrapped(theme.Warn, "", s.Checks[of[0]].Subject+" governs, at risk: every limit is met as typed, but not throughout the ± of the inputs", w)
	case s.Checks[of[0]].OK:
		d.Wrapped(theme.Good, "", s.Checks[of[0]].Subject+" governs: every limit is met", w)
	default:
		d.Wrapped(theme.Bad, "", s.Checks[of[0]].Subject+" governs: its limit is exceeded", w)
	}
	if len(of) > 0 {
		l.uses(&d, of, w)
	}
	l.worstUses(&d, w)
	none, tied := l.unlimited()
	if len(tied) > 0 {
		d.Heading("Same force as a line with a limit")
		d.Wrapped(theme.Plain, "", strings.Join(tied, "; "), w)
	}
	if len(none) > 0 {
		d.Heading("Without a limit")
		d.Wrapped(theme.Plain, "", strings.Join(none, ", "), w)
	}
	d.Add()
	d.Wrapped(theme.Dim, "", Caution, w)
	return d
}

// uses writes the table of limits, each column as wide as it needs to be: the
// narrowest pane shows all of it.
func (l writer) uses(d *text.Lines, of []int, w int) {
	s, p := l.Solution, l.Problem
	more := len(of) - MaxRows
	of = of[:min(len(of), MaxRows)]
	rows := make([][4]string, len(of))
	head := [4]string{"force", "limit", "util.", "reserve"}
	name, wide := 0, [4]int{}
	for k, h := range head {
		wide[k] = grid.Width(h)
	}
	for n, k := range of {
		c := &s.Checks[k]
		rows[n] = [4]string{"unbounded", Bare(p, c.Bound, units.Force)}
		switch {
		case c.Open:
			rows[n][0] = "open"
		case Finite(c.Value):
			rows[n][0], rows[n][2] = Bare(p, c.Value, units.Force), units.Figures(100*c.Value/c.Bound, p.Figures)+"%"
			if c.Value > 0 {
				rows[n][3] = "×" + units.Figures(c.Bound/c.Value, p.Figures)
			}
		}
		name = max(name, min(grid.Width(c.Subject), 14))
		for k := range wide {
			wide[k] = max(wide[k], grid.Width(rows[n][k]))
		}
	}
	risky := l.couldExceed()
	before := len(checkMark(true, false, risky).Text) + name
	line := []text.Span{{Text: grid.Fit("", before)}}
	columns := len(head)
	if all := before + wide[0] + wide[1] + wide[2] + wide[3] + len(wide); all > w {
		columns-- // the reserve factor is the utilisation, said another way
	}
	for k, h := range head[:columns] {
		line = append(line, text.Span{Text: " " + grid.FitRight(h, wide[k]), Look: theme.Dim, By: ", "})
	}
	d.Add()
	says := "In " + p.Units.Force.Symbol + "; util. is the utilisation"
	if columns == len(head) {
		says += ", reserve the reserve factor"
	}
	d.Wrapped(theme.Head, "", says, w)
	d.Add(line...)
	for n, k := range of {
		c := &s.Checks[k]
		mark := checkMark(c.OK, l.Effects().CheckAtRisk(k), risky)
		line := []text.Span{mark, {Text: grid.Fit(c.Subject, name), Look: theme.Name, By: ": "}}
		for col, cell := range rows[n][:columns] {
			from := origin.Check(s, k)
			switch {
			case cell == "" || col == 0 && !c.Open && !Finite(c.Value):
				from = nil
			case col == 1:
				from = origin.Phrase("the limit of %[1]s, from its cell", c.Subject)
			}
			line = append(line, text.Apart(", ", text.Numeral(" "+grid.FitRight(cell, wide[col]), theme.Computed, from))...)
		}
		d.Add(line...)
	}
	if more > 0 {
		d.Plain(theme.Dim, fmt.Sprintf("... and %d more", more))
	}
}

// unlimited names what carries a force and has no limit, and apart from it the parts
// of one rope whose other part has one, each as "T2, as T1".
func (l writer) unlimited() (none, tied []string) {
	var rest, restTied int
	add := func(names *[]string, more *int, name string) {
		if len(*names) < maxCols {
			*names = append(*names, name)
		} else {
			*more++
		}
	}
	limited := map[ropeSize]string{}
	for i := range l.Problem.Lines {
		line := &l.Problem.Lines[i]
		if g, ok := legOf(line); ok && line.Limit > 0 && limited[g] == "" {
			limited[g] = line.Name
		}
	}
	for i := range l.Problem.Lines {
		line := &l.Problem.Lines[i]
		if !line.OK || line.Limit != 0 || !line.Kind.Info().Path {
			continue
		}
		if g, ok := legOf(line); ok && limited[g] != "" {
			add(&tied, &restTied, line.Name+", as "+limited[g])
		} else {
			add(&none, &rest, line.Name)
		}
	}
	for i := range l.Problem.Joints {
		if j := &l.Problem.Joints[i]; j.OK && j.Limit == 0 {
			add(&none, &rest, j.Name)
		}
	}
	if rest > 0 {
		none = append(none, fmt.Sprintf("and %d more", rest))
	}
	if restTied > 0 {
		tied = append(tied, fmt.Sprintf("and %d more", restTied))
	}
	return none, tied
}

// ropeSize is what lines of one size have in common. A cable and a strut of one unknown
// are no legs of one rope: what holds a pull may not hold a push.
type ropeSize struct {
	kind    problem.Kind
	unknown int
}

// legOf tells the unknown that a line's magnitude is, where it is nothing else.
func legOf(line *problem.Line) (ropeSize, bool) {
	alone := line.Magnitude.Alone()
	return ropeSize{line.Kind, alone}, line.OK && line.Kind.Info().Path && alone >= 0
}
