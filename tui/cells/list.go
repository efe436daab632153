package cells

import (
	"slices"
	"strings"

	"trivet/mechanics/problem"
	"trivet/tui/keys"
	"trivet/units"
)

// choice is one of the texts that a cell may hold, with what it means. Others
// are further names by which it is found.
type choice struct {
	Text, Says string
	others     []string
}

// particle is the word under on for a point with no body.
const particle = "particle"

// Unpicked says that no arrow has chosen yet: the first that fits is taken once
// something is typed.
const Unpicked = -1

// choices lists what a cell may hold, where that is one of a table.
func (b Builder) choices(s Slot) (list []choice) {
	if s.Does != SetCell {
		return nil
	}
	switch ref := s.Ref; {
	case isOn(s):
		list = []choice{{"", "no body: it is fixed to the ground", nil}}
		for _, body := range b.bodies() {
			list = append(list, choice{body, "the body " + body, nil})
		}
		list = append(list, choice{particle, "a free particle: only forces act on it; or type a name for a new body", nil})
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
	case (ref.Table == "couples" || ref.Table == "distributed") && ref.Key == "on":
		for _, body := range b.bodies() {
			list = append(list, choice{body, "", nil})
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

// bodies are the bodies that the cells name, as they stand: a name just typed is offered before the
// sheet has been solved with it.
func (b Builder) bodies() (names []string) {
	add := func(name string) {
		if name != particle && !slices.Contains(names, name) {
			names = append(names, name)
		}
	}
	for _, row := range b.read("points") {
		for _, name := range strings.FieldsFunc(row.Text("on"), func(r rune) bool { return r == ' ' || r == ',' }) {
			add(name)
		}
	}
	for _, row := range b.read("bodies") {
		add(row.Name)
	}
	return names
}

// fitting gives the choices that the text begins, whole names first, and which of
// them is taken; all of them while nothing has been typed.
func (e *Edit) fitting() (list []choice, pick int) {
	typed, before := strings.TrimSpace(e.Text), ""
	if i := strings.LastIndexAny(typed, " ,") + 1; e.Many {
		before, typed = typed[:i], typed[i:]
	}
	pick = e.Pick
	if e.Text == e.Was {
		for i, c := range e.List {
			if pick == Unpicked && c.Text == e.Text {
				pick = i
			}
		}
		return e.List, min(pick, len(e.List)-1)
	}
	for _, rank := range []int{0, 1, 2, 3} {
		for _, c := range e.List {
			if c.fits(typed) == rank {
				c.Text = before + c.Text
				list = append(list, c)
			}
		}
	}
	if e.New != "" && typed != "" && (len(list) == 0 || list[0].Text != before+typed) {
		list = append(list, choice{before + typed, e.New, nil})
	}
	if pick == Unpicked && typed != "" {
		pick = 0
	}
	return list, min(pick, len(list)-1)
}

// fits tells how well a typed text stands for a choice: 0 is its name, 1 is
// another of its names or differs in capitals alone, 2 begins its name, 3 begins a
// word of it or another of its names; -1 not at all.
func (c choice) fits(typed string) int {
	name, begin := strings.ToLower(c.Text), strings.ToLower(typed)
	switch {
	case typed == c.Text:
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

// Value is the text that the cell gets: the choice taken, or what was typed where
// none fits.
func (e *Edit) Value() string {
	if list, pick := e.fitting(); pick >= 0 && (e.Text != e.Was || e.Pick != Unpicked) {
		return list[pick].Text
	}
	return e.Text
}

// Choose moves in the list.
func (e *Edit) Choose(i keys.Intent) bool {
	if i != keys.PickUp && i != keys.PickDown {
		return false
	}
	list, pick := e.fitting()
	if i == keys.PickUp {
		pick--
	} else {
		pick++
	}
	e.Pick = max(min(pick, len(list)-1), 0)
	return true
}
