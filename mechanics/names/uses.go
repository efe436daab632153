package names

import (
	"slices"
	"strings"

	"trivet/mechanics/diag"
	"trivet/mechanics/problem"
	"trivet/mechanics/sheet"
	"trivet/units"
)

// Use is a place that uses a name, and what the name stands for there. InName
// tells that the place is the row's name (an answer's is a result; a joint
// without at is named after its point); else it is the text of the cell.
type Use struct {
	Ref    sheet.Ref
	InName bool
	Span   diag.Span
	problem.Named
}

// UsesOf gives every place of a sheet that uses the name of a thing, in the order of the
// text: the rows to think of before it is deleted. The row that the thing has itself is
// none. Cells that do not read are looked through as far as they go.
func UsesOf(s *sheet.Sheet, what problem.Thing, name string) []Use {
	return slices.DeleteFunc(symbolsOf(s).uses, func(u Use) bool { return u.Thing != what || u.Name != name })
}

// Definition gives the cell that defines the name under a cursor: of a point, a
// given, a line, a body, a joint, or the first magnitude that names an unknown.
// text is what stands in the cell now, typed or kept.
func Definition(s *sheet.Sheet, ref sheet.Ref, text string, cursor int) (sheet.Ref, bool) {
	if c, ok := s.Cell(ref); !ok || c.Text != text {
		s = s.With(ref, text)
	}
	x := symbolsOf(s)
	for _, u := range x.uses {
		if u.Ref == ref && !u.InName && u.Span.Start <= cursor && cursor <= u.Span.End {
			return x.named[u.Named].cell, true
		}
	}
	return sheet.Ref{}, false
}

// meanings says what a name in a cell may stand for, in the order in which completion
// offers it; where several things bear the name, the last is meant.
var meanings = map[problem.Reads][]problem.Thing{
	problem.ReadsPoint:     {problem.APoint},
	problem.ReadsPoints:    {problem.APoint},
	problem.ReadsBody:      {problem.ABody, problem.AParticle},
	problem.ReadsBodies:    {problem.ABody, problem.AParticle},
	problem.ReadsValue:     {problem.AGiven},
	problem.ReadsQuantity:  {problem.AGiven},
	problem.ReadsRange:     {problem.AGiven},
	problem.ReadsIntensity: {problem.AGiven},
	problem.ReadsVector:    {problem.AGiven, problem.APoint},
	problem.ReadsDirection: {problem.AGiven, problem.APoint},
	problem.ReadsMagnitude: {problem.ALine, problem.ACouple, problem.AnUnknown, problem.AGiven},
	problem.ReadsTension:   {problem.AnUnknown},
}

// place is a piece of a sheet's text where a name may stand, and what it may stand for.
type place struct {
	Use
	reads problem.Reads
	kinds []problem.Thing
}

// findUses goes over the sheet for the unknowns that magnitudes bring in, and then says
// what each name stands for.
func (x *symbols) findUses() {
	places := x.places()
	for _, at := range places {
		if _, known := x.meant(at); !known && at.reads == problem.ReadsMagnitude && problem.NameFor(problem.AnUnknown, at.Name) == nil {
			x.add(problem.AnUnknown, symbol{Named: problem.AnUnknown.Named(at.Name), cell: at.Ref})
		}
	}
	for _, at := range places {
		if sym, ok := x.meant(at); ok {
			at.Named = sym.Named
			x.uses = append(x.uses, at.Use)
		}
	}
}

// meant gives the symbol that a place names. Magnitudes and results may print a name
// with a subscript.
func (x *symbols) meant(at place) (symbol, bool) {
	switch at.reads {
	case problem.ReadsMagnitude, problem.ReadsTension, problem.ReadsResults:
		at.Name = problem.Unprinted(at.Name, func(name string) bool { return len(x.bearing(name)) > 0 })
	}
	return x.find(at.Name, at.kinds...)
}

// places gives every place of the sheet where a name may stand, in the order of the text.
func (x *symbols) places() (out []place) {
	for _, t := range x.s.Tables {
		for _, row := range problem.Rows(x.s, t.Name) {
			ref := sheet.Ref{Table: t.Name, Row: row.Name}
			switch {
			case t.Name == "answers" && row.Name != "source":
				out = append(out, resultPlaces(problem.Token{Span: diag.Whole(row.Name), Text: row.Name}, ref, true)...)
			case t.Name == "joints" && x.afterPoint(row.Name):
				out = append(out, place{Use{Ref: ref, InName: true, Span: diag.Whole(row.Name), Named: problem.Named{Name: row.Name}}, problem.ReadsPoint, meanings[problem.ReadsPoint]})
			}
			for _, c := range row.Cells {
				if k, ok := problem.CellKey(t.Name, row.Name, c.Key); ok && c.Readable {
					ref.Key = c.Key
					out = append(out, cellPlaces(ref, k.Reads, c.Text)...)
				}
			}
		}
	}
	return out
}

func cellPlaces(ref sheet.Ref, reads problem.Reads, text string) (out []place) {
	add := func(span diag.Span, kinds []problem.Thing) {
		out = append(out, place{Use{Ref: ref, Span: span, Named: problem.Named{Name: text[span.Start:span.End]}}, reads, kinds})
	}
	switch kinds := meanings[reads]; {
	case reads == problem.ReadsResults:
		for _, w := range problem.ResultNames(text) {
			out = append(out, resultPlaces(w, ref, false)...)
		}
	case reads >= problem.ReadsPoint && reads <= problem.ReadsBodies:
		for _, w := range problem.Fields(text) {
			if point := reads <= problem.ReadsPoints; point || w.Text != problem.ParticleWord && w.Text != problem.GroundWord {
				add(w.Span, kinds)
			}
		}
	case reads == problem.ReadsTension:
		add(trimmed(text), kinds)
	case kinds != nil && ref.Table != "": // g is read before there are names
		for _, m := range units.Mentions(text) {
			if m.Place && (reads == problem.ReadsVector || reads == problem.ReadsDirection || reads == problem.ReadsMagnitude) {
				add(m.Span, append(slices.Clone(kinds), problem.APoint))
			} else {
				add(m.Span, kinds)
			}
		}
	}
	return out
}

// resultPlaces gives what a result's name uses: the line of T1.x, both of angle(T1, T2),
// the body of boom.loads.x.
func resultPlaces(w problem.Token, ref sheet.Ref, inName bool) (out []place) {
	add := func(start, end int, kinds ...problem.Thing) {
		span := diag.Between(w.Start+start, w.Start+end)
		out = append(out, place{Use{Ref: ref, InName: inName, Span: span, Named: problem.Named{Name: w.Text[start:end]}}, problem.ReadsResults, kinds})
	}
	open := strings.IndexAny(w.Text, "|(")
	if open >= 0 && (w.Text[open] == '|' || strings.TrimSpace(w.Text[:open]) == "abs") {
		end := max(open+1, strings.LastIndexAny(w.Text, "|)"))
		return resultPlaces(problem.Token{Span: diag.Between(w.Start+open+1, w.Start+end), Text: w.Text[open+1 : end]}, ref, inName)
	}
	if open >= 0 {
		for _, arg := range problem.Split(w.Text[open+1:], func(c rune) bool { return c == ',' || c == ')' }) {
			if in := trimmed(arg.Text); in.Start < in.End {
				start := open + 1 + arg.Start
				add(start+in.Start, start+in.End, problem.AnUnknown, problem.AJoint, problem.ALine)
			}
		}
		return out
	}
	name := trimmed(w.Text)
	head, rest, dotted := strings.Cut(w.Text[name.Start:name.End], ".")
	switch end := name.Start + len(head); {
	case !dotted:
		add(name.Start, end, problem.ACouple, problem.ALine, problem.AnUnknown)
	case strings.HasPrefix(rest, "loads."):
		add(name.Start, end, problem.ABody, problem.AParticle)
	default:
		add(name.Start, end, problem.AnUnknown, problem.ALoad, problem.AJoint, problem.ALine)
	}
	return out
}

// trimmed is the span of a text without the blanks around it.
func trimmed(text string) diag.Span {
	start := len(text) - len(strings.TrimLeft(text, " \t\r\n"))
	return diag.Between(start, max(start, len(strings.TrimRight(text, " \t\r\n"))))
}
