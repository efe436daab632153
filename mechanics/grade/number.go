package grade

import "trivet/mechanics/tutor"

// slipped marks answers that nothing else explains, where each of them is the right number
// but for a factor of 2, the place of the decimal point, or two digits beside each other.
func (k *Key) slipped(marks []Mark) {
	says := make([]string, len(marks))
	for i := range marks {
		if m := &marks[i]; m.Verdict == Wrong {
			if says[i] = k.slipOf(m); says[i] == "" {
				return
			}
		}
	}
	for i, s := range says {
		if s != "" {
			marks[i].Verdict, marks[i].Says = Slipped, s
		}
	}
}

// slips are what is said of each.
var slips = map[tutor.NumberSlip]string{
	tutor.Twice: "twice the right value", tutor.Half: "half the right value", tutor.Point: "the decimal point is misplaced", tutor.Exchanged: "two digits are exchanged",
}

// slipOf says which slip a number is, "" where it is none.
func (k *Key) slipOf(m *Mark) string {
	if !m.evidence() || k.zero(m.query, m.want) {
		return ""
	}
	return slips[tutor.SlipOf(m.value.Value/m.value.Factor, m.want/m.value.Factor, m.value.figures, func(given, right float64) bool {
		o := *m
		o.value.Value = given * m.value.Factor
		return k.same(&o, right*m.value.Factor)
	})]
}
