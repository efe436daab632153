package names

import (
	"trivet/mechanics/problem"
	"trivet/units"
)

// synonyms are the other words that people write for tables and keys, each with what
// the sheet calls it: where several are, the first that the table has, and for a
// table the one that knows most of its keys. They are common practice, and not read.
// A word is here only where what it says means the same under the other key, or a
// proviso says what does not: an angle is no along, as it does not say from where, a
// depth is not a level, and decimals are not significant figures.
var synonyms = map[string][]string{
	// tables
	"line": {"lines"}, "force": {"lines", "magnitude"}, "forces": {"lines"}, "cables": {"lines"}, "members": {"lines"}, "member": {"lines"},
	"load": {"lines", "distributed", "couples"}, "loads": {"lines", "distributed", "couples"},
	"actions": {"lines", "distributed", "couples"}, "distributed-load": {"distributed"}, "distributed-loads": {"distributed"},
	"line-loads": {"distributed"}, "pressure": {"distributed"}, "moment": {"couples", "magnitude"}, "moments": {"couples"}, "torques": {"couples"},
	"body": {"bodies", "on"}, "bodys": {"bodies"}, "rigid-bodies": {"bodies"}, "point": {"points", "at"}, "nodes": {"points"}, "node": {"points", "at"},
	"coordinates": {"points", "at"}, "joint": {"joints"}, "support": {"joints"}, "supports": {"joints"}, "reactions": {"joints"},
	"connections": {"joints"}, "constraints": {"joints"}, "givens": {"given"}, "knowns": {"given"}, "values": {"given"}, "variables": {"given"},
	"parameters": {"given"}, "constants": {"given"}, "data": {"given"}, "unit": {"units"}, "answer": {"answers"}, "solution": {"answers"},
	"solutions": {"answers"},

	// before the first table
	"gravity": {"g"}, "gravitation": {"g"}, "name": {"title"}, "heading": {"title"}, "text": {"statement"}, "task": {"statement"}, "moral": {"lesson"}, "teaches": {"lesson"},
	"problem": {"statement"}, "question": {"statement"}, "description": {"statement"}, "planar": {"plane"},
	"digits": {"figures"}, "sigfigs": {"figures"}, "significant-figures": {"figures"}, "ask": {"asked"},
	"find": {"asked"}, "sought": {"asked"}, "unknowns": {"asked"}, "wanted": {"asked"}, "expected": {"expect"}, "verdict": {"expect"},
	"vertical": {"up"},

	// of rows
	"mu": {"friction"}, "mu-s": {"friction"}, "μ-s": {"friction"}, "mag": {"magnitude"}, "μ": {"friction"}, "coefficient": {"friction"}, "cof": {"friction"}, "friction-coefficient": {"friction"},
	"static-friction": {"friction"}, "slip": {"impending"}, "slipping": {"impending"}, "size": {"magnitude"}, "amount": {"magnitude"},
	"intensity": {"magnitude"}, "tension": {"magnitude"}, "value": {"magnitude", "value", "printed"}, "capacity": {"limit"}, "wll": {"limit"},
	"swl": {"limit"}, "max": {"limit", "range"}, "maximum": {"limit", "range"}, "strength": {"limit"}, "k": {"stiffness"},
	"rate": {"stiffness"}, "spring-constant": {"stiffness"}, "l0": {"natural"}, "free-length": {"natural"}, "rest-length": {"natural"},
	"unstretched": {"natural"}, "natural-length": {"natural"}, "direction": {"along", "normal", "about", "axis"}, "dir": {"along", "normal"},
	"angle": {"turn"}, "points": {"path"}, "between": {"path"}, "from": {"path"}, "through": {"path"}, "position": {"at"},
	"location": {"at"}, "place": {"at"}, "pos": {"at"}, "xy": {"at"}, "xyz": {"at"}, "coords": {"at"}, "bodies": {"on"}, "type": {"kind"},
	"center": {"centre"}, "centroid": {"centre"}, "cg": {"centre"}, "cog": {"centre"}, "mass": {"weight"}, "vector": {"components"},
	"axis": {"about"}, "about": {"axis"}, "rotation": {"turn"}, "twist": {"turn"}, "level": {"surface"},
	"contact-angle": {"wrap"}, "angle-of-contact": {"wrap"}, "wrap-angle": {"wrap"}, "beta": {"wrap"}, "β": {"wrap"}, "tight-side": {"tight"},
	"tolerance": {"within"}, "tol": {"within"}, "reason": {"why"}, "min": {"range"}, "minimum": {"range"},
}

// quantities are the words among them that say what is measured.
var quantities = map[string]units.Dim{
	"mass": units.Mass, "force": units.Force, "tension": units.Force, "moment": units.Moment, "intensity": units.LineLoad,
}

// proviso is what must change in a cell with its key for it to mean the same: a bare
// number is in the unit of its key.
func proviso(word, text, kind string, k problem.KeyInfo) string {
	switch {
	case len(synonyms[word]) == 0: // it is mistyped
		return ""
	case word == "from", k.Reads == problem.ReadsRange:
		return ", with both its ends"
	case k.Name == "normal": // its direction may be that of the motion
		return ", the way it pushes the body"
	case word == "tension" && kind == problem.Strut.String():
		return ", which is positive in compression"
	}
	if d, ok := quantities[word]; !ok || d == k.Dim {
		return ""
	}
	e, err := units.ParseOne(text)
	if err != nil {
		return ""
	}
	if _, d, literal := e.Literal(); literal && d == units.Number {
		return ", with the unit of the " + word
	}
	return ""
}

// later are the tables, and the keys of tables, of sheets for versions after this one.
var later = []string{"results", "cuts", "parts", "cases", "format", "given.so", "given.choose", "points.from", "points.side"}
