package problem

import (
	"errors"

	"gonum.org/v1/gonum/spatial/r3"

	"trivet/mechanics/sheet"
	"trivet/units"
)

// scope says which names an expression may use.
type scope int8

const (
	inGiven     scope = iota // other givens
	inGeometry               // givens and points
	inMagnitude              // givens, magnitudes of lines, new unknowns; points within dir( )
	inLoad                   // givens and s, the distance along a distributed load
)

// env lets a cell's expression see the sheet's names.
type env struct {
	r     *reading
	scope scope
	cell  sheet.Ref // whose text it is; none where a ± in it is no measured value
	line  int       // the line whose magnitude is read, in inMagnitude; -1 for a couple's
	s     float64   // in inLoad
	// varies is set once s is asked for, in inLoad.
	varies *bool
	// corners gathers, in inLoad, the numbers whose zeros are corners of q(s).
	corners *[]float64
}

// errElsewhere stands for an error that has been reported at another cell.
var errElsewhere = errors.New("does not read yet")

func (e env) Lookup(name string) (units.Value, bool, error) {
	r := e.r
	if i, ok := r.find(AGiven, name); ok {
		if !r.given(i) {
			return units.Value{}, true, errElsewhere
		}
		return r.p.Givens[i].Value, true, nil
	}
	if name == "g" && e.scope != inGeometry {
		return units.Scalar(r.p.G, units.Acceleration), true, nil
	}
	switch e.scope {
	case inLoad:
		if name == "s" {
			*e.varies = true
			return units.Scalar(e.s, units.Length), true, nil
		}
	case inGeometry:
		return e.Place(name)
	case inMagnitude:
		return r.magnitudeOf(name, e)
	}
	return units.Value{}, false, nil
}

// Place gives a point, for dir(A, B) in any cell: there a point is meant even
// where a line bears the same name.
func (e env) Place(name string) (units.Value, bool, error) {
	i, ok := e.r.find(APoint, name)
	if !ok || e.scope == inGiven {
		return units.Value{}, false, nil
	}
	if !e.r.point(i) {
		return units.Value{}, true, errElsewhere
	}
	return units.Vector(numbers(e.r.p.Points[i].At), units.Length), true, nil
}

// Corner notes a number whose zero is a corner of q(s).
func (e env) Corner(d float64) {
	if e.corners != nil {
		*e.corners = append(*e.corners, d)
	}
}

func (e env) Names() []string {
	p := e.r.p
	more := map[scope][]string{inGeometry: p.Names(APoint), inMagnitude: p.Names(ALine)}
	return append(p.Names(AGiven), more[e.scope]...)
}

// Known tells whether a name has a meaning on the sheet already. In a magnitude
// a new name becomes an unknown, but not right behind a number.
func (e env) Known(name string) bool {
	r := e.r
	return e.scope != inMagnitude || name == "g" || r.namesMagnitude(name)
}

func (e env) Set() units.Set { return e.r.p.Units }
func (e env) Planar() bool   { return e.r.p.Planar }

// Compass gives east and north for bearings: north is +y where up is ±z, -z where up is
// ±y, +z where up is ±x, and east = north × up, so that east, north and up are
// right-handed. A planar sheet is a map, seen from +z.
func (e env) Compass() (east, north, up [3]float64) {
	from, to := e.r.p.Up, r3.Vec{Y: 1}
	switch {
	case e.r.p.Planar:
		from = r3.Vec{Z: 1}
	case from.Y != 0:
		to = r3.Vec{Z: -1}
	case from.X != 0:
		to = r3.Vec{Z: 1}
	}
	return numbers(r3.Cross(to, from)), numbers(to), numbers(e.r.p.Up)
}

func numbers(v r3.Vec) [3]float64 { return [3]float64{v.X, v.Y, v.Z} }
