package handsolve

import (
	"fmt"
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"trivet/fixtures"
	"trivet/mechanics/problem"
	"trivet/mechanics/sheet"
	"trivet/mechanics/statics"
)

func solveText(t testing.TB, text string) *statics.Solution {
	t.Helper()
	sh, err := sheet.Parse([]byte(text))
	if err != nil {
		t.Fatalf("%v\n%s", err, text)
	}
	p, errs := problem.Read(sh)
	if len(errs) > 0 {
		t.Fatalf("%v at %v\n%s", errs[0], errs[0].Ref, text)
	}
	return statics.Solve(p)
}

// evaluate works an equation out from the forces of the sheet and from values
// found before: the coefficient of each symbol, what is known, and the largest term.
// It takes nothing from the equation but the bodies and the direction or axis.
func evaluate(r *Order, p *problem.Problem, e *Equation, value map[int]float64) (coefs map[int]float64, known, most float64) {
	coefs = map[int]float64{}
	tied := map[int]Share{}
	for k, m := range r.Members {
		for _, s := range m.Shares {
			tied[s.Unknown] = Share{len(p.Unknowns) + k, s.Coef}
		}
	}
	on := map[int]bool{}
	for _, b := range e.Bodies {
		on[b] = true
	}
	part := func(at, f, c r3.Vec) float64 {
		if !e.Moment {
			return r3.Dot(e.Along, f)
		}
		return r3.Dot(e.Along, r3.Add(r3.Cross(r3.Sub(at, e.At), f), c))
	}
	put := func(unknown int, x float64) {
		if s, ok := tied[unknown]; ok {
			unknown, x = s.Unknown, x*s.Coef
		}
		if v, ok := value[unknown]; ok {
			known += x * v
			most = max(most, math.Abs(x*v))
			return
		}
		coefs[unknown] += x
	}
	for act := range p.Acts() {
		if !on[act.Body] {
			continue
		}
		x := part(act.At, act.Force.Const, act.Couple.Const)
		known += x
		most = max(most, math.Abs(x))
		for _, t := range act.Force.Terms {
			put(t.Unknown, part(act.At, t.D, r3.Vec{}))
		}
		for _, t := range act.Couple.Terms {
			put(t.Unknown, part(act.At, r3.Vec{}, t.D))
		}
	}
	return coefs, known, most
}

// follow works every step out from its equations as written and compares the
// values with the solution's. It gives how many unknowns came from one equation.
// Some unknowns may be asked for; where none is, all are.
func follow(t testing.TB, s *statics.Solution, r *Order, asked ...problem.Query) (one int, ok bool) {
	t.Helper()
	p := s.Problem
	size := 0.0
	for _, x := range s.X {
		size = max(size, math.Abs(x.Value))
	}
	for act := range p.Acts() {
		size = max(size, r3.Norm(act.Force.Const))
	}
	value := map[int]float64{}
	ok = true
	bad := func(format string, args ...any) {
		ok = false
		t.Errorf(format, args...)
	}
	hold := func(x Found, got, most float64) {
		want := got
		if x.Symbol < len(p.Unknowns) {
			want = s.X[x.Symbol].Value
			if !s.X[x.Symbol].Fixed {
				bad("%s has no single value, and the hand solution gives one", r.Name(p, x.Symbol))
			}
		}
		if !(math.Abs(got-want) <= 1e-9*max(math.Abs(want), most, size)) || !(math.Abs(x.Value-got) <= 1e-9*max(math.Abs(want), most, size)) {
			bad("%s is %v by the equation, %v in the step, and %v by the solver", r.Name(p, x.Symbol), got, x.Value, want)
		}
	}
	for i := range r.Steps {
		step := &r.Steps[i]
		for _, n := range step.Needs {
			if _, found := value[n]; !found {
				bad("step %d needs %s, which is not found yet", i, r.Name(p, n))
			}
		}
		switch step.Kind {
		case TwoForce, Components:
			for _, x := range step.Finds {
				got := 0.0
				for _, share := range r.Members[step.Member].Shares {
					if share.Unknown == x.Symbol {
						got = share.Coef * value[len(p.Unknowns)+step.Member]
					}
				}
				hold(x, got, 0)
				value[x.Symbol] = x.Value
				one++
			}
		case One:
			e, x := &step.Equations[0], step.Finds[0]
			coefs, sum, most := evaluate(r, p, e, value)
			c := coefs[x.Symbol]
			for symbol, other := range coefs {
				if symbol != x.Symbol && !(math.Abs(other) <= 1e-9*max(1, r3.Norm(e.At))) {
					bad("step %d: %s is not alone, %s has %v beside %v", i, r.Name(p, x.Symbol), r.Name(p, symbol), other, c)
				}
			}
			hold(x, -sum/c, most/math.Abs(c))
			value[x.Symbol] = x.Value
			if x.Symbol < len(p.Unknowns) {
				one++
			}
		case ZeroForce:
			for _, x := range step.Finds {
				hold(x, 0, 0)
				value[x.Symbol] = 0
				one++
			}
		case Together:
			for k := range step.Equations {
				coefs, sum, most := evaluate(r, p, &step.Equations[k], value)
				for symbol, c := range coefs {
					if math.Abs(c) <= 1e-9 {
						continue
					}
					given := false
					for _, x := range step.Finds {
						if x.Symbol == symbol {
							sum += c * x.Value
							most = max(most, math.Abs(c*x.Value))
							given = true
						}
					}
					loose := symbol < len(p.Unknowns) && !s.X[symbol].Fixed || symbol >= len(p.Unknowns)
					if !given && loose && len(step.Equations) > len(step.Finds) {
						most = math.Inf(1) // what has no single value stands beside: nothing to hold the sum against
					} else if !given {
						bad("step %d: %s stands in the equations and is not found", i, r.Name(p, symbol))
					}
				}
				if !(math.Abs(sum) <= 1e-9*max(most, size)) {
					bad("step %d: %v is left of equation %d", i, sum, k)
				}
			}
			for _, x := range step.Finds {
				hold(x, x.Value, 0)
				value[x.Symbol] = x.Value
			}
			for k, relation := range step.Relations {
				got, known := relation.Is.Sum(func(symbol int) (float64, bool) { x, ok := value[symbol]; return x, ok })
				if len(relation.Is.Terms) != min(1, len(step.Relations)-1-k) || !known {
					bad("step %d: relation %d of an elimination is %v", i, k, relation)
				}
				hold(Found{relation.Symbol, value[relation.Symbol]}, got, 0)
				one++
			}
		}
	}
	for _, j := range DependsOn(s, asked) {
		if _, found := value[j]; !found && s.X[j].Fixed && s.Verdict != statics.NoEquilibrium {
			bad("%s has a value, and no step gives it", p.Unknowns[j].Name)
		}
	}
	return one, ok
}

func tell(r *Order, p *problem.Problem) string {
	out := ""
	for i := range r.Steps {
		step := &r.Steps[i]
		out += fmt.Sprintf("  kind %d", step.Kind)
		for k := range step.Equations {
			e := &step.Equations[k]
			out += fmt.Sprintf(" {bodies %v, cut %v, moment %v at %v along %v}", e.Bodies, e.Cut, e.Moment, e.At, e.Along)
		}
		for _, x := range step.Relations {
			out += fmt.Sprintf(" %s = %v", r.Name(p, x.Symbol), x.Is)
		}
		for _, x := range step.Finds {
			out += fmt.Sprintf(" [%s = %.5g]", r.Name(p, x.Symbol), x.Value)
		}
		out += "\n"
	}
	return out
}

// Each sheet has a hand solution of what it asks, and of all its unknowns.
func TestFixtures(t *testing.T) {
	unknowns, one, together := 0, 0, 0
	for _, fx := range append(fixtures.Starts(), fixtures.Published()...) {
		s := solveText(t, fx.Answered())
		for _, asked := range [][]problem.Query{nil, s.Problem.Asked} {
			r := find(s, asked)
			n, ok := follow(t, s, &r, asked...)
			if testing.Verbose() || !ok {
				t.Logf("%s (%s) %d\n%s", fx.Name, s.Verdict, r.Why, tell(&r, s.Problem))
			}
			if asked != nil {
				continue
			}
			for _, step := range r.Steps {
				if step.Kind == Together {
					together += len(step.Finds)
				}
			}
			unknowns, one = unknowns+len(s.Problem.Unknowns), one+n
		}
	}
	t.Logf("%d unknowns, %d by one equation, %d together", unknowns, one, together)
}
