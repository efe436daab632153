package statics

import (
	"fmt"
	"math"
	"strings"

	"trivet/mechanics/problem"
	"trivet/units"
)

// Name is a check's name in the JSON contract: what it is about, and of what.
func (c Check) Name() string {
	what := [...]string{"unit vector", "sum of forces", "sum of moments", "conditioning", "sense", "limit", "friction", "tipping", "two-force member", "three-force member", "limit", "senses", "forces", "support", "distributed load", "belt"}[c.Kind]
	if c.Subject == "" {
		return what
	}
	return what + " " + c.Subject
}

// Says puts a check in words, numbers in the sheet's units.
func (c Check) Says(p *problem.Problem) string {
	force := func(v float64) string { return p.Units.Force.Format(v, p.Figures) }
	switch c.Kind {
	case CheckUnit:
		if !c.OK {
			return fmt.Sprintf("|u| is not 1 for %s: it is off by %.2g", c.Subject, c.Value)
		}
		return fmt.Sprintf("|u| = 1 for %s, %s", c.Subject, within(c.Value, ""))
	case CheckResidual, CheckMoment:
		return c.balanceSays()
	case CheckCondition:
		says := fmt.Sprintf("conditioning costs %.1f of the %.1f figures carried", c.Value, carried)
		if !c.OK {
			says += fmt.Sprintf(", which leaves fewer than the %d shown", p.Figures)
		}
		return says
	case CheckSense:
		positive, negative, name := "push", "pull", ""
		if c.Line >= 0 {
			info := p.Lines[c.Line].Kind.Info()
			positive, negative, name = info.Positive, info.Negative, info.Name
		} else {
			name = jointWords(&p.Joints[c.Joint])
		}
		word := positive
		switch {
		case !c.OK:
			word = negative + ", which a " + name + " cannot take"
		case c.Value <= 0: // less than counts as a sense
			c.Value, word = 0, "no force"
		}
		return fmt.Sprintf("%s = %s: %s", c.Subject, force(math.Abs(c.Value)), word)
	case CheckFriction:
		if c.Impends {
			return fmt.Sprintf("%s is on the point of slipping, as the sheet says: its friction is %s, all that is available", c.Subject, force(c.Value))
		}
		if !c.OK {
			return fmt.Sprintf("%s: it needs %s of friction, and %s is available", c.slides(p), force(c.Value), force(c.Bound))
		}
		return fmt.Sprintf("%s: it needs %s of the %s of friction available", c.slides(p), force(c.Value), force(c.Bound))
	case CheckBelt:
		return c.beltWords(p)
	case CheckBare:
		return "no force acts on " + c.Subject + ", so it is left out"
	case CheckSupport:
		return c.supportWords(p)
	case CheckLoad:
		if !c.OK {
			return fmt.Sprintf("the resultant of the distributed load %s is in doubt: its integrals are exact only to %.1e. Try: a load of its own for each stretch where the intensity changes fast", c.Subject, c.Value)
		}
		return fmt.Sprintf("the resultant of the distributed load %s is integrated numerically, %s", c.Subject, within(c.Value, ""))
	case CheckTipping:
		return c.tippingWords(p)
	case CheckTwoForce:
		return fmt.Sprintf("%s is a two-force member: forces act on it at %s only, so they lie along the line between, %s", c.Subject, c.With, within(c.Value, ""))
	case CheckThreeForce:
		if !c.Meets {
			return fmt.Sprintf("%s is a three-force member: its forces at %s have parallel lines of action, %s", c.Subject, c.With, within(c.Value, ""))
		}
		return fmt.Sprintf("%s is a three-force member: the lines of its forces at %s meet in %s, %s", c.Subject, c.With, placeWords(p, c.Meet), within(c.Value, ""))
	case CheckLimit, CheckJointLimit:
		if c.Open {
			return fmt.Sprintf("%s is not held against its limit of %s: its admissible range was not computed", c.Subject, force(c.Bound))
		}
		if math.IsInf(c.Value, 1) {
			return fmt.Sprintf("%s has no greatest value to hold against its limit of %s", c.Subject, force(c.Bound))
		}
		use := units.Figures(100*c.Value/c.Bound, p.Figures)
		if c.Ranged && !c.OK {
			return fmt.Sprintf("%s could reach %s, %s %% of its limit of %s", c.Subject, force(c.Value), use, force(c.Bound))
		}
		word := "uses"
		if !c.OK {
			word = "exceeds its limit: it uses"
		}
		says := fmt.Sprintf("%s %s %s %% of %s", c.Subject, word, use, force(c.Bound))
		if c.OK && c.Value > 0 {
			says += ", a factor of " + units.Figures(c.Bound/c.Value, p.Figures) + " left"
		}
		return says
	}
	if c.OK {
		return "equilibrium is possible: the free unknowns have admissible values"
	}
	if c.Open {
		return undecidedWords
	}
	return "the free unknowns have no admissible values"
}

// slides says whether a body slips, and where; a particle is where it is.
func (c Check) slides(p *problem.Problem) string {
	body := p.Bodies[p.Joints[c.Joint].First].Name
	verb := " does not slip"
	if !c.OK {
		verb = " slips"
	}
	if body == c.Subject {
		return body + verb
	}
	return body + verb + " at " + c.Subject
}

// balanceSays puts the check of a sum of forces or moments in words.
func (c Check) balanceSays() string {
	sum, of, about := "ΣF", "force", ""
	switch {
	case c.Kind == CheckMoment && c.About == "":
		sum, of, about = "ΣM", "moment", " about a second point"
	case c.Kind == CheckMoment:
		sum, of, about = "ΣM", "moment", " about "+c.About
	case c.About != "": // a rigid body's equations
		if c.OK {
			return fmt.Sprintf("ΣF = 0 and ΣM = 0 about %s on %s, %s", c.About, c.Subject, within(c.Value, " of the largest force"))
		}
		return fmt.Sprintf("ΣF and ΣM about %s on %s are not 0: %.2g of the largest force is left", c.About, c.Subject, c.Value)
	}
	if !c.OK {
		return fmt.Sprintf("%s on %s%s is not 0: %.2g of the largest %s is left", sum, c.Subject, about, c.Value, of)
	}
	return fmt.Sprintf("%s = 0 on %s%s, %s", sum, c.Subject, about, within(c.Value, " of the largest "+of))
}

// within says how near to nothing a number is.
func within(off float64, of string) string {
	if off == 0 {
		return "exactly"
	}
	return fmt.Sprintf("to %.1e%s", off, of)
}

// computedFigures is how many figures a computed value shows beside a printed
// one at least, so that it can be seen how near they are.
const computedFigures = 5

// ComputedText is the computed value beside a printed answer.
func (a AnswerCheck) ComputedText(p *problem.Problem) string {
	if a.Err != "" {
		return a.Err
	}
	return p.Units.For(a.Query.Dim).Format(a.Computed, max(computedFigures, p.Figures+2))
}

// Says puts a reference answer and what became of it in words.
func (a AnswerCheck) Says(p *problem.Problem) string {
	word := "agrees with"
	switch {
	case a.Err != "":
		says := a.Err
		if !strings.HasPrefix(says, a.Query.Name) {
			says = a.Query.Name + ": " + says
		}
		return says + ", and the reference answer is " + a.Printed
	case !a.OK:
		word = "differs from"
	}
	return fmt.Sprintf("%s = %s %s the reference %s", a.Query.Name, a.ComputedText(p), word, a.Printed)
}
