package speech

import (
	"fmt"
	"strings"
	"unicode/utf8"

	"trivet/mechanics/diag"
	"trivet/mechanics/problem"
	"trivet/mechanics/report"
	"trivet/mechanics/say"
	"trivet/mechanics/sheet"
	"trivet/mechanics/statics"
	"trivet/tui/cells"
)

// Result is what a sheet came to; while a cell is being typed, or a newer one is on its way,
// there is none to be said.
type Result struct {
	Verdict  string
	Solution *statics.Solution // of the sheet as it is; nil: none
	Sheet    *sheet.Sheet
	Errs     []problem.Error // of its cells
	Next     string          // what is to be typed next
	OnCells  bool            // and somebody could
}

// Wrong says an error of a sheet with its place in words: "D at does not read, at character
// 5: ...". Of a cell that holds nothing it says no more than the error.
func Wrong(s *sheet.Sheet, e problem.Error) string {
	c, _ := s.Cell(e.Ref)
	if blank(s, e.Ref) {
		return cells.Said(e).Text()
	}
	at := ""
	if start := diag.RuneStart(c.Text, e.Span.Start); start > 0 || e.Span.End < len(c.Text) {
		at = fmt.Sprintf(", at character %d", utf8.RuneCountInString(c.Text[:start])+1)
	}
	return strings.TrimSpace(cells.LabelOf(e.Ref)) + " does not read" + at + ": " + cells.Said(e).Text()
}

// blank tells a cell that holds nothing: what is wrong with it is said where the cursor comes to it.
func blank(s *sheet.Sheet, ref sheet.Ref) bool {
	c, _ := s.Cell(ref)
	return strings.TrimSpace(c.Text) == ""
}

// heard is the result that was said last.
type heard struct {
	verdict string
	values  map[string]amount // by unknown
	faults  map[sheet.Ref]string
	next    string
}

// amount is an unknown's value in words, and its sense.
type amount struct{ text, sense string }

// Up to how much of a result is said at a time: the values one by one; of the faults the rest is
// counted in the verdict.
const (
	maxValues = 12
	maxFaults = 2
)

// hear says what the result has become, against what was heard of it last.
func (h *heard) hear(now Result) (lines []string) {
	was := *h
	*h = heard{now.Verdict, was.values, map[sheet.Ref]string{}, was.next}
	parts, more := h.amounts(now.Solution)
	if more > 0 {
		parts = append(parts, "and "+say.Count(more, "more value"))
	}
	if now.Verdict != was.verdict && now.Verdict != "" {
		parts = append(parts, now.Verdict)
	}
	if len(parts) > 0 {
		lines = append(lines, strings.Join(parts, "; "))
	}
	said := 0
	for _, e := range now.Errs {
		h.faults[e.Ref] = e.Text()
		if !blank(now.Sheet, e.Ref) && was.faults[e.Ref] != e.Text() && said < maxFaults {
			lines = append(lines, Wrong(now.Sheet, e))
			said++
		}
	}
	if now.OnCells && now.Next != was.next {
		h.next = now.Next
		lines = append(lines, now.Next)
	}
	return lines
}

// amounts says the values that are others than those heard, and counts those beyond a limit.
func (h *heard) amounts(s *statics.Solution) (parts []string, more int) {
	if s == nil {
		return nil, 0
	}
	was := h.values
	h.values = map[string]amount{}
	for i, x := range s.X {
		v := amount{report.ResultText(s, i), report.SenseWord(s, i)}
		if x.Fixed && x.Value == 0 {
			v.sense = ""
		}
		h.values[x.Name] = v
		old, known := was[x.Name]
		switch {
		case known && old == v:
			continue
		case len(parts) == maxValues:
			more++
			continue
		}
		part := strings.TrimSpace(x.Name + " " + v.text + " " + v.sense)
		if known {
			part += ", was " + old.text
			if old.sense != v.sense && old.sense != "" {
				part += " " + old.sense
			}
		}
		parts = append(parts, part)
	}
	return parts, more
}
