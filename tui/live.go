package tui

import (
	"fmt"
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
	reader  *problem.Reader // belongs to the one command that runs
	newest  *atomic.Int64   // counts the sheets that were typed, for whoever works on an earlier one
	spoken  *lineCache      // of the solution and the problem shown
}

func newLive() live {
	return live{reader: problem.NewReader(), spoken: &lineCache{}, newest: &atomic.Int64{}}
}

type solved struct {
	seq      int
	sheet    *sheet.Sheet
	problem  *problem.Problem
	errs     []problem.Error
	solution *statics.Solution
	blocks   []session.Block
	fault    string
}

// solve asks for the result of a sheet.
func (m *Model) solve(s *sheet.Sheet) tea.Cmd {
	m.live.Sheet = s
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
	s, seq, reader := l.Sheet, l.seq, l.reader
	return func() (msg tea.Msg) {
		// A fault of ours in here must not cost what was typed and not saved.
		defer func() {
			if r := recover(); r != nil {
				msg = solved{seq: seq, fault: fmt.Sprint(r)}
			}
		}()
		p, errs := names.Read(reader, s)
		out := solved{seq: seq, sheet: s, problem: p, errs: errs, solution: statics.Solve(p)}
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

// accept shows a result that reads, and keeps the last one where it does not.
func (l *live) accept(msg solved) {
	l.Latest, l.Errs = msg.problem, msg.errs
	good := msg.solution.Verdict != statics.Unreadable
	for _, e := range msg.errs {
		good = good && !e.Blocks()
	}
	switch {
	case good:
		l.Problem, l.Solution, l.Blocks, l.Stale = msg.problem, msg.solution, msg.blocks, false
		l.Of, l.spoken = msg.sheet, &lineCache{}
	case l.Solution != nil:
		l.Stale = true
	default:
		// Nothing to keep yet: the picture shows what reads so far.
		l.Problem, l.spoken = msg.problem, &lineCache{}
	}
}
