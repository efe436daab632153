package cells

import (
	"cmp"
	"strings"

	"trivet/mechanics/problem"
	"trivet/mechanics/sheet"
	"trivet/tui/results"
	"trivet/units"
)

// Fact is what follows from a row: a value, and what it is; the row's own value, such
// as a point's coordinates, needs no words.
type Fact struct{ is, Value, unit string }

// ShownFacts are facts as the last line shows them, behind the cell.
func ShownFacts(facts []Fact) (s string) {
	for _, f := range facts {
		s += "   " + cmp.Or(f.is, "= ") + f.Value + f.unit
	}
	return s
}

// SaidFacts are the same in a sentence.
func SaidFacts(facts []Fact) string {
	parts := make([]string, len(facts))
	for i, f := range facts {
		parts[i] = cmp.Or(f.is, "reads ") + f.Value + f.unit
	}
	return strings.Join(parts, ", ")
}

// About tells what follows from a row.
func (b Builder) About(ref sheet.Ref) []Fact {
	if problem.Private(ref.Row) {
		return []Fact{{is: "kept but ignored, because its name begins with x-"}}
	}
	switch ref.Table {
	case "points":
		if xyz := b.placed(ref.Row).Text; xyz != "" {
			return []Fact{{Value: xyz, unit: " " + b.Latest.Units.Length.Symbol}}
		}
	case "lines":
		return b.aboutLine(ref)
	case "joints", "bodies", "couples", "distributed":
		return b.aboutSupport(ref)
	case "given":
		if v := b.givenValue(ref.Row); v != "" {
			return []Fact{{Value: v}}
		}
	}
	return nil
}

// aboutSupport tells what a support holds or what a load comes to.
func (b Builder) aboutSupport(ref sheet.Ref) []Fact {
	p := b.Latest
	if p == nil {
		return nil
	}
	switch ref.Table {
	case "joints":
		row, _ := b.Typed.Table("joints").Row(ref.Row)
		if info, ok := JointNamed(row.Text("kind")); ok {
			return []Fact{{is: info.Says}}
		}
	case "distributed":
		for _, d := range p.Loads {
			if d.Name == ref.Row && d.OK {
				return []Fact{{is: "resultant ", Value: resultant(p, d)}}
			}
		}
	case "bodies":
		for _, body := range p.Bodies {
			if body.Name == ref.Row && !body.Particle {
				return []Fact{{is: "moments about " + body.AboutName + " ", Value: results.Vector(p, body.About, units.Length)}}
			}
		}
	}
	return nil
}

func (b Builder) aboutLine(ref sheet.Ref) (facts []Fact) {
	r, u := b.course(ref.Row)
	if r != "" {
		facts = append(facts, Fact{is: "|r| = ", Value: r, unit: " " + b.Latest.Units.Length.Symbol})
	}
	if u != "" {
		facts = append(facts, Fact{is: "u = ", Value: u})
	}
	return facts
}
