package session

import (
	tea "charm.land/bubbletea/v2"

	marking "trivet/mechanics/grade"
	"trivet/mechanics/sheet"
	"trivet/mechanics/statics"
)

// Mistakes is what is likeliest wrong with the own answers of a solution, by name.
type Mistakes = Reply[*statics.Solution, map[string]string]

// unmet is the own answer of a cell where it is not met, else "".
func (r *Result) unmet(cell sheet.Ref) string {
	if cell.Table != "answers" || r.Solution == nil || r.Stale {
		return ""
	}
	for _, a := range r.Solution.Answers {
		if a.Ref.Row == cell.Row && !a.OK && a.Err == "" {
			return a.Query.Name
		}
	}
	return ""
}

// Likeliest says what is most likely wrong with the own answer of a cell; "" where nothing is, or
// it is not known.
func (r *Result) Likeliest(cell sheet.Ref) string {
	name := r.unmet(cell)
	if name == "" || r.Mistakes.Of != r.Solution || r.Mistakes.Value[name] == "" {
		return ""
	}
	return "your " + name + ": " + r.Mistakes.Value[name]
}

// Judge looks for the mistakes in the own answers once the cursor is on a cell with one that is
// not met. That solves the sheet many times over, and so no key waits for it.
func (l *Live) Judge(cell sheet.Ref) tea.Cmd {
	s, of := l.Solution, l.Sheet
	if l.Running() || l.unmet(cell) == "" || l.Mistakes.Of == s {
		return nil
	}
	return l.judging.Ask(s, func() map[string]string { return marking.NewKey(of, s, marking.Rule{}).Unmet() })
}

// TakeMistakes receives them, and tells whether they are of the solution shown.
func (l *Live) TakeMistakes(msg Mistakes) bool {
	ok := l.judging.Take(msg, l.Solution)
	if ok {
		l.Mistakes = msg
	}
	return ok
}
