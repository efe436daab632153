package variant

import (
	"fmt"
	"strconv"

	"trivet/mechanics/sheet"
)

// Number writes the number of a variant among so many: "07".
func Number(i, count int) string {
	return fmt.Sprintf("%0*d", max(2, len(strconv.Itoa(count))), i)
}

// Tasks is what title and statement say of the varied givens.
func (src *Source) Tasks() []Task { return src.tasks }

// Finish makes a sheet of its own of a variant: its title says which it is (as it
// was where title is ""), what
// title and statement say of the varied givens follows, and the printed answers
// are left out with the comments right above them, since they hold no longer.
func (src *Source) Finish(v Variant, title string) (Variant, error) {
	edits := append(src.retold(v.At, title), sheet.DeleteTable{Table: "answers"})
	s, err := v.Sheet.Apply(edits...)
	if err != nil {
		return v, err
	}
	sol, err := solve(src.reader, s)
	if err != nil {
		return v, fmt.Errorf("the variant %w", err)
	}
	v.Sheet, v.Solution = s, sol
	return v, nil
}
