package working

import (
	"slices"
	"strings"
	"testing"

	"trivet/fixtures"
	"trivet/mechanics/doc"
	"trivet/mechanics/statics"
)

func kinds(w *Working) (of []Kind) {
	for _, s := range w.Steps {
		if len(of) == 0 || of[len(of)-1] != s.Kind {
			of = append(of, s.Kind)
		}
	}
	return of
}

func fixture(t testing.TB, name string) *Working {
	t.Helper()
	f, ok := fixtures.Get(name)
	if !ok {
		t.Fatalf("no sheet %s", name)
	}
	return Build(statics.Solve(read(t, f.Answered())))
}

// The steps follow each other as a textbook takes them, and what has no single
// solution gets its verdict in place of values.
func TestStepsAreInOrder(t *testing.T) {
	for name, want := range map[string][]Kind{
		"boom-tip":              {CutFree, Equations, Forces, Position, Vector, Equations, HandStep, Senses, Checks, Answers},
		"camera-on-four-wires":  {CutFree, Equations, Forces, Position, Vector, Equations, Verdict, Checks, Answers},
		"cable-that-would-push": {CutFree, Equations, Forces, Position, Vector, Equations, HandStep, Senses, Verdict, Checks, Answers},
		"lamp-pushed-sideways":  {CutFree, Equations, Forces, Position, Vector, Equations, Verdict, Checks, Answers},
	} {
		if got := kinds(fixture(t, name)); !slices.Equal(got, want) {
			t.Errorf("%s: %v, want %v", name, got, want)
		}
	}
}

// The solution by hand stands behind the equations and before the solution of the rest, or the verdict.
func TestHandSolutionIsInPlace(t *testing.T) {
	for _, name := range []string{"boom-tip", "hatch-held-by-rope", "planar-truss"} {
		w := fixture(t, name)
		if len(w.HandSteps()) == 0 || w.Steps[w.handFrom-1].Kind >= HandStep || w.Steps[w.handTo-1].Kind != HandStep && w.Steps[w.handTo-1].Kind != Solve {
			t.Errorf("%s: steps %d to %d of %d", name, w.handFrom, w.handTo, len(w.Steps))
		}
	}
}

// Each step says something, in blocks that are whole.
func TestBlocksAreWhole(t *testing.T) {
	for name, text := range sheets(t) {
		for _, step := range Build(statics.Solve(read(t, text))).Steps {
			if step.Title == "" || len(step.Body) == 0 {
				t.Errorf("%s: an empty step %q", name, step.Title)
			}
			for _, b := range step.Body {
				var sentence []doc.Inline
				switch b := b.(type) {
				case *doc.Paragraph:
					sentence = b.Text
				case *doc.Check:
					sentence = b.Text
				case *doc.Table:
					for _, r := range b.Rows {
						if len(r) != len(b.Columns) {
							t.Errorf("%s, %s: %d cells under %d heads", name, step.Title, len(r), len(b.Columns))
						}
					}
				}
				if sentence == nil && len(doc.Formulas(b)) == 0 {
					t.Errorf("%s, %s: a block says nothing: %T", name, step.Title, b)
				}
				for _, part := range sentence {
					if (part.Words != "") == (part.Math != nil) || strings.Contains(part.Words, "%!") {
						t.Errorf("%s, %s: a piece %q of a sentence", name, step.Title, part.Words)
					}
				}
			}
		}
	}
}

func BenchmarkBuild(b *testing.B) {
	f, _ := fixtures.Get("boom-tip")
	s := statics.Solve(read(b, f.Answered()))
	for b.Loop() {
		Build(s)
	}
}
