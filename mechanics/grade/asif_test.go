package grade_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"trivet/fixtures"
	"trivet/mechanics/grade"
	"trivet/units"
)

// A mutant's answers are named as that mutant's, on every sheet where they differ
// from the right ones in two numbers at least and no other mutant has them.
func TestMutantsAreNamed(t *testing.T) {
	named, several, slips := 0, 0, 0
	for _, start := range fixtures.Starts() {
		key, s := keyOf(t, start.Answered(), grade.Rule{})
		says, plain, value := key.Mutants()
		of := map[string]int{} // how many mutants have the same answers, plain ones apart
		id := func(i int) string {
			id := fmt.Sprint(plain[i])
			for _, name := range key.Asked() {
				v, _ := value(i, name)
				id += " " + units.Figures(v, 3)
			}
			return id
		}
		for i := range says {
			of[id(i)]++
		}
		for i := range says {
			if of[id(i)] > 1 || !plain[i] && of["true"+strings.TrimPrefix(id(i), "false")] > 0 || len(says[i]) > 2 {
				continue // numbers alone cannot tell
			}
			var typed []grade.Typed
			changed := map[string]bool{}
			for _, name := range key.Asked() {
				q, _ := key.Query(name)
				v, ok := value(i, name)
				if !ok {
					continue
				}
				text := s.Problem.Units.For(q.Dim).Format(v, 5)
				typed = append(typed, grade.Typed{Name: name, Text: text})
			}
			marks, notes := key.Mark(typed)
			all := strings.Join(notes, " ")
			for _, m := range marks {
				all += " " + m.Says
				if m.Verdict != grade.Right && m.Verdict != grade.Unit && !strings.HasPrefix(m.Typed, "0") {
					changed[strings.TrimPrefix(m.Typed, "-")] = true
				}
			}
			if len(changed) < 2 {
				continue
			}
			switch own := strings.Join(says[i], ", or "); {
			case strings.Contains(all, "as if "+own), strings.Contains(all, "as if "+strings.Replace(own, "a thousandth", "left out", 1)): // to three figures
				named++
			case strings.Contains(all, "as if "):
				t.Errorf("%s: as if %s is taken for%s", start.Name, own, all)
			case slices.ContainsFunc(marks, func(m grade.Mark) bool { return m.Verdict == grade.AsIf }) && !plain[i]:
				slips++ // a mistake in one equation that comes to the same
			default:
				several++
				t.Logf("%s: as if %s is not named: %v", start.Name, own, marks)
			}
		}
	}
	t.Logf("%d named, %d as a mistake in one equation, %d not", named, slips, several)
	if named < 5*several {
		t.Errorf("%d mutants are named, and %d are not", named, several)
	}
}

// maxFalse is the greatest share of made-up numbers of which something more than
// "wrong" or "close" is said.
const maxFalse = 0.01

// Made-up numbers seldom have a mistake named: the rate is measured on a sample of
// every sheet, three figures evenly spread by their logarithm over a decade on both
// sides of the right value.
func TestFalseClaims(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	count := map[grade.Verdict]int{}
	single := map[grade.Verdict]int{}
	students, claimed, total, alone, named := 0, 0, 0, 0, 0
	for _, start := range fixtures.Starts() {
		key, s := keyOf(t, start.Answered(), grade.Rule{})
		for range 60 {
			var typed []grade.Typed
			for _, name := range key.Asked() {
				q, _ := key.Query(name)
				v, err := s.Evaluate(q)
				if err != nil || v == 0 {
					continue
				}
				x := v * math.Pow(10, 2*r.Float64()-1)
				typed = append(typed, grade.Typed{Name: name, Text: units.Figures(s.Problem.Units.For(q.Dim).In(x), 3)})
			}
			if len(typed) == 0 {
				continue
			}
			marks, notes := key.Mark(typed)
			students++
			said := len(notes) > 0
			for _, m := range marks {
				count[m.Verdict]++
				total++
				if m.Verdict == grade.AsIf || strings.Contains(m.Says, "as if") {
					said = true
				}
			}
			if said {
				claimed++
			}
			// one of them made up and all others right is the least to go by
			i := r.IntN(len(typed))
			for j := range typed {
				if q, _ := key.Query(typed[j].Name); j != i {
					v, _ := s.Evaluate(q)
					typed[j].Text = s.Problem.Units.For(q.Dim).Format(v, 4)
				}
			}
			marks, _ = key.Mark(typed)
			alone++
			if v := marks[i].Verdict; v.OK() || v == grade.Wrong || v == grade.Close {
				continue
			}
			named++
			single[marks[i].Verdict]++
		}
	}
	t.Logf("%v of %d made-up numbers among right ones a mistake is named of %.2f %%", single, alone, 100*float64(named)/float64(alone))
	if rate := float64(named) / float64(alone); rate > maxFalse {
		t.Errorf("a mistake is named in %.1f %% of single made-up numbers, more than %.1f %%", 100*rate, 100*maxFalse)
	}
	wrongly := 0
	says := ""
	for v := grade.Right; v <= grade.NoValue; v++ {
		says += fmt.Sprintf("; %s %.2f %%", v, 100*float64(count[v])/float64(total))
		if v == grade.Unit || v == grade.Another || v == grade.Slipped || v == grade.AsIf || v == grade.Follows || v == grade.Sign {
			wrongly += count[v]
		}
	}
	t.Logf("%d answers of %d students; as if of %.2f %% of the students%s", total, students, 100*float64(claimed)/float64(students), says)
	if rate := float64(wrongly) / float64(total); rate > maxFalse {
		t.Errorf("a mistake is named in %.1f %% of made-up numbers, more than %.1f %%", 100*rate, 100*maxFalse)
	}
}

// What is said of several answers together.
func TestSeveralAnswers(t *testing.T) {
	for _, c := range []struct{ sheet, typed, want string }{
		{"block-on-incline", "T 169.9 N 98.1", "T, N: as if sine and cosine of theta were exchanged"},
		{"block-on-incline", "T 10 N 17.3", "T, N: factor g missing: a mass taken for a force, as if 20 kg were 20 N"},
		{"block-on-incline", "T 100 N 173.2", "T, N: as if g were 10 m/s^2"},
		{"block-on-incline", "T 98.1 N 98.1", "N: that is the value of T"},
		{"beam-on-supports", "Ax -300 Ay 550 B 450", "Ay: follows from your B; B: ΣFx and ΣFy on the beam hold with these values, ΣM about A is off by 300 N m"},
		{"beam-on-supports", "Ax -300 B 450 Ay 550", "B: ΣFx and ΣFy on the beam hold with these values, ΣM about A is off by 300 N m; Ay: follows from your B"},
		{"beam-on-supports", "Ax -300 B 450 Ay 560", "B, Ay: wrong"},
		{"beam-on-supports", "Ax 300 Ay 600 B 400", "Ax: sign reversed"},
		{"beam-on-supports", "Ax -400 Ay 525 B 375", "Ax, Ay, B: as if sine and cosine of P were exchanged"},
		{"beam-on-supports", "Ax 0 Ay 300 B 300", "Ax, Ay, B: as if P were left out"},
		{"beam-on-supports", "Ax 0 Ay 700 B 300", "Ax: ΣFy on the beam holds with these values, ΣFx is off by 300 N; Ay, B: as if P acted at A"},
		{"beam-on-supports", "Ax -300 Ay 600 B 500", "B: that is the value of P"},
		{"mast-top", "T1 1.75 T2 2.275 T3 2.275", "T1, T2, T3: as if wire were left out"},
		{"mast-top", "T1 1.00 T2 1.30 T3 2.60", "T1: wrong; T2: exchanged with T3; T3: exchanged with T2"},
		{"boat-on-a-bollard", "T1 80 T2 1352 R.size 9", "T1, R.size: wrong; T2: follows from your T1"},
		{"boat-on-a-bollard", "T1 20282 T2 1200 R.size 21482", "T1, R.size: as if the tight and the slack side of belt T were exchanged"},
		{"boat-on-a-bollard", "T1 1200 T2 1200 R.size 2400", "T1, R.size: as if the drum of belt T had no friction"},
		{"planar-truss", "AB 2 BC 2 CD 2 AE 2", "AB, BC, CD, AE: wrong"},
		{"hanging-load", "TA -90 TB -180 TC -250", "TA, TB, TC: sign reversed; TA, TB, TC: as if load acted the other way"},
	} {
		key, _ := keyOf(t, start(t, c.sheet), grade.Rule{})
		w := strings.Fields(c.typed)
		marks, notes := key.Mark(answers(w...))
		if got := strings.Join(grade.Student{Marks: marks, Notes: notes}.Remarks(), "; "); got != c.want {
			t.Errorf("%s %s:\n%s\nwant\n%s", c.sheet, c.typed, got, c.want)
		}
	}
}
