package tui

import (
	"image"

	tea "charm.land/bubbletea/v2"

	"trivet/mechanics/sheet"
	"trivet/tui/board"
	"trivet/tui/edit"
	"trivet/tui/grid"
	"trivet/tui/layout"
	"trivet/tui/overlay"
	"trivet/tui/session"
	"trivet/tui/settings"
	"trivet/tui/speech"
	"trivet/tui/text"
	"trivet/tui/theme"
)

// Model is a session of the workbench. It is a value: Update gives the next
// one, View only draws.
type Model struct {
	file    session.File
	history *sheet.History
	live    live
	worked  worked     // the working of a solution
	judged  judged     // the own answers of a solution
	page    PageWriter // nil: none are written

	panes
	places
	changes
	dialogs
	board board.Board

	display
	audience
	departure
}

// places is where one looks: the pane that has the keys, and what shows beside it.
type places struct {
	focus, back layout.Pane // back: the pane of cells that esc returns to
	side        layout.Pane // what shows in the shared place of a small screen
	turn        layout.Pane // the result that shows where there is one place for results
	third       layout.Pane // the one that shows beside system and checks
	large       bool
	read        [layout.Panes]text.View // of the results
	cam         camera
	drag        *drag  // of the mouse in the picture
	jumps       []spot // where definitions were asked for
}

// changes is what is being done to the sheet.
type changes struct {
	cells        edit.Editor       // the panes of cells
	changedByKey bool              // the text being typed, by a key that is no character
	outdated     []outdated        // givens that were changed, which words and reference answers may not follow yet
	ahead        []tea.KeyPressMsg // typed for steps that are still being laid out
}

// dialogs is what stands before the panes, and the word on the bottom line.
type dialogs struct {
	choosing bool          // which kind of row to make
	listing  bool          // which pane to go to
	naming   *text.Line    // a file name being typed
	forPage  Page          // whose it is; 0 for the sheet's
	ask      *question     // yes, no or back
	help     *helping      // the help, scrolled
	opening  *opening      // the start screen
	pending  *fetched      // a sheet to be opened once this one is saved
	palette  *overlay.List // the list of commands
	setup    *setup        // the list of settings
	search   search
	note     note
	notes    int // words said so far
}

// display is what a session is shown on, and how the person likes it.
type display struct {
	w, h   int
	sizing sizing
	theme  theme.Theme
	likes  *settings.Settings // nil: the defaults
	liking liking
	env    []string // the session's environment

	linear bool              // lines are written in place of a frame
	tell   func(text string) // to the terminal; nil: to nobody
	speech speech.State
}

// audience is who sees a session beside its own person.
type audience struct {
	watches  bool         // seen by another than the session's own
	around   bool         // by one who looks around
	workings *workings    // for those who read along
	trouble  func(string) // hears that no journal is kept; may be nil
}

// departure is how far a session is on its way to its end.
type departure struct {
	leave bool // quit once saved
	going bool // quit once the settings are kept
	left  bool // quit
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
	m.cells.At[layout.Given].Col, m.cells.At[layout.Sheet].Col, m.cells.At[layout.Unknowns].Col = 1, 1, 1
	m.resulted++
	m.renew()
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
		cmd = tea.Batch(m.file.Watch(), m.next())
	case tea.FocusMsg:
		cmd = m.lookAtFile()
	case session.Trouble:
		m.troubled(msg)
	case session.Seen:
		cmd = m.takeSeen(msg)
	case opened:
		cmd = m.first()
	case likesKept:
		cmd = m.tookLikes(msg)
	case tea.BackgroundColorMsg:
		m.background(msg.IsDark())
	case lastOpened:
		m.overview(msg)
		cmd = m.peek(false)
	case fetched:
		cmd = m.takeFetched(msg)
	case solved:
		m.take(msg)
	case worked:
		m.takeWorked(msg)
		cmd = m.catchUp()
	case judged:
		m.takeJudged(msg)
	case session.Effect:
		m.takeWeighed(msg)
	case session.Saved:
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
	m.settle()
	return tea.Batch(cmd, m.toJournal(), m.wanted())
}

// The largest screen that is drawn; what lies beyond stays blank.
const maxW, maxH = 400, 150

func (m *Model) resize(w, h int) {
	m.w, m.h = max(min(w, maxW), 0), max(min(h, maxH), 0)
	m.settle()
}

// View draws the frame.
func (m Model) View() tea.View {
	if m.linear {
		return tea.NewView("") // all is written already
	}
	v := tea.NewView(m.frame())
	v.AltScreen = true
	v.ReportFocus = m.file.Every > 0
	v.MouseMode = tea.MouseModeCellMotion
	v.WindowTitle = "trivet " + m.title()
	return v
}

func (m Model) frame() string { return m.composed().String() }

func (m Model) composed() grid.Frame {
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
		m.drawBoxed(g.All())
		m.drawQuestion(g.All())
	case m.board.On:
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
		m.drawBoxed(g.All())
		m.drawFoot(g.All())
	}
	m.drawSeen(g.All())
	if m.theme.Set == theme.Seven {
		g.Seven()
	}
	return grid.Frame{Grid: g, Styles: m.theme.Styles}
}

// renew has the panes of cells show the sheet as it is now.
func (m *Model) renew() {
	m.records++
	m.settle()
}
