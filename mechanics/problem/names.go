package problem

import (
	"cmp"
	"slices"
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
	r.givenRows = Rows(r.s, "given")
	r.pointRows = Rows(r.s, "points")
	r.indexLines()
	r.givens = make(map[string]int, len(r.givenRows))
	r.points = make(map[string]int, len(r.pointRows))
	r.unknowns = make(map[string]int, len(r.lineRows))
	r.jointOf = map[string]int{}
	p.Givens = make([]Given, len(r.givenRows))
	p.Points = make([]Point, len(r.pointRows))
	r.usedGivens = make([]bool, len(r.givenRows))

	for i, row := range r.givenRows {
		ref := sheet.Ref{Table: "given", Row: row.Name}
		p.Givens[i] = Given{Name: row.Name, Ref: ref}
		r.givens[row.Name] = i
		r.checkName(ref, AGiven)
	}
	for i, row := range r.pointRows {
		ref := sheet.Ref{Table: "points", Row: row.Name}
		p.Points[i] = Point{Name: row.Name, Body: Ground, Ref: ref}
		r.points[row.Name] = i
		r.checkName(ref, APoint)
		if _, taken := r.givens[row.Name]; taken {
			r.usedTwice(ref, row.Name, "a point", "a given")
		}
	}
	for i := range p.Lines {
		l := &p.Lines[i]
		if l.Belt == nil || l.Belt.Lines[0] == i {
			r.checkName(l.Ref, ALine)
		}
		if l.Belt != nil {
			r.checkTensionName(l)
		}
	}
}

// indexLines notes the lines by name: one a row, and of a belt the two parts that run
// straight, named after it.
func (r *reading) indexLines() {
	rows := Rows(r.s, "lines")
	r.lines = make(map[string]int, len(rows))
	for _, row := range rows {
		ref := sheet.Ref{Table: "lines", Row: row.Name}
		parts := []Line{{Name: row.Name, Ref: ref}}
		if isBelt(row) {
			first := len(r.p.Lines)
			belt := &Belt{Name: row.Name, Lines: [2]int{first, first + 1}, Tight: -1}
			r.p.belts = append(r.p.belts, belt)
			parts = nil
			for _, name := range beltTensions(row.Name) {
				parts = append(parts, Line{Name: name, Ref: ref, Belt: belt})
			}
		}
		for _, l := range parts {
			if _, taken := r.lines[l.Name]; !taken {
				r.lines[l.Name] = len(r.p.Lines)
			}
			r.p.Lines, r.lineRows = append(r.p.Lines, l), append(r.lineRows, row)
		}
	}
}

// checkName refuses the name of a row that cells could not use.
func (r *reading) checkName(ref sheet.Ref, what Thing) {
	if err := nameFor(what, ref.Row); err != nil {
		r.fail(ref, diag.Span{}, err.Msg, err.Hint)
	}
}

// usedTwice refuses a name that two things would bear.
func (r *reading) usedTwice(ref sheet.Ref, name, one, other string) bool {
	return r.fail(ref, diag.Span{}, "the name "+name+" is used for "+one+" and for "+other, "rename one of them")
}

func isIdentifier(s string) bool {
	for i, c := range s {
		if c != '_' && !unicode.IsLetter(c) && (i == 0 || !unicode.IsDigit(c)) {
			return false
		}
	}
	return s != ""
}

// circle words the chain of names that leads back to its beginning.
func circle(chain []string, name string) string {
	i := max(slices.Index(chain, name), 0)
	return strings.Join(append(slices.Clone(chain[i:]), name), " → ")
}

// suggestion is the known name that a mistyped one most likely means, or the fallback.
func suggestion(wrong string, known []string, fallback string) string {
	return cmp.Or(units.Suggest(wrong, known), fallback)
}
