package tutor

import (
	"regexp"
	"strings"
	"testing"

	"trivet/fixtures"
)

// The last stage of a hint is an equation that may be entered as it stands: it is right and
// new, so hints lead from any point to what is asked.
func TestTheLastHintIsARightEntry(t *testing.T) {
	for _, r := range rigs() {
		if strings.Contains(r.name, "variant") {
			continue
		}
		p := r.practice()
		for range 4 * len(p.Problem.Unknowns) {
			h := p.Hint()
			if h.Stage < stages {
				if strings.HasPrefix(h.Says, "All equations") || strings.HasPrefix(h.Says, "Everything") || strings.HasPrefix(h.Says, "Count") {
					break
				}
				continue
			}
			if j := p.Enter(h.Says); j.Verdict != Right {
				t.Errorf("%s: %s\n  %s: %s", r.name, h.Says, j.Verdict, j.Says)
				break
			}
		}
	}
}

// Hints go on from where the student stands.
func TestHintsInStages(t *testing.T) {
	for _, c := range []struct {
		name, sheet string
		entries     []string
		want        []string
	}{
		{"from the start", "beam-on-supports", nil, []string{
			"Look at the body beam, and at a sum of moments.",
			"Write ΣM about A on the body beam: Ax and Ay pass through that point.",
			"The sum ΣM about A on the beam contains P, B and the weight of beam.",
			"ΣM A beam: 6.00 B - 2400 = 0",
		}},
		{"the first equation is there", "beam-on-supports", []string{"ΣM A beam: 6 B = 2400"}, []string{"Look at the body beam, and at a sum of forces."}},
		{"and its value too", "beam-on-supports", []string{"ΣM A beam: 6 B = 2400", "B = 400 N"}, []string{"Look at the body beam, and at a sum of forces."}},
		{"a term is lacking", "beam-on-supports", []string{"ΣM A beam: 1.5*400 + 3*600 = 0"}, []string{
			"Look at the body beam, and at a sum of moments.",
			"Write ΣM about A on the body beam: Ax and Ay pass through that point.",
			"The sum ΣM about A on the beam contains P, B and the weight of beam; yours lacks B.",
		}},
		{"all equations are there", "beam-on-supports", []string{"ΣM A beam: 6 B = 2400", "ΣFx: Ax = -300", "ΣFy: Ay + B = 1000"}, []string{"All equations that are needed are there: work out Ax."}},
	} {
		t.Run(c.name, func(t *testing.T) {
			p := practise(t, c.sheet)
			for _, e := range c.entries {
				p.Enter(e)
			}
			for i, want := range c.want {
				if got := p.Hint(); got.Says != want || got.Stage != i+1 {
					t.Errorf("hint %d is\n%d %s\nwant\n%d %s", i+1, got.Stage, got.Says, i+1, want)
				}
			}
		})
	}
}

// A hint below the last stage has no number but the place of a point: directions are told by
// the lines that they belong to.
func TestNoHintShowsADirection(t *testing.T) {
	number := regexp.MustCompile(`\d\.\d`)
	for _, one := range fixtures.Starts() {
		p := practice(t, one.Text)
		for range 40 {
			h := p.Hint()
			if h.Stage < stages && number.MatchString(h.Says) && !strings.Contains(h.Says, "through (") && !strings.Contains(h.Says, "about (") {
				t.Errorf("%s, hint %d: %s", one.Name, h.Stage, h.Says)
			}
			if h.Stage == stages { // what it says is entered, so that the next step is hinted at
				p.Enter(h.Says)
			}
		}
	}
}
