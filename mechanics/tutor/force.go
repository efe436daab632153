package tutor

import (
	"gonum.org/v1/gonum/spatial/r3"

	"trivet/mechanics/problem"
)

// force is what one source exerts with one unknown, or without any, on the bodies: a
// column of the system, or a known load. Pieces are per newton of the unknown, or the
// known force itself.
type force struct {
	of      problem.Source
	unknown int // -1: known
	pieces  []piece
}

// piece is a force at a place of a body, and a couple with it.
type piece struct {
	body  int
	at    r3.Vec
	force r3.Vec
	turn  r3.Vec // the couple
}

func (f *force) isCouple() bool {
	for _, p := range f.pieces {
		if p.force != (r3.Vec{}) {
			return false
		}
	}
	return true
}

// forcesOf takes the acts of a problem apart.
func forcesOf(p *problem.Problem) (all []force) {
	type key struct {
		of      problem.Source
		unknown int
	}
	at := map[key]int{}
	add := func(of problem.Source, unknown int, x piece) {
		if x.force == (r3.Vec{}) && x.turn == (r3.Vec{}) {
			return
		}
		k, ok := at[key{of, unknown}]
		if !ok {
			k = len(all)
			at[key{of, unknown}] = k
			all = append(all, force{of: of, unknown: unknown})
		}
		all[k].pieces = append(all[k].pieces, x)
	}
	for of, act := range p.Exerted() {
		add(of, -1, piece{act.Body, act.At, act.Force.Const, act.Couple.Const})
		for _, t := range act.Force.Terms {
			add(of, t.Unknown, piece{act.Body, act.At, t.D, r3.Vec{}})
		}
		for _, t := range act.Couple.Terms {
			add(of, t.Unknown, piece{act.Body, act.At, r3.Vec{}, t.D})
		}
	}
	return all
}

// on tells whether a force acts on some bodies and is not internal to them.
func (f *force) on(bodies []bool) bool {
	var sum, turn r3.Vec
	n := 0
	for _, p := range f.pieces {
		if p.body >= 0 && bodies[p.body] {
			n++
			sum = r3.Add(sum, p.force)
			turn = r3.Add(turn, r3.Add(p.turn, r3.Cross(p.at, p.force)))
		}
	}
	return n == 1 || n > 1 && (r3.Norm(sum) > tiny || r3.Norm(turn) > tiny)
}

// acting are the forces on some bodies that are not internal to them: those that a sum on
// them may contain.
func (t *Practice) acting(bodies []bool) (all []force) {
	for i := range t.forces {
		if t.forces[i].on(bodies) {
			all = append(all, t.forces[i])
		}
	}
	return all
}

// elsewhere tells whether a force acts on another body too, with the opposite sense.
func (f *force) elsewhere(bodies []bool) bool {
	for _, p := range f.pieces {
		if p.body >= 0 && !bodies[p.body] {
			return true
		}
	}
	return false
}

// tiny is rounding of sums of unit vectors and of coordinates in metres.
const tiny = 1e-9
