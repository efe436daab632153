package tui

import (
	"slices"
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
	laying   session.Queue[*statics.Solution, results.Steps]
	judging  session.Queue[*statics.Solution, map[string]string]
	weighing session.Queue[*statics.Solution, *uncertainty.Effect]

	draft  draft           // what the newest snapshot is of
	kept   solved          // the result of the last sheet without a cell being typed
	solved *sheet.Sheet    // the sheet that was solved last
	reader *problem.Reader // belongs to the one command that solves
	newest *atomic.Int64   // counts the sheets that were typed, for whoever works on an earlier one
}

// draft tells how far the cell that is being typed has come in a snapshot.
type draft uint8

const (
	wholeSheet draft = iota // none is being typed
	typedCell               // it reads as it would once it is kept
	halfCell                // a number whose unit, or whose next digit, may follow
)

func newLive() live {
	return live{reader: problem.NewReader(), newest: &atomic.Int64{}}
}

// solution is what a sheet came to.
type solution struct {
	draft   draft
	problem *problem.Problem
	errs    []problem.Error
	*statics.Solution
	blocks []session.Block
}

type solved = session.Reply[*sheet.Sheet, solution]

// good tells that all of the sheet reads and is solved.
func (s solution) good() bool {
	return s.Solution != nil && s.Verdict != statics.Unreadable && !slices.ContainsFunc(s.errs, problem.Error.Blocks)
}

// solve asks for the result of a sheet.
func (m *Model) solve(s *sheet.Sheet) tea.Cmd { return m.solveDraft(s, wholeSheet) }

func (m *Model) solveDraft(s *sheet.Sheet, d draft) tea.Cmd {
	m.live.Sheet, m.live.draft = s, d
	m.live.solved = nil // solved again, where it is the one before
	m.live.newest.Add(1)
	return m.live.solve()
}

// solve solves the newest sheet, unless that is done.
func (l *live) solve() tea.Cmd {
	s, draft, reader := l.Sheet, l.draft, l.reader
	if s == nil || l.solved == s {
		return nil
	}
	return l.solving.Ask(s, func() solution {
		p, errs := names.Read(reader, s)
		out := solution{draft: draft, problem: p, errs: errs, Solution: statics.Solve(p)}
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
	if m.live.solving.Asked(msg.Of) {
		m.live.keep(msg)
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

// keep remembers the result of a sheet in which no cell is being typed.
func (l *live) keep(msg solved) {
	if is := msg.Value; is.draft == wholeSheet && is.good() {
		l.kept = msg
	}
}

// accept shows a result that reads. Where it does not, or where a number is half typed, the
// result of the last cell that was kept is shown, as an earlier one.
func (l *live) accept(msg solved) {
	is := msg.Value
	l.Latest, l.Errs = is.problem, is.errs
	switch {
	case is.good() && is.draft != halfCell:
		l.show(msg)
		l.Stale = false
	case l.kept.Value.Solution != nil:
		l.show(l.kept)
		l.Stale = true
	default:
		// Nothing to keep yet: the picture shows what reads so far.
		l.show(solved{Value: solution{problem: is.problem}})
		l.Stale = false
	}
}

// show makes a result the one shown, where it is not that already.
func (l *live) show(r solved) {
	is := r.Value
	if is.Solution != nil && is.Solution == l.Solution {
		return
	}
	l.Of, l.Problem, l.Solution, l.Blocks = r.Of, is.problem, is.Solution, is.blocks
}
