package variant

import (
	"cmp"
	"fmt"
	"math/rand/v2"

	"trivet/mechanics/diag"
	"trivet/mechanics/sheet"
	"trivet/mechanics/statics"
)

// Variant is a sheet with other values of its givens.
type Variant struct {
	Sheet    *sheet.Sheet
	Solution *statics.Solution
	At       []int // the value of each grid
}

// Source is a sheet to make variants of.
type Source struct {
	Sheet    *sheet.Sheet
	Solution *statics.Solution
	Grids    []Grid

	Tries int // how many combinations are solved at most; 0 for a number by the count

	solver solver
	tasks  []Task
}

// NewSource looks at a sheet that was read and solved. The error
// says that no given has a range.
func NewSource(s *sheet.Sheet, sol *statics.Solution) (*Source, error) {
	src := &Source{Sheet: s, Solution: sol, Grids: Grids(s, sol.Problem), solver: newSolver()}
	if len(src.Grids) == 0 {
		return nil, diag.New("no given has a range", `W = { value = "400 N", range = "300 N .. 500 N", step = "50 N" }`)
	}
	for _, g := range src.Grids {
		src.tasks = append(src.tasks, Follow(s, sol.Problem, g.Name))
	}
	return src, nil
}

// Combinations is how many sheets the ranges give beside the sheet itself, at
// most 1<<40.
func (src *Source) Combinations() int {
	n, own := 1, true
	for i := range src.Grids {
		n = min(n*min(src.Grids[i].Count, 1<<22), most)
		own = own && src.ownAt(i) >= 0
	}
	if own {
		n--
	}
	return n
}

// ownAt gives which value of a grid is the sheet's own, or -1.
func (src *Source) ownAt(i int) int {
	g := &src.Grids[i]
	k := int((g.was/g.factor-g.low)/g.step + 0.5)
	if k >= 0 && k < g.Count && g.own(k) {
		return k
	}
	return -1
}

// The stream of random numbers of a seed, so that another use of the same seed
// draws others.
const stream = 0x7472697665740001

// Seeded gives the random numbers of a seed: the same on every machine.
func Seeded(seed uint64) *rand.Rand { return rand.New(rand.NewPCG(seed, stream)) }

// listed is up to how many combinations are put in a random order as a whole;
// beyond it they are drawn one by one.
const listed = 1 << 14

// tries is how many combinations are solved at most for so many variants.
func tries(count int) int { return 400 + 40*count }

// Draw gives so many variants, each with other values than the sheet and than the
// others, whose verdict is of the same kind (see strays). The error, a *TooFew,
// says why there are not so many.
func (src *Source) Draw(r *rand.Rand, count int) ([]Variant, error) {
	few := &TooFew{Asked: count, Combinations: src.Combinations(), reasons: map[string]int{}, source: src}
	if few.Combinations < count {
		few.grid = true
		return nil, few
	}
	var out []Variant
	next := src.order(r)
	for few.Tried < cmp.Or(src.Tries, tries(count)) {
		at := next()
		if at == nil {
			break
		}
		few.Tried++
		v, says := src.at(at)
		if len(says) > 0 {
			few.reasons[says[0]]++
			continue
		}
		if out = append(out, v); len(out) == count {
			return out, nil
		}
	}
	few.Found = len(out)
	return out, few
}

// order gives combinations in random order, none twice and not the sheet's own;
// nil when there are no more, or none new is found in many draws.
func (src *Source) order(r *rand.Rand) func() []int {
	total := 1
	for i := range src.Grids {
		total = min(total*min(src.Grids[i].Count, listed+1), listed+1)
	}
	var all []int
	if total <= listed {
		all = r.Perm(total)
	}
	seen := map[string]bool{}
	return func() []int {
		for range 1000 {
			at := make([]int, len(src.Grids))
			if total > listed {
				for i := range at {
					at[i] = r.IntN(src.Grids[i].Count)
				}
				key := fmt.Sprint(at)
				if seen[key] {
					continue
				}
				seen[key] = true
			} else {
				if len(all) == 0 {
					return nil
				}
				for i, rest := 0, all[0]; i < len(at); i++ {
					at[i], rest = rest%src.Grids[i].Count, rest/src.Grids[i].Count
				}
				all = all[1:]
			}
			if !src.own(at) {
				return at
			}
		}
		return nil
	}
}

func (src *Source) own(at []int) bool {
	for i, k := range at {
		if !src.Grids[i].own(k) {
			return false
		}
	}
	return true
}

// at is the sheet with the values of a combination, and why it is none to keep.
func (src *Source) at(at []int) (v Variant, says []string) {
	edits := make([]sheet.Edit, len(at))
	for i, k := range at {
		edits[i] = sheet.SetCell{Ref: src.Grids[i].Ref, Text: src.Grids[i].Text(k)}
	}
	s, _, err := src.Sheet.ApplyAll(edits)
	if err != nil {
		return v, []string{"cannot be written: " + err.Error()}
	}
	now := src.solver.solve(s)
	return Variant{Sheet: s, Solution: now.solution, At: at}, strays(src.Solution, now)
}
