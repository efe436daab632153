package problem

import (
	"slices"
	"strings"

	"trivet/mechanics/diag"
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
	Thing  Thing
	Name   string
}

// UsesOf gives every place of a sheet that uses the name of a thing, in the order of the
// text: the rows to think of before it is deleted. The row that the thing has itself is
// none. Cells that do not read are looked through as far as they go.
func UsesOf(s *sheet.Sheet, what Thing, name string) []Use {
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
			return x.named[thingName{u.Thing, u.Name}].cell, true
		}
	}
	return sheet.Ref{}, false
}

// meanings says what a name in a cell may stand for, in the order in which completion
// offers it; where several things bear the name, the last is meant.
var meanings = map[Reads][]Thing{
	ReadsPoint:     {APoint},
	ReadsPoints:    {APoint},
	ReadsBody:      {ABody, aParticle},
	ReadsBodies:    {ABody, aParticle},
	ReadsValue:     {AGiven},
	ReadsQuantity:  {AGiven},
	ReadsRange:     {AGiven},
	ReadsIntensity: {AGiven},
	ReadsVector:    {AGiven, APoint},
	ReadsDirection: {AGiven, APoint},
	ReadsMagnitude: {ALine, ACouple, AnUnknown, AGiven},
	ReadsTension:   {AnUnknown},
}

// place is a piece of a sheet's text where a name may stand, and what it may stand for.
type place struct {
	Use
	reads Reads
	kinds []Thing
}

// findUses goes over the sheet for the unknowns that magnitudes bring in, and then says
// what each name stands for.
func (x *symbols) findUses() {
	places := x.places()
	for _, at := range places {
		if _, known := x.meant(at); known || at.reads != ReadsMagnitude {
			continue
		}
		if _, isUnit := units.Find(at.Name); at.Name != "g" && !isUnit && !units.Reserved(at.Name) && isIdentifier(at.Name) {
			x.add(AnUnknown, symbol{thingName: thingName{AnUnknown, at.Name}, cell: at.Ref})
		}
	}
	for _, at := range places {
		if sym, ok := x.meant(at); ok {
			at.Thing, at.Name = sym.Thing, sym.name
			x.uses = append(x.uses, at.Use)
		}
	}
}

// meant gives the symbol that a place names. Magnitudes and results may print a name
// with a subscript.
func (x *symbols) meant(at place) (symbol, bool) {
	switch at.reads {
	case ReadsMagnitude, ReadsTension, ReadsResults:
		at.Name = unprinted(at.Name, func(name string) bool { return len(x.bearing(name)) > 0 })
	}
	return x.find(at.Name, at.kinds...)
}

// places gives every place of the sheet where a name may stand, in the order of the text.
func (x *symbols) places() (out []place) {
	for _, t := range x.s.Tables {
		for _, row := range Rows(x.s, t.Name) {
			ref := sheet.Ref{Table: t.Name, Row: row.Name}
			switch {
			case t.Name == "answers" && row.Name != "source":
				out = append(out, resultPlaces(word{whole(row.Name), row.Name}, ref, true)...)
			case t.Name == "joints" && x.afterPoint(row.Name):
				out = append(out, place{Use{Ref: ref, InName: true, Span: whole(row.Name), Name: row.Name}, ReadsPoint, meanings[ReadsPoint]})
			}
			for _, c := range row.Cells {
				if k, ok := cellKey(t.Name, row.Name, c.Key); ok && c.Readable {
					ref.Key = c.Key
					out = append(out, cellPlaces(ref, k.Reads, c.Text)...)
				}
			}
		}
	}
	return out
}

func cellPlaces(ref sheet.Ref, reads Reads, text string) (out []place) {
	add := func(span diag.Span, kinds []Thing) {
		out = append(out, place{Use{Ref: ref, Span: span, Name: text[span.Start:span.End]}, reads, kinds})
	}
	switch kinds := meanings[reads]; {
	case reads == ReadsResults:
		for _, w := range askedWords(text) {
			out = append(out, resultPlaces(w, ref, false)...)
		}
	case reads >= ReadsPoint && reads <= ReadsBodies:
		for _, w := range fields(text) {
			if point := reads <= ReadsPoints; point || w.text != particleWord && w.text != groundWord {
				add(w.Span, kinds)
			}
		}
	case reads == ReadsTension:
		add(trimmed(text), kinds)
	case kinds != nil && ref.Table != "": // g is read before there are names
		for _, m := range units.Mentions(text) {
			if m.Place && (reads == ReadsVector || reads == ReadsDirection || reads == ReadsMagnitude) {
				add(m.Span, append(slices.Clone(kinds), APoint))
			} else {
				add(m.Span, kinds)
			}
		}
	}
	return out
}

// resultPlaces gives what a result's name uses: the line of T1.x, both of angle(T1, T2),
// the body of boom.loads.x.
func resultPlaces(w word, ref sheet.Ref, inName bool) (out []place) {
	add := func(start, end int, kinds ...Thing) {
		span := diag.Between(w.Start+start, w.Start+end)
		out = append(out, place{Use{Ref: ref, InName: inName, Span: span, Name: w.text[start:end]}, ReadsResults, kinds})
	}
	open := strings.IndexAny(w.text, "|(")
	if open >= 0 && (w.text[open] == '|' || strings.TrimSpace(w.text[:open]) == "abs") {
		end := max(open+1, strings.LastIndexAny(w.text, "|)"))
		return resultPlaces(word{diag.Between(w.Start+open+1, w.Start+end), w.text[open+1 : end]}, ref, inName)
	}
	if open >= 0 {
		for _, arg := range split(w.text[open+1:], func(c rune) bool { return c == ',' || c == ')' }) {
			if in := trimmed(arg.text); in.Start < in.End {
				start := open + 1 + arg.Start
				add(start+in.Start, start+in.End, AnUnknown, AJoint, ALine)
			}
		}
		return out
	}
	name := trimmed(w.text)
	head, rest, dotted := strings.Cut(w.text[name.Start:name.End], ".")
	switch end := name.Start + len(head); {
	case !dotted:
		add(name.Start, end, ACouple, ALine, AnUnknown)
	case strings.HasPrefix(rest, "loads."):
		add(name.Start, end, ABody, aParticle)
	default:
		add(name.Start, end, AnUnknown, ALoad, AJoint, ALine)
	}
	return out
}

// trimmed is the span of a text without the blanks around it.
func trimmed(text string) diag.Span {
	start := len(text) - len(strings.TrimLeft(text, " \t\r\n"))
	return diag.Between(start, max(start, len(strings.TrimRight(text, " \t\r\n"))))
}
