package problem

// synonyms are the other words that people write for tables and keys, each with what
// the sheet calls it: where several are, the first that the table has, and for a
// table the one that knows most of its keys. They are common practice, and not read.
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
	"gravity": {"g"}, "gravitation": {"g"}, "name": {"title"}, "heading": {"title"}, "text": {"statement"}, "task": {"statement"},
	"problem": {"statement"}, "question": {"statement"}, "description": {"statement"}, "planar": {"plane"}, "precision": {"figures"},
	"digits": {"figures"}, "sigfigs": {"figures"}, "significant-figures": {"figures"}, "decimals": {"figures"}, "ask": {"asked"},
	"find": {"asked"}, "sought": {"asked"}, "unknowns": {"asked"}, "wanted": {"asked"}, "expected": {"expect"}, "verdict": {"expect"},
	"vertical": {"up"},

	// of rows
	"mu": {"friction"}, "mu-s": {"friction"}, "μ-s": {"friction"}, "mag": {"magnitude"}, "μ": {"friction"}, "coefficient": {"friction"}, "cof": {"friction"}, "friction-coefficient": {"friction"},
	"static-friction": {"friction"}, "slip": {"impending"}, "slipping": {"impending"}, "size": {"magnitude"}, "amount": {"magnitude"},
	"intensity": {"magnitude"}, "tension": {"magnitude"}, "value": {"magnitude", "value", "printed"}, "capacity": {"limit"}, "wll": {"limit"},
	"swl": {"limit"}, "max": {"limit", "range"}, "maximum": {"limit", "range"}, "strength": {"limit"}, "k": {"stiffness"},
	"rate": {"stiffness"}, "spring-constant": {"stiffness"}, "l0": {"natural"}, "free-length": {"natural"}, "rest-length": {"natural"},
	"unstretched": {"natural"}, "natural-length": {"natural"}, "direction": {"along", "normal", "about", "axis"}, "dir": {"along", "normal"},
	"angle": {"along", "turn"}, "points": {"path"}, "between": {"path"}, "from": {"path"}, "through": {"path"}, "position": {"at"},
	"location": {"at"}, "place": {"at"}, "pos": {"at"}, "xy": {"at"}, "xyz": {"at"}, "coords": {"at"}, "bodies": {"on"}, "type": {"kind"},
	"center": {"centre"}, "centroid": {"centre"}, "cg": {"centre"}, "cog": {"centre"}, "mass": {"weight"}, "vector": {"components"},
	"axis": {"about"}, "about": {"axis"}, "rotation": {"turn"}, "twist": {"turn"}, "level": {"surface"}, "depth": {"surface"},
	"tolerance": {"within"}, "tol": {"within"}, "reason": {"why"}, "min": {"range"}, "minimum": {"range"},
}

// later are the tables, and the keys of tables, of sheets for versions after this one.
var later = []string{"results", "cuts", "parts", "cases", "format", "given.so", "given.choose", "points.from", "points.side"}
