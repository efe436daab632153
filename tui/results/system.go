// Package results writes what a sheet came to, in lines: the system, its checks, ranges and limits.
package results

import (
	"fmt"

	"gonum.org/v1/gonum/spatial/r3"

	"trivet/mechanics/doc"
	"trivet/mechanics/origin"
	"trivet/mechanics/statics"
	"trivet/tui/grid"
	"trivet/tui/session"
	"trivet/tui/text"
	"trivet/tui/theme"
	"trivet/units"
)

// A sheet may be far larger than anyone reads: what is shown of it is bounded,
// and says so.
const (
	MaxRows  = session.MaxRows
	maxCols  = 60
	maxTerms = 12 // of a row of a system with more columns
)

// Caution is what the screen owes to whoever would lift a load by it.
const Caution = "For teaching and quick checks: a static, rigid-body model with no dynamic, wind or shock allowance. " +
	"Capacities and factors come from the manufacturer and the code that applies; a qualified person decides."

// writer writes a result in lines.
type writer struct{ *session.Result }

// System writes the verdict, A x = b, its solution and the lines.
func System(r *session.Result, g theme.Glyphs, w int) text.Lines { return writer{r}.system(g, w) }

// Checks writes the checks and the reference answers, those that fail first.
func Checks(r *session.Result, w int) text.Lines { return writer{r}.checked(w) }

// Ranges writes what equilibrium and admissibility leave of each unknown, and the ± of each result.
func Ranges(r *session.Result, w int) text.Lines { return writer{r}.ranges(w) }

// Limits writes each limit with its utilisation, and what has none.
func Limits(r *session.Result, w int) text.Lines { return writer{r}.limits(w) }

// Order writes which equations give which unknowns, one after the other.
func Order(r *session.Result, d *text.Lines, w int) { writer{r}.order(d, w) }

// system writes the verdict, A x = b, its solution and the lines.
func (l writer) system(g theme.Glyphs, w int) text.Lines {
	var d text.Lines
	for i, words := range l.Solution.Words() {
		look := theme.Plain
		if i == 0 {
			look = VerdictLook(l.Solution.Verdict)
			if l.Unconnected() != "" {
				look = theme.Warn // it is on its way
			}
		}
		d.Wrapped(look, "", words, w)
	}
	l.matrix(&d, g, w)
	l.values(&d)
	l.segments(&d)
	l.order(&d, w)
	if task := l.Problem.Statement; task != "" {
		d.Heading("Task")
		d.Wrapped(theme.Plain, "", task, w)
	}
	if lesson := l.Problem.Lesson; lesson != "" {
		d.Heading("Lesson")
		d.Wrapped(theme.Plain, "", lesson, w)
	}
	d.Add()
	d.Wrapped(theme.Dim, "", Caution, w)
	return d
}

// marked adds a check; its first word says what colour says too.
func marked(d *text.Lines, ok bool, says string, of doc.Origin, w int) {
	mark := checkMark(ok, false, false)
	mark.Of = of
	d.Behind(mark, ", ", theme.Plain, says, w)
}

// checkMark is what stands before a check: risk where it holds as typed and not within
// the ± of the inputs, wide where another one beside it has that mark.
func checkMark(ok, risk, wide bool) text.Span {
	mark := text.Span{Text: "ok", Look: theme.Good}
	switch {
	case !ok:
		mark = text.Span{Text: "FAILS", Look: theme.Bad}
	case risk:
		mark = text.Span{Text: "at risk", Look: theme.Warn}
	}
	width := len("FAILS")
	if wide {
		width = len("at risk")
	}
	mark.Text = grid.Fit(mark.Text, width) + " "
	return mark
}

func VerdictLook(v statics.Verdict) grid.Style {
	switch v {
	case statics.Determinate, statics.Resultant:
		return theme.Good
	case statics.Indeterminate:
		return theme.Warn
	}
	return theme.Bad
}

// values writes the solution vector.
func (l writer) values(d *text.Lines) {
	s, p := l.Solution, l.Problem
	if len(s.X) == 0 {
		return
	}
	d.Heading("x")
	var store text.Store
	for i, x := range s.X {
		if i == MaxRows {
			d.Plain(theme.Dim, fmt.Sprintf("... and %d more", len(s.X)-i))
			return
		}
		line := append(store.Line(5), text.Span{Text: grid.Fit(x.Name, 8), Look: theme.Name})
		line = found(l.Result, append(line, text.Span{Text: " "}), i, "..")
		if i < len(p.Unknowns) && p.Unknowns[i].Own && x.Fixed {
			info := p.Lines[p.Unknowns[i].Line].Kind.Info()
			word := info.Positive
			if x.Value < 0 {
				word = info.Negative
			}
			if x.Value != 0 {
				line = append(line, text.Span{Text: "  " + word, Look: theme.Plain})
			}
		}
		if x.Broken {
			line = append(line, text.Span{Text: "  ! inadmissible", Look: theme.Bad})
		}
		d.Add(line...)
	}
}

// segments writes r, |r|, u and |u| of each line.
func (l writer) segments(d *text.Lines) {
	p := l.Problem
	n := 0
	var store text.Store
	axes := 3
	if p.Planar {
		axes = 2
	}
	room := 2*(axes+1) + 1 // of the pieces of a line
	for i := range p.Lines {
		line := &p.Lines[i]
		if !line.OK {
			continue
		}
		for k, g := range line.Legs {
			if n == 0 {
				d.Heading("Lines   r and |r| in " + p.Units.Length.Symbol + ", u = r / |r|")
			}
			if n++; n > MaxRows {
				d.Plain(theme.Dim, "... and more")
				return
			}
			name := line.Name
			if len(line.Legs) > 1 && g.To >= 0 {
				name += " " + p.Points[g.From].Name + "-" + p.Points[g.To].Name
			}
			first := text.Span{Text: grid.Fit(name, 8), Look: theme.Name}
			put := func(look grid.Style, name string, vector origin.Part, parts []string, size origin.Part, magnitude string) {
				out := append(store.Line(room), first)
				before := " " + name + " = ("
				for n, part := range parts {
					out = append(out, text.Span{Text: before, Look: look}, text.Numeral(part, look, origin.Segment(l.Solution, i, k, vector, n)))
					before = ", "
				}
				out = append(out, text.Span{Text: ")  |" + name + "| = ", Look: look}, text.Numeral(magnitude, look, origin.Segment(l.Solution, i, k, size, 0)))
				d.Add(out...)
			}
			if g.To >= 0 {
				put(theme.Plain, "r", origin.R, Components(p, g.R, units.Length), origin.Length, Bare(p, g.Length, units.Length))
				first.Text = grid.Fit("", 8)
			}
			put(theme.Computed, "u", origin.U, components(p, g.U, cosine), origin.Unit, cosine(r3.Norm(g.U)))
		}
	}
}
