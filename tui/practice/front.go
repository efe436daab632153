package practice

import (
	"strings"

	tea "charm.land/bubbletea/v2"

	"trivet/mechanics/problemset"
	"trivet/mechanics/sheet"
	"trivet/tui/grid"
	"trivet/tui/keys"
	"trivet/tui/session"
	"trivet/tui/text"
	"trivet/tui/theme"
)

// Front is what is practised in a session, in front of its workbench. It is a value, as a desk is.
type Front struct {
	opt   Options
	open  func() (Keeping, string) // the person's own record; nil: there is one, or none
	env   []string                 // by which it is found
	alone bool                     // the session began with practice: there is nothing behind it
	Shelf *Shelf                   // the problems of a set
	Desk  *Desk                    // the one that is worked on
	asked int                      // what was asked for last, by its number
	waits bool                     // for it, as keys do
}

// Reply is what was asked for last, or was overtaken.
type Reply struct {
	of  int
	msg tea.Msg
}

// ask asks for something, in place of what was asked for before; opens tells that keys are meant
// for it.
func (f *Front) ask(cmd tea.Cmd, opens bool) tea.Cmd {
	f.asked++
	f.waits = opens
	n := f.asked
	return func() tea.Msg {
		out := session.Work(n, cmd)
		if out.Fault != "" {
			return Reply{n, Opened{Fault: "this could not be opened (fault: " + out.Fault + ")"}}
		}
		return Reply{n, out.Value}
	}
}

// Expect has keys wait for a sheet that is being read, or no longer.
func (f *Front) Expect(yes bool) { f.waits = yes }

// Ends is asked before the solution is shown.
const Ends = "Show the solution? Practice on this problem ends, and your record says so."

// Said is what became of something that came to the front.
type Said struct {
	Text string
	Bad  bool
	Loud bool // it is said where panes show it as well
	Cmd  tea.Cmd
	Far  map[string]string // how far one has come in each set; nil: no word of it
	Came bool              // what keys waited for is there, or will not be
}

// NewFront begins with practice where there are options; at a desk the record is the person's own, by
// the session's environment.
func NewFront(opt *Options, keep Keeping, env []string, hosted bool) (f Front) {
	f.opt.Keeping = keep
	if opt != nil {
		f.opt, f.alone = *opt, true
	}
	if f.opt.Store == nil && !hosted && opt == nil { // a visitor's record is not that of the host's person
		f.open, f.env = func() (Keeping, string) { return Own(env) }, env
	}
	return f
}

// Alone tells that the session practises and does nothing else.
func (f *Front) Alone() bool { return f.alone }

// On tells that practice has the screen.
func (f *Front) On() bool { return f.Desk != nil || f.Shelf != nil || f.alone }

// Waits tells that something is being opened, which keys are meant for.
func (f *Front) Waits() bool { return f.waits }

// Begin opens what a session that practises begins with: a set, or a sheet by its name.
func (f *Front) Begin(name string, s *sheet.Sheet) tea.Cmd {
	if f.opt.Set != nil {
		return f.ask(f.opt.List(0), true)
	}
	return f.Sheet(name, s)
}

// Sheet opens a sheet for practice.
func (f *Front) Sheet(name string, s *sheet.Sheet) tea.Cmd {
	return f.ask(f.opt.Keeping.Sheet(name, s, f.opener()), true)
}

// opener opens the person's own record, once.
func (f *Front) opener() func() (Keeping, string) {
	if f.opt.Store != nil {
		return nil
	}
	return f.open
}

// BuiltIn opens a set that comes with the program.
func (f *Front) BuiltIn(name string) tea.Cmd {
	keep, open := f.opt.Keeping, f.opener()
	return f.ask(func() tea.Msg {
		opt, ok := BuiltIn(name)
		if !ok {
			return Shelved{Fault: "this set does not read"}
		}
		trouble := ""
		if opt.Keeping = keep; open != nil {
			opt.Keeping, trouble = open()
		}
		return listed(opt, trouble)
	}, true)
}

// Farther is how far one has come in each set that comes with the program.
type Farther struct {
	keep    Keeping
	far     map[string]string
	trouble string
}

// Fetched opens a file that was read: a set, or where it is none the sheet by its name.
func (f *Front) Fetched(name string, s *sheet.Sheet, set *problemset.Set) tea.Cmd {
	if set == nil {
		return f.Sheet(name, s)
	}
	keep, open := f.opt.Keeping, f.opener()
	return f.ask(func() tea.Msg {
		opt, trouble := Options{Keeping: keep, Set: set}, ""
		if open != nil {
			opt.Keeping, trouble = open()
		}
		return listed(opt, trouble)
	}, true)
}

// listed reads the list of a set, with what is wrong with the record.
func listed(opt Options, trouble string) tea.Msg {
	msg := opt.List(0)()
	if shelf, ok := msg.(Shelved); ok {
		shelf.Trouble = trouble
		return shelf
	}
	return msg
}

// Standing reads how far one has come, also in the sets of some files; looking makes no record.
func (f *Front) Standing(paths []string) tea.Cmd {
	keep, open, env := f.opt.Keeping, f.opener(), f.env
	return func() tea.Msg {
		switch {
		case open != nil && !Kept(env):
			return Farther{keep: keep, far: keep.Standing(paths)}
		case open != nil:
			var trouble string
			keep, trouble = open()
			return Farther{keep, keep.Standing(paths), trouble}
		}
		return Farther{keep: keep, far: keep.Standing(paths)}
	}
}

// Take receives a message of practice; what was overtaken, or is of a desk that was left, says
// nothing more.
func (f Front) Take(msg tea.Msg) (_ Front, out Said) {
	came := false
	if of, ok := msg.(Reply); ok {
		if of.of != f.asked {
			return f, out
		}
		msg, came, f.waits = of.msg, f.waits, false
	}
	loud := func(text string) Said { return Said{Text: text, Bad: true, Loud: true, Came: came} }
	out.Came = came
	switch msg := msg.(type) {
	case Farther:
		f.opt.Keeping = msg.keep
		if msg.trouble != "" {
			out = loud(msg.trouble)
		}
		out.Far = msg.far
	case Shelved:
		if msg.Fault != "" {
			return f, loud(msg.Fault)
		}
		f.Shelf, f.opt.Keeping = &msg.Shelf, msg.Shelf.opt.Keeping
		if msg.Trouble != "" {
			out = loud(msg.Trouble)
		}
	case Opened:
		if msg.Fault != "" {
			return f, loud(msg.Fault)
		}
		f.Desk, f.opt.Keeping = &msg.Desk, msg.Keep
		if out = (Said{Came: came, Text: "practice: " + msg.Desk.Title() + ". " + strings.Join(strings.Fields(msg.Desk.Problem.Statement), " ") + " Type an entry and enter, or the words hint or undo; ctrl+w leads to the task, esc back."}); msg.Trouble != "" {
			out = loud(msg.Trouble)
		}
	case Told:
		if f.Desk == nil || f.Desk.work != msg.work {
			return f, out
		}
		d, cmd := f.Desk.Take(msg)
		f.Desk = &d
		out = Said{Text: msg.Says, Bad: msg.Bad, Loud: msg.Loud, Cmd: cmd}
	}
	return f, out
}

// Keeps tells that what is done here goes into a record.
func (f *Front) Keeps() bool { return f.opt.Store != nil }

// Do does an intent on a screen w by h. Where Leave is asked for there is nothing left here.
func (f Front) Do(i keys.Intent, w, h int) (_ Front, cmd tea.Cmd, says string, wish Wish) {
	switch {
	case f.Desk != nil:
		var d Desk
		if d, cmd, says, wish = f.Desk.Do(i, w, h); wish == Leave {
			return f.left()
		}
		f.Desk = &d
	case f.Shelf != nil:
		var s Shelf
		if s, cmd, wish = f.Shelf.Do(i); wish == Leave {
			return f.left()
		}
		if f.Shelf = &s; cmd != nil {
			cmd = f.ask(cmd, true)
		}
	case i == keys.Cancel: // it is being read, or cannot be
		return f.left()
	}
	return f, cmd, says, wish
}

// left goes back to where practice was begun.
func (f Front) left() (_ Front, cmd tea.Cmd, says string, wish Wish) {
	if f.Desk != nil {
		cmd = f.Desk.flush()
	}
	if f.Desk != nil && f.Shelf != nil {
		f.Desk = nil
		return f, tea.Sequence(cmd, f.ask(f.Shelf.Again(), false)), "", Nothing
	}
	if f.asked++; !f.alone { // what is on its way is wanted no more
		f.Desk, f.Shelf, f.waits = nil, nil, false
	}
	return f, cmd, "", Leave
}

// Show has the solution shown.
func (f Front) Show() (Front, tea.Cmd) {
	d, cmd := f.Desk.Show()
	f.Desk = &d
	return f, cmd
}

// Type adds characters to the entry.
func (f Front) Type(chars string) (Front, tea.Cmd) {
	if f.Desk == nil {
		return f, nil
	}
	d, cmd := f.Desk.Type(chars)
	f.Desk = &d
	return f, cmd
}

// At is the front with another line of the task read.
func (f Front) At(line int) Front {
	d := *f.Desk
	d.read = line
	f.Desk = &d
	return f
}

// Line is the entry that is typed.
func (f *Front) Line() text.Line { return f.Desk.Line }

// Mode is what has the keys.
func (f *Front) Mode() keys.Mode {
	switch {
	case f.Desk == nil:
		return keys.OnShelf
	case f.Desk.pane == picturePane:
		return keys.OnDepicted
	case f.Desk.pane == taskPane:
		return keys.OnTask
	}
	return keys.OnPractice
}

// Draw draws practice on the whole screen.
func (f *Front) Draw(c grid.Canvas, with Frame) {
	switch {
	case f.Desk != nil:
		f.Desk.Draw(c, with)
	case f.Shelf != nil:
		f.Shelf.Draw(c, with)
	default:
		says := "opening ..."
		if with.Note.Text != "" {
			says = with.Note.Text
		}
		c.Text(1, 0, theme.Dim, grid.Fit(says, c.W()-2))
	}
}

// DrawTop draws what stands over the panes.
func (f *Front) DrawTop(c grid.Canvas, g theme.Glyphs) {
	switch {
	case f.Desk != nil:
		f.Desk.drawTop(c, g)
	case f.Shelf != nil:
		f.Shelf.drawTop(c)
	}
}
