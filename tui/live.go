package tui

import (
	"fmt"
	"slices"
	"sync/atomic"

	tea "charm.land/bubbletea/v2"

	"trivet/mechanics/names"
	"trivet/mechanics/problem"
	"trivet/mechanics/sheet"
	"trivet/mechanics/statics"
	"trivet/tui/results"
	"trivet/tui/session"
)

// live keeps the result beside the sheet. One snapshot is solved at a time; the
// newest that came meanwhile waits, those between are never solved.
type live struct {
	session.Result
	seq     int // the number of the newest snapshot
	running bool
	waiting bool
	draft   draft           // what the newest snapshot is of
	kept    accepted        // the result of the last sheet without a cell being typed
	reader  *problem.Reader // belongs to the one command that runs
	newest  *atomic.Int64   // counts the sheets that were typed, for whoever works on an earlier one
	spoken  *lineCache      // of the solution and the problem shown
}

// draft tells how far the cell that is being typed has come in a snapshot.
type draft uint8

const (
	wholeSheet draft = iota // none is being typed
	typedCell               // it reads as it would once it is kept
	halfCell                // a number whose unit, or whose next digit, may follow
)

// accepted is a result that can be shown.
type accepted struct {
	of       *sheet.Sheet
	problem  *problem.Problem
	solution *statics.Solution
	blocks   []session.Block
}

func newLive() live {
	return live{reader: problem.NewReader(), spoken: &lineCache{}, newest: &atomic.Int64{}}
}

type solved struct {
	seq      int
	draft    draft
	sheet    *sheet.Sheet
	problem  *problem.Problem
	errs     []problem.Error
	solution *statics.Solution
	blocks   []session.Block
	fault    string
}

// good tells that all of the sheet reads and is solved.
func (s solved) good() bool {
	return s.fault == "" && s.solution.Verdict != statics.Unreadable && !slices.ContainsFunc(s.errs, problem.Error.Blocks)
}

// solve asks for the result of a sheet.
func (m *Model) solve(s *sheet.Sheet) tea.Cmd { return m.solveDraft(s, wholeSheet) }

func (m *Model) solveDraft(s *sheet.Sheet, d draft) tea.Cmd {
	m.live.Sheet, m.live.draft = s, d
	m.live.seq++
	m.live.newest.Add(1)
	if m.live.running {
		m.live.waiting = true
		return nil
	}
	return m.live.run()
}

func (l *live) run() tea.Cmd {
	l.running, l.waiting = true, false
	s, seq, draft, reader := l.Sheet, l.seq, l.draft, l.reader
	return func() (msg tea.Msg) {
		// A fault of ours in here must not cost what was typed and not saved.
		defer func() {
			if r := recover(); r != nil {
				msg = solved{seq: seq, fault: fmt.Sprint(r)}
			}
		}()
		p, errs := names.Read(reader, s)
		out := solved{seq: seq, draft: draft, sheet: s, problem: p, errs: errs, solution: statics.Solve(p)}
		if len(p.Unknowns) <= results.MaxRows {
			for _, b := range out.solution.Blocks() { // of more nobody reads the order
				out.blocks = append(out.blocks, session.Block{Rows: b.Rows, Cols: b.Cols})
			}
		}
		return out
	}
}

// take receives a result; one that a newer sheet has overtaken is dropped.
func (m *Model) take(msg solved) tea.Cmd {
	m.live.running = false
	if msg.fault != "" {
		m.live.reader = problem.NewReader() // the old one may be half done
	}
	m.live.keep(msg)
	if msg.seq < m.live.seq {
		if m.live.waiting {
			return m.live.run()
		}
		return nil
	}
	if msg.fault != "" {
		m.live.Stale = true
		m.say("this sheet could not be solved; the last result is kept (fault: "+msg.fault+")", true)
		m.rebuild()
		return nil
	}
	m.live.accept(msg)
	m.rebuild()
	return m.lay()
}

// keep remembers the result of a sheet in which no cell is being typed.
func (l *live) keep(msg solved) {
	if msg.draft == wholeSheet && msg.good() {
		l.kept = accepted{msg.sheet, msg.problem, msg.solution, msg.blocks}
	}
}

// accept shows a result that reads. Where it does not, or where a number is half typed, the
// result of the last cell that was kept is shown, as an earlier one.
func (l *live) accept(msg solved) {
	l.Latest, l.Errs = msg.problem, msg.errs
	switch {
	case msg.good() && msg.draft != halfCell:
		l.show(accepted{msg.sheet, msg.problem, msg.solution, msg.blocks})
		l.Stale = false
	case l.kept.solution != nil:
		l.show(l.kept)
		l.Stale = true
	default:
		// Nothing to keep yet: the picture shows what reads so far.
		l.show(accepted{problem: msg.problem})
		l.Stale = false
	}
}

// show makes a result the one shown, where it is not that already.
func (l *live) show(r accepted) {
	if r.solution != nil && r.solution == l.Solution {
		return
	}
	l.Of, l.Problem, l.Solution, l.Blocks = r.of, r.problem, r.solution, r.blocks
	l.spoken = &lineCache{}
}
