package scene

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"trivet/mechanics/ink"
	"trivet/mechanics/problem"
	"trivet/units"
)

// support draws the symbol of a joint.
func (b *builder) support(j *problem.Joint) {
	if !j.OK || !b.placed(j.Point) {
		return
	}
	at := b.p.Points[j.Point].At
	grounded := j.Second == problem.Ground || j.First == problem.Ground
	name := j.Kind.String()
	holds := j.Kind.Where(b.p.Planar)
	t := Thing{Kind: Support, Ref: j.Ref, At: []r3.Vec{at}, Symbol: symbols[name], Hanging: !grounded, Label: Label{Rank: OfSize, Small: true}}
	switch {
	case holds.Needs == "normal":
		t.Along = j.Normal
		if j.HasFace {
			t.At = append(t.At, b.p.Points[j.Face[0]].At, b.p.Points[j.Face[1]].At)
		}
		t.Slope = b.slope(j.Normal)
		if j.HasFriction {
			t.Label.Runs = frictionOf(j.Friction)
		}
		if t.Hanging && t.Symbol.Half > 0 && len(t.Symbol.Strokes) == 0 { // a surface of another body
			t.Symbol = &Symbol{}
		}
	case holds.Needs == "axis":
		t.Along = j.Axis
		if t.Symbol = symbols[name]; !t.Symbol.Axis { // a pin in space
			t.Symbol = symbols["journal-bearing"]
		}
		if !grounded && t.Symbol.Half > 0 {
			t = Thing{Kind: Pin, Ref: j.Ref, At: t.At}
		}
	case !grounded && name == "fixed":
		t.Symbol, t.Along = weld, b.p.Up
	case !grounded:
		t = Thing{Kind: Pin, Ref: j.Ref, At: t.At}
	case name == "fixed":
		t.Along = b.outward(j, at)
	case name == "hinge": // in the plane
		t.Symbol, t.Along = symbols["pin"], b.free(at)
	default:
		t.Along = b.free(at)
	}
	b.add(t)
}

// slope is the angle of a surface to the horizontal, of one in the plane that is neither
// level nor upright.
func (b *builder) slope(normal r3.Vec) []ink.Run {
	angle := math.Acos(math.Max(-1, math.Min(1, math.Abs(r3.Dot(normal, b.p.Up)))))
	if !b.p.Planar || angle < Flat || angle > math.Pi/2-Flat {
		return nil
	}
	degrees := angle * 180 / math.Pi
	text := units.Compact(math.Round(1e6*degrees) / 1e6)
	if len(text) > 4 {
		text = units.Figures(degrees, b.p.Figures)
	}
	return Plain(text + "°")
}

// outward is the direction in which a body leaves the wall that it is built into: along
// its bar.
func (b *builder) outward(j *problem.Joint, at r3.Vec) r3.Vec {
	body := j.First
	if body == problem.Ground {
		body = j.Second
	}
	var sum r3.Vec
	for _, bar := range tree(b.places(body)) {
		for k := range bar {
			if r3.Norm(r3.Sub(bar[k], at)) <= Flat*b.out.Size {
				sum = r3.Add(sum, unit(r3.Sub(bar[1-k], bar[k])))
			}
		}
	}
	if u := unit(sum); u != (r3.Vec{}) {
		return u
	}
	return b.p.Up
}

// free is the direction from the ground to a support whose kind leaves it open: upwards,
// unless a member or a bar leaves the place downwards, to a side else.
func (b *builder) free(at r3.Vec) r3.Vec {
	const beside, slanted = 0.75, 0.3 // the cosines to a member from which a symbol would lie on it, and behind it
	side := r3.Vec{X: 1}
	if math.Abs(r3.Dot(side, b.p.Up)) > beside {
		side = r3.Vec{Y: 1}
	}
	best, least := b.p.Up, math.Inf(1)
	for i, up := range []r3.Vec{b.p.Up, side, r3.Scale(-1, side), r3.Scale(-1, b.p.Up)} {
		cost := 0.1 * float64(i)
		all, behind := 0, 0 // members at the place, and those on the side of the ground
		for _, t := range b.out.Things {
			if t.Kind != Bar && !t.Kind.Member() {
				continue
			}
			for k := range 2 {
				if r3.Norm(r3.Sub(t.At[k], at)) > Flat*b.out.Size {
					continue
				}
				along := r3.Dot(unit(r3.Sub(t.At[1-k], t.At[k])), up)
				if all++; along < -slanted {
					behind++
				}
				if along < -beside {
					cost++
				}
			}
		}
		if all > 0 && behind == all { // what hangs there hangs from above
			cost++
		}
		if cost < least {
			best, least = up, cost
		}
	}
	return best
}

// anchors draws the ground behind fixed points that members end at: the wall or floor
// that the most of them share, else across the members.
func (b *builder) anchors() {
	from := make([]r3.Vec, len(b.p.Points)) // the sum of the directions in which members leave
	used := make([]bool, len(b.p.Points))
	for i := range b.p.Lines {
		l := &b.p.Lines[i]
		if !l.OK || !l.Kind.Info().Path {
			continue
		}
		for k, leg := range l.Legs {
			if leg.To < 0 {
				continue
			}
			if k > 0 && b.placed(leg.From) { // over a pulley
				b.add(Thing{Kind: Support, Ref: b.p.Points[leg.From].Ref, At: []r3.Vec{b.p.Points[leg.From].At}, Symbol: pulley, Along: b.p.Up, Hanging: true})
			}
			for end, i := range [2]int{leg.From, leg.To} {
				if b.placed(i) && b.p.Points[i].Body == problem.Ground {
					from[i], used[i] = r3.Add(from[i], r3.Scale([2]float64{1, -1}[end], leg.U)), true
				}
			}
		}
	}
	low, high := b.p.Extent()
	walls := [6]r3.Vec{{X: 1}, {X: -1}, {Y: 1}, {Y: -1}, {Z: 1}, {Z: -1}} // the way from each into the space
	on := func(wall int, q r3.Vec) bool {
		edge := low
		if wall%2 == 1 {
			edge = high
		}
		return math.Abs(r3.Dot(r3.Sub(q, edge), walls[wall])) <= Flat*b.out.Size
	}
	var shared [6]int
	for i := range from {
		for w := range walls {
			if used[i] && on(w, b.p.Points[i].At) {
				shared[w]++
			}
		}
	}
	for i := range from {
		if !used[i] {
			continue
		}
		at, best, most := b.p.Points[i].At, r3.Vec{}, 0.0
		for w, into := range walls {
			if b.p.Planar && into.Z != 0 {
				continue
			}
			score := r3.Dot(into, unit(from[i]))
			if score < -0.2 {
				continue // the members lie behind it
			}
			if on(w, at) {
				score += float64(shared[w])
			}
			if score > most {
				best, most = into, score
			}
		}
		if best == (r3.Vec{}) {
			best = unit(from[i])
		}
		b.add(Thing{Kind: Support, Ref: b.p.Points[i].Ref, At: []r3.Vec{at}, Symbol: anchor, Along: best})
	}
}

// surfaces draws what particles touch.
func (b *builder) surfaces() {
	for i := range b.p.Lines {
		l := &b.p.Lines[i]
		if l.OK && l.Kind == problem.Contact && !l.Between() && len(l.Legs) > 0 && b.placed(l.Legs[0].From) {
			b.add(Thing{Kind: Support, Ref: l.Ref, At: []r3.Vec{b.p.Points[l.Legs[0].From].At}, Symbol: contact, Along: l.Legs[0].U, Slope: b.slope(l.Legs[0].U)})
		}
	}
}
