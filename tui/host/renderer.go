package host

import (
	"bytes"
	"strings"
	"unicode/utf8"

	"github.com/charmbracelet/colorprofile"
	uv "github.com/charmbracelet/ultraviolet"
	"github.com/charmbracelet/x/ansi"
)

// home ends every frame, so that after any of them, whole or not, the cursor and
// the pen are where the next one takes them to be.
const home = ansi.ResetStyle + ansi.CursorHomePosition

// renderer turns frames into the bytes that take a terminal from one to the next.
// Its buffers are made with the first difference: a screen that is only looked
// at for a moment needs none.
type renderer struct {
	w, h  int
	t     terminal
	at    string // the frame that the buffers hold
	rend  *uv.TerminalRenderer
	buf   uv.ScreenBuffer
	lines []string // of that frame
	out   bytes.Buffer
}

func newRenderer(w, h int, t terminal) *renderer { return &renderer{w: w, h: h, t: t} }

func (p *renderer) start() {
	p.buf = uv.NewScreenBuffer(p.w, p.h)
	p.lines = make([]string, p.h)
	p.rend = uv.NewTerminalRenderer(&p.out, []string{"TERM=" + p.t.kind})
	profile := colorprofile.ASCII
	if p.t.colour {
		profile = colorprofile.ANSI
	}
	p.rend.SetColorProfile(profile)
	p.rend.SetFullscreen(true)
	p.rend.SetRelativeCursor(false)
	p.rend.SetMapNewline(true) // written out as \r\n below
	p.rend.SetTabStops(-1)
	p.rend.SetPosition(0, 0)
}

// next gives the bytes from one frame to another.
func (p *renderer) next(from, to string) []byte {
	if p.rend == nil {
		p.start()
	}
	if p.at != from {
		p.render(from) // nobody was there to see it
	}
	return p.render(to)
}

func (p *renderer) render(frame string) []byte {
	p.draw(frame)
	p.at = frame
	p.rend.Render(p.buf.RenderBuffer)
	if p.rend.Buffered() == 0 {
		return nil
	}
	_, _ = p.rend.WriteString(home)
	_ = p.rend.Flush()
	p.rend.SetPosition(0, 0)
	b := bytes.ReplaceAll(p.out.Bytes(), []byte("\n"), []byte("\r\n"))
	p.out.Reset()
	return bytes.Clone(b)
}

// draw puts the lines that have changed into the buffer: drawing them all takes
// columns of a frame's time. No style of a frame runs on over a line's end.
func (p *renderer) draw(frame string) {
	y := 0
	for l := range strings.SplitSeq(frame, "\n") {
		if y == p.h {
			return
		}
		if p.lines[y] != l {
			p.lines[y] = l
			area := uv.Rect(0, y, p.w, 1)
			p.buf.ClearArea(area)
			uv.NewStyledString(l).Draw(p.buf, area)
		}
		y++
	}
	for ; y < p.h; y++ {
		if p.lines[y] != "" {
			p.lines[y] = ""
			p.buf.ClearArea(uv.Rect(0, y, p.w, 1))
		}
	}
}

// whole gives the bytes that draw a frame on any screen: its own lines, each at
// its place.
func (p *renderer) whole(frame string) []byte {
	var b bytes.Buffer
	b.WriteString(home + ansi.EraseEntireScreen)
	out := colorprofile.Writer{Forward: &b, Profile: colorprofile.ANSI}
	if !p.t.colour {
		out.Profile = colorprofile.ASCII
	}
	y := 0
	for l := range strings.SplitSeq(frame, "\n") {
		if y == p.h {
			break
		}
		y++
		b.WriteString(ansi.CursorPosition(1, y))
		if columns(l) > p.w {
			l = ansi.Truncate(l, p.w, "")
		}
		if p.t.colour {
			b.WriteString(l)
		} else {
			_, _ = out.WriteString(l)
		}
	}
	b.WriteString(home)
	return b.Bytes()
}

// columns is how many columns a line may take at most. Measuring it takes most of a
// whole frame's time, and all but a few lines are as wide as the screen and no
// more.
func columns(l string) (n int) {
	for i := 0; i < len(l); {
		if l[i] == 0x1b && i+1 < len(l) && l[i+1] == '[' {
			for i += 2; i < len(l) && (l[i] < 0x40 || l[i] > 0x7e); i++ {
			}
			i++
			continue
		}
		r, size := utf8.DecodeRuneInString(l[i:])
		i += size
		n++
		drawn := r >= 0x2190 && r < 0x2300 || r >= 0x2500 && r < 0x25fd || r >= 0x2800 && r < 0x2900 // arrows, signs, rules, blocks, dots
		if r >= 0x1100 && !drawn {
			n++
		}
	}
	return n
}
