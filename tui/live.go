package tui

import (
	"sync/atomic"

	tea "charm.land/bubbletea/v2"

	"trivet/mechanics/names"
	"trivet/mechanics/problem"
	"trivet/mechanics/sheet"
	"trivet/mechanics/statics"
	"trivet/mechanics/uncertainty"
	"trivet/tui/results"
	"trivet/tui/session"
)

// live keeps the result beside the sheet, and what is worked out of it where it shows.
type live struct {
	session.Result
	solving  session.Queue[*sheet.Sheet, solution]
	laying   session.Queue[*statics.Solution, stepwise]
	judging  session.Queue[*statics.Solution, map[string]string]
	weighing session.Queue[*statics.Solution, *uncertainty.Effect]

	solved *sheet.Sheet    // the sheet that was solved last
	reader *problem.Reader // belongs to the one command that solves
	newest *atomic.Int64   // counts the sheets that were typed, for whoever works on an earlier one
}

func newLive() live {
	return live{reader: problem.NewReader(), newest: &atomic.Int64{}}
}

// solution is what a sheet came to.
type solution struct {
	problem *problem.Problem
	errs    []problem.Error
	*statics.Solution
	blocks []session.Block
}

type solved = session.Reply[*sheet.Sheet, solution]

// solve asks for the result of a sheet.
func (m *Model) solve(s *sheet.Sheet) tea.Cmd {
	m.live.Sheet = s
	m.live.solved = nil // solved again, where it is the one before
	m.live.newest.Add(1)
	return m.live.solve()
}

// solve solves the newest sheet, unless that is done.
func (l *live) solve() tea.Cmd {
	s, reader := l.Sheet, l.reader
	if s == nil || l.solved == s {
		return nil
	}
	return l.solving.Ask(s, func() solution {
		p, errs := names.Read(reader, s)
		out := solution{problem: p, errs: errs, Solution: statics.Solve(p)}
		if len(p.Unknowns) <= results.MaxRows {
			for _, b := range out.Blocks() { // of more nobody reads the order
				out.blocks = append(out.blocks, session.Block{Rows: b.Rows, Cols: b.Cols})
			}
		}
		return out
	})
}

// take receives a result.
func (m *Model) take(msg solved) {
	if msg.Fault != "" {
		m.live.reader = problem.NewReader() // the old one may be half done
	}
	if !m.live.solving.Take(msg, m.live.Sheet) {
		return
	}
	m.live.solved = msg.Of
	m.resulted++
	m.records++
	if msg.Fault != "" {
		m.live.Stale = true
		m.say("this sheet could not be solved; the last result is kept (fault: "+msg.Fault+")", true)
		return
	}
	m.live.accept(msg)
}

// accept shows a result that reads, and keeps the last one where it does not.
func (l *live) accept(msg solved) {
	is := msg.Value
	l.Latest, l.Errs = is.problem, is.errs
	good := is.Verdict != statics.Unreadable
	for _, e := range is.errs {
		good = good && !e.Blocks()
	}
	switch {
	case good:
		l.Problem, l.Solution, l.Blocks, l.Stale = is.problem, is.Solution, is.blocks, false
		l.Of = msg.Of
	case l.Solution != nil:
		l.Stale = true
	default:
		// Nothing to keep yet: the picture shows what reads so far.
		l.Problem = is.problem
	}
}
