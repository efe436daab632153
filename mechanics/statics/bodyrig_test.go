package statics

import (
	"fmt"
	"math/rand/v2"
	"strings"

	"gonum.org/v1/gonum/mat"
	"gonum.org/v1/gonum/spatial/r3"
)

// bodyRig is a problem of rigid bodies and particles kept twice: as the rows of
// a sheet, and as what each unknown exerts, written without any of the code it
// is held against.
type bodyRig struct {
	planar bool
	bodies []rigidBody
	points []string
	parts  []part
	rows   map[string][]string // loads, by table
	known  []wrench            // what they exert
	view
}

// view is how a rig is written: turned, moved, larger, in other units, in another
// order. The rig itself stays as it is.
type view struct {
	turn    func(r3.Vec) r3.Vec // nil for not turned
	shift   r3.Vec              // m
	scale   float64             // of lengths; moments grow with it
	foot    float64             // a typed length in metres
	head    string              // above the first table
	shuffle *rand.Rand          // nil for the order of making
}

// plain writes a rig as it was made.
func plain() view { return view{scale: 1, foot: 1} }

func (v view) turned(u r3.Vec) r3.Vec {
	if v.turn == nil {
		return u
	}
	return v.turn(u)
}

type rigidBody struct {
	name     string
	particle bool
	centre   r3.Vec
	points   []string
}

// wrench is a force on a body at a place, with a couple.
type wrench struct {
	body int
	at   r3.Vec
	f, c r3.Vec
}

// part is a joint, a line or a couple of unknown size. Its unknowns are held as
// columns, what one unit of each exerts on bodies: the first of them forces of
// a joint along a basis of our own, the others moments.
type part struct {
	table, row, name string
	cols             [][]wrench
	forces           int
	push             bool // the first column cannot be negative
	mult, tied       bool // others' magnitudes may follow its own, or do
}

// rigArm is what moments are divided by: about the size of a body.
const rigArm = 2

func (r *bodyRig) dim(b int) int {
	switch {
	case r.planar && r.bodies[b].particle:
		return 2
	case r.planar || r.bodies[b].particle:
		return 3
	}
	return 6
}

func (r *bodyRig) size() (n int) {
	for b := range r.bodies {
		n += r.dim(b)
	}
	return n
}

func (r *bodyRig) up() r3.Vec {
	if r.planar {
		return r3.Vec{Y: 1}
	}
	return r3.Vec{Z: 1}
}

// column writes wrenches into the equations of all bodies: forces, then moments
// about the body's centre over rigArm.
func (r *bodyRig) column(ws []wrench) []float64 {
	start := make([]int, len(r.bodies)+1)
	for b := range r.bodies {
		start[b+1] = start[b] + r.dim(b)
	}
	out := make([]float64, start[len(r.bodies)])
	for _, w := range ws {
		moment := r3.Add(r3.Cross(r3.Sub(w.at, r.bodies[w.body].centre), w.f), w.c)
		six := []float64{w.f.X, w.f.Y, w.f.Z, moment.X / rigArm, moment.Y / rigArm, moment.Z / rigArm}
		if r.planar {
			six = []float64{w.f.X, w.f.Y, moment.Z / rigArm}
		}
		for k := range r.dim(w.body) {
			out[start[w.body]+k] += six[k]
		}
	}
	return out
}

// matrix has a column for every unknown of the parts.
func (r *bodyRig) matrix(parts []part) *mat.Dense {
	var cols [][]float64
	for _, p := range parts {
		for _, c := range p.cols {
			cols = append(cols, r.column(c))
		}
	}
	a := mat.NewDense(r.size(), max(1, len(cols)), nil)
	for j, c := range cols {
		a.SetCol(j, c)
	}
	return a
}

func (r *bodyRig) add(table, row string) { r.rows[table] = append(r.rows[table], row) }

// text writes the sheet with the parts given.
func (r *bodyRig) text(parts []part) string {
	var b strings.Builder
	if r.planar {
		b.WriteString("plane = \"xy\"\n")
	}
	b.WriteString(r.head)
	rows := map[string][]string{"points": r.points}
	for table, have := range r.rows {
		rows[table] = append([]string{}, have...)
	}
	for _, p := range parts {
		rows[p.table] = append(rows[p.table], p.name+" = { "+p.row+" }")
	}
	for _, table := range []string{"points", "bodies", "lines", "joints", "couples", "distributed"} {
		if r.shuffle != nil {
			list := append([]string{}, rows[table]...)
			r.shuffle.Shuffle(len(list), func(i, j int) { list[i], list[j] = list[j], list[i] })
			rows[table] = list
		}
		if len(rows[table]) > 0 {
			fmt.Fprintf(&b, "[%s]\n%s\n", table, strings.Join(rows[table], "\n"))
		}
	}
	return b.String()
}

// place writes where a point is, way a direction or a force, seen as the view has it.
func (r *bodyRig) place(at r3.Vec) string {
	return r.tuple(r3.Scale(r.scale/r.foot, r3.Add(r.turned(at), r.shift)))
}

func (r *bodyRig) way(v r3.Vec) string { return r.tuple(r.turned(v)) }

// tuple writes a vector to its last bit: a pair in the plane.
func (r *bodyRig) tuple(v r3.Vec) string {
	if r.planar {
		return fmt.Sprintf("%v, %v", v.X, v.Y)
	}
	return fmt.Sprintf("%v, %v, %v", v.X, v.Y, v.Z)
}

// balance puts a force and a couple on every body that hold the columns times x
// and the loads so far in equilibrium.
func (r *bodyRig) balance(parts []part, x []float64) {
	need := make([]wrench, len(r.bodies))
	take := func(w wrench, times float64) {
		n := &need[w.body]
		n.f = r3.Sub(n.f, r3.Scale(times, w.f))
		arm := r3.Sub(w.at, r.bodies[w.body].centre)
		n.c = r3.Sub(n.c, r3.Scale(times, r3.Add(r3.Cross(arm, w.f), w.c)))
	}
	for _, w := range r.known {
		take(w, 1)
	}
	j := 0
	for _, p := range parts {
		for _, c := range p.cols {
			for _, w := range c {
				take(w, x[j])
			}
			j++
		}
	}
	for b, body := range r.bodies {
		w := need[b]
		w.body, w.at = b, body.centre
		r.add("lines", fmt.Sprintf("Z%d = { kind = \"force\", at = %q, components = \"(%s) N\" }", b, body.points[0], r.way(w.f)))
		if !body.particle {
			c := r3.Scale(r.scale, r.turned(w.c))
			r.add("couples", fmt.Sprintf("C%d = { on = %q, components = \"(%v, %v, %v) N m\" }", b, body.name, c.X, c.Y, c.Z))
		}
		r.known = append(r.known, w)
	}
}
