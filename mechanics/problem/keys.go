package problem

import (
	"slices"

	"trivet/mechanics/say"
	"trivet/units"
)

// Reads says as what a cell is read, which decides what may be typed there.
type Reads int

// What cells are read as.
const (
	ReadsText      Reads = iota // words for a person
	ReadsWord                   // one of Words
	ReadsCount                  // a whole number
	ReadsUnit                   // the symbol of a unit of Dim
	ReadsValue                  // a known value of any dimension; other givens may be used
	ReadsQuantity               // a known value of Dim; givens may be used
	ReadsRange                  // two known values, low .. high
	ReadsVector                 // components of Dim, or an expression of points and givens
	ReadsDirection              // +x, a vector, dir(A, B), ...
	ReadsMagnitude              // a value of Dim, linear in unknowns; ? or blank for an unknown
	ReadsIntensity              // a value of Dim, two from end to end, or an expression in s
	ReadsPoint                  // the name of a point
	ReadsPoints                 // names of points
	ReadsBody                   // the name of a body
	ReadsBodies                 // names of bodies
	ReadsResults                // names of results
	ReadsPrinted                // a result as a source prints it
	ReadsTension                // one of the two tensions of the row's belt
)

// Word is a word that a cell may hold, with what it means. Other spellings are
// read and not offered.
type Word struct {
	Text, Says string
	Others     []string
}

// KeyInfo describes a key: what its cell is read as and what it means.
type KeyInfo struct {
	Name    string
	Reads   Reads
	Dim     units.Dim // of what is measured
	Words   []Word    // of ReadsWord
	Kinds   []string  // the kinds of a row that use it, by their first names; nil for all
	Says    string    // in one line, without a full stop
	Example string
}

// UsedBy tells whether a row of a kind uses the key.
func (k KeyInfo) UsedBy(kind string) bool { return k.Kinds == nil || slices.Contains(k.Kinds, kind) }

// TableInfo describes a table of a sheet. Where Fixed, its rows are themselves
// the keys (the table "" before the first header, and [units]); otherwise a row is
// named by the user, and a plain value stands for the key Plain, where that is
// not "".
type TableInfo struct {
	Name, Row, Says string // Row is what a row is called: "line"
	Plain           string
	Fixed           bool
	Keys            []KeyInfo
}

// Tables is the one table of keys, in the usual order of a sheet: readers, the
// check for misspelt keys, completion, help and the schema are fed from it.
func Tables() []TableInfo { return slices.Clone(tables) }

// Key gives a key of a table by name.
func (t TableInfo) Key(name string) (KeyInfo, bool) {
	for i := range t.Keys {
		if t.Keys[i].Name == name {
			return t.Keys[i], true
		}
	}
	return KeyInfo{}, false
}

// ARow is a row with its article: "a line", "an answer".
func (t TableInfo) ARow() string {
	return say.Article(t.Row) + " " + t.Row
}

// KeyNames lists the keys of a table.
func (t TableInfo) KeyNames() []string {
	return say.Each(t.Keys, func(k KeyInfo) string { return k.Name })
}

// TableNamed gives a table by name, one without keys where there is none.
func TableNamed(name string) (t TableInfo, ok bool) {
	for i := range tables {
		if tables[i].Name == name {
			return tables[i], true
		}
	}
	return t, false
}

// CellKey gives the key that describes a cell of a table.
func CellKey(table, row, key string) (KeyInfo, bool) {
	t, _ := TableNamed(table)
	switch {
	case t.Fixed:
		key = row
	case table == "answers" && row == "source":
		return KeyInfo{Name: "source", Reads: ReadsText, Says: "author, title, edition, example number", Example: "own; by hand"}, key == ""
	case key == "":
		key = t.Plain
	}
	return t.Key(key)
}

// WordOf is the place of a word, in any of its spellings, among those that a cell may
// hold, -1 where it is none of them.
func WordOf(words []Word, text string) int {
	return slices.IndexFunc(words, func(w Word) bool { return w.Text == text || slices.Contains(w.Others, text) })
}

// spelled lists words as they are offered.
func spelled(words []Word) (texts []string) {
	for _, w := range words {
		if w.Text != "" {
			texts = append(texts, w.Text)
		}
	}
	return texts
}

// The words of kinds are in the order of the kinds.
var (
	lineWords  = say.Each(kinds, func(k KindInfo) Word { return Word{Text: k.Name, Says: k.Holds} })
	jointWords = say.Each(joints, func(k JointInfo) Word { return Word{Text: k.Name, Says: k.Says, Others: k.Aliases} })
)

// jointsThat gives the joints that something holds of.
func jointsThat(have func(JointInfo) bool) (names []string) {
	for _, k := range joints {
		if have(k) {
			names = append(names, k.Name)
		}
	}
	return names
}

func needs(key string) []string {
	return jointsThat(func(k JointInfo) bool { return k.Plane.Needs == key || k.Space.Needs == key })
}

var rough = jointsThat(func(k JointInfo) bool { return k.Space.Forces == HoldRough })

// tables is never written to.
var tables = []TableInfo{
	{Name: "", Row: "key", Says: "what the sheet is about", Fixed: true, Keys: []KeyInfo{
		{Name: "title", Reads: ReadsText, Says: "the sheet's title", Example: "Mast stayed by three guys"},
		{Name: "statement", Reads: ReadsText, Says: "the task in words, as a student reads it", Example: "Find the tensions of the guys."},
		{Name: "lesson", Reads: ReadsText, Says: "what the sheet teaches, shown with its solution and never on a task page", Example: "A cable can only pull."},
		{Name: "plane", Reads: ReadsWord, Words: []Word{{Text: "xy", Says: "xy for a planar problem; blank for space"}, {Text: "", Says: "in space"}}, Says: "makes it a planar problem", Example: "xy"},
		{Name: "up", Reads: ReadsWord, Words: upWords, Says: "the upward direction; gravity acts against it", Example: "+z"},
		{Name: "g", Reads: ReadsQuantity, Dim: units.Acceleration, Says: "the acceleration of gravity; 9.81 m/s^2 if blank", Example: "9.81 m/s^2"},
		{Name: "figures", Reads: ReadsCount, Says: "significant figures shown, 1 to 12", Example: "3"},
		{Name: "asked", Reads: ReadsResults, Says: "the results that the statement asks for", Example: "T1 T2 T1.x"},
		{Name: "expect", Reads: ReadsWord, Words: verdictWords, Says: "the verdict that a teaching sheet demonstrates", Example: "no-equilibrium"},
	}},
	{Name: "units", Row: "unit", Says: "the units of bare numbers and of results", Fixed: true, Keys: []KeyInfo{
		{Name: "length", Reads: ReadsUnit, Dim: units.Length, Says: "the unit of lengths", Example: "m"},
		{Name: "force", Reads: ReadsUnit, Dim: units.Force, Says: "the unit of forces", Example: "N"},
		{Name: "angle", Reads: ReadsUnit, Dim: units.Angle, Says: "the unit of angles", Example: "deg"},
		{Name: "mass", Reads: ReadsUnit, Dim: units.Mass, Says: "the unit of masses", Example: "kg"},
	}},
	{Name: "given", Row: "given value", Says: "named values, for use in every cell", Plain: "value", Keys: []KeyInfo{
		{Name: "value", Reads: ReadsValue, Says: "the value", Example: "6 m"},
		{Name: "range", Reads: ReadsRange, Says: "its range, for variants", Example: "300 N .. 500 N"},
		{Name: "step", Reads: ReadsValue, Says: "the step between variants", Example: "50 N"},
	}},
	{Name: "points", Row: "point", Says: "named places", Plain: "at", Keys: []KeyInfo{
		{Name: "at", Reads: ReadsVector, Dim: units.Length, Says: "its coordinates, or an expression of other points", Example: "4, 0, h"},
		{Name: "on", Reads: ReadsBodies, Says: "the body it belongs to, or particle; blank for fixed ground", Example: "boom"},
	}},
	{Name: "bodies", Row: "body", Says: "properties of bodies other than their points", Keys: []KeyInfo{
		{Name: "weight", Reads: ReadsQuantity, Dim: units.Force, Says: "its weight; a mass is multiplied by g", Example: "2 kN"},
		{Name: "centre", Reads: ReadsVector, Dim: units.Length, Says: "where its weight acts", Example: "(A + B)/2"},
		{Name: "about", Reads: ReadsPoint, Says: "the point about which its moments are taken", Example: "O"},
		{Name: "outline", Reads: ReadsPoints, Says: "the points of its outline in figures, in order", Example: "A B C D"},
	}},
	{Name: "lines", Row: "line", Says: "forces with a line of action", Keys: []KeyInfo{
		{Name: "kind", Reads: ReadsWord, Words: lineWords, Says: "its kind, which determines its sense", Example: "cable"},
		{Name: "path", Reads: ReadsPoints, Says: "its points, of a belt from one end round the drum to the other; a force or a contact whose ends are on two bodies acts on both, equal and opposite", Example: "T A"},
		{Name: "at", Reads: ReadsPoint, Says: "its point of application, if it has a direction instead of a path", Example: "T"},
		{Name: "along", Reads: ReadsDirection, Says: "its direction; together with a path only between two particles", Example: "(3, 0, -4)"},
		{Name: "components", Reads: ReadsVector, Dim: units.Force, Kinds: []string{Force.String(), Weight.String(), Contact.String()}, Says: "the components of the force; ? for an unknown one", Example: "(100, -200, 50) N"},
		{Name: "magnitude", Reads: ReadsMagnitude, Dim: units.Force, Says: "its magnitude, known or in terms of others; blank or ? if unknown; of a belt two, such as 600 N, ?", Example: "2*T1"},
		{Name: "stiffness", Reads: ReadsQuantity, Dim: units.LineLoad, Kinds: []string{SpringKind.String()}, Says: "of a spring: force per length", Example: "500 N/m"},
		{Name: "natural", Reads: ReadsQuantity, Dim: units.Length, Kinds: []string{SpringKind.String()}, Says: "of a spring: its unstretched length", Example: "0.4 m"},
		{Name: "wrap", Reads: ReadsQuantity, Dim: units.Angle, Kinds: []string{BeltKind.String()}, Says: "of a belt: the angle over which it touches the drum; left out, the angle by which its path changes direction there", Example: "1.5 turn"},
		{Name: "friction", Reads: ReadsQuantity, Dim: units.Number, Kinds: []string{BeltKind.String()}, Says: "of a belt: the coefficient of static friction on the drum", Example: "0.3"},
		{Name: "tight", Reads: ReadsTension, Kinds: []string{BeltKind.String()}, Says: "of a belt R: R1 or R2, the larger tension where slip impends, which is e^(μβ) times the other", Example: "R2"},
		{Name: "limit", Reads: ReadsQuantity, Dim: units.Force, Says: "its capacity, which is checked; of a belt against the larger tension", Example: "5 kN"},
		{Name: "on", Reads: ReadsBodies, Says: "the body it acts on, if its point is on several; two for a force or a contact between them", Example: "boom"},
	}},
	{Name: "joints", Row: "joint", Says: "supports and connections at a point", Keys: []KeyInfo{
		{Name: "kind", Reads: ReadsWord, Words: jointWords, Says: "its kind, which determines its reactions", Example: "pin"},
		{Name: "at", Reads: ReadsPoint, Says: "its point; if blank, the point with the name of the joint", Example: "C"},
		{Name: "on", Reads: ReadsBodies, Says: "the bodies it connects, or two particles; if blank, those of its point", Example: "left right"},
		{Name: "normal", Reads: ReadsDirection, Kinds: needs("normal"), Says: "of a roller or a surface: the direction in which it pushes the body", Example: "+y"},
		{Name: "axis", Reads: ReadsDirection, Kinds: needs("axis"), Says: "the axis about which it rotates or along which it slides", Example: "+x"},
		{Name: "moments", Reads: ReadsWord, Words: []Word{{Text: "none", Says: "it exerts no moments: one of an aligned pair"}}, Kinds: jointsThat(func(k JointInfo) bool { return k.MayLack }), Says: "none, for one of an aligned pair of hinges or bearings", Example: "none"},
		{Name: "friction", Reads: ReadsQuantity, Dim: units.Number, Kinds: rough, Says: "the coefficient of static friction of a rough surface", Example: "0.3"},
		{Name: "impending", Reads: ReadsDirection, Kinds: rough, Says: "the direction of impending slip; friction then equals μN", Example: "+x"},
		{Name: "face", Reads: ReadsPoints, Kinds: append([]string{"smooth-surface"}, rough...), Says: "in the plane: the ends of the face in contact with the surface", Example: "A B"},
		{Name: "limit", Reads: ReadsQuantity, Dim: units.Force, Says: "the capacity of its force, which is checked", Example: "5 kN"},
	}},
	{Name: "couples", Row: "couple", Says: "moments on bodies", Keys: []KeyInfo{
		{Name: "on", Reads: ReadsBody, Says: "the body it acts on", Example: "boom"},
		{Name: "about", Reads: ReadsDirection, Says: "the axis of the moment, right-handed", Example: "+z"},
		{Name: "magnitude", Reads: ReadsMagnitude, Dim: units.Moment, Says: "its moment; blank or ? if unknown", Example: "50 N m"},
		{Name: "components", Reads: ReadsVector, Dim: units.Moment, Says: "the components of the moment", Example: "(0, 0, 50) N m"},
		{Name: "stiffness", Reads: ReadsQuantity, Dim: units.Dim{L: 2, M: 1, T: -2, A: -1}, Says: "of a torsional spring: moment per angle", Example: "20 N m/rad"},
		{Name: "turn", Reads: ReadsQuantity, Dim: units.Angle, Says: "of a torsional spring: its angle of twist", Example: "20 deg"},
	}},
	{Name: "distributed", Row: "load", Says: "loads distributed along a line", Keys: []KeyInfo{
		{Name: "on", Reads: ReadsBody, Says: "the body it acts on; if blank, that of both ends", Example: "beam"},
		{Name: "path", Reads: ReadsPoints, Says: "the points between which it is distributed", Example: "A B"},
		{Name: "along", Reads: ReadsDirection, Says: "the direction in which it pushes", Example: "-y"},
		{Name: "magnitude", Reads: ReadsIntensity, Dim: units.LineLoad, Says: "force per length: one value, two from end to end, or an expression in s", Example: "2 kN/m .. 4 kN/m"},
		{Name: "kind", Reads: ReadsWord, Words: []Word{{Text: "hydrostatic", Says: "the pressure of water on a gate"}}, Says: "hydrostatic, for water on a gate", Example: "hydrostatic"},
		{Name: "surface", Reads: ReadsQuantity, Dim: units.Length, Kinds: []string{"hydrostatic"}, Says: "of water: its level along up", Example: "3 m"},
		{Name: "density", Reads: ReadsQuantity, Dim: units.Dim{L: -3, M: 1}, Kinds: []string{"hydrostatic"}, Says: "of water: 1000 kg/m^3 if blank", Example: "1000 kg/m^3"},
		{Name: "width", Reads: ReadsQuantity, Dim: units.Length, Kinds: []string{"hydrostatic"}, Says: "of the gate", Example: "2 m"},
	}},
	{Name: "answers", Row: "answer", Says: "reference answers, compared to the precision written", Plain: "printed", Keys: []KeyInfo{
		{Name: "printed", Reads: ReadsPrinted, Says: "the reference answer as written", Example: "761 N"},
		{Name: "within", Reads: ReadsQuantity, Says: "a tolerance wider than the precision written", Example: "0.5 N"},
		{Name: "why", Reads: ReadsText, Says: "why the tolerance is wider", Example: "the source rounds intermediate results"},
	}},
}

var upWords = []Word{
	{Text: "+z", Says: "up is +z"}, {Text: "+y", Says: "up is +y, as in a plane"}, {Text: "+x", Says: "up is +x"}, {Text: "-z", Says: "up is -z"},
	{Text: "-y", Says: "up is -y"}, {Text: "-x", Says: "up is -x"}, {Text: "", Says: "+z in space, +y in the plane"},
}

// verdictWords are the verdicts a sheet may expect, as the JSON contract has them.
var verdictWords = []Word{
	{Text: "determinate", Says: "every unknown has one value"},
	{Text: "inadmissible", Says: "a cable would have to push or a contact to pull, a surface slips or a body tips", Others: []string{senseBroken}},
	{Text: "indeterminate", Says: "some unknowns are undetermined"},
	{Text: "no-equilibrium", Says: "the loads move a body and no support prevents it"},
	{Text: ExpectResultant, Says: "known forces only, which are added and need not balance"},
	{Text: FailedCheck, Says: "a limit is exceeded"},
	{Text: AtRisk, Says: "every check passes as typed, but not everywhere within the ± of the inputs"},
	{Text: "", Says: "a single solution and no failed check"},
}
