package names_test

import (
	"fmt"
	"strings"
	"testing"

	"trivet/mechanics/names"
	"trivet/mechanics/problem"
)

// However much is unread, so many notes are made and no more.
func TestManyUnread(t *testing.T) {
	var text strings.Builder
	text.WriteString("[points]\n")
	for i := range 2000 {
		fmt.Fprintf(&text, "P%d = { at = \"%d, 0, 0\", colour = \"red\" }\n", i, i)
	}
	p, _ := names.Read(problem.NewReader(), parse(t, text.String()))
	if n := len(p.Unread); n != 100 {
		t.Errorf("%d notes", n)
	}
}

// The same sheet gives the same notes, whichever name of several alike is offered.
func TestNotesAreTheSame(t *testing.T) {
	const text = "plane = \"xy\"\n[given]\nWeight1a = \"1 N\"\nWeight1b = \"1 N\"\n[points]\nP = { at = \"0, 0\", on = \"particle\" }\nA = \"0, 3\"\n[lines]\nT = { kind = \"cable\", path = \"P A\" }\n" +
		"F = { kind = \"force\", at = \"P\", along = \"-y\", magnitude = \"Weight1c\" }\n"
	for range 20 {
		p, _ := names.Read(problem.NewReader(), parse(t, text))
		if got, want := p.Doubts[0].Text(), "Weight1c is a new unknown here, different from the given Weight1a. Try: Weight1a, if that is meant"; got != want {
			t.Fatalf("%s, want %s", got, want)
		}
	}
}
