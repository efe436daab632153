package plate

import (
	"math"
	"slices"

	"trivet/mechanics/ink"
)

// want is a label to be placed: at one of its spots, in that spot's direction
// rather than in another.
type want struct {
	spots []spot
	runs  []ink.Run
	size  float64
	tone  ink.Tone
	first int // labels with a lower number are placed first
}

// spot is a place that a label may stand at, and the way it would rather lie
// from there.
type spot struct{ at, way ink.Vec }

// The order in which labels are placed: those with the fewest places first.
const (
	dimensionFirst = iota
	forceFirst
	memberFirst
	pointLast
)

func near(at, way ink.Vec, runs []ink.Run, tone ink.Tone, first int) want {
	return want{spots: []spot{{at, way.Unit()}}, runs: runs, size: textSize, tone: tone, first: first}
}

// beside labels a line on either side, near its middle rather than its ends.
func beside(a, b ink.Vec, runs []ink.Run, first int) want {
	w := want{runs: runs, size: textSize, tone: ink.Dark, first: first}
	n := b.Sub(a).Unit().Across()
	if n.Y > 0 || n.Y == 0 && n.X < 0 {
		n = n.Scale(-1)
	}
	for _, t := range []float64{0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8} {
		at := a.Add(b.Sub(a).Scale(t))
		w.spots = append(w.spots, spot{at, n}, spot{at, n.Scale(-1)})
	}
	return w
}

// What a place costs, in points of distance from where the label belongs.
const (
	costCrossed = 6.0  // for each point of a line under it
	costTouch   = 30.0 // for lying on a line at all
	costSoft    = 12.0 // for lying on a thin line, at most what a good distance costs
	costTurned  = 6.0  // for each radian off the way it would rather lie
	costSpot    = 1.5  // for each spot down its list
	clear       = 1.6  // kept free round a label
	leaderFrom  = 16.0 // a label further off gets a line to its place
)

// placeLabels finds a place for each label in turn: the cheapest of rings of
// places round its spots that no other label has. The rings grow until there is
// one, so no two labels ever meet.
func (s *sketch) placeLabels() {
	order := make([]int, len(s.wants))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(a, b int) int { return s.wants[a].first - s.wants[b].first })
	f := field{s: s, lines: grid{}, labels: grid{}}
	for _, i := range order {
		w := s.wants[i]
		f.note()
		t, box, from := f.place(w)
		f.labels.put(len(f.taken), box.Grow(clear))
		f.taken = append(f.taken, box)
		s.interrupt(box)
		edge := ink.Vec{X: math.Max(box.Low.X, math.Min(from.X, box.High.X)), Y: math.Max(box.Low.Y, math.Min(from.Y, box.High.Y))}
		if edge.Sub(from).Len() > leaderFrom {
			s.line(ink.Faint, 0.4, from.Add(edge.Sub(from).Unit().Scale(2)), edge)
		}
		s.d.Texts = append(s.d.Texts, t)
	}
}

// interrupt breaks the thin lines that a label lies on, as a drawing office does.
func (s *sketch) interrupt(box ink.Box) {
	for _, g := range s.segs {
		if g.soft && box.Grow(clear).Crossed(g.a, g.b) > 0 {
			l, h := box.Low, box.High
			s.d.Area(ink.Paper, ink.None, 0, l, ink.Vec{X: h.X, Y: l.Y}, h, ink.Vec{X: l.X, Y: h.Y})
			return
		}
	}
}

// field is the paper while labels are placed.
type field struct {
	s             *sketch
	lines, labels grid
	noted         int // how many of the sketch's segments are in lines
	taken         []ink.Box
	seen          []int // in which question a segment was last counted
	asked         int
}

// note takes up the segments drawn since.
func (f *field) note() {
	for ; f.noted < len(f.s.segs); f.noted++ {
		g := f.s.segs[f.noted]
		f.lines.putLine(f.noted, g.a, g.b)
		f.seen = append(f.seen, 0)
	}
}

// free tells that no label meets a box.
func (f *field) free(b ink.Box) bool {
	b = b.Grow(clear)
	ok := true
	f.labels.near(b, func(i int) bool {
		ok = !b.Meets(f.taken[i])
		return ok
	})
	return ok
}

func (f *field) place(w want) (best ink.Text, box ink.Box, from ink.Vec) {
	probe := ink.Text{Runs: w.runs, Size: w.size, Tone: w.tone}
	shape := probe.Box()
	half := shape.High.Sub(shape.Low).Scale(0.5)
	mid := shape.Centre()
	const ways = 16
	cheapest := math.Inf(1)
	// What lies further off than the cheapest costs is no place.
	for r := 2.5; r < 4000 && r < cheapest; r *= 1.3 {
		for k, sp := range w.spots {
			base := math.Atan2(sp.way.Y, sp.way.X)
			for i := range ways {
				turn := float64((i+1)/2) * 2 * math.Pi / ways
				if i%2 == 0 {
					turn = -turn
				}
				sin, cos := math.Sincos(base + turn)
				centre := sp.at.Add(ink.Vec{X: cos, Y: sin}.Scale(r + math.Abs(cos)*half.X + math.Abs(sin)*half.Y))
				cost := r + costTurned*math.Abs(turn) + costSpot*float64(k)
				if cost >= cheapest {
					continue
				}
				b := ink.Box{Low: centre.Sub(half), High: centre.Add(half)}
				if !f.free(b) {
					continue
				}
				cost += f.under(b, cheapest-cost)
				if cost >= cheapest {
					continue
				}
				cheapest = cost
				best, box, from = probe, b, sp.at
				best.At = centre.Sub(mid)
			}
		}
	}
	return best, box, from
}

// under is what the lines below a box cost, up to a bound.
func (f *field) under(b ink.Box, bound float64) float64 {
	b = b.Grow(clear)
	cost := 0.0
	f.asked++
	f.lines.near(b, func(i int) bool {
		g := f.s.segs[i]
		if f.seen[i] == f.asked {
			return true
		}
		f.seen[i] = f.asked
		if c := b.Crossed(g.a, g.b); c > 0 {
			if g.soft {
				cost += costSoft
			} else {
				cost += costTouch + costCrossed*c
			}
		}
		return cost < bound
	})
	return cost
}

// pointNames labels the points that stand.
func (s *sketch) pointNames(which func(int) bool) {
	seen := map[[2]int]int{}
	for i, q := range s.p.Points {
		if !q.OK || !which(i) {
			continue
		}
		at := s.point(i)
		key := [2]int{int(math.Round(at.X)), int(math.Round(at.Y))}
		if k, ok := seen[key]; ok { // several points in one place share a label
			s.wants[k].runs = append(with(s.wants[k].runs, ", "), Symbol(q.Name)...)
			continue
		}
		seen[key] = len(s.wants)
		s.wants = append(s.wants, near(at, ink.Vec{X: -1, Y: -1}, Symbol(q.Name), ink.Dark, pointLast))
	}
}
