package tui

import (
	"fmt"
	"image"
	"slices"
	"strings"

	"trivet/mechanics/doc"
	"trivet/tui/grid"
	"trivet/tui/keys"
	"trivet/tui/layout"
	"trivet/tui/overlay"
	"trivet/tui/results"
	"trivet/tui/text"
	"trivet/tui/theme"
	"trivet/tui/topic"
)

// helping is the help while it shows: the keys that hold here, or a topic.
type helping struct {
	text.Offset
	at  int // of helpPages
	doc *doc.Doc
}

// keysPage stands for the keys, of which the workbench knows more than their topic.
const keysPage = "keys"

// helpPages are the pages of the help, that of the keys first.
func helpPages() []string {
	return append([]string{keysPage}, slices.DeleteFunc(topic.Names(), func(name string) bool { return name == keysPage })...)
}

// page gives a page of the help, from its start.
func (h helping) page(at int) *helping {
	pages := helpPages()
	at = (at + len(pages)) % len(pages)
	of, _ := topic.Of(pages[at])
	return &helping{at: at, doc: of}
}

// helpText is what the help shows, in a width.
func (m Model) helpText(w int) text.Lines {
	if m.help == nil || m.help.at == 0 {
		return m.keysText(w)
	}
	var d text.Lines
	for _, l := range topic.Lines(m.help.doc, w) {
		var segs []text.Span
		for _, s := range l {
			look := theme.Plain
			if s.Look == doc.HeadLook {
				look = theme.Head
			}
			segs = append(segs, text.Span{Text: s.Text, Look: look})
		}
		d.Add(segs...)
	}
	return d
}

// keysText lists the keys, from the table that the program itself works by.
func (m Model) keysText(w int) text.Lines {
	var d text.Lines
	if m.watches = m.around; m.watches { // who follows sees the presenter's own help
		d.Wrapped(theme.Plain, "", "You watch: what you press moves your own view and changes nothing in the sheet. The last line says how to come back and how to leave.", w)
	} else {
		d.Plain(theme.Plain, "Free-body equilibrium problems: type into a cell, and all results follow.")
	}
	d.Wrapped(theme.Plain, "", "Right and left lead to the other pages: "+strings.Join(helpPages()[1:], ", ")+".", w)
	if m.linear {
		d.Wrapped(theme.Plain, "", "Up and down read a line, page up and page down ten, in the results, in the picture, which is said in words, and in this help; in a result left and right go from number to number and say where it comes from. A step of the board is read whole, then line by line.", w)
	}
	for _, s := range m.helpScopes() {
		var rows [][2]string
		wide := 18
		for _, b := range keys.Table() {
			if b.Scope == s && m.has(b) {
				rows = append(rows, [2]string{strings.Join(b.Keys, ", "), b.Help})
				wide = max(wide, grid.Width(rows[len(rows)-1][0]))
			}
		}
		if len(rows) > 0 {
			d.Heading("Keys: " + s.String())
		}
		for _, r := range rows {
			d.Behind(text.Span{Text: "  " + grid.Fit(r[0], wide) + " "}, ": ", theme.Plain, r[1], w)
		}
	}
	d.Heading("Caution")
	d.Wrapped(theme.Plain, "", results.Caution, w)
	return d
}

// helpScopes are all scopes, the board's first while it shows.
func (m Model) helpScopes() (scopes []keys.Scope) {
	if m.board.On {
		scopes = append(scopes, keys.Board, keys.Jumping)
	}
	for s := range keys.Scopes {
		if !slices.Contains(scopes, s) {
			scopes = append(scopes, s)
		}
	}
	return scopes
}

// helpRect is where the help stands: all between the first line and the foot.
func (m Model) helpRect() image.Rectangle {
	s := m.screen()
	return image.Rect(1, s.Top.Max.Y, max(m.w-1, 1), max(s.Foot.Min.Y, s.Top.Max.Y))
}

func (m Model) drawHelp(g *grid.Grid) {
	pages := helpPages()
	in := overlay.Box(g.All().In(m.helpRect()), m.theme.Glyphs.RuleFocus, fmt.Sprintf(" Help: %s, %d of %d ", pages[m.help.at], m.help.at+1, len(pages)))
	d := m.helpText(in.W() - 1)
	d.Draw(in, m.help.Offset, in.W(), false)
	if m.help.Y+in.H() < len(d) {
		in.Set(in.W()-1, in.H()-1, m.theme.Glyphs.More, theme.Dim)
	}
}

// turnHelp scrolls the help, goes to another page of it, or leaves it.
func (m *Model) turnHelp(i keys.Intent) (ok bool) {
	switch i {
	case keys.Cancel:
		m.help = nil
		return true
	case keys.NextTopic:
		m.help = m.help.page(m.help.at + 1)
		return true
	case keys.PrevTopic:
		m.help = m.help.page(m.help.at - 1)
		return true
	}
	if m.linear {
		return m.readOn(i)
	}
	o, r := *m.help, m.helpRect()
	o.Offset, ok = overlay.Scrolled(o.Offset, i, m.helpText(max(r.Dx()-1, layout.MinW-3)), r.Dx(), r.Dy()-1)
	m.help = &o
	return ok
}
