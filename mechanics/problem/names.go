package problem

import (
	"cmp"
	"strconv"
	"strings"
	"unicode"

	"trivet/mechanics/diag"
	"trivet/mechanics/sheet"
	"trivet/units"
)

// indexNames notes which names the sheet has before anything is read, so that
// cells may refer to rows further down.
func (r *reading) indexNames() {
	p := r.p
	for i, w := range r.rowsOf(AGiven) {
		p.Givens = append(p.Givens, Given{Entry: w.entry(AGiven, i)})
		r.checkName(w.ref, AGiven)
	}
	for i, w := range r.rowsOf(APoint) {
		p.Points = append(p.Points, Point{Entry: w.entry(APoint, i), Body: Ground})
		r.checkName(w.ref, APoint)
		if r.has(AGiven, w.Name) {
			r.usedTwice(w.ref, w.Name, "a point", "a given")
		}
	}
	r.indexLines()
}

// indexLines notes the lines by name: one a row, and of a belt the two parts that run
// straight, named after it.
func (r *reading) indexLines() {
	for _, w := range r.rowsOf(ALine) {
		r.checkName(w.ref, ALine)
		var belt *Belt
		if first := len(r.p.Lines); IsBelt(w.Row) {
			belt = &Belt{Name: w.Name, Lines: [2]int{first, first + 1}, Tight: -1}
			r.p.belts = append(r.p.belts, belt)
		}
		for _, name := range LinesOf(w.Row) {
			if !has(r.p.index, Named{ALine, name}) {
				r.note(ALine, name, len(r.p.Lines))
			}
			l := Line{Entry: Entry{Name: name, Ref: w.ref}, Belt: belt}
			if belt != nil {
				if other := r.namesakeOf(&l); other != "" {
					w.fail("the name "+name+" is used twice: for "+other+" and for a tension of the belt "+w.Name, "another name for one of them")
				}
			}
			r.p.Lines = append(r.p.Lines, l)
		}
	}
}

// note keeps the index of a thing by its name.
func (r *reading) note(what Thing, name string, i int) int {
	r.p.index[Named{what, name}] = i
	return i
}

// find gives the index of a thing by its name.
func (r *reading) find(what Thing, name string) (i int, ok bool) {
	i, ok = r.p.index[Named{what, name}]
	return i, ok
}

// has tells whether something of a kind bears a name; a belt is a line too.
func (r *reading) has(what Thing, name string) bool {
	return has(r.p.index, Named{what, name}) || what == ALine && r.p.belt(name) != nil
}

func (r *reading) isGiven(name string) bool { return r.has(AGiven, name) }
func (r *reading) isPoint(name string) bool { return r.has(APoint, name) }

// checkName refuses the name of a row that cells could not use.
func (r *reading) checkName(ref sheet.Ref, what Thing) {
	if err := NameFor(what, ref.Row); err != nil {
		r.failed(ref, err)
	}
}

// NameFor refuses what cannot be a name of such a thing.
func NameFor(what Thing, name string) *diag.Error {
	_, isUnit := units.Find(name)
	word := name != "" && !strings.ContainsFunc(name, func(c rune) bool { return unicode.IsSpace(c) || strings.ContainsRune(",().\"?", c) })
	hint := ""
	switch {
	case what == AGiven && !IsIdentifier(name):
		return diag.New(strconv.Quote(name)+" cannot be used as a name in a cell", "letters, digits and _, beginning with a letter")
	case what == AGiven && isUnit && name != "g":
		return diag.New("a given cannot be named "+name+", which is a unit", name+"1")
	case !word:
		hint = "one word without , ( ) . ? or quotes"
	case what == AnUnknown && (!IsIdentifier(name) || isUnit || units.Reserved(name) || name == "g"):
		hint = "letters, digits and _, beginning with a letter, that are not a unit"
	case what == ABody && (name == ParticleWord || name == GroundWord):
		hint = "another name"
	default:
		return nil
	}
	return diag.New(strconv.Quote(name)+" cannot be the name of "+what.One(), hint)
}

// usedTwice refuses a name that two things would bear.
func (r *reading) usedTwice(ref sheet.Ref, name, one, other string) bool {
	return r.fail(ref, diag.Span{}, "the name "+name+" is used for "+one+" and for "+other, "rename one of them")
}

func IsIdentifier(s string) bool {
	for i, c := range s {
		if c != '_' && !unicode.IsLetter(c) && (i == 0 || !unicode.IsDigit(c)) {
			return false
		}
	}
	return s != ""
}

// suggestion is the known name that a mistyped one most likely means, or the fallback.
func suggestion(wrong string, known []string, fallback string) string {
	return cmp.Or(units.Suggest(wrong, known), fallback)
}

// SymbolOf is a name as a symbol: digits at its end are a subscript.
func SymbolOf(name string) (base, digits string) {
	base = strings.TrimRightFunc(name, unicode.IsDigit)
	if base == "" {
		return name, ""
	}
	return base, name[len(base):]
}

// SymbolOfUnknown is an unknown's name as a symbol's name with what is added to its subscript: the x in Ax of
// a joint A, or in Fx of a force by components, the A in MA and the Az in MAz.
func (p *Problem) SymbolOfUnknown(j int) (name, part string) {
	u := &p.Unknowns[j]
	if u.Joint >= 0 && u.Dim == units.Moment {
		return "M", p.Joints[u.Joint].Name + u.Part
	}
	return strings.TrimSuffix(u.Name, u.Part), u.Part
}
