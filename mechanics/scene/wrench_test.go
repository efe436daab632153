package scene_test

import (
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"trivet/fixtures"
	"trivet/mechanics/problem"
	"trivet/mechanics/scene"
	"trivet/mechanics/sheet"
	"trivet/mechanics/statics"
)

// sheets reads every sheet of the fixtures.
func sheets(t *testing.T, visit func(name string, p *problem.Problem, s *statics.Solution)) {
	t.Helper()
	for _, one := range append(fixtures.Starts(), fixtures.Published()...) {
		s, err := sheet.Parse([]byte(one.Answered()))
		if err != nil {
			t.Fatal(err)
		}
		p, _ := problem.Read(s)
		visit(one.Name, p, statics.Solve(p))
	}
	s, err := sheet.Parse([]byte(tipping))
	if err != nil {
		t.Fatal(err)
	}
	p, _ := problem.Read(s)
	visit("tipping", p, statics.Solve(p))
}

// tipping is what no sheet of the fixtures has: a face on which slip is impending, a load
// against its direction, and one that changes its sign.
const tipping = `plane = "xy"
up = "+y"
[points]
A = { at = "-0.5 m, 0 m", on = "crate" }
B = { at = "0.5 m, 0 m", on = "crate" }
C = { at = "0 m, 0 m", on = "crate" }
H = { at = "-0.5 m, 0.6 m", on = "crate" }
[bodies]
crate = { weight = "200 N", centre = "(0 m, 0.5 m)" }
[joints]
C = { kind = "rough-surface", normal = "+y", face = "A B", friction = "0.25", impending = "+x" }
[lines]
P = { kind = "force", at = "H", along = "+x" }
[distributed]
r = { on = "crate", path = "A B", along = "-y", magnitude = "-10 N/m .. -20 N/m" }
m = { on = "crate", path = "A B", along = "-y", magnitude = "-10 N/m .. 20 N/m" }
`

// wrench is a force and its moment about the origin.
type wrench struct{ force, moment r3.Vec }

func (w *wrench) add(at, force, couple r3.Vec) {
	w.force = r3.Add(w.force, force)
	w.moment = r3.Add(w.moment, r3.Add(couple, r3.Cross(at, force)))
}

// drawn is the wrench of the things of each row.
func drawn(s scene.Scene) map[string]wrench {
	out := map[string]wrench{}
	for _, t := range s.Things {
		w := out[t.Ref.Table+"."+t.Ref.Row]
		switch t.Kind {
		case scene.Force:
			w.add(t.At[0], r3.Scale(t.Value, t.Along), r3.Vec{})
		case scene.Couple:
			w.add(t.At[0], r3.Vec{}, r3.Scale(t.Value, t.Along))
		case scene.Load:
			for k := 1; k < len(t.At); k++ { // a trapezium: its parts at their centroids
				a, b := t.At[k-1], t.At[k]
				d := r3.Norm(r3.Sub(b, a))
				p, q := t.Value*t.Heights[k-1]*d/2, t.Value*t.Heights[k]*d/2
				w.add(r3.Add(a, r3.Scale(1.0/3, r3.Sub(b, a))), r3.Scale(p, t.Along), r3.Vec{})
				w.add(r3.Add(a, r3.Scale(2.0/3, r3.Sub(b, a))), r3.Scale(q, t.Along), r3.Vec{})
			}
		default:
			continue
		}
		out[t.Ref.Table+"."+t.Ref.Row] = w
	}
	return out
}

// solved is the wrench of the acts of each row on a body, as the solver has them.
func solved(p *problem.Problem, s *statics.Solution, body int) map[string]wrench {
	out := map[string]wrench{}
	add := func(ref sheet.Ref, acts []problem.Act) {
		for i := range acts {
			a := &acts[i]
			if a.Body != body {
				continue
			}
			f, m := a.Force.Const, a.Couple.Const
			for _, t := range a.Force.Terms {
				f = r3.Add(f, r3.Scale(s.X[t.Unknown].Value, t.D))
			}
			for _, t := range a.Couple.Terms {
				m = r3.Add(m, r3.Scale(s.X[t.Unknown].Value, t.D))
			}
			w := out[ref.Table+"."+ref.Row]
			w.add(a.At, f, m)
			out[ref.Table+"."+ref.Row] = w
		}
	}
	for i := range p.Lines {
		add(p.Lines[i].Ref, p.Lines[i].Acts)
	}
	for i := range p.Joints {
		add(p.Joints[i].Ref, p.Joints[i].Acts)
	}
	for i := range p.Couples {
		add(p.Couples[i].Ref, p.Couples[i].Acts)
	}
	for i := range p.Loads {
		add(p.Loads[i].Ref, p.Loads[i].Acts)
	}
	add(p.Bodies[body].Ref, p.Bodies[body].Acts)
	return out
}

// Rounding of sums; a curved diagram is drawn by its ordinates, straight between them, and
// its load is integrated more finely than that.
const roundingTol, diagramTol = 1e-9, 1e-2

// Every arrow of every free body has the place and the direction of the force that the
// solver used, and its value.
func TestArrowsAreTheForcesSolvedFor(t *testing.T) {
	bodies := 0
	sheets(t, func(name string, p *problem.Problem, s *statics.Solution) {
		if s.Verdict != statics.Determinate && s.Verdict != statics.Inadmissible {
			return
		}
		for body := range p.CutFree() {
			bodies++
			got, want := drawn(scene.Free(p, s, body)), solved(p, s, body)
			var largest, reach float64
			for _, w := range want {
				largest, reach = math.Max(largest, r3.Norm(w.force)), math.Max(reach, r3.Norm(w.moment))
			}
			for row := range want {
				g, w, tol := got[row], want[row], roundingTol
				if strings.HasPrefix(row, "distributed.") {
					tol = diagramTol
				}
				if r3.Norm(r3.Sub(g.force, w.force)) > tol*largest || r3.Norm(r3.Sub(g.moment, w.moment)) > tol*math.Max(reach, largest*r3.Norm(p.Bodies[body].About)) {
					t.Errorf("%s, %s: %s is drawn as %.4g N, %.4g N m, and was solved for as %.4g N, %.4g N m", name, p.Bodies[body].Name, row, g.force, g.moment, w.force, w.moment)
				}
				delete(got, row)
			}
			for row, g := range got {
				if r3.Norm(g.force) > 0 || r3.Norm(g.moment) > 0 {
					t.Errorf("%s, %s: %s is drawn, and does not act on it", name, p.Bodies[body].Name, row)
				}
			}
		}
	})
	if bodies < 200 {
		t.Errorf("%d bodies are looked at", bodies)
	}
}

// Before solving, the arrows of unknown forces have the sense that counts as positive: with
// any positive values the drawn forces are those of the acts.
func TestArrowsBeforeSolvingArePositive(t *testing.T) {
	sheets(t, func(name string, p *problem.Problem, _ *statics.Solution) {
		rng := rand.New(rand.NewPCG(1, uint64(len(name))))
		some := &statics.Solution{Problem: p, Verdict: statics.Determinate}
		for range p.Unknowns {
			some.X = append(some.X, statics.Unknown{Value: 1 + rng.Float64(), Fixed: true})
		}
		for body := range p.CutFree() {
			before, after := scene.Free(p, nil, body), scene.Free(p, some, body)
			for i, thing := range before.Things {
				if !thing.Open {
					continue
				}
				// A force that follows from others, and another from a difference, may have either sense.
				other := after.Things[min(i, len(after.Things)-1)]
				if len(before.Things) == len(after.Things) && thing.Kind == scene.Force && r3.Dot(thing.Along, other.Along) < 0 && !other.Broken && onlyTerm(p, thing.Ref) {
					t.Errorf("%s: the arrow of %s points along %.3g before and along %.3g with positive values", name, thing.Ref.Row, thing.Along, other.Along)
				}
			}
		}
	})
}

// onlyTerm tells that the magnitude of a line is one unknown, or that a row is no line.
func onlyTerm(p *problem.Problem, ref sheet.Ref) bool {
	if ref.Table != "lines" {
		return true
	}
	line, ok := p.Find(ref.Row, problem.ALine)
	i := line.Index
	return !ok || len(p.Lines[i].Magnitude.Terms) == 1 && p.Lines[i].Magnitude.Const == 0 && p.Lines[i].Magnitude.Terms[0].Coef > 0
}

// A cable pulls: its arrow begins at the point, and points away along the line. A strut
// and a surface push: their arrows end there. A weight hangs from its point.
func TestWhatPullsAndWhatPushes(t *testing.T) {
	sheets(t, func(name string, p *problem.Problem, _ *statics.Solution) {
		for body := range p.CutFree() {
			for _, thing := range scene.Free(p, nil, body).Things {
				line, ok := p.Find(thing.Ref.Row, problem.ALine)
				if !ok || thing.Kind != scene.Force || thing.Ref.Table != "lines" {
					continue
				}
				i := line.Index
				want := map[problem.Kind]bool{problem.Cable: false, problem.BeltKind: false, problem.Link: false, problem.SpringKind: false, problem.Weight: false, problem.Strut: true, problem.Contact: true}
				if head, ok := want[p.Lines[i].Kind]; ok && thing.Head != head && (thing.Open || p.Lines[i].Magnitude.Const > 0) { // a compressed spring pushes
					t.Errorf("%s: the head of the arrow of %s %s is at the point: %v", name, p.Lines[i].Kind, thing.Ref.Row, thing.Head)
				}
			}
		}
	})
}
