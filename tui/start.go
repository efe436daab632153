package tui

import (
	"fmt"
	"path/filepath"

	tea "charm.land/bubbletea/v2"

	"trivet/fixtures"
	"trivet/mechanics/problem"
	"trivet/mechanics/report"
	"trivet/mechanics/sheet"
	"trivet/mechanics/statics"
	"trivet/tui/board"
	"trivet/tui/grid"
	"trivet/tui/keys"
	"trivet/tui/layout"
	"trivet/tui/overlay"
	"trivet/tui/settings"
	"trivet/tui/text"
	"trivet/tui/theme"
)

// opening is the start screen. It is replaced, never changed.
type opening struct {
	overlay.List
	all  []start
	over bool // it lies over a sheet that is open
	shot fetched
}

// start is a sheet to begin with: a text that comes with the program, or a file.
type start struct {
	family, title, text, path string
}

// fetched is a sheet of the start screen, read and solved for its picture.
type fetched struct {
	of       start
	sheet    *sheet.Sheet
	stamp    sheet.Stamp
	problem  *problem.Problem
	solution *statics.Solution
	fault    string
	open     bool // it is to be opened
}

const blankFamily = "Blank"

// welcome is the sheet that a first visit points at, so that enter shows the
// workbench at work.
const welcome = "hanging-load"

func newOpening(recent []string) *opening {
	o := &opening{}
	for _, path := range recent {
		o.all = append(o.all, start{family: "Opened last", title: grid.Clean(filepath.Base(path)), path: path})
	}
	for _, s := range fixtures.Blanks() {
		o.all = append(o.all, start{family: blankFamily, title: s.Title, text: s.Text})
	}
	sheets := fixtures.Starts()
	for _, family := range fixtures.Families() {
		for _, s := range sheets {
			if s.Family == family {
				if s.Name == welcome && len(recent) == 0 {
					o.Pick = len(o.all)
				}
				o.all = append(o.all, start{family: family, title: s.Title, text: s.Text})
			}
		}
	}
	return o
}

// shown are the sheets whose title, family or path hold every word looked for.
func (o *opening) shown() []start {
	return overlay.Narrowed(o.List, o.all, func(s start) string { return s.title + " " + s.family + " " + s.path })
}

// picked is the sheet that is picked, if any matches.
func (o *opening) picked() (s start, ok bool) {
	list := o.shown()
	if o.Pick >= len(list) {
		return s, false
	}
	return list[o.Pick], true
}

// listed are the sheets as they show.
func (o *opening) listed() overlay.Shown {
	s := overlay.Shown{
		List: o.List, Intro: "choose a sheet with down and up, or type to look for one; enter opens it; ", None: "no sheet matches: backspace",
		Columns: []overlay.Column{{At: 1, Look: theme.Plain, Picks: true}},
	}
	for _, x := range o.shown() {
		s.Rows = append(s.Rows, overlay.Row{Family: x.family, Cells: []string{x.title}, Says: x.title})
	}
	return s
}

// first is what a session begins with.
func (m *Model) first() tea.Cmd {
	m.beginJournal()
	if m.opening != nil {
		return tea.Batch(m.peek(false), m.next())
	}
	return tea.Batch(m.solve(m.history.Current()), m.file.Record(), m.next())
}

// peek reads the picked sheet in a command: Update touches no file.
func (m *Model) peek(open bool) tea.Cmd {
	of, ok := m.opening.picked()
	if !ok || !open && of == m.opening.shot.of {
		return nil
	}
	likes := m.likes
	return func() (msg tea.Msg) {
		defer func() {
			if r := recover(); r != nil {
				msg = fetched{of: of, fault: fmt.Sprintf("this sheet could not be read (fault: %v)", r)}
			}
		}()
		return of.fetch(open, likes)
	}
}

func (s start) fetch(open bool, likes *settings.Settings) fetched {
	f := fetched{of: s, open: open}
	var err error
	if s.path != "" {
		f.sheet, f.stamp, err = sheet.Load(s.path)
	} else {
		f.sheet, err = sheet.Parse([]byte(s.text))
	}
	if err != nil {
		f.fault = report.FileFault(s.path, err).Short(s.path)
		return f
	}
	if s.family == blankFamily && likes != nil {
		if with, err := likes.NewSheet(f.sheet); err == nil {
			f.sheet = with // of a blank sheet no edit is refused; one would leave it as it is
		}
	}
	if !open {
		f.problem, _ = problem.Read(f.sheet)
		f.solution = statics.Solve(f.problem)
	}
	return f
}

// takeFetched shows a picture that is still wanted, or opens the sheet.
func (m *Model) takeFetched(msg fetched) tea.Cmd {
	if m.opening == nil {
		return nil // another was opened meanwhile
	}
	if msg.open && msg.fault == "" {
		return m.openAfter(msg)
	}
	o := *m.opening
	if of, ok := o.picked(); !msg.open && (!ok || of != msg.of) {
		return nil // another is picked meanwhile; its picture may be there already
	}
	o.shot = msg
	m.opening = &o
	if msg.open {
		m.say(msg.fault, true)
	}
	return nil
}

// open leaves the start screen for a sheet.
func (m *Model) open(f fetched) tea.Cmd {
	m.opening = nil
	m.file.Reopen(f.of.path, f.stamp)
	m.history, m.outdated = sheet.NewHistory(f.sheet), nil
	m.live, m.read, m.texts = newLive(), [layout.Panes]text.View{}, [layout.Panes]shownText{}
	m.cells, m.jumps, m.polygonOf = m.cells.Rest(), nil, ""
	m.board, m.worked, m.judged = board.Board{}, worked{}, judged{}
	m.start()
	if f.of.path == "" && f.of.family != blankFamily {
		m.say("a sheet to start from, not saved yet; F1 lists the keys", false)
	}
	m.beginJournal()
	return tea.Batch(m.solve(m.history.Current()), m.file.Record())
}

// atStart does the intents of the start screen.
func (m *Model) atStart(i keys.Intent) (_ tea.Cmd, ok bool) {
	o := *m.opening
	switch i {
	case keys.Commit:
		if of, ok := o.picked(); ok && of.path == "" {
			return m.openAfter(of.fetch(true, m.likes)), true // no file: what is typed next goes to it
		}
		return m.peek(true), true
	case keys.OpenSettings:
		m.setup = &setup{}
		return nil, true
	case keys.Cancel, keys.Blank:
		if o.over && i == keys.Cancel {
			m.opening = nil
			return nil, true
		}
		return m.openAfter(start{family: blankFamily, text: fixtures.Blanks()[0].Text}.fetch(true, m.likes)), true
	}
	if o.List, ok = o.Do(i, len(o.shown()), max(m.startList().Dy()-2, 1)); !ok {
		return nil, false
	}
	m.opening = &o
	return m.peek(false), true
}

// look adds to what is looked for.
func (m *Model) look(chars string) tea.Cmd {
	o := *m.opening
	o.List = o.Typed(chars)
	m.opening = &o
	return m.peek(false)
}
