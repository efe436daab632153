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
	normal := s.X[j.Forces[0].Unknown].Value
	if s.liftedOff(j) {
		c := Condition{Kind: Face, Name: j.Name, Line: -1, Joint: joint}
		if turn := math.Abs(s.X[j.Moments[0].Unknown].Value) / faceOf(s.Problem, j).length; turn > senseTol*s.scaleOf(j.Forces[0].Unknown) && normal >= -senseTol*s.scaleOf(j.Forces[0].Unknown) {
			s.Checks = append(s.Checks, Check{Kind: CheckTipping, Subject: j.Name, Line: -1, Joint: joint, Bound: 1, Open: true, With: s.brokenWords(&c, "")})
		}
		return // else it has lifted off, and the sense says so
	}
	e, f := s.actsAt(j)
	off := 2*(e-f.ends[0])/f.length - 1
	c := Check{Kind: CheckTipping, Subject: j.Name, Line: -1, Joint: joint, Value: math.Abs(off), Bound: 1, Meet: s.placeOn(j, e, f)}
	spare := min(e-f.ends[0], f.ends[1]-e) * normal / f.length
	c.OK = spare >= -senseTol*s.scaleOf(j.Forces[0].Unknown)
	_, c.About = s.beyond(j)
	if c.OK {
		c.With = s.nearer(j, normal, c.Value)
	}
	s.Checks = append(s.Checks, c)
}

// nearer compares the part of the friction available that is needed with the part
// of the half face that the normal force has moved by.
func (s *Solution) nearer(j *problem.Joint, normal, tip float64) string {
	if !j.HasFriction || j.Impending || j.Friction == 0 {
		return ""
	}
	needed, available := s.frictionOf(j)
	slip := needed / available
	if slip > 1+senseTol {
		return ""
	}
	friction := units.Figures(100*slip, s.Problem.Figures) + " % of the available friction"
	half := units.Figures(100*tip, s.Problem.Figures) + " % of the half width"
	switch {
	case math.Abs(slip-tip) <= memberTol:
		return "at this load it is as near to slipping (" + friction + ") as to tipping (" + half + ")"
	case slip > tip:
		return "at this load it is nearer to slipping (" + friction + ") than to tipping (" + half + ")"
	}
	return "at this load it is nearer to tipping (" + half + ") than to slipping (" + friction + ")"
}

func (c Check) tippingWords(p *problem.Problem) string {
	if c.Open {
		return c.With
	}
	unit := p.Units.Length
	j := &p.Joints[c.Joint]
	from := r3.Norm(r3.Sub(c.Meet, p.Points[j.Face[0]].At))
	body := p.Bodies[j.First].Name
	words := fmt.Sprintf("%s does not tip: the normal force at %s acts %s from %s, inside the contact", body, c.Subject, unit.Format(from, p.Figures), p.Points[j.Face[0]].Name)
	if !c.OK {
		end := p.Points[j.Face[1]]
		if end.Name != c.About {
			end = p.Points[j.Face[0]]
		}
		words = fmt.Sprintf("%s tips about %s: the normal force at %s would have to act %s beyond it", body, c.About, c.Subject, unit.Format(r3.Norm(r3.Sub(c.Meet, end.At)), p.Figures))
	}
	if c.With != "" {
		words += "; " + c.With
	}
	return words
}

// Governing is the check of the limit that is used most, with false where there
// is no limit.
func (s *Solution) Governing() (Check, bool) {
	var most Check
	found := false
	for _, c := range s.Checks {
		if (c.Kind == CheckLimit || c.Kind == CheckJointLimit) && !c.Open && (!found || c.Value/c.Bound > most.Value/most.Bound) {
			most, found = c, true
		}
	}
	return most, found
}
