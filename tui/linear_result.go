package tui

import (
	"strings"

	"trivet/mechanics/report"
	"trivet/mechanics/sheet"
	"trivet/tui/layout"
)

// heard is the result that was said last.
type heard struct {
	verdict string
	values  map[string]amount // by unknown; never changed, made anew
	errs    map[sheet.Ref]string
	next    string
}

// amount is an unknown's value in words, and its sense.
type amount struct{ text, sense string }

// maxValues is how many values are said one by one.
const maxValues = 12

// results says what the result has become, against what was heard of it last.
// While a cell is being typed, or a newer result is on its way, it says nothing.
func (m Model) results(was heard) (lines []string, now heard) {
	l := m.live
	if l.solving.Running() || l.Sheet == nil || m.opening != nil || m.edit != nil && m.edit.Text != m.edit.Was {
		return nil, was
	}
	now = heard{values: was.values, errs: map[sheet.Ref]string{}}
	now.verdict, _ = m.verdict()
	var parts []string
	if s := l.Solution; s != nil && !l.Stale && l.Sheet == m.history.Current() {
		now.values = map[string]amount{}
		more := 0
		for i, x := range s.X {
			v := amount{report.ResultText(s, i), report.SenseWord(s, i)}
			if x.Fixed && x.Value == 0 {
				v.sense = ""
			}
			now.values[x.Name] = v
			old, known := was.values[x.Name]
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
		if more > 0 {
			parts = append(parts, "and "+count(more, "more value"))
		}
	}
	if now.verdict != was.verdict && now.verdict != "" {
		parts = append(parts, now.verdict)
	}
	if len(parts) > 0 {
		lines = append(lines, strings.Join(parts, "; "))
	}
	lines = append(lines, m.newErrors(was, &now)...)
	now.next = was.next
	if m.focus < layout.System && m.edit == nil {
		if now.next = m.made.NextStep(m.focus); now.next != was.next {
			lines = append(lines, now.next)
		}
	}
	return lines, now
}

// maxErrors is how many errors are said at a time; the rest is counted in the
// verdict.
const maxErrors = 2

// newErrors says what does not read that did, of the cells that hold something:
// a blank one is said where the cursor comes to it.
func (m Model) newErrors(was heard, now *heard) (lines []string) {
	for _, e := range m.live.Errs {
		now.errs[e.Ref] = e.Text()
		c, _ := m.history.Current().Cell(e.Ref)
		if strings.TrimSpace(c.Text) == "" || was.errs[e.Ref] == e.Text() || len(lines) == maxErrors {
			continue
		}
		lines = append(lines, m.wrong(e))
	}
	return lines
}
