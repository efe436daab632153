package tui

import (
	"cmp"
	"encoding/xml"
	"fmt"
	"image/color"
	"os"
	"path/filepath"
	"strings"
	"testing"

	uv "github.com/charmbracelet/ultraviolet"

	"trivet/fixtures"
)

// screenshot is the picture of the workbench that the README shows.
const screenshot = "../fixtures/screens/workbench.svg"

// A cell's size, where its baseline is, and the colours of a terminal in the dark.
const (
	cellW, cellH, baseline = 8, 17, 13
	paperColour, inkColour = "#15181d", "#d7dade"
)

// The README's picture is what the real program draws of a starting sheet.
func TestScreenshot(t *testing.T) {
	file, err := filepath.Abs(screenshot) // the program runs elsewhere
	if err != nil {
		t.Fatal(err)
	}
	start, _ := fixtures.Get("mast-top")
	s := sit(t, seating{w: 112, h: 34, file: "mast-top.toml", text: start.Text, inside: true, like: "theme = \"dark\"\n"})
	list, err := strokes("f7 f")
	if err != nil {
		t.Fatal(err)
	}
	s.plays(list)
	got := s.svg("The trivet workbench with a mast stayed by three guys: cells on the left, the system of equations and the picture on the right")
	if *update {
		if err := os.WriteFile(file, []byte(got), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	if got != string(want) {
		t.Errorf("%s is not what the program draws: look at it, and write it anew with -update", screenshot)
	}
}

// svg is what stands on the terminal, as a picture that needs no font but a monospaced
// one: rules, dots and filled cells are drawn.
func (s *seat) svg(alt string) string {
	s.term.mu.Lock()
	defer s.term.mu.Unlock()
	var b strings.Builder
	w, h := s.w*cellW, s.h*cellH
	fmt.Fprintf(&b, "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"-8 -8 %d %d\" width=\"%d\" height=\"%d\" role=\"img\">\n<title>%s</title>\n", w+16, h+16, w+16, h+16, alt)
	fmt.Fprintf(&b, "<rect x=\"-8\" y=\"-8\" width=\"%d\" height=\"%d\" rx=\"6\" fill=\"%s\"/>\n", w+16, h+16, paperColour)
	b.WriteString("<g font-family=\"ui-monospace,'DejaVu Sans Mono',Menlo,Consolas,monospace\" font-size=\"13.3\" stroke-linecap=\"round\">\n")
	for y := range s.h {
		for x := 0; x < s.w; {
			c := s.term.e.CellAt(x, y)
			n := 1
			for x+n < s.w && dressedAlike(c, s.term.e.CellAt(x+n, y)) {
				n++
			}
			run := make([]rune, n)
			for k := range n {
				run[k] = []rune(content(s.term.e.CellAt(x+k, y)))[0]
			}
			writeRun(&b, x*cellW, y*cellH, run, c)
			x += n
		}
	}
	b.WriteString("</g>\n</svg>\n")
	return b.String()
}

func content(c *uv.Cell) string {
	if c == nil {
		return " "
	}
	return cmp.Or(c.Content, " ")
}

// dressedAlike tells whether two cells are dressed alike.
func dressedAlike(a, b *uv.Cell) bool {
	if a == nil || b == nil {
		return a == b
	}
	return a.Style.Equal(&b.Style)
}

// writeRun draws neighbours in a row that are dressed alike.
func writeRun(b *strings.Builder, x, y int, run []rune, c *uv.Cell) {
	if c == nil {
		return
	}
	ink, paper := hex(c.Style.Fg, inkColour), hex(c.Style.Bg, paperColour)
	if c.Style.Attrs&uv.AttrReverse != 0 {
		ink, paper = paper, ink
	}
	if paper != paperColour {
		fmt.Fprintf(b, "<rect x=\"%d\" y=\"%d\" width=\"%d\" height=\"%d\" fill=\"%s\"/>\n", x, y, len(run)*cellW, cellH, paper)
	}
	dress := ""
	if c.Style.Attrs&uv.AttrFaint != 0 {
		dress = " opacity=\".6\""
	}
	var words, dots, thin, thick strings.Builder
	for i, r := range run {
		left := x + i*cellW
		letter := ' '
		switch {
		case r >= 0x2800 && r <= 0x28ff:
			for bit, at := range [8][2]int{{0, 0}, {0, 1}, {0, 2}, {1, 0}, {1, 1}, {1, 2}, {0, 3}, {1, 3}} {
				if (r-0x2800)>>bit&1 != 0 {
					fmt.Fprintf(&dots, "M%d %dh0", left+2+4*at[0], y+2+4*at[1])
				}
			}
		case r == '─':
			fmt.Fprintf(&thin, "M%d %dh%d", left, y+cellH/2, cellW)
		case r == '━':
			fmt.Fprintf(&thick, "M%d %dh%d", left, y+cellH/2, cellW)
		case r == '│':
			fmt.Fprintf(&thin, "M%d %dv%d", left+cellW/2, y, cellH)
		default:
			letter = r
		}
		words.WriteRune(letter)
	}
	path := func(d, width string) {
		if d != "" {
			fmt.Fprintf(b, "<path d=\"%s\" stroke=\"%s\" stroke-width=\"%s\" fill=\"none\"%s/>\n", d, ink, width, dress)
		}
	}
	path(dots.String(), "2.4")
	path(thin.String(), "1")
	path(thick.String(), "2")
	if c.Style.Attrs&uv.AttrBold != 0 {
		dress += " font-weight=\"bold\""
	}
	if c.Style.Attrs&uv.AttrItalic != 0 {
		dress += " font-style=\"italic\""
	}
	if c.Style.Underline != 0 {
		dress += " text-decoration=\"underline\""
	}
	// Each word begins at its cell, whatever the font's width.
	at := x
	for word := range strings.SplitSeq(words.String(), " ") {
		if n := len([]rune(word)); word != "" {
			var clean strings.Builder
			_ = xml.EscapeText(&clean, []byte(word)) // a builder takes everything
			fmt.Fprintf(b, "<text x=\"%d\" y=\"%d\" fill=\"%s\" textLength=\"%d\"%s>%s</text>\n", at, y+baseline, ink, n*cellW, dress, clean.String())
		}
		at += (len([]rune(word)) + 1) * cellW
	}
}

// hex is a colour as SVG has it.
func hex(c color.Color, otherwise string) string {
	if c == nil {
		return otherwise
	}
	r, g, b, _ := c.RGBA()
	return fmt.Sprintf("#%02x%02x%02x", r>>8, g>>8, b>>8)
}
