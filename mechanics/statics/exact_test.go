package statics

import (
	"fmt"
	"math"
	"math/big"
	"math/rand/v2"
	"testing"

	"trivet/fixtures/long"
)

// agreement is how far a solution may be from the exact one, relative to the
// largest value: what the project's contract asks for.
const agreement = 1e-10

// maker makes random rigs.
type maker struct {
	rng    *rand.Rand
	plane  [][4]int64
	space  [][4]int64
	serial int
}

func newMaker(seed uint64) *maker {
	return &maker{rng: rand.New(rand.NewPCG(seed, 2)), plane: quads(true, 15), space: quads(false, 7)}
}

func (m *maker) vector(r *rig) [4]int64 {
	if r.planar {
		return pick(m.rng, m.plane...)
	}
	return pick(m.rng, m.space...)
}

func (m *maker) name(stem string) string {
	m.serial++
	return fmt.Sprintf("%s%d", stem, m.serial)
}

func one() *big.Rat { return big.NewRat(1, 1) }

// own makes the magnitude of a line an unknown of its own.
func (l *rigLine) own(m *maker) {
	l.terms = map[string]*big.Rat{l.name: one()}
	l.magnitude = pick(m.rng, "", "", "?", l.name)
}

// toGround adds a line from a particle to a new point of the ground.
func (m *maker) toGround(r *rig, from int) *rigLine {
	l := rigLine{name: m.name("T"), kind: pick(m.rng, "link", "link", "strut", "cable", "spring", "force", "contact")}
	v := m.vector(r)
	if l.kind == "force" || l.kind == "contact" {
		l.at, l.along, l.size = from, v[:3], v[3]
	} else {
		at, length := r.off(from, v, big.NewRat(int64(1+m.rng.IntN(4)), pick(m.rng, int64(1), 2, 4)))
		to := r.point(false, at)
		l.path, l.legs = []int{from, to}, []*big.Rat{length}
		if m.rng.IntN(2) == 0 {
			l.path = []int{to, from}
		}
	}
	l.own(m)
	r.lines = append(r.lines, l)
	return &r.lines[len(r.lines)-1]
}

// particles places n particles so that some of them are joined by rational legs,
// and joins them.
func (m *maker) particles(r *rig, n int) (joined int) {
	origin := [3]*big.Rat{}
	for k := range origin {
		origin[k] = new(big.Rat)
		if k < r.dim() {
			origin[k].SetInt64(int64(m.rng.IntN(11) - 5))
		}
	}
	r.point(true, origin)
	for i := 1; i < n; i++ {
		parent := m.rng.IntN(i)
		at, _ := r.off(parent, m.vector(r), one())
		r.point(true, at)
	}
	for i := range n {
		for j := range i {
			var sum int64
			for k := range 3 {
				d := new(big.Rat).Sub(r.points[i].at[k], r.points[j].at[k]).Num().Int64()
				sum += d * d
			}
			if d := root(sum); d > 0 && joined < n*r.dim()-1 {
				l := rigLine{name: m.name("L"), kind: pick(m.rng, "link", "strut", "cable"), path: []int{i, j}, legs: []*big.Rat{big.NewRat(d, 1)}}
				l.own(m)
				r.lines = append(r.lines, l)
				joined++
			}
		}
	}
	return joined
}

// rope runs over a particle, from ground to ground, with one tension.
func (m *maker) rope(r *rig, over int) {
	a, la := r.off(over, m.vector(r), one())
	b, lb := r.off(over, m.vector(r), big.NewRat(1, 2))
	l := rigLine{name: m.name("R"), kind: "cable", path: []int{r.point(false, a), over, r.point(false, b)}, legs: []*big.Rat{la, lb}}
	l.own(m)
	r.lines = append(r.lines, l)
}

// tie adds a line whose magnitude follows another's.
func (m *maker) tie(r *rig, particles int) {
	name := ""
	for _, l := range r.lines {
		if len(l.terms) == 1 && l.terms[l.name] != nil && (name == "" || m.rng.IntN(3) == 0) {
			name = l.name
		}
	}
	if name == "" {
		return
	}
	l := m.toGround(r, m.rng.IntN(particles))
	c := pick(m.rng, big.NewRat(2, 1), big.NewRat(3, 10), big.NewRat(-1, 2), big.NewRat(5, 4))
	l.magnitude, l.terms = typed(c)+"*"+name, map[string]*big.Rat{name: c}
	if m.rng.IntN(3) == 0 {
		l.magnitude += " + 25 N"
		l.known = big.NewRat(25, 1)
	}
}

// shared adds two lines that share an unknown of another name.
func (m *maker) shared(r *rig, particles int) {
	name := m.name("Q")
	for _, c := range []*big.Rat{one(), big.NewRat(3, 2)} {
		l := m.toGround(r, m.rng.IntN(particles))
		l.magnitude, l.terms = typed(c)+"*"+name, map[string]*big.Rat{name: c}
	}
}

// load puts a known force on a particle.
func (m *maker) load(r *rig, at int) {
	l := rigLine{name: m.name("F"), kind: "force", at: at}
	size := int64(10 + m.rng.IntN(2000))
	switch m.rng.IntN(3) {
	case 0:
		v := m.vector(r)
		l.along, l.size, l.known = v[:3], v[3], big.NewRat(size, 1)
		l.magnitude = fmt.Sprint(size)
	case 1:
		for range r.dim() {
			l.components = append(l.components, fmt.Sprint(m.rng.IntN(2000)-1000))
		}
	case 2:
		l.kind = "weight"
		l.along, l.size = []int64{0, 0, -1}, 1
		if r.planar {
			l.along = []int64{0, -1, 0}
		}
		l.magnitude = fmt.Sprintf("%d kg", size)
		l.known = new(big.Rat).Mul(big.NewRat(size, 1), big.NewRat(981, 100))
	}
	r.lines = append(r.lines, l)
}

// determinate makes a rig with as many unknowns as equations.
func (m *maker) determinate() *rig {
	r := &rig{planar: m.rng.IntN(2) == 0}
	n := 1 + m.rng.IntN(5)
	want := n * r.dim()
	want -= m.particles(r, n)
	if m.rng.IntN(4) == 0 && want > r.dim() {
		l := rigLine{name: m.name("V"), kind: "force", at: m.rng.IntN(n)}
		for k := range r.dim() {
			if k == 0 && m.rng.IntN(2) == 0 {
				l.components = append(l.components, "40")
				continue
			}
			l.components = append(l.components, "?")
			want--
		}
		r.lines = append(r.lines, l)
	}
	if m.rng.IntN(3) == 0 && want > 0 {
		m.rope(r, m.rng.IntN(n))
		want--
	}
	if m.rng.IntN(4) == 0 && want > 0 {
		m.shared(r, n)
		want--
	}
	for i := 0; want > 0; want-- {
		m.toGround(r, i%n)
		i++
	}
	for range m.rng.IntN(3) {
		m.tie(r, n)
	}
	m.load(r, m.rng.IntN(n))
	for i := range n {
		if m.rng.IntN(2) == 0 {
			m.load(r, i)
		}
	}
	return r
}

// TestAgreesWithExactArithmetic solves random determinate rigs from their text
// and holds every unknown against exact elimination.
func TestAgreesWithExactArithmetic(t *testing.T) {
	total := long.Of(500, 10000)
	m := newMaker(1)
	solved, singular, worst := 0, 0, 0.0
	for solved < total {
		r := m.determinate()
		system := r.exact()
		want := system.solve()
		if want.rank < len(system.names) || want.rank < system.rows {
			singular++ // another test's matter
			continue
		}
		solved++
		text := r.text()
		s := solveText(t, text)
		wantVerdict := Determinate
		largest := 0.0
		for _, v := range want.value {
			largest = max(largest, math.Abs(v))
		}
		if r.senseBroken(want.value, largest) {
			wantVerdict = Inadmissible
		}
		if s.Verdict != wantVerdict || s.Rank != want.rank || len(s.Motions) > 0 {
			t.Fatalf("verdict %v, want %v\n%v\n%s", s.Verdict, wantVerdict, s.Words(), text)
		}
		if len(s.X) != len(want.value) {
			t.Fatalf("%d unknowns, want %d\n%s", len(s.X), len(want.value), text)
		}
		for _, x := range s.X {
			off := math.Abs(x.Value-want.value[x.Name]) / largest
			worst = max(worst, off)
			if !(off <= agreement) {
				t.Fatalf("%s = %v, want %v (condition %.3g)\n%s", x.Name, x.Value, want.value[x.Name], s.Cond, text)
			}
		}
		for _, c := range s.Checks {
			if c.Kind != CheckSense && c.Kind != CheckSupport && !c.OK { // chance makes rigs that hardly stand
				t.Fatalf("%s\n%s", c.Says(s.Problem), text)
			}
		}
	}
	t.Logf("%d solved, %d singular ones left out, worst agreement %.1e", solved, singular, worst)
	if singular > total {
		t.Errorf("%d of the rigs are singular: the maker is at fault", singular)
	}
}

// senseBroken tells whether a cable would push, a strut pull, or a contact pull.
func (r *rig) senseBroken(value map[string]float64, largest float64) bool {
	for _, l := range r.lines {
		if l.kind != "cable" && l.kind != "strut" && l.kind != "contact" {
			continue
		}
		v := 0.0
		if l.known != nil {
			v, _ = l.known.Float64()
		}
		for name, c := range l.terms {
			f, _ := c.Float64()
			v += f * value[name]
		}
		if v < -1e-8*largest {
			return true
		}
	}
	return false
}
