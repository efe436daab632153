package tui

import (
	"fmt"
	"slices"

	"trivet/mechanics/origin"
	"trivet/tui/grid"
)

// ask is what a number of a result is, for whoever asks where it comes from: what
// kind, of which row, line, check, and so on. Two numbers of a text are never the
// same: n counts those that have one origin.
type ask struct {
	what    what
	i, j, k int32 // a large text has thousands of these
	n       int32
}

// Says makes an ask the origin of a number in a step; its words are worked out when
// somebody asks.
func (ask) Says() string { return "" }

type what uint8

const (
	_           what = iota
	entry            // A[i][j]
	known            // b[i]
	leftOver         // what is left of row i
	ofLargest        // and beside the largest force
	value            // of unknown i
	leastEnd         // of its range
	greatestEnd      //
	leg              // number j of leg i of line n: see origin.Of; its component k
	check            // i
	answer           // i
	use              // of the limit of check i
	limit            // of check i
	given            // i
	plus             // number j of result i of what the ± of the inputs does
	worst            // use of check i of that
	inStep           // step i, block j, number k
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
	if v.at == (ask{}) {
		v.first(m.texts[p].paneText, h)
	}
	if !v.inView(m.texts[p].paneText, h) {
		return
	}
	m.says = m.origin(v.at)
	if m.says != "" && m.isOld(p) {
		m.says = "of the earlier sheet: " + m.says
	}
}

// first puts a cursor that is nowhere yet on the first number in view.
func (v *sight) first(d paneText, h int) {
	if to := d.next(v.scroll.y, 1); to >= 0 && to < v.scroll.y+h {
		v.set(d, to, d.numbers(to)[0].seg)
	}
}

func (m *Model) origin(a ask) string {
	s, i, j, k := m.live.solution, int(a.i), int(a.j), int(a.k)
	switch a.what {
	case entry:
		return origin.Entry(s, i, j)
	case known:
		return origin.Known(s, i)
	case leftOver:
		return origin.Left(s, i)
	case ofLargest:
		return origin.Share(s, i)
	case value:
		return origin.Value(s, i)
	case leastEnd, greatestEnd:
		return origin.End(s, i, a.what == greatestEnd)
	case leg:
		return origin.Leg(s, int(a.n), i, origin.Of(j), k)
	case check:
		return origin.Check(s, i)
	case answer:
		return origin.Answer(s, i)
	case use:
		return origin.Use(s, i)
	case limit:
		return origin.Limit(s, i)
	case given:
		return origin.Given(s, i, j)
	case plus:
		if t := m.live.effect(); t != nil {
			return origin.Trust(t, i, origin.OfTrust(j))
		}
	case worst:
		if t := m.live.effect(); t != nil {
			return origin.Reach(t, i)
		}
	case inStep:
		if w := m.worked.working; w != nil {
			return origin.Step(w, i, j, k)
		}
	}
	return ""
}

// numbered splits a text at its numbers and says what each is, in their order; one
// that of calls nothing is text.
func numbered(look grid.Style, s string, of func(k int) ask) []seg {
	return appendNumbered(nil, look, s, of)
}

// appendNumbered is numbered behind other pieces.
func appendNumbered(out []seg, look grid.Style, s string, of func(k int) ask) []seg {
	at := 0
	all := numerals(s)
	out = slices.Grow(out, 2*len(all)+1)
	for k, n := range all {
		a := of(k)
		if a == (ask{}) {
			continue
		}
		if n[0] > at {
			out = append(out, seg{text: s[at:n[0]], look: look})
		}
		out = append(out, seg{text: s[n[0]:n[1]], look: look, of: a})
		at = n[1]
	}
	if at < len(s) {
		out = append(out, seg{text: s[at:], look: look})
	}
	return out
}

// ask makes every number from a line on one that has the same origin.
func (d paneText) ask(from int, of ask) {
	n := int32(0)
	for i := from; i < len(d); i++ {
		var line []seg
		for _, s := range d[i] {
			line = append(line, numbered(s.look, s.text, func(int) ask {
				n++
				a := of
				a.n = n
				return a
			})...)
		}
		d[i] = line
	}
}

func ordinal(i, n int) string { return fmt.Sprintf("%d of %d", min(i, n), n) }
