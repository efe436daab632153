package session

import (
	"slices"
	"sync/atomic"

	tea "charm.land/bubbletea/v2"

	"trivet/mechanics/names"
	"trivet/mechanics/problem"
	"trivet/mechanics/sheet"
	"trivet/mechanics/statics"
	"trivet/mechanics/uncertainty"
)

// Live keeps the result beside the sheet, and the ± of it.
type Live struct {
	Result
	solving  Queue[*sheet.Sheet, solution]
	weighing Queue[*statics.Solution, *uncertainty.Effect]
	judging  Queue[*statics.Solution, map[string]string]

	draft  Draft           // what the newest snapshot is of
	kept   Solved          // the result of the last sheet without a cell being typed
	solved *sheet.Sheet    // the sheet that was solved last
	reader *problem.Reader // belongs to the one command that solves
	newest *atomic.Int64   // counts the sheets that were typed, for whoever works on an earlier one
}

// Draft tells how far the cell that is being typed has come in a snapshot.
type Draft uint8

// The drafts.
const (
	Whole     Draft = iota // none is being typed
	TypedCell              // it reads as it would once it is kept
	HalfCell               // a number whose unit, or whose next digit, may follow
)

// NewLive is that of a sheet which nobody has solved yet.
func NewLive() Live {
	return Live{reader: problem.NewReader(), newest: &atomic.Int64{}}
}

// solution is what a sheet came to.
type solution struct {
	draft   Draft
	problem *problem.Problem
	errs    []problem.Error
	*statics.Solution
	blocks []Block
}

// Solved is the reply of a solve.
type Solved = Reply[*sheet.Sheet, solution]

// good tells that all of the sheet reads and is solved.
func (s solution) good() bool {
	return s.Solution != nil && s.Verdict != statics.Unreadable && !slices.ContainsFunc(s.errs, problem.Error.Blocks)
}

// Running tells that a sheet is being solved.
func (l *Live) Running() bool { return l.solving.Running() }

// Solve asks for the result of a sheet, also where it is the one before.
func (l *Live) Solve(s *sheet.Sheet, d Draft) tea.Cmd {
	l.Sheet, l.draft, l.solved = s, d, nil
	l.newest.Add(1)
	return l.Again()
}

// MaxRows is of how many rows of a result anybody reads.
const MaxRows = 200

// Again solves the newest sheet, unless that is done or another is being solved.
func (l *Live) Again() tea.Cmd {
	s, draft, reader := l.Sheet, l.draft, l.reader
	if s == nil || l.solved == s {
		return nil
	}
	return l.solving.Ask(s, func() solution {
		p, errs := names.Read(reader, s)
		out := solution{draft: draft, problem: p, errs: errs, Solution: statics.Solve(p)}
		if len(p.Unknowns) <= MaxRows {
			for _, b := range out.Blocks() { // of more nobody reads the order
				out.blocks = append(out.blocks, Block{Rows: b.Rows, Cols: b.Cols})
			}
		}
		return out
	})
}

// Take receives a result, and tells whether it is that of the newest sheet; after a fault the last
// one stays.
func (l *Live) Take(msg Solved) (newest bool) {
	if msg.Fault != "" {
		l.reader = problem.NewReader() // the old one may be half done
	}
	if is := msg.Value; l.solving.Asked(msg.Of) && is.draft == Whole && is.good() {
		l.kept = msg
	}
	if !l.solving.Take(msg, l.Sheet) {
		return false
	}
	l.solved = msg.Of
	if msg.Fault != "" {
		l.Stale = true
	} else {
		l.accept(msg)
	}
	return true
}

// accept shows a result that reads. Where it does not, or where a number is half typed, the
// result of the last cell that was kept is shown, as an earlier one.
func (l *Live) accept(msg Solved) {
	is := msg.Value
	l.Latest, l.Errs = is.problem, is.errs
	switch {
	case is.good() && is.draft != HalfCell:
		l.show(msg)
		l.Stale = false
	case l.kept.Value.Solution != nil:
		l.show(l.kept)
		l.Stale = true
	default:
		// Nothing to keep yet: the picture shows what reads so far.
		l.show(Solved{Value: solution{problem: is.problem}})
		l.Stale = false
	}
}

// show makes a result the one shown, where it is not that already.
func (l *Live) show(r Solved) {
	is := r.Value
	if is.Solution != nil && is.Solution == l.Solution {
		return
	}
	l.Of, l.Problem, l.Solution, l.Blocks = r.Of, is.problem, is.Solution, is.blocks
}

// Unweighed tells that the inputs have a ± whose effect is not known yet.
func (l *Live) Unweighed() bool { return l.Uncertain() && l.Weighed.Of != l.Solution }

// Weigh works out what the ± of the inputs does, for no longer than its sheet is the newest.
func (l *Live) Weigh() tea.Cmd {
	if l.Running() {
		return nil
	}
	s, of, newest := l.Solution, l.Of, l.newest
	at := newest.Load()
	return l.weighing.Ask(s, func() *uncertainty.Effect {
		return uncertainty.While(of, s, func() bool { return newest.Load() == at })
	})
}

// TakeEffect receives it, unless it was given up for a newer sheet.
func (l *Live) TakeEffect(msg Effect) {
	if l.weighing.Take(msg, l.Solution) && (msg.Value != nil || msg.Fault != "") {
		l.Weighed = msg
	}
}
