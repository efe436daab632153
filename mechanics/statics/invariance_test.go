package statics

import (
	"fmt"
	"math"
	"math/big"
	"math/rand/v2"
	"regexp"
	"slices"
	"strings"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"trivet/mechanics/problem"
	"trivet/mechanics/sheet"
	"trivet/units"
)

// invariance is how far results may move when a problem is only written
// differently: rounding of the new coordinates times the condition number.
const invariance = 1e-9

// invariant gives the problems that the tests below write differently: all
// sheets that come with the program, and random rigs.
func invariant(t *testing.T) map[string]string {
	texts := map[string]string{}
	for _, f := range allSheets() {
		texts[f.Name] = f.Answered()
	}
	m := newMaker(11)
	for i := range 150 {
		r := m.determinate()
		if s := r.exact(); s.solve().rank == len(s.names) {
			texts[fmt.Sprint("rig ", i)] = r.text()
		}
		texts[fmt.Sprint("degenerate rig ", i)] = m.degenerate().text()
	}
	if len(texts) < 250 {
		t.Fatalf("%d problems", len(texts))
	}
	return texts
}

func read(t *testing.T, text string) *problem.Problem {
	t.Helper()
	sh, err := sheet.Parse([]byte(text))
	if err != nil {
		t.Fatalf("%v\n%s", err, text)
	}
	p, errs := problem.Read(sh)
	if len(errs) > 0 {
		t.Fatalf("%v at %v\n%s", errs[0], errs[0].Ref, text)
	}
	return p
}

// same holds two solutions against each other: names tells what the unknowns of
// the first are called in the second, times what forces are multiplied by.
func same(t *testing.T, what string, a, b *Solution, names func(string) string, times float64) {
	t.Helper()
	if a.Verdict != b.Verdict || a.Rank != b.Rank || a.Degree != b.Degree || len(a.Motions) != len(b.Motions) || len(a.X) != len(b.X) {
		t.Errorf("%s: %v of rank %d, degree %d, %d motions; was %v of rank %d, degree %d, %d motions", what,
			b.Verdict, b.Rank, b.Degree, len(b.Motions), a.Verdict, a.Rank, a.Degree, len(a.Motions))
		return
	}
	tol := invariance * max(1, a.scale())
	for _, x := range a.X {
		j := slices.IndexFunc(b.X, func(y Unknown) bool { return y.Name == names(x.Name) })
		if j < 0 {
			t.Errorf("%s: no unknown %s", what, names(x.Name))
			continue
		}
		y := b.X[j]
		if x.Fixed != y.Fixed {
			t.Errorf("%s: %s is fixed: %v, was %v", what, x.Name, y.Fixed, x.Fixed)
		}
		if x.Fixed && math.Abs(x.Value*times-y.Value) > tol*times {
			t.Errorf("%s: %s = %v, was %v", what, x.Name, y.Value, x.Value*times)
		}
		if !x.Fixed && !(x.Low*times == y.Low || math.Abs(x.Low*times-y.Low) <= 1e3*tol*times) || !x.Fixed && !(x.High*times == y.High || math.Abs(x.High*times-y.High) <= 1e3*tol*times) {
			t.Errorf("%s: %s from %v to %v, was %v to %v", what, x.Name, y.Low, y.High, x.Low*times, x.High*times)
		}
	}
}

func sameName(name string) string { return name }

// rewritten is a sheet in SI numbers of the same problem elsewhere: every place by
// place, every direction by turn. Weights become forces, since up has no turn,
// and springs links. Components are no property of a turned problem: ok is
// false where an unknown is one.
func rewritten(p *problem.Problem, place, turn func(r3.Vec) r3.Vec) (text string, ok bool) {
	if slices.ContainsFunc(p.Bodies, func(b problem.Body) bool { return !b.Particle }) || len(p.Joints) > 0 {
		return "", false // the tests of cells have these
	}
	var b strings.Builder
	if p.Planar {
		b.WriteString("plane = \"xy\"\n")
	}
	tuple := func(v r3.Vec) string {
		if p.Planar {
			return fmt.Sprintf("%.17g, %.17g", v.X, v.Y)
		}
		return fmt.Sprintf("%.17g, %.17g, %.17g", v.X, v.Y, v.Z)
	}
	if p.Expect == problem.ExpectResultant {
		b.WriteString("expect = \"resultant\"\n")
	}
	b.WriteString("[points]\n")
	for _, pt := range p.Points {
		on := ""
		if pt.Body != problem.Ground {
			on = ", on = \"particle\""
		}
		fmt.Fprintf(&b, "%s = { at = \"%s\"%s }\n", pt.Name, tuple(place(pt.At)), on)
	}
	b.WriteString("[lines]\n")
	for i, l := range p.Lines {
		if len(l.Legs) == 0 {
			return "", false
		}
		if l.Belt != nil {
			if l.Belt.Lines[0] == i {
				b.WriteString(beltRow(p, l.Belt))
			}
			continue
		}
		kind := l.Kind
		switch kind {
		case problem.Weight:
			kind = problem.Force
		case problem.SpringKind:
			kind = problem.Link
		}
		fmt.Fprintf(&b, "%s = { kind = %q, ", l.Name, kind)
		if l.Legs[0].To < 0 {
			fmt.Fprintf(&b, "at = %q, along = \"(%s)\"", p.Points[l.Path[0]].Name, tuple(turn(l.Legs[0].U)))
		} else {
			names := make([]string, len(l.Path))
			for k, i := range l.Path {
				names[k] = p.Points[i].Name
			}
			fmt.Fprintf(&b, "path = %q", strings.Join(names, " "))
		}
		fmt.Fprintf(&b, ", magnitude = %q }\n", magnitudeText(p, &l))
	}
	return b.String(), true
}

func magnitudeText(p *problem.Problem, l *problem.Line) string {
	if t := l.Magnitude.Terms; len(t) == 1 && p.Unknowns[t[0].Unknown].Name == l.Name {
		return l.Name
	}
	text := fmt.Sprintf("%.17g N", l.Magnitude.Const)
	for _, term := range l.Magnitude.Terms {
		text += fmt.Sprintf(" + %.17g*%s", term.Coef, p.Unknowns[term.Unknown].Name)
	}
	return text
}

// beltRow is the row of a belt, with its wrap as an angle.
func beltRow(p *problem.Problem, of *problem.Belt) string {
	var path, tensions []string
	for part, i := range of.Lines {
		l := &p.Lines[i]
		for _, at := range l.Path {
			if name := p.Points[at].Name; len(path) != 2 || path[1] != name {
				path = append(path, name)
			}
		}
		text := magnitudeText(p, l)
		if text == l.Name || of.Tight >= 0 && of.Tied == part {
			text = "?"
		}
		tensions = append(tensions, text)
	}
	tight := ""
	if of.Tight >= 0 {
		tight = p.Lines[of.Lines[of.Tight]].Name
	}
	return fmt.Sprintf("%s = { kind = \"belt\", path = %q, wrap = \"%.17g rad\", friction = \"%.17g\", tight = %q, magnitude = %q }\n",
		of.Name, strings.Join(path, " "), of.Wrap, of.Friction, tight, strings.Join(tensions, ", "))
}

func TestInvariantUnderRotation(t *testing.T) {
	rng := rand.New(rand.NewPCG(1, 1))
	turned := 0
	for name, text := range invariant(t) {
		p := read(t, text)
		axis := r3.Vec{X: rng.NormFloat64(), Y: rng.NormFloat64(), Z: rng.NormFloat64()}
		if p.Planar {
			axis = r3.Vec{Z: 1}
		}
		turn := r3.NewRotation(2*math.Pi*rng.Float64(), axis).Rotate
		if other, ok := rewritten(p, turn, turn); ok {
			turned++
			same(t, name, Solve(p), solveText(t, other), sameName, 1)
		}
	}
	t.Logf("%d turned", turned)
}

func unturned(v r3.Vec) r3.Vec { return v }

func TestInvariantUnderTranslation(t *testing.T) {
	rng := rand.New(rand.NewPCG(1, 2))
	for name, text := range invariant(t) {
		p := read(t, text)
		d := r3.Vec{X: 100 * rng.NormFloat64(), Y: 100 * rng.NormFloat64(), Z: 100 * rng.NormFloat64()}
		if p.Planar {
			d.Z = 0
		}
		if other, ok := rewritten(p, func(v r3.Vec) r3.Vec { return r3.Add(v, d) }, unturned); ok {
			same(t, name, Solve(p), solveText(t, other), sameName, 1)
		}
	}
}

func TestInvariantUnderScaling(t *testing.T) {
	for name, text := range invariant(t) {
		p := read(t, text)
		for _, scale := range []float64{1e-3, 7, 1e6} {
			if other, ok := rewritten(p, func(v r3.Vec) r3.Vec { return r3.Scale(scale, v) }, unturned); ok {
				same(t, fmt.Sprint(name, " scaled by ", scale), Solve(p), solveText(t, other), sameName, 1)
			}
		}
	}
}

// TestInvariantUnderQuarterTurns turns random rigs, as typed, by exact rotations.
// Up stays where it is, so loads that are weights are made forces.
func TestInvariantUnderQuarterTurns(t *testing.T) {
	m := newMaker(13)
	for range 200 {
		r := m.determinate()
		if s := r.exact(); s.solve().rank < len(s.names) {
			continue
		}
		if slices.ContainsFunc(r.lines, func(l rigLine) bool { return l.components != nil }) {
			continue
		}
		turned := &rig{planar: r.planar, points: slices.Clone(r.points), lines: slices.Clone(r.lines)}
		// x' = -y, y' = x: a quarter turn, after which z goes to x in space.
		for i := range turned.points {
			a := r.points[i].at
			turned.points[i].at = [3]*big.Rat{new(big.Rat).Neg(a[1]), a[0], a[2]}
			if !r.planar {
				turned.points[i].at = [3]*big.Rat{a[2], a[0], a[1]}
			}
		}
		for i := range turned.lines {
			l := &turned.lines[i]
			if l.along == nil {
				continue
			}
			if l.kind == "weight" {
				l.kind = "force"
				l.magnitude += " * g"
			}
			a := append(slices.Clone(l.along), 0)
			l.along = []int64{-a[1], a[0], 0}
			if !r.planar {
				l.along = []int64{a[2], a[0], a[1]}
			}
		}
		text := turned.text()
		same(t, text, solveText(t, r.text()), solveText(t, text), sameName, 1)
	}
}

// TestInvariantUnderScalingOfText multiplies every coordinate of a rig, as typed.
func TestInvariantUnderScalingOfText(t *testing.T) {
	m := newMaker(17)
	for range 200 {
		r := m.degenerate()
		big3 := *r
		big3.points = slices.Clone(r.points)
		for i := range big3.points {
			for k, x := range r.points[i].at {
				big3.points[i].at[k] = new(big.Rat).Mul(x, big.NewRat(13, 4))
			}
		}
		same(t, big3.text(), solveText(t, r.text()), solveText(t, big3.text()), sameName, 1)
	}
}

// TestInvariantUnderUnits reads rigs, whose numbers are all bare, in other units:
// forces come out in the new unit as they did in newtons.
func TestInvariantUnderUnits(t *testing.T) {
	lbf, ok := units.Find("lbf")
	if !ok {
		t.Fatal("no lbf")
	}
	m := newMaker(19)
	for range 300 {
		r := m.degenerate()
		text := r.text()
		at := strings.Index(text, "[points]")
		other := text[:at] + "[units]\nlength = \"ft\"\nforce = \"lbf\"\n" + text[at:]
		a, b := solveText(t, text), solveText(t, other)
		same(t, other, a, b, sameName, lbf.Factor)
	}
	// All others: places in feet, and results asked in pounds. In SI nothing changes.
	ft, ok := units.Find("ft")
	if !ok {
		t.Fatal("no ft")
	}
	for name, text := range invariant(t) {
		p := read(t, text)
		if other, ok := rewritten(p, func(v r3.Vec) r3.Vec { return r3.Scale(1/ft.Factor, v) }, unturned); ok {
			other = strings.Replace(other, "[points]", "[units]\nlength = \"ft\"\nforce = \"lbf\"\n[points]", 1)
			same(t, name, Solve(p), solveText(t, other), sameName, 1)
		}
	}
}

func TestInvariantUnderRenaming(t *testing.T) {
	m := newMaker(23)
	name := regexp.MustCompile(`\b[A-Z][0-9]+\b`)
	rename := func(s string) string { return "new" + s + "_" }
	for range 300 {
		text := m.determinate().text()
		other := name.ReplaceAllStringFunc(text, rename)
		same(t, other, solveText(t, text), solveText(t, other), func(s string) string {
			return name.ReplaceAllStringFunc(s[:min(len(s), len(strings.TrimRight(s, "xyz")))], rename) + s[len(strings.TrimRight(s, "xyz")):]
		}, 1)
	}
}

func TestInvariantUnderReordering(t *testing.T) {
	rng := rand.New(rand.NewPCG(1, 3))
	m := newMaker(29)
	shuffle := func(text string) string {
		var out []string
		for k, part := range strings.SplitAfter(text, "]\n") {
			rows := strings.SplitAfter(part, "\n")
			// The last row may be the next header, and what follows the last line end is empty.
			n := len(rows) - 1
			if n > 0 && strings.HasPrefix(rows[n-1], "[") {
				n--
			}
			if k > 0 {
				rng.Shuffle(n, func(i, j int) { rows[i], rows[j] = rows[j], rows[i] })
			}
			out = append(out, strings.Join(rows, ""))
		}
		return strings.Join(out, "")
	}
	for i := range 300 {
		text := m.determinate().text()
		if i%2 == 0 {
			text = m.degenerate().text()
		}
		other := shuffle(text)
		if other == text {
			continue
		}
		same(t, text+"\nreordered:\n"+other, solveText(t, text), solveText(t, other), sameName, 1)
	}
}
