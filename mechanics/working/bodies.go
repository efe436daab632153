package working

import (
	"slices"
	"strings"
	"unicode"

	"trivet/mechanics/problem"
	english "trivet/mechanics/say"
)

// body names a body: joint B of a truss, particle P, the beam, the left part, body AB.
func (b *builder) body(i int) (noun string, article bool) {
	name := b.p.Bodies[i].Name
	switch {
	case b.p.Bodies[i].Particle && b.truss():
		return "joint " + name, false
	case b.p.Bodies[i].Particle:
		return "particle " + name, false
	case english.Side(name):
		return name + " part", true
	case strings.IndexFunc(name, func(r rune) bool { return !unicode.IsLower(r) }) < 0:
		return name, true
	}
	return "body " + name, false
}

func the(noun string, article bool) string {
	if article {
		return "the " + noun
	}
	return noun
}

// bodyWords is a body in a sentence.
func (b *builder) bodyWords(i int) string { return the(b.body(i)) }

// bodiesWords are several bodies in a sentence: joints A, B and C; the beam and the bar.
func (b *builder) bodiesWords(of []int) string {
	if len(of) == 1 || !b.particles() && len(of) <= tabledJoints {
		return english.And(english.Each(of, b.bodyWords)...)
	}
	list := english.AndMore(english.Each(of, func(i int) string { return b.p.Bodies[i].Name }), tabledJoints)
	switch {
	case b.truss():
		return "joints " + list
	case b.particles():
		return "particles " + list
	}
	return list
}

func (b *builder) bodyIndex(name string) int {
	return slices.IndexFunc(b.p.Bodies, func(x problem.Body) bool { return x.Name == name })
}

// truss tells that the bodies are joints of members that push as well as pull.
func (b *builder) truss() bool {
	return b.particles() &&
		slices.ContainsFunc(b.p.Lines, func(l problem.Line) bool { return l.Kind == problem.Link && l.Between() })
}
