package tui

import (
	"image"

	tea "charm.land/bubbletea/v2"

	"trivet/mechanics/sheet"
	"trivet/mechanics/statics"
	"trivet/tui/board"
	"trivet/tui/edit"
	"trivet/tui/frame"
	"trivet/tui/grid"
	"trivet/tui/help"
	"trivet/tui/layout"
	"trivet/tui/overlay"
	"trivet/tui/picture"
	"trivet/tui/practice"
	"trivet/tui/prefs"
	"trivet/tui/results"
	"trivet/tui/session"
	"trivet/tui/speech"
	"trivet/tui/start"
	"trivet/tui/text"
	"trivet/tui/theme"
)

// Model is a session of the workbench. It is a value: Update gives the next
// one, View only draws.
type Model struct {
	file    session.File
	history *sheet.History
	live    session.Live
	page    session.PageWriter // nil: none are written
	derived

	panes
	places
	changes
	dialogs
	board board.Board
	front practice.Front

	display
	audience
	departure
}

// derived is what is worked out of a solution, where that shows.
type derived struct {
	laying session.Queue[*statics.Solution, results.Steps]
	worked results.Laid
}

// places is where one looks: the pane that has the keys, and what shows beside it.
type places struct {
	layout.Turns
	back layout.Pane             // the pane of cells that esc returns to
	read [layout.Panes]text.View // of the results
	cam  picture.Camera
	drag *picture.Drag // of the mouse in the picture
}

// changes is what is being done to the sheet.
type changes struct {
	cells        edit.Editor      // the panes of cells
	changedByKey bool             // the text being typed, by a key that is no character
	outdated     session.Outdated // givens that were changed
	ahead        session.Ahead    // typed for steps that are still being laid out
}

// dialogs is what stands before the panes, and the word on the bottom line.
type dialogs struct {
	choosing bool           // which kind of row to make
	listing  bool           // which pane to go to
	naming   *text.Line     // a file name being typed
	forPage  session.Page   // whose it is; 0 for the sheet's
	ask      *question      // yes, no or back
	help     *help.Help     // the help, scrolled
	opening  *start.Screen  // the start screen
	pending  *start.Fetched // a sheet to be opened once this one is saved
	palette  *overlay.List  // the list of commands
	setup    *prefs.List    // the list of settings
	note     frame.Note     // on the bottom line
	notes    int            // words said so far
}

// display is what a session is shown on, and how the person likes it.
type display struct {
	w, h   int
	sizing frame.Sizing
	theme  theme.Theme
	prefs  prefs.Prefs
	env    []string // the session's environment

	linear bool              // lines are written in place of a frame
	tell   func(text string) // to the terminal; nil: to nobody
	speech speech.State
}

// audience is who sees a session beside its own person.
type audience struct {
	watches  bool         // seen by another than the session's own
	around   bool         // by one who looks around
	hides    bool         // what follows from the solution is hidden
	workings *workings    // for those who read along
	trouble  func(string) // hears that no journal is kept; may be nil
}

// departure is how far a session is on its way to its end.
type departure struct {
	leave bool // quit once saved
	going bool // quit once the settings are kept
	left  bool // quit
}

// start puts the cursor on the first point, and elsewhere on the first cell to
// type in, and builds the panes.
func (m *Model) start() {
	m.back = layout.Points
	m.Turns = layout.Turns{Focus: m.back, Side: layout.Picture, Turn: layout.System, Third: layout.Limits, Large: m.Large}
	m.cells.At[layout.Given].Col, m.cells.At[layout.Sheet].Col, m.cells.At[layout.Unknowns].Col = 1, 1, 1
	m.resulted++
	m.renew()
}

// Init solves the sheet as it was opened.
func (m Model) Init() tea.Cmd {
	first := func() tea.Msg { return opened{} }
	if m.prefs.AsksBackground() {
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
	case prefs.Kept:
		cmd = tea.Batch(m.hear(m.prefs.Took(msg)), m.gone())
	case tea.BackgroundColorMsg:
		m.prefs.Background(msg.IsDark())
		m.dress()
	case lastOpened:
		m.opening = start.Overview(msg.paths, msg.blank)
		cmd = m.peek(false)
	case start.Fetched:
		cmd = m.takeFetched(msg)
	case session.Solved:
		m.take(msg)
	case results.Laid:
		m.takeWorked(msg)
		cmd = m.catchUp()
	case session.Mistakes:
		if m.live.TakeMistakes(msg) && msg.Fault != "" {
			m.say("your answers could not be checked (fault: "+msg.Fault+")", true)
		}
	case session.Effect:
		m.live.TakeEffect(msg)
	case practice.Reply, practice.Told, practice.Farther:
		cmd = m.takePractice(msg)
	case session.Saved:
		cmd = m.afterSave(msg)
	case session.Paged:
		m.afterPage(msg)
	case tea.WindowSizeMsg:
		if m.speech.W = msg.Width; !m.linear {
			cmd = m.sizing.Changed()
			m.resize(msg.Width, msg.Height)
		}
	case frame.Sized:
		cmd = m.sizing.Settled(msg)
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
		asked := ""
		switch {
		case m.ask != nil:
			asked = "y / n / esc: " + m.ask.Text
		case m.naming != nil:
			asked = m.forPage.Prompt(false) + m.naming.Text
		}
		frame.TooSmall(g.All(), m.w, m.h, asked)
	case m.help != nil:
		m.drawTop(g.All().In(s.Top))
		m.help.Draw(g.All(), s, m.helpFor(), m.theme.Glyphs)
		m.drawFoot(g.All())
	case m.front.On():
		m.front.Draw(g.All(), practice.Frame{Glyphs: m.theme.Glyphs, Note: m.note, Hints: m.hints()})
	case m.opening != nil:
		c := g.All().In(image.Rect(0, 0, m.w, m.h))
		m.opening.Draw(c, m.env, m.theme.Glyphs, m.cam)
		m.drawEnd(c, 1)
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
		m.drawChoices(g.All())
		m.drawBoxed(g.All())
		m.drawFoot(g.All())
	}
	if m.ask != nil {
		m.ask.Draw(g.All(), m.aboveFoot(), m.theme.Glyphs.Rule)
	}
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
