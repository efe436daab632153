package problem

import (
	"strings"

	"trivet/units"
)

// LineNamed gives a line's index by name, -1 where there is none.
func (p *Problem) LineNamed(name string) int {
	for i := range p.Lines {
		if p.Lines[i].Name == name {
			return i
		}
	}
	return -1
}

func (p *Problem) lineNames() (names []string) {
	for _, l := range p.Lines {
		names = append(names, l.Name)
	}
	return names
}

func (p *Problem) bodyNames() (names []string) {
	for _, b := range p.Bodies {
		names = append(names, b.Name)
	}
	return names
}

// unknownNamed gives an unknown's index by name. In the plane the moment of a
// joint C answers to MC as well as to MCz.
func (p *Problem) unknownNamed(name string) int {
	for i := range p.Unknowns {
		if p.Unknowns[i].Name == name {
			return i
		}
	}
	if p.Planar && strings.HasPrefix(name, "M") {
		for i := range p.Unknowns {
			if p.Unknowns[i].Joint >= 0 && p.Unknowns[i].Name == name+"z" {
				return i
			}
		}
	}
	return -1
}

// derived finds results that bear a name of their own and are no unknowns: a
// known couple, and the friction of a surface where slipping impends.
func (p *Problem) derived(q Query, name string) (Query, bool) {
	for i := range p.Couples {
		if p.Couples[i].Name == name {
			q.Kind, q.Couple, q.Dim = AskCouple, i, units.Moment
			return q, true
		}
	}
	for i := range p.Joints {
		if j := &p.Joints[i]; j.Impending && p.Planar && j.Name+"F" == name {
			q.Kind, q.Joint, q.Dim = AskFriction, i, units.Force
			return q, true
		}
	}
	return q, false
}

// forceNames are the names of what has a force with a direction.
func (p *Problem) forceNames() []string {
	names := p.lineNames()
	for i := range p.Joints {
		names = append(names, p.Joints[i].Name)
	}
	return names
}

// holders are the names that have parts.
func (p *Problem) holders() []string {
	names := p.forceNames()
	for i := range p.Loads {
		names = append(names, p.Loads[i].Name)
	}
	return names
}

func (p *Problem) resultNames() []string {
	names := p.lineNames()
	for _, u := range p.Unknowns {
		names = append(names, u.Name)
	}
	return names
}
