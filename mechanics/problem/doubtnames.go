package problem

import (
	"math"
	"slices"
	"strconv"
	"strings"

	"trivet/mechanics/diag"
	"trivet/mechanics/sheet"
	"trivet/units"
)

// doubtNames notes names that are easily taken for something else: unknowns that
// differ from a given in a capital letter, lines named like the unit behind a number,
// and the names of what is no number.
func (r *reading) doubtNames() {
	known := map[string]thingName{}
	for _, what := range []Thing{ACouple, ALine, AGiven} {
		for _, row := range Rows(r.s, things[what].table) {
			known[folded(row.Name)] = thingName{what, row.Name}
		}
	}
	for _, c := range r.coined {
		r.doubtCoined(c, known)
	}
	r.doubtCase(known)
	for t := AGiven; t <= ALoad; t++ {
		for _, row := range Rows(r.s, things[t].table) {
			if what := notNumbers[strings.ToLower(row.Name)]; what != "" {
				info, _ := tableNamed(things[t].table)
				r.doubt(sheet.Ref{Table: info.Name, Row: row.Name}, NoSort, diag.Span{}, row.Name+" is the name of "+info.ARow()+" here, but usually means "+what, "another name")
			}
		}
	}
}

// notNumbers are what some names, in small letters, stand for in the arithmetic of computers.
var notNumbers = map[string]string{"nan": `"not a number"`, "inf": "infinity", "infinity": "infinity"}

// doubtCoined notes an unknown that only magnitudes name, where it is most likely
// another name mistyped.
func (r *reading) doubtCoined(c Use, known map[string]thingName) {
	cell, _ := r.s.Cell(c.Ref)
	at, mentions := whole(cell.Text), units.Mentions(cell.Text)
	if k := slices.IndexFunc(mentions, func(m units.Mention) bool { return m.Name == c.Name }); k >= 0 {
		at = mentions[k].Span
	}
	if what := notNumbers[strings.ToLower(c.Name)]; what != "" {
		r.doubt(c.Ref, LikeAName, at, c.Name+" is an unknown here, but usually means "+what, "a number, or ? for an unknown")
		return
	}
	for _, other := range r.coined {
		if plain := strings.ReplaceAll(c.Name, "_", ""); plain != c.Name && other.Name == plain {
			r.doubt(c.Ref, NoSort, at, c.Name+" and "+plain+" are two different unknowns", plain+", if that is meant")
			return
		}
	}
	if other, ok := r.meantBy(c.Name, known); ok {
		r.doubt(c.Ref, LikeAName, at, c.Name+" is a new unknown here, different from the "+other.Thing.String()+" "+other.name, other.name+", if that is meant")
	}
}

// maxCoined is up to how many unknowns that magnitudes alone name each is held against
// all names for a mistyped letter: slips are few, and where there are more it is a
// way of naming.
const maxCoined = 16

// meantBy finds the given, line or couple whose name another one most likely is: in
// other capitals, or with a mistyped letter.
func (r *reading) meantBy(name string, known map[string]thingName) (thingName, bool) {
	if other, ok := known[folded(name)]; ok {
		return other, true
	}
	if len(r.coined) > maxCoined {
		return thingName{}, false
	}
	var best thingName
	for _, other := range known {
		// of several the first by name, for the same words each time
		if !strings.HasPrefix(other.name, name) && nearName(name, other.name) != "" && (best.name == "" || other.name < best.name) {
			best = other
		}
	}
	return best, best.name != ""
}

// folded is a name without what readers overlook: capitals and the _ of a subscript.
func folded(name string) string { return strings.ToLower(strings.ReplaceAll(name, "_", "")) }

// doubtCase notes unknown lines and couples whose name differs from that of a given of
// their dimension in what readers overlook.
func (r *reading) doubtCase(known map[string]thingName) {
	for _, u := range r.p.Unknowns {
		what := ALine
		if !u.Own || r.p.Lines[u.Line].Belt != nil {
			what = ACouple
		}
		other := known[folded(u.Name)]
		if what == ACouple && !r.has(ACouple, u.Name) || other.Thing != AGiven || other.name == u.Name {
			continue
		}
		i, _ := r.find(AGiven, other.name)
		if d := r.p.Givens[i].Value.Dim; d == u.Dim || d == units.Mass && u.Dim == units.Force {
			r.doubt(sheet.Ref{Table: things[what].table, Row: u.Name}, NoSort, diag.Span{},
				"the magnitude of the "+what.String()+" "+u.Name+" is an unknown, although there is a given "+other.name, "the magnitude "+other.name+", if that is meant")
		}
	}
}

// maxFactor is up to which number before a name it is most likely a factor of what
// is named so: a coefficient, or a share.
const maxFactor = 1

// namedAsUnits gives what bears the name of a unit, each with what it is.
func (r *reading) namedAsUnits() map[string]string {
	named := map[string]string{}
	for _, what := range []Thing{AnUnknown, ACouple, ALine} {
		for at := range r.index {
			if _, isUnit := units.Find(at.name); isUnit && at.Thing == what {
				named[at.name] = what.one()
			}
		}
	}
	return named
}

// doubtUnits notes 0.3 N in a magnitude where something is named N: it reads as a
// force, and a factor was most likely meant to multiply what is named. Where one of
// the numbers in the cell is larger, they are forces.
func (r *reading) doubtUnits(ref sheet.Ref, text string, quantities []units.Quantity, named map[string]string) {
	force := func(q units.Quantity) bool { return named[q.Symbol] == "" || q.X > maxFactor || q.Symbol == ref.Row }
	if slices.ContainsFunc(quantities, force) {
		return
	}
	for _, q := range quantities {
		unit, _ := units.Find(q.Symbol)
		r.doubt(ref, LikeAUnit, q.Span, text[q.Start:q.End]+" is read as "+q.Number+" "+unit.Name+", but "+named[q.Symbol]+" is also named "+q.Symbol, q.Number+"*"+q.Symbol+", if that is meant")
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
func (r *reading) doubtValues() {
	named := r.namedAsUnits()
	for ref, c := range r.s.Cells() {
		key, ok := cellKey(ref.Table, ref.Row, ref.Key)
		if !ok || ref.Table == "" || Private(ref.Row) || (key.Reads < ReadsValue || key.Reads > ReadsMagnitude) && key.Reads != ReadsIntensity {
			continue
		}
		if expr, err := r.parse(c.Text); err == nil {
			if key.Reads == ReadsMagnitude {
				r.doubtUnits(ref, c.Text, expr.Quantities(), named)
			}
			for _, a := range expr.BareAngles() {
				r.doubtAngle(ref, a)
			}
			for _, d := range expr.Dashes() {
				hint := ""
				if d.Meant != "" {
					hint = d.Meant + ", if that is meant"
				}
				r.doubt(ref, NoSort, d.Span, c.Text[d.Start:d.End]+" is read as "+d.As, hint)
			}
		}
	}
}

// doubtAngle notes an argument without a unit. A name in it that has a unit settles what
// it is; else the first number of degrees is pointed at, which s of a load is none of.
func (r *reading) doubtAngle(ref sheet.Ref, a units.BareAngle) {
	radians := r.p.Units.Angle.Factor == 1
	if a.Radians != "" {
		if !radians && !r.hasAngle(a) {
			r.doubt(ref, NoSort, a.Span, a.Argument+" has no unit, so "+a.Call+" takes it in "+r.p.Units.Angle.Symbol, a.Radians+", if radians are meant")
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
			i, given := r.find(AGiven, o.Name)
			if !given || r.p.Givens[i].Value.Dim != units.Number {
				return
			}
			x, name = r.p.Givens[i].Value.V[0], o.Name+" = "
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
		r.doubt(ref, LikeDegrees, at, says+" has no unit, so "+a.Call+" takes it in radians", hint)
	}
}

// hasAngle tells that a name in an argument is a given angle.
func (r *reading) hasAngle(a units.BareAngle) bool {
	return slices.ContainsFunc(a.Operands, func(o units.Operand) bool {
		i, given := r.find(AGiven, o.Name)
		return given && r.p.Givens[i].Value.Dim == units.Angle
	})
}
