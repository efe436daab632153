package speech

import (
	"fmt"
	"slices"
	"strings"

	"trivet/mechanics/problem"
	"trivet/mechanics/say"
	"trivet/mechanics/sheet"
	"trivet/tui/cells"
	"trivet/tui/keys"
	"trivet/tui/overlay"
	"trivet/tui/text"
)

// Scene is what has the keys.
type Scene struct {
	Mode  keys.Mode
	Of    any      // of what in that mode, where there may be several: which question, step or pane
	Intro []string // said as it begins
	List  *overlay.Shown
	Text  Text
	Edit  *cells.Edit
	After sheet.Ref // the row made last, while the next may follow it
	ByKey bool      // the text of the edit was changed by a key that is no character

	Prompt string    // what stands on the last line,
	Line   text.Line // and what is typed behind it
}

// scenes are what is said as a mode begins, and what stands on the last line there.
var scenes = map[keys.Mode]Scene{
	keys.OnQuestion:   {Prompt: "y, n or esc: "},
	keys.OnName:       {Intro: []string{"type the name of the file and enter; esc: back"}},
	keys.OnSearch:     {Intro: []string{"type what to find; enter: next match, esc: done"}},
	keys.OnHelpSearch: {Intro: []string{"type what to find in the help; enter: next line, esc: done"}},
	keys.OnStart:      {Prompt: "sheet: "},
	keys.InSetting:    {Intro: []string{"type the value and enter; esc: leave it as it was"}},
	keys.OnChoice:     {Prompt: "which row? "},
	keys.OnPanes:      {Prompt: "which pane? "},
	keys.OnPractice:   {Intro: []string{"your work: type an entry and enter"}},
	keys.OnShelf:      {Prompt: "problem: "},
	keys.OnDepicted:   {Intro: []string{"the picture, which is not read here; ctrl+w: your work"}, Prompt: "picture: "},
}

// SceneOf is how a mode is said, before what it is about.
func SceneOf(mode keys.Mode) Scene {
	s := scenes[mode]
	s.Mode = mode
	if of, ok := map[keys.Mode]keys.Scope{keys.OnChoice: keys.Choosing, keys.OnPanes: keys.Panes}[mode]; ok {
		s.Intro = []string{s.Prompt + overlay.Offered("", of).All()}
	}
	return s
}

// Asked is a question with its answers, or what is to be seen of it.
func Asked(q overlay.Question) []string {
	switch {
	case q.Seen:
		return q.More.Read()
	case len(q.More) > 0:
		return []string{q.Text, "y: yes, n: no, s: what differs, esc: back"}
	}
	return []string{q.Text, "y: yes, n: no, esc: back"}
}

// Text is what is read line by line.
type Text struct {
	Name   string
	Lines  []string // none where nothing is written yet
	Made   any      // of what they were made: the same has the same lines
	At     int      // the line that is read
	Whole  bool     // it is said as a whole when it begins
	Aside  string   // said where one stays on the line: of the number under the cursor, of what is picked
	Beside any      // which number, or what
}

// writes tells the scenes in which the terminal itself shows what a key does.
func (s Scene) writes() bool { return slices.Contains(s.Mode.Scopes(), keys.Text) }

// since says what has the keys, as far as it differs from a scene before.
func (s Scene) since(was Scene, jumped bool) []string {
	switch {
	case s.Edit != nil:
		return s.typing(was.Edit)
	case s.Mode != was.Mode || s.Of != was.Of:
		return s.begins()
	case s.List != nil:
		if s.List.Same(*was.List) && (s.List.Text == was.List.Text || s.writes()) {
			return nil
		}
		return []string{s.List.Says()}
	}
	return s.Text.since(was.Text, jumped)
}

// begins says all of what has the keys.
func (s Scene) begins() []string {
	switch {
	case s.List != nil:
		return []string{s.List.Intro + s.List.Says()}
	case s.Text.Whole:
		return s.Text.Lines
	case s.Text.Name != "":
		lines, at := s.Text.read()
		return []string{fmt.Sprintf("%s, line %d of %d: %s", s.Text.Name, at+1, len(lines), lines[at])}
	}
	return s.Intro
}

// PageLines is how many lines a page key reads on.
const PageLines = 10

// read are the lines, and the one that is read; a word in their place where nothing is
// written yet.
func (t Text) read() (lines []string, at int) {
	if lines = t.Lines; len(lines) == 0 {
		lines = []string{"nothing yet"}
	}
	return lines, max(min(t.At, len(lines)-1), 0)
}

// Where tells which line of how many is read.
func (t Text) Where() string {
	lines, at := t.read()
	return fmt.Sprintf("%s, line %d of %d", t.Name, at+1, len(lines))
}

// On gives the line that is read next; false where the intent is none of reading.
func (t Text) On(i keys.Intent) (at int, ok bool) {
	lines, at := t.read()
	l, ok := overlay.List{Pick: at}.Do(i, len(lines), PageLines)
	return l.Pick, ok
}

// since says the lines that have been read on to.
func (t Text) since(was Text, jumped bool) []string {
	lines, at := t.read()
	_, before := was.read()
	switch {
	case len(was.Lines) == 0 && len(t.Lines) > 0:
		return Scene{Text: t}.begins()
	case at == before && t.Beside != was.Beside:
		return []string{t.Aside}
	case at == before:
		return nil
	case jumped || max(at-before, before-at) > PageLines:
		return lines[at : at+1]
	case at > before:
		return lines[before+1 : at+1]
	}
	return lines[at:before]
}

// typing says what is being typed where the terminal itself does not show it: a
// cell that is opened, a text that a key changed, the lists that go with it.
func (s Scene) typing(old *cells.Edit) (lines []string) {
	e, name := s.Edit, s.Edit.Slot.Label()
	if slot := e.Slot; slot.Does == cells.SetName && slot.Ref.Row == "" {
		name = "name of the new " + problem.ThingOf(slot.Ref.Table).String()
		if slot.Ref.Table == s.After.Table {
			name += ", enter alone ends the list"
		}
	}
	switch {
	case old == nil || old.Slot.Ref != e.Slot.Ref || old.Slot.Does != e.Slot.Does:
		line := "typing " + name
		switch {
		case e.Text == e.Was && strings.TrimSpace(e.Text) == "":
			line += ": blank"
		case e.Text == e.Was:
			line += ": " + e.Text
		}
		if e.Text == e.Was || e.List != nil {
			lines = append(lines, line)
		}
		old = &cells.Edit{}
	case old.Text != e.Text && s.ByKey:
		lines = append(lines, name+": "+e.Text)
	}
	list, pick, noun := e.Offered()
	before, wasAt, _ := old.Offered()
	switch {
	case len(list) == 0 || pick == wasAt && len(before) == len(list) && before[max(pick, 0)].Text == list[max(pick, 0)].Text:
	case pick < 0:
		var names []string
		for _, c := range list[:min(len(list), 3)] {
			names = append(names, c.Text)
		}
		how := "down chooses"
		if noun == "word" {
			how = "tab takes the first"
		}
		lines = append(lines, say.Count(len(list), noun)+": "+strings.Join(names, ", ")+"; "+how)
	default:
		line := fmt.Sprintf("%d of %d: %s", pick+1, len(list), list[pick].Text)
		if says := list[pick].Says; says != "" {
			line += ", " + says
		}
		lines = append(lines, line)
	}
	return lines
}
