// Package speech is the linear screen: what a session is at and what became different, from plain
// data, in lines for a screen reader or a slow line.
package speech

import (
	"trivet/mechanics/sheet"
	"trivet/tui/keys"
	"trivet/tui/layout"
)

// Moment is a session at a moment, as far as it is said.
type Moment struct {
	Gone     bool // the person has left
	Starting bool // the start screen is open: there is no sheet yet
	Greeting []string
	Note     string // on the bottom line
	Warns    bool   // it is a warning
	Notes    int    // how many there were
	Sheet    *sheet.Sheet
	Solving  *sheet.Sheet // the sheet with what is being typed
	Running  bool         // it is not solved yet
	Leaving  bool
	Saving   bool
	Doubt    string // the likeliest mistake of an answer
	Result   *Result
	Place    Place
	Scene    Scene
}

// State is what has been said.
type State struct {
	W     int      // of the terminal
	Lines []string // said by the last message
	Last  Line     // as it stands below them

	Read   [layout.Panes]int // the line of each pane that was read last
	Jumped bool              // to the start or the end of what is read: what lies between is passed over

	was   Moment
	begun bool  // what is open was said
	owes  bool  // where one has come to, once the result is there
	at    Where // that was said last
	heard heard
}

// Cause is what a session did last.
type Cause int

// The causes.
const (
	Other   Cause = iota
	Pressed       // a key, or a paste
	Opened        // it began
)

// plainWidth is that of a terminal which does not tell its own.
const plainWidth = 200

// Text is what was read last, to be read on where it is the same.
func (s *State) Text() Text { return s.was.Scene.Text }

// Hear says what became different, and gives what the terminal gets of it.
func (s *State) Hear(now Moment, cause Cause) string {
	before := s.Last
	s.Lines, s.Last = spoken(s.describe(now, cause)), Line{}
	if !now.Gone {
		w := s.W
		if w <= 0 {
			w = plainWidth
		}
		prompt, line := now.Scene.Prompt, now.Scene.Line
		if now.Scene.Mode == keys.OnCells {
			prompt, line = now.Place.prompt()
		}
		s.Last = below(prompt, line, w)
	}
	s.was = now
	return written(s.W, s.Lines, before, s.Last)
}

// describe gives the lines that say what became different.
func (s *State) describe(now Moment, cause Cause) (lines []string) {
	was, pressed := s.was, cause == Pressed
	say := func(more ...string) { lines = append(lines, more...) }
	if !s.begun && cause != Opened {
		return nil // the size of the terminal may come first
	}
	s.begun = true
	switch {
	case now.Gone && !was.Gone:
		return append(now.noted(was), "left trivet")
	case cause == Opened, was.Starting && !now.Starting:
		say(now.Greeting...)
		was = Moment{} // all of it is new
		if cause != Opened {
			was.Scene.Mode = keys.OnStart
		}
		s.at, pressed = Where{}, false
	case now.Notes != was.Notes: // a note speaks for the change
	default:
		say(changed(was.Sheet, now.Sheet)...)
	}
	say(now.noted(was)...)
	if now.Result != nil {
		say(s.heard.hear(*now.Result)...)
	}
	mode, before := now.Scene.Mode, was.Scene.Mode
	idle := func() bool { return pressed && len(lines) == 0 && !now.Scene.writes() && !now.Saving }
	if mode != keys.OnCells && mode != keys.OnSearch {
		say(now.Scene.since(was.Scene, s.Jumped)...)
		s.owes = false
		if idle() {
			say(now.Scene.begins()...) // a key that led nowhere says where one still is
		}
		return lines
	}
	if mode == keys.OnSearch && mode != before {
		say(now.Scene.Intro...)
	}
	if mode != before && before != keys.OnSearch && before > keys.InList && before != keys.InWords {
		s.at = Where{} // back from elsewhere
	}
	switch moved := s.at != now.Place.At || mode != before && mode == keys.OnCells; {
	case now.Leaving || now.Saving: // the file is said next
	case moved && now.Running && now.Solving != was.Solving && now.Sheet != was.Sheet:
		s.owes = true // first what follows from the change
	case moved, s.owes && !now.Running, idle() && !s.owes:
		if !moved && !s.owes {
			s.at = Where{}
		}
		say(now.Place.since(s.at)...)
		s.at, s.owes = now.Place.At, false
	}
	if now.Doubt != was.Doubt {
		say(now.Doubt)
	}
	return lines
}

// noted is the word on the bottom line, where it is a new one.
func (now Moment) noted(was Moment) []string {
	switch {
	case now.Notes == was.Notes || now.Note == "":
		return nil
	case now.Warns:
		return []string{"warning: " + now.Note}
	}
	return []string{now.Note}
}

// Greeting says what is open as a session begins: the start screen, practice, or a sheet by its name.
func Greeting(starts, practises bool, name string, s *sheet.Sheet) []string {
	switch {
	case practises:
		return []string{"trivet, practice; F1 is help, ctrl+q quits"}
	case starts:
		return []string{"trivet: free-body equilibrium, line by line; F1 is help, ctrl+q quits"}
	}
	lines := []string{"sheet " + name + "; F1 is help, ctrl+k lists commands, f7 and a letter lead to the panes"}
	for _, key := range []string{"title", "statement"} {
		c, _ := s.Cell(sheet.Ref{Row: key})
		lines = append(lines, c.Text)
	}
	return lines
}
