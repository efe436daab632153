package units

import "testing"

// What is a literal has the value that Eval gives it, bit for bit.
func TestLiteralIsWhatEvalGives(t *testing.T) {
	for _, text := range []string{"6", "-6", "0", "-0", "1.25 m", "-3 ft", "1/2 in", "3 1/2 in", "6e3 mm", "--2 N", "12 300", "20 kg", "30°"} {
		e, err := Parse(text)
		if err != nil {
			t.Fatal(text, err)
		}
		x, d, ok := e.Literal()
		v, err := e.Eval(alone{set: DefaultSet()})
		if err != nil {
			t.Fatal(text, err)
		}
		if !ok || x != v.V[0] || d != v.Dim {
			t.Errorf("%s: literal %v %v %v, and Eval gives %v %v", text, x, d, ok, v.V[0], v.Dim)
		}
	}
	for _, text := range []string{"h", "2*3", "1, 2", "?", "sin(30°)", "6 m ± 1 cm"} {
		e, err := Parse(text)
		if err != nil {
			t.Fatal(text, err)
		}
		if _, _, ok := e.Literal(); ok {
			t.Errorf("%s is no literal", text)
		}
	}
}
