package statics

import (
	"regexp"
	"strings"
	"testing"
)

// wordCase is a sheet and what is said of it: the verdict's lines, then, behind
// a dash, the checks of members, friction, tipping and limits.
type wordCase struct{ name, text, want string }

// nearness is the rounding that a check tells at its end.
var nearness = regexp.MustCompile(`, (exactly|to within \d\.\de-\d\d( of the force)?)$`)

func sayAll(t *testing.T, cases []wordCase) {
	t.Helper()
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			s := solveText(t, c.text)
			lines := s.Words()
			for _, k := range s.Checks {
				switch k.Kind {
				case CheckUnit, CheckResidual, CheckMoment, CheckCondition:
					if !k.OK && s.Verdict != NoEquilibrium {
						t.Error(k.Says(s.Problem))
					}
				case CheckSense:
				default:
					lines = append(lines, "- "+nearness.ReplaceAllString(k.Says(s.Problem), ""))
				}
			}
			if got, want := strings.Join(lines, "\n"), strings.TrimPrefix(c.want, "\n"); got != want {
				t.Errorf("got\n%s\nwant\n%s", got, want)
			}
		})
	}
}
