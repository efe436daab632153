package figure

import (
	"math"
	"slices"

	"trivet/mechanics/ink"
	"trivet/mechanics/scene"
)

// want is a label to be placed: at one of its spots.
type want struct {
	spots       []spot
	full, short []ink.Run
	small       bool
	tone        ink.Tone
	rank        scene.Rank
	of          int
	lined       bool // beside a line, not round a place
	line        segment
	first       bool // it has one place only
}

// spot is a place that a label may stand at, and the way it would rather lie from there.
type spot struct{ at, way ink.Vec }

// want asks for a thing's label at one of some spots, rather at the first.
func (t *setter) want(s *scene.Thing, spots ...spot) {
	if w := t.labelOf(s); w.full != nil {
		for _, one := range spots {
			w.spots = append(w.spots, spot{one.at, one.way.Unit()})
		}
		t.wants = append(t.wants, w)
	}
}

// beside asks for the label of a line, on either side, near its middle rather than its
// ends.
func (t *setter) beside(s *scene.Thing, a, b ink.Vec) {
	w := t.labelOf(s)
	if w.full == nil {
		return
	}
	w.lined, w.line = true, segment{a, b}
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
	n := s.b.Sub(s.a).Unit().Across()
	if n.Y > 0 || n.Y == 0 && n.X < 0 {
		n = n.Scale(-1)
	}
	for _, x := range []float64{0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8} {
		at := s.a.Add(s.b.Sub(s.a).Scale(x))
		spots = append(spots, spot{at, n}, spot{at, n.Scale(-1)})
	}
	return spots
}

// room is what a bounded medium shows, from the origin.
func (t *setter) room() ink.Box {
	low := t.origin.Scale(-1)
	return ink.Box{Low: low, High: low.Add(ink.Vec{X: t.m.Width, Y: t.m.Height})}
}

func (t *setter) labelOf(s *scene.Thing) want {
	l := s.Label
	if t.quiet {
		return want{}
	}
	w := want{full: l.Runs, short: l.Short, small: l.Small, tone: max(s.Tone, ink.Dark), rank: l.Rank, of: t.of}
	if s.Open && t.m.Doubt != "" && w.full != nil && !s.Kind.Member() {
		w.full, w.short = scene.With(w.full, t.m.Doubt), scene.With(w.short, t.m.Doubt)
	}
	if l.Mark != "" && w.full != nil {
		w.full, w.short = scene.With(w.full, " "+l.Mark), scene.With(w.short, " "+l.Mark)
	}
	if w.full != nil && t.m.Selected != nil && t.m.Selected(s) {
		w.first = true
		w.full, w.short = append(scene.Plain("["), scene.With(w.full, "]")...), append(scene.Plain("["), scene.With(w.short, "]")...)
	}
	return w
}

// What a place costs, in points of distance from where the label belongs.
const (
	costStroke = 30.0  // for lying on a line at all, and for each square of it
	costThin   = 12.0  // for lying on thin lines alone, which are then interrupted
	costTurned = 6.0   // for each radian off the way it would rather lie
	costSpot   = 1.5   // for each spot down its list, beside a line
	costAside  = 4.0   // and beside an arrow rather than at its end
	clear      = 1.6   // kept free round a label
	apart      = 3.0   // and more to the next label on its line
	leaderFrom = 14.0  // a label further off gets a line to its place
	costLeader = 8.0   // and costs as much more
	reachFar   = 160.0 // no label stands further off
	reachNear  = 40.0  // nor on a screen
	handy      = 9.0   // a place of a point's name that is as good as any
)

// place finds a place for each label in turn, the cheapest of those round its spots that
// no other label has. Names of points, which have few good places, take a handy one
// before all else, unless a force then stays without a label.
func (t *setter) place() {
	b := t.room()
	side := math.Min(t.m.Fine, 1)
	if !t.m.Bounded {
		b, side = t.d.Bounds().Grow(t.pt(reachFar)), t.m.Fine
	}
	t.merge()
	t.shorten()
	order := make([]int, len(t.wants))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(a, b int) int {
		if t.wants[a].first != t.wants[b].first {
			return map[bool]int{true: -1, false: 1}[t.wants[a].first]
		}
		return int(t.wants[a].rank - t.wants[b].rank)
	})
	f := newField(b, side)
	for _, s := range t.lines {
		f.stroke(s)
	}
	f.sum()
	done := make([]bool, len(t.wants))
	try := func(i int, most float64) {
		if w := &t.wants[i]; !done[i] {
			done[i] = t.put(f, w, w.full, most) || len(w.short) > 0 && len(w.short) < len(w.full) && most > handy && t.put(f, w, w.short, most)
		}
	}
	for _, i := range order {
		if t.wants[i].rank == scene.OfPoint {
			try(i, handy)
		}
	}
	for _, i := range order {
		if try(i, math.Inf(1)); !done[i] {
			t.left++
		}
	}
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
			first.full = append(scene.With(first.full, ", "), w.full...)
			first.short, w.spots = first.full, nil
			continue
		}
		seen[key] = i
	}
	t.wants = slices.DeleteFunc(t.wants, func(w want) bool { return len(w.spots) == 0 })
}

// shorten takes the short form of all labels where the full ones would fill the room.
func (t *setter) shorten() {
	const crowded = 0.06 // of the room
	sum := 0.0
	for i := range t.wants {
		width, height, _ := t.m.Measure(t.wants[i].full, t.wants[i].small)
		sum += width * height
	}
	if t.m.Bounded && sum > crowded*t.m.Width*t.m.Height {
		for i := range t.wants {
			if w := &t.wants[i]; len(w.short) > 0 {
				w.full = w.short
			}
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

// put writes a label where that costs less than so much.
func (t *setter) put(f *field, w *want, runs []ink.Run, most float64) bool {
	width, height, rise := t.m.Measure(runs, w.small)
	half := ink.Vec{X: width / 2, Y: height / 2}
	point := t.m.Point
	var best ink.Box
	var from ink.Vec
	cheapest, reach := most, reachFar
	if t.m.Bounded {
		reach = reachNear
	}
	try := func(at, way ink.Vec, r, base float64) {
		cost := base + r
		far := r > leaderFrom
		if far {
			cost += costLeader
		}
		if cost >= cheapest {
			return
		}
		centre := at.Add(way.Scale(r*point + math.Abs(way.X)*half.X + math.Abs(way.Y)*half.Y))
		low := centre.Sub(half)
		if t.m.Snap != nil {
			low = t.m.Snap(low.Add(t.origin)).Sub(t.origin)
		}
		b := ink.Box{Low: low, High: low.Add(half.Scale(2))}
		wide := b.Grow(math.Min(clear*point, t.m.Fine))
		in := f.squares(wide)
		if !f.inside(b) || f.taken(t.apart(wide)) {
			return
		}
		if under := f.under(in); under >= solid {
			cost += costStroke * float64(1+under/solid)
		} else if under > 0 {
			cost += costThin
		}
		if cost >= cheapest {
			return
		}
		if (far || !t.m.Bounded && edgeOf(b, at).Sub(at).Len() > t.pt(leaderFrom)) && !t.reaches(f, b, at) {
			return
		}
		cheapest, best, from = cost, b, at
	}
	for k, sp := range w.spots {
		if w.lined {
			for _, r := range [2]float64{2.5, 7} {
				try(sp.at, sp.way, r, costSpot*float64(k))
			}
		}
		if w.lined && k > 0 { // leaders start from the middle
			continue
		}
		reach, aside := reach, costAside*float64(k)
		if k > 0 { // nor from beside an arrow
			reach = leaderFrom
		}
		for r := 2.5; r < reach && r < cheapest; r *= 1.6 {
			step := 1
			if r > leaderFrom && t.m.Bounded {
				step = 2
			}
			for i := 0; i < len(turns); i += step {
				turn := turns[i]
				if r+costTurned*turn.angle+aside >= cheapest {
					break
				}
				way := ink.Vec{X: sp.way.X*turn.cos - sp.way.Y*turn.sin, Y: sp.way.X*turn.sin + sp.way.Y*turn.cos}
				try(sp.at, way, r, costTurned*turn.angle+aside)
			}
		}
	}
	if cheapest >= most {
		return false
	}
	f.take(best)
	t.interrupt(best)
	t.leader(f, best, from)
	t.d.Texts = append(t.d.Texts, ink.Text{At: ink.Vec{X: best.Low.X, Y: best.Low.Y + rise}, Runs: runs, Size: paperSize(w.small) * point, Tone: w.tone, Of: w.of})
	return true
}

// apart is a label's box with the room before the next one on its line, on paper: the
// names of two things must not read as one.
func (t *setter) apart(b ink.Box) ink.Box {
	if !t.m.Bounded {
		b.Low.X, b.High.X = b.Low.X-t.pt(apart), b.High.X+t.pt(apart)
	}
	return b
}

// interrupt breaks the thin lines that a label lies on, as a drawing office does.
func (t *setter) interrupt(b ink.Box) {
	wide := b.Grow(clear * t.m.Point)
	if slices.ContainsFunc(t.lines, func(s stroke) bool { return s.weight == thin && wide.Crossed(s.a, s.b) > 0 }) {
		t.d.Area(ink.Paper, ink.None, 0, b.Low, ink.Vec{X: b.High.X, Y: b.Low.Y}, b.High, ink.Vec{X: b.Low.X, Y: b.High.Y})
	}
}

// edgeOf is the place of a label that is nearest to its thing.
func edgeOf(b ink.Box, at ink.Vec) ink.Vec {
	return ink.Vec{X: math.Max(b.Low.X, math.Min(at.X, b.High.X)), Y: math.Max(b.Low.Y, math.Min(at.Y, b.High.Y))}
}

// reaches tells that the line from a label to its place passes no other label, does not run
// along what is drawn, and on a screen, where lines are coarse, does not pass it.
func (t *setter) reaches(f *field, b ink.Box, at ink.Vec) bool {
	edge := edgeOf(b, at)
	const steps, along = 8, 4
	passed := 0
	for i := range steps {
		q := edge.Add(at.Sub(edge).Scale((float64(i) + 0.5) / steps))
		box := ink.Box{Low: q, High: q}.Grow(t.m.Fine)
		covered := f.under(f.squares(box)) >= solid
		if covered {
			passed++
		}
		if f.taken(box) || covered && t.m.Bounded && i < steps-2 {
			return false
		}
	}
	return t.m.Bounded || passed < along
}

// leader draws the line from a label that stands far off to its place.
func (t *setter) leader(f *field, b ink.Box, at ink.Vec) {
	edge := edgeOf(b, at)
	d := edge.Sub(at)
	if d.Len() <= t.pt(leaderFrom) {
		return
	}
	t.d.Line(ink.Faint, t.pt(0.4), at.Add(d.Unit().Scale(t.pt(2))), edge)
	if t.m.Bounded {
		return
	}
	const steps = 8
	for i := range steps { // no later label lies on it
		q := at.Add(d.Scale((float64(i) + 0.5) / steps))
		f.take(ink.Box{Low: q, High: q}.Grow(t.m.Fine))
	}
}
