package tutor

import (
	"math"
	"regexp"
	"slices"
	"strings"

	"trivet/mechanics/diag"
	"trivet/mechanics/problem"
	"trivet/units"
)

var nameForm = regexp.MustCompile(`[\pL_][\pL\pN_]*`)

// tied tells whether a text has the name of a force that the sheet ties to unknowns: a
// line of magnitude mu*N, the friction where slip impends.
func (t *Practice) tied(text string) bool {
	return slices.ContainsFunc(nameForm.FindAllString(text, -1), func(name string) bool {
		v, ok, _ := names{t: t}.Lookup(name)
		return ok && len(v.Terms) > 0 && !slices.ContainsFunc(t.Problem.Unknowns, func(u problem.Unknown) bool { return u.Name == name })
	})
}

// identity tells whether an equation only repeats how the sheet ties forces: AF = 0.3 AN
// where slip impends. Every coefficient is then zero, within its digits.
func (t *Practice) identity(w written) bool {
	n := len(t.Problem.Unknowns)
	for k, c := range w.c {
		scale := 1.0
		if k == n {
			scale = t.load()
		}
		if math.Abs(c) > w.half[k]+rounding*scale {
			return false
		}
	}
	return t.tied(w.text)
}

// measured is a number with the name of a unit behind it.
var measured = regexp.MustCompile(`[0-9.]+( *)([\pL_][\pL\pN_]*)`)

// readings are a text as it is typed, and with names that are a force's as well as a unit's
// taken as the force's: 0.3 N where a contact is called N. Places in the text stay where a
// blank parts the two. Which is the word that can be read in two ways.
func (t *Practice) readings(text string) (all []string, which diag.Span) {
	all = []string{text}
	for _, m := range measured.FindAllStringSubmatchIndex(text, maxDouble) {
		name := text[m[4]:m[5]]
		if _, ok := units.Find(name); !ok || !t.isName(name) {
			continue
		}
		which = diag.Between(m[0], m[5])
		for _, before := range slices.Clone(all) {
			at := len(before) - (len(text) - m[3])
			all = append(all, before[:at-(m[3]-m[2])]+"*"+strings.Repeat(" ", max(m[3]-m[2]-1, 0))+before[at:])
		}
	}
	return all, which
}

// maxDouble bounds the readings of a line, which double with each such name.
const maxDouble = 5
