package variant

import (
	"errors"
	"math"
	"strings"
	"testing"

	"trivet/fixtures"
	"trivet/fixtures/solved"
	"trivet/mechanics/sheet"
)

func sourceOf(t *testing.T, text string) *Source {
	t.Helper()
	src, err := NewSource(solved.Sheet(t, text))
	if err != nil {
		t.Fatal(err)
	}
	return src
}

// ranged are the embedded sheets that have ranges.
func ranged() (out []fixtures.Sheet) {
	for _, s := range append(fixtures.Starts(), fixtures.Published()...) {
		if strings.Contains(s.Answered(), "range = ") {
			out = append(out, s)
		}
	}
	return out
}

// Every variant of every sheet that comes with the program reads, solves, has
// values of the grid within the ranges, the verdict of the sheet and what it holds;
// all differ, the ranges and all that is not varied stay, and the same seed gives
// the same bytes.
func TestVariants(t *testing.T) {
	sheets := ranged()
	if len(sheets) < 30 {
		t.Fatalf("only %d sheets have ranges", len(sheets))
	}
	for _, f := range sheets {
		t.Run(f.Name, func(t *testing.T) {
			t.Parallel()
			src := sourceOf(t, f.Text)
			want := min(4, src.Combinations())
			drawn, err := src.Draw(Seeded(1), want)
			var few *TooFew
			if errors.As(err, &few) {
				if len(few.Reasons()) == 0 || len(drawn) != few.Found {
					t.Errorf("%v, without a reason", err)
				}
			}
			again, _ := sourceOf(t, f.Text).Draw(Seeded(1), want)
			texts := map[string]bool{src.Sheet.Text(): true}
			for i, v := range drawn {
				v, err := src.Finish(v, "variant 01")
				if err != nil {
					t.Fatal(err)
				}
				if w, err := src.Finish(again[i], "variant 01"); err != nil || w.Sheet.Text() != v.Sheet.Text() {
					t.Errorf("the same seed gives another sheet: %v", err)
				}
				if texts[v.Sheet.Text()] {
					t.Error("two variants are the same")
				}
				texts[v.Sheet.Text()] = true
				src.holds(t, v)
			}
		})
	}
}

// holds looks at a variant with a fresh reading of its text.
func (src *Source) holds(t *testing.T, v Variant) {
	t.Helper()
	_, now := solved.Sheet(t, v.Sheet.Text())
	if says := strays(src.Solution, now); len(says) > 0 {
		t.Errorf("another kind: %v", says)
	}
	if now.Verdict != src.Solution.Verdict || len(now.Answers) > 0 || now.Problem.Source != "" || !strings.HasSuffix(now.Problem.Title, ", variant 01") {
		t.Errorf("verdict %v, %d answers, title %q", now.Verdict, len(now.Answers), now.Problem.Title)
	}
	if f := now.Failures(); len(f) > 0 && src.Solution.Well() {
		t.Errorf("not well: %v", f)
	}
	for i, g := range src.Grids {
		got := now.Problem.GivenNamed(g.Name)
		was := src.Solution.Problem.GivenNamed(g.Name)
		if x := got.Value.V[0]; x < was.Low-1e-9*math.Abs(was.Low) || x > was.High+1e-9*math.Abs(was.High) || !same(x, g.SI(v.At[i])) {
			t.Errorf("%s = %v, not within %v .. %v", g.Name, x, was.Low, was.High)
		} else if n := (x - was.Low) / was.Step; was.Step > 0 && math.Abs(n-math.Round(n)) > 1e-6 {
			t.Errorf("%s = %v is %v steps from the low end", g.Name, x, n)
		}
		if got.Low != was.Low || got.High != was.High || got.Step != was.Step {
			t.Errorf("the range of %s has become another", g.Name)
		}
	}
	kept := func(s *sheet.Sheet) string { // all but what may change
		text := s.Text()
		for _, g := range src.Grids {
			c, _ := s.Cell(g.Ref)
			text = strings.Replace(text, `"`+c.Text+`"`, `"?"`, 1)
		}
		if i := strings.Index(text, "[units]"); i >= 0 {
			text = text[i:]
		}
		return text
	}
	before, after := kept(src.Sheet), kept(v.Sheet)
	if !strings.HasPrefix(before, strings.TrimSpace(after)) {
		t.Errorf("more has changed than values:\n%s\nwas\n%s", after, before)
	}
}

const pair = `title = "Crate"
statement = "A crate of 400 lb, 12 ft down."
[units]
force = "lbf"
length = "ft"
[given]
W = { value = "400 lb", range = "300 lb .. 500 lb", step = "50 lb" } # the load
h = { value = 12, range = "9 .. 16" }
[points]
P = { at = "0 ft, 0 ft, 0 ft", on = "particle" }
A = "3*h*1 ft, 0 ft, 24 ft"
B = "-3*h*1 ft, 3 ft, 24 ft"
C = "0 ft, -6 ft, 24 ft"
[lines]
T1 = { kind = "cable", path = "P A", limit = "700 lb" }
T2 = { kind = "cable", path = "P B" }
T3 = { kind = "cable", path = "P C" }
F  = { kind = "force", at = "P", along = "-z", magnitude = "W" }
`

const pulled = "[lines]\nU = { kind = \"force\", at = \"P\", along = \"+x\" }\n"

// A grid is in the unit that is typed, in short numbers.
func TestGrids(t *testing.T) {
	for _, c := range []struct{ row, first, second, last string }{
		{`{ value = "400 lbf", range = "300 lbf .. 500 lbf", step = "50 lbf" }`, "300 lbf", "350 lbf", "500 lbf"},
		{`{ value = "400 lb", range = "300 .. 500 lb", step = "50 lb" }`, "300 lb", "350 lb", "500 lb"},
		{`{ value = "1 kN", range = "400 N .. 2 kN", step = "400 N" }`, "0.4 kN", "0.8 kN", "2 kN"},
		{`{ value = "300 N", range = "300 N .. 500 N" }`, "300 N", "301 N", "500 N"},
		{`{ value = "12 m", range = "9 m .. 16 m" }`, "9 m", "9.1 m", "16 m"},
		{`{ value = "0.4", range = "0.2 .. 0.6" }`, "0.2", "0.21", "0.6"},
		{`{ value = "1/2", range = "0.1 .. 1", step = "0.1" }`, "0.1", "0.2", "1"},
		{`{ value = "1/2 in", range = "1/4 in .. 1 in", step = "1/8 in" }`, "0.25 in", "0.375 in", "1 in"},
		{`{ value = "6 m ± 2 cm", range = "5 m .. 7 m", step = "0.5 m" }`, "5 m ± 2 cm", "5.5 m ± 2 cm", "7 m ± 2 cm"},
		{`{ value = "30°", range = "10° .. 60°", step = "10°" }`, "10°", "20°", "60°"},
		{`{ value = "2 kN/m", range = "2 .. 4 kN/m", step = "0.5 kN/m" }`, "2 kN/m", "2.5 kN/m", "4 kN/m"},
		{`{ value = "2*k", range = "k .. 3*k", step = "k/2" }`, "2 N", "3 N", "6 N"},
		{`{ value = "1000 N", range = "0.1 .. 1", step = "0.3" }`, "0.1 N", "0.4 N", "1 N"},
	} {
		s, sol := solved.Sheet(t, "[given]\nk = \"2 N\"\nW = "+c.row+"\n[points]\nP = { at = \"0,0,0\", on = \"particle\" }\n"+pulled)
		grids := Grids(s, sol.Problem)
		if len(grids) != 1 {
			t.Errorf("%s: %d grids", c.row, len(grids))
			continue
		}
		g := grids[0]
		if got := [3]string{g.Text(0), g.Text(1), g.Text(g.Count - 1)}; got != [3]string{c.first, c.second, c.last} {
			t.Errorf("%s: %q", c.row, got)
		}
	}
}

// What the words of a sheet say of a varied value follows it, in their unit, unless
// they may mean something else.
func TestWordsFollow(t *testing.T) {
	for _, c := range []struct {
		statement, row, other string
		want                  string
		task                  Task
	}{
		{"A load of 400 N.", `"400 N", range = "300 N .. 301 N", step = "100 N"`, "", "A load of 300 N.", Task{"W", "400 N", 1, ""}},
		{"A load of 0.4 kN, and again (0.4 kN).", `"400 N", range = "300 N .. 301 N", step = "100 N"`, "", "A load of 0.3 kN, and again (0.3 kN).", Task{"W", "0.4 kN", 2, ""}},
		{"A rope of 400 newtons.", `"400 N", range = "300 N .. 301 N", step = "100 N"`, "", "A rope of 300 newtons.", Task{"W", "400 newtons", 1, ""}},
		{"A 12-m mast, 12 m/s, 112 m, 12 m2.", `"12 m", range = "9 m .. 9.1 m", step = "1 m"`, "", "A 9-m mast, 12 m/s, 112 m, 12 m2.", Task{"W", "12-m", 1, ""}},
		{"An incline of 30 degrees.", `"30 deg", range = "10 deg .. 11 deg", step = "10 deg"`, "", "An incline of 10 degrees.", Task{"W", "30 degrees", 1, ""}},
		{"The coefficient is 0.3, not 10.3.", `"0.3", range = "0.2 .. 0.21", step = "0.1"`, "", "The coefficient is 0.2, not 10.3.", Task{"W", "0.3", 1, ""}},
		{"A moment of 50 N m on it.", `"50 N", range = "30 N .. 31 N", step = "10 N"`, "", "A moment of 50 N m on it.", Task{"W", "50 N", 0, ""}},
		{"It weighs 1,200 N.", `"1,200 N", range = "1,100 N .. 1,200 N", step = "100 N"`, "", "It weighs 1100 N.", Task{"W", "1,200 N", 1, ""}},
		{"It weighs 12,300 N.", `"300 N", range = "200 N .. 201 N", step = "10 N"`, "", "It weighs 12,300 N.", Task{"W", "300 N", 0, ""}},
		{"It weighs 12 300 N.", `"300 N", range = "200 N .. 201 N", step = "10 N"`, "", "It weighs 12 300 N.", Task{"W", "300 N", 0, ""}},
		{"A plate of 3 m.", `"3 m", range = "1 m .. 1.1 m", step = "1 m"`, "A = \"3, 0, 0\"\n", "A plate of 3 m.", Task{"W", "3 m", 0, "points.A"}},
		{"A push of 3 N.", `"3 N", range = "1 N .. 1.1 N", step = "1 N"`, "A = \"3, 0, 0\"\n", "A push of 1 N.", Task{"W", "3 N", 1, ""}},
		{"Half way; the coefficient is 0.5.", `"1/2", range = "0.1 .. 0.11", step = "0.1"`, "", "Half way; the coefficient is 0.5.", Task{"W", "1/2", 0, ""}},
		{"A load of 400 N.", `"400 N ± 5 N", range = "300 N .. 301 N", step = "100 N"`, "", "A load of 300 N.", Task{"W", "400 N", 1, ""}},
		{"A load.", `"400 N +- 5 N", range = "300 N .. 301 N", step = "100 N"`, "", "A load.", Task{"W", "400 N", 0, ""}},
		{"A load.", `"400 N", range = "300 N .. 301 N", step = "100 N"`, "", "A load.", Task{"W", "400 N", 0, ""}},
	} {
		text := "title = \"T\"\nstatement = \"" + c.statement + "\"\n[given]\nW = { value = " + c.row + " }\n[points]\nP = { at = \"0,0,0\", on = \"particle\" }\n" + c.other + pulled
		src := sourceOf(t, text)
		if got := src.Tasks[0]; got != c.task {
			t.Errorf("%q: %+v, want %+v", c.statement, got, c.task)
		}
		v, says := src.at([]int{0})
		if len(says) > 0 {
			t.Fatalf("%q: %v", c.statement, says)
		}
		v, err := src.Finish(v, "variant 1")
		if err != nil || v.Solution.Problem.Statement != c.want {
			t.Errorf("%q: %v, %q", c.statement, err, v.Solution.Problem.Statement)
		}
	}
}

// The sources print a rule beside the example: it gives what their example is at
// other values (they print no other numbers).
func TestVariantsOfPublishedRules(t *testing.T) {
	for _, c := range []struct {
		name, given, result string
		rule                func(x float64) float64 // both in SI
	}{
		{"leg-force-by-angle", "W", "T60", func(w float64) float64 { return w / 2 / math.Sin(math.Pi/3) }},
		{"two-leg-bridle", "H", "W", func(h float64) float64 { return 2 * 1000 * 4.4482216152605 * h / (10 * 0.3048) }},
		{"slope-metal-on-metal", "mu", "P", func(mu float64) float64 { return (1 - 5*mu) * 100 / math.Sqrt(26) }},
	} {
		f, _ := fixtures.Get(c.name)
		src := sourceOf(t, f.Answered())
		r, err := Sweep(src.Sheet, src.Solution, c.given, Span{})
		if err != nil {
			t.Fatal(err)
		}
		at := -1
		for i, q := range r.Results {
			if q.Name == c.result {
				at = i
			}
		}
		if at < 0 || len(r.Rows) < 3 {
			t.Fatalf("%s: %+v", c.name, r)
		}
		for _, row := range r.Rows {
			if row.Cells[at].OK && math.Abs(row.Cells[at].SI-c.rule(row.SI)) > 1e-9*1000 {
				t.Errorf("%s: %s is %v at %v, and the rule gives %v", c.name, c.result, row.Cells[at].SI, row.SI, c.rule(row.SI))
			}
		}
	}
}

// Where there are too few, it says how many there are, or which values fail and why.
func TestTooFew(t *testing.T) {
	slack := strings.Replace(pair, `"400 lb", range = "300 lb .. 500 lb", step = "50 lb"`, `"400 lb", range = "-100 lb .. 500 lb", step = "100 lb"`, 1)
	slack = strings.Replace(slack, `, range = "9 .. 16"`, "", 1)
	limit := strings.Replace(slack, "-100 lb", "300 lb", 1)
	limit = strings.Replace(limit, "700 lb", "200 lb", 1)
	for _, c := range []struct {
		name, text string
		count      int
		says       string
		reasons    []string
	}{
		{"grid", limit, 3, "the ranges give 2 combinations besides the sheet itself, but 3 variants are asked for. Try: a smaller step or a wider range", nil},
		{"slack", slack, 6, "of all 6 combinations, 4 have the same verdict, but 6 variants are asked for. Try: ranges in which the verdict is the same, or fewer variants", []string{
			"W = -100 lbf: T1 goes slack, T2 goes slack, T3 goes slack",
			"W = 0 lbf: T1 carries no force, T2 carries no force, T3 carries no force",
		}},
	} {
		src := sourceOf(t, c.text)
		_, err := src.Draw(Seeded(3), c.count)
		var few *TooFew
		if !errors.As(err, &few) || err.Error() != c.says {
			t.Errorf("%s: %v", c.name, err)
			continue
		}
		if got := few.Reasons(); strings.Join(got, "\n") != strings.Join(c.reasons, "\n") {
			t.Errorf("%s: %q", c.name, got)
		}
	}
	if _, err := NewSource(solved.Sheet(t, strings.ReplaceAll(pair, "range", "was"))); err == nil || err.Error() != `no given has a range. Try: W = { value = "400 N", range = "300 N .. 500 N", step = "50 N" }` {
		t.Error(err)
	}
}
