package tutor

import (
	"math"
	"slices"
)

// asWritten keeps of several explanations those that the terms of the known forces, as they
// are written, speak for: each force's part is a term, and a product has the resultant that
// acts at a wrong place, or the arm of a wrong resultant.
func (t *Practice) asWritten(found []hypothesis, w *written) []hypothesis {
	if len(found) < 2 {
		return found
	}
	ranks, top := make([]int, len(found)), 0
	for i := range found {
		ranks[i] = t.rank(&found[i], w)
		top = max(top, ranks[i])
	}
	var best []hypothesis
	for i, h := range found {
		if ranks[i] == top {
			best = append(best, h)
		}
	}
	return best
}

// rank is 0 where the terms do not tell, 1 where they are the parts of the known forces with
// the mistake, and 2 where its product tells what is wrong in it as well.
func (t *Practice) rank(h *hypothesis, w *written) int {
	used := make([]bool, len(w.known))
	var changed *known
	for i := range t.forces {
		f := &t.forces[i]
		if f.unknown >= 0 {
			continue
		}
		part := h.sum.part(f)
		if f == h.of {
			part = h.part
		}
		if part == 0 {
			continue
		}
		k := 0
		for k < len(used) && (used[k] || math.Abs(w.known[k].value-h.by*part) > w.half[len(w.half)-1]+rounding*math.Abs(part)) {
			k++
		}
		if k == len(used) {
			return 0
		}
		used[k] = true
		if f == h.of {
			changed = &w.known[k]
		}
	}
	if slices.Contains(used, false) {
		return 0
	}
	told := 0
	if len(w.known) > 1 { // one number may be the sum of all
		told = 1
	}
	if changed == nil || len(changed.typed) < 2 || !h.sum.moment {
		return told
	}
	p := t.Problem
	size := h.sum.size(h.of)
	has := func(v float64) bool {
		return slices.ContainsFunc(changed.typed, func(x literal) bool { return math.Abs(x.value-v) <= x.half*(1+rounding) })
	}
	hasForce, hasArm := has(size/p.Units.Force.Factor), has(math.Abs(h.sum.part(h.of))/size/p.Units.Length.Factor)
	switch h.kind {
	case "load-place", "arm-point", "arm-distance", "whole-force":
		hasArm = !hasArm
	case "load-length", "intensity", "factor-1000", "gravity":
		hasForce = !hasForce
	}
	if hasForce && hasArm {
		return 2
	}
	return told
}
