// Package tui is the workbench: panes of cells for points, force lines and
// unknown magnitudes, with the system, its checks and the picture beside them,
// all of it live at every keystroke.
package tui

import (
	"io"
	"time"

	"trivet/mechanics/sheet"
	"trivet/tui/frame"
	"trivet/tui/picture"
	"trivet/tui/practice"
	"trivet/tui/prefs"
	"trivet/tui/session"
	"trivet/tui/settings"
	"trivet/tui/start"
)

// Options say what the workbench opens, and on which terminal. Nothing else is
// shared between two sessions.
type Options struct {
	Path  string       // the file; empty for a sheet that has none yet
	Sheet *sheet.Sheet // its text
	Stamp sheet.Stamp  // what the file was when it was read
	Note  string       // a first word for the bottom line

	// Start opens the start screen, with the sheets opened last, by path, before
	// those that come with the program.
	Start  bool
	Recent []string

	// Practice has the session practise, the sheet or a set, and nothing else; nil: the
	// workbench.
	Practice *practice.Options

	// Record keeps what a visitor practises from within the workbench; at a desk it is the
	// person's own.
	Record practice.Keeping

	// Settings are the person's, Keep writes what differs between two states of
	// them, and Opened records a sheet among those opened last. Run reads and keeps
	// them in the folders that Env names; a session that another program runs has
	// the defaults and keeps none.
	Settings *settings.Settings
	Keep     func(was, set settings.Settings) error
	Opened   func(path string) error

	// Page writes a page. Where it is nil, Run takes session.PagesBy the Version of the program,
	// and a session that another program runs writes none: a visitor's files are not the
	// host's.
	Page    session.PageWriter
	Version string

	// Journal keeps what is typed in the state folder of Env, and offers what an
	// earlier session left there. Every is how often the file is looked at for
	// changes by others, 0 for never.
	Journal bool
	Every   time.Duration

	// Journals are further folders of journals, for where the state folder of Env
	// takes none; Trouble hears, beside the bottom line, that none is kept.
	Journals []string
	Trouble  func(says string)

	// Save writes the sheet; nil writes the file that the path names. A host
	// gives its own, since a visitor's paths are not the host's: they are names in
	// Folder, which nobody but the journal is told. Such a session may go on behind
	// its quit; its journal ends with Done or Leave.
	Save   session.Saver
	Folder string

	In  io.Reader // nil for the program's own terminal
	Out io.Writer
	Env []string // the session's environment: TERM, NO_COLOR, LANG

	ASCII         bool // plain characters whatever the environment says
	Linear        bool // lines of text in place of panes; a host's session has none
	Width, Height int  // fixed size, for tests; 0 asks the terminal

	tell func(text string) // of the linear screen
}

// New makes the model of a session.
func New(opt Options) Model {
	if opt.Sheet == nil {
		// An empty text always reads.
		opt.Sheet, _ = sheet.Parse(nil)
	}
	m := Model{
		file: session.File{
			Path: opt.Path, Stamp: opt.Stamp, Store: opt.Save, Folder: opt.Folder, Opened: opt.Opened,
			Every: opt.Every, Keeps: opt.Journal, Journals: opt.Journals,
		},
		history: sheet.NewHistory(opt.Sheet), live: session.NewLive(), page: opt.Page,
		places:   places{cam: picture.NewCamera()},
		dialogs:  dialogs{note: frame.Note{Text: opt.Note}},
		display:  display{w: opt.Width, h: opt.Height, prefs: prefs.New(opt.Settings, opt.Keep, opt.Env, opt.ASCII), env: opt.Env},
		audience: audience{workings: &workings{}, trouble: opt.Trouble},
	}
	m.dress()
	if opt.Linear {
		m.linear, m.tell = true, opt.tell
		m.speech.W = opt.Width
		m.resize(linearW, linearH)
	}
	m.front = practice.NewFront(opt.Practice, opt.Record, opt.Env, opt.Save != nil)
	m.start()
	if opt.Start {
		m.opening = start.New(opt.Recent)
	}
	return m
}
