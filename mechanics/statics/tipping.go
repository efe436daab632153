package statics

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"trivet/mechanics/problem"
)

// checkTipping finds where the push on a face acts. With the normal force N and
// the moment M that the joint holds at its point q, the push acts at
//
//	q + e t,   e = M / (N (t × n)_z)
//
// t along the face and n its normal. Value is how far that lies from the middle
// of the face, in halves of its length: beyond 1 the body tips about the nearer
// end. With friction the greater use of the two says what comes first as the
// push on the body grows.
func (s *Solution) checkTipping(joint int) {
	j := &s.Problem.Joints[joint]
	p := s.Problem
	normal := s.X[j.Forces[0].Unknown].Value
	if normal <= senseTol*s.scaleOf(j.Forces[0].Unknown) {
		return // it has lifted off, and the sense says so
	}
	a, b := p.Points[j.Face[0]].At, p.Points[j.Face[1]].At
	half := r3.Norm(r3.Sub(b, a)) / 2
	t := r3.Scale(1/(2*half), r3.Sub(b, a))
	turn := s.X[j.Moments[0].Unknown].Value * j.Moments[0].D.Z
	at := r3.Add(p.Points[j.Point].At, r3.Scale(turn/(normal*r3.Cross(t, j.Normal).Z), t))
	off := r3.Dot(r3.Sub(at, r3.Scale(0.5, r3.Add(a, b))), t)
	c := Check{Kind: CheckTipping, Subject: j.Name, Line: -1, Joint: joint, Value: math.Abs(off) / half, Bound: 1, Meet: at}
	c.OK = c.Value <= 1+senseTol
	end := j.Face[1]
	if off < 0 {
		end = j.Face[0]
	}
	c.About = p.Points[end].Name
	c.With = s.firstToGo(j, normal, c.Value)
	s.Checks = append(s.Checks, c)
}

// firstToGo compares the use of friction with the use of the face.
func (s *Solution) firstToGo(j *problem.Joint, normal, tip float64) string {
	if !j.HasFriction {
		return ""
	}
	slip := 1.0 // impending
	if !j.Impending {
		if j.Friction == 0 {
			return ""
		}
		slip = math.Abs(s.X[j.Forces[1].Unknown].Value) / (j.Friction * normal)
	}
	switch {
	case math.Abs(slip-tip) <= memberTol:
		return "it slips and tips at once"
	case slip > tip:
		return "it slips before it tips"
	}
	return "it tips before it slips"
}

func (c Check) tippingWords(p *problem.Problem) string {
	unit := p.Units.Length
	j := &p.Joints[c.Joint]
	from := r3.Norm(r3.Sub(c.Meet, p.Points[j.Face[0]].At))
	words := fmt.Sprintf("%s stands: its push acts %s from %s, within the face", c.Subject, unit.Format(from, p.Figures), p.Points[j.Face[0]].Name)
	if !c.OK {
		end := p.Points[j.Face[1]]
		if end.Name != c.About {
			end = p.Points[j.Face[0]]
		}
		words = fmt.Sprintf("%s tips about %s: its push would have to act %s beyond it", c.Subject, c.About, unit.Format(r3.Norm(r3.Sub(c.Meet, end.At)), p.Figures))
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
		if (c.Kind == CheckLimit || c.Kind == CheckJointLimit) && (!found || c.Value/c.Bound > most.Value/most.Bound) {
			most, found = c, true
		}
	}
	return most, found
}
