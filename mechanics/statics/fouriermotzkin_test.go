package statics

import "math/big"

// half is c + Σ g[k]·y[k] >= 0 in exact numbers.
type half struct {
	c *big.Rat
	g []*big.Rat
}

// reach is what exact arithmetic says of cost·y over a set of halves. A nil end
// is none.
type reach struct {
	empty     bool
	low, high *big.Rat
}

// exactReach finds the reach of cost·y by Fourier-Motzkin elimination: t stands
// for cost·y in place of one y, and the other y are eliminated one after the
// other, each lower bound against each upper one.
func exactReach(cost []*big.Rat, halves []half) reach {
	lead := -1
	for k, c := range cost {
		if c.Sign() != 0 {
			lead = k
		}
	}
	n := len(cost)
	rows := make([]half, len(halves)) // over the other y, then t
	for i, h := range halves {
		row := half{c: new(big.Rat).Set(h.c)}
		times := new(big.Rat).Quo(h.g[lead], cost[lead])
		for k := range n {
			if k == lead {
				continue
			}
			row.g = append(row.g, new(big.Rat).Sub(h.g[k], new(big.Rat).Mul(times, cost[k])))
		}
		row.g = append(row.g, times)
		rows[i] = row
	}
	for k := range n - 1 {
		rows = eliminated(rows, k)
	}
	var r reach
	for _, row := range rows {
		t := row.g[n-1]
		switch t.Sign() {
		case 0:
			r.empty = r.empty || row.c.Sign() < 0
			continue
		case 1:
			if at := new(big.Rat).Quo(new(big.Rat).Neg(row.c), t); r.low == nil || at.Cmp(r.low) > 0 {
				r.low = at
			}
		case -1:
			if at := new(big.Rat).Quo(new(big.Rat).Neg(row.c), t); r.high == nil || at.Cmp(r.high) < 0 {
				r.high = at
			}
		}
	}
	r.empty = r.empty || r.low != nil && r.high != nil && r.low.Cmp(r.high) > 0
	return r
}

// eliminated gives the rows without y[k].
func eliminated(rows []half, k int) (out []half) {
	seen := map[string]bool{}
	keep := func(h half) {
		if key := h.key(); !seen[key] {
			seen[key] = true
			out = append(out, h)
		}
	}
	for _, a := range rows {
		if a.g[k].Sign() == 0 {
			keep(a)
		}
		if a.g[k].Sign() <= 0 {
			continue
		}
		for _, b := range rows {
			if b.g[k].Sign() >= 0 {
				continue
			}
			s, t := new(big.Rat).Neg(b.g[k]), a.g[k]
			sum := half{c: combined(a.c, s, b.c, t)}
			for j := range a.g {
				sum.g = append(sum.g, combined(a.g[j], s, b.g[j], t))
			}
			keep(sum)
		}
	}
	return out
}

func combined(a, s, b, t *big.Rat) *big.Rat {
	x := new(big.Rat).Mul(a, s)
	return x.Add(x, new(big.Rat).Mul(b, t))
}

// key is the same for multiples of one half.
func (h half) key() string {
	var by *big.Rat
	key := ""
	for _, x := range append(append([]*big.Rat{}, h.g...), h.c) {
		if by == nil && x.Sign() != 0 {
			by = new(big.Rat).Abs(x)
		}
		if by != nil {
			x = new(big.Rat).Quo(x, by)
		}
		key += x.RatString() + " "
	}
	return key
}
