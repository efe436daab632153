package scene_test

import (
	"testing"

	"trivet/fixtures"
	"trivet/mechanics/drawing"
	"trivet/mechanics/problem"
	"trivet/mechanics/scene"
	"trivet/mechanics/sheet"
	"trivet/mechanics/statics"
)

func read(t *testing.T, text string) *problem.Problem {
	t.Helper()
	s, err := sheet.Parse([]byte(text))
	if err != nil {
		t.Fatal(err)
	}
	p, errs := problem.Read(s)
	if len(errs) > 0 {
		t.Fatal(errs)
	}
	return p
}

// labels are those of a scene's things, by the rows that they stand for.
func labels(s scene.Scene) map[string]string {
	out := map[string]string{}
	for _, t := range s.Things {
		if t.Label.Runs != nil && t.Kind != scene.Name && t.Kind != scene.Support {
			out[t.Ref.Row] = drawing.Plain(t.Label.Runs) + t.Label.Mark
		}
	}
	return out
}

// A figure to be worked from says what is typed of a member: its tension, and of a spring
// the stiffness and the natural length.
func TestWhatIsTypedOfAMemberStandsInTheFigure(t *testing.T) {
	p := read(t, `plane = "xy"
up = "+y"
[points]
A = { at = "0 m, 0 m", on = "particle" }
B = { at = "2 m, 0 m" }
C = { at = "0 m, 2 m" }
D = { at = "-2 m, 0 m" }
[lines]
K = { kind = "spring", path = "A B", stiffness = "80 N/m", natural = "1.5 m" }
T = { kind = "cable", path = "A C", magnitude = "25 N" }
S = { kind = "cable", path = "A D" }
W = { kind = "force", at = "A", along = "-y" }
`)
	got := labels(scene.System(p, nil, scene.Options{Dimensions: true}))
	for name, want := range map[string]string{"K": "K, k = 80 N/m, l0 = 1.5 m", "T": "T = 25.0 N", "S": "S"} {
		if got[name] != want {
			t.Errorf("%s: %q, want %q", name, got[name], want)
		}
	}
	if got := labels(scene.System(p, statics.Solve(p), scene.Options{Reactions: true}))["T"]; got != "T(T)" {
		t.Errorf("with results it is %q", got)
	}
}

// What cannot be is marked: a cable in compression, friction beyond what its surface has.
func TestWhatCannotBeIsMarked(t *testing.T) {
	one, _ := fixtures.Get("cable-that-would-push")
	p := read(t, one.Answered())
	if got := labels(scene.System(p, statics.Solve(p), scene.Options{Reactions: true}))["T2"]; got != "T2(C) !" {
		t.Errorf("the cable in compression is %q", got)
	}
	p = read(t, `plane = "xy"
up = "+y"
[points]
A = { at = "0 m, 0 m", on = "particle" }
[joints]
A = { kind = "rough-surface", normal = "+y", friction = "0.25" }
[lines]
G = { kind = "weight", at = "A", magnitude = "100 N" }
P = { kind = "force", at = "A", along = "+x", magnitude = "40 N" }
`)
	for _, thing := range scene.Free(p, statics.Solve(p), 0).Things {
		if name := drawing.Plain(thing.Label.Short); thing.Kind == scene.Force && (thing.Label.Mark == "!") != (name == "AF") {
			t.Errorf("%s is marked %q", name, thing.Label.Mark)
		}
	}
}

// An arrow along a member lies on the other side of the joint; a weight, which points down
// from its point whatever lies there, beside the member.
func TestArrowsAlongMembers(t *testing.T) {
	p := read(t, `plane = "xy"
up = "+y"
[points]
A = { at = "0 m, 0 m", on = "particle" }
B = { at = "2 m, 0 m", on = "particle" }
C = { at = "2 m, -1 m", on = "particle" }
[joints]
A = { kind = "pin" }
C = { kind = "pin" }
[lines]
AB = { kind = "link", path = "A B" }
BC = { kind = "link", path = "B C" }
F = { kind = "force", at = "B", along = "-x", magnitude = "10 N" }
G = { kind = "weight", at = "B", magnitude = "10 N" }
`)
	for _, thing := range scene.System(p, statics.Solve(p), scene.Options{Reactions: true}).Things {
		if thing.Kind == scene.Force && (thing.Ref.Row == "F" && !thing.Head || thing.Ref.Row == "A" && thing.Head != (thing.Along.X > 0) || thing.Ref.Row == "G" && (thing.Head || thing.Aside == 0)) {
			t.Errorf("%s: head at the joint %v, %g aside", thing.Ref.Row, thing.Head, thing.Aside)
		}
	}
	one, _ := fixtures.Get("lifting-tongs")
	for _, thing := range scene.System(read(t, one.Answered()), nil, scene.Options{}).Things {
		if thing.Kind == scene.Support && thing.Ref.Row == "R" && thing.Along.Y > 0 {
			t.Error("the tongs hang from a pin whose ground is below it")
		}
	}
}
