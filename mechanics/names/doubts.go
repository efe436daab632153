package names

import (
	"math"
	"slices"
	"strconv"
	"strings"

	"trivet/mechanics/diag"
	"trivet/mechanics/problem"
	"trivet/mechanics/sheet"
	"trivet/units"
)

// doubtNames notes names that are easily taken for something else: unknowns that
// differ from a given in a capital letter, lines named like the unit behind a number,
// and the names of what is no number.
func (n *notes) doubtNames() {
	known := map[string]problem.Named{}
	for _, what := range []problem.Thing{problem.ACouple, problem.ALine, problem.AGiven} {
		for _, row := range problem.Rows(n.s, what.Table()) {
			known[folded(row.Name)] = what.Named(row.Name)
		}
	}
	// those that magnitudes alone name
	coined := slices.DeleteFunc(slices.Clone(n.Unknowns), func(u problem.Unknown) bool { return u.Ref == sheet.Ref{} })
	for _, c := range coined {
		n.doubtCoined(c, coined, known)
	}
	n.doubtCase(known)
	for t := problem.AGiven; t <= problem.ALoad; t++ {
		for _, row := range problem.Rows(n.s, t.Table()) {
			if what := notNumbers[strings.ToLower(row.Name)]; what != "" {
				info, _ := problem.TableNamed(t.Table())
				n.doubt(sheet.Ref{Table: info.Name, Row: row.Name}, problem.NoSort, diag.Span{}, row.Name+" is the name of "+info.ARow()+" here, but usually means "+what, "another name")
			}
		}
	}
}

// notNumbers are what some names, in small letters, stand for in the arithmetic of computers.
var notNumbers = map[string]string{"nan": `"not a number"`, "inf": "infinity", "infinity": "infinity"}

// doubtCoined notes an unknown that only magnitudes name, where it is most likely
// another name mistyped.
func (n *notes) doubtCoined(c problem.Unknown, coined []problem.Unknown, known map[string]problem.Named) {
	cell, _ := n.s.Cell(c.Ref)
	at, mentions := diag.Whole(cell.Text), units.Mentions(cell.Text)
	if k := slices.IndexFunc(mentions, func(m units.Mention) bool { return m.Name == c.Name }); k >= 0 {
		at = mentions[k].Span
	}
	if what := notNumbers[strings.ToLower(c.Name)]; what != "" {
		n.doubt(c.Ref, problem.LikeAName, at, c.Name+" is an unknown here, but usually means "+what, "a number, or ? for an unknown")
		return
	}
	for _, other := range coined {
		if plain := strings.ReplaceAll(c.Name, "_", ""); plain != c.Name && other.Name == plain {
			n.doubt(c.Ref, problem.NoSort, at, c.Name+" and "+plain+" are two different unknowns", plain+", if that is meant")
			return
		}
	}
	if other, ok := meantBy(c.Name, len(coined) <= maxCoined, known); ok {
		n.doubt(c.Ref, problem.LikeAName, at, c.Name+" is a new unknown here, different from the "+other.Thing.String()+" "+other.Name, other.Name+", if that is meant")
	}
}

// maxCoined is up to how many unknowns that magnitudes alone name each is held against
// all names for a mistyped letter: slips are few, and where there are more it is a
// way of naming.
const maxCoined = 16

// meantBy finds the given, line or couple whose name another one most likely is: in
// other capitals, or with a mistyped letter.
func meantBy(name string, mistyped bool, known map[string]problem.Named) (problem.Named, bool) {
	if other, ok := known[folded(name)]; ok {
		return other, true
	}
	if !mistyped {
		return problem.Named{}, false
	}
	var best problem.Named
	for _, other := range known {
		// of several the first by name, for the same words each time
		if !strings.HasPrefix(other.Name, name) && problem.NearName(name, other.Name) != "" && (best.Name == "" || other.Name < best.Name) {
			best = other
		}
	}
	return best, best.Name != ""
}

// folded is a name without what readers overlook: capitals and the _ of a subscript.
func folded(name string) string { return strings.ToLower(strings.ReplaceAll(name, "_", "")) }

// doubtCase notes unknown lines and couples whose name differs from that of a given of
// their dimension in what readers overlook.
func (n *notes) doubtCase(known map[string]problem.Named) {
	for _, u := range n.Unknowns {
		what := problem.ALine
		if !u.Own || n.Lines[u.Line].Belt != nil {
			what = problem.ACouple
		}
		other := known[folded(u.Name)]
		_, couple := n.Find(u.Name, problem.ACouple)
		if what == problem.ACouple && !couple || other.Thing != problem.AGiven || other.Name == u.Name {
			continue
		}
		g, _ := n.Find(other.Name, problem.AGiven)
		if d := n.Givens[g.Index].Value.Dim; d == u.Dim || d == units.Mass && u.Dim == units.Force {
			n.doubt(sheet.Ref{Table: what.Table(), Row: u.Name}, problem.NoSort, diag.Span{},
				"the magnitude of the "+what.String()+" "+u.Name+" is an unknown, although there is a given "+other.Name, "the magnitude "+other.Name+", if that is meant")
		}
	}
}

// maxFactor is up to which number before a name it is most likely a factor of what
// is named so: a coefficient, or a share.
const maxFactor = 1

// namedAsUnits gives what bears the name of a unit, each with what it is.
func (n *notes) namedAsUnits() map[string]string {
	named := map[string]string{}
	for _, what := range []problem.Thing{problem.AnUnknown, problem.ACouple, problem.ALine} {
		for _, name := range n.Names(what) {
			if _, isUnit := units.Find(name); isUnit {
				named[name] = what.One()
			}
		}
	}
	return named
}

// doubtUnits notes 0.3 N in a magnitude where something is named N: it reads as a
// force, and a factor was most likely meant to multiply what is named. Where one of
// the numbers in the cell is larger, they are forces.
func (n *notes) doubtUnits(ref sheet.Ref, text string, quantities []units.Quantity, named map[string]string) {
	force := func(q units.Quantity) bool { return named[q.Symbol] == "" || q.X > maxFactor || q.Symbol == ref.Row }
	if slices.ContainsFunc(quantities, force) {
		return
	}
	for _, q := range quantities {
		unit, _ := units.Find(q.Symbol)
		n.doubt(ref, problem.LikeAUnit, q.Span, text[q.Start:q.End]+" is read as "+q.Number+" "+unit.Name+", but "+named[q.Symbol]+" is also named "+q.Symbol, q.Number+"*"+q.Symbol+", if that is meant")
	}
}

// likeDegrees tells numbers that are angles in degrees rather than in radians: whole,
// and not small. In the power of exp, where other numbers stand too, they are the more
// so: the smallest usual angle is least there.
func likeDegrees(x float64, function string) bool {
	least := 10.
	if function == "exp" {
		least = 30
	}
	return math.Abs(x) >= least && x == math.Trunc(x)
}

// doubtValues notes units that are most likely names; numbers of degrees that bear no unit: in exp, where a number counts
// in radians, and in the functions of angles where that is the sheet's unit; radians by
// pi where it is another; and differences that look like feet and inches.
func (n *notes) doubtValues() {
	named := n.namedAsUnits()
	for ref, c := range n.s.Cells() {
		key, ok := problem.CellKey(ref.Table, ref.Row, ref.Key)
		if !ok || ref.Table == "" || problem.Private(ref.Row) || (key.Reads < problem.ReadsValue || key.Reads > problem.ReadsMagnitude) && key.Reads != problem.ReadsIntensity {
			continue
		}
		if expr, err := n.rd.Parse(c.Text); err == nil {
			if key.Reads == problem.ReadsMagnitude {
				n.doubtUnits(ref, c.Text, expr.Quantities(), named)
			}
			for _, a := range expr.BareAngles() {
				n.doubtAngle(ref, a)
			}
			for _, d := range expr.Dashes() {
				hint := ""
				if d.Meant != "" {
					hint = d.Meant + ", if that is meant"
				}
				n.doubt(ref, problem.NoSort, d.Span, c.Text[d.Start:d.End]+" is read as "+d.As, hint)
			}
		}
	}
}

// doubtAngle notes an argument without a unit. A name in it that has a unit settles what
// it is; else the first number of degrees is pointed at, which s of a load is none of.
func (n *notes) doubtAngle(ref sheet.Ref, a units.BareAngle) {
	radians := n.Units.Angle.Factor == 1
	if a.Radians != "" {
		if !radians && !n.hasAngle(a) {
			n.doubt(ref, problem.NoSort, a.Span, a.Argument+" has no unit, so "+a.Call+" takes it in "+n.Units.Angle.Symbol, a.Radians+", if radians are meant")
		}
		return
	}
	if a.Function != "exp" && !radians || ref.Table == "distributed" {
		return
	}
	var at diag.Span
	says, hint := "", ""
	for _, o := range a.Operands {
		x, name := o.X, ""
		if o.Name != "" {
			g, given := n.Find(o.Name, problem.AGiven)
			if !given || n.Givens[g.Index].Value.Dim != units.Number {
				return
			}
			x, name = n.Givens[g.Index].Value.V[0], o.Name+" = "
		}
		if says != "" || o.Under || !likeDegrees(x, a.Function) {
			continue
		}
		at, says = o.Span, name+strconv.FormatFloat(x, 'f', -1, 64)
		switch o.Sum {
		case "":
			hint = says + " deg, if degrees are meant"
		case "(": // a term of it is a product, and nobody knows which are angles
			hint = "deg after each angle, if degrees are meant"
		default:
			hint = o.Sum + " deg, if degrees are meant"
		}
	}
	if says != "" {
		n.doubt(ref, problem.LikeDegrees, at, says+" has no unit, so "+a.Call+" takes it in radians", hint)
	}
}

// hasAngle tells that a name in an argument is a given angle.
func (n *notes) hasAngle(a units.BareAngle) bool {
	return slices.ContainsFunc(a.Operands, func(o units.Operand) bool {
		g, given := n.Find(o.Name, problem.AGiven)
		return given && n.Givens[g.Index].Value.Dim == units.Angle
	})
}
