package variant

import (
	"cmp"
	"fmt"
	"maps"
	"slices"
	"strings"

	"trivet/mechanics/diag"
	"trivet/mechanics/say"
)

// TooFew says that a sheet has not so many variants, or that they were not found.
type TooFew struct {
	Asked, Found, Tried int
	Combinations        int // beside the sheet itself

	reasons map[string]int // how often a combination was none for a reason
	source  *Source
}

func (e *TooFew) Error() string { return e.Unwrap().Error() }

// Unwrap gives it as the error that is printed.
func (e *TooFew) Unwrap() error {
	asked := ", but " + say.Count(e.Asked, "variant") + " " + say.Plural(e.Asked, "is") + " asked for"
	if e.Combinations < e.Asked { // already the ranges give too few
		return diag.New("the ranges give "+say.Count(e.Combinations, "combination")+" besides the sheet itself"+asked, "a smaller step or a wider range")
	}
	of := "of " + say.Count(e.Tried, "combination") + " tried, "
	if e.Tried >= e.Combinations {
		of = "of all " + say.Count(e.Combinations, "combination") + ", "
	}
	has := fmt.Sprint(e.Found) + " " + say.Plural(e.Found, "has")
	if e.Found == 0 {
		has = "none has"
	}
	return diag.New(of+has+" the same verdict"+asked, "ranges in which the verdict is the same, or fewer variants")
}

// maxLooked is up to how many values of a given are looked at one by one.
const maxLooked = 60

// Reasons says why combinations were none to keep, a line each: first for each
// given which of its values fail with all else as in the sheet, and why; where
// that explains nothing, the reasons in the order of how often they came.
func (e *TooFew) Reasons() []string {
	if e.Combinations < e.Asked { // already the ranges give too few
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
	case e.Combinations < e.Asked:
		return "the ranges contain no other values"
	case len(names) == 0:
		return "no other values were found in the ranges"
	default:
		return fmt.Sprintf("none of %s tried has the same verdict; the most frequent reason: %s", say.Count(e.Tried, "combination"), names[0])
	}
}

// failing says which values of a grid are of another kind, others as in the sheet.
func (src *Source) failing(i int) []string {
	g := &src.Grids[i]
	stride := (g.Count + maxLooked - 1) / maxLooked
	type run struct {
		from, to int
		reason   string
	}
	var runs []run
	alone := Source{Sheet: src.Sheet, Solution: src.Solution, Grids: src.Grids[i : i+1], reader: src.reader}
	for k := 0; k < g.Count; k += stride {
		_, says := alone.at([]int{k})
		reason := strings.Join(says, ", ")
		if n := len(runs); n == 0 || runs[n-1].reason != reason {
			runs = append(runs, run{k, k, reason})
		}
		runs[len(runs)-1].to = k
	}
	var out []string
	for _, r := range runs {
		values := g.Said(r.from)
		if r.to > r.from {
			values += " .. " + g.Said(r.to)
		}
		if r.reason != "" {
			out = append(out, fmt.Sprintf("%s = %s: %s", g.Name, values, r.reason))
		}
	}
	return out
}
