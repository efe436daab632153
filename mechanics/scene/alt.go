package scene

import (
	"slices"

	"trivet/mechanics/drawing"
	"trivet/mechanics/say"
)

// Alt says in a sentence what a figure shows, for readers who do not see it.
func (s *Scene) Alt() string {
	names := map[string][]string{}
	for i := range s.Things {
		noun, name := s.Things[i].named()
		if name != "" && !slices.Contains(names[noun], name) {
			names[noun] = append(names[noun], name)
		}
	}
	const named = 6 // more are counted
	var parts []string
	for _, noun := range [...]string{"body", "member", "support", "load", "unknown"} {
		switch n := len(names[noun]); {
		case n > named:
			parts = append(parts, say.Count(n, noun))
		case n > 0:
			parts = append(parts, "the "+say.Plural(n, noun)+" "+say.And(names[noun]...))
		}
	}
	if len(parts) == 0 {
		return s.Title
	}
	return s.Title + ", showing " + say.And(parts...)
}

// named is what a thing is called, and its name; empty for what is not told.
func (t *Thing) named() (noun, name string) {
	arrow := t.Kind == Force || t.Kind == Couple || t.Kind == Load
	switch {
	case t.Kind <= Disc:
		return "body", t.Body
	case t.Kind.Member():
		return "member", t.Ref.Row
	case t.Kind == Support && t.Ref.Table == "joints":
		return "support", t.Ref.Row
	case arrow && t.Tone == drawing.Load:
		return "load", drawing.Plain(t.Label.Short)
	case arrow && t.Tone == drawing.Found:
		return "unknown", drawing.Plain(t.Label.Short)
	}
	return "", ""
}
