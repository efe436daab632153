package tui

import (
	"trivet/mechanics/report"
	"trivet/tui/cells"
	"trivet/tui/frame"
	"trivet/tui/keys"
	"trivet/tui/layout"
	"trivet/tui/results"
	"trivet/tui/speech"
)

// madeOf is what the lines of a text were made of: those of one are the same.
type madeOf struct {
	pane   layout.Pane
	help   int
	of     any
	boards bool
	stale  bool
}

// readText is what is read line by line, and which text it is.
func (m Model) readText() (t speech.Text, of any) {
	made := madeOf{pane: m.Focus, help: -1}
	var write func() []string
	switch {
	case m.help != nil:
		t.Name, t.At, of = "help", m.help.Y, m.help.At
		made = madeOf{help: m.help.At, boards: m.board.On}
		write = func() []string { return m.help.Read(m.helpFor(), speech.Whole) }
	case m.front.Desk != nil:
		t.Name, t.At, of = m.front.Desk.Reading()
		made.of = of
		write = func() []string { return m.front.Desk.Reads(speech.Whole) }
	case m.board.On:
		t.At, t.Whole = m.board.Line, true
		said := m.board.Said(m.boardOf())
		made.of, of = said, said
		write = func() []string { return m.board.Lines(m.boardOf()) }
	default:
		t.Name, t.At, of = frame.Within(m.Focus), m.speech.Read[m.Focus], m.Focus
		made.of, made.stale = m.live.Solution, m.isOld(m.Focus)
		write = func() []string {
			return speech.Pane(m.Focus, &m.live.Result, m.history.Current(), m.worked.Value.Working, m.isOld(m.Focus))
		}
		switch v := m.read[m.Focus]; {
		case m.Focus == layout.Picture:
			made.of = [2]any{m.live.Problem, m.live.Solution}
			t.Beside = m.selected()
			if m.live.Problem != nil {
				t.Aside = report.DescribedRow(m.live.Problem, m.live.Solution, m.selected())
			}
		case m.says != "":
			t.Beside, t.Aside = [2]int{v.Line, v.Span}, m.says
		}
		switch m.Focus {
		case layout.Working, layout.HandSolution:
			made.of = m.worked.Value.Working
		case layout.Ranges, layout.Limits:
			made.of = m.live.Weighed // which comes later
		}
	}
	// A result that does not read has nothing that tells its lines from others'.
	if last := m.speech.Text(); last.Made == any(made) && (m.live.Solution != nil || m.help != nil || m.front.Desk != nil) {
		t.Lines = last.Lines
	} else {
		t.Lines = write()
	}
	t.Made = made
	return t, of
}

// readOn moves in what is read; false where the intent is none of reading.
func (m *Model) readOn(i keys.Intent) bool {
	t, _ := m.readText()
	at, ok := t.On(i)
	if !ok {
		return false
	}
	m.speech.Jumped = i == keys.First || i == keys.Last
	switch {
	case m.help != nil:
		next := *m.help
		next.Y = at
		m.help = &next
	case m.front.Desk != nil:
		m.front = m.front.At(at)
	case m.board.On:
		m.board.Line = at
	default:
		m.speech.Read[m.Focus] = at
	}
	return true
}

// heard is the result, where it may be said by now.
func (m Model) heard() *speech.Result {
	l := &m.live
	if l.Running() || l.Sheet == nil || m.opening != nil || m.front.On() || m.cells.Typing() {
		return nil
	}
	r := &speech.Result{OnCells: m.Focus < layout.System && m.cells.Cell == nil, Sheet: m.history.Current(), Errs: l.Errs}
	r.Verdict, _ = results.Headline(l)
	if !l.Stale && l.Sheet == r.Sheet {
		r.Solution = l.Solution
	}
	if r.OnCells {
		r.Next = m.cells.Made.NextStep(m.Focus)
	}
	return r
}

// place is where the cursor of the cells is.
func (m Model) place() speech.Place {
	if m.Focus >= layout.System {
		at := m.cells.At[layout.System-1]
		return speech.PlaceOf(m.Focus, frame.Within(m.Focus), cells.Table{}, at)
	}
	p := speech.PlaceOf(m.Focus, frame.Within(m.Focus), m.cells.Tables[m.Focus], m.cells.At[m.Focus])
	p.Follows = m.follows
	if p.At.Marked, p.At.From, p.At.To = m.cells.Mark.On, m.cells.Mark.Row, m.cells.Mark.Col; m.cells.Mark.On {
		b := m.cells.Block(m.Focus)
		p.Marked = [2]int{b.Dy(), b.Dx()}
	}
	if s, ok := m.slot(); ok && s.Bad {
		if e, own := m.live.ErrorOf(s.Ref); own {
			p.Wrong = speech.Wrong(m.history.Current(), e)
		}
	}
	return p
}
