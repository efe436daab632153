package uncertainty

import (
	"encoding/binary"
	"math"
	"math/rand/v2"
	"slices"
)

// How extremes inside the box are looked for.
const (
	// insideSample is how many places inside are drawn at random.
	insideSample = 64
	// probe is the step, in shares of a ±, by which it is seen whether a number still
	// grows: an extreme nearer to the end than that is less than its square, 1e-4 of
	// what the input does, greater than at the end.
	probe = 0.01
	// rounds is how often all inputs are gone through.
	rounds = 3
	// narrowings of a stretch by the golden section leave 1e-5 of it, and less than
	// 1e-9 of a smooth number's change.
	narrowings = 24
)

// golden is what of a stretch is kept: (√5 - 1) / 2.
var golden = (math.Sqrt(5) - 1) / 2

// inside looks for extremes inside the box: at places drawn at random, and from the
// best place of each number along one input after the other, for as long as that
// still grows there, which is where its derivative has changed sign.
func (f *follower) inside() {
	for k := range f.base {
		f.edge = append(f.edge, [2]float64{f.low[k].value, f.high[k].value})
	}
	random := rand.New(rand.NewPCG(2, uint64(len(f.Measured))))
	for range insideSample {
		if f.left < 0 || f.stopped {
			return
		}
		p := make(Place, len(f.Measured))
		for i := range p {
			p[i] = 2*random.Float64() - 1
		}
		f.visit(p)
	}
	seen := map[string][]float64{}
	done := true
	n := len(f.base)
	for _, k := range slices.Concat(span(len(f.Spreads), n), span(0, len(f.Spreads))) { // the checks first
		if f.lost[k] || f.high[k].value-f.low[k].value <= f.noise(k) {
			continue
		}
		if k < len(f.Spreads) || k == n-1 {
			done = f.climb(k, 1, seen) && done
		}
		if k < n-1 {
			done = f.climb(k, -1, seen) && done
		}
	}
	f.Search.Inside = done
}

func span(from, to int) (out []int) {
	for k := from; k < to; k++ {
		out = append(out, k)
	}
	return out
}

// best is the greatest of a number, or with sign -1 the least.
func (f *follower) best(k int, sign float64) extreme {
	if sign > 0 {
		return f.high[k]
	}
	return f.low[k]
}

// climb goes from the best place of a number along one input after the other. It
// tells whether it came to an end within the work that may be done.
func (f *follower) climb(k int, sign float64, seen map[string][]float64) bool {
	for range rounds {
		grew := false
		for i := range f.Measured {
			for _, way := range []float64{-1, 1} {
				from := f.best(k, sign)
				p := slices.Clone(from.at)
				if p[i] = max(-1, min(1, p[i]+way*probe)); p[i] == from.at[i] {
					continue
				}
				if f.left < 0 || f.stopped {
					return false
				}
				key := p.key()
				got, ok := seen[key]
				if !ok {
					got = f.visit(p)
					seen[key] = got
				}
				if sign*(got[k]-from.value) > f.noise(k) {
					f.narrow(k, sign, from.at, i, from.at[i], way)
					grew = true
					break
				}
			}
		}
		if grew {
			continue
		}
		was := f.best(k, sign).value
		for i, share := range f.best(k, sign).at { // a peak that the probes stepped over
			if f.left < 0 || f.stopped {
				return false
			}
			if math.Abs(share) < 1 {
				f.narrow(k, sign, f.best(k, sign).at, i, max(-1, share-probe), min(1, share+probe))
			}
		}
		if sign*(f.best(k, sign).value-was) <= f.noise(k) {
			return true
		}
	}
	return false
}

// narrow looks for the best of a number along input i, between two shares of its ±.
func (f *follower) narrow(k int, sign float64, from Place, i int, a, b float64) {
	from = slices.Clone(from)
	value := func(share float64) float64 {
		p := slices.Clone(from)
		p[i] = share
		v := sign * f.visit(p)[k]
		if math.IsNaN(v) {
			return math.Inf(-1)
		}
		return v
	}
	start := value(a)
	value(b) // where it may be best after all
	x1, x2 := b-golden*(b-a), a+golden*(b-a)
	v1, v2 := value(x1), value(x2)
	for range narrowings {
		if v1 >= v2 || start > max(v1, v2) { // on a plain, and where all is worse, back to the start
			b, x2, v2 = x2, x1, v1
			x1 = b - golden*(b-a)
			v1 = value(x1)
		} else {
			a, x1, v1 = x1, x2, v2
			x2 = a + golden*(b-a)
			v2 = value(x2)
		}
	}
}

// key tells places apart.
func (p Place) key() string {
	var b []byte
	for _, share := range p {
		b = binary.LittleEndian.AppendUint64(b, math.Float64bits(share))
	}
	return string(b)
}
