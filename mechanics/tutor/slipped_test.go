package tutor

import (
	"math"
	"testing"
)

func TestSlipOf(t *testing.T) {
	same := func(given, right float64) bool { return math.Abs(given-right) <= 0.005*math.Abs(right) }
	for _, c := range []struct {
		given, right float64
		typed        int
		want         NumberSlip
	}{
		{700, 350, 3, Twice}, {-175, -350, 3, Half}, {35, 350, 2, Point}, {3500, 350, 3, Point}, {3.5, 350, 2, Point},
		{437, 347, 3, Exchanged}, {374, 347, 3, Exchanged}, {743, 347, 3, NoSlip}, {350, 350, 3, NoSlip},
		{7, 3.5, 1, NoSlip}, // one figure says nothing
		{700, 0, 3, NoSlip}, {360, 350, 3, NoSlip},
	} {
		if got := SlipOf(c.given, c.right, c.typed, same); got != c.want {
			t.Errorf("%g for %g is slip %d, want %d", c.given, c.right, got, c.want)
		}
	}
}

// In practice a slip is told without the right number.
func TestSlipsOfValuesAreTold(t *testing.T) {
	for entry, want := range map[string]string{
		"B = 800 N":  "factor-2 B is off by a factor of 2.",
		"Ay = 60 N":  "decimal-point Ay is right but for the place of the decimal point.",
		"Ay = 300 N": "factor-2 Ay is off by a factor of 2.",
		"B = 40.0 N": "decimal-point B is right but for the place of the decimal point.",
	} {
		p := begin(t, "beam-on-supports")
		j := p.Enter(entry)
		if j.Mistake == nil || string(j.Mistake.Kind)+" "+j.Says != want {
			t.Errorf("%s: %v %s, want %s", entry, j.Mistake, j.Says, want)
		}
	}
}
