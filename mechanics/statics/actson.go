package statics

import "trivet/mechanics/problem"

// actOn is an act on a body, and the line that exerts it where that has a far end.
type actOn struct {
	*problem.Act
	path *problem.Line
}

// sortActs gathers the acts by body, so that the checks of a body need not look
// through those of all others. Each body's stay in the order of the sheet.
func (s *Solution) sortActs() {
	p := s.Problem
	s.acts = make([][]actOn, len(p.Bodies))
	for from, act := range p.Exerted() {
		on := actOn{Act: act}
		if from.Thing == problem.ALine {
			if l := &p.Lines[from.Index]; len(l.Path) >= 2 && (l.Kind.Info().Path || l.JoinsEnds()) {
				on.path = l
			}
		}
		s.acts[act.Body] = append(s.acts[act.Body], on)
	}
}
