package tui

import (
	"fmt"
	"slices"
	"strings"
	"unicode"

	tea "charm.land/bubbletea/v2"

	"trivet/mechanics/printable"
	"trivet/mechanics/problem"
	"trivet/mechanics/sheet"
	"trivet/tui/cells"
	"trivet/tui/keys"
)

// describe gives the lines that say what became different between a model and the
// one before, and what has been said with them. It changes nothing.
func (m Model) describe(was Model, msg tea.Msg) (lines []string, next speech) {
	next = m.speech
	say := func(more ...string) { lines = append(lines, more...) }
	pressed, opens := false, false
	switch msg.(type) {
	case tea.KeyPressMsg, tea.PasteMsg:
		pressed = true
	case opened:
		opens = true
	}
	if !next.begun && !opens {
		return nil, next // the size of the terminal may come first
	}
	next.begun = true
	switch {
	case m.isOver() && !was.isOver():
		say(m.noted(was)...)
		say("left trivet")
		return spoken(lines), next
	case opens, was.opening != nil && m.opening == nil:
		say(m.greeting()...)
		if was = (Model{overlay: overlay{opening: was.opening}}); opens { // all of it is new
			was = Model{}
		}
		next.at, pressed = whereabouts{}, false
	case m.notes != was.notes: // a note speaks for the change
	default:
		say(changed(was.history.Current(), m.history.Current())...)
	}
	say(m.noted(was)...)
	results, heard := m.results(next.heard)
	say(results...)
	next.heard = heard
	mode, before := m.mode(), was.mode()
	if mode != keys.OnCells && mode != keys.OnSearch {
		say(m.scene(was, mode != before)...)
		next.owes = false
		if pressed && len(lines) == 0 && !m.writes() && !m.file.Saving {
			say(m.scene(Model{}, false)...) // a key that led nowhere says where one still is
		}
		return spoken(lines), next
	}
	if mode == keys.OnSearch && mode != before {
		say(m.scene(was, true)...)
	}
	if mode != before && before != keys.OnSearch && before > keys.InList && before != keys.InWords {
		next.at = whereabouts{} // back from elsewhere
	}
	switch moved := next.at != m.here() || mode != before && mode == keys.OnCells; {
	case m.leave || m.file.Saving: // the file is said next
	case moved && m.live.solving.Running() && m.live.Sheet != was.live.Sheet && m.current() != was.current():
		next.owes = true // first what follows from the change
	case moved, next.owes && !m.live.solving.Running(), pressed && len(lines) == 0 && !next.owes && !m.writes() && !m.file.Saving:
		if !moved && !next.owes {
			next.at = whereabouts{}
		}
		say(m.place(next.at)...)
		next.at, next.owes = m.here(), false
	}
	say(m.diagnosed(was)...)
	return spoken(lines), next
}

// current is the sheet; nil of a model that has none.
func (m Model) current() *sheet.Sheet {
	if m.history == nil {
		return nil
	}
	return m.history.Current()
}

// writes tells the modes in which the terminal itself shows what a key does.
func (m Model) writes() bool {
	return slices.Contains(m.mode().Scopes(), keys.Text)
}

// noted is the word on the bottom line, where it is a new one.
func (m Model) noted(was Model) []string {
	switch {
	case m.notes == was.notes || m.note.text == "":
		return nil
	case m.note.bad:
		return []string{"warning: " + m.note.text}
	}
	return []string{m.note.text}
}

// spoken is lines without what a screen reader cannot read: every character that
// draws is gone, and blanks do not set columns. What would act on the terminal is a
// dot as on every screen. None is said twice.
func spoken(lines []string) (out []string) {
	for i, l := range lines {
		if slices.Contains(lines[:i], l) {
			continue
		}
		l = strings.Map(func(r rune) rune {
			switch {
			case r == '\n' || r == '\t' || r == '\r':
				return ' '
			case printable.Acts(r):
				return printable.Stand
			case unicode.IsSpace(r) || drawn(r):
				return ' '
			case unicode.Is(unicode.Cf, r):
				return -1
			}
			return r
		}, l)
		if l = strings.Join(strings.Fields(l), " "); l != "" {
			out = append(out, l)
		}
	}
	return out
}

// drawn tells the characters that are pictures rather than text: frames, blocks,
// braille, and the pieces of tall brackets.
func drawn(r rune) bool {
	return r >= 0x2500 && r <= 0x259f || r >= 0x2800 && r <= 0x28ff || r >= 0x239b && r <= 0x23b3
}

// maxChanges is how many changes are said one by one.
const maxChanges = 4

// changed says what differs between two sheets, a row at a time.
func changed(was, now *sheet.Sheet) (lines []string) {
	if was == now || was == nil || was.Text() == now.Text() {
		return nil
	}
	changes := sheet.Diff(was, now)
	for len(changes) > 0 {
		c := changes[0]
		n := 1
		_, before := was.Table(c.Table).Row(c.Row)
		_, after := now.Table(c.Table).Row(c.Row)
		thing := problem.ThingOf(c.Table)
		if len(lines) == maxChanges {
			return append(lines, "and "+count(len(changes), "more cell")+" changed")
		}
		if thing == problem.NoThing || before && after {
			lines = append(lines, changedCell(c))
			changes = changes[1:]
			continue
		}
		for n < len(changes) && changes[n].Table == c.Table && changes[n].Row == c.Row {
			n++
		}
		var cells []string
		for _, cell := range changes[:n] {
			if text := strings.TrimSpace(cell.New + cell.Old); text != "" {
				cells = append(cells, strings.TrimSpace(cell.Key+" "+text))
			}
		}
		word := "added"
		if before {
			word = "deleted"
		}
		line := word + " " + thing.String() + " " + c.Row
		if len(cells) > 0 && !before {
			line += ": " + strings.Join(cells, ", ")
		}
		lines = append(lines, line)
		changes = changes[n:]
	}
	if len(lines) == 0 {
		lines = []string{"the order changed"}
	}
	return lines
}

func changedCell(c sheet.Change) string {
	name := label(cells.Slot{Ref: c.Ref, Does: cells.SetCell})
	switch {
	case !c.Is || strings.TrimSpace(c.New) == "":
		return name + " is cleared; was " + c.Old
	case !c.Was || strings.TrimSpace(c.Old) == "":
		return name + " is " + c.New
	}
	return fmt.Sprintf("%s is %s; was %s", name, c.New, c.Old)
}
