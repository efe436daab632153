package handsolve

import "strconv"

func (s *said) section(e *Equation) {
	names := make([]string, len(e.Cut))
	for k, l := range e.Cut {
		names[k] = s.p.Lines[l].Name
	}
	s.words("Cut through " + listed(names) + " and keep the part with " + s.bodies(e.Bodies) + ". ")
}

// manyNames is how many bodies are named one by one.
const manyNames = 4

func (s *said) bodies(of []int) string {
	names := make([]string, len(of))
	for k, b := range of {
		names[k] = s.p.Bodies[b].Name
	}
	if len(names) > manyNames {
		more := len(names) - manyNames + 1
		return listed(append(names[:manyNames-1], strconv.Itoa(more)+" more"))
	}
	return listed(names)
}

// on names what an equation is for.
func (s *said) on(e *Equation) string {
	switch {
	case len(e.Bodies) == 1:
		return s.p.Bodies[e.Bodies[0]].Name
	case e.Whole:
		return "the whole structure"
	}
	return s.bodies(e.Bodies) + " together"
}

// equation says moments about A on beam, forces along x on beam.
func (s *said) equation(e *Equation, where bool) string {
	text := "forces " + s.direction(e)
	if e.Moment {
		text = "moments about " + s.center(e)
	}
	if where {
		preposition := " on "
		if b := e.bodyOf(s.p); b != nil && b.Particle {
			preposition = " at "
		}
		text += preposition + s.on(e)
	}
	return text
}

func (s *said) direction(e *Equation) string {
	n := &e.Named
	switch {
	case len(n.Across) == 1 && n.Axis != 0:
		return "across " + s.r.Name(s.p, n.Across[0]) + " and " + string(n.Axis)
	case len(n.Across) > 0:
		names := make([]string, len(n.Across))
		for k, symbol := range n.Across {
			names[k] = s.r.Name(s.p, symbol)
		}
		return "across " + listed(names)
	case n.Axis != 0:
		return "along " + string(n.Axis)
	}
	return "along " + s.tuple(e.Along, 1)
}

func (s *said) center(e *Equation) string {
	n := &e.Named
	at := ""
	if n.Point >= 0 {
		at = s.p.Points[n.Point].Name
	}
	if s.p.Planar {
		if at != "" {
			return at
		}
		return "the point " + s.place(e.At) + ", where the lines of " + s.r.Name(s.p, n.Across[0]) + " and " + s.r.Name(s.p, n.Across[1]) + " meet,"
	}
	switch {
	case n.Axis != 0:
		return "the axis through " + at + " along " + string(n.Axis)
	case n.To >= 0:
		return "the axis " + at + s.p.Points[n.To].Name
	case n.Along >= 0 && at == "":
		return "the line of " + s.r.Name(s.p, n.Along)
	case n.Along >= 0:
		return "the axis through " + at + " along " + s.r.Name(s.p, n.Along)
	case len(n.Across) == 2:
		return "the axis through " + at + " that meets the lines of " + s.r.Name(s.p, n.Across[0]) + " and " + s.r.Name(s.p, n.Across[1])
	case at == "":
		at = s.place(e.At)
	}
	return "the axis through " + at + " along " + s.tuple(e.Along, 1)
}
