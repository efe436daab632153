package tui

import (
	"trivet/mechanics/problem"
	"trivet/tui/cells"
)

// located says where an error is, in the words of the panes, and what to try, on one line.
func located(e problem.Error) string {
	at := e.Ref.Row
	for _, t := range problem.Tables() {
		if t.Name == e.Ref.Table && !t.Fixed && at != "" {
			at = t.Row + " " + at
		}
	}
	if !e.InName { // else it is in what is said
		if head := cells.Called(e.Ref); head != "" && at != "" {
			at += " " + head
		}
	} else if e.Ref.Key == "" {
		at = ""
	}
	if at == "" {
		return e.Text()
	}
	return at + ": " + e.Text()
}

// label names a cell: "T1 through".
func label(s cells.Slot) string {
	switch {
	case s.Does == cells.SetName:
		if s.Ref.Row == "" {
			return "new in " + s.Ref.Table
		}
		return "name of " + s.Ref.Row
	case s.Does == cells.SetAsked:
		return "result"
	case s.Ref.Table == "answers":
		return "your answer " + s.Ref.Row
	case s.Ref.Key == "":
		return s.Ref.Row
	}
	return s.Ref.Row + " " + cells.Called(s.Ref)
}
