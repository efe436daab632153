package problem

import (
	"strconv"
	"strings"

	"gonum.org/v1/gonum/spatial/r3"

	"trivet/mechanics/diag"
	"trivet/mechanics/say"
	"trivet/mechanics/sheet"
	"trivet/units"
)

// standardGravity is the g of a sheet that gives none: the 9.81 m/s² of
// textbook exercises, common practice (the standard value is 9.80665).
const standardGravity = 9.81

const (
	defaultFigures = 3
	maxFigures     = 12
)

func (r *reading) header() {
	p := r.p
	p.Title, p.Statement, p.Lesson = r.top("title").text, r.top("statement").text, r.top("lesson").text
	p.Units = r.unitSet()
	r.expect()

	plane := r.top("plane")
	if p.Planar = plane.word() == "xy"; plane.has && !p.Planar {
		plane.fail("the plane of a planar problem is xy", "xy, or no plane for a problem in space")
	}

	p.Up = r3.Vec{Z: 1}
	if p.Planar {
		p.Up = r3.Vec{Y: 1}
	}
	if up := r.top("up"); up.has {
		v, ok := axes[up.word()]
		switch {
		case !ok:
			up.fail(strconv.Quote(up.text)+" is not an axis", "+x, -x, +y, -y, +z or -z")
		case p.Planar && v.Z != 0:
			up.fail("up is not in the plane xy", "+y, -y, +x or -x")
		default:
			p.Up = v
		}
	}

	p.G = standardGravity
	switch g := r.top("g").quantity(units.Acceleration); {
	case !g.ok:
	case g.value < 0:
		g.fail("g cannot be negative", "the opposite direction up")
	default:
		p.G = g.value
	}

	p.Figures = defaultFigures
	if f := r.top("figures"); f.has {
		if n, err := strconv.Atoi(f.word()); err == nil && n >= 1 && n <= maxFigures {
			p.Figures = n
		} else {
			f.fail("figures is a whole number from 1 to 12, not "+strconv.Quote(f.text), "a number such as 3")
		}
	}
}

// ExpectResultant is what a sheet expects that has known forces only, and asks for
// their resultant: nothing is claimed to balance.
const ExpectResultant = "resultant"

// senseBroken is what sheets of format 1 call inadmissible.
const senseBroken = "sense-broken"

// FailedCheck is what a sheet expects whose lesson is a check that fails: a limit
// exceeded, a contact that slips, a block that tips.
const FailedCheck = "failed-check"

// AtRisk is what a sheet expects whose lesson is the ± of its inputs: all is well as
// typed, and a limit can be passed, or something else can fail, within the ±.
const AtRisk = "at-risk"

// expect reads expect = "no-equilibrium": a sheet that teaches what goes wrong
// is well when it does.
func (r *reading) expect() {
	c := r.top("expect")
	if i := WordOf(verdictWords, c.word()); i >= 0 {
		r.p.Expect = verdictWords[i].Text
		return
	}
	verdicts := spelled(verdictWords)
	c.fail(strconv.Quote(c.word())+" is not a verdict", suggestion(c.word(), verdicts, say.Or(verdicts...)))
}

// top gives a key that stands before the first table.
func (r *reading) top(key string) cell {
	of, _ := r.s.Table("").Row(key)
	return row{r, of, sheet.Ref{Row: key}}.cell("")
}

// axes are the directions that have a word of their own.
var axes = map[string]r3.Vec{
	"x": {X: 1}, "y": {Y: 1}, "z": {Z: 1},
	"+x": {X: 1}, "+y": {Y: 1}, "+z": {Z: 1},
	"-x": {X: -1}, "-y": {Y: -1}, "-z": {Z: -1},
}

// UnitsOf are the units of a sheet.
func UnitsOf(s *sheet.Sheet) units.Set {
	r := &reading{Reader: NewReader(), s: s, p: &Problem{}}
	return r.unitSet()
}

func (r *reading) unitSet() units.Set {
	set := units.DefaultSet()
	slots := map[string]*units.Unit{"length": &set.Length, "force": &set.Force, "angle": &set.Angle, "mass": &set.Mass}
	for _, row := range r.s.Table("units").Rows {
		slot, known := slots[row.Name]
		if !known {
			continue
		}
		ref := sheet.Ref{Table: "units", Row: row.Name}
		c, ok := row.Cell("")
		if !ok {
			r.fail(ref, diag.Span{}, "the unit of "+row.Name+" is missing", slot.Symbol)
		}
		if strings.TrimSpace(c.Text) == "" {
			continue
		}
		u, err := units.ParseUnit(c.Text)
		switch {
		case err != nil:
			r.failCell(ref, err)
		case u.Dim != slot.Dim:
			r.fail(ref, diag.Whole(c.Text), "expected a unit of "+slot.Dim.String()+", but "+strconv.Quote(c.Text)+" is a unit of "+u.Dim.String(), slot.Symbol)
		default:
			*slot = u
		}
	}
	return set
}
