package statics_test

import (
	"math"
	"testing"

	"trivet/mechanics/problem"
	"trivet/mechanics/sheet"
	"trivet/mechanics/statics"
)

// A force found by its components has a direction. Closed form: 300 N to the left and
// 400 N down are held by (300, 400) N, at atan2(4, 3).
func TestDirectionOfAForceFound(t *testing.T) {
	read := func(left, down string) *statics.Solution {
		s, err := sheet.Parse([]byte("plane = \"xy\"\n[points]\nP = { at = \"0, 0\", on = \"particle\" }\n[lines]\n" +
			"T = { kind = \"force\", at = \"P\", along = \"-x\", magnitude = \"" + left + "\" }\n" +
			"V = { kind = \"force\", at = \"P\", along = \"-y\", magnitude = \"" + down + "\" }\n" +
			"F = { kind = \"force\", at = \"P\", components = \"(?, ?) N\" }\n"))
		if err != nil {
			t.Fatal(err)
		}
		p, errs := problem.Read(s)
		if len(errs) > 0 {
			t.Fatal(errs)
		}
		return statics.Solve(p)
	}
	s := read("300 N", "400 N")
	for name, want := range map[string]float64{
		"F.ux": 0.6, "F.uy": 0.8, "F.size": 500, "Fx": 300, "F.angle": math.Atan2(4, 3), "angle(F, T)": math.Pi - math.Atan2(4, 3),
		"angle(V, F)": math.Pi/2 + math.Atan2(4, 3), "component(F, T)": -300, "component(V, F)": -320, "|V.y|": 400, "abs(F_x)": 300, "V.y": -400,
	} {
		q, err := problem.ParseQuery(s.Problem, name)
		if err != nil {
			t.Fatal(err)
		}
		if v, err := s.Evaluate(q); err != nil || math.Abs(v-want) > 1e-12*math.Abs(want) {
			t.Errorf("%s = %v, %v, want %v", name, v, err, want)
		}
	}
	s = read("0 N", "0 N")
	for _, name := range []string{"F.ux", "angle(F, T)", "component(T, F)"} {
		q, _ := problem.ParseQuery(s.Problem, name)
		if _, err := s.Evaluate(q); err == nil || err.Error() != "F is zero and has no direction" {
			t.Errorf("%s of nothing: %v", name, err)
		}
	}
}

// So has the reaction of a joint, on its first body. Closed form: a pin against (300, -400) N
// at it pushes with (-300, 400) N.
func TestDirectionOfAReaction(t *testing.T) {
	solve := func(force string) *statics.Solution {
		s, err := sheet.Parse([]byte("plane = \"xy\"\n[points]\nA = { at = \"0, 0\", on = \"beam\" }\nB = { at = \"2, 0\", on = \"beam\" }\n[joints]\nA = { kind = \"pin\" }\nB = { kind = \"roller\", normal = \"+y\" }\n" +
			"[lines]\nF = { kind = \"force\", at = \"A\", components = \"" + force + "\" }\n"))
		if err != nil {
			t.Fatal(err)
		}
		p, errs := problem.Read(s)
		if len(errs) > 0 {
			t.Fatal(errs)
		}
		return statics.Solve(p)
	}
	s := solve("(300, -400) N")
	for name, want := range map[string]float64{
		"A.ux": -0.6, "A.uy": 0.8, "angle(A, F)": math.Pi, "angle(F, A)": math.Pi, "component(A, F)": -500, "component(F, A)": -500, "angle(A, A)": 0,
	} {
		q, err := problem.ParseQuery(s.Problem, name)
		if err != nil {
			t.Fatal(err)
		}
		if v, err := s.Evaluate(q); err != nil || math.Abs(v-want) > 1e-9*max(1, math.Abs(want)) {
			t.Errorf("%s = %v, %v, want %v", name, v, err, want)
		}
	}
	for name, want := range map[string]string{"B.ux": "B is zero and has no direction", "angle(F, B)": "B is zero and has no direction"} {
		q, err := problem.ParseQuery(s.Problem, name)
		if err != nil {
			t.Fatal(err)
		}
		if _, err := s.Evaluate(q); err == nil || err.Error() != want {
			t.Errorf("%s: %v, want %s", name, err, want)
		}
	}
	for name, want := range map[string]string{
		"A.uz":        "there is no z in the plane. Try: A.ux or A.uy",
		"angle(A, C)": `there is no line or joint "C". Try: the name of a line or a joint`,
	} {
		if _, err := problem.ParseQuery(s.Problem, name); err == nil || err.Error() != want {
			t.Errorf("%s: %v, want %s", name, err, want)
		}
	}
}
