package tui

import (
	tea "charm.land/bubbletea/v2"

	"trivet/mechanics/scene"
	"trivet/mechanics/sheet"
	"trivet/mechanics/statics"
	"trivet/tui/board"
	"trivet/tui/cells"
	"trivet/tui/layout"
	"trivet/tui/picture"
	"trivet/tui/results"
	"trivet/tui/text"
)

// panes is what a frame is drawn from: all of it follows from the rest of the model, and
// each part is kept with what it was made of.
type panes struct {
	divided  layout.Args
	division layout.Screen

	tabled  tabled
	follows []cells.Fact // from the row under the cursor
	related related

	texts [layout.Panes]results.Pane // of the results that show
	says  string                     // where the number under the cursor comes from

	strip    text.Lines // what the sheet comes to, in one line
	stripped stripped

	drawing   *scene.Scene
	sketch    *picture.Kept // of that scene
	depicted  picture.Shot
	polygonOf string // whose force polygon shows in place of the picture

	resulted, records int // count the results, and the sheets and results, that were to show
	count             counts
}

// counts are how often each part was made.
type counts struct{ layouts, tables, texts, scenes int }

// What the parts were made of.
type (
	tabled struct {
		records int
		fresh   *cells.Fresh
	}
	stripped struct {
		result, w int
		weighed   *statics.Solution
	}
	related struct {
		tabled
		row sheet.Ref
	}
)

// settle makes anew what a frame is drawn from, each part only where what it is made of
// has changed. Update ends with it; it also stands where a change goes on from what
// another has made of the panes.
func (m *Model) settle() {
	m.tabulate()
	m.compose()
	m.clamp()
	m.explain()
	if of := (related{m.tabled, m.selected()}); of != m.related {
		m.related, m.follows = of, m.cells.Made.About(of.row)
	}
	m.depict()
}

// tabulate makes the tables of the panes of cells.
func (m *Model) tabulate() {
	of := tabled{m.records, m.cells.Fresh}
	if of == m.tabled {
		return
	}
	m.tabled = of
	m.count.tables++
	s := m.live.Sheet
	if s == nil {
		s = m.history.Current()
	}
	b := cells.New(m.live.Result, s, m.cells.Fresh)
	b.Bare = m.hides && m.board.Hides == board.HidesVectors
	m.cells.Made = b
	m.cells.Tables = [layout.System]cells.Table{
		layout.Given: b.Given(), layout.Points: b.Points(), layout.Lines: b.Lines(),
		layout.Supports: b.Supports(), layout.Unknowns: b.Unknowns(), layout.Sheet: b.Sheet(),
	}
}

// screen divides the screen as things are.
func (m *Model) screen() layout.Screen {
	a := layout.Args{W: m.w, H: m.h, Turns: m.Turns}
	for p := range m.cells.Tables {
		a.Rows[p] = len(m.cells.Tables[p].Records)
	}
	if a != m.divided {
		m.divided, m.division = a, layout.Arrange(a)
		m.count.layouts++
	}
	return m.division
}

// depict makes the scene that the picture shows.
func (m *Model) depict() {
	if of := m.cam.Shot(m.live.Problem, m.live.Solution, m.selected()); of != m.depicted {
		drawn, polygonOf := of.Scene()
		m.depicted, m.polygonOf = of, polygonOf
		m.drawing, m.sketch = &drawn, &picture.Kept{}
		m.count.scenes++
	}
}

// wanted begins what the newest sheet and its result are asked for and is not known yet.
func (m *Model) wanted() tea.Cmd { return tea.Batch(m.live.Again(), m.lay(), m.judge(), m.weigh()) }
