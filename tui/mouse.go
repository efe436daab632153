package tui

import (
	"image"
	"slices"

	tea "charm.land/bubbletea/v2"

	"trivet/mechanics/sheet"
	"trivet/tui/cells"
	"trivet/tui/frame"
	"trivet/tui/keys"
	"trivet/tui/layout"
	"trivet/tui/picture"
)

// Nothing needs the mouse: each thing it does has a key.

// rollLines is how far a notch of the wheel scrolls.
const rollLines = 3

// pointed are the modes in which the mouse points into the panes.
var pointed = []keys.Mode{keys.OnCells, keys.OnResult, keys.OnPicture, keys.InCell, keys.InList}

// mouse does what the mouse asks for, where no question stands open.
func (m *Model) mouse(msg tea.MouseMsg) tea.Cmd {
	mode, at := m.mode(), image.Pt(msg.Mouse().X, msg.Mouse().Y)
	if m.screen().TooSmall {
		return nil
	}
	panes := slices.Contains(pointed, mode)
	switch msg := msg.(type) {
	case tea.MouseWheelMsg:
		return m.roll(mode, at, msg.Button)
	case tea.MouseClickMsg:
		switch {
		case msg.Button != tea.MouseLeft:
		case mode == keys.OnStart:
			return m.clickStart(at)
		case panes:
			return m.click(at)
		}
	case tea.MouseMotionMsg:
		if panes && m.drag != nil && msg.Button == tea.MouseLeft {
			m.drag = m.cam.Drag(*m.drag, at, m.live.Problem != nil && m.live.Problem.Planar)
		}
	case tea.MouseReleaseMsg:
		if d := m.drag; panes && d != nil {
			m.drag = nil
			if !d.Moved {
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
		if cmd, _ = m.keep(); m.cells.Cell != nil && m.cells.Fresh == nil {
			return cmd
		}
		m.cells.Drop()
	}
	m.cells.Newest = sheet.Ref{}
	m.goTo(p)
	switch {
	case p == layout.Picture:
		m.drag = &picture.Drag{At: at}
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
	}
	p, _, ok := m.under(at)
	switch {
	case !ok || !slices.Contains(pointed, mode):
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
