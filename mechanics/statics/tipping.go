package statics

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"trivet/mechanics/problem"
	"trivet/units"
)

// checkTipping finds where the normal force on a face acts. With the normal force N
// and the moment M that the joint exerts at its point q, it acts at
//
//	q + e t,   e = M / (N (t × n)_z)
//
// t along the face and n its normal. Value is how far that lies from the middle
// of the face, in halves of its length: beyond 1 the body tips about the nearer
// end. With friction it says which of the two is nearer at this load; which comes
// first as a load grows is another question.
func (s *Solution) checkTipping(joint int) {
	j := &s.Problem.Joints[joint]
	normal := s.X[j.Forces.Terms[0].Unknown].Value
	if s.liftedOff(j) {
		moment := s.X[j.Moments.Terms[0].Unknown].Value
		if turn := math.Abs(moment) / faceOf(s.Problem, j).length; turn > senseTol*s.scaleOf(j.Forces.Terms[0].Unknown) && normal >= -senseTol*s.scaleOf(j.Forces.Terms[0].Unknown) {
			s.addAt(Check{Kind: CheckTipping, Subject: j.Name, Bound: 1, Open: true, moment: moment}, -1, joint)
		}
		return // else it has lifted off, and the sense says so
	}
	e, f := s.actsAt(j)
	off := 2*(e-f.ends[0])/f.length - 1
	c := Check{Kind: CheckTipping, Subject: j.Name, Value: math.Abs(off), Bound: 1, slip: -1, Meet: r3.Add(s.Problem.Points[j.Point].At, r3.Scale(e, f.t))}
	spare := min(e-f.ends[0], f.ends[1]-e) * normal / f.length
	c.OK = spare >= -senseTol*s.scaleOf(j.Forces.Terms[0].Unknown)
	_, c.About = s.beyond(j)
	if c.OK {
		c.slip = s.slipShare(j)
	}
	s.addAt(c, -1, joint)
}

// slipShare is the part of the available friction that is needed; -1 where the joint
// slips, or cannot.
func (s *Solution) slipShare(j *problem.Joint) float64 {
	if !j.HasFriction || j.Impending || j.Friction == 0 {
		return -1
	}
	needed, available := s.frictionOf(j)
	if slip := needed / available; slip <= 1+senseTol {
		return slip
	}
	return -1
}

// nearer compares the part of the available friction that is needed with the part
// of the half face that the normal force has moved by.
func (c Check) nearer(p *problem.Problem) string {
	slipping := "slipping (" + p.Percent(c.slip) + " of the available friction)"
	tipping := "tipping (" + p.Percent(c.Value) + " of the half width)"
	switch {
	case c.slip < 0:
		return ""
	case math.Abs(c.slip-c.Value) <= memberTol:
		return "; at this load it is as close to " + slipping + " as to " + tipping
	case c.slip > c.Value:
		return "; at this load it is closer to " + slipping + " than to " + tipping
	}
	return "; at this load it is closer to " + tipping + " than to " + slipping
}

func (c Check) tippingWords(p *problem.Problem) string {
	if c.Open {
		return momentAlone(p, c.Subject, c.moment)
	}
	face := p.Joints[c.Joint].Face
	first := p.Points[face[0]]
	if c.OK {
		return fmt.Sprintf("%s does not tip: the normal force%s acts %s from %s, inside the contact", c.body(p), c.at(p), p.Format(r3.Norm(r3.Sub(c.Meet, first.At)), units.Length), first.Name) + c.nearer(p)
	}
	end := p.Points[face[1]]
	if end.Name != c.About {
		end = first
	}
	return fmt.Sprintf("%s tips about %s: the normal force%s would have to act %s beyond it", c.body(p), c.About, c.at(p), p.Format(r3.Norm(r3.Sub(c.Meet, end.At)), units.Length))
}
