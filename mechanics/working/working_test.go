package working

import (
	"fmt"
	"math"
	"math/rand/v2"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"trivet/fixtures"
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
		texts[f.Name] = f.Text
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
			env[print(vectorUnit(name))] = vec(leg.U, 1)
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
	b := &builder{s: s, p: p, axes: 3}
	if p.Planar {
		b.axes = 2
	}
	b.collect()
	for body := range b.acts {
		own := len(step.About.Bodies) == 1 && step.About.Bodies[0] == body
		for k := range b.acts[body] {
			a := &b.acts[body][k]
			f := b.at(a.Const, a.Terms)
			arm := r3.Sub(a.At, p.Bodies[body].About)
			m := r3.Cross(arm, f)
			if a.couple {
				m = b.at(a.Couple, a.CoupleTerms)
			} else if a.isCouple() {
				c := b.at(a.Couple, a.CoupleTerms)
				if own {
					env[print(b.heldName(a))] = vec(c, moment)
					for axis := range 3 {
						env[print(part(Math{Op: Symbol, Text: "C", Of: b.heldName(a).Of}, "xyz"[axis:axis+1]))] = scalar(xyz(c)[axis] / moment)
					}
				}
			}
			if a.sign {
				f = r3.Scale(-1, f)
			} else {
				env[print(a.vec)] = vec(f, force)
			}
			if !own {
				continue
			}
			env[print(a.vec)] = vec(f, force)
			for axis := range 3 {
				set := func(name Math, x float64) {
					if _, taken := env[print(name)]; !taken {
						env[print(name)] = scalar(x)
					}
				}
				set(part(a.name, "xyz"[axis:axis+1]), xyz(f)[axis]/force)
				set(part(Math{Op: Symbol, Text: "M", Of: b.momentName(a).Of}, "xyz"[axis:axis+1]), xyz(m)[axis]/moment)
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
	eachFormula(w, func(step Step, m Math) {
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
		equations += env.holds(t, where, m, slack)
	})
	checkSums(t, name, w)
	checkSolved(t, name, w)
	return numbers, equations
}

// checkSums adds up what the tables of components print.
func checkSums(t *testing.T, name string, w *Working) {
	t.Helper()
	for _, step := range w.Steps {
		for _, b := range step.Body {
			if b.Table == nil || b.Table.Head[0] != "Force" || b.Table.Head[1] == "Of" {
				continue
			}
			rows := b.Table.Rows
			for k := 1; k < len(b.Table.Head); k++ {
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
					t.Errorf("%s, %s: the column %s adds up to %v beside its sum, and %d roundings make %v", name, step.Title, b.Table.Head[k], total, len(rows), most*float64(len(rows)))
				}
			}
		}
	}
}

func signedPrint(t *testing.T, m Math) (x, half float64) {
	t.Helper()
	if m.Op == Neg {
		x, half = signedPrint(t, m.Of[0])
		return -x, half
	}
	x, half, err := printedNumber(m.Text)
	if err != nil {
		t.Fatal(err)
	}
	return x, half
}

// checkSolved holds that each unknown with one value stands in the solution with
// exactly that value, printed to the sheet's figures.
func checkSolved(t *testing.T, name string, w *Working) {
	t.Helper()
	s := w.Solution
	if s.Verdict == statics.NoEquilibrium || s.Verdict == statics.Unreadable {
		return
	}
	found := map[string]Math{}
	for _, step := range w.Steps {
		if step.Kind != Solve {
			continue
		}
		for _, b := range step.Body {
			for _, m := range b.Aligned {
				found[m.Of[0].Name] = m.Of[1]
			}
		}
	}
	for j, x := range s.X {
		m, some := found[x.Name]
		if some != x.Fixed {
			t.Errorf("%s: %s stands in the solution: %v", name, x.Name, some)
		}
		if !some {
			continue
		}
		u := s.Problem.Units.For(s.Problem.Unknowns[j].Dim)
		n := m.Of[0]
		sign, want := 1.0, x.Value
		if n.Op == Neg {
			sign, n = -1, n.Of[0]
		}
		if got := sign * n.Num * u.Factor; math.Abs(got-want) > 1e-12*math.Abs(want) {
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
	const problems = 2000
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

func pick[T any](rng *rand.Rand, from ...T) T { return from[rng.IntN(len(from))] }

// proper is the text of a sheet whose equations have one solution, but for
// chance: particles on as many links as they have equations, or a body on
// supports that hold it.
func proper(rng *rand.Rand) string {
	place := func() string {
		return fmt.Sprintf("%.2f, %.1f, %d", 10*rng.Float64()-5, 10*rng.Float64()-5, rng.IntN(11)-5)
	}
	planar := rng.IntN(2) == 0
	n, head := 3, ""
	if planar {
		n, head = 2, "plane = \"xy\"\n"
		place = func() string { return fmt.Sprintf("%.2f, %d", 10*rng.Float64()-5, rng.IntN(11)-5) }
	}
	points, lines, rest := "[points]\n", "[lines]\n", ""
	if rng.IntN(2) == 0 {
		free := 1 + rng.IntN(4)
		for k := range free {
			points += fmt.Sprintf("P%d = { at = %q, on = \"particle\" }\n", k, place())
			for i := range n {
				points += fmt.Sprintf("A%d_%d = %q\n", k, i, place())
				to := fmt.Sprintf("A%d_%d", k, i)
				if k > 0 && i == 0 {
					to = fmt.Sprintf("P%d", k-1)
				}
				lines += fmt.Sprintf("T%d_%d = { kind = %q, path = \"P%d %s\" }\n", k, i, pick(rng, "link", "link", "cable", "strut"), k, to)
			}
			lines += fmt.Sprintf("F%d = { kind = \"force\", at = \"P%d\", along = \"(%s)\", magnitude = \"%.1f\" }\n", k, k, place(), 900*rng.Float64())
		}
		return head + points + lines
	}
	points += fmt.Sprintf("A = { at = %q, on = \"beam\" }\nB = { at = %q, on = \"beam\" }\nC = { at = %q, on = \"beam\" }\n", place(), place(), place())
	if planar {
		rest = "[joints]\nA = { kind = \"pin\" }\nB = { kind = \"roller\", normal = \"polar(70 deg)\" }\n" +
			pick(rng, "", "[couples]\nM = { on = \"beam\", magnitude = \"-75\" }\n") +
			pick(rng, "", "[distributed]\nq = { on = \"beam\", path = \"A C\", along = \"-y\", magnitude = \"3 .. 8\" }\n")
	} else {
		rest = "[joints]\nA = { kind = \"ball-and-socket\" }\n"
		for i := range 3 {
			points += fmt.Sprintf("E%d = %q\n", i, place())
			lines += fmt.Sprintf("T%d = { kind = \"cable\", path = \"%s E%d\" }\n", i, pick(rng, "B", "C"), i)
		}
		rest += "[couples]\nM = { on = \"beam\", about = \"(1, 2, 2)\", magnitude = \"60\" }\n"
	}
	lines += fmt.Sprintf("W = { kind = \"weight\", at = \"C\", magnitude = \"%.1f\" }\nF = { kind = \"force\", at = \"B\", along = \"(%s)\", magnitude = \"%.2f\" }\n", 500*rng.Float64(), place(), 80*rng.Float64())
	return head + points + lines + rest
}

// random is the text of a sheet: particles on cables, bodies on supports, frames.
func random(rng *rand.Rand) string {
	var b strings.Builder
	planar := rng.IntN(2) == 0
	n, axes := 3, []string{"+x", "-y", "+z", "-z"}
	if planar {
		n, axes = 2, []string{"+x", "-x", "+y", "-y"}
		b.WriteString("plane = \"xy\"\nup = \"+y\"\n")
	}
	fmt.Fprintf(&b, "figures = %d\n[units]\nlength = %q\nforce = %q\n", 2+rng.IntN(4), pick(rng, "m", "mm", "ft"), pick(rng, "N", "kN", "lbf"))
	tuple := func() string {
		of := make([]string, n)
		for k := range of {
			of[k] = pick(rng, fmt.Sprint(rng.IntN(9)-4), fmt.Sprintf("%.2f", 8*rng.Float64()-4), fmt.Sprintf("%.1f", 8*rng.Float64()-4))
		}
		return strings.Join(of, ", ")
	}
	rigid := rng.IntN(3) > 0
	on := func(k int) string {
		if rigid {
			return pick(rng, "beam", "beam", "arm", "beam arm")
		}
		return "particle"
	}
	b.WriteString("[points]\n")
	free := 1 + rng.IntN(3)
	if rigid {
		free = 3 + rng.IntN(3)
	}
	var frees, fixeds, beams []string
	for k := range free {
		name, body := fmt.Sprintf("P%d", k+1), on(k)
		fmt.Fprintf(&b, "%s = { at = %q, on = %q }\n", name, tuple(), body)
		frees = append(frees, name)
		if body == "beam" {
			beams = append(beams, name)
		}
	}
	for k := range 3 + rng.IntN(3) {
		name := string(rune('A' + k))
		fmt.Fprintf(&b, "%s = %q\n", name, tuple())
		fixeds = append(fixeds, name)
	}
	b.WriteString("[lines]\n")
	size := func() string { return fmt.Sprintf("%.*f", rng.IntN(3), 1+500*rng.Float64()) }
	for k := range 1 + rng.IntN(n*free) {
		body := ""
		if rigid {
			body = ", on = \"" + pick(rng, "beam", "arm") + "\""
		}
		fmt.Fprintf(&b, "T%d = { kind = %q, path = \"%s %s\"%s%s }\n", k+1, pick(rng, "cable", "link", "strut", "spring"), pick(rng, frees...), pick(rng, append(fixeds, frees...)...), body,
			pick(rng, "", "", ", magnitude = \""+size()+"\"", ", magnitude = \"2*T1 + 3\""))
	}
	for k := range 1 + rng.IntN(3) {
		body := ""
		if rigid {
			body = ", on = \"" + pick(rng, "beam", "arm") + "\""
		}
		switch rng.IntN(4) {
		case 0:
			fmt.Fprintf(&b, "G%d = { kind = \"weight\", at = %q, magnitude = \"%s\"%s }\n", k, pick(rng, frees...), size(), body)
		case 1:
			fmt.Fprintf(&b, "V%d = { kind = \"force\", at = %q, components = \"(%s)\"%s }\n", k, pick(rng, frees...), pick(rng, tuple(), strings.Repeat("?, ", n-1)+"5", "1"+strings.Repeat(", ?", n-1)), body)
		case 2:
			fmt.Fprintf(&b, "H%d = { kind = \"force\", at = %q, along = \"(%s)\", magnitude = \"%s\"%s }\n", k, pick(rng, frees...), tuple(), pick(rng, size(), "0.3*T1", "?"), body)
		case 3:
			fmt.Fprintf(&b, "R%d = { kind = \"cable\", path = \"%s %s %s\"%s }\n", k, pick(rng, fixeds...), pick(rng, frees...), pick(rng, append(fixeds, frees...)...), body)
		}
	}
	if !rigid {
		return b.String()
	}
	b.WriteString("[joints]\n")
	for k, name := range frees[:1+rng.IntN(len(frees))] {
		kind := pick(rng, "pin", "ball-and-socket", "roller", "fixed", "smooth-surface", "rough-surface", "slider", "collar", "hinge")
		fmt.Fprintf(&b, "J%d = { at = %q, kind = %q, normal = %q, axis = %q", k, name, kind, pick(rng, axes...), pick(rng, append(axes, "("+tuple()+")")...))
		if kind == "rough-surface" && rng.IntN(2) == 0 {
			fmt.Fprintf(&b, ", friction = \"0.3\", impending = \"(%s)\"", tuple())
		}
		b.WriteString(" }\n")
	}
	if rng.IntN(2) == 0 {
		about := ", about = \"+z\""
		fmt.Fprintf(&b, "[couples]\nM0 = { on = \"beam\"%s, magnitude = %q }\n", about, pick(rng, size(), "?", "-5 N m"))
	}
	if len(beams) > 1 && rng.IntN(2) == 0 {
		fmt.Fprintf(&b, "[distributed]\nq = { on = \"beam\", path = \"%s %s\", along = %q, magnitude = %q }\n", beams[0], beams[1], pick(rng, axes...), pick(rng, "5", "0 .. 7", "3 .. 1"))
	}
	return b.String()
}
