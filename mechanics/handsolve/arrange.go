package handsolve

import (
	"cmp"
	"slices"

	"trivet/mechanics/say"
)

// arrange puts the steps as a person writes them: what follows from a body goes on
// with that body, moments before forces, as far as each has what it needs.
func (f *finder) arrange() {
	todo := f.order.Steps
	f.order.Steps = make([]Step, 0, len(todo))
	clear(f.known) // why a symbol drops out is said of those that are unknown when a step is written
	var last []int
	for len(todo) > 0 {
		ready := say.Places(len(todo), func(i int) bool { return !slices.ContainsFunc(todo[i].Needs, func(n int) bool { return !f.known[n] }) })
		next := slices.MinFunc(ready, func(a, b int) int { return cmp.Compare(todo[a].rank(last), todo[b].rank(last)) })
		if todo[next].Kind == One {
			last = todo[next].Equations[0].Bodies
			ready = slices.DeleteFunc(ready, func(i int) bool { return !todo[i].on(last) })
			next = slices.MinFunc(ready, func(a, b int) int { return cmp.Compare(todo[a].place(), todo[b].place()) })
		}
		step := todo[next]
		todo = slices.Delete(todo, next, next+1)
		for i := range step.Equations {
			f.drops(&step.Equations[i])
		}
		for _, x := range step.Finds {
			f.known[x.Symbol] = true
		}
		f.order.Steps = append(f.order.Steps, step)
	}
	f.dropMembers()
}

// on tells that a step is a single equation for some bodies.
func (s *Step) on(bodies []int) bool {
	return s.Kind == One && slices.Equal(s.Equations[0].Bodies, bodies)
}

// rank is where a step stands when the last one was about some bodies: what is seen
// without an equation, what goes on with the bodies, components, other bodies.
func (s *Step) rank(last []int) int {
	switch {
	case s.on(last):
		return 1
	case s.Kind == Components:
		return 2
	case s.Kind == One:
		return 3
	}
	return 0
}

// place is where a single equation stands among those for the same bodies: moments as they
// were found, then forces in the order of what they find.
func (s *Step) place() int {
	if s.Equations[0].Moment {
		return -1
	}
	return s.Finds[0].Symbol
}

// dropMembers drops the two-force members that no equation speaks of.
func (f *finder) dropMembers() {
	spoken := slices.Clone(f.wanted)
	for _, step := range f.order.Steps {
		symbols := append(symbolsIn(step.Equations, true), symbolsIn(step.Equations, false)...)
		for _, e := range step.Equations {
			for _, d := range e.Drops {
				symbols = append(symbols, d.Symbols...)
			}
		}
		for _, symbol := range symbols {
			spoken[symbol] = true
		}
	}
	isSpoken := func(x Found) bool { return spoken[x.Symbol] }
	f.order.Steps = slices.DeleteFunc(f.order.Steps, func(s Step) bool {
		return s.Kind == TwoForce && !spoken[f.n+s.Member] && !slices.ContainsFunc(s.Finds, isSpoken)
	})
}
