package results

import (
	"fmt"
	"slices"

	"trivet/mechanics/origin"
	"trivet/mechanics/statics"
	"trivet/mechanics/uncertainty"
	"trivet/tui/grid"
	"trivet/tui/text"
	"trivet/tui/theme"
	"trivet/units"
)

// effectLines writes what the ± of the inputs does to the results: the ± of each where
// they err independently, and the ends of the worst case.
func (l writer) effectLines(d *text.Lines, w int) {
	if !l.Uncertain() {
		return
	}
	d.Heading("Effect of measurement tolerance")
	t := l.Effects()
	switch {
	case l.Weighed.Of == l.Solution && l.Weighed.Fault != "":
		d.Wrapped(theme.Bad, "! ", "the effect of the ± could not be computed (fault: "+l.Weighed.Fault+")", w)
		return
	case t == nil:
		d.Plain(theme.Dim, "Computing the effect of the ± ...")
		return
	}
	for _, says := range t.Notes() {
		d.Wrapped(theme.Warn, "! ", says, w)
	}
	for _, says := range t.AtRisk() {
		d.Wrapped(theme.Warn, "at risk: ", says, w)
	}
	n, rest, wide := 0, 0, 8
	for k := range t.Spreads {
		wide = max(wide, min(grid.Width(t.Spreads[k].Label()), 16))
	}
	for k := range t.Spreads {
		y := &t.Spreads[k]
		if !y.Changed {
			continue
		}
		if n++; n > MaxRows {
			rest++
			continue
		}
		if n == 1 {
			d.Plain(theme.Dim, grid.Fit("", wide+1)+"±, independent; worst case")
		}
		low, high := t.Ends(y)
		line := append([]text.Span{{Text: grid.Fit(y.Label(), wide) + " ", Look: theme.Name}}, text.Apart(", ", text.Numeral(t.PlusText(y), theme.Computed, origin.Spread(t, k, uncertainty.Single)))...)
		if y.Bounded() {
			line = append(line, text.Span{Text: "; "}, text.Numeral(low, theme.Computed, origin.Spread(t, k, uncertainty.Least)),
				text.Span{Text: " to "}, text.Numeral(high, theme.Computed, origin.Spread(t, k, uncertainty.Greatest)))
		}
		d.Add(line...)
	}
	if rest > 0 {
		d.Plain(theme.Dim, fmt.Sprintf("... and %d more", rest))
	}
	if n == 0 && len(t.Spreads) > 0 {
		d.Plain(theme.Plain, "No result is changed by the ±.")
	}
	if !t.TooMany {
		d.Wrapped(theme.Dim, "", t.Searched(), w)
	}
}

// worstUses writes the utilisation of each limit with all inputs at their adverse ends.
func (l writer) worstUses(d *text.Lines, w int) {
	if !l.Uncertain() {
		return
	}
	t := l.Effects()
	if t == nil {
		if l.Weighed.Of != l.Solution {
			d.Heading("Worst case within the ± of the inputs")
			d.Plain(theme.Dim, "Computing the effect of the ± ...")
		}
		return
	}
	n := 0
	for k := range t.Checks {
		r := &t.Checks[k]
		c := l.Solution.Checks[r.Check]
		if c.Kind != statics.CheckLimit || r.Mostly < 0 {
			continue
		}
		if n++; n == 1 {
			d.Heading("Worst case within the ± of the inputs")
		}
		if n > MaxRows {
			d.Plain(theme.Dim, "... and more")
			return
		}
		mark := checkMark(c.OK, t.Risks(r), l.couldExceed())
		says := "unbounded"
		if Finite(r.Value) {
			says = l.Problem.Units.Force.Format(r.Value, l.Problem.Figures) + ", " + units.Figures(100*r.Value/r.Bound, l.Problem.Figures) + "%"
		}
		name := grid.Fit(c.Subject, min(max(grid.Width(c.Subject), 8), 14))
		d.Add(append([]text.Span{mark, {Text: name + " ", Look: theme.Name, By: ": "}}, text.Apart(", ", text.Numeral(says, theme.Computed, origin.Reach(t, k)))...)...)
	}
}

// couldExceed tells that a limit which is kept is passed at the worst.
func (l writer) couldExceed() bool {
	t := l.Effects()
	if t == nil {
		return false
	}
	return slices.ContainsFunc(t.Checks, func(r uncertainty.Reach) bool {
		return l.Solution.Checks[r.Check].Kind == statics.CheckLimit && t.Risks(&r)
	})
}
