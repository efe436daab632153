package problem

import (
	"slices"
	"strings"

	"trivet/mechanics/diag"
	"trivet/mechanics/sheet"
	"trivet/units"
)

// Completion is a text that may take the place of the bytes From..To of a cell,
// with what it means in one line.
type Completion struct {
	Text     string
	From, To int
	Says     string
}

// Complete gives what the word at a cursor in a cell may become: names, units,
// kinds, functions and directions as fit the cell, the likeliest first. ref names
// the cell, which the sheet need not have yet; text is what is typed in it so
// far, cursor a byte offset. Words that begin as typed come before those that
// begin so in another case; of kinds, those come last that hold it further in.
func Complete(s *sheet.Sheet, ref sheet.Ref, text string, cursor int) []Completion {
	k, ok := cellKey(ref.Table, ref.Row, ref.Key)
	if !ok {
		return nil
	}
	x := thingsOf(s)
	x.uses() // finds the unknowns that magnitudes share
	cursor = max(0, min(cursor, len(text)))
	c := choices{things: x, text: text, cursor: cursor}
	c.word(units.Word(text, cursor))
	switch k.Reads {
	case ReadsText, ReadsCount:
	case ReadsWord:
		c.word(trimmed(text))
		c.words(k.Words)
	case ReadsUnit:
		c.word(trimmed(text))
		c.units(units.DefaultSet().Choices(k.Dim))
	case ReadsPoint, ReadsPoints, ReadsBody, ReadsBodies:
		c.word(fieldAt(text, cursor))
		c.listed(k.Reads, ref)
	case ReadsTension:
		c.word(trimmed(text))
		for _, name := range beltTensions(ref.Row) {
			c.add(name, c.says(AnUnknown, name)+" where slip impends")
		}
	case ReadsResults:
		c.results()
	default:
		c.expression(k, ref)
	}
	return c.sorted()
}

// choices gathers completions of one word.
type choices struct {
	*things
	text     string
	cursor   int
	from, to int
	typed    string // what stands before the cursor
	inside   bool   // words that hold it further in will do
	found    []ranked
}

// leastInside is how many letters must be typed before kinds that hold them
// anywhere are offered: one letter is in most words.
const leastInside = 2

type ranked struct {
	Completion
	rank int
}

func (c *choices) word(s diag.Span) {
	c.from, c.to = min(s.Start, c.cursor), max(s.End, c.cursor)
	c.typed = c.text[c.from:c.cursor]
}

// add takes a text that goes with what is typed.
func (c *choices) add(text, says string) {
	rank := 0
	switch {
	case strings.HasPrefix(text, c.typed):
	case len(text) >= len(c.typed) && strings.EqualFold(text[:len(c.typed)], c.typed):
		rank = 1
	case c.inside && len(c.typed) >= leastInside && strings.Contains(strings.ToLower(text), strings.ToLower(c.typed)):
		rank = 2
	default:
		return
	}
	if !slices.ContainsFunc(c.found, func(r ranked) bool { return r.Text == text }) {
		c.found = append(c.found, ranked{Completion{text, c.from, c.to, says}, rank})
	}
}

func (c *choices) sorted() []Completion {
	slices.SortStableFunc(c.found, func(a, b ranked) int { return a.rank - b.rank })
	out := make([]Completion, len(c.found))
	for i, r := range c.found {
		out[i] = r.Completion
	}
	return out
}
