package tui

import (
	"fmt"
	"path/filepath"
	"strings"

	tea "charm.land/bubbletea/v2"

	"trivet/fixtures"
	"trivet/mechanics/problem"
	"trivet/mechanics/report"
	"trivet/mechanics/sheet"
	"trivet/mechanics/statics"
	"trivet/tui/cells"
	"trivet/tui/grid"
	"trivet/tui/keys"
	"trivet/tui/layout"
	"trivet/tui/settings"
	"trivet/tui/text"
)

// opening is the start screen. It is replaced, never changed.
type opening struct {
	all  []start
	over bool   // it lies over a sheet that is open
	find string // what is looked for
	pick int    // among those that show
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
					o.pick = len(o.all)
				}
				o.all = append(o.all, start{family: family, title: s.Title, text: s.Text})
			}
		}
	}
	return o
}

// shown are the sheets whose title, family or path hold every word looked for.
func (o *opening) shown() (out []start) {
	words := strings.Fields(strings.ToLower(o.find))
	for _, s := range o.all {
		in, fits := strings.ToLower(s.title+" "+s.family+" "+s.path), true
		for _, w := range words {
			fits = fits && strings.Contains(in, w)
		}
		if fits {
			out = append(out, s)
		}
	}
	return out
}

// first is what a session begins with.
func (m *Model) first() tea.Cmd {
	m.beginJournal()
	if m.opening != nil {
		return tea.Batch(m.peek(false), m.next())
	}
	return tea.Batch(m.solve(m.history.Current()), m.record(m.path), m.next())
}

// peek reads the picked sheet in a command: Update touches no file.
func (m *Model) peek(open bool) tea.Cmd {
	o := m.opening
	list := o.shown()
	if o.pick >= len(list) {
		return nil
	}
	of := list[o.pick]
	if !open && of == o.shot.of {
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
	if list := o.shown(); !msg.open && (o.pick >= len(list) || list[o.pick] != msg.of) {
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
	m.path, m.stamp, m.history, m.outdated = f.of.path, f.stamp, sheet.NewHistory(f.sheet), nil
	before := m.live
	m.live, m.read, m.texts = newLive(), [layout.Panes]text.View{}, [layout.Panes]shownText{}
	m.live.seq, m.live.running = before.seq, before.running // a reply may still come for the sheet before
	m.at = [layout.System]cells.Place{}
	m.edit, m.fresh, m.newest, m.mark, m.jumps, m.polygonOf = nil, nil, sheet.Ref{}, mark{}, nil, ""
	m.board, m.worked, m.judged, m.reported = board{}, worked{}, judged{}, ""
	m.start()
	if f.of.path == "" && f.of.family != blankFamily {
		m.say("a sheet to start from, not saved yet; F1 lists the keys", false)
	}
	m.beginJournal()
	return tea.Batch(m.solve(m.history.Current()), m.record(m.path))
}

// atStart does the intents of the start screen.
func (m *Model) atStart(i keys.Intent) (tea.Cmd, bool) {
	o := *m.opening
	page := max(m.startList().Dy()-2, 1)
	switch i {
	case keys.Up:
		o.pick--
	case keys.Down:
		o.pick++
	case keys.PageUp:
		o.pick -= page
	case keys.PageDown:
		o.pick += page
	case keys.First:
		o.pick = 0
	case keys.Last:
		o.pick = len(o.all)
	case keys.Rubout:
		l := text.NewLine(o.find)
		l.Handle(keys.Rubout)
		o.find, o.pick = l.Text, 0
	case keys.ClearLine:
		o.find, o.pick = "", 0
	case keys.Commit:
		if list := o.shown(); o.pick < len(list) && list[o.pick].path == "" {
			return m.openAfter(list[o.pick].fetch(true, m.likes)), true // no file: what is typed next goes to it
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
	default:
		return nil, false
	}
	o.pick = max(min(o.pick, len(o.shown())-1), 0)
	m.opening = &o
	return m.peek(false), true
}

// look adds to what is looked for.
func (m *Model) look(chars string) tea.Cmd {
	o := *m.opening
	l := text.NewLine(o.find)
	l.Insert(chars)
	o.find, o.pick = l.Text, 0
	m.opening = &o
	return m.peek(false)
}
