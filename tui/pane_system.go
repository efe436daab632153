package tui

import (
	"fmt"
	"math"

	"trivet/mechanics/statics"
	"trivet/tui/grid"
	"trivet/tui/theme"
	"trivet/units"
)

// A sheet may be far larger than anyone reads: what is shown of it is bounded,
// and says so.
const (
	mostRows = 200
	mostCols = 60
)

// caution is what the screen owes to whoever would lift a load by it.
const caution = "For teaching and quick checks: a static, rigid-body model with no dynamic, wind or shock allowance. " +
	"Capacities and factors come from the manufacturer and the code that applies; a qualified person decides."

// document writes the system, its solution and its checks.
func (l live) document(g theme.Glyphs, w int) doc {
	var d doc
	if l.solution == nil {
		d.text(theme.Dim, "No result yet.")
		if len(l.errs) > 0 {
			d.wrapped(theme.Bad, "! ", l.place(l.errs[0]), w)
		}
		return d
	}
	for i, words := range l.solution.Words() {
		look := theme.Plain
		if i == 0 {
			look = verdictLook(l.solution.Verdict)
		}
		d.wrapped(look, "", words, w)
	}
	s := l.solution
	l.matrix(&d, g)
	l.values(&d)
	l.legs(&d)
	l.order(&d, w)
	if len(s.Checks) > 0 {
		d.heading("Checks")
		l.checks(&d, w)
	}
	if len(s.Answers) > 0 {
		d.heading("Answers")
		for i, a := range s.Answers {
			if i == mostRows {
				d.text(theme.Dim, fmt.Sprintf("... and %d more", len(s.Answers)-i))
				break
			}
			d.marked(a.OK, a.Says(l.problem), w)
		}
	}
	if task := l.problem.Statement; task != "" {
		d.heading("Task")
		d.wrapped(theme.Plain, "", task, w)
	}
	d.add()
	d.wrapped(theme.Dim, "", caution, w)
	return d
}

// marked adds a check; its first word says what colour says too.
func (d *doc) marked(ok bool, says string, w int) {
	mark := seg{"ok    ", theme.Good}
	if !ok {
		mark = seg{"FAILS ", theme.Bad}
	}
	from := len(*d)
	d.wrapped(theme.Plain, grid.Fit("", len(mark.text)), says, w)
	first := (*d)[from][0]
	(*d)[from] = []seg{mark, {first.text[len(mark.text):], first.look}}
}

func verdictLook(v statics.Verdict) grid.Style {
	switch v {
	case statics.Determinate:
		return theme.Good
	case statics.Indeterminate:
		return theme.Warn
	}
	return theme.Bad
}

// values writes the solution vector.
func (l live) values(d *doc) {
	s, p := l.solution, l.problem
	if len(s.X) == 0 {
		return
	}
	d.heading("x")
	b := builder{live: l}
	for i, x := range s.X {
		if i == mostRows {
			d.text(theme.Dim, fmt.Sprintf("... and %d more", len(s.X)-i))
			return
		}
		line := []seg{{grid.Fit(x.Name, 8), theme.Name}, {" " + b.found(i), theme.Computed}}
		if i < len(p.Unknowns) && p.Unknowns[i].Own && x.Fixed {
			info := p.Lines[p.Unknowns[i].Line].Kind.Info()
			word := info.Positive
			if x.Value < 0 {
				word = info.Negative
			}
			if x.Value != 0 {
				line = append(line, seg{"  " + word, theme.Plain})
			}
		}
		if x.Broken {
			line = append(line, seg{"  ! cannot be", theme.Bad})
		}
		d.add(line...)
	}
}

// legs writes r, |r|, u and |u| of each line.
func (l live) legs(d *doc) {
	p := l.problem
	n := 0
	for i := range p.Lines {
		line := &p.Lines[i]
		if !line.OK {
			continue
		}
		for _, leg := range line.Legs {
			if n == 0 {
				d.heading("Lines   r and |r| in " + p.Units.Length.Symbol + ", u = r / |r|")
			}
			if n++; n > mostRows {
				d.text(theme.Dim, "... and more")
				return
			}
			name := line.Name
			if len(line.Legs) > 1 && leg.To >= 0 {
				name += " " + p.Points[leg.From].Name + "-" + p.Points[leg.To].Name
			}
			size := math.Sqrt(leg.U.X*leg.U.X + leg.U.Y*leg.U.Y + leg.U.Z*leg.U.Z)
			first := seg{grid.Fit(name, 8), theme.Name}
			if leg.To >= 0 {
				d.add(first, seg{" r = " + vector(p, leg.R, units.Length) + "  |r| = " + bare(p, leg.Length, units.Length), theme.Plain})
				first.text = grid.Fit("", 8)
			}
			d.add(first, seg{" u = " + unit(p, leg.U), theme.Computed}, seg{"  |u| = " + units.Decimals(size, cosines), theme.Plain})
		}
	}
}

// checks writes those that fail first.
func (l live) checks(d *doc, w int) {
	n := 0
	for _, want := range []bool{false, true} {
		for _, c := range l.solution.Checks {
			if c.OK != want {
				continue
			}
			if n++; n > mostRows {
				d.text(theme.Dim, fmt.Sprintf("... and %d more", len(l.solution.Checks)-n+1))
				return
			}
			d.marked(c.OK, c.Says(l.problem), w)
		}
	}
}
