package working

import (
	"slices"
	"strconv"

	"trivet/mechanics/doc"
	"trivet/mechanics/handsolve"
	"trivet/mechanics/origin"
	"trivet/mechanics/problem"
	english "trivet/mechanics/say"
	"trivet/mechanics/statics"
)

// cutFree says what is cut free, what replaces the supports, and how many equations and
// unknowns that gives.
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
	var body, last []doc.Block
	var ofOne []any
	added := (b.p.ResultantOnly() || b.s.Verdict == statics.NoEquilibrium) && len(b.s.X) == 0
	if n := len(particles); n > 0 {
		says := []any{english.Capital(english.Plural(n, "particle")) + " " + english.And(particles...) + ": the forces are concurrent, so "}
		if added {
			says = append(says, "their resultant ", equal(vector("R"), bigSum(vector("F"))), " acts through the particle.")
		} else {
			ofOne = append(slices.Clone(says), b.zero("M"), " holds of itself and ", b.zero("F"), " gives "+english.Count(b.axes, "equation"))
			says = append(says, b.zero("M"), " holds of itself and ", b.zero("F"), " is sufficient ("+english.Count(b.axes, "equation")+each(n)+").")
		}
		body = append(body, say(says...))
	}
	if n := len(rigid); n > 0 {
		what := "Rigid body "
		if n > 1 {
			what = "Rigid bodies "
		}
		says := []any{what + english.And(rigid...) + ": "}
		if added {
			says = append(says, "the known forces are added, and their moments about "+english.And(b.aboutPoints()...)+".")
		} else {
			ofOne = append(slices.Clone(says), b.zero("F"), " and ", b.zero("M"), " give "+english.Count(3*(b.axes-1), "equation"))
			says = append(says, b.zero("F"), " and ", b.zero("M"), " give "+english.Count(3*(b.axes-1), "equation")+each(n)+".")
		}
		body = append(body, say(says...))
	}
	n := len(b.s.X) + len(b.ties)
	var unknowns []doc.Math
	for j := range b.s.X {
		unknowns = append(unknowns, b.unknown(j))
	}
	for _, t := range b.ties {
		unknowns = append(unknowns, t.name)
	}
	in := []any{" in " + english.Count(n, "unknown") + ": ", list(unknowns), "."}
	switch {
	case len(b.s.X) == 0:
	case len(all) == 1 && len(b.ties) == 0: // what one body gives is all there is
		last, body = []doc.Block{say(append(ofOne, in...)...)}, nil
	default:
		last = []doc.Block{say(append([]any{"In total, " + english.Count(len(b.s.System.Rows)+len(b.ties), "equation") + b.equationsOf()}, in...)...)}
	}
	body = append(append(append(body, b.cuts()...), b.twoForce()...), last...)
	title := "Free bodies"
	if len(all) == 1 {
		title = "Free body"
	}
	b.step(CutFree, title, Subject{Bodies: all}, body...)
}

// aboutPoints are the points that moments are taken about.
func (b *builder) aboutPoints() []string {
	var names []string
	for i := range b.p.CutFree() {
		if body := &b.p.Bodies[i]; !body.Particle && !slices.Contains(names, body.AboutName) {
			names = append(names, body.AboutName)
		}
	}
	return names
}

func each(n int) string {
	if n == 1 {
		return ""
	}
	return " each"
}

// zero is ΣF = 0, or ΣM = 0.
func (b *builder) zero(text string) doc.Math {
	return equal(bigSum(doc.Math{Op: doc.Vec, Text: text}), traced(origin.Balance, exactly(0)))
}

// cutWords say of each kind of line what it can do where it is cut, of one and of several.
var cutWords = map[problem.Kind]struct{ noun, one, several string }{
	problem.Cable:      {"Cut cable", "it can only pull, along its own line", "each can only pull, along its own line"},
	problem.Strut:      {"Cut strut", "it can only push, along its own line", "each can only push, along its own line"},
	problem.BeltKind:   {"Cut belt", "it can only pull, along its straight part", "each can only pull, along its straight part"},
	problem.Link:       {"Cut link", "a two-force member; its force acts along the line through its ends, tension positive", "two-force members; the force in each acts along the line through its ends, tension positive"},
	problem.SpringKind: {"Cut spring", "its force acts along its own line, tension positive", "the force in each acts along its own line, tension positive"},
	problem.Contact:    {"Contact", "it can only push, along its normal", "each can only push, along its normal"},
}

// cuts says what replaces the lines and joints that are cut.
func (b *builder) cuts() []doc.Block {
	byKind := map[problem.Kind][]doc.Math{}
	var between []doc.Block
	for i := range b.p.Lines {
		l := &b.p.Lines[i]
		if l.Between() && !l.Kind.Info().Path {
			between = append(between, b.betweenWords(l))
			continue
		}
		if l.Belt != nil && len(l.Acts) == 0 {
			continue
		}
		byKind[l.Kind] = append(byKind[l.Kind], named(l.Name))
	}
	var out []doc.Block
	for _, k := range problem.Kinds() {
		of, w := byKind[k.Kind], cutWords[k.Kind]
		switch {
		case len(of) == 0 || w.noun == "":
		case len(of) == 1:
			out = append(out, say(w.noun+" ", list(of), ": "+w.one+"."))
		default:
			out = append(out, say(w.noun+"s ", list(of), ": "+w.several+"."))
		}
	}
	out = append(out, between...)
	if len(b.p.Joints) > tabledJoints {
		return append(out, b.jointTable())
	}
	var joints []any
	for i := range b.p.Joints {
		if i > 0 {
			joints = append(joints, " ")
		}
		joints = append(joints, b.jointWords(&b.p.Joints[i])...)
	}
	if len(joints) > 0 {
		out = append(out, say(joints...))
	}
	return out
}

// tabledJoints is up to how many joints each has a sentence: more stand in a table.
const tabledJoints = 6

// betweenWords says of a force or a contact between two bodies how it acts on each.
func (b *builder) betweenWords(l *problem.Line) doc.Block {
	first, second := b.bodyWords(l.Acts[0].Body), b.bodyWords(l.Acts[1].Body)
	what := "Force "
	if l.Kind == problem.Contact {
		what = "Contact "
	}
	if l.JoinsEnds() {
		return say(what, named(l.Name), " acts along the line through "+b.p.Points[l.Legs[0].From].Name+" and "+b.p.Points[l.Legs[0].To].Name+", on "+first+" and on "+second+", equal and opposite.")
	}
	return say(what, named(l.Name), " acts on "+first+" in its direction and on "+second+" in the opposite direction.")
}

// unknownsOf are the unknowns of terms.
func (b *builder) unknownsOf(of ...[]problem.ActTerm) (out []doc.Math) {
	for _, t := range slices.Concat(of...) {
		out = append(out, b.unknown(t.Unknown))
	}
	return out
}

func (b *builder) jointWords(j *problem.Joint) []any {
	of := b.unknownsOf(j.Forces, j.Moments)
	what := "The " + j.Words() + " at " + b.p.Points[j.Point].Name
	if len(of) == 0 {
		return []any{what + " exerts no force."}
	}
	text := []any{what + " is replaced by "}
	switch {
	case j.Impending:
		text = append(text, "the normal force ", of[0], " and the friction force ", subscripted("F", j.Name))
	case j.HasFriction:
		text = append(text, "the normal force ", of[0], " and the friction "+english.Plural(len(j.Forces)-1, "force")+" ", list(of[1:len(j.Forces)]))
	case len(j.Forces) > 0:
		text = append(text, "its "+english.Plural(len(j.Forces), "reaction")+" ", list(of[:len(j.Forces)]))
	}
	if moments := of[len(j.Forces):]; len(moments) > 0 {
		joined := " and the "
		if len(j.Forces) == 0 {
			joined = "the "
		}
		text = append(text, joined+english.Plural(len(moments), "moment")+" ", list(moments))
	}
	if j.Second != problem.Ground {
		text = append(text, " on "+b.bodyWords(j.First)+" and by the opposite on "+b.bodyWords(j.Second))
	}
	if j.Impending {
		f := subscripted("F", j.Name)
		text = append(text, ". Slip is impending, so ", equal(f, product(symbol("μ"), of[0]), times(traced(origin.Phrase("μ at %[1]s, the coefficient of static friction, from its cell", j.Name), b.number(j.Friction)), of[0])), ", opposing the motion")
	}
	return append(text, ".")
}

func (b *builder) jointTable() doc.Block {
	t := table("Joint", "Kind", "Between", "Replaced by")
	for i := range b.p.Joints {
		j := &b.p.Joints[i]
		second := "the ground"
		if j.Second != problem.Ground {
			second = b.p.Bodies[j.Second].Name
		}
		t.Add(cell(named(j.Name)), wordCell(j.Words()), wordCell(b.p.Bodies[j.First].Name+" and "+second), listed(b.unknownsOf(j.Forces, j.Moments)))
	}
	return t
}

// arguedByHand tells that the solution by hand says why a body is a two-force member.
func (b *builder) arguedByHand(body string) bool {
	return slices.ContainsFunc(b.hand.Steps, func(s handsolve.Step) bool {
		return s.Kind == handsolve.TwoForce && b.p.Bodies[b.hand.Members[s.Member].Body].Name == body
	})
}

// twoForce argues the bodies that are loaded at two points only.
func (b *builder) twoForce() []doc.Block {
	var names, points []string
	for _, c := range b.s.Checks {
		if c.Kind == statics.CheckTwoForce && !b.arguedByHand(c.Subject) {
			names, points = append(names, c.Subject), append(points, c.With)
		}
	}
	if len(names) > tabledJoints {
		return []doc.Block{say("Two-force members " + english.And(names...) + ": forces act on each at two points only, so they are equal, opposite and collinear.")}
	}
	var out []doc.Block
	for k := range names {
		out = append(out, say("Two-force member "+names[k]+": forces act on it at "+points[k]+" only, so they are equal, opposite and collinear."))
	}
	return out
}

// equationsOf says which equations are counted where some of them are of belts.
func (b *builder) equationsOf() string {
	if !slices.ContainsFunc(b.ties, b.ofBelt) {
		return ""
	}
	sys, empty := &b.s.System, 0
	for body := range b.p.CutFree() {
		for i := sys.Start[body]; i < sys.Start[body+1]; i++ {
			if isZero(b.symbolsOf(body, i)) {
				empty++
			}
		}
	}
	says := " (" + strconv.Itoa(len(sys.Rows)) + " of equilibrium"
	if empty > 0 {
		says += ", " + strconv.Itoa(empty) + " of which " + english.Plural(empty, "contains") + " no force,"
	}
	return says + " and " + strconv.Itoa(len(b.ties)) + " between the forces)"
}
