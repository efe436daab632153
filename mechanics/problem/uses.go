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

// Uses gives every place of a sheet that uses a name for something of the sheet,
// in the order of the text: paths, at, on, expressions, asked, answers, joints
// that are named after their points. The rows that things have themselves are
// no uses. Cells that do not read are looked through as far as they go.
func Uses(s *sheet.Sheet) []Use { return thingsOf(s).uses() }

// UsesOf gives the uses of one thing: the rows to think of before it is deleted.
func UsesOf(s *sheet.Sheet, what Thing, name string) []Use {
	return slices.DeleteFunc(Uses(s), func(u Use) bool { return u.Thing != what || u.Name != name })
}

func (x *things) uses() []Use {
	var out []Use
	// Unknowns that magnitudes share are known by being used there first.
	for _, shared := range []bool{true, false} {
		out = nil
		for _, t := range x.s.Tables {
			for _, row := range Rows(x.s, t.Name) {
				out = x.rowUses(out, t.Name, row, shared)
			}
		}
	}
	return out
}

func (x *things) rowUses(out []Use, table string, row sheet.Row, onlyMagnitudes bool) []Use {
	ref := sheet.Ref{Table: table, Row: row.Name}
	switch {
	case onlyMagnitudes:
	case table == "answers" && row.Name != "source":
		out = x.result(out, Use{Ref: ref, InName: true}, row.Name, 0)
	case table == "joints" && x.afterPoint(row.Name):
		out = append(out, Use{ref, true, whole(row.Name), APoint, row.Name})
	}
	for _, c := range row.Cells {
		k, ok := cellKey(table, row.Name, c.Key)
		if !ok || !c.Readable || onlyMagnitudes && k.Reads != ReadsMagnitude {
			continue
		}
		ref.Key = c.Key
		out = x.cellUses(out, ref, k.Reads, c.Text)
	}
	return out
}

func (x *things) cellUses(out []Use, ref sheet.Ref, reads Reads, text string) []Use {
	add := func(span diag.Span, t Thing, name string) {
		if t != NoThing {
			out = append(out, Use{ref, false, span, t, name})
		}
	}
	switch reads {
	case ReadsPoint, ReadsPoints:
		for _, w := range fields(text) {
			if x.rows[APoint][w.text] {
				add(w.Span, APoint, w.text)
			}
		}
	case ReadsBody, ReadsBodies:
		for _, w := range fields(text) {
			add(w.Span, x.body(w.text), w.text)
		}
	case ReadsTension:
		if name := x.printedName(strings.TrimSpace(text)); x.owned[name].of == (thingName{ALine, ref.Row}) {
			add(trimmed(text), AnUnknown, name)
		}
	case ReadsResults:
		for _, w := range askedWords(text) {
			out = x.result(out, Use{Ref: ref}, w.text, w.Start)
		}
	case ReadsValue, ReadsQuantity, ReadsRange, ReadsVector, ReadsDirection, ReadsMagnitude, ReadsIntensity:
		if ref.Table == "" {
			break // g is read before there are names
		}
		for _, m := range units.Mentions(text) {
			if reads == ReadsMagnitude {
				m.Name = x.printedName(m.Name)
			}
			add(m.Span, x.inExpression(m, reads, ref), m.Name)
		}
	}
	return out
}

func (x *things) body(name string) Thing {
	switch {
	case name == particleWord, name == groundWord:
	case has(x.bodies, name):
		return ABody
	case x.particles[name]:
		return APoint
	}
	return NoThing
}

// inExpression says what a name in an expression stands for, as env does.
func (x *things) inExpression(m units.Mention, reads Reads, ref sheet.Ref) Thing {
	points := reads == ReadsVector || reads == ReadsDirection || reads == ReadsMagnitude
	switch {
	case m.Place && points && x.rows[APoint][m.Name]:
		return APoint
	case x.rows[AGiven][m.Name]:
		return AGiven
	case reads == ReadsVector || reads == ReadsDirection:
		if x.rows[APoint][m.Name] {
			return APoint
		}
	case reads == ReadsMagnitude:
		return x.inMagnitude(m.Name, ref)
	}
	return NoThing
}

func (x *things) inMagnitude(name string, ref sheet.Ref) Thing {
	_, isUnit := units.Find(name)
	switch {
	case x.rows[ALine][name]:
		return ALine
	case x.rows[ACouple][name]:
		return ACouple
	case x.owned[name].of != thingName{}:
		return AnUnknown
	case name == "g", isUnit, units.Reserved(name), !isIdentifier(name):
		return NoThing
	}
	if !has(x.shared, name) {
		x.shared[name] = ref
	}
	return AnUnknown
}

// result adds what a result's name uses: the line of T1.x, both of
// angle(T1, T2), the body of boom.loads.x.
func (x *things) result(out []Use, u Use, text string, at int) []Use {
	add := func(start, end int, kinds ...Thing) {
		name := x.printedName(text[start:end])
		for _, t := range kinds {
			ok := t == AnUnknown && x.unknown(name) || t <= ALoad && t != ABody && x.rows[t][name]
			if t == ABody {
				t = x.body(name)
				ok = t != NoThing
			}
			if ok {
				u.Span, u.Thing, u.Name = diag.Between(at+start, at+end), t, name
				out = append(out, u)
				return
			}
		}
	}
	if open := strings.IndexAny(text, "|("); open >= 0 && (text[open] == '|' || strings.TrimSpace(text[:open]) == "abs") {
		end := max(open+1, strings.LastIndexAny(text, "|)"))
		return x.result(out, u, text[open+1:end], at+open+1)
	}
	if open := strings.IndexByte(text, '('); open >= 0 {
		for _, w := range split(text[open+1:], func(c rune) bool { return c == ',' || c == ')' }) {
			if in := trimmed(w.text); in.Start < in.End {
				start := open + 1 + w.Start
				add(start+in.Start, start+in.End, ALine, AJoint, AnUnknown)
			}
		}
		return out
	}
	name := trimmed(text)
	head, rest, dotted := strings.Cut(text[name.Start:name.End], ".")
	kinds := []Thing{ALine, AJoint, ALoad, AnUnknown}
	switch {
	case !dotted:
		kinds = []Thing{AnUnknown, ALine, ACouple}
	case strings.HasPrefix(rest, "loads."):
		kinds = []Thing{ABody}
	}
	add(name.Start, name.Start+len(head), kinds...)
	return out
}

// printedName gives the name that a text prints with a subscript, as the reader of
// results does.
func (x *things) printedName(name string) string {
	return unprinted(name, func(name string) bool { return len(x.bearing(name)) > 0 })
}

func (x *things) unknown(name string) bool {
	return has(x.shared, name) || has(x.owned, name)
}
