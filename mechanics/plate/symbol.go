package plate

import (
	"strings"
	"unicode"

	"trivet/mechanics/ink"
	"trivet/mechanics/problem"
	"trivet/units"
)

// Symbol sets a name as the working does: digits at its end are a subscript.
func Symbol(name string) []ink.Run {
	base := strings.TrimRightFunc(name, unicode.IsDigit)
	if base == "" || base == name {
		return italic(name)
	}
	return []ink.Run{{Text: base, Style: ink.Italic}, {Text: name[len(base):], Level: -1}}
}

// UnknownName sets an unknown's name: of a joint A, the x in Ax and the A in MA
// are subscripts.
func UnknownName(p *problem.Problem, j int) []ink.Run {
	u := &p.Unknowns[j]
	if u.Joint < 0 {
		return Symbol(u.Name)
	}
	joint := p.Joints[u.Joint].Name
	runs := Symbol(joint)
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

// with puts words behind a symbol.
func with(runs []ink.Run, words string) []ink.Run {
	return append(append([]ink.Run{}, runs...), ink.Run{Text: words})
}

func italic(s string) []ink.Run { return []ink.Run{{Text: s, Style: ink.Italic}} }
func plain(s string) []ink.Run  { return []ink.Run{{Text: s}} }
