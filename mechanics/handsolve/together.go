package handsolve

import (
	"cmp"
	"math"
	"math/bits"
	"slices"
)

const (
	// bitsLeft is up to how many symbols left a set of equations is searched for:
	// a set of them is a word then.
	bitsLeft = 64
	// manyTogether is up to how many unknowns of one equation are looked at.
	manyTogether = 6
	// manySets is how many sets of symbols are tried before a set is grown.
	manySets = 400
	// starts is from how many equations a set is grown.
	starts = 48
	// apartTol is the part of an equation, of length one, that others must leave of
	// it for it to say something new.
	apartTol = 1e-7
)

// writing is an equation with several symbols left.
type writing struct {
	g    *group
	c    candidate
	of   uint64 // the symbols, by their place among those left
	row  []float64
	cost float64
}

// set is some equations with as many unknowns.
type set struct {
	rows []*writing
	of   uint64
	cost float64
}

func (s *set) before(t *set) bool {
	if t == nil || len(s.rows) != len(t.rows) {
		return t == nil || len(s.rows) < len(t.rows)
	}
	return s.cost < t.cost
}

// together puts down the smallest set of equations that fixes its unknowns.
func (f *finder) together() bool {
	place, symbols := f.places()
	if len(symbols) > bitsLeft {
		return false
	}
	all := f.writings(place, symbols)
	var best *set
	tried := map[uint64]bool{}
	for i := range all {
		w := &all[i]
		if best != nil && bits.OnesCount64(w.of) > len(best.rows) || len(tried) >= manySets {
			break
		}
		if tried[w.of] {
			continue
		}
		tried[w.of] = true
		if s := within(all, w.of); s != nil && s.before(best) {
			best = s
		}
	}
	if best == nil || len(best.rows) > 2 {
		for i := range all[:min(len(all), starts)] {
			if s := grown(all, &all[i], best); s != nil && s.before(best) {
				best = s
			}
		}
	}
	if best == nil {
		return false
	}
	return f.putTogether(best, symbols)
}

// places numbers the symbols that are left.
func (f *finder) places() (place map[int]int, symbols []int) {
	place = map[int]int{}
	for symbol := range f.known {
		if !f.known[symbol] && (symbol >= f.n || f.tied[symbol] < 0) {
			place[symbol] = len(symbols)
			symbols = append(symbols, symbol)
		}
	}
	return place, symbols
}

// writings are all equations that contain a few symbols, those of fewest first.
func (f *finder) writings(place map[int]int, symbols []int) []writing {
	var all []writing
	for _, g := range f.groups {
		left := f.left(g)
		if len(left) == 0 {
			continue
		}
		f.candidates(g, left, func(c *candidate) {
			w := writing{g: g, c: *c}
			size := 0.0
			for _, n := range left {
				x := f.coef(c, n)
				if x == 0 {
					continue
				}
				if w.row == nil {
					w.row = make([]float64, len(symbols))
				}
				w.of |= 1 << place[n.symbol]
				// Rows are compared by directions, so a couple counts over the length.
				if !n.pull() {
					x /= f.length
				}
				w.row[place[n.symbol]] = x
				size = math.Hypot(size, x)
			}
			if k := bits.OnesCount64(w.of); k == 0 || k > manyTogether {
				return
			}
			for i := range w.row {
				w.row[i] /= size
			}
			w.cost = f.cost(g, c, bits.OnesCount64(w.of))
			all = append(all, w)
		})
	}
	slices.SortStableFunc(all, func(a, b writing) int {
		if d := bits.OnesCount64(a.of) - bits.OnesCount64(b.of); d != 0 {
			return d
		}
		return cmp.Compare(a.cost, b.cost)
	})
	return all
}

// span keeps rows that are independent of each other.
type span [][]float64

func (s *span) put(row []float64) bool {
	r := slices.Clone(row)
	size := 0.0
	for range 2 {
		for _, b := range *s {
			dot := 0.0
			for i := range r {
				dot += r[i] * b[i]
			}
			for i := range r {
				r[i] -= dot * b[i]
			}
		}
	}
	for _, x := range r {
		size = math.Hypot(size, x)
	}
	if size <= apartTol {
		return false
	}
	for i := range r {
		r[i] /= size
	}
	*s = append(*s, r)
	return true
}

// within collects equations that contain only these symbols, until they fix them.
func within(all []writing, of uint64) *set {
	s := set{of: of}
	var basis span
	k := bits.OnesCount64(of)
	for i := range all {
		w := &all[i]
		if bits.OnesCount64(w.of) > k {
			break
		}
		if w.of&^of == 0 && basis.put(w.row) {
			s.rows = append(s.rows, w)
			s.cost += w.cost
			if len(s.rows) == k {
				return &s
			}
		}
	}
	return nil
}

// grown adds to an equation the one that brings the fewest new symbols, until
// there are as many equations as symbols; nil where that is no better than best.
func grown(all []writing, first *writing, best *set) *set {
	of := first.of
	for {
		if s := within(all, of); s != nil {
			return s
		}
		more, add := math.MaxInt, uint64(0)
		for i := range all {
			if n := bits.OnesCount64(all[i].of &^ of); n > 0 && n < more && all[i].of&of != 0 {
				more, add = n, all[i].of
			}
		}
		of |= add
		if add == 0 || best != nil && bits.OnesCount64(of) >= len(best.rows) {
			return nil
		}
	}
}

// putTogether solves a set and puts it down.
func (f *finder) putTogether(s *set, symbols []int) bool {
	var of []int
	for i, symbol := range symbols {
		if s.of&(1<<i) != 0 {
			of = append(of, symbol)
		}
	}
	step := Step{Kind: Together}
	for _, w := range s.rows {
		step.Equations = append(step.Equations, f.equation(w.g, &w.c))
		step.Screw = step.Screw || f.screw(w.g, of)
	}
	return f.putSolved(step, of)
}
