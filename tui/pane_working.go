package tui

import (
	"fmt"
	"strings"

	"trivet/mechanics/doc"
	"trivet/tui/layout"
	"trivet/tui/theme"
)

// mostLines is up to how long a working is written out in a pane: whoever needs
// more of it has the board and the page. It bounds what a keystroke may wait for.
const mostLines = 1500

// stepPanes is how wide the panes that show steps are, 0 where one does not.
type stepPanes struct {
	working, route int
	plain          bool
}

func (m Model) stepPanes() stepPanes {
	wide := func(p layout.Pane) int { return max(m.screen().Panes[p].Dx()-2, 0) }
	return stepPanes{wide(layout.Working), wide(layout.Route), m.theme.Glyphs.ASCII}
}

// write writes the texts that are wanted of a working, away from the screen: a long
// one takes longer than a keystroke may.
func (k *worked) write(wanted stepPanes) {
	for n, w := range []int{wanted.working, wanted.route} {
		if w > 0 {
			p := []layout.Pane{layout.Working, layout.Route}[n]
			k.written[n] = text{paneText: k.document(p, wanted.plain, w), w: w, plain: wanted.plain}
		}
	}
}

// on gives the text of a pane, as it was written with the working where that fits.
func (k worked) on(p layout.Pane, plain bool, w int) paneText {
	n := 0
	if p == layout.Route {
		n = 1
	}
	if t := k.written[n]; t.w == w && t.plain == plain {
		return t.paneText
	}
	return k.document(p, plain, w)
}

// document writes the steps of a working one below the other: all of them, or those
// of the hand route.
func (k worked) document(p layout.Pane, plain bool, w int) paneText {
	b := boardWriter{w: w, plain: plain}
	switch {
	case k.fault != "":
		b.wrapped(theme.Bad, "! ", "this solution could not be laid out in steps (fault: "+k.fault+")", w)
		return b.paneText
	case k.working == nil:
		b.text(theme.Dim, "The working is being written ...")
		return b.paneText
	}
	steps := k.working.Steps
	from, to := 0, len(steps)
	if p == layout.Route {
		from, to = k.working.RouteFrom, k.working.RouteTo
		if from == to {
			b.wrapped(theme.Plain, "", k.working.NoRoute(), w)
			return b.paneText
		}
	} else {
		b.wrapped(theme.Dim, "", k.working.Rounding, w)
	}
	for i := from; i < to; i++ {
		if len(b.paneText) > mostLines {
			b.add()
			b.wrapped(theme.Dim, "", fmt.Sprintf("... and %d more steps: the board (f5) and the page (ctrl+p) have them all", to-i), w)
			break
		}
		b.heading(fmt.Sprintf("%d  %s", i-from+1, steps[i].Title))
		for j := range steps[i].Body {
			at := len(b.paneText)
			b.set(steps[i].Body[j : j+1])
			if block := &steps[i].Body[j]; block.OK != nil {
				b.paneText.from(at, block.From)
			} else {
				b.origins(at, block)
			}
		}
	}
	return b.paneText
}

// origins gives the numbers from a line on their origins: the numbers of a block come in
// its print as they stand in it, but for the order of those that differ.
func (b *boardWriter) origins(from int, block *doc.Block) {
	byText := map[string][]doc.Origin{}
	eachFormula(block, func(m *doc.Math) { numbersOf(m, byText) })
	for y := from; y < len(b.paneText); y++ {
		var line []seg
		for _, s := range b.paneText[y] {
			found := numerals(s.text)
			line = appendNumbered(line, s.look, s.text, func(n int) doc.Origin {
				text := strings.TrimPrefix(s.text[found[n][0]:found[n][1]], "-")
				of := byText[text]
				if len(of) == 0 {
					return nil
				}
				byText[text] = of[1:]
				return of[0]
			})
		}
		b.paneText[y] = line
	}
}

// numbersOf gathers the origins of a formula's numbers by their print; an exponent is
// no number.
func numbersOf(m *doc.Math, byText map[string][]doc.Origin) {
	if m.Op == doc.Number {
		byText[m.Text] = append(byText[m.Text], m.From)
	}
	for k := range m.Of {
		if m.Op != doc.Power || k == 0 {
			numbersOf(&m.Of[k], byText)
		}
	}
}

// eachFormula goes through the formulas of a block.
func eachFormula(b *doc.Block, do func(*doc.Math)) {
	each := func(of ...*doc.Math) {
		for _, m := range of {
			if m != nil {
				do(m)
			}
		}
	}
	each(b.Formula, b.Boxed)
	for k := range b.Aligned {
		each(&b.Aligned[k])
	}
	for k := range b.Text {
		each(b.Text[k].Math)
	}
	if b.Table != nil {
		for _, row := range b.Table.Rows {
			for k := range row {
				each(row[k].Math)
			}
		}
	}
}
