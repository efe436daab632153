package grade

import (
	"fmt"
	"math"
	"reflect"
	"slices"
	"strings"

	"gonum.org/v1/gonum/spatial/r3"

	"trivet/mechanics/problem"
	"trivet/mechanics/say"
	"trivet/mechanics/sheet"
	"trivet/mechanics/statics"
	"trivet/units"
)

// mistake is a common one, and the sheet solved with it. Says completes "as if".
// Plain ones are those that are made most; the others are looked at only where no
// plain one fits.
type mistake struct {
	says     []string // of several mistakes that come to the same
	plain    bool
	solution *statics.Solution
	values   map[string]float64 // of the results that were asked for so far
}

// value gives a result as it is with the mistake, NaN where it has none. It goes by
// the name, since a problem read anew may count otherwise.
func (m *mistake) value(name string) float64 {
	v, known := m.values[name]
	if known {
		return v
	}
	v = math.NaN()
	if q, err := problem.ParseQuery(m.solution.Problem, name); err == nil {
		v = valueOf(m.solution, q)
	}
	m.values[name] = v
	return v
}

// valueOf is a result of a solution, NaN where it has none.
func valueOf(s *statics.Solution, q problem.Query) float64 {
	if x, none := s.Evaluate(q); none == nil && !math.IsInf(x, 0) {
		return x
	}
	return math.NaN()
}

const (
	// maxMistakes bounds what is solved for a sheet; with a hundred unknowns each takes
	// some milliseconds.
	maxMistakes = 240
	// maxUnknowns is the size of a system beyond which no mistakes are solved.
	maxUnknowns = 60
	// alike is how near the values of two mistakes are, relative to the largest, where
	// they are the same to anybody who sees numbers alone.
	alike = 1e-6
	// skew is the smallest component of a unit vector that counts: with a smaller one
	// there is no sine and cosine to exchange.
	skew = 1e-6
	// smooth is a coefficient of friction that no result shows: that of a belt is
	// greater than zero.
	smooth = "1e-12"
)

// allMistakes solves the sheet with each common mistake in it.
func (k *Key) allMistakes() []mistake {
	if s := k.solution; len(s.X) > maxUnknowns || !s.Unique() && !s.Single() {
		return nil
	}
	m := &maker{k: k, p: k.solution.Problem, reader: problem.NewReader(), plain: true, left: maxMistakes}
	m.made = []mistake{{solution: k.solution, values: map[string]float64{}}} // none: what makes no difference is joined to it
	m.loads()
	m.diagrams()
	m.gravity()
	m.pulleys()
	m.joints()
	m.belts()
	m.angles()
	m.radians()
	m.unitVectors()
	m.otherBodies()
	m.plain = m.p.Planar // in space there is more to exchange
	m.directions()
	m.plain = false
	m.factors()
	m.arms()
	m.coordinates()
	return m.made[1:]
}

// maker makes the mistakes of a problem.
type maker struct {
	k      *Key
	p      *problem.Problem
	reader *problem.Reader
	plain  bool
	left   int
	made   []mistake
}

// solve solves a problem with a mistake in it. What comes out as another does is
// joined to it, or left out where that one is plain and this one is not.
func (m *maker) solve(p *problem.Problem, says string) {
	if m.left--; m.left < 0 {
		return
	}
	s := statics.Solve(p)
	if !s.Unique() && !s.Single() || len(s.X) != len(m.k.solution.X) {
		return
	}
	made := mistake{says: []string{says}, plain: m.plain, solution: s, values: map[string]float64{}}
	for i := range m.made {
		if o := &m.made[i]; m.k.equal(&made, o) {
			if o.plain == m.plain {
				o.says = append(o.says, says)
			}
			return
		}
	}
	m.made = append(m.made, made)
}

// equal tells whether two mistakes come to the same unknowns and results asked for.
func (k *Key) equal(a, b *mistake) bool {
	p := k.solution.Problem
	differs := func(name string, d units.Dim) bool {
		x, y := a.value(name), b.value(name)
		return math.IsNaN(x) != math.IsNaN(y) || math.Abs(x-y) > alike*k.largest[d]
	}
	return !slices.ContainsFunc(p.Unknowns, func(u problem.Unknown) bool { return differs(u.Name, u.Dim) }) &&
		!slices.ContainsFunc(p.Asked, func(q problem.Query) bool { return differs(q.Name, q.Dim) })
}

// change solves the problem with its acts changed, where they were.
func (m *maker) change(says string, by func(p *problem.Problem)) {
	p, _ := m.reader.Read(m.k.sheet)
	by(p)
	if !reflect.DeepEqual(slices.Collect(p.Acts()), slices.Collect(m.p.Acts())) {
		m.solve(p, says)
	}
}

// acts solves the problem with all that a source exerts changed.
func (m *maker) acts(from problem.Source, says string, by func(p *problem.Problem, a *problem.Act)) {
	m.change(says, func(p *problem.Problem) {
		for of, a := range p.Exerted() {
			if of == from {
				by(p, a)
			}
		}
	})
}

// retype solves the sheet with another text in a cell. Where the row holds a bare value
// that is the cell, whatever its key.
func (m *maker) retype(table, row, key, text, says string) {
	m.read(m.k.sheet.With(sheet.Ref{Table: table, Row: row, Key: m.cell(table, row, key)}, text), says)
}

// cell is the key of a value, blank where the row holds a bare one.
func (m *maker) cell(table, row, key string) string {
	if r, _ := m.k.sheet.Table(table).Row(row); r.Text("") != "" {
		return ""
	}
	return key
}

// read solves another sheet of the same unknowns.
func (m *maker) read(s *sheet.Sheet, says string) {
	p, errs := m.reader.Read(s)
	if len(errs) == 0 && len(p.Unknowns) == len(m.p.Unknowns) {
		m.solve(p, says)
	}
}

// called names what exerts a force, in a sentence.
func (m *maker) called(from problem.Source) string {
	return map[problem.Thing]string{problem.ACouple: "the couple ", problem.ABody: "the "}[from.Thing] + m.p.NameOf(from)
}

// loads: one left out, or the other way round; the resultant of a distributed one in a
// wrong place.
func (m *maker) loads() {
	scaled := func(from problem.Source, factor float64, says string) {
		m.acts(from, m.called(from)+says, func(_ *problem.Problem, a *problem.Act) {
			a.Force.Const, a.Couple.Const = r3.Scale(factor, a.Force.Const), r3.Scale(factor, a.Couple.Const)
		})
	}
	for _, from := range m.known() {
		scaled(from, 0, " were left out")
		switch from.Thing {
		case problem.ALine:
			scaled(from, -1, " acted the other way")
		case problem.ACouple:
			scaled(from, -1, " turned the other way")
		case problem.ALoad:
			if d := m.p.Loads[from.Index]; d.Total != 0 && d.Length > 0 {
				m.resultant(from, d.Length/2, "in the middle")
				m.resultant(from, d.Length-d.Distance, "as far from the other end")
			}
		}
	}
}

// known are what may exert a known force or couple.
func (m *maker) known() (all []problem.Source) {
	for from := range m.p.Exerted() {
		if from.Thing != problem.AJoint && (len(all) == 0 || all[len(all)-1] != from) {
			all = append(all, from)
		}
	}
	return all
}

// resultant puts that of a distributed load at another distance from its start.
func (m *maker) resultant(of problem.Source, distance float64, says string) {
	m.acts(of, "the resultant of "+m.called(of)+" acted "+says, func(p *problem.Problem, a *problem.Act) {
		d := &p.Loads[of.Index]
		from, to := p.Points[d.From].At, p.Points[d.To].At
		d.Distance, a.At = distance, r3.Add(from, r3.Scale(distance/d.Length, r3.Sub(to, from)))
	})
}

// factors: a load in a wrong unit, twice or half, and a force that is multiplied by g or
// divided by it.
func (m *maker) factors() {
	g := m.p.G
	for _, by := range []struct {
		factor float64
		says   string
	}{{1000, "were 1000 times as large"}, {0.001, "were a thousandth"}, {2, "were twice as large"}, {0.5, "were half as large"}, {g, "were multiplied by g"}, {1 / g, "were divided by g"}} {
		if by.factor == 0 || math.IsInf(by.factor, 0) {
			continue
		}
		for _, from := range m.known() {
			m.acts(from, m.called(from)+" "+by.says, func(_ *problem.Problem, a *problem.Act) {
				a.Force.Const, a.Couple.Const = r3.Scale(by.factor, a.Force.Const), r3.Scale(by.factor, a.Couple.Const)
			})
		}
	}
}

// diagrams: the resultant of a distributed load that is its intensity, or that of a rectangle
// where it is a triangle; or a load over another length.
func (m *maker) diagrams() {
	for i := range m.p.Loads {
		d := &m.p.Loads[i]
		if d.Total == 0 || d.Length == 0 {
			continue
		}
		total := func(to float64, says string) {
			m.acts(problem.Source{Thing: problem.ALoad, Index: i}, says, func(p *problem.Problem, a *problem.Act) {
				p.Loads[i].Total = to
				a.Force.Const = r3.Scale(to/d.Total, a.Force.Const)
			})
		}
		from, to := d.IntensityAt(0), d.IntensityAt(d.Length)
		greatest := math.Copysign(max(math.Abs(from), math.Abs(to)), d.Total)
		total(greatest*m.p.Units.Length.Factor, "the intensity of "+d.Name+" were its resultant")
		if from != to {
			total(greatest*d.Length, "the intensity of "+d.Name+" were its greatest all along")
		}
		ends := [2]string{m.p.Points[d.From].Name, m.p.Points[d.To].Name}
		along := r3.Sub(m.p.Points[d.To].At, m.p.Points[d.From].At)
		for at := range m.p.Points {
			q := &m.p.Points[at]
			v := r3.Sub(q.At, m.p.Points[d.From].At)
			if at == d.From || at == d.To || !q.OK || r3.Norm(r3.Cross(v, along)) > skew*d.Length*d.Length {
				continue
			}
			for _, path := range [][2]string{{ends[0], q.Name}, {q.Name, ends[1]}} {
				m.retype("distributed", d.Name, "path", path[0]+" "+path[1], d.Name+" extended from "+path[0]+" to "+path[1])
			}
		}
	}
}

// radians: angles in degrees that are taken as radians, of all givens and of each line.
func (m *maker) radians() {
	s := m.k.sheet
	for _, g := range m.p.Givens {
		if g.Value.Dim == units.Angle && g.Value.N == 1 {
			s = s.With(sheet.Ref{Table: "given", Row: g.Name, Key: m.cell("given", g.Name, "value")}, fmt.Sprintf("%.12g rad", g.Value.V[0]*180/math.Pi))
		}
	}
	if s != m.k.sheet {
		m.read(s, "degrees were taken as radians")
	}
	if !m.p.Planar {
		return
	}
	for i, l := range m.p.Lines {
		if len(l.Legs) != 1 || l.Legs[0].Typed.As != problem.AsPolar {
			continue
		}
		u := l.Legs[0].U
		if min(math.Abs(u.X), math.Abs(u.Y)) < skew {
			continue
		}
		sin, cos := math.Sincos(math.Atan2(math.Abs(u.Y), math.Abs(u.X)) * 180 / math.Pi)
		m.acts(problem.Source{Thing: problem.ALine, Index: i}, "the degrees of "+l.Name+" were taken as radians", func(_ *problem.Problem, a *problem.Act) {
			a.Force = a.Force.Map(func(v r3.Vec) r3.Vec {
				return r3.Vec{X: math.Copysign(r3.Norm(v), v.X) * cos, Y: math.Copysign(r3.Norm(v), v.Y) * sin}
			})
		})
	}
}

// unitVectors: r taken for the unit vector of one unknown line or of all, and a coordinate
// left out of the length.
func (m *maker) unitVectors() {
	lines := say.Places(len(m.p.Lines), func(i int) bool {
		l := &m.p.Lines[i]
		return len(l.Legs) == 1 && l.Legs[0].To >= 0 && l.Magnitude.Alone() >= 0
	})
	scaled := func(lines []int, by func(leg *problem.Leg) float64, says string) {
		m.change(says, func(p *problem.Problem) {
			for _, i := range lines {
				factor := by(&p.Lines[i].Legs[0])
				for k := range p.Lines[i].Acts {
					a := &p.Lines[i].Acts[k]
					a.Force = a.Force.Map(func(v r3.Vec) r3.Vec { return r3.Scale(factor, v) })
				}
			}
		})
	}
	each := func(by func(leg *problem.Leg) float64, all, one string) {
		if len(lines) > 1 {
			scaled(lines, by, all)
		}
		for _, i := range lines {
			scaled([]int{i}, by, fmt.Sprintf(one, m.p.Lines[i].Name))
		}
	}
	each(func(leg *problem.Leg) float64 { return leg.Length / m.p.Units.Length.Factor }, "the vectors r were taken for unit vectors", "the vector r of %s were taken for its unit vector")
	for axis, name := range "xyz" {
		each(func(leg *problem.Leg) float64 {
			r := [3]float64{leg.R.X, leg.R.Y, leg.R.Z}
			r[axis] = 0
			if d := math.Hypot(math.Hypot(r[0], r[1]), r[2]); d > 0 {
				return leg.Length / d
			}
			return 1
		}, string(name)+" were left out of the lengths", string(name)+" were left out of the length of %s")
	}
}

// otherBodies: a joint whose forces have the same sense on both bodies.
func (m *maker) otherBodies() {
	for i, j := range m.p.Joints {
		m.acts(problem.Source{Thing: problem.AJoint, Index: i}, "the forces at "+j.Name+" had the same sense on both bodies", func(_ *problem.Problem, a *problem.Act) {
			if a.Body != j.Acts[0].Body {
				a.Force = a.Force.Opposite()
			}
		})
	}
}

// gravity: masses taken for forces, one or all of them, and another g.
func (m *maker) gravity() {
	masses := 0
	for _, l := range m.p.Lines {
		if l.Mass == 0 {
			continue
		}
		masses++
		row, _ := m.k.sheet.Table("lines").Row(l.Name)
		text := row.Text("magnitude")
		says := text + " were a force, without g"
		if number, kg := strings.CutSuffix(text, "kg"); kg {
			says = text + " were " + strings.TrimSpace(number) + " N"
		}
		m.retype("lines", l.Name, "magnitude", "("+text+") * 1 m/s^2", says)
		m.retype("lines", l.Name, "magnitude", fmt.Sprintf("(%s) * %.15g m/s^2", text, m.p.G*m.p.G), text+" were multiplied by g twice")
	}
	if masses == 0 {
		return
	}
	if masses > 1 {
		m.retype("", "g", "", "1 m/s^2", "all masses were forces, without g")
	}
	for _, g := range []string{"10 m/s^2", "9.8 m/s^2"} {
		m.retype("", "g", "", g, "g were "+g)
	}
}

// exchange exchanges the sizes of two components and keeps their signs, as who takes
// the sine for the cosine does.
func exchange(v r3.Vec, of [2]int) r3.Vec {
	a, b := of[0], of[1]
	c := [3]float64{v.X, v.Y, v.Z}
	x, y := math.Abs(c[a]), math.Abs(c[b])
	if min(x, y, math.Abs(x-y)) < skew*r3.Norm(v) {
		return v
	}
	c[a], c[b] = math.Copysign(y, c[a]), math.Copysign(x, c[b])
	return r3.Vec{X: c[0], Y: c[1], Z: c[2]}
}

// pulleys: a rope over one that pulls but once.
func (m *maker) pulleys() {
	for i, l := range m.p.Lines {
		for k, a := range l.Acts {
			at := slices.Index(l.Path, a.Point)
			if at <= 0 || at >= len(l.Path)-1 {
				continue
			}
			for _, to := range []int{at - 1, at + 1} {
				u := l.Legs[min(at, to)].U
				if to < at {
					u = r3.Scale(-1, u)
				}
				says := fmt.Sprintf("%s pulled at %s towards %s alone", l.Name, m.p.Points[l.Path[at]].Name, m.p.Points[l.Path[to]].Name)
				m.change(says, func(p *problem.Problem) {
					a := &p.Lines[i].Acts[k]
					a.Force = l.Magnitude.Along(u)
				})
			}
		}
	}
}

// directions: two components of one exchanged, in the plane sine and cosine.
func (m *maker) directions() {
	for i, l := range m.p.Lines {
		for _, c := range [][2]int{{0, 1}, {0, 2}, {1, 2}} {
			says := fmt.Sprintf("%c and %c of %s's direction were exchanged", "xyz"[c[0]], "xyz"[c[1]], l.Name)
			if m.p.Planar {
				says = "sine and cosine of " + l.Name + " were exchanged"
			}
			if len(l.Legs) == 1 && !(m.p.Planar && c[1] == 2) {
				m.acts(problem.Source{Thing: problem.ALine, Index: i}, says, func(p *problem.Problem, a *problem.Act) {
					p.Lines[i].Legs[0].U = exchange(l.Legs[0].U, c)
					a.Force = a.Force.Map(func(v r3.Vec) r3.Vec { return exchange(v, c) })
				})
			}
		}
	}
}

// joints: sine and cosine of a skew normal exchanged, and impending friction that
// acts the other way.
func (m *maker) joints() {
	for i, j := range m.p.Joints {
		n := j.Normal
		turned := func(says string, by func(v r3.Vec) r3.Vec) {
			m.acts(problem.Source{Thing: problem.AJoint, Index: i}, says, func(_ *problem.Problem, a *problem.Act) { a.Force = a.Force.Map(by) })
		}
		switch {
		case j.Impending:
			turned("friction at "+j.Name+" acted the other way", func(v r3.Vec) r3.Vec { return r3.Sub(r3.Scale(2*r3.Dot(v, n), n), v) })
		case m.p.Planar && n != (r3.Vec{}):
			turned("sine and cosine of "+j.Name+"'s normal were exchanged", func(v r3.Vec) r3.Vec { return exchange(v, [2]int{0, 1}) })
		}
	}
}

// belts: the tight side taken for the slack one, and the drum for a smooth one.
func (m *maker) belts() {
	for _, b := range m.p.Belts() {
		if b.Tight >= 0 {
			m.retype("lines", b.Name, "tight", m.p.Lines[b.Slack()].Name, "the tight and the slack side of belt "+b.Name+" were exchanged")
			m.retype("lines", b.Name, "friction", smooth, "the drum of belt "+b.Name+" had no friction")
		}
	}
}

// angles: an angle that is given taken from the other axis.
func (m *maker) angles() {
	for _, g := range m.p.Givens {
		if g.Value.Dim == units.Angle && g.Value.N == 1 {
			text := fmt.Sprintf("%.12g deg", 90-g.Value.V[0]*180/math.Pi)
			m.retype("given", g.Name, "value", text, "sine and cosine of "+g.Name+" were exchanged")
		}
	}
}

// arms: a force on a rigid body that acts at another point of it.
func (m *maker) arms() {
	act := -1
	for from, a := range m.p.Exerted() {
		act++
		body := m.p.Bodies[a.Body]
		if body.Particle || from.Thing != problem.ALine && from.Thing != problem.ABody {
			continue
		}
		for _, at := range body.Points {
			if point := m.p.Points[at]; point.At != a.At {
				m.change(m.called(from)+" acted at "+point.Name, func(p *problem.Problem) {
					moved := slices.Collect(p.Acts())[act]
					moved.At, moved.Point = point.At, at
				})
			}
		}
	}
}

// coordinates: two of a point exchanged, or one with the other sign.
func (m *maker) coordinates() {
	axes := 3
	if m.p.Planar {
		axes = 2
	}
	for _, pt := range m.p.Points {
		if _, named := m.k.sheet.Table("points").Row(pt.Name); !named {
			continue
		}
		at := [3]float64{pt.At.X, pt.At.Y, pt.At.Z}
		move := func(to [3]float64, says string) {
			parts := say.Each(to[:axes], func(c float64) string { return fmt.Sprintf("%.15g m", c) })
			if to != at {
				m.retype("points", pt.Name, "at", strings.Join(parts, ", "), says)
			}
		}
		for a := range axes {
			for b := a + 1; b < axes; b++ {
				c := at
				c[a], c[b] = c[b], c[a]
				move(c, fmt.Sprintf("%c and %c of %s were exchanged", "xyz"[a], "xyz"[b], pt.Name))
			}
		}
		for a := range axes {
			c := at
			c[a] = -c[a]
			move(c, fmt.Sprintf("%c of %s had the other sign", "xyz"[a], pt.Name))
		}
	}
}
