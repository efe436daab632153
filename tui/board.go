package tui

import (
	"fmt"
	"strconv"

	tea "charm.land/bubbletea/v2"

	"trivet/mechanics/statics"
	"trivet/mechanics/working"
	"trivet/tui/keys"
	"trivet/tui/overlay"
	"trivet/tui/theme"
)

// board shows the working a step at a time. It stays what it was while a cell is
// edited on the workbench, so that coming back leads to the same step.
type board struct {
	on     bool
	at     int    // the step
	title  string // of that step, to find it again in another working
	kind   working.Kind
	line   int           // scrolled to
	hides  bool          // answers show as ? until asked
	shown  bool          // those of this step are shown all the same
	show   show          // of text and picture
	list   *overlay.List // of the steps, while it shows
	number string        // of a step, being typed
}

// show is what the board shows of a step.
type show int

const (
	both show = iota
	textOnly
	pictureOnly
	shows
)

// worked is the working of a solution.
type worked struct {
	of      *statics.Solution
	working *working.Working
	fault   string
	written [2]shownText // as the panes that showed it when it was asked for want it
}

// toBoard opens the board.
func (m *Model) toBoard() tea.Cmd {
	m.board.on, m.board.list, m.board.number = true, nil, ""
	return m.lay()
}

// lay lays the solution out as steps, unless that is done already. One is laid out at
// a time; the newest that came meanwhile follows.
func (m *Model) lay() tea.Cmd {
	s := m.live.Solution
	if !m.wantsSteps() || s == nil || m.worked.of == s || m.laying != nil {
		return nil
	}
	m.laying = s
	wanted := m.stepPanes()
	return func() (msg tea.Msg) {
		// A fault of ours in here must not cost what was typed and not saved.
		defer func() {
			if r := recover(); r != nil {
				msg = worked{of: s, fault: fmt.Sprint(r)}
			}
		}()
		w := worked{of: s, working: working.Build(s)}
		w.write(wanted)
		return w
	}
}

// wantsSteps tells whether the working shows, on the board or in a pane.
func (m Model) wantsSteps() bool {
	if m.board.on {
		return true
	}
	wanted := m.stepPanes()
	return wanted.working+wanted.handSolution > 0
}

// takeWorked receives a working, and finds the step that was shown.
func (m *Model) takeWorked(msg worked) {
	m.laying = nil
	if msg.of != m.live.Solution {
		return // overtaken: the newer one is on its way
	}
	m.worked = msg
	defer m.fit() // the panes that show it
	if msg.fault != "" {
		m.say("the working could not be written (fault: "+msg.fault+")", true)
		return
	}
	steps := msg.working.Steps
	b := &m.board
	if b.at < len(steps) && steps[b.at].Title == b.title {
		return
	}
	found := -1
	for i, s := range steps {
		if s.Title == b.title {
			found = i
			break
		}
		if s.Kind == b.kind && found < 0 {
			found = i
		}
	}
	if b.title == "" || found < 0 {
		found = b.at
	}
	m.goStep(found)
}

// steps are those of the working shown.
func (m Model) steps() []working.Step {
	if m.worked.working == nil {
		return nil
	}
	return m.worked.working.Steps
}

// goStep shows a step from its top.
func (m *Model) goStep(i int) {
	steps, b := m.steps(), &m.board
	b.at = max(min(i, len(steps)-1), 0)
	b.line, b.shown = 0, false
	if b.at < len(steps) {
		b.title, b.kind = steps[b.at].Title, steps[b.at].Kind
	}
}

// onBoard does the intents of the board.
func (m *Model) onBoard(i keys.Intent) bool {
	b := &m.board
	b.number = ""
	if m.linear && b.list == nil && m.readBoard(i) {
		return true
	}
	if b.list != nil {
		return m.inSteps(i)
	}
	switch i {
	case keys.NextStep:
		switch page := m.boardPage(); {
		case page.below:
			b.line += max(page.rows-1, 1)
		case b.at+1 < len(m.steps()):
			m.goStep(b.at + 1)
		case len(m.steps()) > 0:
			m.say("this is the last step", false)
		}
	case keys.PrevStep:
		switch {
		case b.line > 0:
			b.line = max(b.line-max(m.boardPage().rows-1, 1), 0)
		case b.at > 0:
			m.goStep(b.at - 1)
		default:
			m.say("this is the first step", false)
		}
	case keys.First:
		m.goStep(0)
	case keys.Last:
		m.goStep(len(m.steps()) - 1)
	case keys.Up:
		b.line = max(b.line-1, 0)
	case keys.Down:
		if m.boardPage().below {
			b.line++
		}
	case keys.HideAnswers:
		b.hides, b.shown = !b.hides, false
		m.say(map[bool]string{true: "answers are hidden: r shows those of a step", false: "answers are shown"}[b.hides], false)
	case keys.Reveal:
		b.shown = true
	case keys.Steps:
		b.list = &overlay.List{Pick: b.at}
	case keys.ShowPart:
		b.show = (b.show + 1) % shows
	case keys.ViewFront, keys.ViewSide, keys.ViewTop, keys.ViewSpace, keys.Left, keys.Right, keys.Nearer, keys.Farther, keys.Fit, keys.Characters:
		m.cam.handle(i)
		m.project()
	case keys.WritePage:
		m.askPage(WorkingPage)
	case keys.Cancel:
		b.on = false
		m.fit()
	default:
		return false
	}
	return true
}

// inSteps does the intents of the list of steps.
func (m *Model) inSteps(i keys.Intent) (ok bool) {
	const page = 10
	l := *m.board.list
	switch i {
	case keys.Commit:
		m.board.list = nil
		m.goStep(l.Pick)
		return true
	case keys.Cancel:
		m.board.list = nil
		return true
	}
	l, ok = l.Do(i, len(m.steps()), page)
	m.board.list = &l
	return ok
}

// listedSteps are the steps as they show.
func (m Model) listedSteps() overlay.Shown {
	s := overlay.Shown{List: *m.board.list, Noun: "step ", Columns: []overlay.Column{{At: 2, Width: boardLine, Look: theme.Plain, Picks: true}}}
	for i, step := range m.steps() {
		s.Rows = append(s.Rows, overlay.Row{Cells: []string{fmt.Sprintf("%3d  %s", i+1, step.Title)}, Says: step.Title})
	}
	return s
}

// stepNumber takes a digit of a step's number and shows that step.
func (m *Model) stepNumber(text string) {
	b := &m.board
	if text < "0" || text > "9" || len(text) != 1 || b.list != nil {
		return
	}
	n, _ := strconv.Atoi(b.number + text)
	if n < 1 || n > len(m.steps()) {
		n, _ = strconv.Atoi(text) // another number begins
		b.number = ""
	}
	if n < 1 || n > len(m.steps()) {
		m.say(fmt.Sprintf("there are %d steps", len(m.steps())), false)
		return
	}
	b.number += text
	m.goStep(n - 1)
}
