package statics

import (
	"fmt"
	"math/big"
	"math/rand/v2"
	"strings"
	"testing"

	"trivet/mechanics/problem"
	"trivet/mechanics/sheet"
)

// rig is a problem of particles kept twice: as the rows of a sheet, and in exact
// numbers. Its directions have rational lengths (Pythagorean triples and
// quadruples), so that unit vectors are exact too.
type rig struct {
	planar bool
	points []rigPoint
	lines  []rigLine
}

type rigPoint struct {
	name string
	at   [3]*big.Rat
	free bool
}

type rigLine struct {
	name, kind string
	path       []int
	legs       []*big.Rat // the length of each stretch of the path
	at         int        // where along is a direction
	along      []int64
	size       int64 // |along|
	components []string
	magnitude  string // as typed; empty for an unknown of its own
	terms      map[string]*big.Rat
	known      *big.Rat
}

// quads are the whole vectors with a whole length: a² + b² + c² = d².
func quads(planar bool, most int64) (out [][4]int64) {
	for a := -most; a <= most; a++ {
		for b := -most; b <= most; b++ {
			for c := -most; c <= most; c++ {
				if planar && c != 0 {
					continue
				}
				if d := root(a*a + b*b + c*c); d > 0 {
					out = append(out, [4]int64{a, b, c, d})
				}
			}
		}
	}
	return out
}

// root is the square root of a square, else 0.
func root(n int64) int64 {
	for d := int64(1); d*d <= n; d++ {
		if d*d == n {
			return d
		}
	}
	return 0
}

func (r *rig) dim() int {
	if r.planar {
		return 2
	}
	return 3
}

func (r *rig) point(free bool, at [3]*big.Rat) int {
	name := fmt.Sprintf("G%d", len(r.points))
	if free {
		name = fmt.Sprintf("P%d", len(r.points))
	}
	r.points = append(r.points, rigPoint{name, at, free})
	return len(r.points) - 1
}

// off is the place a whole vector away from a point.
func (r *rig) off(from int, v [4]int64, times *big.Rat) (at [3]*big.Rat, length *big.Rat) {
	for k := range at {
		at[k] = new(big.Rat).Mul(big.NewRat(v[k], 1), times)
		at[k].Add(at[k], r.points[from].at[k])
	}
	length = new(big.Rat).Mul(big.NewRat(v[3], 1), times)
	return at, length.Abs(length)
}

func typed(x *big.Rat) string {
	if x.IsInt() {
		return x.Num().String()
	}
	if n, exact := x.FloatPrec(); exact {
		return x.FloatString(n)
	}
	return x.RatString()
}

// text writes the sheet.
func (r *rig) text() string {
	var b strings.Builder
	if r.planar {
		b.WriteString("plane = \"xy\"\n")
	}
	b.WriteString("[points]\n")
	for _, p := range r.points {
		parts := make([]string, r.dim())
		for k := range parts {
			parts[k] = typed(p.at[k])
		}
		on := ""
		if p.free {
			on = ", on = \"particle\""
		}
		fmt.Fprintf(&b, "%s = { at = \"%s\"%s }\n", p.name, strings.Join(parts, ", "), on)
	}
	b.WriteString("[lines]\n")
	for _, l := range r.lines {
		fmt.Fprintf(&b, "%s = { kind = %q", l.name, l.kind)
		switch {
		case l.path != nil:
			names := make([]string, len(l.path))
			for k, p := range l.path {
				names[k] = r.points[p].name
			}
			fmt.Fprintf(&b, ", path = %q", strings.Join(names, " "))
		case l.components != nil:
			fmt.Fprintf(&b, ", at = %q, components = \"(%s)\"", r.points[l.at].name, strings.Join(l.components, ", "))
		default:
			fmt.Fprintf(&b, ", at = %q", r.points[l.at].name)
			if l.kind != "weight" {
				parts := make([]string, r.dim())
				for k := range parts {
					parts[k] = fmt.Sprint(l.along[k])
				}
				fmt.Fprintf(&b, ", along = \"(%s)\"", strings.Join(parts, ", "))
			}
		}
		if l.magnitude != "" {
			fmt.Fprintf(&b, ", magnitude = %q", l.magnitude)
		}
		b.WriteString(" }\n")
	}
	return b.String()
}

// exact writes ΣF = 0 of every particle in exact numbers.
func (r *rig) exact() *exactSystem {
	row := map[int]int{} // a particle's first row
	for i, p := range r.points {
		if p.free {
			row[i] = len(row) * r.dim()
		}
	}
	s := newExactSystem(len(row) * r.dim())
	for _, l := range r.lines {
		r.add(s, l, row)
	}
	return s
}

func (r *rig) add(s *exactSystem, l rigLine, row map[int]int) {
	for name := range l.terms {
		s.column(name)
	}
	force := func(at int, unit [3]*big.Rat) {
		first, free := row[at]
		if !free {
			return
		}
		for k := range r.dim() {
			for name, coef := range l.terms {
				c := s.column(name)[first+k]
				c.Add(c, new(big.Rat).Mul(coef, unit[k]))
			}
			if l.known != nil {
				s.right[first+k].Sub(s.right[first+k], new(big.Rat).Mul(l.known, unit[k]))
			}
		}
	}
	switch {
	case l.components != nil:
		for k, c := range l.components {
			if c == "?" {
				s.column(l.name + "xyz"[k:k+1])[row[l.at]+k].SetInt64(1)
			} else {
				x, _ := new(big.Rat).SetString(c)
				s.right[row[l.at]+k].Sub(s.right[row[l.at]+k], x)
			}
		}
	case l.path != nil:
		for k := 1; k < len(l.path); k++ {
			from, to := l.path[k-1], l.path[k]
			var there, back [3]*big.Rat
			for c := range there {
				there[c] = new(big.Rat).Sub(r.points[to].at[c], r.points[from].at[c])
				there[c].Quo(there[c], l.legs[k-1])
				back[c] = new(big.Rat).Neg(there[c])
			}
			if l.kind == "strut" {
				there, back = back, there
			}
			force(from, there)
			force(to, back)
		}
	default:
		var unit [3]*big.Rat
		for c := range unit {
			unit[c] = big.NewRat(l.along[c], l.size)
		}
		force(l.at, unit)
	}
}

// solveText takes a sheet's text the whole road: parse, read, solve.
func solveText(t testing.TB, text string) *Solution {
	t.Helper()
	sh, err := sheet.Parse([]byte(text))
	if err != nil {
		t.Fatalf("%v\n%s", err, text)
	}
	p, errs := problem.Read(sh)
	if len(errs) > 0 {
		t.Fatalf("%v at %v\n%s", errs[0], errs[0].Ref, text)
	}
	return Solve(p)
}

func pick[T any](rng *rand.Rand, from ...T) T { return from[rng.IntN(len(from))] }
