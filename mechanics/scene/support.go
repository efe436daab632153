package scene

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r3"

	"trivet/mechanics/drawing"
	"trivet/mechanics/problem"
	"trivet/mechanics/sheet"
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
	t := Thing{Kind: Support, Ref: j.Ref, At: []r3.Vec{at}, Symbol: symbols[name], Hanging: !grounded, Label: Label{Rank: OfSize}}
	switch {
	case holds.Needs == "normal":
		t.Along, t.Under = j.Normal, t.Symbol.Rests && b.leaving(at, func(o *Thing) bool { return o.Kind == Bar }) != nil
		if j.HasFace {
			t.At = append(t.At, b.p.Points[j.Face[0]].At, b.p.Points[j.Face[1]].At)
		}
		t.Slope = b.slope(j.Ref, "normal", j.Normal)
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
// level nor upright; where only what is typed is printed, of one that its cell states.
func (b *builder) slope(ref sheet.Ref, key string, normal r3.Vec) []drawing.Run {
	if b.opt.Typed != nil && b.opt.Typed(sheet.Ref{Table: ref.Table, Row: ref.Row, Key: key}) == "" {
		return nil
	}
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
	for bar := range slices.Chunk(tree(b.places(body)), 2) {
		for _, u := range b.ways(at, bar[0], bar[1]) {
			sum = r3.Add(sum, u)
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
	ways := b.leaving(at, (*Thing).straight)
	best, lowest := b.p.Up, math.Inf(1)
	for i, up := range []r3.Vec{b.p.Up, side, r3.Scale(-1, side), r3.Scale(-1, b.p.Up)} {
		cost, behind := 0.1*float64(i), 0 // members on the side of the ground
		for _, u := range ways {
			along := r3.Dot(u, up)
			if along < -slanted {
				behind++
			}
			if along < -beside {
				cost++
			}
		}
		if behind > 0 && behind == len(ways) { // what hangs there hangs from above
			cost++
		}
		if cost < lowest {
			best, lowest = up, cost
		}
	}
	return best
}

// anchors draws the ground behind fixed points that members end at: the wall or floor
// that the most of them share, else across the members.
func (b *builder) anchors() {
	ways := map[int]r3.Vec{} // by points: the sum of the directions in which members leave
	leaves := func(i int, way r3.Vec) {
		if b.placed(i) && b.p.Points[i].Body == problem.Ground {
			ways[i] = r3.Add(ways[i], way)
		}
	}
	for l := range b.paths() {
		for k, leg := range l.Legs {
			if leg.To < 0 {
				continue
			}
			if k > 0 && b.placed(leg.From) { // over a pulley
				q := &b.p.Points[leg.From]
				b.add(Thing{Kind: Support, Ref: q.Ref, At: []r3.Vec{q.At}, Symbol: pulley, Along: b.p.Up, Hanging: true})
			}
			leaves(leg.From, leg.U)
			leaves(leg.To, r3.Scale(-1, leg.U))
		}
	}
	low, high := b.p.Extent()
	walls := []r3.Vec{{X: 1}, {X: -1}, {Y: 1}, {Y: -1}, {Z: 1}, {Z: -1}} // the way from each into the space
	if b.p.Planar {
		walls = walls[:4]
	}
	on := func(into, q r3.Vec) bool {
		return math.Abs(r3.Dot(q, into)-math.Min(r3.Dot(low, into), r3.Dot(high, into))) <= Flat*b.out.Size
	}
	shared := make([]float64, len(walls))
	for i := range ways {
		for w, into := range walls {
			if on(into, b.p.Points[i].At) {
				shared[w]++
			}
		}
	}
	for i, q := range b.p.Points {
		way, used := ways[i]
		if !used {
			continue
		}
		best, max := unit(way), 0.0
		for w, into := range walls {
			score := r3.Dot(into, unit(way))
			behind := score < -0.2 // the members lie behind it
			if on(into, q.At) {
				score += shared[w]
			}
			if !behind && score > max {
				best, max = into, score
			}
		}
		b.add(Thing{Kind: Support, Ref: q.Ref, At: []r3.Vec{q.At}, Symbol: anchor, Along: best})
	}
}

// surfaces draws what particles touch.
func (b *builder) surfaces() {
	for i := range b.p.Lines {
		l := &b.p.Lines[i]
		if l.OK && l.Kind == problem.Contact && !l.Between() && len(l.Legs) > 0 && b.placed(l.Legs[0].From) {
			b.add(Thing{Kind: Support, Ref: l.Ref, At: []r3.Vec{b.p.Points[l.Legs[0].From].At}, Symbol: contact, Along: l.Legs[0].U, Slope: b.slope(l.Ref, "along", l.Legs[0].U)})
		}
	}
}
