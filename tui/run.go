package tui

import (
	"context"
	"os"

	tea "charm.land/bubbletea/v2"
	"github.com/charmbracelet/colorprofile"

	"trivet/tui/frame"
	"trivet/tui/session"
)

// frames is how many may be drawn in a second. Bubble Tea wakes for each of them, drawn or
// not, so it is what an idle workbench costs: at 30 a frame shows within 33 ms.
const frames = 30

// Run opens the workbench and returns when it is left. Where ctx or the input
// ends first, the error is a *Stopped. Signals are the caller's.
func Run(ctx context.Context, opt Options) error {
	return opt.run(ctx, func(m Model) tea.Model { return m })
}

// run lets a model be watched on its way into the program.
func (opt Options) run(ctx context.Context, as func(Model) tea.Model) error {
	ctx, stop := context.WithCancel(ctx)
	defer stop()
	if opt.Settings == nil {
		opt.settle()
	}
	defer opt.inLines(ctx)()
	options := []tea.ProgramOption{tea.WithContext(ctx), tea.WithoutSignalHandler(), tea.WithFPS(frames)}
	if opt.In != nil {
		options = append(options, tea.WithInput(session.Input(opt.In, stop)))
	}
	if opt.Out != nil {
		options = append(options, tea.WithOutput(opt.Out))
	}
	if opt.Env != nil {
		options = append(options, tea.WithEnvironment(opt.Env))
	}
	if _, file := opt.Out.(*os.File); opt.Out != nil && !file {
		// What is no file cannot be asked whether it is a terminal: the session's
		// environment says what colours it has.
		options = append(options, tea.WithColorProfile(colorprofile.Env(opt.Env)))
	}
	if opt.Width > 0 && opt.Height > 0 {
		options = append(options, tea.WithWindowSize(opt.Width, opt.Height))
	}
	if opt.Page == nil {
		opt.Page = session.PagesBy(opt.Version)
	}
	m := New(opt)
	m.sizing.Settle = frame.SettleAfter
	p := tea.NewProgram(as(m), options...)
	last, err := p.Run()
	switch m, ok := last.(Model); {
	case ok && m.left:
		return nil
	case ok && ctx.Err() != nil:
		return m.stopped()
	}
	return err
}

// Stopped is how a workbench ends that its person did not leave: the line is
// lost, or the process is told to end.
type Stopped struct {
	Unsaved bool // something was typed and not saved
	Kept    bool // it is in the journal
}

func (s *Stopped) Error() string {
	switch {
	case !s.Unsaved:
		return "the workbench was ended from outside; everything was saved"
	case s.Kept:
		return "the workbench was ended from outside; unsaved work is kept, and offered when the sheet is opened again"
	}
	return "the workbench was ended from outside; unsaved work is lost, since no journal could be written"
}

// stopped leaves the journal where it holds something.
func (m *Model) stopped() *Stopped {
	s := &Stopped{Unsaved: m.history.Modified() || m.cells.Unkept()}
	m.Renote()
	s.Kept = s.Unsaved && m.file.Journal != nil && m.file.Journal.Kept()
	if !s.Unsaved {
		m.file.Close()
	}
	return s
}
