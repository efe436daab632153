package scene

import (
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

// TypesetUnknown sets an unknown's name: of a joint A, the x in Ax and the A in MA
// are subscripts.
func TypesetUnknown(p *problem.Problem, j int) []drawing.Run {
	u := &p.Unknowns[j]
	if u.Joint < 0 {
		return Typeset(u.Name)
	}
	joint := p.Joints[u.Joint].Name
	runs := Typeset(joint)
	switch {
	case u.Dim == units.Moment:
		return []drawing.Run{{Text: "M", Style: drawing.Italic}, {Text: joint + u.Part, Style: drawing.Italic, Level: -1}}
	case len(runs) == 2:
		runs[1].Text += u.Part
	case u.Part != "":
		runs = append(runs, drawing.Run{Text: u.Part, Style: drawing.Italic, Level: -1})
	}
	return runs
}

// With puts words behind a symbol.
func With(runs []drawing.Run, words string) []drawing.Run {
	return append(append([]drawing.Run{}, runs...), drawing.Run{Text: words})
}

func Italic(s string) []drawing.Run { return []drawing.Run{{Text: s, Style: drawing.Italic}} }
func Plain(s string) []drawing.Run  { return []drawing.Run{{Text: s}} }

// frictionName is the name of a joint's friction force where slip is impending.
func frictionName(j *problem.Joint) []drawing.Run {
	return []drawing.Run{{Text: "F", Style: drawing.Italic}, {Text: j.Name, Style: drawing.Italic, Level: -1}}
}

// frictionOf states a coefficient of friction.
func frictionOf(mu float64) []drawing.Run { return With(Italic("μ"), " = "+units.Compact(mu)) }

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
