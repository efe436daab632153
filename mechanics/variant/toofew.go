package variant

import (
	"cmp"
	"fmt"
	"maps"
	"slices"
	"strings"
)

// TooFew says that a sheet has not so many variants, or that they were not found.
type TooFew struct {
	Asked, Found, Tried int
	Combinations        int // beside the sheet itself

	grid    bool           // already the ranges give too few
	reasons map[string]int // how often a combination was none for a reason
	source  *Source
}

func (e *TooFew) Error() string {
	if e.grid {
		return fmt.Sprintf("the ranges give %s beside the sheet itself, and %s asked: write a smaller step, or a wider range", plural(e.Combinations, "combination"), are(e.Asked, "variant"))
	}
	of := fmt.Sprintf("of %s tried", plural(e.Tried, "combination"))
	if e.Tried >= e.Combinations {
		of = fmt.Sprintf("of all %s", plural(e.Combinations, "combination"))
	}
	keep := "keep the verdict"
	if e.Found == 1 {
		keep = "keeps the verdict"
	}
	return fmt.Sprintf("%s %s %s, and %s asked: narrow the ranges to what holds, or ask for fewer", of, found(e.Found), keep, are(e.Asked, "variant"))
}

func found(n int) string {
	if n == 0 {
		return "none"
	}
	return fmt.Sprint(n)
}

func plural(n int, noun string) string {
	if n == 1 {
		return "1 " + noun
	}
	return fmt.Sprintf("%d %ss", n, noun)
}

func are(n int, noun string) string {
	if n == 1 {
		return "1 " + noun + " is"
	}
	return plural(n, noun) + " are"
}

// mostLooked is up to how many values of a given are looked at one by one.
const mostLooked = 60

// Reasons says why combinations were none to keep, a line each: first for each
// given which of its values fail with all else as in the sheet, and why; where
// that explains nothing, the reasons in the order of how often they came.
func (e *TooFew) Reasons() []string {
	if e.grid {
		return nil
	}
	var out []string
	for i := range e.source.Grids {
		out = append(out, e.source.failing(i)...)
	}
	if len(out) > 0 {
		return out
	}
	names := e.often()
	for _, name := range names[:min(len(names), 5)] {
		out = append(out, fmt.Sprintf("%s (%d of %d)", name, e.reasons[name], e.Tried))
	}
	return out
}

// often gives the reasons, those that came most often first.
func (e *TooFew) often() []string {
	return slices.SortedFunc(maps.Keys(e.reasons), func(a, b string) int {
		return cmp.Or(e.reasons[b]-e.reasons[a], strings.Compare(a, b))
	})
}

// Briefly says in one line why there is no other variant at all.
func (e *TooFew) Briefly() string {
	switch names := e.often(); {
	case e.grid:
		return "the ranges give no other values than these"
	case len(names) == 0:
		return "no other values were found in the ranges"
	default:
		return fmt.Sprintf("none of %s tried keeps the verdict: mostly %s", plural(e.Tried, "combination"), names[0])
	}
}

// failing says which values of a grid are of another kind, others as in the sheet.
func (src *Source) failing(i int) []string {
	g := &src.Grids[i]
	stride := (g.Count + mostLooked - 1) / mostLooked
	var out []string
	from, last, reason := 0, 0, ""
	flush := func() {
		switch {
		case reason == "":
		case from == last:
			out = append(out, fmt.Sprintf("%s = %s: %s", g.Name, g.Said(from), reason))
		default:
			out = append(out, fmt.Sprintf("%s = %s .. %s: %s", g.Name, g.Said(from), g.Said(last), reason))
		}
	}
	for k := 0; k < g.Count; k += stride {
		alone := &Source{Sheet: src.Sheet, Solution: src.Solution, Grids: src.Grids[i : i+1], solver: src.solver}
		_, says := alone.at([]int{k})
		now := strings.Join(says, ", ")
		if now != reason {
			flush()
			from, reason = k, now
		}
		last = k
	}
	flush()
	return out
}
