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

// coined is an unknown that the magnitude of a cell brings in, and no row.
type coined struct {
	name string
	cell sheet.Ref
}

// doubtNames notes names that are easily taken for something else: unknowns that
// differ from a given in a capital letter, lines named like the unit behind a number,
// and the names of what is no number.
func (r *reading) doubtNames() {
	for _, c := range r.coined {
		r.doubtCoined(c)
	}
	r.doubtCase()
	r.doubtUnits()
	for _, t := range tables {
		if t.Fixed || t.Name == "answers" {
			continue
		}
		for _, row := range Rows(r.s, t.Name) {
			if what := notNumber(row.Name); what != "" {
				r.doubtName(sheet.Ref{Table: t.Name, Row: row.Name}, NoSort, row.Name+" is the name of "+t.ARow()+" here, but usually means "+what, "another name")
			}
		}
	}
}

// notNumber says what a name stands for in the arithmetic of computers, "" for others.
func notNumber(name string) string {
	switch {
	case strings.EqualFold(name, "nan"):
		return `"not a number"`
	case strings.EqualFold(name, "inf"), strings.EqualFold(name, "infinity"):
		return "infinity"
	}
	return ""
}

// doubtCoined notes an unknown that only magnitudes name, where it is most likely
// another name mistyped.
func (r *reading) doubtCoined(c coined) {
	cell, _ := r.s.Cell(c.cell)
	at, mentions := whole(cell.Text), units.Mentions(cell.Text)
	if k := slices.IndexFunc(mentions, func(m units.Mention) bool { return m.Name == c.name }); k >= 0 {
		at = mentions[k].Span
	}
	if what := notNumber(c.name); what != "" {
		r.doubt(c.cell, LikeAName, at, c.name+" is an unknown here, but usually means "+what, "a number, or ? for an unknown")
		return
	}
	for _, other := range r.coined {
		if plain := strings.ReplaceAll(c.name, "_", ""); plain != c.name && other.name == plain {
			r.doubt(c.cell, NoSort, at, c.name+" and "+plain+" are two different unknowns", plain+", if that is meant")
			return
		}
	}
	if other, ok := r.meantBy(c.name); ok {
		r.doubt(c.cell, LikeAName, at, c.name+" is a new unknown here, different from the "+other.Thing.String()+" "+other.name, other.name+", if that is meant")
	}
}

// maxCoined is up to how many unknowns that magnitudes alone name each is held against
// all names for a mistyped letter: slips are few, and where there are more it is a
// way of naming.
const maxCoined = 16

// meantBy finds the given, line or couple whose name another one most likely is: in
// other capitals, or with a mistyped letter.
func (r *reading) meantBy(name string) (thingName, bool) {
	if r.folded == nil {
		r.folded = make(map[string]thingName, len(r.givenRows)+len(r.lineRows)+len(r.coupleRows))
		for _, what := range []Thing{ACouple, ALine, AGiven} {
			for _, row := range Rows(r.s, things[what].table) {
				r.folded[folded(row.Name)] = thingName{what, row.Name}
			}
		}
	}
	if other, ok := r.folded[folded(name)]; ok {
		return other, true
	}
	if len(r.coined) > maxCoined {
		return thingName{}, false
	}
	var best thingName
	for _, other := range r.folded {
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
// their dimension in capital letters alone.
func (r *reading) doubtCase() {
	if len(r.p.Givens) == 0 {
		return
	}
	givens := make(map[string]*Given, len(r.p.Givens))
	for i := range r.p.Givens {
		givens[strings.ToLower(r.p.Givens[i].Name)] = &r.p.Givens[i]
	}
	doubt := func(table, what, name string, d units.Dim) {
		if g := givens[strings.ToLower(name)]; g != nil && g.Name != name && (g.Value.Dim == d || g.Value.Dim == units.Mass && d == units.Force) {
			r.doubtName(sheet.Ref{Table: table, Row: name}, NoSort, "the magnitude of the "+what+" "+name+" is an unknown, although there is a given "+g.Name, "the magnitude "+g.Name+", if that is meant")
		}
	}
	for i := range r.p.Unknowns {
		if u := &r.p.Unknowns[i]; u.Own && r.p.Lines[u.Line].Belt == nil {
			doubt("lines", "line", u.Name, u.Dim)
		} else if _, couple := r.couples[u.Name]; couple {
			doubt("couples", "couple", u.Name, u.Dim)
		}
	}
}

// maxFactor is up to which number before a name it is most likely a factor of what
// is named so: a coefficient, or a share.
const maxFactor = 1

// doubtUnits notes 0.3 N in a magnitude where something is named N: it reads as a
// force, and a factor was most likely meant to multiply what is named. Where one of
// the numbers in the cell is larger, they are forces.
func (r *reading) doubtUnits() {
	named := map[string]string{}
	note := func(name, what string) {
		if _, isUnit := units.Find(name); isUnit {
			named[name] = what
		}
	}
	for name := range r.unknowns {
		note(name, "an unknown")
	}
	for name := range r.couples {
		note(name, "a couple")
	}
	for name := range r.lines {
		note(name, "a line")
	}
	if len(named) == 0 {
		return
	}
	for _, table := range []string{"lines", "couples"} {
		for _, row := range Rows(r.s, table) {
			cell, ok := row.Cell("magnitude")
			if !ok {
				continue
			}
			expr, err := r.parse(cell.Text)
			if err != nil {
				continue
			}
			quantities := expr.Quantities()
			force := func(q units.Quantity) bool { return named[q.Symbol] == "" || q.X > maxFactor || q.Symbol == row.Name }
			if slices.ContainsFunc(quantities, force) {
				continue
			}
			for _, q := range quantities {
				unit, _ := units.Find(q.Symbol)
				r.doubt(sheet.Ref{Table: table, Row: row.Name, Key: "magnitude"}, LikeAUnit, q.Span, cell.Text[q.Start:q.End]+" is read as "+q.Number+" "+unit.Name+", but "+named[q.Symbol]+" is also named "+q.Symbol, q.Number+"*"+q.Symbol+", if that is meant")
			}
		}
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

// doubtValues notes numbers of degrees that bear no unit: in exp, where a number counts
// in radians, and in the functions of angles where that is the sheet's unit; radians by
// pi where it is another; and differences that look like feet and inches.
func (r *reading) doubtValues() {
	radians := r.p.Units.Angle.Factor == 1
	for ref, c := range r.s.Cells() {
		load := ref.Table == "distributed"
		exp := strings.Contains(c.Text, "exp") && !load // where exp is of s
		angle := strings.Contains(c.Text, "(") && (radians && !load || !radians && (strings.Contains(c.Text, "pi") || strings.Contains(c.Text, "π")))
		length := strings.ContainsAny(c.Text, "-−–‐‑") && (strings.ContainsAny(c.Text, `"″”`) || strings.Contains(c.Text, "in"))
		if ref.Table == "" || Private(ref.Row) || !exp && !angle && !length {
			continue
		}
		key, ok := cellKey(ref.Table, ref.Row, ref.Key)
		if !ok || (key.Reads < ReadsValue || key.Reads > ReadsMagnitude) && key.Reads != ReadsIntensity {
			continue
		}
		expr, err := r.parse(c.Text)
		if err != nil {
			continue
		}
		if exp || angle {
			r.doubtAngle(ref, expr, radians)
		}
		if length {
			r.doubtDash(ref, c.Text, expr)
		}
	}
}

// doubtDash notes how a hyphen or minus between feet and inches is read.
func (r *reading) doubtDash(ref sheet.Ref, text string, expr *units.Expr) {
	for _, d := range expr.Dashes() {
		hint := ""
		if d.Meant != "" {
			hint = d.Meant + ", if that is meant"
		}
		r.doubt(ref, NoSort, d.Span, text[d.Start:d.End]+" is read as "+d.As, hint)
	}
}

func (r *reading) doubtAngle(ref sheet.Ref, expr *units.Expr, radians bool) {
	for _, a := range expr.BareAngles() {
		switch e, ok := r.bareDegrees(a); {
		case a.Radians != "":
			if !radians && !r.hasAngle(a) {
				r.doubt(ref, NoSort, a.Span, a.Argument+" has no unit, so "+a.Call+" takes it in "+r.p.Units.Angle.Symbol, a.Radians+", if radians are meant")
			}
		case ok && (a.Function == "exp" || radians) && ref.Table != "distributed":
			e.Ref = ref
			r.p.Doubts = append(r.p.Doubts, e)
		}
	}
}

// hasAngle tells that a name in an argument is a given angle.
func (r *reading) hasAngle(a units.BareAngle) bool {
	for _, o := range a.Operands {
		if i, given := r.givens[o.Name]; given && r.p.Givens[i].Value.Dim == units.Angle {
			return true
		}
	}
	return false
}

// bareDegrees words the first number of degrees in an argument; a name in it that has a
// unit settles what it is.
func (r *reading) bareDegrees(a units.BareAngle) (e Error, ok bool) {
	for _, o := range a.Operands {
		x, says := o.X, ""
		if o.Name != "" {
			i, given := r.givens[o.Name]
			if !given || r.p.Givens[i].Value.Dim != units.Number {
				return e, false
			}
			x = r.p.Givens[i].Value.V[0]
			says = o.Name + " = "
		}
		if ok || o.Under || !likeDegrees(x, a.Function) {
			continue
		}
		figure := strconv.FormatFloat(x, 'f', -1, 64)
		e = Error{Sort: LikeDegrees, Error: diag.Error{Span: o.Span, Msg: says + figure + " has no unit, so " + a.Call + " takes it in radians", Hint: says + figure + " deg, if degrees are meant"}}
		switch {
		case o.Sum == "(": // a term of it is a product, and nobody knows which are angles
			e.Hint = "deg after each angle, if degrees are meant"
		case o.Sum != "":
			e.Hint = o.Sum + " deg, if degrees are meant"
		}
		ok = true
	}
	return e, ok
}
