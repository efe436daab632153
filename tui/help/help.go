// Package help is the help while it shows: the keys that hold here, then a topic a page.
package help

import (
	"fmt"
	"image"
	"slices"
	"strings"

	"trivet/mechanics/doc"
	"trivet/tui/cells"
	"trivet/tui/grid"
	"trivet/tui/keys"
	"trivet/tui/layout"
	"trivet/tui/overlay"
	"trivet/tui/results"
	"trivet/tui/text"
	"trivet/tui/theme"
	"trivet/tui/topic"
)

// Help is the help, scrolled. It is replaced, never changed.
type Help struct {
	text.Offset
	At     int // of Pages
	doc    *doc.Doc
	Search *Search // what is being looked for; nil: nothing
}

// For is whom the help is for.
type For struct {
	Now   keys.Now
	Board bool         // who reads the board
	Table *cells.Table // nil: no cell is under the cursor
	At    cells.Place  // it
}

// keysPage stands for the keys, of which the workbench knows more than their topic.
const keysPage = "keys"

// Pages are the pages of the help, that of the keys first.
func Pages() []string {
	return append([]string{keysPage}, slices.DeleteFunc(topic.Names(), func(name string) bool { return name == keysPage })...)
}

// page gives a page of the help, from its start.
func page(at int) *Help {
	pages := Pages()
	at = (at + len(pages)) % len(pages)
	of, _ := topic.Of(pages[at])
	return &Help{At: at, doc: of}
}

// Open is the help as it begins: the keys, or in practice what may be entered.
func Open(of For) *Help {
	if of.Now.Practises {
		return page(slices.Index(Pages(), "practice"))
	}
	return page(0)
}

// Lines are what the help shows, in a width.
func (h Help) Lines(of For, w int) (d text.Lines) {
	if h.At == 0 {
		return of.keys(w)
	}
	for _, l := range topic.Lines(h.doc, w) {
		var spans []text.Span
		for _, s := range l {
			look := theme.Plain
			if s.Look == doc.HeadLook {
				look = theme.Head
			}
			spans = append(spans, text.Span{Text: s.Text, Look: look})
		}
		d.Add(spans...)
	}
	return d
}

// Read gives the lines as they are read aloud.
func (h Help) Read(of For, w int) []string {
	if h.At > 0 {
		return topic.Spoken(h.doc)
	}
	return of.keys(w).Read()
}

// keys lists the keys, from the table that the program itself works by.
func (of For) keys(w int) (d text.Lines) {
	if of.Now.Watches {
		d.Wrapped(theme.Plain, "", "You watch: what you press moves your own view and changes nothing in the sheet. The last line says how to come back and how to leave.", w)
	} else {
		d.Plain(theme.Plain, "Free-body equilibrium problems: type into a cell, and all results follow.")
	}
	if cell := of.cellText(w); len(cell) > 0 {
		d = append(append(d, nil), cell...)
		d.Add()
	}
	d.Wrapped(theme.Plain, "", "Right and left lead to the other pages: "+strings.Join(Pages()[1:], ", ")+".", w)
	if !of.Now.Watches {
		d.Wrapped(theme.Plain, "", "/ looks for a text in all pages; enter goes on to the next line that contains it.", w)
	}
	if of.Now.Linear {
		d.Wrapped(theme.Plain, "", "Up and down read a line, page up and page down ten, in the results, in the picture, which is said in words, and in this help; in a result left and right go from number to number and say where it comes from. A step of the board is read whole, then line by line.", w)
	}
	for _, s := range of.scopes() {
		var rows [][2]string
		wide := 18
		for _, b := range keys.Table() {
			if b.Scope == s && of.Now.Has(b) {
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

// scopes are all scopes, first those of the board or of practice while that shows.
func (of For) scopes() (scopes []keys.Scope) {
	if of.Board {
		scopes = append(scopes, keys.Board, keys.Jumping)
	}
	if of.Now.Practises {
		scopes = append(scopes, keys.Entering, keys.Practising, keys.Shelving)
	}
	for s := range keys.Scopes {
		if !slices.Contains(scopes, s) {
			scopes = append(scopes, s)
		}
	}
	return scopes
}

// place is where the help stands: all between the first lines and the foot.
func place(s layout.Screen, w int) image.Rectangle {
	return image.Rect(1, s.Top.Max.Y, max(w-1, 1), max(s.Foot.Min.Y, s.Top.Max.Y))
}

// Draw shows the help on a screen.
func (h Help) Draw(c grid.Canvas, s layout.Screen, of For, g theme.Glyphs) {
	pages := Pages()
	in := overlay.Box(c.In(place(s, c.W())), g.Rule, fmt.Sprintf(" Help: %s, %d of %d ", pages[h.At], h.At+1, len(pages)))
	d := h.Lines(of, in.W()-1)
	d.Draw(in, h.Offset, in.W(), false)
	if f := h.Search; f != nil && f.found && f.at.page == h.At {
		in.Paint(0, f.at.line-h.Y, in.W()-1, theme.Selected)
	}
	if h.Y+in.H() < len(d) {
		in.Set(in.W()-1, in.H()-1, g.More, theme.Dim)
	}
}

// Do scrolls the help on a screen w wide, goes to another page of it, or leaves it: then it is nil.
func (h Help) Do(i keys.Intent, s layout.Screen, w int, of For) (_ *Help, ok bool) {
	switch i {
	case keys.Cancel:
		return nil, true
	case keys.NextTopic:
		return page(h.At + 1), true
	case keys.PrevTopic:
		return page(h.At - 1), true
	case keys.Search:
		h.Search = &Search{from: spot{h.At, h.Y}}
		return &h, true
	}
	if of.Now.Linear {
		return &h, false // it is read by the line
	}
	r := place(s, w)
	h.Offset, ok = overlay.Scrolled(h.Offset, i, h.Lines(of, width(s, w)), r.Dx(), r.Dy()-1)
	return &h, ok
}
