package tui

import (
	"fmt"
	"image/color"
	"regexp"
	"strings"
	"testing"

	uv "github.com/charmbracelet/ultraviolet"
	"github.com/charmbracelet/x/vt"

	"trivet/fixtures/long"
	"trivet/tui/grid"
	"trivet/tui/theme"
)

// backdrop is a terminal's look: its background, which it tells when it is asked, and
// whether colours are wanted.
type backdrop struct {
	name   string
	ground color.Color
	env    []string
	scheme theme.Scheme
	bare   bool
}

var backdrops = []backdrop{
	{name: "light", ground: color.White, scheme: theme.Light},
	{name: "dark", ground: color.Black, scheme: theme.Dark},
	{name: "plain", ground: color.Black, env: []string{"NO_COLOR=1"}, scheme: theme.Dark, bare: true},
}

// styled is the style that a role has in a backdrop.
func (c backdrop) styled(role grid.Style) uv.Style {
	e, depth := vt.NewEmulator(2, 1), theme.Indexed
	if c.bare {
		depth = theme.None
	}
	if _, err := e.WriteString(theme.Of(theme.Unicode, c.scheme, depth).Styles[role].Prefix + "x"); err != nil {
		panic(err)
	}
	s := e.CellAt(0, 0).Style
	if c.bare {
		s.Fg, s.Bg = nil, nil
	}
	return s
}

// dressed: a text stands on screen in the look of a role. In the plain backdrop that
// look has no colour.
func dressed(text string, role grid.Style) effect {
	return func(_, after view) string {
		at := 0
		for y, line := range strings.Split(after.text, "\n") {
			for from := 0; ; at++ {
				i := strings.Index(line[from:], text)
				if i < 0 {
					break
				}
				x, alike := len([]rune(line[:from+i])), true
				want := after.backdrop.styled(role)
				for k, c := range []rune(text) {
					got := after.cells[y][x+k].Style
					alike = alike && c == ' ' || alike && got.Attrs == want.Attrs && got.Underline == want.Underline && sameColour(got.Fg, want.Fg)
				}
				if alike {
					return ""
				}
				from += i + len(text)
			}
		}
		return fmt.Sprintf("%q stands there %d times, and never in the look of role %d, %+v", text, at, role, after.backdrop.styled(role))
	}
}

// clock is the time of a day, which may go on between two backdrops.
var clock = regexp.MustCompile(`\b\d\d:\d\d\b`)

func sameColour(a, b color.Color) bool {
	if a == nil || b == nil {
		return a == nil && b == nil
	}
	r1, g1, b1, _ := a.RGBA()
	r2, g2, b2, _ := b.RGBA()
	return r1 == r2 && g1 == g2 && b1 == b2
}

// capability is something that the workbench can do, as a script on every screen.
type capability struct {
	script
	before func(t *testing.T, at seating) seating // who sat there before
}

// TestCapabilities plays each capability at three sizes on a light, a dark and a
// plain terminal. The three differ in colour alone: every text is the same.
func TestCapabilities(t *testing.T) {
	sizes := [][2]int{{120, 36}, {80, 24}, {200, 60}}
	sizes = sizes[:long.Of(1, len(sizes))]
	for _, c := range capabilities() {
		for _, size := range sizes {
			t.Run(fmt.Sprintf("%s/%dx%d", c.name, size[0], size[1]), func(t *testing.T) {
				t.Parallel()
				var first []string
				for _, backdrop := range backdrops {
					at := c.at
					at.w, at.h, at.ground, at.env = size[0], size[1], backdrop.ground, append(backdrop.env, at.env...)
					if c.before != nil {
						at = c.before(t, at)
					}
					seen := c.play(t, at, backdrop)
					if first == nil {
						first = seen
					}
					for i := range seen {
						if seen[i] != first[i] {
							t.Errorf("%s, after %s: other words than on a light terminal:\n%s\nand there\n%s", backdrop.name, c.deeds[i].does, seen[i], first[i])
							break
						}
					}
					if t.Failed() {
						return
					}
				}
			})
		}
	}
}

// play plays the deeds in a backdrop, and gives every screen.
func (c capability) play(t *testing.T, at seating, in backdrop) (screens []string) {
	t.Helper()
	s := sit(t, at)
	if c.first != nil {
		c.first(s)
	}
	before := s.sees()
	for _, d := range c.deeds {
		s.does(d.does)
		after := s.sees()
		after.backdrop = in
		if says := d.effect(before, after); says != "" {
			t.Errorf("%s, after %s: %s; before\n%s and after\n%s", in.name, d.does, says, before.text, after.text)
			return screens
		}
		if in.bare {
			if x, y, ok := after.coloured(); ok {
				t.Errorf("after %s there is a colour at column %d of line %d:\n%s", d.does, x+1, y+1, after.text)
			}
		}
		screens = append(screens, clock.ReplaceAllString(after.text, "hh:mm"))
		before = after
	}
	return screens
}

// coloured gives a cell that has a colour.
func (v view) coloured() (x, y int, any bool) {
	for y, row := range v.cells {
		for x, c := range row {
			if c.Style.Fg != nil || c.Style.Bg != nil {
				return x, y, true
			}
		}
	}
	return 0, 0, false
}
