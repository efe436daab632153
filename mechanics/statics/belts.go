package statics

import (
	"fmt"

	"trivet/mechanics/problem"
	"trivet/units"
)

// checkBelts holds the larger tension of each belt against e^(μβ) times the smaller one.
func (s *Solution) checkBelts() {
	for _, b := range s.Problem.Belts() {
		tight, slack, fixed := s.tensions(b)
		if !fixed {
			continue
		}
		c := Check{Kind: CheckBelt, Subject: b.Name, Value: s.at(s.Problem.Lines[tight].Magnitude),
			With: s.Problem.Lines[tight].Name + "/" + s.Problem.Lines[slack].Name}
		if c.Impends = b.Tight >= 0; c.Impends {
			c.Bound = c.Value
			c.OK = c.Value > senseTol*s.scaleOfMagnitude(s.Problem.Lines[tight].Magnitude)
		} else {
			grip := gripCondition(s.Problem, b)
			c.Bound = max(0, s.at(s.Problem.Lines[slack].Magnitude)) * b.Ratio()
			c.OK = !s.violated(&grip)
		}
		s.addAt(c, b.Lines[0], -1)
	}
}

// tensions are the lines of a belt with the larger and with the smaller tension; fixed is
// false where these have no single value.
func (s *Solution) tensions(b *problem.Belt) (tight, slack int, fixed bool) {
	one, ok := s.Magnitude(b.Lines[0])
	two, also := s.Magnitude(b.Lines[1])
	switch {
	case !ok || !also:
		return b.Lines[0], b.Lines[1], false
	case b.Tight >= 0:
		return b.Lines[b.Tight], b.Slack(), true
	case one > two:
		return b.Lines[0], b.Lines[1], true
	}
	return b.Lines[1], b.Lines[0], true
}

// slackSide tells that a line is the part of a belt with the smaller tension: its limit is
// that of the larger one.
func (s *Solution) slackSide(line int) bool {
	b := s.Problem.Lines[line].Belt
	if b == nil {
		return false
	}
	_, slack, fixed := s.tensions(b)
	return fixed && line == slack
}

// gripNeeded says which ratio of its tensions a belt that slips would need.
func (s *Solution) gripNeeded(b *problem.Belt) string {
	p := s.Problem
	tight, slack, _ := s.tensions(b)
	over, under := s.at(p.Lines[tight].Magnitude), s.at(p.Lines[slack].Magnitude)
	if under <= senseTol*over {
		return fmt.Sprintf("belt %s would have to carry %s = %s with no tension %s", b.Name, p.Lines[tight].Name, s.Problem.Format(over, units.Force), p.Lines[slack].Name)
	}
	ratio, limit := units.Unit{}.Apart(over/under, b.Ratio(), p.Figures)
	return fmt.Sprintf("belt %s would need %s/%s = %s, more than e^(μβ) = %s", b.Name, p.Lines[tight].Name, p.Lines[slack].Name, ratio, limit)
}

// beltWords puts the check of a belt in words.
func (c Check) beltWords(p *problem.Problem) string {
	b := p.Lines[c.Line].Belt
	switch {
	case c.Impends && c.OK:
		tight, slack := p.Lines[b.Lines[b.Tight]].Name, p.Lines[b.Slack()].Name
		return fmt.Sprintf("belt %s: slip is impending, as specified: %s = %s e^(μβ) = %s", b.Name, tight, slack, p.Format(c.Value, units.Force))
	case c.Impends:
		return fmt.Sprintf("belt %s is not in tension, so slip is not impending as specified", b.Name)
	case c.Value <= 0:
		return fmt.Sprintf("belt %s carries no tension", b.Name)
	case c.Bound <= senseTol*c.Value:
		return fmt.Sprintf("belt %s slips: it has a tension of %s on one side of the drum and none on the other", b.Name, p.Format(c.Value, units.Force))
	}
	ratio := c.Value / c.Bound * b.Ratio()
	if !c.OK {
		needed, limit := units.Unit{}.Apart(ratio, b.Ratio(), p.Figures)
		return fmt.Sprintf("%s = %s exceeds e^(μβ) = %s: belt %s slips", c.With, needed, limit, b.Name)
	}
	return fmt.Sprintf("%s = %s of e^(μβ) = %s: belt %s does not slip", c.With, units.Figures(ratio, p.Figures), units.Figures(b.Ratio(), p.Figures), b.Name)
}
