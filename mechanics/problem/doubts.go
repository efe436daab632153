package problem

import (
	"strconv"
	"strings"

	"trivet/mechanics/sheet"
	"trivet/units"
)

// doubtBodies notes bodies that are most likely a misspelt word. A body of one point is no
// error, so nothing is refused.
func (r *reading) doubtBodies() {
	for i := range r.p.Bodies {
		if meant := r.misspeltBody(i); meant != "" {
			body := &r.p.Bodies[i]
			pt := &r.p.Points[body.Points[0]]
			ref := sheet.Ref{Table: "points", Row: pt.Name, Key: "on"}
			cell, _ := r.s.Cell(ref)
			r.doubt(ref, BodyOfOnePoint, wordIn(cell.Text, body.Name), strconv.Quote(body.Name)+" is a body with the one point "+pt.Name, meant+", if that is meant")
		}
	}
}

// misspeltBody is what the name of a body most likely means, "" where it is one: particle
// or another body, where it has one point, no entry of its own and nearly that name.
func (r *reading) misspeltBody(i int) string {
	body := &r.p.Bodies[i]
	if _, own := r.s.Table("bodies").Row(body.Name); own || body.Particle || len(body.Points) != 1 {
		return ""
	}
	meant := NearName(body.Name, ParticleWord)
	for k, other := range r.p.Bodies {
		if meant == "" && k != i && !other.Particle && len(other.Points) > 1 {
			meant = NearName(body.Name, other.Name)
		}
	}
	return meant
}

// NearName gives the name that another is most likely a slip of, or "": its first
// letters, other capitals, or a mistyped letter of a long one. Names told apart by
// their numbers, or short ones by a letter, are meant to differ.
func NearName(name, of string) string {
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
