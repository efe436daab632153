package problem_test

import (
	"math"
	"strings"
	"testing"

	"trivet/mechanics/problem"
	"trivet/units"
)

// members has a line of every convention: a cable and a rope over two stretches, a
// strut, a link, a spring, a contact, a force, and a support.
const members = `plane = "xy"
[given]
g = "10 m/s^2"
[points]
P = { at = "0, 0", on = "beam" }
Q = { at = "4, 0", on = "beam" }
A = "0, 3"
B = "4, 3"
[joints]
P = { kind = "pin" }
[lines]
T = { kind = "cable", path = "P A" }
S = { kind = "strut", path = "Q B" }
L = { kind = "link", path = "Q A" }
K = { kind = "spring", path = "P B" }
N = { kind = "contact", at = "Q", along = "+y" }
F = { kind = "force", at = "Q", along = "-y" }
R1 = { kind = "cable", path = "P B", magnitude = "H" }
R2 = { kind = "link", path = "Q B", magnitude = "H" }
R3 = { kind = "cable", path = "P A", magnitude = "J" }
R4 = { kind = "strut", path = "Q A", magnitude = "J" }
`

// The sign of a sense is that of the line's own convention: tension is positive of a
// cable, link and spring, compression of a strut (the sheet's convention, README).
func TestWrittenSense(t *testing.T) {
	p, errs := problem.Read(parse(t, members))
	if len(errs) > 0 {
		t.Fatal(errs)
	}
	for _, c := range []struct {
		name, text string
		want       float64 // N
		err        string
	}{
		{"T", "2.5 kN T", 2500, ""}, {"T", "2.5 kN (T)", 2500, ""}, {"T", "2.5 kN(T)", 2500, ""}, {"T", "2.5 (T)", 2.5, ""},
		{"T", "5 kN C", -5000, ""}, {"T", "5 kN, C", -5000, ""}, {"T", "-5 kN C", -5000, ""}, {"T", "288.7 lb compression", -288.7 * pound, ""},
		{"T", "2,887 lb (C)", -2887 * pound, ""}, {"T", "2*380 N tension", 760, ""}, {"T", "5 kN Tension", 5000, ""},
		{"S", "5 kN C", 5000, ""}, {"S", "5 kN (T)", -5000, ""}, {"S", "5 kN compression", 5000, ""},
		{"L", "5 kN C", -5000, ""}, {"K", "5 kN C", -5000, ""}, {"N", "5 kN push", 5000, ""}, {"N", "5 kN pull", -5000, ""},
		{"T", "2.5 kN (in tension)", 2500, ""}, {"T", "2.5 kN in tension", 2500, ""}, {"T", "2.5 kN in Compression", -2500, ""},
		{"T", "2.5 kN (t)", 2500, ""}, {"T", "2.5 kN (c)", -2500, ""}, {"T", "2.5 kN (T.)", 2500, ""}, {"T", "2.5 kN C.", -2500, ""}, {"T", "2.5 kN T.", 2500, ""},
		{"T", "2.5 kN (compressive)", -2500, ""}, {"T", "2.5 kN tensile", 2500, ""}, {"T", "2.5 kN COMPRESSION", -2500, ""}, {"T", "2.5 kN (Comp.)", -2500, ""}, {"T", "2.5 kN tens.", 2500, ""},
		{"T", "12 in tension", 0, "tension must follow a unit or be in parentheses. Try: 12 N tension or 12 (tension)"},
		{"H", "5 kN T", 5000, ""}, // a rope of one tension
		{"T", "5 kg*g", 50, ""}, {"T", "0.761 kN", 761, ""}, {"T", "5 N", 5, ""},
		{"T", "2.5 T", 0, "T must follow a unit or be in parentheses. Try: 2.5 N T or 2.5 (T)"},
		{"T", "2.5 tension", 0, "tension must follow a unit or be in parentheses. Try: 2.5 N tension or 2.5 (tension)"},
		{"T", "-5 kN T", 0, "the value has both a minus sign and the word tension. Try: only one of them"},
		{"T", "5 kN push", 0, "the sense of a cable that pushes is compression. Try: C or compression instead of push"},
		{"T", "5 kN (pull)", 0, "the sense of a cable that pulls is tension. Try: T or tension instead of pull"},
		{"S", "5 kN push", 0, "the sense of a strut that pushes is compression. Try: C or compression instead of push"},
		{"T", "5 kN c", 0, `unexpected "c" after the value. Try: 5 kN, or one of T, C, (T), (C), tension or compression after it`},
		{"T", "5 kN t", 0, `unexpected "t" after the value. Try: 5 kN, or one of T, C, (T), (C), tension or compression after it`},
		{"T", "5 kN (ans)", 0, `unexpected "ans" after the value. Try: 5 kN, or one of T, C, (T), (C), tension or compression after it`},
		{"T", "5 kN Ans.", 0, `unexpected "Ans." after the value. Try: 5 kN, or one of T, C, (T), (C), tension or compression after it`},
		{"Px", "5 kN (ans)", 0, `unexpected "ans" after the value. Try: 5 kN`},
		{"Px", "5 kN (to the left)", 0, `unexpected "to the left" after the value. Try: 5 kN`},
		{"T", "5 lbz", 0, `unknown unit "lbz". Try: lbf`},
		{"T", "(T)", 0, "a number is missing. Try: a number, with its unit if it is not that of the sheet"},
		{"N", "5 kN C", 0, "a contact can only push. Try: the word push, or the value alone"},
		{"F", "5 kN C", 0, "a force has no compression. Try: the value with its sign"},
		{"J", "5 kN T", 0, "J has no tension or compression. Try: the value with its sign"}, // of a cable and a strut at once
		{"Px", "5 kN T", 0, "Px is a reaction, which has no tension or compression. Try: the value with its sign"},
		{"P.size", "5 kN T", 0, "P.size is a reaction, which has no tension or compression. Try: the value with its sign"},
		{"T.x", "5 kN T", 0, "T.x has no tension or compression. Try: the value with its sign"},
		{"|T|", "5 kN T", 0, "a magnitude has no tension or compression. Try: the value alone"},
	} {
		q, err := problem.ParseQuery(p, c.name)
		if err != nil {
			t.Fatal(err)
		}
		bare := p.Units.For(q.Dim)
		bare.Dim = q.Dim
		w, err := p.ReadWritten(q, c.text, bare, false)
		switch {
		case c.err != "":
			if err == nil || err.Error() != c.err {
				t.Errorf("%s = %s: %v, want %q", c.name, c.text, err, c.err)
			}
		case err != nil:
			t.Errorf("%s = %s: %v", c.name, c.text, err)
		case w.Dim != units.Force || math.Abs(w.Value-c.want) > 1e-12*math.Abs(c.want):
			t.Errorf("%s = %s is %v N, want %v", c.name, c.text, w.Value, c.want)
		}
	}
	// Behind a number whose unit stands in the head of its column a sense reads.
	q, _ := problem.ParseQuery(p, "T")
	kN, _ := units.Find("kN")
	if w, err := p.ReadWritten(q, "2.5 C", kN, true); err != nil || w.Value != -2500 {
		t.Errorf("under a head: %v, %v", w.Value, err)
	}
}

// FuzzWritten: whatever is written as an answer is a finite value or an error in words.
func FuzzWritten(f *testing.F) {
	for _, seed := range []string{"2.5 kN T", "2887 lb (C)", "(C", "T", "5 (", "1,200 lb, C", "-1 C", "0 N T", "2*0 N", "1e300 kN*1e300 C", "5 kg*g tension", "|5| N", "5 %"} {
		f.Add(seed)
	}
	p, _ := problem.Read(parse(f, members))
	f.Fuzz(func(t *testing.T, text string) {
		for _, name := range []string{"T", "S", "Px", "J", "|T|"} {
			q, err := problem.ParseQuery(p, name)
			if err != nil {
				t.Fatal(err)
			}
			w, err := p.ReadWritten(q, text, p.Units.For(q.Dim), len(text)%2 == 0)
			switch {
			case err != nil && err.Msg == "":
				t.Errorf("%q: an error without words", text)
			case err == nil && (math.IsNaN(w.Value) || math.IsInf(w.Value, 0) || !(w.Half >= 0)):
				t.Errorf("%q = %v ± %v", text, w.Value, w.Half)
			}
		}
	})
}

// A name with the _ of a subscript is that without it where only this exists, in a
// magnitude as in a result; else it is a name of its own.
func TestSubscriptsInMagnitudes(t *testing.T) {
	for _, c := range []struct{ lines, magnitude, unknowns string }{
		{"T1", "0.5*T_1", "T1"}, {"T1", "A_y", "T1"}, {"T1", "0.3*N_q", "T1 N_q"}, {"T_1", "2*T_1", "T_1"}, {"T_1", "2*T1", "T_1 T1"},
		{"T1", "2*D_x", "T1 Dx Dy"}, // of a pin
	} {
		p, errs := problem.Read(parse(t, "plane = \"xy\"\n[given]\nAy = \"3 N\"\n[points]\nP = { at = \"0, 0\", on = \"beam\" }\nD = { at = \"2, 0\", on = \"beam\" }\nA = \"-3, 4\"\n"+
			"[lines]\n"+c.lines+" = { kind = \"cable\", path = \"P A\" }\nF = { kind = \"force\", at = \"P\", along = \"-y\", magnitude = \""+c.magnitude+"\" }\n[joints]\nD = { kind = \"pin\" }\n"))
		if len(errs) > 0 {
			t.Fatal(errs)
		}
		var names []string
		for _, u := range p.Unknowns {
			names = append(names, u.Name)
		}
		if got := strings.TrimSuffix(strings.Join(names, " "), " Dx Dy"); got != strings.TrimSuffix(c.unknowns, " Dx Dy") {
			t.Errorf("%s beside %s: the unknowns are %s, want %s", c.magnitude, c.lines, got, c.unknowns)
		}
	}
}

// T1.magnitude and T1.size are one result, so that answers typed under either meet.
func TestMagnitudeIsSize(t *testing.T) {
	p, _ := problem.Read(parse(t, "plane = \"xy\"\n[points]\nP = { at = \"0, 0\", on = \"particle\" }\nA = \"0, 3\"\n[lines]\nT = { kind = \"cable\", path = \"P A\" }\nW = { kind = \"weight\", at = \"P\", magnitude = \"5 N\" }\n"))
	for _, name := range []string{"T.magnitude", "P.loads.magnitude"} {
		q, err := problem.ParseQuery(p, name)
		if size := strings.TrimSuffix(name, "magnitude") + "size"; err != nil || q.Name != size || q.Part != problem.Size {
			t.Errorf("%s is %s %v: %v", name, q.Name, q.Part, err)
		}
	}
}
