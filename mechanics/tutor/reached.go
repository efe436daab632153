package tutor

import (
	"maps"

	"trivet/mechanics/problem"
)

// Reached is how far work has come, in the order in which a problem is worked: every body has
// been cut free rightly, every line whose direction is no axis has a right vector, as many
// independent equations stand there as are needed, everything asked is answered rightly.
type Reached struct{ Cut, Vectors, Equations, Values bool }

// Reached tells how far the student has come.
func (t *Practice) Reached() Reached {
	r := Reached{Cut: true, Vectors: true, Equations: len(t.rows) >= t.needed, Values: t.Done()}
	for _, f := range t.forces {
		for _, p := range f.pieces {
			r.Cut = r.Cut && (p.body < 0 || t.cut[p.body])
		}
	}
	for i := range t.Problem.Lines {
		if l := &t.Problem.Lines[i]; l.OK && l.Kind.Info().Path && len(l.Legs) > 0 && !alongAxis(l.Legs[0]) {
			r.Vectors = r.Vectors && t.vectored[i]
		}
	}
	return r
}

// alongAxis tells that a unit vector is that of an axis, so that nobody writes it down.
func alongAxis(leg problem.Leg) bool {
	zero := 0
	for k := range axes {
		if problem.Component(leg.U, k) == 0 {
			zero++
		}
	}
	return zero >= len(axes)-1
}

// Found are the right values of unknowns as the student has entered them, by the index of
// the unknown: N, or N·m.
func (t *Practice) Found() map[int]float64 { return maps.Clone(t.found) }

// Progress is how many independent equations stand there, and how many sums are needed.
func (t *Practice) Progress() (independent, needed int) { return len(t.rows), t.needed }
