package handsolve

import "trivet/mechanics/problem"

// dependsOn lists the unknowns that results depend on; all where no result is asked for.
func dependsOn(p *problem.Problem, asked []problem.Query) (out []int) {
	if len(asked) == 0 {
		for j := range p.Unknowns {
			out = append(out, j)
		}
	}
	for i := range asked {
		out = append(out, unknownsOf(p, &asked[i])...)
	}
	return out
}

func unknownsOf(p *problem.Problem, q *problem.Query) (out []int) {
	terms := func(of []problem.ActTerm) {
		for _, t := range of {
			out = append(out, t.Unknown)
		}
	}
	force := func(line, joint int) {
		if line < 0 {
			terms(p.Joints[joint].Forces)
			return
		}
		for _, act := range p.Lines[line].Acts {
			terms(act.Terms)
		}
	}
	// The geometry gives the direction of a line, unless its components are unknown.
	direction := func(line, joint int) {
		if line >= 0 {
			if _, given := p.Lines[line].Direction(); given {
				return
			}
		}
		force(line, joint)
	}
	switch q.Kind {
	case problem.AskLength, problem.AskLoads, problem.AskSpread:
	case problem.AskMagnitude:
		return unknownsOf(p, q.Of)
	case problem.AskUnit:
		direction(q.Line, q.Joint)
	case problem.AskAngle:
		direction(q.Line, q.Joint)
		direction(q.Other, q.Second)
	case problem.AskComponent:
		force(q.Line, q.Joint)
		direction(q.Other, q.Second)
	case problem.AskCouple:
		for _, act := range p.Couples[q.Couple].Acts {
			terms(act.CoupleTerms)
		}
	case problem.AskJoint:
		j := &p.Joints[q.Joint]
		switch part := q.Part; {
		case part >= problem.MX && part <= problem.MZ:
			terms(j.Moments)
		case part <= problem.Z:
			for _, t := range j.Forces {
				if [3]float64{t.D.X, t.D.Y, t.D.Z}[part] != 0 {
					out = append(out, t.Unknown)
				}
			}
		default:
			terms(j.Forces)
		}
	case problem.AskUnknown:
		if q.Unknown >= 0 {
			return []int{q.Unknown}
		}
		force(q.Line, -1)
	default:
		force(q.Line, q.Joint)
	}
	return out
}
