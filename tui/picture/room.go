package picture

import (
	"image"
	"slices"

	"trivet/mechanics/figure"
	"trivet/tui/grid"
)

// setting is what labels keep clear of, by cell.
type setting struct {
	*pen
	spot   []int32 // points: the numbers of their rows
	names  []int32 // labels that have their place, from 1; closed: no label may stand there
	over   bool    // less important labels may be ousted
	ousted []tag
	path   []image.Point // room for a leader
}

// closed are the cells of points and those taken: no label gives way there.
const closed = -1

// blocked tells whether a label keeps another from a cell.
func (s *setting) blocked(t *tag, n int32) bool {
	return n > 0 && (!s.over || s.placed[n-1].lit || s.placed[n-1].rank <= t.rank && !t.lit)
}

// place finds a place for each label that can have one. Names of points, which
// are short and have few places that read well, take a free one before all else;
// where a more important label then finds none, they give way. Where it is to be
// all or none, it ends at the first that has no room.
func (p *pen) place(tags []tag, spots map[image.Point]int32, all bool) {
	cells := p.c.W() * p.c.H()
	store := make([]int32, 2*cells)
	s := setting{pen: p, spot: store[:cells], names: store[cells:]}
	for k, taken := range p.taken {
		if taken {
			s.names[k] = closed
		}
	}
	for at, n := range spots {
		k := at.Y*p.c.W() + at.X
		s.spot[k], s.names[k] = n, closed
	}
	p.placed, p.left = p.placed[:0], 0
	done := make([]bool, len(tags))
	var short []tag
	for i, t := range tags {
		if t.rank == figure.OfPoint {
			done[i] = s.put(t, handy)
		}
	}
	for i, t := range tags {
		if done[i] || s.put(t, hidden) {
			continue
		}
		s.over = true
		placed := s.put(t, hidden)
		s.over = false
		if !placed {
			p.left++
			if all {
				return
			}
			short = append(short, t)
		}
	}
	for _, t := range s.ousted {
		if !s.put(t, hidden) {
			p.left++
			short = append(short, t)
		}
	}
	// A member without room for its name still says whether it is pulled or pushed.
	for _, t := range short {
		if t.runs && t.mark != "" {
			t.text, t.n, t.alone = t.mark, grid.Width(t.mark), true
			s.put(t, hidden)
		}
	}
	p.placed = slices.DeleteFunc(p.placed, func(l placed) bool { return l.box.Empty() })
}

// put places a label where that costs less than so much.
func (s *setting) put(t tag, most int) bool {
	l, ok := s.best(&t, most)
	if !ok {
		return false
	}
	w := s.c.W()
	row := l.box.Min.Y * w
	for k := row + max(l.box.Min.X-1, 0); k < row+min(l.box.Max.X+1, w); k++ {
		if n := s.names[k]; n > 0 {
			s.oust(n)
		}
	}
	s.placed = append(s.placed, l)
	s.claim(l, int32(len(s.placed)))
	return true
}

// oust takes a label from its place.
func (s *setting) oust(n int32) {
	l := &s.placed[n-1]
	s.claim(*l, 0)
	s.ousted = append(s.ousted, l.tag)
	l.box = image.Rectangle{}
}

// claim gives the cells of a label and of its leader to its number.
func (s *setting) claim(l placed, n int32) {
	for x := l.box.Min.X; x < l.box.Max.X; x++ {
		s.names[l.box.Min.Y*s.c.W()+x] = n
	}
	if l.leader {
		s.path = way(l.at, l.box, s.path)
		for _, at := range s.path {
			s.names[at.Y*s.c.W()+at.X] = n
		}
	}
}
