package tui

import (
	"fmt"
	"slices"

	"trivet/mechanics/doc"
	"trivet/mechanics/origin"
	"trivet/tui/grid"
)

// explain says where the number under the cursor comes from. It is worked out for
// that number alone.
func (m *Model) explain() {
	m.says = ""
	p := m.focus
	if !p.Result() || m.live.solution == nil {
		return
	}
	h := m.screen().Panes[p].Dy() - 1
	v := &m.read[p]
	if v.at == nil {
		v.first(m.texts[p].paneText, h)
	}
	if !v.inView(m.texts[p].paneText, h) {
		return
	}
	m.says = v.at.Says()
	if m.says != "" && m.isOld(p) {
		m.says = "of the earlier sheet: " + m.says
	}
}

// first puts a cursor that is nowhere yet on the first number in view.
func (v *viewState) first(d paneText, h int) {
	if to := d.next(v.scroll.y, 1); to >= 0 && to < v.scroll.y+h {
		v.set(d, to, d.numbers(to)[0].seg)
	}
}

// moved tells that the cursor stands on another number than before.
func (v viewState) moved(was viewState) bool {
	return v.line != was.line || v.seg != was.seg || !origin.Same(v.at, was.at)
}

// numbered is a text whose numbers have one origin.
func numbered(look grid.Style, s string, from doc.Origin) []seg {
	return appendNumbered(nil, look, s, func(int) doc.Origin { return from })
}

// appendNumbered adds a text split at its numbers, each with its origin, in their
// order; one that has none is text.
func appendNumbered(out []seg, look grid.Style, s string, of func(k int) doc.Origin) []seg {
	at := 0
	all := numerals(s)
	out = slices.Grow(out, 2*len(all)+1)
	for k, n := range all {
		from := of(k)
		if from == nil {
			continue
		}
		if n[0] > at {
			out = append(out, seg{text: s[at:n[0]], look: look})
		}
		out = append(out, seg{text: s[n[0]:n[1]], look: look, of: from})
		at = n[1]
	}
	if at < len(s) {
		out = append(out, seg{text: s[at:], look: look})
	}
	return out
}

// from gives every number from a line on one origin.
func (d paneText) from(line int, of doc.Origin) {
	for i := line; i < len(d); i++ {
		var segs []seg
		for _, s := range d[i] {
			segs = append(segs, numbered(s.look, s.text, of)...)
		}
		d[i] = segs
	}
}

func ordinal(i, n int) string { return fmt.Sprintf("%d of %d", min(i, n), n) }
