package statics

import (
	"fmt"
	"math/big"
	"math/rand/v2"
	"strings"
)

// lattice is a problem of rigid bodies on a lattice of whole numbers, where supports
// depend on each other more often than not, kept as a sheet and as ΣF = 0 and
// ΣM = 0 about the origin in exact numbers. A direction is as long as its whole
// numbers say: the verdict does not ask for unit vectors.
type lattice struct {
	rng    *rand.Rand
	planar bool
	bodies int
	system *exactSystem
	rows   map[string][]string
	serial int
	spans  [][]latticeAct // what unknowns exert, for loads that they can balance
}

type spot [3]int64

type latticeAct struct {
	body     int
	at, f, c spot
}

func newLattice(rng *rand.Rand) *lattice {
	l := &lattice{rng: rng, planar: rng.IntN(2) == 0, bodies: 1 + rng.IntN(3), rows: map[string][]string{}}
	l.system = newExactSystem(l.bodies * l.each())
	for b := range l.bodies {
		l.point(b) // bodies stand in the order of their first points
		l.point(b)
	}
	return l
}

func (l *lattice) each() int {
	if l.planar {
		return 3
	}
	return 6
}

func (l *lattice) spot(most int) (v spot) {
	for v == (spot{}) {
		for k := range 3 {
			if k < 2 || !l.planar {
				v[k] = int64(l.rng.IntN(2*most+1) - most)
			}
		}
	}
	return v
}

func (l *lattice) typed(v spot) string {
	if l.planar {
		return fmt.Sprintf("%d, %d", v[0], v[1])
	}
	return fmt.Sprintf("%d, %d, %d", v[0], v[1], v[2])
}

func (l *lattice) name(stem string) string {
	l.serial++
	return fmt.Sprint(stem, l.serial)
}

func (l *lattice) row(table, format string, args ...any) {
	l.rows[table] = append(l.rows[table], fmt.Sprintf(format, args...))
}

func (l *lattice) point(on ...int) (string, spot) {
	name, at := l.name("P"), l.spot(2)
	names := make([]string, len(on))
	for k, b := range on {
		names[k] = fmt.Sprint("body", b)
	}
	l.row("points", `%s = { at = "%s", on = "%s" }`, name, l.typed(at), strings.Join(names, " "))
	return name, at
}

func crossed(a, b spot) spot {
	return spot{a[1]*b[2] - a[2]*b[1], a[2]*b[0] - a[0]*b[2], a[0]*b[1] - a[1]*b[0]}
}

// write adds an act times a number to a column.
func (l *lattice) write(col []*big.Rat, a latticeAct, times int64) {
	m := crossed(a.at, a.f)
	six := []int64{a.f[0], a.f[1], a.f[2], m[0] + a.c[0], m[1] + a.c[1], m[2] + a.c[2]}
	if l.planar {
		six = []int64{a.f[0], a.f[1], m[2] + a.c[2]}
	}
	for k, x := range six {
		c := col[a.body*len(six)+k]
		c.Add(c, big.NewRat(times*x, 1))
	}
}

func (l *lattice) unknown(name string, acts ...latticeAct) {
	col := l.system.column(name)
	for _, a := range acts {
		l.write(col, a, 1)
	}
	l.spans = append(l.spans, acts)
}

func opposed(v spot) spot { return spot{-v[0], -v[1], -v[2]} }

// held adds the unknowns of a joint: forces and moments along axes.
func (l *lattice) held(name string, at spot, bodies []int, forces, moments string) {
	pair := func(force bool, d spot) (acts []latticeAct) {
		for side, b := range bodies {
			v := d
			if side == 1 {
				v = opposed(d)
			}
			if force {
				acts = append(acts, latticeAct{body: b, at: at, f: v})
			} else {
				acts = append(acts, latticeAct{body: b, at: at, c: v})
			}
		}
		return acts
	}
	axis := func(c rune) (d spot) { d[c-'x'] = 1; return d }
	for _, c := range forces {
		l.unknown(name+string(c), pair(true, axis(c))...)
	}
	for _, c := range moments {
		l.unknown("M"+name+string(c), pair(false, axis(c))...)
	}
}

// support adds a joint or a link to a body.
func (l *lattice) support(b int) {
	bodies := []int{b}
	if other := l.rng.IntN(2 * l.bodies); other < l.bodies && other != b {
		bodies = append(bodies, other)
	}
	name := l.name("J")
	at, where := l.point(bodies...)
	join := func(kind, more, forces, moments string) {
		l.row("joints", `%s = { kind = "%s", at = "%s"%s }`, name, kind, at, more)
		l.held(name, where, bodies, forces, moments)
	}
	axis := l.rng.IntN(3)
	across := strings.Replace("xyz", "xyz"[axis:axis+1], "", 1)
	along := fmt.Sprintf(`, axis = "+%c"`, "xyz"[axis])
	switch kind := l.rng.IntN(9); {
	case kind == 0 && l.planar:
		join("pin", "", "xy", "")
	case kind == 0:
		join("ball-and-socket", "", "xyz", "")
	case kind == 1 && l.planar:
		join("fixed", "", "xy", "z")
	case kind == 1:
		join("hinge", along, "xyz", across)
	case kind == 2 && !l.planar:
		join("hinge", along+`, moments = "none"`, "xyz", "")
	case kind == 3 && !l.planar:
		join("journal", along+`, moments = "none"`, across, "")
	case kind == 4 && !l.planar:
		join("collar", along, across, across)
	case kind == 5 && !l.planar:
		join("slider", along, across, "")
	case kind == 5:
		n := l.spot(1)
		l.row("joints", `%s = { kind = "slider", at = "%s", axis = "(%s)" }`, name, at, l.typed(n))
		l.single(name, where, bodies, spot{-n[1], n[0]})
	default:
		n := l.spot(1)
		if l.rng.IntN(2) == 0 {
			l.row("joints", `%s = { kind = "roller", at = "%s", normal = "(%s)" }`, name, at, l.typed(n))
			l.single(name, where, bodies, n)
			return
		}
		far := spot{where[0] + n[0], where[1] + n[1], where[2] + n[2]}
		l.row("points", `%s = "%s"`, "G"+name, l.typed(far))
		l.row("lines", `%s = { kind = "link", path = "%s %s", on = "body%d" }`, name, at, "G"+name, b)
		l.single(name, where, []int{b}, n)
	}
}

func (l *lattice) single(name string, at spot, bodies []int, d spot) {
	acts := []latticeAct{{body: bodies[0], at: at, f: d}}
	if len(bodies) > 1 {
		acts = append(acts, latticeAct{body: bodies[1], at: at, f: opposed(d)})
	}
	l.unknown(name, acts...)
}

// load puts a force and a couple on a body.
func (l *lattice) load(a latticeAct, times int64) {
	scaled := func(v spot) spot { return spot{times * v[0], times * v[1], times * v[2]} }
	col := zeros(l.system.rows)
	l.write(col, a, times)
	for i := range col {
		l.system.right[i].Sub(l.system.right[i], col[i])
	}
	if a.f != (spot{}) {
		name := l.name("P")
		l.row("points", `%s = { at = "%s", on = "body%d" }`, name, l.typed(a.at), a.body)
		l.row("lines", `%s = { kind = "force", at = "%s", components = "(%s) N" }`, l.name("F"), name, l.typed(scaled(a.f)))
	}
	if a.c != (spot{}) {
		c := scaled(a.c)
		l.row("couples", `%s = { on = "body%d", components = "(%d, %d, %d) N m" }`, l.name("C"), a.body, c[0], c[1], c[2])
	}
}

func (l *lattice) text() string {
	var b strings.Builder
	if l.planar {
		b.WriteString("plane = \"xy\"\n")
	}
	for _, table := range []string{"points", "lines", "joints", "couples"} {
		if len(l.rows[table]) > 0 {
			fmt.Fprintf(&b, "[%s]\n%s\n", table, strings.Join(l.rows[table], "\n"))
		}
	}
	return b.String()
}
