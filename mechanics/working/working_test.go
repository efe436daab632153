package working

import (
	"fmt"
	"math"
	"math/rand/v2"
	"os"
	"path/filepath"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"trivet/fixtures"
	"trivet/fixtures/long"
	"trivet/mechanics/doc"
	"trivet/mechanics/problem"
	"trivet/mechanics/sheet"
	"trivet/mechanics/statics"
	"trivet/units"
)

// read takes a sheet's text to a problem; nil where it does not read.
func read(t testing.TB, text string) *problem.Problem {
	t.Helper()
	sh, err := sheet.Parse([]byte(text))
	if err != nil {
		t.Fatalf("%v\n%s", err, text)
	}
	p, errs := problem.Read(sh)
	if len(errs) > 0 {
		return nil
	}
	return p
}

// sheets are those that come with the program, and those that pages are kept of.
func sheets(t testing.TB) map[string]string {
	t.Helper()
	texts := map[string]string{}
	for _, f := range append(fixtures.Starts(), fixtures.Published()...) {
		texts[f.Name] = f.Answered()
	}
	files, err := filepath.Glob("../report/testdata/working/*.toml")
	if err != nil || len(files) < 7 {
		t.Fatalf("%d sheets, %v", len(files), err)
	}
	for _, file := range files {
		b, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		texts[filepath.Base(file)] = string(b)
	}
	return texts
}

// meanings are what symbols stand for in a step, from the problem and the solution.
func meanings(w *Working, step Step) symbols {
	s := w.Solution
	p := s.Problem
	env := symbols{}
	length, force, moment := p.Units.Length.Factor, p.Units.Force.Factor, p.Units.For(units.Moment).Factor
	vec := func(v r3.Vec, by float64) value { return vectorValue(v.X/by, v.Y/by, v.Z/by) }
	for i := range p.Points {
		for j := range p.Points {
			if step.Kind > Moment {
				break
			}
			env[print((&builder{}).between(p.Points[i].Name, p.Points[j].Name))] = vec(r3.Sub(p.Points[j].At, p.Points[i].At), length)
		}
		if step.Kind == Position {
			env[p.Points[i].Name] = vec(p.Points[i].At, length)
		}
	}
	for i := range p.Lines {
		for k, leg := range p.Lines[i].Legs {
			name := named(p.Lines[i].Name)
			if len(p.Lines[i].Legs) > 1 {
				name = row(leafed(name), words(","), words(string(rune('1'+k%9))))
			}
			env[print(unitVec("u", name))] = vec(leg.U, 1)
		}
	}
	if step.Kind == Position {
		return env
	}
	for i := range p.Lines {
		if m := p.Lines[i].Magnitude; len(m.Terms) == 0 {
			env[p.Lines[i].Name] = scalar(m.Const / force)
		}
	}
	if s.Verdict == statics.NoEquilibrium {
		if step.Kind >= Equations && step.Kind != Answers && !p.ResultantOnly() {
			return symbols{}
		}
	}
	for j, x := range s.X {
		env[x.Name] = scalar(x.Value / p.Units.For(p.Unknowns[j].Dim).Factor)
	}
	if step.Kind == BeltFriction || step.Kind == BeltSlip {
		belt := p.Lines[step.About.Lines[0]].Belt
		env["e"], env["π"], env["μ"], env["β"] = scalar(math.E), scalar(math.Pi), scalar(belt.Friction), scalar(belt.Wrap)
		for _, i := range belt.Lines {
			if v, ok := s.Magnitude(i); ok {
				env[p.Lines[i].Name] = scalar(v / force)
			}
		}
	}
	b := &builder{s: s, p: p, axes: 3}
	if p.Planar {
		b.axes = 2
	}
	b.collect()
	for k := range b.ties {
		total := b.ties[k].is.Const
		for _, x := range b.ties[k].is.Terms {
			total += x.Coef * s.X[x.Unknown].Value
		}
		env[print(b.ties[k].name)] = scalar(total / force)
	}
	for body := range b.acts {
		own := len(step.About.Bodies) == 1 && step.About.Bodies[0] == body
		for _, a := range b.acts[body] {
			f := b.s.Sum(a.Force)
			arm := r3.Sub(a.At, p.Bodies[body].About)
			m := r3.Cross(arm, f)
			if a.isCouple() && a.joint == nil {
				m = b.s.Sum(a.Couple)
			} else if a.isCouple() {
				c := b.s.Sum(a.Couple)
				if own {
					env[print(b.heldName(a))] = vec(c, moment)
					for axis := range 3 {
						env[print(part(doc.Math{Op: doc.Symbol, Text: "C", Of: b.heldName(a).Of}, "xyz"[axis:axis+1]))] = scalar(xyz(c)[axis] / moment)
					}
				}
			}
			if a.far {
				f = r3.Scale(-1, f)
			} else {
				env[print(a.vec)] = vec(f, force)
			}
			if !own {
				continue
			}
			env[print(a.vec)] = vec(f, force)
			for axis := range 3 {
				set := func(name doc.Math, x float64) {
					if _, taken := env[print(name)]; !taken {
						env[print(name)] = scalar(x)
					}
				}
				set(part(a.name, "xyz"[axis:axis+1]), xyz(f)[axis]/force)
				set(part(doc.Math{Op: doc.Symbol, Text: "M", Of: b.momentName(a).Of}, "xyz"[axis:axis+1]), xyz(m)[axis]/moment)
			}
			if p.Planar {
				env[print(b.momentName(a))] = scalar(m.Z / moment)
			} else {
				env[print(b.momentName(a))] = vec(m, moment)
			}
		}
	}
	return env
}

// held checks one working and tells how many numbers and equations it held.
func checkWorking(t *testing.T, name string, w *Working) (numbers, equations int) {
	t.Helper()
	last := -1
	var env symbols
	slack := 0.0
	for j, x := range w.Solution.X {
		slack = max(slack, math.Abs(x.Value)/w.Solution.Problem.Units.For(w.Solution.Problem.Unknowns[j].Dim).Factor)
	}
	slack *= max(1, w.Solution.Cond*1e-6)
	steps := -1
	eachFormula(w, func(step Step, m doc.Math) {
		where := name + ", " + step.Title
		numbers += shown(t, where, m)
		if step.Title != "" {
			for i := range w.Steps {
				if w.Steps[i].Title == step.Title && i >= last {
					steps = i
					break
				}
			}
		}
		if steps != last {
			env, last = meanings(w, step), steps
		}
		equations += env.holds(t, where, m, slack) + env.comesOut(t, where, m)
	})
	for _, step := range w.Steps {
		if step.Kind == HandStep {
			equations += solves(t, name+", "+step.Title, step.Body)
		}
	}
	checkSums(t, name, w)
	checkSolved(t, name, w)
	checkOrigins(t, name, w)
	return numbers, equations
}

// checkSums adds up what the tables of components print.
func checkSums(t *testing.T, name string, w *Working) {
	t.Helper()
	for _, step := range w.Steps {
		for _, b := range step.Body {
			table, ok := b.(*doc.Table)
			if !ok || table.Columns[0].Head != "Force" || table.Columns[1].Head == "Kind" {
				continue
			}
			rows := table.Rows
			for k := 1; k < len(table.Columns); k++ {
				total, most := 0.0, 0.0
				for i, r := range rows {
					x, half := signedPrint(t, *r[k].Math)
					if i == len(rows)-1 {
						x = -x
					}
					total += x
					if x != 0 {
						most = max(most, half)
					}
				}
				if math.Abs(total) > most*float64(len(rows))*(1+1e-9) {
					t.Errorf("%s, %s: the column %s adds up to %v beside its sum, and %d roundings make %v", name, step.Title, table.Columns[k].Head, total, len(rows), most*float64(len(rows)))
				}
			}
		}
	}
}

func signedPrint(t *testing.T, m doc.Math) (x, half float64) {
	t.Helper()
	if m.Op == doc.Neg {
		x, half = signedPrint(t, m.Of[0])
		return -x, half
	}
	x, half, err := printedNumber(m.Text)
	if err != nil {
		t.Fatal(err)
	}
	return x, half
}

// checkSolved holds that each unknown with one value, which is asked where any is, stands in
// the solution with exactly that value, printed to the sheet's figures.
func checkSolved(t *testing.T, name string, w *Working) {
	t.Helper()
	s := w.Solution
	if s.Verdict == statics.NoEquilibrium || s.Verdict == statics.Unreadable {
		return
	}
	found := map[string]doc.Math{}
	for _, step := range w.Steps {
		if step.Kind != Solve && step.Kind != HandStep {
			continue
		}
		for _, b := range step.Body {
			if p, ok := b.(*doc.Paragraph); ok {
				for _, in := range p.Text {
					if m := in.Math; m != nil && m.Op == doc.Relate { // members without force
						for _, x := range m.Of[:len(m.Of)-1] {
							found[x.Name] = m.Of[len(m.Of)-1]
						}
					}
				}
			}
			if set, ok := b.(*doc.Formula); ok {
				for _, m := range set.Of {
					if m.Op == doc.Relate && m.Of[0].Name != "" {
						found[m.Of[0].Name] = m.Of[len(m.Of)-1]
					}
				}
			}
		}
	}
	for j, x := range s.X {
		m, some := found[x.Name]
		asked := len(s.Problem.Asked) == 0
		for _, q := range s.Problem.Asked {
			asked = asked || q.Of == problem.Source{Thing: problem.AnUnknown, Index: j}
		}
		if !some && x.Fixed && asked {
			t.Errorf("%s: %s does not stand in the solution", name, x.Name)
		}
		if !some || !x.Fixed || x.Value == 0 {
			continue
		}
		u := s.Problem.Units.For(s.Problem.Unknowns[j].Dim)
		n := m.Of[0]
		sign, want := 1.0, x.Value
		if n.Op == doc.Neg {
			sign, n = -1, n.Of[0]
		}
		if got := sign * n.Num * u.Factor; math.Abs(got-want) > agreement*math.Abs(want) {
			t.Errorf("%s: %s = %v in the working and %v in the solution", name, x.Name, got, want)
		}
		text := n.Text
		if sign < 0 {
			text = "-" + text
		}
		if want := u.Format(x.Value, s.Problem.Figures); text+" "+u.Symbol != want {
			t.Errorf("%s: %s is shown as %s %s, elsewhere as %s", name, x.Name, text, u.Symbol, want)
		}
	}
}

// Every number of a working is shown as what it is, every equation holds when it
// is evaluated as written, and what is printed adds up: over all sheets.
func TestSheetsAreWorked(t *testing.T) {
	numbers, equations := 0, 0
	for name, text := range sheets(t) {
		p := read(t, text)
		if p == nil {
			t.Fatalf("%s does not read", name)
		}
		n, e := checkWorking(t, name, Build(statics.Solve(p)))
		numbers, equations = numbers+n, equations+e
	}
	if numbers < 3000 || equations < 800 {
		t.Errorf("%d numbers, %d equations held", numbers, equations)
	}
}

// And over random problems.
func TestRandomProblemsAreWorked(t *testing.T) {
	problems := long.Of(2000, 2000)
	rng := rand.New(rand.NewPCG(4, 2000))
	verdicts := map[statics.Verdict]int{}
	done, numbers, equations := 0, 0, 0
	for i := 0; done < problems && i < 20*problems; i++ {
		text := random(rng)
		if i%2 == 0 {
			text = proper(rng)
		}
		p := read(t, text)
		if p == nil {
			continue // a path of no length, a body that nothing acts on
		}
		s := statics.Solve(p)
		if s.Cond > 1e6 {
			continue // its rounding would hide what is looked for here
		}
		done++
		verdicts[s.Verdict]++
		n, e := checkWorking(t, fmt.Sprint("problem ", i), Build(s))
		numbers, equations = numbers+n, equations+e
		if t.Failed() {
			t.Fatal(text)
		}
	}
	t.Logf("%d problems, %v, %d numbers, %d equations", done, verdicts, numbers, equations)
	if done < problems || len(verdicts) < 4 {
		t.Errorf("%d problems with the verdicts %v", done, verdicts)
	}
}
