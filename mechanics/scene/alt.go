package scene

import (
	"slices"

	"trivet/mechanics/ink"
	"trivet/mechanics/say"
)

// Alt says in a sentence what a figure shows, for readers who do not see it.
func (s *Scene) Alt() string {
	force := func(t *Thing) bool { return t.Kind == Force || t.Kind == Couple || t.Kind == Load }
	groups := []struct {
		noun  string
		shows func(*Thing) bool
	}{
		{"body", func(t *Thing) bool { return t.Body != "" && t.Kind <= Disc }},
		{"member", func(t *Thing) bool { return t.Kind.Member() }},
		{"support", func(t *Thing) bool { return t.Kind == Support && t.Ref.Table == "joints" }},
		{"load", func(t *Thing) bool { return force(t) && t.Tone == ink.Load }},
		{"unknown", func(t *Thing) bool { return force(t) && t.Tone == ink.Found }},
	}
	const named = 6 // more are counted
	var parts []string
	for _, g := range groups {
		var names []string
		for i := range s.Things {
			t := &s.Things[i]
			if !g.shows(t) {
				continue
			}
			name := t.Ref.Row
			if t.Kind <= Disc {
				name = t.Body
			}
			if force(t) {
				name = ink.Plain(t.Label.Short)
			}
			if name != "" && !slices.Contains(names, name) {
				names = append(names, name)
			}
		}
		switch n := len(names); {
		case n > named:
			parts = append(parts, say.Count(n, g.noun))
		case n > 0:
			parts = append(parts, "the "+say.Plural(n, g.noun)+" "+say.And(names...))
		}
	}
	if len(parts) == 0 {
		return s.Title
	}
	return s.Title + ", showing " + say.And(parts...)
}
