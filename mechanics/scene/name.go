package scene

import (
	"slices"
	"strings"
	"unicode"

	"trivet/mechanics/drawing"
	"trivet/mechanics/problem"
	"trivet/units"
)

// Typeset sets a name as the working does: digits at its end are a subscript.
func Typeset(name string) []drawing.Run {
	base := strings.TrimRightFunc(name, unicode.IsDigit)
	if base == "" || base == name {
		return Italic(name)
	}
	return []drawing.Run{{Text: base, Style: drawing.Italic}, {Text: name[len(base):], Level: -1}}
}

// TypesetUnknown sets an unknown's name: the x in Ax of a joint A, or in Fx of a force by
// components, and the A in MA are subscripts.
func TypesetUnknown(p *problem.Problem, j int) []drawing.Run {
	u := &p.Unknowns[j]
	if u.Joint >= 0 && u.Dim == units.Moment {
		return []drawing.Run{{Text: "M", Style: drawing.Italic}, {Text: p.Joints[u.Joint].Name + u.Part, Style: drawing.Italic, Level: -1}}
	}
	return withPart(Typeset(strings.TrimSuffix(u.Name, u.Part)), u.Part)
}

// withPart sets a component of a named force.
func withPart(name []drawing.Run, part string) []drawing.Run {
	runs := slices.Clone(name)
	switch {
	case len(runs) == 2:
		runs[1].Text += part
	case part != "":
		runs = append(runs, drawing.Run{Text: part, Style: drawing.Italic, Level: -1})
	}
	return runs
}

// With puts words behind a symbol.
func With(runs []drawing.Run, words string) []drawing.Run {
	return append(append([]drawing.Run{}, runs...), drawing.Run{Text: words})
}

func Italic(s string) []drawing.Run { return []drawing.Run{{Text: s, Style: drawing.Italic}} }
func Plain(s string) []drawing.Run  { return []drawing.Run{{Text: s}} }

// frictionOf states a coefficient of friction, of a computed one as many figures as matter.
func frictionOf(mu float64) []drawing.Run {
	const long, enough = 6, 4
	text := units.Compact(mu)
	if len(text) > long {
		text = units.Figures(mu, enough)
	}
	return With(Italic("μ"), " = "+text)
}

// shortValue is a value in full where that is short, else to the sheet's figures.
func shortValue(unit units.Unit, si float64, figures int) string {
	const digits = 6
	short := units.Figures(unit.In(si), digits)
	if strings.Contains(short, ".") {
		short = strings.TrimRight(strings.TrimRight(short, "0"), ".")
	}
	if len(short) > digits {
		return unit.Format(si, max(figures, 3))
	}
	return short + " " + unit.Symbol
}
