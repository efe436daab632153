package problem

import (
	"strconv"
	"strings"

	"trivet/mechanics/sheet"
	"trivet/units"
)

// doubtBodies notes bodies that are most likely a misspelt word: of one point,
// without an entry of their own, named nearly like particle or another body. A body
// of one point is no error, so nothing is refused.
func (r *reading) doubtBodies() {
	for b := range r.p.Bodies {
		body := &r.p.Bodies[b]
		if _, own := r.s.Table("bodies").Row(body.Name); own || body.Particle || len(body.Points) != 1 {
			continue
		}
		meant := nearName(body.Name, particleWord)
		for k := range r.p.Bodies {
			if other := &r.p.Bodies[k]; meant == "" && k != b && !other.Particle && len(other.Points) > 1 {
				meant = nearName(body.Name, other.Name)
			}
		}
		if meant == "" {
			continue
		}
		pt := &r.p.Points[body.Points[0]]
		ref := sheet.Ref{Table: "points", Row: pt.Name, Key: "on"}
		cell, _ := r.s.Cell(ref)
		r.doubt(ref, BodyOfOnePoint, wordIn(cell.Text, body.Name), strconv.Quote(body.Name)+" is a body with the one point "+pt.Name, meant+", if that is meant")
	}
}

// nearName gives the name that another is most likely a slip of, or "": its first
// letters, other capitals, or a mistyped letter of a long one. Names told apart by
// their numbers, or short ones by a letter, are meant to differ.
func nearName(name, of string) string {
	const long = 4
	stem := func(s string) string { return strings.TrimRight(s, "0123456789") }
	switch {
	case name == of || stem(name) == stem(of):
		return ""
	case strings.EqualFold(name, of), len(name) > 1 && strings.HasPrefix(of, name):
		return of
	case len(name) >= long && units.Suggest(name, []string{of}) != "":
		return of
	}
	return ""
}
