package units

import (
	"fmt"
	"strings"
	"testing"
)

func TestBareAngles(t *testing.T) {
	for _, c := range []struct{ text, want string }{
		{"exp(-0.25*180)", "exp: 0.25 180"},
		{"2 kN/exp(mu*(beta - 30))", "exp: mu beta 30"},
		{"exp(180/a^2)", "exp: 180 a| 2|"},
		{"exp(0.25*180 deg)", ""},
		{"exp(0.25*pi)", ""},
		{"exp(0.25*180*π/180)", ""},
		{"exp(0.25*180/57.3)", ""},
		{"exp(0.3*atan(2))", ""},
		{"exp(0.3*sqrt(400))", "exp: 0.3 400|"},
		{"polar(30)", "polar: 30"},
		{"angles(60, 45 deg, 120)", "angles: 60 angles: 120"},
		{"sin(exp(20))", "sin: 20| exp: 20"},
		{"sqrt(30)", ""},
		{"sin(pi/6)", "sin: sin(pi/6 rad)"},
		{"2*sin(pi)", "sin: sin(pi rad)"},
		{"cos(2*pi/3)", "cos: cos(2*pi/3 rad)"},
		{"cos(30*π/180)", "cos: cos(30*π/180 rad)"},
		{"tan(pi/6 + 0.1)", "tan: tan((pi/6 + 0.1) rad)"},
		{"sin((pi/6))", "sin: sin((pi/6) rad)"},
		{"sin(pi*s/L)", "sin: sin((pi*s/L) rad)"},
		{"sin(pi*s/(6 m))", "sin: sin((pi*s/(6 m)) rad)"},
		{"polar(pi/4)", "polar: polar(pi/4 rad)"},
		{"sin(pi/6 rad)", ""},
		{"sin(30 deg*pi)", ""},
		{"sin(0.5*180/pi)", ""},
		{"30", ""},
	} {
		e, err := Parse(c.text)
		if err != nil {
			t.Fatal(err)
		}
		var got []string
		for _, a := range e.BareAngles() {
			got = append(got, a.Function+":")
			if a.Radians != "" {
				got = append(got, a.Radians)
				continue
			}
			for _, o := range a.Operands {
				mark := ""
				if o.Under {
					mark = "|"
				}
				got = append(got, c.text[o.Start:o.End]+mark)
			}
			if !strings.Contains(c.text, a.Call) || !strings.HasPrefix(a.Call, a.Function) {
				t.Errorf("%s: the call is %q", c.text, a.Call)
			}
		}
		if s := strings.Join(got, " "); s != c.want {
			t.Errorf("%s: %q, want %q", c.text, s, c.want)
		}
	}
}

func TestQuantities(t *testing.T) {
	for _, c := range []struct{ text, want string }{
		{"0.3 N", "0.3 N = 0.3 N"},
		{"0.3N", "0.3N = 0.3 N"},
		{"W - (0.3 N)", "0.3 N = 0.3 N"},
		{"2*0.5 kN + sin(30 deg)*3 N", "0.5 kN = 0.5 kN, 30 deg = 30 deg, 3 N = 3 N"},
		{"50 N m", ""},
		{"3 kN/m", ""},
		{"0.3*N", ""},
		{"(2 + 3) N", ""},
	} {
		e, err := Parse(c.text)
		if err != nil {
			t.Fatal(err)
		}
		var got []string
		for _, q := range e.Quantities() {
			got = append(got, fmt.Sprintf("%s = %s %s", c.text[q.Start:q.End], q.Number, q.Symbol))
		}
		if s := strings.Join(got, ", "); s != c.want {
			t.Errorf("%s: %q, want %q", c.text, s, c.want)
		}
	}
}
