package tutor

import (
	"slices"

	"trivet/mechanics/problem"
)

// enough is how many wrong entries there may be without a right sum on the body.
const enough = 5

// guessing counts a wrong entry of any kind with the bodies it concerns, and tells whether there are too
// many without a right sum on one of them.
func (t *Practice) guessing(on []bool) bool {
	if on == nil {
		on = t.everything()
	}
	most := 0
	for i, in := range on {
		if in {
			t.guesses[i]++
			most = max(most, t.guesses[i])
		}
	}
	return most > enough && !slices.ContainsFunc(t.Entries, func(e Judgement) bool {
		return e.sum != nil && overlap(e.sum.bodies, on)
	})
}

// isGuess tells whether an entry of a kind may be a guess: a bare value or verdict. An
// equation, a free body, a vector and a moment are work, and each gets its own judgement.
func (k Kind) isGuess() bool {
	switch k {
	case ValueKind, LengthKind, AngleKind, VerdictOf:
		return true
	}
	return false
}

// bodiesWith are the bodies on which one of some forces acts, nil where there is none.
func (t *Practice) bodiesWith(is func(*force) bool) (set []bool) {
	for i := range t.forces {
		if !is(&t.forces[i]) {
			continue
		}
		for _, p := range t.forces[i].pieces {
			if p.body >= 0 && set == nil {
				set = make([]bool, len(t.Problem.Bodies))
			}
			if p.body >= 0 {
				set[p.body] = true
			}
		}
	}
	return set
}

// concerned are the bodies on which a line, a joint or an unknown acts.
func (t *Practice) concerned(of problem.Source) []bool {
	if of.Thing == problem.ABody {
		return only(t.Problem, of.Index)
	}
	return t.bodiesWith(func(f *force) bool { return f.of == of || of.Thing == problem.AnUnknown && f.unknown == of.Index })
}
