package tui

import (
	"fmt"
	"strings"
	"time"

	uv "github.com/charmbracelet/ultraviolet"
)

// view is what a person sees at a moment.
type view struct {
	text     string
	lit      bool   // anything is reversed
	cursor   string // what is reversed, its stretches with " · " between
	cells    [][]uv.Cell
	seat     *seat
	backdrop backdrop
}

func (s *seat) sees() view {
	v := view{text: s.term.screen(), seat: s}
	s.term.mu.Lock()
	defer s.term.mu.Unlock()
	var lit []string
	for y := range s.term.e.Height() {
		row, run := make([]uv.Cell, s.term.e.Width()), ""
		for x := range row {
			if c := s.term.e.CellAt(x, y); c != nil {
				row[x] = *c
			}
			if row[x].Style.Attrs&uv.AttrReverse != 0 {
				run += row[x].Content
				if x < len(row)-1 {
					continue
				}
			}
			if run != "" {
				lit = append(lit, strings.TrimSpace(run))
				run = ""
			}
		}
		v.cells = append(v.cells, row)
	}
	v.lit, v.cursor = len(lit) > 0, strings.Join(lit, " · ")
	return v
}

// effect is what something did: it tells what is missing of it, "" where it is
// all there.
type effect func(before, after view) string

// appears: a text that was not on screen is there now.
func appears(texts ...string) effect {
	return func(before, after view) string {
		for _, text := range texts {
			if !strings.Contains(after.text, text) {
				return fmt.Sprintf("%q does not show", text)
			}
			if strings.Contains(before.text, text) {
				return fmt.Sprintf("%q showed before", text)
			}
		}
		return ""
	}
}

// vanishes: a text that was on screen is gone.
func vanishes(text string) effect {
	return func(before, after view) string { return flipped(appears(text)(after, before), text) }
}

func flipped(says, text string) string {
	if says == "" {
		return ""
	}
	return fmt.Sprintf("%q does not go away: the other way round, %s", text, says)
}

// still: a text is on screen, whether or not it was before.
func still(text string) effect {
	return func(_, after view) string {
		if !strings.Contains(after.text, text) {
			return fmt.Sprintf("%q does not show", text)
		}
		return ""
	}
}

// moves: the cursor stands on a text, where it did not before.
func moves(to string) effect {
	return func(before, after view) string {
		switch {
		case after.cursor != to:
			return fmt.Sprintf("the cursor is on %q, not on %q", after.cursor, to)
		case before.cursor == to:
			return fmt.Sprintf("the cursor was on %q before", to)
		}
		return ""
	}
}

// copies: the terminal's clipboard comes to hold a text; it is written behind the
// frame.
func copies(text string) effect {
	return func(_, after view) string {
		tick := time.NewTicker(2 * time.Millisecond)
		defer tick.Stop()
		for deadline := time.After(patience); after.seat.term.copied() != text; {
			select {
			case <-deadline:
				return fmt.Sprintf("the clipboard holds %q", after.seat.term.copied())
			case <-tick.C:
			}
		}
		return ""
	}
}

// all: every one of several.
func all(effects ...effect) effect {
	return func(before, after view) string {
		for _, e := range effects {
			if says := e(before, after); says != "" {
				return says
			}
		}
		return ""
	}
}

// leaves: the program has ended.
func leaves() effect {
	return func(_, after view) string {
		after.seat.left()
		return ""
	}
}
