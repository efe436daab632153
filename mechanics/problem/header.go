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
	p.Title, _ = r.top("title")
	p.Statement, _ = r.top("statement")
	p.Lesson, _ = r.top("lesson")
	p.Units = r.unitSet()
	r.expect()

	plane, ref := r.top("plane")
	switch strings.TrimSpace(plane) {
	case "":
	case "xy":
		p.Planar = true
	default:
		r.fail(ref, whole(plane), "the plane of a planar problem is xy", "xy, or no plane for a problem in space")
	}

	p.Up = r3.Vec{Z: 1}
	if p.Planar {
		p.Up = r3.Vec{Y: 1}
	}
	if up, ref := r.top("up"); up != "" {
		v, ok := axes[strings.TrimSpace(up)]
		switch {
		case !ok:
			r.fail(ref, whole(up), strconv.Quote(up)+" is not an axis", "+x, -x, +y, -y, +z or -z")
		case p.Planar && v.Z != 0:
			r.fail(ref, whole(up), "up is not in the plane xy", "+y, -y, +x or -x")
		default:
			p.Up = v
		}
	}
	r.compass()

	p.G = standardGravity
	if g, ref := r.top("g"); g != "" {
		switch v, ok := r.scalar(ref, g, env{r: r}, units.Acceleration); {
		case !ok:
		case v.V[0] < 0:
			r.fail(ref, whole(g), "g cannot be negative", "the opposite direction up")
		default:
			p.G = v.V[0]
		}
	}

	p.Figures = defaultFigures
	if f, ref := r.top("figures"); f != "" {
		if n, err := strconv.Atoi(strings.TrimSpace(f)); err == nil && n >= 1 && n <= maxFigures {
			p.Figures = n
		} else {
			r.fail(ref, whole(f), "figures is a whole number from 1 to 12, not "+strconv.Quote(f), "a number such as 3")
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
	text, ref := r.top("expect")
	text = strings.TrimSpace(text)
	if i := wordOf(verdictWords, text); i >= 0 {
		r.p.Expect = verdictWords[i].Text
		return
	}
	verdicts := spelled(verdictWords)
	r.fail(ref, whole(text), strconv.Quote(text)+" is not a verdict", suggestion(text, verdicts, say.Or(verdicts...)))
}

// top gives a key that stands before the first table.
func (r *reading) top(key string) (string, sheet.Ref) {
	row, _ := r.s.Table("").Row(key)
	row.Name = key
	text, ref, _ := r.text("", row, "")
	return text, ref
}

// axes are the directions that have a word of their own.
var axes = map[string]r3.Vec{
	"x": {X: 1}, "y": {Y: 1}, "z": {Z: 1},
	"+x": {X: 1}, "+y": {Y: 1}, "+z": {Z: 1},
	"-x": {X: -1}, "-y": {Y: -1}, "-z": {Z: -1},
}

// compass fixes east and north for bearings: north is +y where up is ±z, -z
// where up is ±y, +z where up is ±x, and east = north × up, so that east, north
// and up are right-handed. A planar sheet is a map, seen from +z.
func (r *reading) compass() {
	up, north := r.p.Up, r3.Vec{Y: 1}
	switch {
	case r.p.Planar:
		up = r3.Vec{Z: 1}
	case up.Y != 0:
		north = r3.Vec{Z: -1}
	case up.X != 0:
		north = r3.Vec{Z: 1}
	}
	east := r3.Cross(north, up)
	r.east = [3]float64{east.X, east.Y, east.Z}
	r.north = [3]float64{north.X, north.Y, north.Z}
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
			r.fail(ref, whole(c.Text), "expected a unit of "+slot.Dim.String()+", but "+strconv.Quote(c.Text)+" is a unit of "+u.Dim.String(), slot.Symbol)
		default:
			*slot = u
		}
	}
	return set
}
