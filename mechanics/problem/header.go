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
	if up, ref := r.top("up"); strings.TrimSpace(up) != "" {
		v, ok := axis(strings.TrimSpace(up))
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
	if g, ref := r.top("g"); strings.TrimSpace(g) != "" {
		if v, ok := r.scalar(ref, g, env{r: r}, units.Acceleration); ok {
			if v.V[0] < 0 {
				r.fail(ref, whole(g), "g cannot be negative", "the opposite direction up")
			} else {
				p.G = v.V[0]
			}
		}
	}

	p.Figures = defaultFigures
	if f, ref := r.top("figures"); strings.TrimSpace(f) != "" {
		n, err := strconv.Atoi(strings.TrimSpace(f))
		if err != nil || n < 1 || n > maxFigures {
			r.fail(ref, whole(f), "figures is a whole number from 1 to 12, not "+strconv.Quote(f), "a number such as 3")
		} else {
			p.Figures = n
		}
	}
}

// verdicts are the words a sheet may expect, as the JSON contract has them.
var verdicts = []string{"determinate", "inadmissible", "indeterminate", "no-equilibrium", ExpectResultant, FailedCheck, AtRisk}

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
	switch text {
	case "":
		return
	case senseBroken:
		text = "inadmissible"
	}
	for _, v := range verdicts {
		if v == text {
			r.p.Expect = text
			return
		}
	}
	r.fail(ref, whole(text), strconv.Quote(text)+" is not a verdict", suggestion(text, verdicts, say.Or(verdicts...)))
}

// top gives a key that stands before the first table.
func (r *reading) top(key string) (string, sheet.Ref) {
	ref := sheet.Ref{Row: key}
	row, ok := r.s.Table("").Row(key)
	if !ok {
		return "", ref
	}
	c, ok := row.Cell("")
	if !ok || !c.Readable {
		r.fail(ref, diag.Span{}, key+" is neither a text nor a number", "the value in quotes")
		return "", ref
	}
	return c.Text, ref
}

func axis(s string) (r3.Vec, bool) {
	switch s {
	case "+x", "x":
		return r3.Vec{X: 1}, true
	case "-x":
		return r3.Vec{X: -1}, true
	case "+y", "y":
		return r3.Vec{Y: 1}, true
	case "-y":
		return r3.Vec{Y: -1}, true
	case "+z", "z":
		return r3.Vec{Z: 1}, true
	case "-z":
		return r3.Vec{Z: -1}, true
	}
	return r3.Vec{}, false
}

// compass fixes east and north for bearings: north is +y where up is ±z, -z
// where up is ±y, +z where up is ±x, and east = north × up, so that east, north
// and up are right-handed. On a planar sheet the plane is the map: east is +x,
// north is +y.
func (r *reading) compass() {
	up := r.p.Up
	var north r3.Vec
	switch {
	case r.p.Planar:
		r.east, r.north = [3]float64{1, 0, 0}, [3]float64{0, 1, 0}
		return
	case up.Z != 0:
		north = r3.Vec{Y: 1}
	case up.Y != 0:
		north = r3.Vec{Z: -1}
	default:
		north = r3.Vec{Z: 1}
	}
	east := r3.Cross(north, up)
	r.east = [3]float64{east.X, east.Y, east.Z}
	r.north = [3]float64{north.X, north.Y, north.Z}
}

func (r *reading) unitSet() units.Set {
	set := units.DefaultSet()
	for _, row := range r.s.Table("units").Rows {
		var slot *units.Unit
		var want units.Dim
		switch row.Name {
		case "length":
			slot, want = &set.Length, units.Length
		case "force":
			slot, want = &set.Force, units.Force
		case "angle":
			slot, want = &set.Angle, units.Angle
		case "mass":
			slot, want = &set.Mass, units.Mass
		default:
			continue
		}
		ref := sheet.Ref{Table: "units", Row: row.Name}
		c, ok := row.Cell("")
		if !ok {
			r.fail(ref, diag.Span{}, "the unit of "+row.Name+" is missing", slot.Symbol)
			continue
		}
		if strings.TrimSpace(c.Text) == "" {
			continue
		}
		u, err := units.ParseUnit(c.Text)
		switch {
		case err != nil:
			r.fail(ref, err.Span, err.Msg, err.Hint)
		case u.Dim != want:
			r.fail(ref, whole(c.Text), "expected a unit of "+want.String()+", but "+strconv.Quote(c.Text)+" is a unit of "+u.Dim.String(), slot.Symbol)
		default:
			*slot = u
		}
	}
	return set
}
