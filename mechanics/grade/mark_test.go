package grade_test

import (
	"math"
	"strings"
	"testing"

	"trivet/fixtures"
	"trivet/mechanics/grade"
	"trivet/mechanics/problem"
	"trivet/mechanics/sheet"
	"trivet/mechanics/statics"
	"trivet/units"
)

// keyOf solves a text.
func keyOf(t testing.TB, text string, rule grade.Rule) (*grade.Key, *statics.Solution) {
	t.Helper()
	s, err := sheet.Parse([]byte(text))
	if err != nil {
		t.Fatal(err)
	}
	p, errs := problem.Read(s)
	if len(errs) > 0 {
		t.Fatal(errs)
	}
	solution := statics.Solve(p)
	return grade.NewKey(s, solution, rule), solution
}

func start(t testing.TB, name string) string {
	t.Helper()
	s, ok := fixtures.Get(name)
	if !ok {
		t.Fatalf("there is no sheet %s", name)
	}
	return s.Answered()
}

// answers are pairs of name and text.
func answers(pairs ...string) (out []grade.Typed) {
	for i := 0; i < len(pairs); i += 2 {
		out = append(out, grade.Typed{Name: pairs[i], Text: pairs[i+1]})
	}
	return out
}

// What is said of one answer to the mast: T1 = 2.5, T2 = 2.6, T3 = 1.3 kN, or to a
// sheet of another kind.
func TestOneAnswer(t *testing.T) {
	for _, c := range []struct{ sheet, name, text, want string }{
		{"mast-top", "T1", "2.50 kN", "right"},
		{"mast-top", "T1", "2.5", "right"}, // a spreadsheet drops the zero
		{"mast-top", "T1", "2500 N", "right"},
		{"mast-top", "T1", "2501 N", "right"}, // to three figures
		{"mast-top", "T1", "2.5004e3 N", "right"},
		{"mast-top", "T1", "562 lbf", "right"},
		{"mast-top", "T1", "+2.5 kN T", "right"},
		{"mast-top", "T1", "2.5 kN tension", "right"},
		{"mast-top", "T1", "2.5 kN (T)", "right"},
		{"mast-top", "T1", "5/2", "right"},
		{"mast-top", "T1", "2.6 kN C", "wrong"},
		{"mast-top", "T1", "", "missing"},
		{"mast-top", "T1", "  ", "missing"},
		{"mast-top", "T1", "?", "unreadable: a number is missing. Try: a number, with its unit if it is not that of the sheet"},
		{"mast-top", "T1", "T", "unreadable: a number is missing. Try: a number, with its unit if it is not that of the sheet"},
		{"mast-top", "T1", "2,5", "unreadable: expected one value, but 2,5 is two. Try: 2.5"},
		{"mast-top", "T1", "2,500 N", "right"},
		{"mast-top", "T1", "2,500 N (T)", "right"},
		{"mast-top", "T1", "2,500", "unreadable: 2,500 can be read two ways. Try: 2500 or 2.500"},
		{"mast-top", "T1", "2.5 T", "right"}, // its unit stands in the head of the column
		{"mast-top", "mast", "5.6 kN C", "right"},
		{"mast-top", "mast", "5.6 kN (T)", "sign reversed: it is not tension"},
		{"mast-top", "T1", "2*1.25 kN", "right"},
		{"mast-top", "T1", "2*1.26 kN", "close, perhaps rounded on the way"},
		{"mast-top", "T1", "255 kg*g", "right"},
		{"mast-top", "|T1|", "2.5 kN", "right"},
		{"mast-top", "|T1|", "2.5 kN T", "unreadable: a magnitude has no tension or compression. Try: the value alone"},
		{"mast-top", "T_1", "2.5 kN", "right"},
		{"mast-top", "T1", "-2.5 kN T", "unreadable: the value has both a minus sign and the word tension. Try: only one of them"},
		{"mast-top", "T1", "2.5 kN push", "unreadable: the sense of a cable that pushes is compression. Try: C or compression instead of push"},
		{"mast-top", "T1", "-2.5", "sign reversed"},
		{"mast-top", "T1", "2.5 kN C", "sign reversed: it is not compression"},
		{"mast-top", "T1", "-2.5 kN C", "sign reversed: it is not compression"},
		{"mast-top", "T1", "2500", "wrong unit: the number is right in N"},
		{"mast-top", "T1", "562", "wrong unit: the number is right in lbf"},
		{"mast-top", "T1", "0.255", "factor g missing: a mass taken for a force"},
		{"mast-top", "T1", "24.5", "wrong"}, // there is no weight on the sheet
		{"block-on-incline", "T", "962", "factor g too many: a force taken for a mass"},
		{"mast-top", "T1", "255 kg", "wrong unit: a mass taken for a force"},
		{"mast-top", "T1", "2.5 m", "wrong unit: the number is right in kN"},
		{"mast-top", "T1", "7 m", "wrong unit: expected a force, but this is a length"},
		{"mast-top", "T1", "2.60", "that is the value of T2"},
		{"mast-top", "T1", "1.50", "that is the value of T1.x"},
		{"mast-top", "T1", "5.60", "that is the value of mast"},
		{"mast-top", "T1", "2.54", "close, perhaps rounded on the way"},
		{"mast-top", "T1", "2.9", "wrong"},
		{"mast-top", "T1", "0", "wrong"},
		{"mast-top", "T9", "1", `there is no result "T9". Try: T1`},
		{"mast-top", "T1.alpha", "53.1", "right"},
		{"mast-top", "T1.alpha", "36.87", "the complement, 90 deg less the angle"},
		{"mast-top", "T1.alpha", "126.9", "the supplement, 180 deg less the angle"},
		{"mast-top", "T1.alpha", "0.927", "wrong unit: the number is right in rad"},
		{"balloon", "TA", "0", "wrong"},
		{"block-on-incline", "N", "170", "right"}, // 169.914
		{"block-on-incline", "N", "169.914", "right"},
		{"block-on-incline", "T", "98", "right, too few figures"},                // 98.1
		{"block-on-incline", "T", "0.1 kN", "close, perhaps rounded on the way"}, // one figure is no answer
		{"block-on-incline", "N", "169.914 N push", "right"},
		{"beam-on-supports", "Ay", "600 N T", "unreadable: Ay is a reaction, which has no tension or compression. Try: the value with its sign"},
		{"mast-top", "T1.y", "0", "right"},
		{"mast-top", "T1.y", "0.004", "right"}, // nothing, beside 5.6 kN
		{"mast-top", "T1.y", "0.1", "wrong"},
		{"lamp-pushed-sideways", "T1", "100", "T1 has no single value"},
	} {
		key, _ := keyOf(t, start(t, c.sheet), grade.Rule{})
		marks, notes := key.Mark(answers(c.name, c.text))
		if marks[0].Says != c.want || len(notes) > 0 {
			t.Errorf("%s %s = %q: %q %q, want %q", c.sheet, c.name, c.text, marks[0].Says, notes, c.want)
		}
	}
}

func TestWithin(t *testing.T) {
	key, _ := keyOf(t, start(t, "mast-top"), grade.Rule{Within: 0.01})
	for text, want := range map[string]string{"2.52": "right", "2.47": "close, perhaps rounded on the way", "-2.52": "sign reversed", "2.475": "right"} {
		if marks, _ := key.Mark(answers("T1", text)); marks[0].Says != want {
			t.Errorf("%s: %s, want %s", text, marks[0].Says, want)
		}
	}
}

func TestExchanged(t *testing.T) {
	key, _ := keyOf(t, start(t, "mast-top"), grade.Rule{})
	marks, _ := key.Mark(answers("T1", "2.6", "T2", "2.5", "T3", "1.3"))
	if marks[0].Says != "exchanged with T2" || marks[1].Says != "exchanged with T1" || marks[2].Verdict != grade.Right {
		t.Errorf("%+v", marks)
	}
}

// The right answers of every sheet are right, in whatever unit and to however many
// figures from three on, whatever else is asked.
func TestTheRightAnswersAreRight(t *testing.T) {
	for _, start := range append(fixtures.Starts(), fixtures.Published()...) {
		key, s := keyOf(t, start.Answered(), grade.Rule{})
		p := s.Problem
		for _, name := range key.Asked() {
			q, err := key.Query(name)
			if err != nil {
				t.Fatal(err)
			}
			v, none := s.Evaluate(q)
			for _, u := range append(p.Units.Choices(q.Dim), p.Units.For(q.Dim)) {
				for figures := 3; figures <= 8; figures++ {
					text := u.Format(v, figures)
					marks, notes := key.Mark(answers(name, text))
					want := grade.Right
					if none != nil {
						want = grade.NoValue
					}
					if marks[0].Verdict != want || len(notes) > 0 {
						t.Errorf("%s: %s = %s: %+v %q", start.Name, name, text, marks[0], notes)
					}
				}
			}
		}
	}
}

// Whatever is typed has a verdict in words.
func FuzzAnswer(f *testing.F) {
	for _, seed := range []string{"2.5 kN C", "1e400", "sqrt(-1)", "3 ft 6 in", "5 ± 1", "(1, 2)", "1/0", "T", "-", "°", "2,5", "1.2.3", "=1+1",
		"2,500 N (T)", "2.5 kN tension", "(C)", "2*761 N", "5 (t)", "1,2,3 C", "2*0 N", "0*761 N"} {
		f.Add(seed)
	}
	s, _ := fixtures.Get("mast-top")
	key, _ := keyOf(f, s.Answered(), grade.Rule{})
	f.Fuzz(func(t *testing.T, text string) {
		marks, _ := key.Mark(answers("T1", text, "T2", text, "T1.alpha", text))
		for _, m := range marks {
			if m.Says == "" || m.Verdict.String() == "" || m.Verdict.Short() == "" || strings.Contains(m.Says, "NaN") && !strings.Contains(text, "NaN") {
				t.Errorf("%q: %+v", text, m)
			}
		}
	})
}

// A comma is a decimal point where semicolons part the cells.
func TestComma(t *testing.T) {
	key, _ := keyOf(t, start(t, "mast-top"), grade.Rule{})
	for text, want := range map[string]string{
		"2,50": "right", "2,50 kN": "right", "-2,5": "sign reversed", "2.5": "right",
		"2.500,0 N": `unreadable: "2.500,0 N" contains a comma. Try: a point before the decimals, and nothing between thousands`,
	} {
		marks, _ := key.Mark([]grade.Typed{{Name: "T1", Text: text, Comma: true}})
		if marks[0].Says != want {
			t.Errorf("%s: %s, want %s", text, marks[0].Says, want)
		}
	}
	lbf, _ := units.Find("lbf")
	marks, _ := key.Mark([]grade.Typed{{Name: "T1", Text: "562", Bare: lbf}, {Name: "T2", Text: "2.6 kN", Bare: lbf}})
	if marks[0].Verdict != grade.Right || marks[1].Verdict != grade.Right {
		t.Errorf("%+v", marks)
	}
	if math.Abs(lbf.Factor-4.448) > 0.01 {
		t.Error(lbf)
	}
}
