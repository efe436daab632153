package results

import (
	"fmt"
	"math"

	"trivet/mechanics/statics"
	"trivet/tui/grid"
	"trivet/tui/session"
	"trivet/tui/text"
	"trivet/tui/theme"
	"trivet/units"
)

// Blanks between the unknowns, and before what follows them.
const stripGap, tailGap = 2, 3

// stripMost is more unknowns than the strip of the widest screen has room for.
const stripMost = 64

// Strip is a line of what the sheet comes to: the unknowns with their senses as far as
// they fit, then the worst residual and the limit that governs.
func Strip(r *session.Result, w int) text.Lines { return writer{r}.strip(w) }

func (l writer) strip(w int) text.Lines {
	var line []text.Span
	p, n := l.Problem, len(l.Solution.X)
	if n > 0 {
		line = append(line, text.Span{Text: "in " + p.Units.Force.Symbol, Look: theme.Dim})
	}
	values, all := make([][]text.Span, 0, stripMost), length(line)
	for i := range min(n, stripMost) {
		values = append(values, l.stripValue(i))
		all += length(values[i])
	}
	tail := l.stripTail(true)
	if n > stripMost || all > w-length(tail) {
		tail = l.stripTail(false)
	}
	left := w - length(tail)
	whole := n <= stripMost && all <= left
	for i, one := range values {
		if !whole && length(line)+length(one)+stripGap+grid.Width(more(n-i-1)) > left {
			line = append(line, text.Span{Text: grid.Fit("", stripGap) + more(n-i), Look: theme.Dim})
			break
		}
		line = append(line, one...)
	}
	if gap := w - length(line) - length(tail); gap > 0 {
		line = append(line, text.Span{Text: grid.Fit("", gap)})
	}
	return text.Lines{append(line, tail...)}
}

func more(n int) string { return fmt.Sprintf("and %d more", n) }

func length(of []text.Span) (w int) {
	for _, s := range of {
		w += grid.Width(s.Text)
	}
	return w
}

// stripValue is an unknown's name, value and sense; a force goes without its unit.
func (l writer) stripValue(i int) []text.Span {
	p, x, u := l.Problem, l.Solution.X[i], &l.Problem.Unknowns[i]
	value := Found(l.Result, i)
	if u.Dim == units.Force {
		value = FoundBare(l.Result, i)
	}
	out := []text.Span{{Text: grid.Fit("", stripGap) + x.Name, Look: theme.Plain}, {Text: " " + value, Look: theme.Computed}}
	if u.Own && x.Fixed && x.Value != 0 {
		info := p.Lines[u.Line].Kind.Info()
		word := info.Positive
		if x.Value < 0 {
			word = info.Negative
		}
		switch word {
		case "tension":
			out = append(out, text.Span{Text: " T", Look: theme.Cable})
		case "compression":
			out = append(out, text.Span{Text: " C", Look: theme.Strut})
		}
	}
	if x.Broken {
		out = append(out, text.Span{Text: "!", Look: theme.Bad})
	}
	return out
}

// stripTail is the worst residual, and which limit governs; the whole of it with that limit.
func (l writer) stripTail(whole bool) (out []text.Span) {
	s, p := l.Solution, l.Problem
	gap := grid.Fit("", tailGap)
	worst := -1
	for i := range s.Residuals {
		if worst < 0 || math.Abs(s.Residuals[i].Relative) > math.Abs(s.Residuals[worst].Relative) {
			worst = i
		}
	}
	if worst >= 0 {
		says := "residual 0"
		if v, d := math.Abs(s.Residuals[worst].Value), s.System.Rows[worst].Dim(); v > 0 {
			says = fmt.Sprintf("residual %.0e", v/p.Units.For(d).Factor)
			if d != units.Force {
				says += " " + p.Units.For(d).Symbol
			}
		}
		out = append(out, text.Span{Text: gap + says, Look: theme.Dim})
	}
	governs := -1
	for k, c := range s.Checks {
		if c.Kind == statics.CheckLimit && !c.Open && Finite(c.Value) && c.Bound > 0 &&
			(governs < 0 || c.Value*s.Checks[governs].Bound > s.Checks[governs].Value*c.Bound) {
			governs = k
		}
	}
	if governs < 0 {
		return out
	}
	c := &s.Checks[governs]
	says, look := c.Subject+" governs: "+units.Figures(100*c.Value/c.Bound, p.Figures)+" %", theme.Good
	if whole {
		says += " of " + Format(p, c.Bound, units.Force)
	}
	switch {
	case !c.OK:
		says, look = "! "+says, theme.Bad
	case l.Effects().CheckAtRisk(governs):
		says, look = says+", at risk", theme.Warn
	}
	return append(out, text.Span{Text: gap + says, Look: look})
}
