package tui

import (
	"image"
	"slices"
	"strings"

	"trivet/mechanics/problem"
	"trivet/tui/grid"
	"trivet/tui/keys"
	"trivet/tui/layout"
	"trivet/tui/theme"
	"trivet/units"
)

// choice is one of the texts that a cell may hold, with what it means. Others
// are further names by which it is found.
type choice struct {
	text, says string
	others     []string
}

// unpicked says that no arrow has chosen yet: the first that fits is taken once
// something is typed.
const unpicked = -1

// choices lists what a cell may hold, where that is one of a table.
func (b builder) choices(s slot) (list []choice) {
	if s.does != setCell {
		return nil
	}
	switch ref := s.ref; {
	case ref.Table == "joints" && ref.Key == "kind":
		for _, j := range problem.Joints() {
			if !b.planar() && j.Space.Stands || b.planar() && j.Plane.Stands {
				list = append(list, choice{j.Name, j.Says, j.Aliases})
			}
		}
	case ref.Table == "lines" && ref.Key == "kind":
		for _, k := range problem.Kinds() {
			list = append(list, choice{k.Name, k.Holds, nil})
		}
	case ref.Table == "joints" && ref.Key == "moments":
		list = []choice{{"none", "exerts no moments, as one of an aligned pair", nil}}
	case ref.Table == "distributed" && ref.Key == "kind":
		list = []choice{{"hydrostatic", "the pressure of water on a plane gate of a width", nil}}
	case (ref.Table == "couples" || ref.Table == "distributed") && ref.Key == "on" && b.Latest != nil:
		for _, body := range b.Latest.Bodies {
			if !body.Particle {
				list = append(list, choice{body.Name, "", nil})
			}
		}
	case ref.Table == "" && ref.Row == "plane":
		list = []choice{{"xy", "a problem in the plane; left out, it is in space", nil}}
	case ref.Table == "units":
		want := map[string]units.Dim{"length": units.Length, "force": units.Force, "angle": units.Angle, "mass": units.Mass}[ref.Row]
		for _, u := range units.Table() {
			if u.Dim == want {
				list = append(list, choice{u.Symbol, u.Name, u.Aliases})
			}
		}
	}
	return list
}

// fitting gives the choices that the text begins, whole names first, and which of
// them is taken; all of them while nothing has been typed.
func (e *edit) fitting() (list []choice, pick int) {
	typed := strings.TrimSpace(e.Text)
	pick = e.pick
	if e.Text == e.was {
		for i, c := range e.list {
			if pick == unpicked && c.text == e.Text {
				pick = i
			}
		}
		return e.list, min(pick, len(e.list)-1)
	}
	for _, rank := range []int{0, 1, 2, 3} {
		for _, c := range e.list {
			if c.fits(typed) == rank {
				list = append(list, c)
			}
		}
	}
	if pick == unpicked && typed != "" {
		pick = 0
	}
	return list, min(pick, len(list)-1)
}

// fits tells how well a typed text stands for a choice: 0 is its name, 1 is
// another of its names or differs in capitals alone, 2 begins its name, 3 begins a
// word of it or another of its names; -1 not at all.
func (c choice) fits(typed string) int {
	name, begin := strings.ToLower(c.text), strings.ToLower(typed)
	switch {
	case typed == c.text:
		return 0
	case begin == name || slices.Contains(c.others, typed):
		return 1
	case strings.HasPrefix(name, begin):
		return 2
	case strings.Contains(name, "-"+begin):
		return 3
	}
	for _, other := range c.others {
		if strings.HasPrefix(strings.ToLower(other), begin) {
			return 3
		}
	}
	return -1
}

// value is the text that the cell gets: the choice taken, or what was typed where
// none fits.
func (e *edit) value() string {
	if list, pick := e.fitting(); pick >= 0 && (e.Text != e.was || e.pick != unpicked) {
		return list[pick].text
	}
	return e.Text
}

// choose moves in the list.
func (e *edit) choose(i keys.Intent) bool {
	if i != keys.PickUp && i != keys.PickDown {
		return false
	}
	list, pick := e.fitting()
	if i == keys.PickUp {
		pick--
	} else {
		pick++
	}
	e.pick = max(min(pick, len(list)-1), 0)
	return true
}

// The list of choices shows so many at a time, so wide.
const (
	listRows  = 8
	listWidth = 66
)

// drawList shows what the cell being typed in may hold, under it or above.
func (m Model) drawList(c grid.Canvas) {
	if m.edit == nil || m.ask != nil || m.naming != nil {
		return
	}
	list, pick, noun := m.edit.offered()
	r := m.screen().Panes[m.focus]
	if len(list) == 0 || r.Empty() {
		return
	}
	rows := min(len(list), listRows)
	y := r.Min.Y + layout.Frame + m.at[m.focus].row - m.at[m.focus].top + 1
	if y+rows+1 > c.H()-layout.Foot {
		y = max(y-rows-2, 0)
	}
	x := max(min(r.Min.X+6, c.W()-listWidth), 0)
	box := c.In(image.Rect(x, y, min(x+listWidth, c.W()), y+rows+1))
	box.Fill(' ', theme.Plain)
	top := max(min(pick-rows/2, len(list)-rows), 0)
	name := 8
	for _, k := range list {
		name = max(name, grid.Width(k.text))
	}
	for i := range rows {
		k := list[top+i]
		box.Set(0, i, m.theme.Glyphs.Wall, theme.RuleFocus)
		look := theme.Name
		if top+i == pick {
			box.Set(1, i, m.theme.Glyphs.Row, theme.RuleFocus)
			look = theme.Selected
		}
		box.Text(2, i, look, grid.Fit(k.text, name))
		box.Text(name+3, i, theme.Plain, grid.Fit(k.says, box.W()-name-4))
		box.Set(box.W()-1, i, m.theme.Glyphs.Wall, theme.RuleFocus)
	}
	box.In(image.Rect(0, rows, box.W(), rows+1)).Fill(m.theme.Glyphs.RuleFocus, theme.RuleFocus)
	says := ""
	if len(list) > rows {
		says = " " + count(len(list), noun) + ", more with the arrows "
	}
	if noun == "word" {
		says += " tab takes, down chooses, esc closes "
	}
	box.Text(2, rows, theme.RuleFocus, says)
}
