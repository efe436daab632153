package help

import (
	"slices"
	"strings"

	"trivet/tui/grid"
	"trivet/tui/keys"
	"trivet/tui/layout"
	"trivet/tui/text"
)

// Search is a text looked for in all pages.
type Search struct {
	text.Line
	from, at spot // where the search began, and what was found last
	found    bool
}

// spot is a line of a page.
type spot struct{ page, line int }

// Sight is how the help is seen: on a screen w wide.
type Sight struct {
	For
	Screen layout.Screen
	W      int
}

// Typed takes characters of what is looked for, and shows its first line.
func (h Help) Typed(chars string, by Sight) (_ *Help, says string) {
	find := *h.Search
	find.Insert(chars)
	h.Search = &find
	return h.seek(find.from, by)
}

// Seek does the intents of the line that is looked for; ok tells that it was one.
func (h Help) Seek(i keys.Intent, by Sight) (_ *Help, says string, ok bool) {
	find := *h.Search
	switch i {
	case keys.Cancel:
		h.Search = nil
		return &h, "", true
	case keys.SearchNext:
		next, says := h.seek(spot{find.at.page, find.at.line + 1}, by)
		return next, says, true
	}
	ok = find.Handle(i)
	if h.Search = &find; !ok || find.Text == "" {
		return &h, "", ok
	}
	next, says := h.seek(find.from, by)
	return next, says, true
}

// seek goes to the first line that holds the text, from one on through all pages and back to
// it; capitals count for nothing.
func (h Help) seek(from spot, by Sight) (_ *Help, says string) {
	find := *h.Search
	want := strings.ToLower(find.Text)
	find.found = false
	h.Search = &find
	if want == "" {
		return &h, ""
	}
	pages := len(Pages())
	for k := range pages + 1 {
		next := page(from.page + k)
		lines := next.texts(by)
		first := 0
		if k == 0 {
			first = min(from.line, len(lines))
		}
		at := slices.IndexFunc(lines[first:], func(l string) bool { return strings.Contains(l, want) })
		if at < 0 {
			continue
		}
		find.at, find.found = spot{next.At, first + at}, true
		next.Y, next.Search = find.at.line, &find
		if !by.Now.Linear {
			r := place(by.Screen, by.W)
			next.Y = max(min(next.Y, len(lines)-(r.Dy()-1)), 0)
			before, _, _ := strings.Cut(lines[first+at], want) // a table may be wider than the screen
			next.X = max(grid.Width(before+want)+beside-width(by.Screen, by.W), 0)
		}
		return next, ""
	}
	return &h, "no page of the help contains " + find.Text
}

// beside is how much shows behind what is found, cells.
const beside = 4

// texts are the lines of a page as they are seen or read, in small letters.
func (h Help) texts(by Sight) (lines []string) {
	if by.Now.Linear {
		for _, l := range h.Read(by.For, by.W) {
			lines = append(lines, strings.ToLower(l))
		}
		return lines
	}
	for _, l := range h.Lines(by.For, width(by.Screen, by.W)) {
		line := ""
		for _, s := range l {
			line += s.Text
		}
		lines = append(lines, strings.ToLower(line))
	}
	return lines
}

// width is how wide the text of the help is set.
func width(s layout.Screen, w int) int { return max(place(s, w).Dx()-1, layout.MinW-3) }
