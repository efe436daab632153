package problem

import (
	"slices"

	"trivet/mechanics/say"

	"gonum.org/v1/gonum/spatial/r3"
)

// Affine is Const + Σ Coef·unknown, in newtons or newton metres.
type Affine struct {
	Const float64
	Terms []Term
}

// Term is a multiple of the unknown with this index.
type Term struct {
	Unknown int
	Coef    float64
}

// Magnitude is that of an unknown, a line or a couple.
func (p *Problem) Magnitude(of Source) Affine {
	switch of.Thing {
	case ALine:
		return p.Lines[of.Index].Magnitude
	case ACouple:
		return p.Couples[of.Index].Magnitude
	}
	return Affine{Terms: []Term{{of.Index, 1}}}
}

// TurnsOnly tells what has no force: a couple, and a load without a resultant.
func (p *Problem) TurnsOnly(of Source) bool {
	return of.Thing == ACouple || of.Thing == ALoad && p.Loads[of.Index].Total == 0
}

// Alone is the unknown that a magnitude is, -1 where it is anything else.
func (a Affine) Alone() int {
	if a.Const == 0 && len(a.Terms) == 1 && a.Terms[0].Coef == 1 {
		return a.Terms[0].Unknown
	}
	return -1
}

// Times is a multiple of a sum.
func (a Affine) Times(factor float64) Affine {
	return Affine{factor * a.Const, say.Each(a.Terms, func(t Term) Term { return Term{t.Unknown, factor * t.Coef} })}
}

// Sum is a magnitude with the values of its unknowns, false where one has none.
func (a Affine) Sum(value func(unknown int) (float64, bool)) (float64, bool) {
	sum := a.Const
	for _, t := range a.Terms {
		x, ok := value(t.Unknown)
		if !ok {
			return 0, false
		}
		sum += t.Coef * x
	}
	return sum, true
}

// Plus adds two sums; an unknown of both stands once.
func (a Affine) Plus(b Affine) Affine {
	out := Affine{Const: a.Const + b.Const, Terms: slices.Clone(a.Terms)}
	for _, t := range b.Terms {
		if k := slices.IndexFunc(out.Terms, func(of Term) bool { return of.Unknown == t.Unknown }); k >= 0 {
			out.Terms[k].Coef += t.Coef
		} else {
			out.Terms = append(out.Terms, t)
		}
	}
	return out
}

// Along is a magnitude times a direction.
func (a Affine) Along(d r3.Vec) Vector {
	return Vector{r3.Scale(a.Const, d), say.Each(a.Terms, func(t Term) ActTerm { return ActTerm{t.Unknown, r3.Scale(t.Coef, d)} })}
}

// Vector is a force or a couple, Const + Σ unknown·D.
type Vector struct {
	Const r3.Vec
	Terms []ActTerm
}

// ActTerm is the direction that one unit of an unknown takes.
type ActTerm struct {
	Unknown int
	D       r3.Vec
}

// Sum is a force or a couple with the values of its unknowns.
func (v Vector) Sum(value func(unknown int) float64) r3.Vec {
	sum := v.Const
	for _, t := range v.Terms {
		sum = r3.Add(sum, r3.Scale(value(t.Unknown), t.D))
	}
	return sum
}

// Map changes all vectors of a force or a couple.
func (v Vector) Map(by func(r3.Vec) r3.Vec) Vector {
	return Vector{by(v.Const), say.Each(v.Terms, func(t ActTerm) ActTerm { return ActTerm{t.Unknown, by(t.D)} })}
}

// Opposite is the reaction to a force or a couple.
func (v Vector) Opposite() Vector {
	return v.Map(func(d r3.Vec) r3.Vec { return r3.Scale(-1, d) })
}

// IsZero tells that there is neither a known part nor an unknown.
func (v Vector) IsZero() bool { return v.Const == (r3.Vec{}) && len(v.Terms) == 0 }
