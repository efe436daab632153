package tui

import (
	"image"
	"time"

	tea "charm.land/bubbletea/v2"

	"trivet/mechanics/scene"
	"trivet/mechanics/sheet"
	"trivet/mechanics/statics"
	"trivet/tui/cells"
	"trivet/tui/grid"
	"trivet/tui/journal"
	"trivet/tui/layout"
	"trivet/tui/session"
	"trivet/tui/settings"
	"trivet/tui/text"
	"trivet/tui/theme"
)

// Model is a session of the workbench. It is a value: Update gives the next
// one, View only draws.
type Model struct {
	path     string
	stamp    sheet.Stamp
	page     PageWriter // nil: none are written
	outdated []outdated // givens that were changed, which words and reference answers may not follow yet
	store    Saver      // nil: sheets are saved by their path
	history  *sheet.History
	theme    theme.Theme
	likes    *settings.Settings // nil: the defaults
	liking   liking
	opened   func(path string) error // records a sheet opened; nil: none is
	w, h     int

	live live

	// What the panes show, built when the sheet or its result changes.
	tables  [layout.System]cells.Table
	made    cells.Builder           // what they were built by
	follows []cells.Fact            // from the row under the cursor
	texts   [layout.Panes]shownText // of the results that show
	says    string                  // where the number under the cursor comes from
	drawing scene.Scene
	sketch  *sketch // of that scene

	focus, back layout.Pane // back: the pane of cells that esc returns to
	side        layout.Pane // what shows in the shared place of a small screen
	turn        layout.Pane // the result that shows where there is one place for results
	third       layout.Pane // the one that shows beside system and checks
	large       bool
	at          [layout.System]cells.Place
	fresh       *cells.Fresh // a row that has no name yet
	newest      sheet.Ref    // the row made last, while the next may follow it
	edit        *cells.Edit
	cam         camera
	read        [layout.Panes]text.View // of the results

	board     board
	worked    worked            // the working of a solution
	laying    *statics.Solution // the one that is being laid out
	ahead     []tea.KeyPressMsg // typed for steps that are still being laid out
	judged    judged            // the own answers of a solution
	judging   *statics.Solution // the one whose own answers are looked at
	weighing  *statics.Solution // the one whose ± is being worked out
	choosing  bool              // which kind of row to make
	listing   bool              // which pane to go to
	naming    *text.Line        // a file name being typed
	forPage   Page              // whose it is; 0 for the sheet's
	ask       *question         // yes, no or back
	help      *helping          // the help, scrolled
	opening   *opening          // the start screen
	drag      *drag             // of the mouse in the picture
	polygonOf string            // whose force polygon shows in place of the picture
	saving    bool
	sizing    sizing           // of the terminal
	watches   bool             // seen by another than the session's own
	around    bool             // by one who looks around
	leave     bool             // quit once saved
	going     bool             // quit once the settings are kept
	left      bool             // quit
	keeps     bool             // a journal
	env       []string         // the session's environment
	journals  []string         // further folders of them
	folder    string           // that the names of the store lie in
	trouble   func(string)     // hears that no journal is kept; may be nil
	journal   *journal.Journal // nil where none is kept
	offered   bool             // what was left of sheets without a file
	others    int              // workbenches on the same sheet that were told of
	every     time.Duration    // how often the file is looked at; 0: never
	reported  string           // of the file on disk
	clip      clip             // copied last
	mark      mark
	search    search
	palette   *palette // the list of commands
	setup     *setup   // the list of settings
	jumps     []spot   // where definitions were asked for
	note      note
	workings  *workings // for those who read along

	linear       bool              // lines are written in place of a frame
	tell         func(text string) // to the terminal; nil: to nobody
	speech       speech
	notes        int  // words said on the bottom line so far
	changedByKey bool // the text being typed, by a key that is no character
}

// note is a word on the bottom line.
type note struct {
	text string
	bad  bool
}

// start puts the cursor on the first point, and elsewhere on the first cell to
// type in, and builds the panes.
func (m *Model) start() {
	m.focus, m.back, m.side = layout.Points, layout.Points, layout.Picture
	m.turn, m.third = layout.System, layout.Limits
	m.at[layout.Given].Col, m.at[layout.Sheet].Col, m.at[layout.Unknowns].Col = 1, 1, 1
	m.rebuild()
}

// Init solves the sheet as it was opened.
func (m Model) Init() tea.Cmd {
	first := func() tea.Msg { return opened{} }
	if m.asksBackground() {
		return tea.Batch(first, tea.RequestBackgroundColor)
	}
	return first
}

// opened asks for the first solution; Init cannot keep a sequence number.
type opened struct{}

// Update takes one message.
func (m Model) Update(msg tea.Msg) (tea.Model, tea.Cmd) {
	if m.linear {
		return m.announce(msg)
	}
	cmd := m.update(msg)
	return m, cmd
}

func (m *Model) update(msg tea.Msg) (cmd tea.Cmd) {
	switch msg := msg.(type) {
	case tick:
		cmd = tea.Batch(m.watch(), m.next())
	case tea.FocusMsg:
		cmd = m.lookAtFile()
	case seenFile:
		cmd = m.takeSeen(msg)
	case opened:
		cmd = m.first()
	case likesKept:
		cmd = m.tookLikes(msg)
	case tea.BackgroundColorMsg:
		m.background(msg.IsDark())
	case fetched:
		cmd = m.takeFetched(msg)
	case solved:
		cmd = m.take(msg)
	case worked:
		m.takeWorked(msg)
		cmd = m.catchUp()
	case judged:
		m.takeJudged(msg)
	case session.Effect:
		m.takeWeighed(msg)
	case saved:
		cmd = m.afterSave(msg)
	case paged:
		m.afterPage(msg)
	case tea.WindowSizeMsg:
		cmd = m.resized(msg)
	case sized:
		cmd = m.settled(msg)
	case tea.KeyPressMsg:
		if !m.holdBack(msg) {
			cmd = m.route(msg)
		}
	case tea.MouseMsg:
		cmd = m.mouse(msg)
	case tea.PasteMsg:
		cmd = m.paste(msg.Content)
	}
	if lay := m.lay(); lay != nil {
		cmd = tea.Batch(cmd, lay)
	}
	if judge := m.judge(); judge != nil {
		cmd = tea.Batch(cmd, judge)
	}
	if weigh := m.weigh(); weigh != nil {
		cmd = tea.Batch(cmd, weigh)
	}
	return cmd
}

// The largest screen that is drawn; what lies beyond stays blank.
const maxW, maxH = 400, 150

func (m *Model) resize(w, h int) {
	m.w, m.h = max(min(w, maxW), 0), max(min(h, maxH), 0)
	m.fit()
}

// screen divides the screen as things are.
func (m Model) screen() layout.Screen {
	a := layout.Args{W: m.w, H: m.h, Side: m.side, Turn: m.turn, Third: m.third, Large: m.large, Focus: m.focus}
	for p := range m.tables {
		a.Rows[p] = len(m.tables[p].Records)
	}
	return layout.Arrange(a)
}

// View draws the frame.
func (m Model) View() tea.View {
	if m.linear {
		return tea.NewView("") // all is written already
	}
	v := tea.NewView(m.frame())
	v.AltScreen = true
	v.ReportFocus = m.every > 0
	v.MouseMode = tea.MouseModeCellMotion
	v.WindowTitle = "trivet " + m.title()
	return v
}

func (m Model) frame() string {
	g := grid.New(m.w, m.h)
	s := m.screen()
	switch {
	case s.TooSmall:
		m.drawTooSmall(g.All())
	case m.help != nil:
		m.drawTop(g.All().In(s.Top))
		m.drawHelp(g)
		m.drawFoot(g.All())
	case m.opening != nil:
		m.drawStart(g.All().In(image.Rect(0, 0, m.w, m.h)))
		m.drawSetup(g.All())
		m.drawQuestion(g.All())
	case m.board.on:
		m.drawBoard(g.All().In(image.Rect(0, 0, m.w, m.h)))
		m.drawQuestion(g.All())
	default:
		m.drawTop(g.All().In(s.Top))
		for _, w := range s.Walls {
			g.All().In(w).Fill(m.theme.Glyphs.Wall, theme.Rule)
		}
		for p, r := range s.Panes {
			if !r.Empty() {
				m.drawPane(g.All().In(r), layout.Pane(p))
			}
		}
		m.drawStrip(g.All().In(s.Strip))
		m.drawList(g.All())
		m.drawPanes(g.All())
		m.drawPalette(g.All())
		m.drawSetup(g.All())
		m.drawFoot(g.All())
	}
	m.drawSeen(g.All())
	if m.theme.Set == theme.Seven {
		g.Seven()
	}
	return g.Render(m.theme.Styles)
}

// rebuild makes what the panes show from the sheet and its result.
func (m *Model) rebuild() {
	of := m.live.Sheet
	if of == nil {
		of = m.history.Current()
	}
	b := cells.New(m.live.Result, of, m.fresh)
	m.made = b
	m.tables = [layout.System]cells.Table{
		layout.Given: b.Given(), layout.Points: b.Points(), layout.Lines: b.Lines(),
		layout.Supports: b.Supports(), layout.Unknowns: b.Unknowns(), layout.Sheet: b.Sheet(),
	}
	for p := range m.texts {
		m.texts[p].old = true
	}
	m.fit()
	m.project()
}

// fit writes what results show anew where it is old or its pane has another
// width, and keeps every cursor in view.
func (m *Model) fit() {
	for p, r := range m.screen().Panes {
		if p := layout.Pane(p); p.Result() && !r.Empty() {
			m.compose(p, max(r.Dx()-2, 1))
		}
	}
	m.clamp()
	m.explain()
}

// project draws the figure anew, and says what follows from the selected row:
// the result, the view or the selection changed.
func (m *Model) project() {
	m.drawing, m.sketch = m.drawn(), &sketch{}
	m.follows = m.made.About(m.selected())
}
