package uncertainty

import (
	"fmt"
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
	for k := range f.numbers {
		n := &f.numbers[k]
		n.edge = [2]float64{n.low.value, n.high.value}
	}
	random := rand.New(rand.NewPCG(2, uint64(len(f.Measured))))
	for range insideSample {
		if f.spent() {
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
	for k := range f.numbers {
		n := &f.numbers[k]
		if n.lost || n.high.value-n.low.value <= n.noise {
			continue
		}
		if n.reach == nil {
			done = f.climb(k, 1, seen) && done
		}
		if n.by != nil {
			done = f.climb(k, -1, seen) && done
		}
	}
	f.Search.Inside = done
}

// spent tells that no more work may be done, or is wanted.
func (f *follower) spent() bool { return f.left < 0 || f.stopped }

// best is the greatest of a number, or with sign -1 the least.
func (n *number) best(sign float64) extreme {
	if sign > 0 {
		return n.high
	}
	return n.low
}

// climb goes from the best place of a number along one input after the other. It
// tells whether it came to an end within the work that may be done.
func (f *follower) climb(k int, sign float64, seen map[string][]float64) bool {
	n := &f.numbers[k]
	better := func(v, than float64) bool { return sign*(v-than) > n.noise }
	for range rounds {
		grew := false
		for i := range f.Measured {
			for _, way := range []float64{-1, 1} {
				from := n.best(sign)
				p := slices.Clone(from.at)
				if p[i] = max(-1, min(1, p[i]+way*probe)); p[i] == from.at[i] {
					continue
				}
				if f.spent() {
					return false
				}
				key := p.key()
				if seen[key] == nil {
					seen[key] = f.visit(p)
				}
				if better(seen[key][k], from.value) {
					f.narrow(k, sign, from.at, i, from.at[i], way)
					grew = true
					break
				}
			}
		}
		if grew {
			continue
		}
		was := n.best(sign)
		for i, share := range was.at { // a peak that the probes stepped over
			if f.spent() {
				return false
			}
			if math.Abs(share) < 1 {
				f.narrow(k, sign, n.best(sign).at, i, max(-1, share-probe), min(1, share+probe))
			}
		}
		if !better(n.best(sign).value, was.value) {
			return true
		}
	}
	return false
}

// narrow looks for the best of a number along input i, between two shares of its ±.
func (f *follower) narrow(k int, sign float64, from Place, i int, a, b float64) {
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
func (p Place) key() string { return fmt.Sprint([]float64(p)) }
