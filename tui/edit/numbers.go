package edit

import (
	"errors"
	"hash/fnv"

	"trivet/mechanics/problem"
	"trivet/mechanics/sheet"
	"trivet/mechanics/statics"
	"trivet/mechanics/variant"
	"trivet/tui/cells"
)

// variantWork bounds how long a key may look for a variant, as equations solved
// with so many unknowns each: some tenths of a second.
const variantWork = 4000

// NewNumbers makes a sheet a random variant of itself, as one step that undo takes back: givens take
// values of their ranges, what title and statement say of them follows, the printed answers go, and
// the verdict stays the same kind. A sheet has another variant for each press, and the same for the
// same keys from the start: what a person does can be done once more.
func NewNumbers(s *sheet.Sheet, press int) Outcome {
	p, errs := problem.Read(s)
	if len(errs) > 0 {
		return Outcome{Says: "no new numbers while the sheet has errors: " + cells.Said(errs[0]).Text(), Bad: true}
	}
	sol := statics.Solve(p)
	src, err := variant.NewSource(s, sol)
	if err != nil {
		return Outcome{Says: err.Error()}
	}
	seed := fnv.New64a()
	seed.Write([]byte(s.Text())) // which never fails
	src.Tries = min(max(variantWork/(len(sol.X)+1), 5), 200)
	drawn, err := src.Draw(variant.Seeded(seed.Sum64()+uint64(press)), 1)
	var few *variant.TooFew
	switch {
	case errors.As(err, &few):
		return Outcome{Says: few.Briefly()}
	case err != nil:
		return Outcome{Says: err.Error()}
	}
	v, err := src.Finish(drawn[0], "")
	if err != nil {
		return Outcome{Says: err.Error(), Bad: true}
	}
	says := "new numbers: " + src.Says(v)
	if len(p.Answers) > 0 {
		says += "; the old reference answers were removed"
	}
	return Outcome{Sheet: v.Sheet, Says: says + "; ctrl+z undoes it"}
}
