package tutor

import (
	"math"
	"strconv"
	"strings"
)

// NumberSlip is what makes another number of the right one.
type NumberSlip int

// The slips of numbers.
const (
	NoSlip    NumberSlip = iota
	Twice                // a factor of 2
	Half                 // and of a half
	Point                // the decimal point is misplaced
	Exchanged            // two digits beside each other are exchanged
)

// leastFigures is with how many figures a number has to be typed to say anything.
const leastFigures = 2

// SlipOf tells which slip makes a number, typed with so many figures, of the right one; same tells
// that two numbers are one as far as they are typed. Both are in the unit that the number is typed
// in.
func SlipOf(given, right float64, typed int, same func(given, right float64) bool) NumberSlip {
	if right == 0 || typed < leastFigures {
		return NoSlip
	}
	for _, s := range []struct {
		factor float64
		slip   NumberSlip
	}{{2, Twice}, {0.5, Half}, {10, Point}, {0.1, Point}, {100, Point}, {0.01, Point}} {
		if same(given, s.factor*right) {
			return s.slip
		}
	}
	const most = 15
	digits, exponent, _ := strings.Cut(strconv.FormatFloat(math.Abs(given), 'e', max(min(typed, most), figures)-1, 64), "e")
	for _, at := range [][2]int{{0, 2}, {2, 3}} { // the point is the second character
		b := []byte(digits)
		b[at[0]], b[at[1]] = b[at[1]], b[at[0]]
		if string(b) == digits || b[0] == '0' {
			continue
		}
		if x, err := strconv.ParseFloat(string(b)+"e"+exponent, 64); err == nil && same(math.Copysign(x, given), right) {
			return Exchanged
		}
	}
	return NoSlip
}
