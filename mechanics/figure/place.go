package figure

import (
	"math"
	"slices"

	"trivet/mechanics/drawing"
	"trivet/mechanics/scene"
)

// want is a label to be placed: at one of its spots, in the first of its forms that has room.
type want struct {
	spots []spot
	forms []form
	small bool
	tone  drawing.Tone
	rank  scene.Rank
	of    int
	lined bool // beside a line, not round a place
	line  segment
	first bool // it has one place only
}

// form is a wording of a label: what fits where, and how far its baseline lies below its top.
type form struct {
	runs []drawing.Run
	half drawing.Vec // of its width and height
	rise float64
}

func worded(runs []drawing.Run) []form { return []form{{runs: runs}} }

// spot is a place that a label may stand at, and the way it would rather lie from there.
type spot struct{ at, way drawing.Vec }

// want asks for a thing's label at one of some spots, rather at the first.
func (t *setter) want(s *scene.Thing, spots ...spot) {
	for i := range spots {
		spots[i].way = spots[i].way.Unit()
	}
	t.label(s, want{spots: spots})
}

// beside asks for the label of a line, on either side, near its middle rather than its
// ends.
func (t *setter) beside(s *scene.Thing, a, b drawing.Vec) {
	t.label(s, want{lined: true, line: segment{a, b}})
}

// label asks for a thing's label where w says.
func (t *setter) label(s *scene.Thing, w want) {
	if s.Label.Runs == nil || t.quiet {
		return
	}
	before, behind := "", ""
	if s.Open && !s.Kind.Member() {
		behind = t.m.Doubt
	}
	if s.Label.Mark != "" {
		behind += " " + s.Label.Mark
	}
	if t.m.Selected != nil && t.m.Selected(s) {
		w.first, before, behind = true, "[", behind+"]"
	}
	for _, runs := range [2][]drawing.Run{s.Label.Runs, s.Label.Short} {
		if behind != "" {
			runs = scene.With(runs, behind)
		}
		if before != "" {
			runs = append(scene.Plain(before), runs...)
		}
		if w.forms == nil || len(s.Label.Short) > 0 && len(runs) < len(w.forms[0].runs) {
			w.forms = append(w.forms, form{runs: runs})
		}
	}
	w.small, w.tone, w.rank, w.of = s.Label.Rank == scene.OfSize, max(s.Tone, drawing.Dark), s.Label.Rank, t.of
	t.wants = append(t.wants, w)
}

// spotsOf are the places beside a line, of one that goes on outside the room beside what
// is inside.
func (t *setter) spotsOf(s segment) (spots []spot) {
	if t.m.Bounded {
		from, to, ok := t.room().Clip(s.a, s.b)
		if !ok {
			return nil
		}
		d := s.b.Sub(s.a)
		s = segment{s.a.Add(d.Scale(from)), s.a.Add(d.Scale(to))}
	}
	n := s.b.Sub(s.a).Unit().Perp()
	if n.Y > 0 || n.Y == 0 && n.X < 0 {
		n = n.Scale(-1)
	}
	shares := [7]float64{0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8}
	spots = make([]spot, 0, 2*len(shares))
	for _, x := range shares {
		at := s.a.Add(s.b.Sub(s.a).Scale(x))
		spots = append(spots, spot{at, n}, spot{at, n.Scale(-1)})
	}
	return spots
}

// room is what a bounded medium shows, from the origin.
func (t *setter) room() drawing.Box {
	low := t.origin.Scale(-1)
	return drawing.Box{Low: low, High: low.Add(drawing.Vec{X: t.m.Width, Y: t.m.Height})}
}

// What a place costs, in points of distance from where the label belongs.
const (
	costStroke = 30.0  // for lying on a line at all, and for each square of it
	costThin   = 12.0  // for lying on thin lines alone, which are then interrupted
	costTurned = 6.0   // for each radian off the way it would rather lie
	costSpot   = 1.5   // for each spot down its list, beside a line
	costAside  = 4.0   // and beside an arrow rather than at its end
	costOther  = 6.0   // for standing near the end of another arrow, which it might name
	nearOther  = 5.0   // and how near that is
	maxTold    = 60    // arrows in a figure in which that is looked for
	clear      = 1.6   // kept free round a label
	apart      = 3.0   // and more to the next label on its line
	leaderFrom = 14.0  // a label further off gets a line to its place
	costLeader = 8.0   // and costs as much more
	costPassed = 6.0   // and this for each eighth of it that lies on a line
	reachFar   = 160.0 // no label stands further off
	reachNear  = 40.0  // nor on a screen
	handy      = 9.0   // a place of a point's name that is as good as any
)

// place finds a place for each label in turn, the cheapest of those round its spots that
// no other label has. Names of points, which have few good places, take a handy one
// before all else, unless a force then stays without a label.
func (t *setter) place() *field {
	b := t.room()
	side := math.Min(t.m.Fine, 1)
	if !t.m.Bounded {
		b, side = t.d.Bounds().Grow(t.pt(reachFar)), t.m.Fine
	}
	t.merge()
	t.measure()
	slices.SortStableFunc(t.wants, func(a, b want) int {
		if a.first != b.first {
			return map[bool]int{true: -1, false: 1}[a.first]
		}
		return int(a.rank - b.rank)
	})
	f := newField(b, side, math.Min(clear*t.m.Point, t.m.Fine), t.m.Cell)
	for _, s := range t.lines {
		f.stroke(s, solid)
	}
	for _, s := range t.hairs {
		f.stroke(s, thin)
	}
	f.sum()
	done := make([]bool, len(t.wants))
	for i := range t.wants {
		if w := &t.wants[i]; w.rank == scene.OfPoint {
			done[i] = t.put(f, w, &w.forms[0], handy)
		}
	}
	for i := range t.wants {
		for k := range t.wants[i].forms {
			done[i] = done[i] || t.put(f, &t.wants[i], &t.wants[i].forms[k], math.Inf(1))
		}
		if !done[i] {
			t.left++
		}
	}
	return f
}

// onCell is the corner of a cell, of a medium that has cells: of the one that a place lies in
// or, half a cell on, the nearest.
func (t *setter) onCell(q drawing.Vec, on float64) drawing.Vec {
	cell := t.m.Cell
	if cell == (drawing.Vec{}) {
		return q
	}
	corner := q.Add(t.origin)
	return drawing.Vec{X: cell.X * math.Floor(corner.X/cell.X+on), Y: cell.Y * math.Floor(corner.Y/cell.Y+on)}.Sub(t.origin)
}

// merge makes one label of the names of several points in one place.
func (t *setter) merge() {
	seen := map[[2]int]int{}
	for i := range t.wants {
		w := &t.wants[i]
		if w.lined {
			w.spots = t.spotsOf(w.line)
		} else if t.m.Bounded {
			w.spots = slices.DeleteFunc(w.spots, func(s spot) bool { return !t.room().Holds(s.at) })
		}
		if len(w.spots) == 0 || w.rank != scene.OfPoint {
			continue
		}
		at := w.spots[0].at
		key := [2]int{int(math.Round(at.X / t.m.Fine)), int(math.Round(at.Y / t.m.Fine))}
		if k, ok := seen[key]; ok {
			first := &t.wants[k]
			first.forms = worded(append(scene.With(first.forms[0].runs, ", "), w.forms[0].runs...))
			w.spots = nil
			continue
		}
		seen[key] = i
	}
	t.wants = slices.DeleteFunc(t.wants, func(w want) bool { return len(w.spots) == 0 })
}

// measure sizes the labels, and takes the short form of all where the full ones would fill
// the room.
func (t *setter) measure() {
	const crowded = 0.06 // of the room
	sum := 0.0
	for i := range t.wants {
		for k := range t.wants[i].forms {
			one := &t.wants[i].forms[k]
			one.half.X, one.half.Y, one.rise = t.m.Measure(one.runs, t.wants[i].small)
			if k == 0 {
				sum += one.half.X * one.half.Y
			}
			one.half = one.half.Scale(0.5)
		}
	}
	if t.m.Bounded && sum > crowded*t.m.Width*t.m.Height {
		for i, w := range t.wants {
			t.wants[i].forms = w.forms[len(w.forms)-1:]
		}
	}
}

// turns are the ways round a place, from that in which a label would rather lie to the
// opposite, by both sides.
var turns = func() (all [16]struct{ angle, sin, cos float64 }) {
	for i := range all {
		angle := float64((i+1)/2) * 2 * math.Pi / float64(len(all))
		all[i].angle = angle
		if i%2 == 0 {
			angle = -angle
		}
		all[i].sin, all[i].cos = math.Sincos(angle)
	}
	return all
}()

// candidate is where a label may stand: so many points from a place, that way, at a cost.
type candidate struct {
	spot
	away, cost float64
}

// candidates tries those round the spots of a label that cost less than the limit, which
// may fall meanwhile.
func (t *setter) candidates(w *want, limit *float64, try func(candidate)) {
	const nearest = 2.5           // points
	reach, wider := reachFar, 1.4 // how much further each ring lies than the last
	if t.m.Bounded {
		reach, wider = reachNear, 1.6
	}
	for k, sp := range w.spots {
		base := costAside * float64(k)
		if w.lined {
			base = costSpot * float64(k)
			try(candidate{sp, nearest, base + nearest})
			try(candidate{sp, 7, base + 7})
			if k > 0 { // leaders start from the middle
				continue
			}
		}
		if k > 0 { // nor from beside an arrow
			reach = leaderFrom
		}
		for r := nearest; r < reach && r < *limit; r *= wider {
			step, leader := 1, 0.0
			if r > leaderFrom {
				leader = costLeader
			}
			if r > leaderFrom && t.m.Bounded {
				step = 2
			}
			for i := 0; i < len(turns); i += step {
				turn := &turns[i]
				if r+costTurned*turn.angle+base >= *limit {
					break
				}
				way := drawing.Vec{X: sp.way.X*turn.cos - sp.way.Y*turn.sin, Y: sp.way.X*turn.sin + sp.way.Y*turn.cos}
				try(candidate{spot{sp.at, way}, r, costTurned*turn.angle + base + r + leader})
			}
		}
	}
}

// stand is the box of a label at a candidate, and what it costs there with what it lies
// on: the limit where it cannot be had for less.
func (t *setter) stand(f *field, w *want, half drawing.Vec, c *candidate, limit float64) (drawing.Box, float64) {
	if c.cost >= limit {
		return drawing.Box{}, limit
	}
	low := c.at.Add(c.way.Scale(c.away*t.m.Point + math.Abs(c.way.X)*half.X + math.Abs(c.way.Y)*half.Y)).Sub(half)
	low = t.onCell(low, 0.5)
	b := drawing.Box{Low: low, High: low.Add(half.Scale(2))}
	if !f.inside(b) || !f.first(low, c.cost) {
		return drawing.Box{}, limit
	}
	wide := b.Grow(f.margin)
	in, cost := f.squares(wide), c.cost
	if f.taken(t.apart(wide)) {
		return drawing.Box{}, limit
	}
	if under := f.under(in); under >= solid {
		cost += costStroke * float64(1+under/solid)
	} else if under > 0 {
		cost += costThin
	}
	if len(t.arrows) <= maxTold && !t.m.Bounded && w.rank <= scene.OfBody && cost < limit {
		for _, a := range t.arrows {
			if a.of != w.of && b.Nearest(a.b).Sub(a.b).Len() < t.pt(nearOther) {
				cost += costOther
			}
		}
	}
	if far := c.away > leaderFrom || !t.m.Bounded && b.Nearest(c.at).Sub(c.at).Len() > t.pt(leaderFrom); far && cost < limit {
		cost += t.reach(f, b, c.at)
	}
	return b, math.Min(cost, limit)
}

// put writes a label where that costs least, if less than the limit.
func (t *setter) put(f *field, w *want, one *form, limit float64) bool {
	f.trial++
	cheapest := limit
	var box drawing.Box
	var from drawing.Vec
	t.candidates(w, &cheapest, func(c candidate) {
		if b, cost := t.stand(f, w, one.half, &c, cheapest); cost < cheapest {
			cheapest, box, from = cost, b, c.at
		}
	})
	if cheapest >= limit {
		return false
	}
	f.take(box)
	t.interrupt(box)
	t.leader(f, box, from)
	at := drawing.Vec{X: box.Low.X, Y: box.Low.Y + one.rise}
	t.d.Texts = append(t.d.Texts, drawing.Text{At: at, Runs: one.runs, Size: paperSize(w.small) * t.m.Point, Tone: w.tone, Of: w.of})
	return true
}

// apart is a label's box with the room before the next one on its line, on paper: the
// names of two things must not read as one.
func (t *setter) apart(b drawing.Box) drawing.Box {
	if !t.m.Bounded {
		b.Low.X, b.High.X = b.Low.X-t.pt(apart), b.High.X+t.pt(apart)
	}
	return b
}

// interrupt breaks the thin lines that a label lies on, as a drawing office does.
func (t *setter) interrupt(b drawing.Box) {
	wide := b.Grow(clear * t.m.Point)
	crosses := func(s segment) bool {
		_, _, ok := wide.Clip(s.a, s.b)
		return ok
	}
	if slices.ContainsFunc(t.hairs, crosses) {
		t.d.Area(drawing.Paper, drawing.None, 0, b.Low, drawing.Vec{X: b.High.X, Y: b.Low.Y}, b.High, drawing.Vec{X: b.Low.X, Y: b.High.Y})
	}
}

// onTheWay gives boxes on the way from a label to its place.
func (t *setter) onTheWay(b drawing.Box, at drawing.Vec) (boxes [8]drawing.Box) {
	edge := b.Nearest(at)
	for i := range boxes {
		q := edge.Add(at.Sub(edge).Scale((float64(i) + 0.5) / float64(len(boxes))))
		boxes[i] = drawing.Box{Low: q, High: q}.Grow(t.m.Fine)
	}
	return boxes
}

// reach is what the line from a label to its place costs: it passes no other label, does not
// run along what is drawn, and on a screen, where lines are coarse, does not pass it.
func (t *setter) reach(f *field, b drawing.Box, at drawing.Vec) (cost float64) {
	boxes := t.onTheWay(b, at)
	for i, box := range boxes {
		covered := f.under(f.squares(box)) >= solid
		if f.taken(box) || covered && t.m.Bounded && i < len(boxes)-2 {
			return math.Inf(1)
		}
		if covered && !t.m.Bounded {
			cost += costPassed
		}
	}
	if cost >= costPassed*float64(len(boxes)/2) {
		return math.Inf(1)
	}
	return cost
}

// leader draws the line from a label that stands far off to its place.
func (t *setter) leader(f *field, b drawing.Box, at drawing.Vec) {
	edge := b.Nearest(at)
	d := edge.Sub(at)
	if d.Len() <= t.pt(leaderFrom) {
		return
	}
	t.led += d.Len()
	t.d.Line(drawing.Faint, t.pt(0.4), at.Add(d.Unit().Scale(t.pt(2))), edge)
	if !t.m.Bounded { // no later label lies on it
		for _, box := range t.onTheWay(b, at) {
			f.take(box)
		}
	}
}
