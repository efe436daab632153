package statics

import (
	"encoding/json"
	"math"
	"strings"
	"testing"

	"trivet/fixtures"
	"trivet/mechanics/problem"
)

func allSheets() []fixtures.Sheet { return append(fixtures.Starts(), fixtures.Published()...) }

// lessons are the starting sheets that are about another verdict.
func lessons() map[string]string {
	return map[string]string{
		"camera-on-four-wires":  "indeterminate",
		"cable-that-would-push": "inadmissible",
		"lamp-pushed-sideways":  "no-equilibrium",
	}
}

// TestPublishedAnswersAreMet solves every sheet that comes with the program: all
// checks hold, and its answers are met to the precision written.
func TestPublishedAnswersAreMet(t *testing.T) {
	for _, f := range allSheets() {
		t.Run(f.Name, func(t *testing.T) {
			s := solveText(t, f.Answered())
			if len(s.Answers) == 0 {
				t.Error("no printed answers")
			}
			for _, a := range s.Answers {
				if !a.OK {
					t.Errorf("%s (%s)", a.Says(s.Problem), s.Problem.Source)
				}
			}
			if lesson, ok := lessons()[f.Name]; ok {
				if s.Verdict.String() != lesson {
					t.Errorf("verdict %v, and the sheet teaches %s", s.Verdict, lesson)
				}
				if s.Problem.Expect == "" {
					s.Problem.Expect = lesson
				}
			}
			if !s.Well() {
				t.Errorf("%s: not well: %s", s.Verdict, strings.Join(s.Failures(), "; "))
			}
		})
	}
}

// oracleAgreement is how far a result may be from NumPy's, relative to it or, for
// what comes to nothing, to the sheet's largest.
const oracleAgreement = 1e-9

type oracle struct {
	Cases  map[string]map[string]float64
	Ranges map[string]map[string][2]float64
}

// TestAgreesWithNumPy holds every result that NumPy found, from geometry typed
// in once more (fixtures/oracle/solve.py), against ours.
func TestAgreesWithNumPy(t *testing.T) {
	var o oracle
	if err := json.Unmarshal(fixtures.Oracle(), &o); err != nil {
		t.Fatal(err)
	}
	if len(o.Cases) < 40 {
		t.Errorf("%d cases", len(o.Cases))
	}
	results := 0
	for name, values := range o.Cases {
		f, ok := fixtures.Get(name)
		if !ok {
			t.Errorf("no sheet %s", name)
			continue
		}
		s := solveText(t, f.Answered())
		largest := 0.0
		for _, v := range values {
			largest = max(largest, math.Abs(v))
		}
		for result, want := range values {
			q, qerr := problem.ParseQuery(s.Problem, result)
			if qerr != nil {
				t.Errorf("%s: %s: %s", name, result, qerr.Msg)
				continue
			}
			got, err := s.Evaluate(q)
			if err != nil {
				t.Errorf("%s: %s: %v", name, result, err)
				continue
			}
			results++
			if math.Abs(got-want) > oracleAgreement*max(math.Abs(want), 1e-3*largest) {
				t.Errorf("%s: %s = %.17g, NumPy %.17g", name, result, got, want)
			}
		}
	}
	for name, ranges := range o.Ranges {
		f, ok := fixtures.Get(name)
		if !ok {
			t.Errorf("no sheet %s", name)
			continue
		}
		s := solveText(t, f.Answered())
		for _, x := range s.X {
			want, ok := ranges[x.Name]
			if !ok {
				t.Errorf("%s: NumPy has no range of %s", name, x.Name)
				continue
			}
			results++
			tol := oracleAgreement * s.scale()
			if math.Abs(x.Low-want[0]) > tol || math.Abs(x.High-want[1]) > tol {
				t.Errorf("%s: %s from %.17g to %.17g, NumPy %v", name, x.Name, x.Low, x.High, want)
			}
		}
	}
	t.Logf("%d results of %d sheets", results, len(o.Cases))
}
