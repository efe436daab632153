package tui

// explain says where the number under the cursor comes from. It is worked out for
// that number alone.
func (m *Model) explain() {
	m.says = ""
	p := m.Focus
	if !p.Result() || m.live.Solution == nil {
		return
	}
	h := m.screen().Panes[p].Dy() - 1
	v := &m.read[p]
	if v.At == nil {
		v.First(m.texts[p].Lines, h)
	}
	if !v.InView(m.texts[p].Lines, h) {
		return
	}
	m.says = v.At.Says()
	if m.says != "" && m.isOld(p) {
		m.says = "of the earlier sheet: " + m.says
	}
}
