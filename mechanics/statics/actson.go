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
	from := make([]int, len(p.Bodies)+2)
	for act := range p.Acts() {
		from[act.Body+2]++
	}
	for b := range p.Bodies {
		from[b+2] += from[b+1]
	}
	s.acts = make([]actOn, from[len(p.Bodies)+1])
	put := func(on actOn) {
		s.acts[from[on.act.Body+1]] = on
		from[on.act.Body+1]++
	}
	for i := range p.Lines {
		l := &p.Lines[i]
		path := len(l.Path) >= 2 && (l.Kind.Info().Path || l.JoinsEnds())
		for k := range l.Acts {
			put(actOn{&l.Acts[k], i, path})
		}
	}
	lines := 0
	for i := range p.Lines {
		lines += len(p.Lines[i].Acts)
	}
	for act := range p.Acts() {
		if lines--; lines < 0 { // those of lines come first
			put(actOn{act: act})
		}
	}
	s.actsFrom = from
}

func (s *Solution) actsOn(body int) []actOn { return s.acts[s.actsFrom[body]:s.actsFrom[body+1]] }
