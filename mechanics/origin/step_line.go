package origin

import (
	"math"
	"strings"

	"trivet/mechanics/doc"
	"trivet/mechanics/statics"
	"trivet/mechanics/working"
)

// ofLine is a number of a position vector r = B - A = (..) - (..) = (..), of its
// length |r| = √(..) = L, or of u = r/|r| = (..)/L = ..
func ofLine(s *statics.Solution, of *working.Step, b doc.Block, f found) string {
	if _, formula := b.(*doc.Formula); !formula || len(of.About.Lines) != 1 || f.formula.Op != doc.Relate || len(f.way) == 0 {
		return ""
	}
	line := of.About.Lines[0]
	leg := -1
	for k, g := range s.Problem.Lines[line].Legs {
		ends := of.About.Points
		if len(ends) > 0 && g.From == ends[0] && (len(ends) < 2 || g.To == ends[1]) {
			leg = k
		}
	}
	if leg < 0 {
		return ""
	}
	at, last, first := f.way[0], f.way[0] == len(f.formula.Of)-1, f.formula.Of[0].Op
	axis := axisIn(f)
	switch {
	case of.Kind == working.Position && first == doc.Vec && !last && axis >= 0:
		g := s.Problem.Lines[line].Legs[leg]
		point := g.To
		if len(f.way) > 1 && f.way[1] == 1 { // subtracted
			point = g.From
		}
		return axes[axis:axis+1] + " of " + s.Problem.Points[point].Name + ", from its place in the sheet"
	case first == doc.Vec && axis >= 0:
		return Leg(s, line, leg, R, axis)
	case of.Kind == working.Position && last:
		return Leg(s, line, leg, Length, 0)
	case of.Kind == working.Unit && first == doc.Size && last:
		return Leg(s, line, leg, Size, 0)
	case of.Kind == working.Unit && first == doc.UnitVec && !last && at == 2 && axis >= 0:
		return Leg(s, line, leg, R, axis)
	case of.Kind == working.Unit && first == doc.UnitVec && !last && at == 2:
		return Leg(s, line, leg, Length, 0)
	case of.Kind == working.Unit && first == doc.UnitVec && last && axis >= 0:
		return Leg(s, line, leg, U, axis)
	}
	return ""
}

// axisIn is the component that a number is: its place in a tuple, or the unit vector
// that it stands before; -1 for none.
func axisIn(f found) int {
	on := f.on()
	for k, m := range on {
		switch {
		case m.Op == doc.Paren && len(m.Of) > 1:
			return f.way[k]
		case m.Op == doc.Product:
			for _, x := range m.Of {
				if x.Op == doc.UnitVec && len(x.Text) == 1 {
					return strings.Index("ijk", x.Text)
				}
			}
		}
	}
	return -1
}

// ofSpread is a number of a distributed load: its length, its resultant, or where that
// acts.
func ofSpread(s *statics.Solution, of *working.Step, number float64) string {
	if len(of.About.Loads) != 1 || len(of.About.Points) != 2 {
		return ""
	}
	d, set := &s.Problem.Loads[of.About.Loads[0]], s.Problem.Units
	from := s.Problem.Points[d.From].Name
	is := func(v float64) bool { return math.Abs(math.Abs(v)-number) <= shownTol*max(math.Abs(v), number) }
	switch {
	case is(set.Force.In(d.Total)):
		return "resultant of " + d.Name + ": the area under the load"
	case is(set.Length.In(d.Distance)):
		return "from " + from + " to where the resultant of " + d.Name + " acts: the centroid of the area under the load"
	case is(set.Length.In(d.Length)):
		return "length of " + d.Name + ", from " + from + " to " + s.Problem.Points[d.To].Name
	case is(set.Length.In(d.At.X)), is(set.Length.In(d.At.Y)), is(set.Length.In(d.At.Z)):
		return "where the resultant of " + d.Name + " acts: so far along its line from " + from
	}
	return ""
}

// shownTol is how near a number of a formula is to the value that it shows: its own
// value went through the same conversion of units.
const shownTol = 1e-9
