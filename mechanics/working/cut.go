package working

import (
	"fmt"
	"strings"

	"trivet/mechanics/doc"
	"trivet/mechanics/problem"
	"trivet/mechanics/statics"
	"trivet/units"
)

// cutFree says what is cut free, why, and how many equations that gives.
func (b *builder) cutFree() {
	var particles, rigid []string
	var all []int
	for i := range b.p.CutFree() {
		all = append(all, i)
		if b.p.Bodies[i].Particle {
			particles = append(particles, b.p.Bodies[i].Name)
		} else {
			rigid = append(rigid, b.p.Bodies[i].Name)
		}
	}
	var body []doc.Block
	if len(particles) > 0 {
		verb, their := " is a particle", "the forces on it meet in one point"
		if len(particles) > 1 {
			verb, their = " are particles", "the forces on each meet in one point"
		}
		body = append(body, say(listWords(particles)+verb+": "+their+", so they balance where ", b.zero("F"),
			fmt.Sprintf(", %s%s.", count(b.axes, "equation"), each(len(particles)))))
	}
	if len(rigid) > 0 {
		verb := " is a rigid body"
		if len(rigid) > 1 {
			verb = " are rigid bodies"
		}
		body = append(body, say(listWords(rigid)+verb+": forces act at several points, so ", b.zero("F"), " and ", b.zero("M"),
			fmt.Sprintf(", %s%s.", count(b.perBody(), "equation"), each(len(rigid)))))
	}
	body = append(body, b.cuts()...)
	body = append(body, b.twoForce()...)
	if len(b.s.X) > 0 {
		body = append(body, say(fmt.Sprintf("Together %s for %s: ", count(len(b.s.System.Rows), "equation"), count(len(b.s.X), "unknown")), list(b.unknowns()), "."))
	}
	b.step(CutFree, "What is cut free", Subject{Bodies: all}, body...)
}

func (b *builder) perBody() int { return 3 * (b.axes - 1) }

func each(n int) string {
	if n == 1 {
		return ""
	}
	return " each"
}

func count(n int, noun string) string {
	if n == 1 {
		return "1 " + noun
	}
	return fmt.Sprintf("%d %ss", n, noun)
}

// zero is ΣF = 0, or ΣM = 0.
func (b *builder) zero(text string) doc.Math {
	return equal(bigSum(doc.Math{Op: doc.Vec, Text: text}), exactly(0))
}

func (b *builder) unknowns() []doc.Math {
	all := make([]doc.Math, len(b.s.X))
	for j := range all {
		all[j] = b.unknown(j)
	}
	return all
}

// cuts says what stands in place of the lines and joints that are cut.
func (b *builder) cuts() []doc.Block {
	byKind := map[problem.Kind][]doc.Math{}
	var between []doc.Block
	for i := range b.p.Lines {
		if l := &b.p.Lines[i]; l.Between() && !l.Kind.Info().Path {
			between = append(between, b.betweenWords(l))
			if l.Kind == problem.Contact {
				continue
			}
		}
		if b.p.Lines[i].Belt != nil && len(b.p.Lines[i].Acts) == 0 {
			continue
		}
		byKind[b.p.Lines[i].Kind] = append(byKind[b.p.Lines[i].Kind], named(b.p.Lines[i].Name))
	}
	var out []doc.Block
	for _, k := range problem.Kinds() {
		of := byKind[k.Kind]
		if len(of) == 0 {
			continue
		}
		says := ""
		switch k.Kind {
		case problem.Cable:
			says = "cut: a cable can only pull, along itself"
		case problem.Strut:
			says = "cut: a strut can only push, along itself"
		case problem.BeltKind:
			says = "cut: a belt can only pull, along its straight parts"
		case problem.Link:
			says = "cut: a link is a two-force member, loaded at its ends only, so its force lies along the line between them; tension is taken as positive"
		case problem.SpringKind:
			says = "cut: a spring acts along itself; tension is taken as positive"
		case problem.Contact:
			says = "the push of a smooth surface, along its normal"
		default:
			continue
		}
		verb := " is "
		if len(of) > 1 {
			verb = " are "
			says = strings.Replace(says, "the push of a smooth surface, along its normal", "the pushes of smooth surfaces, along their normals", 1)
		}
		out = append(out, say(list(of), verb+says+"."))
	}
	out = append(out, between...)
	if len(b.p.Joints) > many {
		return append(out, b.jointTable())
	}
	for i := range b.p.Joints {
		out = append(out, b.jointWords(&b.p.Joints[i]))
	}
	return out
}

// betweenWords says of a force or a contact between two bodies how it acts on each.
func (b *builder) betweenWords(l *problem.Line) doc.Block {
	first, second := b.p.Bodies[l.Acts[0].Body].Name, b.p.Bodies[l.Acts[1].Body].Name
	along := "on " + first + " along its direction, and the opposite on " + second
	if l.JoinsEnds() {
		along = "along the line through " + b.p.Points[l.Legs[0].From].Name + " and " + b.p.Points[l.Legs[0].To].Name + ": one force on each, equal and opposite"
	}
	what := " is a force between "
	if l.Kind == problem.Contact {
		what = " is the push of a smooth contact between "
	}
	return say(named(l.Name), what+first+" and "+second+", "+along+".")
}

func (b *builder) jointHolds(j *problem.Joint) []doc.Math {
	var of []doc.Math
	for _, terms := range [][]problem.ActTerm{j.Forces, j.Moments} {
		for _, t := range terms {
			of = append(of, b.unknown(t.Unknown))
		}
	}
	return of
}

func (b *builder) jointBodies(j *problem.Joint) string {
	if j.Second == problem.Ground {
		return b.p.Bodies[j.First].Name + " to the ground"
	}
	return b.p.Bodies[j.First].Name + " to " + b.p.Bodies[j.Second].Name
}

func (b *builder) jointWords(j *problem.Joint) doc.Block {
	of := b.jointHolds(j)
	stand := "; in its place stand "
	if len(of) == 1 {
		stand = "; in its place stands "
	}
	text := []any{fmt.Sprintf("The %s at %s joins %s", kindWords(j), b.p.Points[j.Point].Name, b.jointBodies(j))}
	switch {
	case len(of) == 0:
		return say(append(text, ", and exerts nothing.")...)
	case j.Second == problem.Ground:
		text = append(text, stand, list(of))
	default:
		text = append(text, stand, list(of), " on "+b.p.Bodies[j.First].Name+" and the opposite on "+b.p.Bodies[j.Second].Name)
	}
	if j.Impending {
		text = append(text, fmt.Sprintf(". Slipping impends, so its friction is at its most, %s of the normal force, against the slip", units.Figures(j.Friction, digits(j.Friction))))
	}
	return say(append(text, ".")...)
}

func kindWords(j *problem.Joint) string { return strings.ReplaceAll(j.Kind.String(), "-", " ") }

func (b *builder) jointTable() doc.Block {
	t := table("Joint", "Kind", "Joins", "In its place")
	for i := range b.p.Joints {
		j := &b.p.Joints[i]
		t.Add(cell(named(j.Name)), wordCell(kindWords(j)), wordCell(b.jointBodies(j)), listed(b.jointHolds(j)))
	}
	return t
}

// twoForce argues the bodies that are loaded at two points only.
func (b *builder) twoForce() []doc.Block {
	var names, points []string
	for _, c := range b.s.Checks {
		if c.Kind == statics.CheckTwoForce {
			names, points = append(names, c.Subject), append(points, c.With)
		}
	}
	switch {
	case len(names) == 0:
		return nil
	case len(names) > many:
		return []doc.Block{say(listWords(names) + " are two-force members: forces act on each at two points only, so they are equal and opposite and lie along the line that joins the points.")}
	}
	var out []doc.Block
	for k := range names {
		out = append(out, say(names[k]+" is a two-force member: forces act on it at "+points[k]+" only, so the two are equal and opposite and lie along the line that joins the points."))
	}
	return out
}
