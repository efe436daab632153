// Package start is the start screen: the sheets to begin with, each with its picture.
package start

import (
	"fmt"
	"path/filepath"
	"time"

	tea "charm.land/bubbletea/v2"

	"trivet/fixtures"
	"trivet/mechanics/problem"
	"trivet/mechanics/problemset"
	"trivet/mechanics/report"
	"trivet/mechanics/sheet"
	"trivet/tui/grid"
	"trivet/tui/keys"
	"trivet/tui/overlay"
	"trivet/tui/settings"
	"trivet/tui/theme"
)

// Screen is the start screen. It is replaced, never changed.
type Screen struct {
	overlay.List
	Over bool // it lies over a sheet that is open
	all  []Sheet
	shot Fetched

	standing map[string]string // how far one has come in each set, by its name
}

// Sheet is one to begin with: a text that comes with the program, or a file.
type Sheet struct {
	Path                string
	Set                 string // of problems to practise, by its name: it is no sheet then
	family, title, text string
}

// Blank tells a sheet with nothing in it.
func (s Sheet) Blank() bool { return s.family == blankFamily }

// Fetched is a sheet of the start screen, read and solved for its picture.
type Fetched struct {
	Of       Sheet
	Sheet    *sheet.Sheet
	Stamp    sheet.Stamp
	Fault    string
	Open     bool            // it is to be opened
	Practise bool            // it is to be practised
	Set      *problemset.Set // where the file is one
	problem  *problem.Problem
}

const blankFamily = "Blank"

// welcome is the sheet that a first visit points at, so that enter shows the
// workbench at work.
const welcome = "hanging-load"

// New is the start screen, with the files opened last, by path.
func New(recent []string) *Screen {
	o := &Screen{}
	for _, path := range recent {
		o.all = append(o.all, Sheet{family: "Opened last", title: grid.Clean(filepath.Base(path)), Path: path})
	}
	for _, s := range fixtures.Blanks() {
		o.all = append(o.all, Sheet{family: blankFamily, title: s.Title, text: s.Text})
	}
	for _, set := range fixtures.Sets() {
		o.all = append(o.all, Sheet{family: "Problems to practise", title: set.Title, Set: set.Name})
	}
	sheets := fixtures.Starts()
	for _, family := range fixtures.Families() {
		for _, s := range sheets {
			if s.Family == family {
				if s.Name == welcome && len(recent) == 0 {
					o.Pick = len(o.all)
				}
				o.all = append(o.all, Sheet{family: family, title: s.Title, text: s.Text})
			}
		}
	}
	return o
}

// Overview is the start screen over a sheet that stays as it is until another is chosen; it may
// point at the blank ones.
func Overview(recent []string, blank bool) *Screen {
	o := New(recent)
	o.Over = true
	for k, s := range o.all {
		if blank && s.Blank() {
			o.Pick = k
			break
		}
	}
	return o
}

// shown are the sheets whose title, family or path hold every word looked for.
func (o *Screen) shown() []Sheet {
	return overlay.Narrowed(o.List, o.all, func(s Sheet) string { return s.title + " " + s.family + " " + s.Path })
}

// Picked is the sheet that is picked, if any matches.
func (o *Screen) Picked() (s Sheet, ok bool) {
	list := o.shown()
	if o.Pick >= len(list) {
		return s, false
	}
	return list[o.Pick], true
}

// Listed are the sheets as they show.
func (o *Screen) Listed() overlay.Shown {
	s := overlay.Shown{
		List: o.List, Intro: "choose a sheet with down and up, or type to look for one; enter opens it; ", None: "no sheet matches: backspace",
		Columns: []overlay.Column{{At: 1, Look: theme.Plain, Picks: true}},
	}
	for _, x := range o.shown() {
		title := x.title
		if far := o.standing[x.Set+x.Path]; x.Set+x.Path != "" && far != "" { // it is one or the other
			title += ": " + far
		}
		s.Rows = append(s.Rows, overlay.Row{Family: x.family, Cells: []string{title}, Says: title})
	}
	return s
}

// Wish is what is asked for on the start screen.
type Wish int

// The wishes.
const (
	Look     Wish = iota // at the sheet picked
	Open                 // it
	OpenNew              // a blank sheet
	Leave                // for the sheet that is open
	Settings             // to change them
	Practise             // the sheet or set picked
)

// Do does an intent, on a screen w by h.
func (o Screen) Do(i keys.Intent, w, h int) (_ *Screen, wish Wish, ok bool) {
	switch i {
	case keys.Commit:
		if of, ok := o.Picked(); ok && of.Set != "" {
			return &o, Practise, true
		}
		return &o, Open, true
	case keys.Practise:
		return &o, Practise, true
	case keys.OpenSettings:
		return &o, Settings, true
	case keys.Cancel:
		if o.Over {
			return &o, Leave, true
		}
		return &o, OpenNew, true
	case keys.Blank:
		return &o, OpenNew, true
	}
	o.List, ok = o.List.Do(i, len(o.shown()), max(Place(w, h).Dy()-2, 1))
	return &o, Look, ok
}

// Type adds to what is looked for.
func (o Screen) Type(chars string) *Screen {
	o.List = o.Typed(chars)
	return &o
}

// Click picks the sheet at a row of the list, and asks for the one picked already.
func (o Screen) Click(row int) (_ *Screen, wish Wish) {
	if row == o.Pick {
		n, wish, _ := o.Do(keys.Commit, 0, 0)
		return n, wish
	}
	o.Pick = row
	return &o, Look
}

// Peek reads the picked sheet in a command, to show or open it; nil where it shows already.
func (o *Screen) Peek(open bool, likes *settings.Settings) tea.Cmd {
	of, ok := o.Picked()
	if !ok || !open && of == o.shot.Of {
		return nil
	}
	return func() (msg tea.Msg) {
		defer func() {
			if r := recover(); r != nil {
				msg = Fetched{Of: of, Fault: fmt.Sprintf("this sheet could not be read (fault: %v)", r)}
			}
		}()
		return of.Fetch(open, likes)
	}
}

// NewSheet is the first blank sheet, to be opened.
func NewSheet(likes *settings.Settings) Fetched {
	return Sheet{family: blankFamily, text: fixtures.Blanks()[0].Text}.Fetch(true, likes)
}

// Paths are those of the files opened last.
func (o *Screen) Paths() (paths []string) {
	for _, s := range o.all {
		if s.Path != "" {
			paths = append(paths, s.Path)
		}
	}
	return paths
}

// Standing shows how far one has come in each set.
func (o Screen) Standing(far map[string]string) *Screen {
	o.standing = far
	return &o
}

// Practise reads a sheet to be practised.
func (s Sheet) Practise() tea.Msg {
	f := s.Fetch(true, nil)
	f.Open, f.Practise = false, true
	return f
}

// Name is what a sheet goes by in the record where it has no file.
func (s Sheet) Name() string { return s.title }

// Fetch reads a sheet; a blank one begins as the settings have it. A set has nothing to read.
func (s Sheet) Fetch(open bool, likes *settings.Settings) Fetched {
	f := Fetched{Of: s, Open: open}
	if s.Set != "" {
		return f
	}
	var err error
	if s.Path != "" {
		f.Sheet, f.Stamp, err = sheet.Load(s.Path)
	} else {
		f.Sheet, err = sheet.Parse([]byte(s.text))
	}
	if err != nil {
		f.Fault = report.FileFault(s.Path, err).Short(s.Path)
		return f
	}
	if s.Path != "" && problemset.Is(f.Sheet) {
		set, faults := problemset.Read(f.Sheet, s.Path, time.Local)
		if f.Set = set; len(faults) > 0 {
			f.Fault = faults[0].In(s.Path)
		}
		return f
	}
	if s.Blank() && likes != nil {
		if with, err := likes.NewSheet(f.Sheet); err == nil {
			f.Sheet = with // of a blank sheet no edit is refused; one would leave it as it is
		}
	}
	if !open {
		f.problem, _ = problem.Read(f.Sheet)
	}
	return f
}

// Take shows a sheet that was fetched, unless another is picked meanwhile: its picture may be there
// already.
func (o Screen) Take(f Fetched) *Screen {
	if of, ok := o.Picked(); f.Open || ok && of == f.Of {
		o.shot = f
	}
	return &o
}
