package statics

import "trivet/mechanics/problem"

// actOn is an act on a body: path tells that it is that of a line with a far end.
type actOn struct {
	act  *problem.Act
	line int
	path bool
}

// sortActs gathers the acts by body, so that the checks of a body need not look
// through those of all others. Each body's stay in the order of the sheet.
func (s *Solution) sortActs() {
	p := s.Problem
	s.acts = make([][]actOn, len(p.Bodies))
	put := func(on actOn) { s.acts[on.act.Body] = append(s.acts[on.act.Body], on) }
	lines := 0
	for i := range p.Lines {
		l := &p.Lines[i]
		path := len(l.Path) >= 2 && (l.Kind.Info().Path || l.JoinsEnds())
		for k := range l.Acts {
			put(actOn{&l.Acts[k], i, path})
		}
		lines += len(l.Acts)
	}
	for act := range p.Acts() {
		if lines--; lines < 0 { // those of lines come first
			put(actOn{act: act})
		}
	}
}
