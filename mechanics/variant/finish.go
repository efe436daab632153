package variant

import (
	"fmt"
	"strconv"
	"unicode"
	"unicode/utf8"

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
	s, _, err := v.Sheet.ApplyAll(edits)
	if err != nil {
		return v, err
	}
	now := src.solver.solve(s)
	if now.solution == nil {
		return v, fmt.Errorf("the variant %s", now.unread)
	}
	v.Sheet, v.Solution = s, now.solution
	return v, nil
}

func lastRune(text string) (rune, int) { return utf8.DecodeLastRuneInString(text) }

func isLetter(r rune) bool { return r != utf8.RuneError && unicode.IsLetter(r) }

func parseNumber(text string) float64 {
	x, err := strconv.ParseFloat(text, 64)
	if err != nil { // a typographic minus
		x, _ = strconv.ParseFloat("-"+text[len("−"):], 64)
	}
	return x
}
