package problem

import (
	"strings"

	"trivet/mechanics/say"
)

// Thing is what a name stands for.
type Thing int

// The things that a sheet names.
const (
	NoThing Thing = iota
	AGiven
	APoint
	ABody
	ALine
	AJoint
	ACouple
	ALoad
	AnUnknown // one that is named in magnitudes only, or belongs to a joint
	AParticle // a point, where it stands for its body
	ofAJoint  // an unknown by the joint that it belongs to
)

// things says what each thing is called, and where it has its rows.
var things = [...]struct{ word, table string }{
	NoThing:   {word: "thing"},
	AGiven:    {"given", "given"},
	APoint:    {"point", "points"},
	ABody:     {"body", "bodies"},
	ALine:     {"line", "lines"},
	AJoint:    {"joint", "joints"},
	ACouple:   {"couple", "couples"},
	ALoad:     {"load", "distributed"},
	AnUnknown: {word: "unknown"},
	AParticle: {word: "particle"},
}

// Table is where things of a kind have their rows, empty where they have none.
func (t Thing) Table() string { return things[t].table }

func (t Thing) String() string { return things[t].word }

// One is the thing with its article: "a line".
func (t Thing) One() string { return say.Article(t.String()) + " " + t.String() }

// ThingOf gives what the rows of a table are.
func ThingOf(table string) Thing {
	for t := AGiven; t <= ALoad; t++ {
		if things[t].table == table {
			return t
		}
	}
	return NoThing
}

// thingName is a thing by its name.
type thingName struct {
	Thing
	name string
}

// all gives the things of a kind, by their places in their list.
func (p *Problem) all(what Thing) []*Entry {
	switch what {
	case AGiven:
		return entries(p.Givens)
	case APoint:
		return entries(p.Points)
	case ABody:
		return entries(p.Bodies)
	case ALine:
		return entries(p.Lines)
	case AJoint:
		return entries(p.Joints)
	case ACouple:
		return entries(p.Couples)
	case ALoad:
		return entries(p.Loads)
	case AnUnknown:
		return entries(p.Unknowns)
	}
	return nil
}

func entries[T any, P interface {
	*T
	entry() *Entry
}](list []T) []*Entry {
	out := make([]*Entry, len(list))
	for i := range list {
		out[i] = P(&list[i]).entry()
	}
	return out
}

// Find gives the place of the thing of a name in its list: of several kinds the first that
// has one.
func (p *Problem) Find(name string, kinds ...Thing) (Source, bool) {
	for _, what := range kinds {
		for i, e := range p.all(what) {
			if e.Name == name {
				return Source{what, i}, true
			}
		}
	}
	return Source{}, false
}

// Names lists the names of the things of some kinds.
func (p *Problem) Names(kinds ...Thing) (names []string) {
	for _, what := range kinds {
		for _, e := range p.all(what) {
			names = append(names, e.Name)
		}
	}
	return names
}

// unknownNamed finds an unknown by name. In the plane the moment of a joint C answers to
// MC as well as to MCz.
func (p *Problem) unknownNamed(name string) (Source, bool) {
	of, ok := p.Find(name, AnUnknown)
	if !ok && p.Planar && strings.HasPrefix(name, "M") {
		of, ok = p.Find(name+"z", AnUnknown)
		ok = ok && p.Unknowns[of.Index].Joint >= 0
	}
	return of, ok
}

// impending finds the joint whose friction a name asks for, which is no unknown where slip
// impends: AF of the surface A.
func (p *Problem) impending(name string) (joint Source, ok bool) {
	surface, ok := strings.CutSuffix(name, "F")
	joint, known := p.Find(surface, AJoint)
	return joint, ok && known && p.Planar && p.Joints[joint.Index].Impending
}
