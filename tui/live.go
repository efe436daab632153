package tui

import (
	"fmt"
	"sync/atomic"

	tea "charm.land/bubbletea/v2"

	"trivet/mechanics/names"
	"trivet/mechanics/problem"
	"trivet/mechanics/sheet"
	"trivet/mechanics/statics"
)

// live keeps the result beside the sheet. One snapshot is solved at a time; the
// newest that came meanwhile waits, those between are never solved.
type live struct {
	sheet   *sheet.Sheet // the newest snapshot, with what is being typed
	seq     int          // its number
	running bool
	waiting bool
	reader  *problem.Reader // belongs to the one command that runs

	latest   *problem.Problem // the newest reading, whole or not
	problem  *problem.Problem // of the solution shown
	solution *statics.Solution
	of       *sheet.Sheet    // whose that is
	weighed  weighed         // what the ± of the inputs does to it
	newest   *atomic.Int64   // counts the sheets that were typed, for whoever works on an earlier one
	blocks   []block         // in which the system can be solved
	errs     []problem.Error // of the newest reading
	stale    bool            // the solution shown is of an earlier sheet
	spoken   *lineCache      // of the solution and the problem shown
}

// block is a part of the system that can be solved once those before it are.
type block struct{ rows, cols []int }

func newLive() live {
	return live{reader: problem.NewReader(), spoken: &lineCache{}, newest: &atomic.Int64{}}
}

type solved struct {
	seq      int
	sheet    *sheet.Sheet
	problem  *problem.Problem
	errs     []problem.Error
	solution *statics.Solution
	blocks   []block
	fault    string
}

// solve asks for the result of a sheet.
func (m *Model) solve(s *sheet.Sheet) tea.Cmd {
	m.live.sheet = s
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
	s, seq, reader := l.sheet, l.seq, l.reader
	return func() (msg tea.Msg) {
		// A fault of ours in here must not cost what was typed and not saved.
		defer func() {
			if r := recover(); r != nil {
				msg = solved{seq: seq, fault: fmt.Sprint(r)}
			}
		}()
		p, errs := names.Read(reader, s)
		out := solved{seq: seq, sheet: s, problem: p, errs: errs, solution: statics.Solve(p)}
		if len(p.Unknowns) <= maxRows {
			for _, b := range out.solution.Blocks() { // of more nobody reads the order
				out.blocks = append(out.blocks, block{b.Rows, b.Cols})
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
		m.live.stale = true
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
	l.latest, l.errs = msg.problem, msg.errs
	good := msg.solution.Verdict != statics.Unreadable
	for _, e := range msg.errs {
		good = good && !e.Blocks()
	}
	switch {
	case good:
		l.problem, l.solution, l.blocks, l.stale = msg.problem, msg.solution, msg.blocks, false
		l.of, l.spoken = msg.sheet, &lineCache{}
	case l.solution != nil:
		l.stale = true
	default:
		// Nothing to keep yet: the picture shows what reads so far.
		l.problem, l.spoken = msg.problem, &lineCache{}
	}
}
