package tui

import (
	tea "charm.land/bubbletea/v2"

	"trivet/mechanics/problem"
	"trivet/mechanics/scene"
	"trivet/mechanics/sheet"
	"trivet/mechanics/statics"
	"trivet/tui/cells"
	"trivet/tui/layout"
)

// panes is what a frame is drawn from: all of it follows from the rest of the model, and
// each part is kept with what it was made of.
type panes struct {
	divided  layout.Args
	division layout.Screen

	tabled  tabled
	follows []cells.Fact // from the row under the cursor
	related related

	texts [layout.Panes]shownText // of the results that show
	says  string                  // where the number under the cursor comes from

	drawing   *scene.Scene
	sketch    *sketch // of that scene
	depicted  depicted
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
	related struct {
		tabled
		row sheet.Ref
	}
	depicted struct {
		problem  *problem.Problem
		solution *statics.Solution
		lengths  bool
		polygon  int // the body whose polygon it is, -1 for none
	}
)

// settle makes anew what a frame is drawn from, each part only where what it is made of
// has changed. Update ends with it; it also stands where a change goes on from what
// another has made of the panes.
func (m *Model) settle() {
	m.tabulate()
	for p, r := range m.screen().Panes {
		if p := layout.Pane(p); p.Result() && !r.Empty() {
			m.compose(p, max(r.Dx()-2, 1))
		}
	}
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
	m.cells.Made = b
	m.cells.Tables = [layout.System]cells.Table{
		layout.Given: b.Given(), layout.Points: b.Points(), layout.Lines: b.Lines(),
		layout.Supports: b.Supports(), layout.Unknowns: b.Unknowns(), layout.Sheet: b.Sheet(),
	}
}

// screen divides the screen as things are.
func (m *Model) screen() layout.Screen {
	a := layout.Args{W: m.w, H: m.h, Side: m.side, Turn: m.turn, Third: m.third, Large: m.large, Focus: m.focus}
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
	of := depicted{m.live.Problem, m.live.Solution, m.cam.sizes, -1}
	if m.cam.polygon {
		of.polygon = m.particle()
	}
	if of != m.depicted {
		m.depicted = of
		drawn := m.drawn()
		m.drawing, m.sketch = &drawn, &sketch{}
		m.count.scenes++
	}
}

// wanted begins what the newest sheet and its result are asked for and is not known yet.
func (m *Model) wanted() tea.Cmd { return tea.Batch(m.live.solve(), m.lay(), m.judge(), m.weigh()) }
