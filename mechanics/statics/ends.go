package statics

import (
	"fmt"
	"strings"

	"trivet/mechanics/problem"
)

// Ends says what becomes of those whose senses end a range there: a cable goes
// slack, a strut no longer pushes, a support lifts off.
func (s *Solution) Ends(by []string) string {
	const most = 6
	var of []string
	for k, name := range by {
		if k == most {
			of = append(of, fmt.Sprintf("%d more", len(by)-k))
			break
		}
		goes := " lifts off"
		for _, q := range s.sensed {
			if q.Name != name || q.Line < 0 {
				continue
			}
			switch s.Problem.Lines[q.Line].Kind.Info().Sense {
			case problem.PullOnly:
				goes = " goes slack"
			case problem.PushOnly:
				goes = " no longer pushes"
			}
		}
		of = append(of, name+goes)
	}
	if len(of) < 2 {
		return strings.Join(of, "")
	}
	return strings.Join(of[:len(of)-1], ", ") + " and " + of[len(of)-1]
}
