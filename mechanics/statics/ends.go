package statics

import (
	"strconv"
	"strings"

	"trivet/mechanics/problem"
)

// Ends says what becomes of those whose senses end a range: cables go slack,
// struts no longer push, contacts and supports lift off.
func (s *Solution) Ends(by []string) string {
	become := []struct{ one, more string }{{"goes slack", "go slack"}, {"no longer pushes", "no longer push"}, {"lifts off", "lift off"}}
	of := make([][]string, len(become))
	for _, name := range by {
		k := 2
		for _, q := range s.sensed {
			if q.Name != name || q.Line < 0 {
				continue
			}
			switch s.Problem.Lines[q.Line].Kind.Info().Sense {
			case problem.PullOnly:
				k = 0
			case problem.PushOnly:
				k = 1
			}
		}
		of[k] = append(of[k], name)
	}
	var out []string
	for k, names := range of {
		switch len(names) {
		case 0:
		case 1:
			out = append(out, names[0]+" "+become[k].one)
		default:
			out = append(out, someNames(names)+" "+become[k].more)
		}
	}
	return strings.Join(out, " and ")
}

// someNames joins names; of more than a line takes it counts the rest.
func someNames(names []string) string {
	const most = 6
	if more := len(names) - most; more > 0 {
		names = append(names[:most:most], strconv.Itoa(more)+" more")
	}
	return strings.Join(names[:len(names)-1], ", ") + " and " + names[len(names)-1]
}
