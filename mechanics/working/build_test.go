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
	return Build(statics.Solve(read(t, f.Text)))
}

// The steps follow each other as a textbook takes them, and what has no single
// solution gets its verdict in place of values.
func TestStepsAreInOrder(t *testing.T) {
	for name, want := range map[string][]Kind{
		"boom-tip":              {CutFree, Forces, Position, Unit, Vector, Equations, Matrix, Route, Solve, Senses, Checks, Answers},
		"camera-on-four-wires":  {CutFree, Forces, Position, Unit, Vector, Equations, Matrix, Route, Verdict, Checks, Answers},
		"cable-that-would-push": {CutFree, Forces, Position, Unit, Vector, Equations, Matrix, Route, Solve, Senses, Verdict, Checks, Answers},
		"lamp-pushed-sideways":  {CutFree, Forces, Position, Unit, Vector, Equations, Matrix, Route, Verdict, Checks, Answers},
	} {
		if got := kinds(fixture(t, name)); !slices.Equal(got, want) {
			t.Errorf("%s: %v, want %v", name, got, want)
		}
	}
}

// A hand route stands behind the matrix and before the solution, or the verdict.
func TestRouteIsInserted(t *testing.T) {
	for name, after := range map[string]Kind{"boom-tip": Solve, "lamp-pushed-sideways": Verdict, "two-cables-at-roof-corner": Checks} {
		w := fixture(t, name)
		w.Steps = slices.DeleteFunc(w.Steps, func(s Step) bool { return s.Kind == Route })
		n := len(w.Steps)
		w.Insert([]Step{{Kind: Route, Title: "first"}, {Kind: Route, Title: "second"}})
		at := slices.IndexFunc(w.Steps, func(s Step) bool { return s.Kind == Route })
		if len(w.Steps) != n+2 || w.Steps[at+1].Title != "second" || w.Steps[at+2].Kind != after || w.Steps[at-1].Kind >= Route {
			t.Errorf("%s: the route is step %d, before one of kind %v", name, at, w.Steps[at+2].Kind)
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
	s := statics.Solve(read(b, f.Text))
	for b.Loop() {
		Build(s)
	}
}
