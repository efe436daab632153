package speech

import (
	"strings"

	"trivet/mechanics/report"
	"trivet/mechanics/say"
	"trivet/mechanics/sheet"
	"trivet/mechanics/statics"
)

// Result is what a sheet came to; while a cell is being typed, or a newer one is on its way,
// there is none to be said.
type Result struct {
	Verdict  string
	Solution *statics.Solution // of the sheet as it is; nil: none
	Faults   []Fault
	Next     string // what is to be typed next
	OnCells  bool   // and somebody could
}

// Fault is a cell that does not read.
type Fault struct {
	Ref   sheet.Ref
	Text  string
	Says  string // with its place, in words
	Blank bool   // it holds nothing: it is said where the cursor comes to it
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
	for _, f := range now.Faults {
		h.faults[f.Ref] = f.Text
		if !f.Blank && was.faults[f.Ref] != f.Text && said < maxFaults {
			lines = append(lines, f.Says)
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
