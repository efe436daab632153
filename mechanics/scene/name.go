package scene

import (
	"slices"
	"strings"

	"trivet/mechanics/drawing"
	"trivet/mechanics/problem"
	"trivet/units"
)

// Typeset sets a name as a symbol.
func Typeset(name string) []drawing.Run {
	base, digits := problem.SymbolOf(name)
	if digits == "" {
		return Italic(base)
	}
	return append(Italic(base), drawing.Run{Text: digits, Level: -1})
}

// TypesetUnknown sets an unknown's name as a symbol.
func TypesetUnknown(p *problem.Problem, j int) []drawing.Run {
	name, part := p.SymbolOfUnknown(j)
	return withPart(Typeset(name), part)
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
	return slices.Concat(runs, Plain(words))
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
