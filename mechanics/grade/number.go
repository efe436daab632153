package grade

import (
	"math"
	"strconv"
	"strings"
)

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

// slipOf says which slip a number is, "" where it is none.
func (k *Key) slipOf(m *Mark) string {
	if !m.evidence() || k.zero(m.query, m.want) || m.value.figures < Figures-1 {
		return ""
	}
	for _, s := range []struct {
		factor float64
		says   string
	}{{2, "twice the right value"}, {0.5, "half the right value"}, {10, misplaced}, {0.1, misplaced}, {100, misplaced}, {0.01, misplaced}} {
		if k.same(m, s.factor*m.want) {
			return s.says
		}
	}
	if k.digitsExchanged(m) {
		return "two digits are exchanged"
	}
	return ""
}

const misplaced = "the decimal point is misplaced"

// digitsExchanged tells whether a number is right once two digits beside each other among
// its first three are exchanged.
func (k *Key) digitsExchanged(m *Mark) bool {
	v := m.value.Value / m.value.Factor
	digits, exponent, _ := strings.Cut(strconv.FormatFloat(math.Abs(v), 'e', max(min(m.value.figures, many), Figures)-1, 64), "e")
	for _, at := range [][2]int{{0, 2}, {2, 3}} { // the point is the second character
		b := []byte(digits)
		b[at[0]], b[at[1]] = b[at[1]], b[at[0]]
		if string(b) == digits || b[0] == '0' {
			continue
		}
		x, err := strconv.ParseFloat(string(b)+"e"+exponent, 64)
		o := *m
		o.value.Value = math.Copysign(x, v) * m.value.Factor
		if err == nil && k.same(&o, m.want) {
			return true
		}
	}
	return false
}
