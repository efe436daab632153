package tui

import (
	"image"
	"math"

	tea "charm.land/bubbletea/v2"

	"trivet/mechanics/sheet"
	"trivet/tui/cells"
	"trivet/tui/frame"
	"trivet/tui/keys"
	"trivet/tui/layout"
	"trivet/tui/picture"
)

// Nothing needs the mouse: each thing it does has a key.

// drag is a button held down in the picture.
type drag struct {
	at    image.Point
	moved bool
}

// The turn for a column and a row that the mouse is dragged; a cell is twice as
// high as wide.
const (
	dragTurn = math.Pi / 60
	dragTilt = math.Pi / 30
)

// rollLines is how far a notch of the wheel scrolls.
const rollLines = 3

// mouse does what the mouse asks for, where no question stands open.
func (m *Model) mouse(msg tea.MouseMsg) tea.Cmd {
	mode, at := m.mode(), image.Pt(msg.Mouse().X, msg.Mouse().Y)
	if m.screen().TooSmall {
		return nil
	}
	if wheel, ok := msg.(tea.MouseWheelMsg); ok {
		return m.roll(mode, at, wheel.Button)
	}
	switch mode {
	case keys.OnStart:
		if _, ok := msg.(tea.MouseClickMsg); ok && msg.Mouse().Button == tea.MouseLeft {
			return m.clickStart(at)
		}
		return nil
	case keys.OnCells, keys.OnResult, keys.OnPicture, keys.InCell, keys.InList:
	default:
		return nil
	}
	switch msg := msg.(type) {
	case tea.MouseClickMsg:
		if msg.Button == tea.MouseLeft {
			return m.click(at)
		}
	case tea.MouseMotionMsg:
		if m.drag != nil && msg.Button == tea.MouseLeft {
			m.dragTo(at)
		}
	case tea.MouseReleaseMsg:
		if d := m.drag; d != nil {
			m.drag = nil
			if !d.moved {
				m.pickAt(at)
			}
		}
	}
	return nil
}

// under is the pane at a place.
func (m Model) under(at image.Point) (layout.Pane, image.Rectangle, bool) {
	for p, r := range m.screen().Panes {
		if at.In(r) {
			return layout.Pane(p), r, true
		}
	}
	return 0, image.Rectangle{}, false
}

// click goes to the pane and the cell under the mouse; what is being typed is kept
// first, and stays where the sheet refuses it.
func (m *Model) click(at image.Point) (cmd tea.Cmd) {
	p, r, ok := m.under(at)
	if !ok {
		return nil
	}
	m.note, m.ahead = frame.Note{}, nil // as a key that leads away
	row, col := m.cells.CellAt(p, at.Sub(r.Min), r.Dx(), p == m.Focus)
	if m.cells.Cell != nil {
		if p == m.Focus && row == m.cells.At[p].Row && col == m.cells.At[p].Col {
			return nil // the cell being typed in
		}
		if cmd = m.keep(); m.cells.Cell != nil && m.cells.Fresh == nil {
			return cmd
		}
		m.cells.Drop()
	}
	m.cells.Newest = sheet.Ref{}
	m.goTo(p)
	switch {
	case p == layout.Picture:
		m.drag = &drag{at: at}
	case p.Result():
		m.texts[p].Point(&m.read[p], at.Sub(r.Min).Sub(image.Pt(0, layout.Frame)), r.Dx())
	case p < layout.System && row >= 0 && row < len(m.cells.Tables[p].Records):
		m.cells.At[p].Row = row
		if col >= 0 {
			m.cells.At[p].Col = col
		}
	}
	return cmd
}

// dragTo turns the picture with the mouse, as if one held the thing itself.
func (m *Model) dragTo(at image.Point) {
	d := *m.drag
	by := at.Sub(d.at)
	if by == (image.Point{}) {
		return
	}
	d.at, d.moved = at, true
	m.drag = &d
	if p := m.live.Problem; p != nil && p.Planar {
		return // it has one view
	}
	m.cam.TurnBy(-dragTurn*float64(by.X), dragTilt*float64(by.Y))
}

// pickAt selects the row of what is drawn under the mouse.
func (m *Model) pickAt(at image.Point) {
	p, r, ok := m.under(at)
	if !ok || p != layout.Picture || m.live.Problem == nil {
		return
	}
	if ref, ok := picture.Hit(r.Dx(), r.Dy()-layout.Frame, m.drawing, m.cam.View(m.drawing), m.pictureOptions(), at.X-r.Min.X, at.Y-r.Min.Y-layout.Frame); ok {
		m.pick(ref)
	}
}

// pick selects a row for the picture; the keys stay where they are.
func (m *Model) pick(ref sheet.Ref) {
	if p, ok := m.cells.Pick(ref); ok {
		m.back = p
		m.settle()
		m.say(ref.Row+" is picked"+cells.ShownFacts(m.follows), false)
	}
}

// roll does a notch of the wheel.
func (m *Model) roll(mode keys.Mode, at image.Point, b tea.MouseButton) tea.Cmd {
	if b != tea.MouseWheelUp && b != tea.MouseWheelDown {
		return nil
	}
	way, zoom, by := keys.Down, keys.Farther, rollLines
	if b == tea.MouseWheelUp {
		way, zoom, by = keys.Up, keys.Nearer, -rollLines
	}
	switch mode {
	case keys.OnStart:
		cmd, _ := m.atStart(way)
		return cmd
	case keys.OnHelp:
		for range rollLines {
			m.turnHelp(way)
		}
		return nil
	case keys.OnBoard:
		m.onBoard(way)
		return nil
	case keys.OnCells, keys.OnResult, keys.OnPicture, keys.InCell, keys.InList:
	default:
		return nil
	}
	p, _, ok := m.under(at)
	switch {
	case !ok:
	case p == layout.Picture:
		m.cam.Do(zoom)
	case p.Result():
		m.read[p].Scroll.Y += by
	case m.cells.Cell == nil:
		m.cells.At[p].Row += by
	}
	return nil
}

// clickStart picks the sheet under the mouse, and opens the one picked already.
func (m *Model) clickStart(at image.Point) (cmd tea.Cmd) {
	row, ok := m.opening.At(m.w, m.h, at)
	if !ok {
		return nil
	}
	next, wish := m.opening.Click(row)
	m.opening = next
	return m.grant(wish)
}
