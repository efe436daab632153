package scene

import (
	"strings"
	"unicode"

	"trivet/mechanics/ink"
	"trivet/mechanics/problem"
	"trivet/units"
)

// Typeset sets a name as the working does: digits at its end are a subscript.
func Typeset(name string) []ink.Run {
	base := strings.TrimRightFunc(name, unicode.IsDigit)
	if base == "" || base == name {
		return Italic(name)
	}
	return []ink.Run{{Text: base, Style: ink.Italic}, {Text: name[len(base):], Level: -1}}
}

// TypesetUnknown sets an unknown's name: the x in Ax of a joint A, or in Fx of a force by
// components, and the A in MA are subscripts.
func TypesetUnknown(p *problem.Problem, j int) []ink.Run {
	u := &p.Unknowns[j]
	if u.Joint >= 0 && u.Dim == units.Moment {
		return []ink.Run{{Text: "M", Style: ink.Italic}, {Text: p.Joints[u.Joint].Name + u.Part, Style: ink.Italic, Level: -1}}
	}
	return typesetPart(strings.TrimSuffix(u.Name, u.Part), u.Part)
}

// typesetPart sets a component of a named force.
func typesetPart(name, part string) []ink.Run {
	runs := Typeset(name)
	switch {
	case len(runs) == 2:
		runs[1].Text += part
	case part != "":
		runs = append(runs, ink.Run{Text: part, Style: ink.Italic, Level: -1})
	}
	return runs
}

// With puts words behind a symbol.
func With(runs []ink.Run, words string) []ink.Run {
	return append(append([]ink.Run{}, runs...), ink.Run{Text: words})
}

func Italic(s string) []ink.Run { return []ink.Run{{Text: s, Style: ink.Italic}} }
func Plain(s string) []ink.Run  { return []ink.Run{{Text: s}} }

// frictionOf states a coefficient of friction.
func frictionOf(mu float64) []ink.Run { return With(Italic("μ"), " = "+units.Compact(mu)) }

// shortLength is a length in full where that is short, else to the sheet's figures.
func shortLength(unit units.Unit, m float64, figures int) string {
	const digits = 6
	short := units.Figures(unit.In(m), digits)
	if strings.Contains(short, ".") {
		short = strings.TrimRight(strings.TrimRight(short, "0"), ".")
	}
	if len(short) > digits {
		return unit.Format(m, max(figures, 3))
	}
	return short + " " + unit.Symbol
}
