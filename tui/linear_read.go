package tui

import (
	"fmt"
	"strings"
	"unicode/utf8"

	"trivet/mechanics/diag"
	"trivet/mechanics/problem"
	"trivet/mechanics/report"
	"trivet/tui/cells"
	"trivet/tui/keys"
	"trivet/tui/layout"
	"trivet/tui/speech"
	"trivet/tui/topic"
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
	made := madeOf{pane: m.focus, help: -1}
	var write func() []string
	switch {
	case m.help != nil:
		t.Name, t.At, of = "help", m.help.Y, m.help.at
		made = madeOf{help: m.help.at, boards: m.board.On}
		write = m.helpLines
	case m.board.On:
		t.At, t.Whole = m.board.Line, true
		said := m.board.Said(m.boardOf())
		made.of, of = said, said
		write = func() []string { return m.board.Lines(m.boardOf()) }
	default:
		t.Name, t.At, of = m.paneName(m.focus), m.speech.Read[m.focus], m.focus
		made.of, made.stale = m.live.Solution, m.isOld(m.focus)
		write = m.resultLines
		switch v := m.read[m.focus]; {
		case m.focus == layout.Picture:
			made.of = [2]any{m.live.Problem, m.live.Solution}
			t.Beside = m.selected()
			if m.live.Problem != nil {
				t.Aside = report.DescribedRow(m.live.Problem, m.live.Solution, m.selected())
			}
		case m.says != "":
			t.Beside, t.Aside = [2]int{v.Line, v.Span}, m.says
		}
		switch m.focus {
		case layout.Working, layout.HandSolution:
			made.of = m.worked.Value.working
		case layout.Ranges, layout.Limits:
			made.of = m.live.Weighed // which comes later
		}
	}
	// A result that does not read has nothing that tells its lines from others'.
	if last := m.speech.Text(); last.Made == any(made) && (m.live.Solution != nil || m.help != nil) {
		t.Lines = last.Lines
	} else {
		t.Lines = write()
	}
	t.Made = made
	return t, of
}

// helpLines are the lines of the help's page.
func (m Model) helpLines() []string {
	if m.help.at > 0 {
		return topic.Spoken(m.help.doc)
	}
	return m.helpText(speech.Whole).Read()
}

// resultLines are what the pane with the keys shows of a result, a sentence a line.
func (m Model) resultLines() (lines []string) {
	switch l := m.live; {
	case m.focus == layout.Picture && l.Problem == nil:
		return nil
	case m.focus == layout.Picture:
	case l.Solution == nil:
		lines = []string{"no result yet"}
		for _, e := range l.Errs {
			lines = append(lines, m.wrong(e))
		}
		return lines
	case m.isOld(m.focus):
		lines = append(lines, "stale: this is the result of an earlier version of the sheet")
	}
	return append(lines, speech.Pane(m.focus, &m.live.Result, m.worked.Value.working)...)
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
	case m.board.On:
		m.board.Line = at
	default:
		m.speech.Read[m.focus] = at
	}
	return true
}

// heard is the result, where it may be said by now.
func (m Model) heard() *speech.Result {
	l := m.live
	if l.solving.Running() || l.Sheet == nil || m.opening != nil || m.cells.Cell != nil && m.cells.Cell.Text != m.cells.Cell.Was {
		return nil
	}
	r := &speech.Result{OnCells: m.focus < layout.System && m.cells.Cell == nil}
	r.Verdict, _ = m.verdict()
	if !l.Stale && l.Sheet == m.history.Current() {
		r.Solution = l.Solution
	}
	for _, e := range l.Errs {
		c, _ := m.history.Current().Cell(e.Ref)
		r.Faults = append(r.Faults, speech.Fault{Ref: e.Ref, Text: e.Text(), Says: m.wrong(e), Blank: strings.TrimSpace(c.Text) == ""})
	}
	if r.OnCells {
		r.Next = m.cells.Made.NextStep(m.focus)
	}
	return r
}

// paneName is a pane's heading within a sentence.
func (m Model) paneName(p layout.Pane) string {
	return strings.ToLower(headings[p].long[:1]) + headings[p].long[1:]
}

// place is where the cursor of the cells is, in words.
func (m Model) place() speech.Place {
	at := m.cells.At[min(m.focus, layout.System-1)]
	p := speech.Place{Pane: m.paneName(m.focus), At: speech.Where{On: true, Pane: m.focus, N: at.Row, Col: at.Col, Marked: m.cells.Mark.On, From: m.cells.Mark.Row, To: m.cells.Mark.Col}}
	if m.focus >= layout.System {
		return p
	}
	t := m.cells.Tables[m.focus]
	if p.None = t.None(); at.Row >= len(t.Records) {
		return p
	}
	row := t.Records[at.Row]
	p.At.Row, p.Rows, p.Row = row.Row, len(t.Records), "without a name"
	if len(row.Slots) > 0 && strings.TrimSpace(row.Slots[0].Text) != "" {
		p.Row = row.Slots[0].Text
	}
	if len(m.follows) > 0 {
		p.Follows = cells.SaidFacts(m.follows)
	}
	if m.cells.Mark.On {
		b := m.cells.Block(m.focus)
		p.Marked = fmt.Sprintf("%s, %s", count(b.Dy(), "row"), count(b.Dx(), "column"))
	}
	p.Column = t.Head(at.Row, at.Col)
	s, ok := m.slot()
	if !ok {
		return p
	}
	if p.Name = s.Does == cells.SetName; p.Name {
		p.Column = "name"
	}
	if p.Cell = strings.TrimSpace(s.Text); p.Cell == "" {
		p.Cell = "blank"
		if s.Need {
			p.Cell = "blank, needed"
		}
	}
	if e, own := m.live.ErrorOf(s.Ref); own && s.Bad {
		p.Wrong = m.wrong(e)
	}
	return p
}

// newName is what a row is called that is being named; empty where none is.
func (m Model) newName() string {
	slot := m.cells.Cell.Slot
	if slot.Does != cells.SetName || slot.Ref.Row != "" {
		return ""
	}
	name := "name of the new " + problem.ThingOf(slot.Ref.Table).String()
	if slot.Ref.Table == m.cells.Newest.Table {
		name += ", enter alone ends the list"
	}
	return name
}

// wrong says an error with its place in words: "D at does not read, at character
// 5: ...".
func (m Model) wrong(e problem.Error) string {
	c, _ := m.history.Current().Cell(e.Ref)
	if strings.TrimSpace(c.Text) == "" {
		return e.Text()
	}
	at := ""
	if start := diag.RuneStart(c.Text, e.Span.Start); start > 0 || e.Span.End < len(c.Text) {
		at = fmt.Sprintf(", at character %d", utf8.RuneCountInString(c.Text[:start])+1)
	}
	return strings.TrimSpace(cells.LabelOf(e.Ref)) + " does not read" + at + ": " + e.Text()
}
