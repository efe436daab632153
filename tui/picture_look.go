package tui

import (
	"trivet/mechanics/figure"
	"trivet/mechanics/scene"
	"trivet/tui/keys"
)

// drawn is the scene that the picture shows: the problem, or the force polygon of
// a particle.
func (m *Model) drawn() scene.Scene {
	p := m.live.Problem
	m.polygonOf = ""
	if body := m.particle(); m.cam.polygon && body >= 0 {
		if s, ok := scene.Polygon(p, m.live.Solution, body); ok {
			m.polygonOf = p.Bodies[body].Name
			return s
		}
	}
	return scene.System(p, m.live.Solution, scene.Options{Reactions: true, Lengths: m.cam.sizes})
}

// particle is the selected one, else the first; -1 where the problem has none.
func (m Model) particle() int {
	p, first := m.live.Problem, -1
	if p == nil {
		return first
	}
	on := m.selected()
	for i, b := range p.Bodies {
		if !b.Particle || b.Bare {
			continue
		}
		if first < 0 {
			first = i
		}
		for _, k := range b.Points {
			if on.Table == "points" && p.Points[k].Name == on.Row {
				return i
			}
		}
	}
	return first
}

// pictured does the intents that change what the picture shows, and says what it shows.
func (m *Model) pictured(i keys.Intent) bool {
	switch i {
	case keys.ArrowLengths:
		m.cam.arrows = (m.cam.arrows + 1) % (figure.Equal + 1)
		m.say([...]string{"arrows: longer where the force is larger", "arrows: to scale", "arrows: all alike"}[m.cam.arrows], false)
	case keys.Dimensions:
		m.cam.sizes = !m.cam.sizes
	case keys.ForcePolygon:
		m.cam.polygon = !m.cam.polygon
		m.settle()
		switch {
		case !m.cam.polygon:
		case m.particle() < 0:
			m.cam.polygon = false
			m.say("a force polygon needs a particle, and this sheet has none", false)
		case m.polygonOf == "":
			m.cam.polygon = false
			m.say("a force on the particle is unknown, so there is no polygon", false)
		default:
			m.say("the forces on "+m.polygonOf+" tip to tail: the polygon closes in equilibrium; g returns to the picture", false)
		}
	default:
		return false
	}
	return true
}
