package practice

import (
	"fmt"
	"image"
	"os"
	"path/filepath"
	"strings"
	"time"

	tea "charm.land/bubbletea/v2"

	"trivet/mechanics/problemset"
	"trivet/mechanics/report"
	"trivet/mechanics/say"
	"trivet/mechanics/sheet"
	"trivet/mechanics/statics"
	"trivet/tui/frame"
	"trivet/tui/grid"
	"trivet/tui/keys"
	"trivet/tui/layout"
	"trivet/tui/overlay"
	"trivet/tui/record"
	"trivet/tui/theme"
)

// Options say what is practised in a session, and where it is kept.
type Options struct {
	Keeping
	Set *problemset.Set // nil: the sheet of the session

	// Read reads a sheet of the set by its path; nil: from its file.
	Read func(path string) (*sheet.Sheet, error)
}

// Shelf is the list of the problems of a set. It is a value, as a desk is.
type Shelf struct {
	overlay.List
	opt  Options
	rows []shelved
}

// shelved is a problem of the list.
type shelved struct {
	problem problemset.Problem
	title   string
	record.Progress
	fault string
}

// Shelved is a shelf that was read, or what kept it from being so.
type Shelved struct {
	Shelf   Shelf
	Fault   string
	Trouble string
}

// Opened is a desk that was opened, with the sheet on it, or what kept it from being so. Trouble
// says that nothing is kept.
type Opened struct {
	Desk    Desk
	Sheet   *sheet.Sheet
	Keep    Keeping
	Fault   string
	Trouble string
}

// read reads a sheet of the set.
func (o Options) read(p problemset.Problem) (*sheet.Sheet, error) {
	path := o.Set.File(p)
	if o.Read != nil {
		return o.Read(path)
	}
	s, _, err := sheet.Load(path)
	return s, err
}

// List reads the list of a set, with how far the person has come.
func (o Options) List(pick int) tea.Cmd {
	return func() tea.Msg {
		s := Shelf{opt: o, List: overlay.List{Pick: pick}}
		var events []record.Event
		if o.Store != nil {
			var err error
			if events, err = o.Store.Events(o.Person); err != nil {
				return Shelved{Fault: "the record cannot be read: " + err.Error()}
			}
		}
		progress := record.Summary(events)
		for _, p := range o.Set.Problems {
			row := shelved{problem: p, title: p.Name}
			if text, err := o.read(p); err != nil {
				row.fault = report.FileFault(p.Sheet, err).Short(p.Sheet)
			} else if title, ok := text.Cell(sheet.Ref{Row: "title"}); ok {
				row.title = grid.Clean(title.Text)
			}
			for _, one := range progress {
				if one.Problem == (record.Problem{Set: o.Set.Name(), Name: p.Name}) {
					row.Progress = one
				}
			}
			s.rows = append(s.rows, row)
		}
		return Shelved{Shelf: s}
	}
}

// Do does an intent of the list.
func (s Shelf) Do(i keys.Intent) (_ Shelf, cmd tea.Cmd, wish Wish) {
	switch i {
	case keys.Commit:
		if s.Pick < len(s.rows) {
			return s, s.opt.open(s.rows[s.Pick].problem, time.Now()), Nothing
		}
	case keys.Cancel:
		return s, nil, Leave
	default:
		s.List, _ = s.List.Do(i, len(s.rows), 1)
	}
	return s, nil, Nothing
}

// Again reads the list anew.
func (s Shelf) Again() tea.Cmd { return s.opt.List(s.Pick) }

// open begins a problem of the set with the person's own values.
func (o Options) open(p problemset.Problem, now time.Time) tea.Cmd {
	return func() tea.Msg {
		if !o.Set.Opened(now) {
			return Opened{Fault: "the set opens on " + o.Set.Opens.Format(problemset.Stamp)}
		}
		s, sol, fault := o.Personal(p)
		if fault != "" {
			return Opened{Fault: fault}
		}
		return opened(o.Keeping, InSet(o.Set, p, s), s, sol)
	}
}

func opened(keep Keeping, task Task, s *sheet.Sheet, sol *statics.Solution) Opened {
	d, err := Open(keep, task, s, sol)
	out := Opened{Desk: d, Sheet: s, Keep: keep}
	if err != nil {
		out.Trouble = "the record cannot be read: " + err.Error()
	}
	return out
}

// Sheet begins the practice of a sheet by its name; own opens the person's own record first, where
// that is to be.
func (k Keeping) Sheet(name string, s *sheet.Sheet, own func() (Keeping, string)) tea.Cmd {
	return func() tea.Msg {
		sol, fault := solved(s)
		if fault != "" {
			return Opened{Fault: fault}
		}
		trouble := ""
		if own != nil {
			k, trouble = own()
		}
		out := opened(k, Alone(name, s), s, sol)
		if trouble != "" {
			out.Trouble = trouble
		}
		return out
	}
}

// Own is the person's own record at this desk; trouble says that there is none.
func Own(env []string) (k Keeping, trouble string) {
	file, err := record.Desk(env)
	if err != nil {
		return k, "nothing is kept: there is no home folder for the record"
	}
	store, notice, err := record.Open(file)
	if err != nil {
		return k, "nothing is kept: " + err.Error()
	}
	if notice != nil {
		trouble = notice.Error()
	}
	return Keeping{store, record.Self(env)}, trouble
}

// Kept tells that there is a record at this desk.
func Kept(env []string) bool {
	file, err := record.Desk(env)
	if err == nil {
		_, err = os.Stat(file)
	}
	return err == nil
}

// Name is what a sheet goes by in the record: its file's name without the ending, else its title.
func Name(path, title string) string {
	if path != "" {
		return strings.TrimSuffix(filepath.Base(path), filepath.Ext(path))
	}
	return title
}

// Title is that of the set.
func (s Shelf) Title() string {
	if s.opt.Set.Title != "" {
		return s.opt.Set.Title
	}
	return s.opt.Set.Name()
}

// Times say from when and until when the set is open.
func (s Shelf) Times() string { return times(s.opt.Set, time.Now()) }

func times(set *problemset.Set, now time.Time) string {
	switch {
	case !set.Opened(now):
		return "opens " + set.Opens.Format(problemset.Stamp)
	case set.Closes.IsZero():
		return "open"
	case set.Closed(now):
		return "closed " + set.Closes.Format(problemset.Stamp)
	}
	return "open until " + set.Closes.Format(problemset.Stamp)
}

// standing says how far the person has come on a problem.
func (s *shelved) standing() string {
	switch {
	case s.fault != "":
		return "cannot be read"
	case !s.Done.IsZero():
		return fmt.Sprintf("done, %.3g of %g points", s.Points, s.Of)
	case s.Shown:
		return "solution shown"
	case s.Entries > 0 || s.Hints > 0:
		return strings.TrimSuffix(say.Count(s.Entries, "entry")+", "+say.Count(s.Hints, "hint"), ", 0 hints")
	}
	return fmt.Sprintf("%g points", s.problem.Points)
}

// Listed are the problems as they show.
func (s Shelf) Listed() overlay.Shown {
	out := overlay.Shown{
		List: s.List, Intro: s.Title() + ", " + s.Times() + "; choose a problem with down and up; ", None: "the set has no problem",
		Columns: []overlay.Column{{At: 1, Width: 44, Look: theme.Plain, Picks: true}, {At: 47, Look: theme.Dim}},
	}
	for i := range s.rows {
		r := &s.rows[i]
		out.Rows = append(out.Rows, overlay.Row{Cells: []string{r.title, r.standing()}, Says: strings.TrimSuffix(r.title+", "+r.standing(), ", ")})
	}
	return out
}

// Draw draws the list on the whole screen.
func (s Shelf) Draw(c grid.Canvas, f Frame) {
	s.drawTop(c)
	s.Listed().Draw(c.In(image.Rect(1, top, c.W()-1, c.H()-layout.Foot)), f.Glyphs.Row)
	foot := frame.Foot{Hints: f.Hints}
	if f.Note.Text != "" {
		foot.Says.Wrapped(f.Note.Look(), "", f.Note.Text, c.W()-2)
	}
	foot.Draw(c)
}

func (s Shelf) drawTop(c grid.Canvas) {
	times := s.Times()
	c.Text(1, 0, theme.Bar, grid.Fit(s.Title(), min(grid.Width(s.Title()), c.W()-grid.Width(times)-4)))
	c.Text(c.W()-grid.Width(times)-1, 0, theme.Dim, times)
}
