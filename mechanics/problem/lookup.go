package problem

import "strings"

func (g *Given) named() string       { return g.Name }
func (p *Point) named() string       { return p.Name }
func (b *Body) named() string        { return b.Name }
func (l *Line) named() string        { return l.Name }
func (j *Joint) named() string       { return j.Name }
func (c *Couple) named() string      { return c.Name }
func (d *Distributed) named() string { return d.Name }
func (u *Unknown) named() string     { return u.Name }

// named is what a list of things holds that have names.
type named[T any] interface {
	*T
	named() string
}

// indexOf is the place of the thing of a name in a list, -1 where there is none.
func indexOf[T any, P named[T]](list []T, name string) int {
	for i := range list {
		if P(&list[i]).named() == name {
			return i
		}
	}
	return -1
}

func namesOf[T any, P named[T]](list []T) (names []string) {
	for i := range list {
		names = append(names, P(&list[i]).named())
	}
	return names
}

// LineNamed gives a line's index by name, -1 where there is none.
func (p *Problem) LineNamed(name string) int { return indexOf(p.Lines, name) }

// unknownNamed gives an unknown's index by name. In the plane the moment of a
// joint C answers to MC as well as to MCz.
func (p *Problem) unknownNamed(name string) int {
	i := indexOf(p.Unknowns, name)
	if i < 0 && p.Planar && strings.HasPrefix(name, "M") {
		if i = indexOf(p.Unknowns, name+"z"); i >= 0 && p.Unknowns[i].Joint < 0 {
			return -1
		}
	}
	return i
}

// impending finds the joint whose friction a name asks for, which is no unknown where slip
// impends: AF of the surface A.
func (p *Problem) impending(name string) (joint int, ok bool) {
	surface, ok := strings.CutSuffix(name, "F")
	i := indexOf(p.Joints, surface)
	return i, ok && p.Planar && i >= 0 && p.Joints[i].Impending
}

// forceNames are the names of what has a force with a direction.
func (p *Problem) forceNames() []string { return append(namesOf(p.Lines), namesOf(p.Joints)...) }

// holders are the names that have parts.
func (p *Problem) holders() []string { return append(p.forceNames(), namesOf(p.Loads)...) }
