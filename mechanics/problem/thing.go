package problem

import (
	"iter"
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

// things says what each thing is called, where it has its rows, and its list.
var things = [...]struct {
	word, table string
	list        func(*Problem) entries
}{
	NoThing:   {word: "thing"},
	AGiven:    {"given", "given", func(p *Problem) entries { return entriesOf(p.Givens) }},
	APoint:    {"point", "points", func(p *Problem) entries { return entriesOf(p.Points) }},
	ABody:     {"body", "bodies", func(p *Problem) entries { return entriesOf(p.Bodies) }},
	ALine:     {"line", "lines", func(p *Problem) entries { return entriesOf(p.Lines) }},
	AJoint:    {"joint", "joints", func(p *Problem) entries { return entriesOf(p.Joints) }},
	ACouple:   {"couple", "couples", func(p *Problem) entries { return entriesOf(p.Couples) }},
	ALoad:     {"load", "distributed", func(p *Problem) entries { return entriesOf(p.Loads) }},
	AnUnknown: {"unknown", "", func(p *Problem) entries { return entriesOf(p.Unknowns) }},
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

// Named is a thing by its name.
type Named struct {
	Thing
	Name string
}

// Named is a thing of this kind by its name.
func (t Thing) Named(name string) Named { return Named{t, name} }

// entries are what the things of a list have in common, by their places in it.
type entries struct {
	n  int
	at func(i int) *Entry
}

func entriesOf[T any, P interface {
	*T
	entry() *Entry
}](list []T) entries {
	return entries{len(list), func(i int) *Entry { return P(&list[i]).entry() }}
}

// Entries are the things of a kind, by their places in their list.
func (p *Problem) Entries(what Thing) iter.Seq2[int, *Entry] {
	return func(yield func(int, *Entry) bool) {
		list := things[what].list(p)
		for i := 0; i < list.n && yield(i, list.at(i)); i++ {
		}
	}
}

// Entry is one of them.
func (p *Problem) Entry(of Source) *Entry { return things[of.Thing].list(p).at(of.Index) }

// Find gives the place of the thing of a name in its list: of several kinds the first that
// has one.
func (p *Problem) Find(name string, kinds ...Thing) (Source, bool) {
	for _, what := range kinds {
		if i, ok := p.index[Named{what, name}]; ok {
			return Source{what, i}, true
		}
	}
	return Source{}, false
}

// Names lists the names of the things of some kinds.
func (p *Problem) Names(kinds ...Thing) (names []string) {
	for _, what := range kinds {
		for _, e := range p.Entries(what) {
			names = append(names, e.Name)
		}
	}
	return names
}

// bare finds what a name alone asks for: an unknown, a line, a couple, or the friction of a
// surface, which is no unknown where slip impends. In the plane the moment of a joint C
// answers to MC as well as to MCz.
func (p *Problem) bare(name string) (of Source, kind QueryKind, ok bool) {
	if of, ok = p.Find(name, AnUnknown); ok {
		return of, AskValue, true
	}
	if of, ok = p.Find(name+"z", AnUnknown); ok && p.Planar && strings.HasPrefix(name, "M") && p.Unknowns[of.Index].Joint >= 0 {
		return of, AskValue, true
	}
	if of, ok = p.Find(name, ALine, ACouple); ok {
		return of, AskValue, true
	}
	surface, friction := strings.CutSuffix(name, "F")
	of, ok = p.Find(surface, AJoint)
	return of, AskFriction, ok && friction && p.Planar && p.Joints[of.Index].Impending
}
