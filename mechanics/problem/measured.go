package problem

import (
	"math"
	"slices"
	"strings"

	"gonum.org/v1/gonum/spatial/r3"

	"trivet/mechanics/diag"
	"trivet/mechanics/sheet"
	"trivet/units"
)

// Place is where a measured value a ± b stands: the cell, and a ± b in its text.
type Place struct {
	Ref  sheet.Ref
	Span diag.Span
}

// Measured is a value typed with its uncertainty, a ± b. What ± means is the
// user's: the limits of a measurement, or one standard deviation. It is taken as
// it is. b is in SI where the cell says its dimension, else in the sheet's unit.
type Measured struct {
	Place
	Name string // h, or x of A: what was measured
	Half string // b as typed, also in per cent, with the sheet's unit where that is what a bare number is in
}

// Words names it with its ±: "h (± 2 cm)".
func (m Measured) Words() string { return m.Name + " (± " + m.Half + ")" }

// Measured notes a ± of the cell that is read, once, and says by what part of it the
// value is moved.
func (e env) Measured(at diag.Span, half string, b units.Value) float64 {
	variants := e.cell.Key == "range" || e.cell.Key == "step"
	if e.cell == (sheet.Ref{}) || e.cell.Table == "answers" || variants {
		return 0
	}
	r, here := e.r, Place{e.cell, at}
	if !slices.ContainsFunc(r.p.Measured, func(m Measured) bool { return m.Place == here }) {
		m := Measured{Place: here, Half: strings.TrimSpace(half), Name: r.measuredName(here)}
		if k, ok := CellKey(here.Ref.Table, here.Ref.Row, here.Ref.Key); ok && b.Dim == units.Number && k.Dim != units.Number && !strings.HasSuffix(m.Half, "%") {
			m.Half = strings.TrimSpace(m.Half + " " + r.p.Units.For(k.Dim).Symbol)
		}
		r.p.Measured = append(r.p.Measured, m)
	}
	return r.moved[here]
}

// measuredName says what a measured value is: a given by its name, a coordinate by
// its axis and its point, anything else by its key and its row.
func (r *reading) measuredName(at Place) string {
	ref, axis := at.Ref, ""
	c, _ := r.s.Cell(ref)
	if e, err := r.Parse(c.Text); err == nil {
		parts, _ := e.Tuple()
		for k, part := range parts[:min(len(parts), 3)] {
			if s := part.Span(); s.Start <= at.Span.Start && at.Span.End <= s.End {
				axis = string("xyz"[k])
			}
		}
	}
	what := strings.TrimSpace(ref.Key + " " + axis)
	switch {
	case ref.Table == "given", ref.Table == "", what == "":
		return ref.Row
	case ref.Table == "points" && axis != "":
		what = axis
	case ref.Table == "points":
		what = "place"
	}
	return what + " of " + ref.Row
}

// Blocks tells whether the solution depends on the cell that does not read. What is
// only compared, asked for or drawn changes nothing of it.
func (e Error) Blocks() bool {
	switch {
	case e.Ref.Table == "answers", e.Ref.Table == "bodies" && e.Ref.Key == "outline":
		return false
	case e.Ref.Table == "":
		return e.Ref.Row != "asked" && e.Ref.Row != "title" && e.Ref.Row != "statement" && e.Ref.Row != "lesson"
	}
	return true
}

const (
	millimetre = 1e-3   // m
	inch       = 0.0254 // m
)

// Nudge is how far a point may be from where the sheet has it, in m and in words: by its
// ±, else, though its numbers are exact, by a tenth of a millimetre, which is what a good
// drawing and a careful fitter leave, or four thousandths of an inch where the sheet is in
// feet and inches.
func (p *Problem) Nudge(point int) (by float64, words string) {
	plus, unit, symbol, least := r3.Norm(p.Points[point].Plus), millimetre, " mm", 0.1
	if p.inches() {
		unit, symbol, least = inch, " in", 0.004
	}
	if plus > 0 {
		return plus, "its ± of " + units.Figures(plus/unit, 2) + symbol
	}
	return least * unit, units.Compact(least) + symbol
}

// inches tells that the sheet's lengths are whole multiples of an inch.
func (p *Problem) inches() bool {
	n := p.Units.Length.Factor / inch
	return n > 0.5 && abs(n-math.Round(n)) < 1e-9
}
