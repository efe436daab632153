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
	all := slices.Collect(b.p.CutFree())
	added := (b.p.ResultantOnly() || b.s.Verdict == statics.NoEquilibrium) && len(b.s.X) == 0
	alone := len(all) == 1 && len(b.ties) == 0 && len(b.s.X) > 0 // what one body gives is all there is
	unknowns := append(b.unknowns(), english.Each(b.ties, func(t *tie) doc.Math { return t.name })...)
	in := []any{" in " + english.Count(len(unknowns), "unknown") + ": ", list(unknowns), "."}
	var body []doc.Block
	for _, particle := range []bool{true, false} {
		of := slices.DeleteFunc(slices.Clone(all), func(i int) bool { return b.p.Bodies[i].Particle != particle })
		names := english.Each(of, func(i int) string { return b.p.Bodies[i].Name })
		n, count, apiece := len(names), 3*(b.axes-1), " each"
		noun := "Rigid " + english.Plural(n, "body")
		if particle {
			noun, count = english.Plural(n, "Particle"), b.axes
		}
		if n < 2 {
			apiece = ""
		}
		lead, equations := noun+" "+english.And(names...)+": ", english.Count(count, "equation")
		var says []any
		switch {
		case n == 0:
			continue
		case particle && added && !slices.ContainsFunc(of, func(i int) bool { return !b.single(i) }):
			says = []any{lead + "one force acts on " + map[bool]string{true: "it", false: "each"}[n == 1] + "."}
		case particle && added:
			says = []any{lead + "the forces are concurrent, so their resultant ", equal(vector("R"), bigSum(vector("F"))), " acts through the particle."}
		case particle && !alone:
			says = []any{lead + "the forces are concurrent, so ", b.zero("M"), " holds of itself and ", b.zero("F"), " is sufficient (" + equations + apiece + ")."}
		case particle:
			says = []any{lead + "the forces are concurrent, so ", b.zero("M"), " holds of itself and ", b.zero("F"), " gives " + equations, in}
		case added:
			says = []any{lead + "the known forces are added, and their moments about " + english.And(b.aboutPoints()...) + "."}
		case alone:
			says = []any{lead, b.zero("F"), " and ", b.zero("M"), " give " + equations, in}
		default:
			says = []any{lead, b.zero("F"), " and ", b.zero("M"), " give " + equations + apiece + "."}
		}
		body = append(body, say(says...))
	}
	replaced := append(b.cuts(), b.twoForce()...)
	if alone {
		body = append(replaced, body...)
	} else {
		body = append(body, replaced...)
	}
	if len(b.s.X) > 0 && !alone {
		total := "In total, " + english.Count(len(b.s.System.Rows)+len(b.ties), "equation") + b.equationsOf()
		body = append(body, say(total, in))
	}
	b.step(CutFree, "Free "+english.Plural(len(all), "body"), Subject{Bodies: all}, body...)
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

// zero is ΣF = 0, or ΣM = 0.
func (b *builder) zero(text string) doc.Math {
	return equal(bigSum(vector(text)), traced(origin.Balance, exactly(0)))
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
	var out, between []doc.Block
	byKind := map[problem.Kind][]doc.Math{}
	for i := range b.p.Lines {
		l := &b.p.Lines[i]
		switch {
		case l.Between() && !l.Kind.Info().Path:
			between = append(between, b.betweenWords(l))
		case l.Belt == nil || len(l.Acts) > 0:
			byKind[l.Kind] = append(byKind[l.Kind], named(l.Name))
		}
	}
	for _, k := range problem.Kinds() {
		of, w := byKind[k.Kind], cutWords[k.Kind]
		can := w.one
		if len(of) > 1 {
			can = w.several
		}
		if len(of) > 0 && can != "" {
			out = append(out, say(english.Plural(len(of), w.noun)+" ", list(of), ": "+can+"."))
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
		joints = append(joints, b.jointWords(&b.p.Joints[i]))
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

// unknowns are the symbols of all unknowns.
func (b *builder) unknowns() (of []doc.Math) {
	for j := range b.s.X {
		of = append(of, b.unknown(j))
	}
	return of
}

// unknownsOf are the unknowns of terms.
func (b *builder) unknownsOf(of ...[]problem.ActTerm) []doc.Math {
	return english.Each(slices.Concat(of...), func(t problem.ActTerm) doc.Math { return b.unknown(t.Unknown) })
}

func (b *builder) jointWords(j *problem.Joint) []any {
	of, n := b.unknownsOf(j.Forces.Terms, j.Moments.Terms), len(j.Forces.Terms)
	what := "The " + j.Words() + " at " + b.p.Points[j.Point].Name
	var slip *tie
	for _, t := range b.ties {
		if t.friction && j == &b.p.Joints[t.by.Index] {
			slip = t
		}
	}
	var parts []any
	switch {
	case len(of) == 0:
		return []any{what + " exerts no force."}
	case j.Impending:
		parts = []any{[]any{"the normal force ", of[0]}, []any{"the friction force ", slip.name}}
	case j.HasFriction:
		parts = []any{[]any{"the normal force ", of[0]}, []any{"the friction " + english.Plural(n-1, "force") + " ", list(of[1:n])}}
	case n > 0:
		parts = []any{[]any{"its " + english.Plural(n, "reaction") + " ", list(of[:n])}}
	}
	if moments := of[n:]; len(moments) > 0 {
		parts = append(parts, []any{"the " + english.Plural(len(moments), "moment") + " ", list(moments)})
	}
	text := []any{what + " is replaced by ", and(parts)}
	if j.Second != problem.Ground {
		text = append(text, " on "+b.bodyWords(j.First)+" and by the opposite on "+b.bodyWords(j.Second))
	}
	if j.Impending {
		text = append(text, ". Slip is impending, so ", equal(slip.name, b.tied(slip)), ", opposing the motion")
	}
	return append(text, ".")
}

// muFrom is the origin of a coefficient of friction.
func muFrom(j *problem.Joint) doc.Origin {
	return origin.Phrase("μ at %[1]s, the coefficient of static friction, from its cell", j.Name)
}

func (b *builder) jointTable() doc.Block {
	t := doc.NewTable("Joint", "Kind", "Between", "Replaced by")
	for i := range b.p.Joints {
		j := &b.p.Joints[i]
		second := "the ground"
		if j.Second != problem.Ground {
			second = b.p.Bodies[j.Second].Name
		}
		t.Add(cell(named(j.Name)), wordCell(j.Words()), wordCell(b.p.Bodies[j.First].Name+" and "+second), listed(b.unknownsOf(j.Forces.Terms, j.Moments.Terms)))
	}
	return t
}

// twoForce argues the bodies that are loaded at two points only, where the solution by hand does not.
func (b *builder) twoForce() (out []doc.Block) {
	var names []string
	for _, c := range b.s.Checks {
		byHand := func(s handsolve.Step) bool {
			return s.Kind == handsolve.TwoForce && b.p.Bodies[b.Hand.Members[s.Member].Body].Name == c.Subject
		}
		if c.Kind == statics.CheckTwoForce && !slices.ContainsFunc(b.Hand.Steps, byHand) {
			names = append(names, c.Subject)
			out = append(out, say(english.Capital(b.bodyWords(b.bodyIndex(c.Subject)))+" is a two-force member: forces act on it at "+c.With+" only, so they are equal, opposite and collinear."))
		}
	}
	if len(names) > tabledJoints {
		return []doc.Block{say("Bodies " + english.And(names...) + " are two-force members: forces act on each at two points only, so they are equal, opposite and collinear.")}
	}
	return out
}

// equationsOf says which equations are counted where some of them are between the forces.
func (b *builder) equationsOf() string {
	if len(b.ties) == 0 {
		return ""
	}
	empty, of := 0, ""
	for i := range b.s.System.Rows {
		if isZero(b.symbolsOf(i)) {
			empty++
		}
	}
	if empty > 0 {
		of = ", of which " + strconv.Itoa(empty) + " " + english.Plural(empty, "is") + " satisfied by 0 = 0,"
	}
	return " (" + strconv.Itoa(len(b.s.System.Rows)) + " of equilibrium" + of + " and " + strconv.Itoa(len(b.ties)) + " between the forces)"
}
