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

// screens is the folder of pictures of the workbench, of which the README shows one.
const screens = "../fixtures/screens"

// A cell's size, and where its baseline is.
const cellW, cellH, baseline = 8, 17, 13

// ground is how a terminal shows what has no colour.
type ground struct{ name, paper, ink string }

var darkGround, lightGround = ground{"dark", "#15181d", "#d7dade"}, ground{"light", "#ffffff", "#1c2126"}

// The pictures are what the real program draws of starting sheets, at three sizes, in the
// dark and in the light. With -update they are written anew.
func TestScreenshot(t *testing.T) {
	folder, err := filepath.Abs(screens) // the program runs elsewhere
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		name, sheet, keys string
		w, h              int
		on                ground
		alt               string
	}{
		{"mast-80x24-dark", "mast-top", "down", 80, 24, darkGround, "A mast stayed by three guys on a screen of 80 columns: cells left, the picture right"},
		{"mast-80x24-light", "mast-top", "alt+y", 80, 24, lightGround, "The same with its equations in place of the picture, on a light background"},
		{"mast-120x36-dark", "mast-top", "f7 f", 120, 36, darkGround, "The trivet workbench with a mast stayed by three guys: cells on the left, the picture and the system of equations on the right"},
		{"truss-120x36-light", "road-sign-truss", "alt+m", 120, 36, lightGround, "A truss under a road sign, on a light background"},
		{"mast-200x60-dark", "mast-top", "alt+p", 200, 60, darkGround, "The mast on a screen of 200 columns: cells, system and checks, picture and limits"},
		{"truss-200x60-light", "road-sign-truss", "alt+i", 200, 60, lightGround, "The truss on a screen of 200 columns, on a light background"},
		{"practice-80x24-light", "ladder-tied", `alt+q "sum Fx: B = T" enter "sum M A ladder: 5 B = 200*1.5 + 700*2.4" enter "A = 900 N" enter alt+h "sum Fy ladder:"`, 80, 24, lightGround, "A ladder being practised: the task, one's own work with its marks, and the picture"},
		{"practice-120x36-dark", "hanging-load", `alt+q "u TA = (2, 1, 2)" enter "u TA = (2/3, 1/3, 2/3)" enter "2/3 TA - 1/3 TB = 0" enter "1/3 TA + 2/3 TB + 0.6 TC = 0" enter alt+h`, 120, 36, darkGround, "Three cables being practised on a dark background"},
		{"board-120x36-dark", "mast-top", "f5 space space", 120, 36, darkGround, "A step of the working on the board"},
	} {
		start, ok := fixtures.Get(c.sheet)
		if !ok {
			t.Fatalf("there is no sheet %s", c.sheet)
		}
		s := sit(t, seating{w: c.w, h: c.h, file: c.sheet + ".toml", text: start.Answered(), inside: true, env: []string{"COLORTERM=truecolor"}, like: "theme = \"" + c.on.name + "\"\n"})
		list, err := strokes(c.keys)
		if err != nil {
			t.Fatal(err)
		}
		s.plays(list)
		got, file := s.svg(c.on, c.alt), filepath.Join(folder, c.name+".svg")
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
			t.Errorf("%s is not what the program draws: look at it, and write it anew with -update", file)
		}
	}
}

// svg is what stands on the terminal, as a picture that needs no font but a monospaced
// one: rules, dots and filled cells are drawn.
func (s *seat) svg(on ground, alt string) string {
	s.term.mu.Lock()
	defer s.term.mu.Unlock()
	var b strings.Builder
	w, h := s.w*cellW, s.h*cellH
	fmt.Fprintf(&b, "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"-8 -8 %d %d\" width=\"%d\" height=\"%d\" role=\"img\">\n<title>%s</title>\n", w+16, h+16, w+16, h+16, alt)
	fmt.Fprintf(&b, "<rect x=\"-8\" y=\"-8\" width=\"%d\" height=\"%d\" rx=\"6\" fill=\"%s\"/>\n", w+16, h+16, on.paper)
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
			on.writeRun(&b, x*cellW, y*cellH, run, c)
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
func (on ground) writeRun(b *strings.Builder, x, y int, run []rune, c *uv.Cell) {
	if c == nil {
		return
	}
	ink, paper := hex(c.Style.Fg, on.ink), hex(c.Style.Bg, on.paper)
	if c.Style.Attrs&uv.AttrReverse != 0 {
		ink, paper = paper, ink
	}
	if paper != on.paper {
		fmt.Fprintf(b, "<rect x=\"%d\" y=\"%d\" width=\"%d\" height=\"%d\" fill=\"%s\"/>\n", x, y, len(run)*cellW, cellH, paper)
	}
	dress := ""
	if c.Style.Attrs&uv.AttrFaint != 0 {
		dress = " opacity=\".6\""
	}
	var words, dots, thin strings.Builder
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
