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

// TypesetUnknown sets an unknown's name: of a joint A, the x in Ax and the A in MA
// are subscripts.
func TypesetUnknown(p *problem.Problem, j int) []ink.Run {
	u := &p.Unknowns[j]
	if u.Joint < 0 {
		return Typeset(u.Name)
	}
	joint := p.Joints[u.Joint].Name
	runs := Typeset(joint)
	switch {
	case u.Dim == units.Moment:
		return []ink.Run{{Text: "M", Style: ink.Italic}, {Text: joint + u.Part, Style: ink.Italic, Level: -1}}
	case len(runs) == 2:
		runs[1].Text += u.Part
	case u.Part != "":
		runs = append(runs, ink.Run{Text: u.Part, Style: ink.Italic, Level: -1})
	}
	return runs
}

// With puts words behind a symbol.
func With(runs []ink.Run, words string) []ink.Run {
	return append(append([]ink.Run{}, runs...), ink.Run{Text: words})
}

func Italic(s string) []ink.Run { return []ink.Run{{Text: s, Style: ink.Italic}} }
func Plain(s string) []ink.Run  { return []ink.Run{{Text: s}} }

// frictionName is the name of a joint's friction force where slip is impending.
func frictionName(j *problem.Joint) []ink.Run {
	return []ink.Run{{Text: "F", Style: ink.Italic}, {Text: j.Name, Style: ink.Italic, Level: -1}}
}

// frictionOf states a coefficient of friction, of a computed one as many figures as matter.
func frictionOf(mu float64) []ink.Run {
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
