package theme

import (
	"fmt"
	"image/color"
	"math"
	"strconv"
	"strings"
	"testing"

	"charm.land/lipgloss/v2"
	"github.com/charmbracelet/x/ansi"
)

// legible is the least ratio of contrast between a text and what it stands on that
// WCAG 2.2 asks for in success criterion 1.4.3.
const legible = 4.5

// grounds are the backgrounds that a scheme is made for, the plainest first. A terminal of
// 16 colours has that one.
var grounds = map[Scheme][]string{Dark: {"#000000", "#1E1E1E"}, Light: {"#FFFFFF"}}

// luminance is the relative luminance of a colour as WCAG 2.2 defines it.
func luminance(c color.Color) float64 {
	r, g, b, _ := c.RGBA()
	sum := 0.0
	for _, x := range []struct {
		v      uint32
		weight float64
	}{{r, 0.2126}, {g, 0.7152}, {b, 0.0722}} {
		v := float64(x.v) / 0xffff
		if v <= 0.04045 {
			v /= 12.92
		} else {
			v = math.Pow((v+0.055)/1.055, 2.4)
		}
		sum += x.weight * v
	}
	return sum
}

func contrast(a, b color.Color) float64 {
	la, lb := luminance(a), luminance(b)
	return (math.Max(la, lb) + 0.05) / (math.Min(la, lb) + 0.05)
}

// shown is a colour's look on a terminal; of the first 16 that of xterm's own mixture.
func shown(name string) color.Color {
	if n, err := strconv.Atoi(name); err == nil {
		return ansi.IndexedColor(n)
	}
	return lipgloss.Color(name)
}

// Every ink is legible on the grounds it is made for, in each depth. Under the cursor
// ink and ground change places, which leaves their contrast what it is.
func TestEveryInkIsLegible(t *testing.T) {
	for scheme, all := range grounds {
		for g, ground := range all {
			for depth := True; depth <= Sixteen && (g == 0 || depth < Sixteen); depth++ {
				for of := Own; of < Inks; of++ {
					name := Colour(scheme, of, depth)
					if name == "" {
						continue // the terminal's own, which its owner reads
					}
					if got := contrast(shown(name), lipgloss.Color(ground)); got < legible {
						t.Errorf("scheme %d, depth %d: ink %d, %s on %s has a contrast of %.2f, want %.1f", scheme, depth, of, name, ground, got, legible)
					}
				}
			}
		}
	}
}

func TestSchemesDifferInColourAlone(t *testing.T) {
	for _, c := range []struct {
		scheme Scheme
		depth  Depth
		want   string // before a given force
	}{
		{Palette, Sixteen, "31"}, {Palette, True, "31"}, {Light, True, "38;2;176;36;58"}, {Dark, True, "38;2;240;138;148"},
		{Dark, Indexed, "38;5;"}, {Dark, Sixteen, "95"}, {Light, Sixteen, "31"}, {Dark, None, ""}, {Bare, True, ""},
	} {
		got := Of(Unicode, c.scheme, c.depth)
		if p := got.Styles[Force].Prefix; c.want == "" && p != "" || !strings.Contains(p, c.want) {
			t.Errorf("scheme %d in depth %d draws a force with %q, want %q", c.scheme, c.depth, p, c.want)
		}
		for role, s := range got.Styles {
			if (c.scheme == Bare || c.depth == None) && strings.Contains(s.Prefix, "38;") {
				t.Errorf("role %d has a colour in the plain scheme: %q", role, s.Prefix)
			}
		}
		// A look never carries a meaning by colour alone.
		if got.Glyphs != New(Unicode).Glyphs {
			t.Errorf("scheme %d differs in more than colour", c.scheme)
		}
	}
}

// Where the cursor is shows without colour.
func TestTheCursorShowsWithoutColour(t *testing.T) {
	for scheme := Palette; scheme <= Bare; scheme++ {
		of := Of(Unicode, scheme, True)
		if p := of.Styles[Selected].Prefix; !strings.Contains(p, "7") || p == of.Styles[Plain].Prefix {
			t.Errorf("%s: %q", fmt.Sprint("scheme ", int(scheme)), p)
		}
	}
}
