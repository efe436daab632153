package variant

import (
	"cmp"
	"fmt"
	"iter"
	"math/rand/v2"
	"slices"

	"trivet/mechanics/diag"
	"trivet/mechanics/problem"
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
	Tasks    []Task // what title and statement say of the varied given of each grid

	Tries int // how many combinations are solved at most; 0 for a number by the count

	reader *problem.Reader
	own    []int // the sheet's own combination, -1 for a value that is not on its grid
}

// NewSource looks at a sheet that was read and solved. The error
// says that no given has a range.
func NewSource(s *sheet.Sheet, sol *statics.Solution) (*Source, error) {
	src := &Source{Sheet: s, Solution: sol, Grids: Grids(s, sol.Problem), reader: problem.NewReader()}
	if len(src.Grids) == 0 {
		return nil, diag.New("no given has a range", `W = { value = "400 N", range = "300 N .. 500 N", step = "50 N" }`)
	}
	for _, g := range src.Grids {
		src.Tasks = append(src.Tasks, Follow(s, sol.Problem, g.Name))
		src.own = append(src.own, g.own())
	}
	return src, nil
}

// Combinations is how many sheets the ranges give beside the sheet itself, at
// most 1<<40.
func (src *Source) Combinations() int {
	if slices.Contains(src.own, -1) {
		return src.total()
	}
	return src.total() - 1
}

// total counts the sheet itself too, where its values are on the grids.
func (src *Source) total() int {
	n := 1
	for _, g := range src.Grids {
		n = min(n*min(g.Count, 1<<22), most)
	}
	return n
}

// The stream of random numbers of a seed, so that another use of the same seed
// draws others.
const stream = 0x7472697665740001

// Seeded gives the random numbers of a seed: the same on every machine.
func Seeded(seed uint64) *rand.Rand { return rand.New(rand.NewPCG(seed, stream)) }

// listed is up to how many combinations are put in a random order as a whole;
// beyond it they are drawn one by one.
const listed = 1 << 14

// Draw gives so many variants, each with other values than the sheet and than the
// others, whose verdict is of the same kind (see strays). The error, a *TooFew,
// says why there are not so many.
func (src *Source) Draw(r *rand.Rand, count int) ([]Variant, error) {
	few := &TooFew{Asked: count, Combinations: src.Combinations(), reasons: map[string]int{}, source: src}
	if few.Combinations < count {
		return nil, few
	}
	var out []Variant
	for at := range src.order(r) {
		if few.Tried == cmp.Or(src.Tries, 400+40*count) {
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

// order gives combinations in random order, none twice and not the sheet's own,
// until there are no more, or none new is found in many draws.
func (src *Source) order(r *rand.Rand) iter.Seq[[]int] {
	return func(yield func([]int) bool) {
		if total := src.total(); total <= listed {
			for _, rest := range r.Perm(total) {
				at := make([]int, len(src.Grids))
				for i := range at {
					at[i], rest = rest%src.Grids[i].Count, rest/src.Grids[i].Count
				}
				if !slices.Equal(at, src.own) && !yield(at) {
					return
				}
			}
			return
		}
		seen := map[string]bool{}
		for vain := 0; vain < 1000; vain++ {
			at := make([]int, len(src.Grids))
			for i := range at {
				at[i] = r.IntN(src.Grids[i].Count)
			}
			key := fmt.Sprint(at)
			if seen[key] || slices.Equal(at, src.own) {
				continue
			}
			seen[key], vain = true, 0
			if !yield(at) {
				return
			}
		}
	}
}

// at is the sheet with the values of a combination, and why it is none to keep.
func (src *Source) at(at []int) (v Variant, says []string) {
	edits := make([]sheet.Edit, len(at))
	for i, k := range at {
		edits[i] = sheet.SetCell{Ref: src.Grids[i].Ref, Text: src.Grids[i].Text(k)}
	}
	s, err := src.Sheet.Apply(edits...)
	if err != nil {
		return v, []string{"cannot be written: " + err.Error()}
	}
	now, err := solve(src.reader, s)
	if err != nil {
		return v, []string{err.Error()}
	}
	return Variant{Sheet: s, Solution: now, At: at}, strays(src.Solution, now)
}
