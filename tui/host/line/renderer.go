package line

import (
	"bytes"
	"slices"
	"strings"

	"github.com/charmbracelet/colorprofile"
	uv "github.com/charmbracelet/ultraviolet"
	"github.com/charmbracelet/x/ansi"

	"trivet/tui/grid"
)

// home ends every frame, so that after any of them, whole or not, the cursor and
// the pen are where the next one takes them to be.
const home = ansi.ResetStyle + ansi.CursorHomePosition

// renderer turns frames into the bytes that take a terminal from one to the next.
// Its buffers are made with the first difference: a screen that is only looked
// at for a moment needs none.
type renderer struct {
	w, h   int
	t      Terminal
	at     grid.Frame // that the buffer holds
	styles []uv.Style // of that
	rend   *uv.TerminalRenderer
	buf    *uv.RenderBuffer
	out    bytes.Buffer
}

func newRenderer(w, h int, t Terminal) *renderer { return &renderer{w: w, h: h, t: t} }

func (p *renderer) start() {
	p.buf = uv.NewRenderBuffer(p.w, p.h)
	p.rend = uv.NewTerminalRenderer(&p.out, []string{"TERM=" + p.t.Kind})
	p.rend.SetColorProfile(p.t.profile())
	p.rend.SetFullscreen(true)
	p.rend.SetRelativeCursor(false)
	p.rend.SetMapNewline(true) // written out as \r\n below
	p.rend.SetTabStops(-1)
	p.rend.SetPosition(0, 0)
}

// next gives the bytes from one frame to another.
func (p *renderer) next(from, to grid.Frame) []byte {
	if p.rend == nil {
		p.start()
	}
	if p.at.Grid != from.Grid {
		p.render(from) // nobody was there to see it
	}
	return p.render(to)
}

func (p *renderer) render(f grid.Frame) []byte {
	was := p.at.Grid
	if p.styles == nil || !slices.Equal(f.Styles, p.at.Styles) {
		was, p.styles = nil, nil
		for _, s := range f.Styles {
			p.styles = append(p.styles, uv.NewStyledString(s.Prefix + "x").Lines(ansi.GraphemeWidth)[0][0].Style)
		}
	}
	f.Changes(was, func(x, y int, text string, columns int, s grid.Style) {
		p.buf.SetCell(x, y, &uv.Cell{Content: text, Width: columns, Style: p.styles[s]})
	})
	p.at = f
	p.rend.Render(p.buf)
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

// whole gives the bytes that draw a frame on any screen: its own lines, each at
// its place.
func (p *renderer) whole(f grid.Frame) []byte {
	var b bytes.Buffer
	b.WriteString(home + ansi.EraseEntireScreen)
	out := colorprofile.Writer{Forward: &b, Profile: p.t.profile()}
	for y, l := range strings.Split(f.String(), "\n") {
		_, _ = out.WriteString(ansi.CursorPosition(1, y+1) + l)
	}
	b.WriteString(home)
	return b.Bytes()
}
