package drawing

import (
	"strings"
	"sync"

	"github.com/go-fonts/liberation/liberationserifbold"
	"github.com/go-fonts/liberation/liberationserifbolditalic"
	"github.com/go-fonts/liberation/liberationserifitalic"
	"github.com/go-fonts/liberation/liberationserifregular"
	"golang.org/x/image/font"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"

	"trivet/mechanics/printable"
)

// The font is Liberation Serif (SIL Open Font License 1.1), which has the widths
// of Times: a browser that has either sets an SVG's text as it was measured here.

// faces are the bytes of the font's faces, by style.
func faces() [4][]byte {
	return [4][]byte{liberationserifregular.TTF, liberationserifitalic.TTF, liberationserifbold.TTF, liberationserifbolditalic.TTF}
}

// fonts are parsed once; they are only read.
var fonts = sync.OnceValue(func() (all [4]*sfnt.Font) {
	for i, ttf := range faces() {
		f, err := sfnt.Parse(ttf)
		if err != nil {
			panic("drawing: an embedded font does not read: " + err.Error())
		}
		all[i] = f
	}
	return all
})

const (
	levelSize  = 0.7  // the size of sub- and superscripts
	levelShift = 0.35 // how far they are shifted, in sizes of the superscript up; a subscript half as far down
	ascent     = 0.70 // of capitals and figures, above the baseline
	descent    = 0.22
)

// missing stands for a character that the font has not.
const missing = '□'

// stands replaces characters that the font does not have: by others of the
// same meaning, or by a box that shows that something was there.
func stands(s string) string {
	f := fonts()[Regular]
	var buf sfnt.Buffer
	return strings.Map(func(r rune) rune {
		if r == '\n' || r == '\t' || r == '\r' {
			return ' '
		}
		if printable.Acts(r) {
			return printable.Stand
		}
		if g, err := f.GlyphIndex(&buf, r); err == nil && g != 0 {
			return r
		}
		if same, ok := likeness[r]; ok {
			return same
		}
		return missing
	}, s)
}

// likeness gives what may stand for signs that the font does not have.
var likeness = map[rune]rune{'∥': '‖', '⟂': '+', '⇒': '→', '⟹': '→', '⁻': '-', '‑': '-', '\u2009': ' ', '\u202f': ' ', '\u00a0': ' ', '✓': '√', '∙': '·', '⋅': '·', '⊙': '○', '⊗': '×', '−': '-'}

// place gives the size of a run and how far it is shifted down.
func (r Run) place(size float64) (own, down float64) {
	switch {
	case r.Level < 0:
		return levelSize * size, levelShift / 2 * size
	case r.Level > 0:
		return levelSize * size, -levelShift * size
	}
	return size, 0
}

// Advance is how far a text of this style and size runs.
func Advance(text string, style Style, size float64) float64 {
	f := fonts()[style]
	var buf sfnt.Buffer
	sum := fixed.Int26_6(0)
	em := fixed.I(2048) // the font's own units, so that nothing is rounded
	for _, r := range stands(text) {
		g, err := f.GlyphIndex(&buf, r)
		if err != nil {
			continue
		}
		a, err := f.GlyphAdvance(&buf, g, em, font.HintingNone)
		if err == nil {
			sum += a
		}
	}
	return float64(sum) / float64(em) * size
}

// piece is a run where it stands: on its own baseline, in its own size.
type piece struct {
	Run
	at            Vec
	size, advance float64
}

// pieces are the runs of a text, one behind the other.
func (t Text) pieces() (all []piece) {
	x := t.At.X
	for _, r := range t.Runs {
		size, down := r.place(t.Size)
		one := piece{r, Vec{x, t.At.Y + down}, size, Advance(r.Text, r.Style, size)}
		all, x = append(all, one), x+one.advance
	}
	return all
}

// Width is how far runs go at a size.
func Width(size float64, runs ...Run) (w float64) {
	for _, p := range (Text{Runs: runs, Size: size}).pieces() {
		w += p.advance
	}
	return w
}

// Box is the box that a text fills.
func (t Text) Box() Box {
	b := Box{Vec{t.At.X, t.At.Y - ascent*t.Size}, Vec{t.At.X + Width(t.Size, t.Runs...), t.At.Y + descent*t.Size}}
	for _, r := range t.Runs {
		switch {
		case r.Level < 0:
			b.High.Y = t.At.Y + (levelShift/2+0.08)*t.Size + descent*levelSize*t.Size
		case r.Level > 0:
			b.Low.Y = t.At.Y - (levelShift+ascent*levelSize)*t.Size
		}
	}
	return b
}

// Plain is the text of runs.
func Plain(runs []Run) string {
	var b strings.Builder
	for _, r := range runs {
		b.WriteString(r.Text)
	}
	return b.String()
}
